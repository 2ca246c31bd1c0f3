#!/bin/sh
# test_listen.sh - a session as fast as it goes with a bowed string in its
# microphone, which is a file of ALSA's: what is kept is compared with what is in
# it, and with the same session without a microphone
#
# BOWING writes the string; of the last turn two tops are left out.
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
: "${BOWING:?the program that bows}"
alsa file
cat > "$alone" <<-END
	pcm.tap { type file slave.pcm { type null } file '/dev/null' format raw }
	pcm.string { type file slave.pcm { type null } file '/dev/null'
	    infile '$PWD/bowed.raw' format raw }
	pcm.!default { type asym playback.pcm { type plug slave.pcm tap }
	    capture.pcm { type plug slave.pcm string } }
	END
minute tone.yaml
sed -i.was 's/id: small, title: Small/id: tone, title: Tone/
    s/travel: semitone/travel: tone/' tone.yaml
minute_keys > keys
"$BOWING" tone.yaml bowed.raw 2 "${LATER-850}" > truth.txt
so "there is a string to be heard" [ -s bowed.raw ]

session 2026-03-02T17:00 keys --marking turn --card default --listen tone.yaml
status_is $? 0 "a session that was listened to"
is "nothing on standard error" "$(cat "$work/err")" ""
history_json h.json
is "bows listened to" "$(measured h.json bows_listened)" "2.0 2.0 2.0 2.0"
is "tops heard" "$(measured h.json tops_heard)" "12.0 12.0 12.0 10.0"
is "bows with every top" "$(measured h.json bows_full)" "2.0 2.0 2.0 1.0"
is "stops of the bow" "$(measured h.json stops)" "0.0 0.0 0.0 0.0"

near travel_cents 198 202
near travel_share 0.99 1.01
near share 0.95 1

# The end page tells of it, and the one thing is finger 4.
tr '\n' ' ' < "$work/out" > one-line
so "it is said that a microphone listens" \
    grep -q "From now on a microphone listens" one-line
so "the end page counts the tops and questions the mark" \
    grep -q '"Tone": 46 of 48 tops were heard. You marked finger 4 clean; 2' \
    one-line
is "no mark was changed" "$(turns h.json mark 1)" "clean clean clean clean"

# A teacher finds it in lines and in the table.
run 0 history --lines
so "in the lines of the day" grep -q "Bows with every top heard: \
finger 1: 2 of 2, finger 2: 2 of 2," "$work/out"
so "finger 4 among them" grep -q "finger 4: 1 of 2\." "$work/out"
run 0 history --csv
is "in the table" "$(grep ,work, "$work/out" | tr -d '\r' | cut -d, -f4,14,15 |
    tr '\n' ' ')" "1,2,2 2,2,2 3,2,2 4,2,1 "

# Without a microphone the history is the same but for its measures.
session 2026-03-02T17:00 keys --marking turn --card default --no-listen \
    --player deaf tone.yaml
status_is $? 0 "the same without a microphone"
so "and nobody listens" [ -z "$(grep -i microphone "$work/out")" ]
"$EVENHAND" history --json --player deaf > d.json
for file in h d; do
	grep -v -e made_on "$file.json" | sed 's/"measures": .*//' \
	    > "$file.txt"
done
so "the same history" cmp h.txt d.txt
is "without measures" "$(measured d.json method)" ""
run 0 history --csv --player deaf
is "nor in the table" "$(grep ,work, "$work/out" | tr -d '\r' | cut -d, -f14,15 |
    sort -u)" ","
run 0 history --lines --player deaf
so "nor in lines" [ -z "$(grep 'every top heard' "$work/out")" ]

# One that is not there does not listen from now on.
session 2026-03-02T17:00 keys --marking turn --card default \
    --microphone piano --player gone tone.yaml
status_is $? 0 "with a microphone that is not there"
so "that is said" grep -q 'No microphone here is called "piano"' "$work/out"
so "and nothing else" [ -z "$(grep "From now on" "$work/out")" ]

# Where no sound is wanted no microphone is heard, and that is said.
session 2026-03-02T17:00 keys --marking turn --silent --listen --player mute \
    tone.yaml
status_is $? 0 "in silence"
so "it says that nobody listens" grep -q "nobody listens this time" "$work/out"

# A microphone that gives nothing is told of once, on the end page.
head -c "$(wc -c < bowed.raw)" /dev/zero > silent.raw
sed -i.was 's/bowed\.raw/silent.raw/' "$alone"
session 2026-03-02T17:00 keys --marking turn --card default --listen \
    --player dead tone.yaml
status_is $? 0 "with a dead microphone"
tr '\n' ' ' < "$work/out" > one-line
is "it is told of once" "$(grep -o "The microphone [a-z ]*" one-line |
    grep -v listens)" "The microphone heard next to nothing"
run 64 --listen --no-listen tone.yaml
one_sentence "not both"
finish
