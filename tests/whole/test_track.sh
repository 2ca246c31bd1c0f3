#!/bin/sh
# test_track.sh - tracks: sample for sample what a card is given, at every rate
# and in every format; what stands in them; and never half of one
#
# Where sounds are due is worked out by tests/tools/ticks.py, and tracks are read
# by tests/tools/track.py.
#
# Functions are called by way of so.
# shellcheck disable=SC2317
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
program=${EVENHAND%/*}/evenhand-file
if [ ! -x "$program" ]; then
	echo "skipped: there is no evenhand-file here"
	exit 0
fi
when='--at 2026-03-02T17:00'
routine_at tone
minute minute.yaml
cp "$root"/routines/*.yaml .

# track ARGUMENTS...: a track of that day
track()
{
	# shellcheck disable=SC2086
	run 0 track $when "$@"
	is "nothing on standard error" "$(cat "$work/err")" ""
}

read_track()
{
	"$python" "$root/tests/tools/track.py" "$@" > "$work/read" 2>&1
	status_is $? 0 "track.py $*"
	cat "$work/read"
}

# samples FILE: as the program reads them, without what tells the format
samples()
{
	"$program" read < "$1" | tail -c +89
}

# at_frames HEARD DUE: each sound is at its frame; a note or a tone begins softly,
# and what is below half a step of 16 bits is nothing: up to 1.5 ms
at_frames()
{
	paste -d ' ' "$1" "$2" | awk '
	{ late = $1 - $3 }
	$2 != $4 || late < 0 || late > ($2 ~ /finger|tone/ ? 144 : 0) {
		print "heard " $1, $2 ", due " $3, $4
		bad = 1
	}
	END { exit bad || NR == 0 }'
}

# --- the same samples as a session ------------------------------------------

# Nobody marks; a key that asks for help tells that somebody is there.
printf '%s\n' '- forward' '- forward' '1:40 help' '3:20 help' > keys
track tone.yaml -o today.wav
is "said" "$(head -n 1 "$work/out")" \
    "today.wav is written: 4:52 long, 6 parts."
has "$work/out" "is not counted in the history"
has "$work/out" "if anything hurts, stop it"
so "no journal is made" [ ! -e "$journals" ]
alsa file
session 2026-03-02T17:00 keys --card default --player heard tone.yaml
status_is $? 0 "a session into a file"
case $(read_track same "$tap" today.wav | tail -n 1) in
[1-9][0-9][0-9][0-9][0-9][0-9]*) ok "every sample is the card's" ;;
*)
	fail "every sample is the card's"
	cat "$work/read" ;;
esac
rm "$tap"

# --- every rate and format ----------------------------------------------------

for rate in 44.1 48 96; do
	hertz=$(echo "$rate" | sed 's/44.1/44100/; s/48/48000/; s/96/96000/')
	track minute.yaml --marking turn --rate "$rate" -o m.wav --force
	"$python" "$ticks" heard m.wav --format wav --rate "$hertz" > heard.txt
	# A session of a minute: stillness, a bow to count in, a round.
	due --rate "$hertz" 0:6:1234 > due.txt
	so "$rate kHz: every sound at its frame" at_frames heard.txt due.txt
	samples m.wav > wav.samples
	track minute.yaml --marking turn --rate "$rate" -o m.flac --force
	samples m.flac > flac.samples
	so "$rate kHz: FLAC is WAV" cmp wav.samples flac.samples
	so "FLAC is smaller" [ "$(wc -c < m.flac)" -lt "$(wc -c < m.wav)" ]
done
track minute.yaml --marking turn --rate 44100 -o m.ogg
track minute.yaml --marking turn --rate 44100 -o m.wav --force
"$program" read < m.ogg > ogg.stream
is "Ogg: each sound within a frame" \
    "$(read_track near m.wav ogg.stream | tail -n 1)" \
    "$(wc -l < due.txt | tr -d ' ')"

# The same is the same file.
track minute.yaml --marking turn --rate 96 -o again.flac
so "the same bytes" cmp m.flac again.flac
track minute.yaml --marking turn -o m.oga
so "an .oga is an Ogg" grep -q OggS m.oga

# -3 dB of full scale is never passed, as loud as it gets.
for end in wav flac ogg; do
	track minute.yaml --loudness 100 -o "loud.$end"
	"$program" read < "loud.$end" > loud.stream
	peak=$(read_track peak loud.stream | tail -n 1)
	so "$end: a peak of $peak dB" [ "${peak%.*}" -le -3 ]
done
track minute.yaml --loudness 0 -o still.wav
"$python" "$ticks" heard still.wav --format wav > heard.txt
is "loudness 0 is silence" "$(cat heard.txt)" ""

# --- what stands in it ----------------------------------------------------------

for end in wav flac ogg; do
	track tone.yaml -o "today.$end" --force
	read_track tags "today.$end" > told
	has told 'title=2026-03-02: A tone apart'
	has told 'artist=J. Penhallow, Saltbridge Strings'
	has told 'date=2026-03-02'
	for words in 'is not counted in the history' 'Nails short?' \
	    'gives no medical advice' 'Heat at a fingertip' 'stop now' \
	    'Start quiet'; do
		has told "$words"
	done
done
# The last was Ogg; FLAC has the same.
grep CHAPTER told > ogg.parts
cat > parts <<-'END'
	CHAPTER001=00:00:00.000
	CHAPTER001NAME=Forearm swing, no instrument
	CHAPTER002=00:00:28.000
	CHAPTER002NAME=First to fourth position, 4 pulses
	CHAPTER003=00:01:24.000
	CHAPTER003NAME=First to third position, 6 pulses
	CHAPTER004=00:02:20.000
	CHAPTER004NAME=A tone apart, 6 pulses, round 1
	CHAPTER005=00:03:16.000
	CHAPTER005NAME=A tone apart, 6 pulses, round 2
	CHAPTER006=00:04:04.000
	CHAPTER006NAME=A tone apart, 6 pulses, round 3
END
so "the parts of an Ogg" diff parts ogg.parts
read_track tags today.flac | grep CHAPTER > flac.parts
so "the parts of a FLAC" diff parts flac.parts
read_track tags today.wav | grep '^[0-9]' > wav.parts
is "the parts of a WAV" "$(awk '{ print $1 / 48000 }' wav.parts | tr '\n' ' ')" \
    "0 28 84 140 196 244 "
so "and their names" sh -c "sed 's/^[0-9]* //' wav.parts > a
    sed -n 's/.*NAME=//p' parts > b; diff a b"

# --- one stage alone --------------------------------------------------------------

track tone.yaml --stage wide --rung 4 --rounds 2 --marking turn -o wide.wav
is "its length" "$(head -n 1 "$work/out")" \
    "wide.wav is written: 1:44 long, 2 parts."
"$python" "$ticks" heard wide.wav --format wav > heard.txt
due 0:4:1234,4:1234 > due.txt
so "its sounds" at_frames heard.txt due.txt
track tone.yaml --stage air --rounds 3 -o air.wav
read_track tags air.wav > told
has told 'title=Forearm swing, no instrument'
track tone.yaml --rounds 1 --tones --marking turn -o tones.wav
"$python" "$ticks" heard tones.wav --format wav > heard.txt
# At 0.2 and 0.9 s; with them the note of finger 1, and no other.
printf '%s\n' '9600 tone' '43200 tone' > due.txt
due 0:6:1234 >> due.txt
so "two tones more" at_frames heard.txt due.txt
no_more='take longer than a session of today may, which is 5:00. Write --rounds 6'
# shellcheck disable=SC2086
{
unchanged 64 "$no_more" track tone.yaml $when --stage tone --rounds 7 -o x.wav
unchanged 64 'no rung of 5 pulses. Its rungs are 4, 6, 8' track tone.yaml $when \
    --rung 5 -o x.wav
unchanged 64 'in the air, where there are no pulses' track tone.yaml $when \
    --stage air --rung 4 -o x.wav
unchanged 77 '"A semitone apart" is not opened yet' track tone.yaml $when \
    --stage semitone -o x.wav
unchanged 64 'this routine has no stage "none"' track tone.yaml $when \
    --stage none -o x.wav
}

# --- nothing today ------------------------------------------------------------------

printf '%s\n' '- forward' '- forward' '0:20 h' '- forward' > hurt
session 2026-03-02T12:00 hurt tone.yaml
for more in '' '--stage wide'; do
	before=$(disk)
	# shellcheck disable=SC2086
	run 77 track tone.yaml $when $more -o x.wav
	has "$work/err" "nothing is to be played today, so there is no track:"
	has "$work/err" "Pain was noted today"
	so "no file" [ "$(disk)" = "$before" ]
done
run 0 track tone.yaml --at 2026-03-02T17:00 --player other -o other.wav
rm -r "$HOME/.local"

# --- never over what is there, never half of it ----------------------------------------

echo mine > mine.wav
unchanged 73 'is there already' track -o mine.wav
unchanged 73 'its folder is not there' track -o none/x.wav
# The disk takes no more than some KB of a file.
for end in wav flac ogg; do
	before=$(disk)
	(trap '' XFSZ && ulimit -f 16 && "$EVENHAND" track -o "full.$end" \
	    > "$work/out" 2> "$work/err" < /dev/null)
	status_is $? 74 "no room for a $end"
	one_sentence 'the disk is full'
	so "nothing is left of it" [ "$(disk)" = "$before" ]
done
for end in doc '' wav/x; do
	unchanged 64 'has to end in .wav, .flac or .ogg' track -o "x.$end"
done
unchanged 64 'has to end in' track -o -
unchanged 64 'say where the track goes' track
unchanged 64 '--rate is 44.1, 48 or 96, not "22"' track --rate 22 -o x.wav
unchanged 64 '--rounds is a whole number from 1 on, not "0"' track --rounds 0 \
    -o x.wav
unchanged 64 '--rung is a whole number from 1 on, not "-4"' track --rung=-4 \
    -o x.wav
unchanged 66 'there is no such file' track wren.yaml -o x.wav

# Stopped on the way, it leaves nothing: by a request (HUP, INT, TERM: 1, 2 and
# 15) and by force (KILL: 9).  A program in the place of the writer takes nothing
# and so holds it up.
mkdir alone
cp "$EVENHAND" alone/evenhand
real=$EVENHAND
EVENHAND=$work/files/alone/evenhand
unchanged 69 'evenhand-file, is missing or does not start' track -o x.wav

# fake COMMANDS: a program in its place
fake()
{
	printf '#!/bin/sh\n%s\n' "$1" > alone/evenhand-file
	chmod +x alone/evenhand-file
}

fake 'exit 64'
unchanged 69 'of another version. Install evenhand anew' track -o x.wav
fake 'cat > /dev/null; kill -9 $$'
unchanged 71 'was ended from outside. Nothing was written' track -o x.wav
for signal in 1 2 9 15; do
	fake 'echo begun > begun; exec sleep 5'
	before=$(disk | grep -v begun)
	# A shell starts what is in the background deaf to INT.
	"$python" -c 'import os, signal, sys
signal.signal(signal.SIGINT, signal.SIG_DFL)
os.execv(sys.argv[1], sys.argv[1:])' "$EVENHAND" track -o x.wav \
	    > "$work/quiet" 2>&1 < /dev/null &
	pid=$!
	comes begun begun
	kill -"$signal" "$pid"
	wait "$pid" 2> /dev/null
	is "ended by $signal" "$?" $((128 + signal))
	rm begun
	so "nothing is left of it" [ "$(disk)" = "$before" ]
done
EVENHAND=$real

# --- evenhand-file by hand ----------------------------------------------------------

head='evenhand-file 1\nrate 8000\nframes 4\n'
# by_hand STATUS FORMAT: what stands in stream
by_hand()
{
	: > made
	"$program" write "$2" < stream 1<> made 2> "$work/err"
	status_is $? "$1" "evenhand-file write $2"
}

for end in wav flac ogg; do
	{ printf '%b' "$head\n"; head -c 16 /dev/zero; } > stream
	by_hand 0 "$end"
	# Its head, a block, the end of the blocks and the account.
	is "$end: four frames" "$("$program" read < made | wc -c | tr -d ' ')" \
	    $((88 + 4 + 4 * 4 + 4 + 48))
	{ printf '%b' "$head\n"; head -c 15 /dev/zero; } > stream
	by_hand 74 "$end"
	for wrong in '' 'evenhand-file 2\n\n' 'evenhand-file 1\n\n' \
	    'evenhand-file 1\nrate 1\nframes 4\n\n' \
	    'evenhand-file 1\nrate 48000\nframes -4\n\n' \
	    'evenhand-file 1\nrate 48000\nframes 4\nmark x y\n\n' \
	    'evenhand-file 1\nrate 48000\nframes 4\nlicence mine\n\n' \
	    "${head}title a\\0000b\n\n" "$head"; do
		printf '%b' "$wrong" > stream
		by_hand 64 "$end"
	done
done
by_hand 64 mp3
finish
