#!/bin/sh
# test_recorded.sh - recorded notes, bent as it is written, and what evenhand
# measures of them
#
# fluidsynth plays the bowed strings of a free sound font, without its room, from
# MIDI files of tests/tools/bends.py, whose bends are the truth.  The font makes a
# note from one period of a recorded one, a whole number of samples long, so it is
# some cents sharp, and the unbent note is what bends are compared with.
#
# Bounds are a little more than what was measured.
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

font=TimGM6mb.sf2
for folder in /usr/share/sounds/sf2 /usr/share/soundfonts; do
	if [ -f "$folder/$font" ]; then
		font=$folder/$font
		break
	fi
done
if ! command -v fluidsynth > /dev/null || [ ! -f "$font" ]; then
	echo "skipped: fluidsynth or the sound font $font is not there"
	finish
fi
if [ ! -x "${EVENHAND%/*}/evenhand-file" ]; then
	echo "skipped: there is no evenhand-file here"
	finish
fi

bends()
{
	"$python" "$root/tests/tools/bends.py" "$@"
}

# hear CASE: its measures in $work/out, its track in bent.csv
hear()
{
	case=$1
	rm -f -- *.mid *.wav *.csv
	bends write "$case" bent.mid || fail "no MIDI file of $case"
	fluidsynth -q -n -i -R no -C no -g 0.6 -r 48000 -T wav -F bent.wav \
	    "$font" bent.mid > played 2>&1 || fail "no sound of $case"
	run 0 measure --json --track bent.csv bent.wav
}

# What the track says.
look()
{
	bends look "$case" bent.csv > seen || fail "no look at $case"
}

# figure KEY: of the JSON that was printed
figure()
{
	ask "$work/out" "select json_extract(j, '\$.$1') from f"
}

# looked KEY: of what the track says
looked()
{
	sed -n "s/^$1 //p" seen
}

# within LABEL VALUE LEAST MOST
within()
{
	if awk -v v="$2" -v a="$3" -v b="$4" \
	    'BEGIN { exit !(v != "" && v >= a && v <= b) }'; then
		ok "$case, $1: $2 lies from $3 to $4"
	else
		fail "$case, $1: \"$2\" does not lie from $3 to $4"
	fi
}

# about LABEL VALUE WANTED MOST_OFF
about()
{
	within "$1" "$2" "$(awk -v w="$3" -v d="$4" 'BEGIN { print w - d }')" \
	    "$(awk -v w="$3" -v d="$4" 'BEGIN { print w + d }')"
}

# --- every note of four instruments, of which nothing is known --------------

for case in notes:42:36:81 notes:40:55:88 notes:41:48:81 notes:43:28:67; do
	hear $case
	look
	within "% of instants heard" "$(looked found)" 99.8 100
	within "wrong octaves, or other notes" "$(looked wrong)" 0 0
	# Read from the font: loops of 238 samples at 44100 a second are 2.7
	# cents over F#3, those of 38 two cents over D6, and so on.
	within "cents over A 440 of the flattest" "$(looked flattest)" 0 5
	within "of the sharpest" "$(looked sharpest)" 0 5
done

# --- bends of known cents -------------------------------------------------

# steps PROGRAM NOTE MOST_OFF
steps()
{
	hear "steps:$1:$2"
	look
	within "cents a bend is off" "$(looked off)" 0 "$3"
	within "cents the note itself moves" "$(looked unbent)" 0 2
	looked hz > "hz$1:$2"
}

steps 42 36 0.4
steps 42 41 0.4
steps 42 50 1.2
steps 42 57 1.2
steps 41 60 1.2
steps 40 69 1.2
steps 43 28 1.2

# --- glides ---------------------------------------------------------------

# The synthesiser looks at its events every 1.3 ms, by a clock of whole ms: all
# arrivals are some 2 ms late.
for case in glides:42:36:200 glides:42:50:50 glides:42:57:500 glides:40:69:200; do
	hear $case
	bends truth "$case" > arrivals
	is "$case, glides" "$(figure glides)" "$(wc -l < arrivals | tr -d ' ')"
	is "$case, without a room" "$(figure distance)" near
	n=0
	while read -r half nine; do
		about "half way of $n" "$(figure "events[$n].up50")" "$half" 0.005
		about "nine tenths of $n" "$(figure "events[$n].up90")" "$nine" 0.01
		about "way of $n" "$(figure "events[$n].span")" \
		    "${case##*:}" 1.5
		n=$((n + 1))
	done < arrivals
done

# --- vibrato --------------------------------------------------------------

# sway PROGRAM NOTE RATE WIDTH: about the note as it was unbent
sway()
{
	hear "sway:$1:$2:$3:$4"
	about "swings a second" "$(figure rate_hz)" "$3" 0.006
	about "cents to each side" "$(figure extent)" "$4" \
	    "$(awk -v w="$4" 'BEGIN { print 0.2 + 0.02 * w }')"
	about "its middle" "$(figure mean_hz)" "$(cat "hz$1:$2")" \
	    "$(awk '{ print $1 * 0.0006 }' "hz$1:$2")"
	within "unevenness" "$(figure cv)" 0 0.01
}

sway 42 36 5.5 20
sway 42 36 4 30
sway 42 50 6.5 10
sway 43 28 5 20
# Those before are so dark that they are taken for far ones, these are not.
for bright in "42 57 7 40" "41 60 5.5 20" "40 69 6 30"; do
	# Four words, on purpose.
	# shellcheck disable=SC2086
	sway $bright
	is "$case, without a room" "$(figure distance)" near
done

# The font's own: 8.176 Hz, 793 hundredths of a semitone lower; a triangle of 10
# cents, whose first partial is 8 / pi^2 as wide (SoundFont 2.01, from memory).
hear own:42:36
about "swings of the font" "$(figure rate_hz)" 5.171 0.01
within "cents to each side" "$(figure extent)" 8.1 10

finish
