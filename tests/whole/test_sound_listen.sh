#!/bin/sh
# test_sound_listen.sh - a session at true pace with a bowed string in the
# microphone: what the journal keeps is compared with what was played
#
# BOWING writes the string of the whole session as a file; it is played into the
# microphone of a virtual server when the session says that its first part
# begins.  Of the last turn two tops are left out.
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
: "${BOWING:?the program that bows}"
left_out=2
# Longer cycles are lost less often when the computer is busy.
export SOUND_CYCLE=1024

minute tone.yaml
sed -i.was 's/id: small, title: Small/id: tone, title: Tone/
    s/travel: semitone/travel: tone/' tone.yaml
minute_keys > keys
"$BOWING" tone.yaml bowed.wav "$left_out" > truth.txt
so "there is a string to be heard" [ -s bowed.wav ]
server pipewire

# bowed NAME ARGUMENTS...: a session with the string in its microphone
bowed()
{
	practise "$@"
	comes "$work/out" "Work: Tone"
	"$server" feed "$PWD/bowed.wav" > "$work/feed" 2>&1 &
	feeder=$!
	wait "$pid"
	status=$?
	kill "$feeder" 2> "$work/gone"
	wait "$feeder"
}

# When the server or the computer falls behind, the sound is lost for a moment or
# comes much too late; a very busy one may have to try again.
for name in one two three; do
	bowed "$name" tone.yaml --listen
	"$EVENHAND" history --json --player "$name" > h.json
	[ "$(measured h.json tops_heard)" != "12.0 12.0 12.0 10.0" ] ||
	    [ "$(measured h.json stops)" != "0.0 0.0 0.0 0.0" ] || break
done
status_is "$status" 0 "a minute that was listened to"
is "nothing on standard error" "$(cat "$work/err")" ""
so "it is said that a microphone listens" \
    grep -q "From now on a microphone listens" "$work/out"
so "every turn has its measures" \
    [ "$(turns h.json measures.method 1)" = "1 1 1 1" ]
is "bows listened to" "$(measured h.json bows_listened)" "2.0 2.0 2.0 2.0"
is "tops heard" "$(measured h.json tops_heard)" "12.0 12.0 12.0 10.0"
is "bows with every top" "$(measured h.json bows_full)" "2.0 2.0 2.0 1.0"

# The way is 200 cents by the file; a pause in it makes the last one uneven.
near travel_cents 196 204
near travel_share 0.98 1.02
near share 0.9 1
so "no turn stopped" [ "$(measured h.json stops)" = "0.0 0.0 0.0 0.0" ]

# The end page tells of it, and the one thing is finger 4.
so "the end page counts the tops" \
    grep -q '"Tone": 46 of 48 tops were heard' "$work/out"
tr '\n' ' ' < "$work/out" > one-line
so "it questions the clean mark" \
    grep -q "You marked finger 4 clean; 2 tops were not heard" one-line
is "no mark was changed" "$(turns h.json mark 1)" "clean clean clean clean"
finish
