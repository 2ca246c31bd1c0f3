#!/bin/sh
# test_measure.sh - recordings whose truth is known, in every format, and
# recordings that are none
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

tone=${EVENHAND%/*}/tests/whole/tone
if [ ! -x "${EVENHAND%/*}/evenhand-file" ]; then
	echo "skipped: there is no evenhand-file here"
	finish
fi
if [ ! -x "$tone" ]; then
	fail "recordings cannot be made: make tests comes first"
	finish
fi

make_tone()
{
	"$tone" "$@" > truth || fail "no tone $*"
}

# near LABEL GOT WANTED WITHIN
near()
{
	if awk -v a="$2" -v b="$3" -v d="$4" \
	    'BEGIN { exit !(a != "" && a - b <= d && b - a <= d) }'; then
		ok "$1: near $3"
	else
		fail "$1: \"$2\", not $3 within $4"
	fi
}

# figure FILE KEY: of the JSON that was printed
figure()
{
	ask "$work/out" "select json_extract(j, '\$.$1') from f"
}

# --- what it says of a vibrato and of glides ------------------------------

make_tone sway.wav swing_hz=5.5 swing_cents=20
run 0 measure sway.wav
has "$work/out" "sway.wav: 0:08 long, WAV (Microsoft), 48000 samples a"
has "$work/out" "vibrato about G3: 5.5 swings a second, 20."
has "$work/out" "cents to each side"
has "$work/out" "The swings are regular"
has "$work/out" "Hand shape, squeeze, heat and pain cannot be heard."
is "nothing beside it" "$(wc -c < "$work/err" | tr -d ' ')" 0
so "no line is longer than 80 columns" \
    [ "$(tr -d '\200-\277' < "$work/out" | awk 'length($0) > 80' | wc -l)" -eq 0 ]
run 0 measure --ascii sway.wav
so "in plain signs" [ "$(LC_ALL=C tr -d '\n -~' < "$work/out" | wc -c)" -eq 0 ]
has "$work/out" "+-----"

make_tone glide.wav travel=200 pulses=1.5
cp truth glides
run 0 measure --json --track track.csv glide.wav
has "$work/err" "track.csv is written, 1600 rows."
is "glides" "$(figure glides)" "$(wc -l < glides | tr -d ' ')"
n=0
while read -r half nine; do
	near "half way of $n" "$(figure "events[$n].up50")" "$half" 0.006
	near "nine tenths of $n" "$(figure "events[$n].up90")" "$nine" 0.008
	near "way of $n" "$(figure "events[$n].span")" 200 6
	n=$((n + 1))
done < glides
is "bows" "$(figure "bows[1].stops")" 0
is "head of the track" "$(head -n 1 track.csv)" \
    "time_s,f0_hz,confidence,level_db"
is "an instant of it" "$(sed -n 202p track.csv | cut -d, -f1)" 1.000
near "and its pitch" "$(sed -n 222p track.csv | cut -d, -f2)" 219.9977 1
run 0 measure glide.wav
has "$work/out" "11 glides up from G3"
has "$work/out" "They are"

# --- how far away the microphone was --------------------------------------

# lacks LABEL FILE WORDS
lacks()
{
	so "$1" [ "$(grep -c "$3" "$2")" -eq 0 ]
}

make_tone near.wav swing_hz=5.5 swing_cents=20 room=9 seconds=4
run 0 measure near.wav
has "$work/out" "cents to each side"
lacks "nothing of the distance of a near one" "$work/out" "far away"
run 0 measure --json near.wav
is "near" "$(figure distance)" near
is "its widths are known" "$(figure width_known)" 1
make_tone far.wav swing_hz=5.5 swing_cents=20 room=-4 seconds=6 pause=2
run 0 measure far.wav
has "$work/out" "vibrato about G3: 5.5 swings a second."
has "$work/out" "The microphone was far away"
lacks "no widths from afar" "$work/out" "cents"
run 0 measure --json far.wav
is "far" "$(figure distance)" far
is "its widths are not" "$(figure width_known)" 0
so "though they are told" [ -n "$(figure extent)" ]
make_tone afar.wav travel=200 pulses=1.5 room=-4 hz=205
run 0 measure afar.wav
has "$work/out" "11 glides up from G#3 to A#3."
has "$work/out" "They come every 0.67 seconds"
lacks "no way from afar" "$work/out" "cents"
run 0 measure --json afar.wav
so "but in the list" [ -n "$(figure "events[0].span")" ]
run 0 measure near.wav far.wav
is "its lines end where their head does" \
    "$(awk '{ print length($0) }' "$work/out" | sort -u)" 80
is "no width in its row" \
    "$(awk '$1 == "far.wav" { print $8 }' "$work/out")" -
run 0 measure --lines near.wav far.wav
is "a page for each and a line between them" "$(awk '
	/^(near|far)[.]wav: 0:/ { print $1 }
	/^$/ { print "-" }' "$work/out" | tr '\n' ' ')" "near.wav: - far.wav: "
lacks "no picture" "$work/out" '[│|]'
# Notes that are clear and too short are not told to be unclear.
"$python" - <<'END'
import math, struct, wave
with wave.open("clicks.wav", "wb") as w:
    w.setparams((1, 2, 48000, 0, "NONE", ""))
    for n in range(24):
        w.writeframes(b"".join(struct.pack("<h", int(15000 * (i < 2400) *
            math.exp(-i / 600) * math.sin(math.pi * 440 * i / 24000)))
            for i in range(16000)))
END
run 0 measure clicks.wav
has "$work/out" "notes too short for a bow, as of a voice or of clicks."
lacks "nothing of hardly a note" "$work/out" "hardly"
make_tone held.wav seconds=3 hz=205
run 0 measure held.wav
has "$work/out" "one note, G#3 -22 cents, held."
make_tone held.wav seconds=3 hz=196.7
run 0 measure held.wav
has "$work/out" "one note, G3 +6 cents, held."
run 0 measure --json held.wav
is "nothing moved, so nobody knows" \
    "$(ask "$work/out" "select json_type(j, '\$.distance') from f")" null
make_tone phone.wav swing_hz=5.5 swing_cents=20 seconds=4 rate=8000
run 0 measure phone.wav
has "$work/out" "How far away the microphone was could not be told."

# --- a name of any bytes and of any length ----------------------------------

deep=$(printf '%0200d/%0200d/%0200d' 1 2 3)
odd="$deep/$(printf 'a\033\302\233b.wav')"
mkdir -p "$deep"
cp glide.wav "$odd"
run 0 measure --json "$odd"
has "$work/out" '3/a??b.wav",'
is "figures behind a long name" "$(figure channels)" 1

# --- what is known --------------------------------------------------------

for known in "--notes G3-A3" "--notes A3-G3" "--notes G3" \
    "--stage tone" "--routine cello --stage wide --finger 1"; do
	# shellcheck disable=SC2086
	run 0 measure $known --json glide.wav
done
run 0 measure --notes C2-E2 glide.wav
has "$work/out" "Was it another string, or"

unchanged 64 'are no two notes' measure --notes H3-A3 glide.wav
unchanged 64 'are no two notes' measure --notes C0-D0 glide.wav
unchanged 64 'Keep one of them' measure --notes G3 --stage tone glide.wav
unchanged 64 '--finger needs the stage' measure --finger 2 glide.wav
unchanged 64 'has no stage "none"' measure --stage none glide.wav
unchanged 64 'There are: 1, 2, 3, 4' measure --stage tone --finger 9 glide.wav
unchanged 64 'no notes of its own' measure --stage air glide.wav
unchanged 64 'is the number of a channel' measure --channel none glide.wav
unchanged 64 'has no channel of that number' measure --channel 2 glide.wav
unchanged 64 'one recording at a time' measure --track t.csv glide.wav sway.wav
unchanged 64 'has to end in .pdf' measure --plot t.txt glide.wav
unchanged 73 'is there already' measure --track track.csv glide.wav

# --- formats, rates, channels ---------------------------------------------

for file in a.flac b.ogg c.aiff; do
	make_tone $file swing_hz=5.5 swing_cents=20 channels=2 rate=44100
	run 0 measure --json $file
	near "rate of $file" "$(figure rate_hz)" 5.5 0.05
	near "width of $file" "$(figure extent)" 20 1
	is "channels of $file" "$(figure channels)" 2
done
for rate in 8000 11025 22050 96000 192000; do
	make_tone rate.wav swing_hz=5.5 swing_cents=20 seconds=4 rate=$rate
	run 0 measure --json rate.wav
	near "rate at $rate" "$(figure rate_hz)" 5.5 0.1
	near "width at $rate" "$(figure extent)" 20 1.5
	near "middle at $rate" "$(figure mean_hz)" 195.9977 0.5
done
run 0 measure a.flac glide.wav c.aiff
is "a head and three rows" "$(wc -l < "$work/out" | tr -d ' ')" 5
has "$work/out" "a.flac                0:08"
run 0 measure --json a.flac glide.wav
is "a list of two" "$(ask "$work/out" "select json_array_length(j) from f")" 2
make_tone opposed.wav opposed channels=2 seconds=3
run 0 measure opposed.wav
has "$work/out" "Its channels cancel each other."
run 0 measure --channel 2 opposed.wav
has "$work/out" "one note, G3"
make_tone pause.wav seconds=3 pause=2
run 0 measure pause.wav
has "$work/out" "In all 2 stretches of playing"

# --- what is none, or was hurt --------------------------------------------

head -c 300000 glide.wav > cut.wav
head -c 60000 a.flac > cut.flac
for file in cut.wav cut.flac; do
	run 0 measure $file
	has "$work/out" "ends before its own beginning says so"
done
make_tone spoiled.wav nan seconds=3
run 0 measure spoiled.wav
has "$work/out" "of its samples are no numbers"
make_tone loud.wav gain=6 seconds=3
run 0 measure loud.wav
has "$work/out" "recorded too loud"
head -c 44 glide.wav > empty.wav
head -c 20 glide.wav > short.wav
: > nothing.wav
echo "no sound at all" > words.wav
mkdir folder.wav
mkfifo pipe.wav
make_tone slow.wav rate=8000 seconds=1
printf '\240\017\000\000' |
    dd of=slow.wav bs=1 seek=24 conv=notrunc 2> /dev/null
unchanged 65 'there is no sound in this recording' measure empty.wav
unchanged 65 'damaged at its beginning' measure short.wav
unchanged 65 'is no recording' measure nothing.wav
unchanged 65 'is no recording' measure words.wav
unchanged 65 'has 4000 samples a second' measure slow.wav
unchanged 66 'this is a folder' measure folder.wav
unchanged 66 'no ordinary file' measure pipe.wav
unchanged 66 'there is no such file' measure missing.wav
unchanged 64 'something is missing' measure
run 66 measure missing.wav glide.wav
has "$work/out" "glide.wav             0:08"
cp glide.wav "$(printf 'e\033[31m.wav')"
run 0 measure "$(printf 'e\033[31m.wav')"
so "no escape gets through" [ "$(tr -cd '\033' < "$work/out" | wc -c)" -eq 0 ]

# --- on paper -------------------------------------------------------------

if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
	run 0 measure --plot plot.pdf glide.wav
	so "a PDF" grep -q '^%PDF' plot.pdf
	pdftotext plot.pdf words
	has words "glide.wav"
	has words "11 glides up"
	unchanged 73 'is there already' measure --plot plot.pdf glide.wav
	run 0 measure --force --plot plot.pdf sway.wav
else
	echo "skipped: there is no evenhand-paper here"
fi

# --- on a narrow screen ---------------------------------------------------

# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"
terminal 40x60
command_line "'$EVENHAND' measure --ascii sway.wav 2> slow"
waits 60 seen "evenhand-listening."
# What is typed before the shell waits would stand before its "ready> ".
waits 60 prompted
page | sed -n '/^sway.wav: /,$p' > narrow
so "its page is there" [ "$(wc -l < narrow)" -gt 20 ]
so "no line is wider than the screen" \
    [ "$(awk 'length($0) > 40' narrow | wc -l)" -eq 0 ]
# Several: what does not go beside its name goes below it.  How much is
# heard is said meanwhile when that takes long.
command_line "'$EVENHAND' measure near.wav far.wav 2> slow; echo en''ded"
waits 60 seen "ended"
waits 60 prompted
page | sed -n '/^recording/,/^ended/p' > narrow
is "a head of five lines, and three for each" "$(wc -l < narrow | tr -d ' ')" 12
so "none wider than the screen" \
    [ "$(awk 'length($0) > 40' narrow | wc -l)" -eq 0 ]
is "figures stand below their names" "$(awk '
	/^near.wav$/ { near = NR }
	near && NR == near + 1 { print $1 }' narrow)" 0:04
mkdir -p "$HOME/.config/evenhand"
echo 'lines: yes' > "$HOME/.config/evenhand/settings.yaml"
command_line "'$EVENHAND' measure near.wav far.wav 2> slow; echo do''ne"
waits 60 seen "done"
page | sed -n '/^ended/,$p' > narrow
so "sentences for who has chosen lines" grep -q '^near.wav: 0:04 long' narrow
is "and no table" "$(grep -c '^recording' narrow)" 0
rm "$HOME/.config/evenhand/settings.yaml"

# --- without its other half -----------------------------------------------

mkdir alone
cp "$EVENHAND" alone/evenhand
before=$EVENHAND
EVENHAND=$work/files/alone/evenhand
run 69 measure glide.wav
has "$work/err" "evenhand-file, is missing"
for how in 'exit 0' 'kill -9 $$' 'printf x' 'exit 64'; do
	printf '#!/bin/sh\n%s\n' "$how" > alone/evenhand-file
	chmod +x alone/evenhand-file
	"$EVENHAND" measure glide.wav > "$work/out" 2> "$work/err" < /dev/null
	so "a program that says \"$how\" is told" [ $? -ge 65 ]
	is "in one sentence" "$(wc -l < "$work/err" | tr -d ' ')" 1
done
EVENHAND=$before

finish
