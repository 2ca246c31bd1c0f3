#!/bin/sh
# test_pace.sh - the same script at the clock's pace and as fast as possible:
# the same lines, the same history, and what time it took; and a program that
# was stopped for a moment
#
# What takes its time runs side by side.
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
tiny tiny.yaml

# The tiny routine: turns of 2 s from 0:04 on, changes of 2 s, the end at 0:20.

# With pedals: a mark, a mark in the next bow, a silence in the third turn and on
# again, two presses of which the second is a repeat, help, and a question.
printf '%s\n' '- forward' '- forward' '0:06.5 clean' '0:10.25 shaky' \
    '0:13.125 space' '0:15 forward' '0:15.1 back' '0:18.6 ?' '0:19 c' \
    '0:23.5 s' '- forward' '- words Faster?' > pedals.keys

# Without: a finger left out, marks of the round (its change is from 0:16), one
# taken back, help over a bow; leaving, going on, and an end by a pedal.
printf '%s\n' '- back' '- forward' '- 3' '- forward' '0:05 ?' '0:12.2 1' \
    '0:12.6 2' '0:13 2' '- forward' '- forward' > round.keys

# It hurts in the second turn: where, and nothing more.
printf '%s\n' '- forward' '- forward' '0:06.999 s' '0:08.001 h' '- back' '- 2' \
    '- back' '- forward' '- back' '- forward' '- forward' > hurt.keys

cases='pedals:turn round:round hurt:turn'
# slow NAME MARKING: a very busy computer, on which the program itself stood still
# for a moment, may have to try again
slow()
{
	for _ in 1 2 3; do
		rm -f "$journals/player-slow-$1.db"*
		start=$(now_ms)
		"$EVENHAND" --lines --silent --at 2026-03-02T17:00 \
		    --script "$1.keys" --marking "$2" \
		    --player "slow-$1" tiny.yaml \
		    > "$1.slow" 2> "$1.err" < /dev/null
		echo $? > "$1.status"
		echo $((($(now_ms) - start) / 1000)) > "$1.took"
		grep -q 'stood still' "$1.slow" || break
	done
}
for case in $cases; do
	slow "${case%:*}" "${case#*:}" &
done

# --- stopped for a moment -------------------------------------------------------

# Half a second is lost and the turn with it; what is shorter than a quarter of a
# second is made good and nobody need know.  stopped PLAYER SECONDS
stopped()
{
	mkfifo "$1.in"
	"$EVENHAND" --marking turn --player "$1" tiny.yaml < "$1.in" \
	    > "$1.out" 2> "$1.err" &
	pid=$!
	exec 8> "$1.in"
	comes "$1.out" "Forward: nothing is sore"
	printf c >&8
	comes "$1.out" "Forward: begin"
	sleep 0.4
	printf c >&8
	sleep 5
	kill -STOP "$pid"
	sleep "$2"
	kill -CONT "$pid"
	sleep 3
	kill -TERM "$pid"
	wait "$pid"
	exec 8>&-
	"$EVENHAND" history --json --player "$1" > "$1.json"
}
stopped long 0.4 &
longer=$!
stopped longest 0.5 &
longest=$!
# A very busy computer may have to try the short one again.
for short in short shorter shortest; do
	stopped "$short" 0.1
	grep -q 'stood still' "$short.out" || break
done
wait "$longer" "$longest"

for player in long longest; do
	is "$player: it says so" "$(grep -c 'stood still for a while' \
	    "$player.out")" 1
	is "$player: no whole turn" "$(turns "$player.json" bows_done 1 |
	    grep -c 2)" 0
done
is "short: nothing to say" "$(grep -c 'stood still' "$short.out")" 0
is "short: the turn is whole" "$(turns "$short.json" bows_done 1)" 2

# --- fast and slow ----------------------------------------------------------------

wait
for case in $cases; do
	name=${case%:*}
	status_is "$(cat "$name.status")" 0 "$name, at the clock's pace"
	session 2026-03-02T17:00 "$name.keys" --marking "${case#*:}" \
	    --player "fast-$name" tiny.yaml
	status_is $? 0 "$name, as fast as possible"
	# The journals alone have other names.
	sed 's/for fast-/for slow-/' "$work/out" > "$name.fast"
	# What to follow without sound is told to those who practise along.
	so "$name: what is left to follow" grep -q '^Without sound, follow these' \
	    "$name.slow"
	sed '/^Without sound, follow these/,/the full screen alone\.$/d' \
	    "$name.slow" > "$name.rest"
	so "$name: the same lines" cmp "$name.fast" "$name.rest"
	so "$name: a word to compare" [ "$(wc -l < "$name.slow")" -ge 12 ]
	for pace in fast slow; do
		"$EVENHAND" history --json --player "$pace-$name" > h.json
		grep -v made_on h.json > "$name.$pace.json"
	done
	so "$name: the same history" cmp "$name.fast.json" "$name.slow.json"
	so "$name: a turn to compare" [ "$(grep -c '"slide_um"' h.json)" -ge 1 ]
	length=$(ask h.json "select json_extract(j,
	    '\$.sittings[0].length_ms') / 1000 from f")
	took=$(cat "$name.took")
	so "$name took its time: $took s for $length s" \
	    [ "$took" -ge "$length" ]
	# Beside the session there is only its start and its end.
	so "and no more" [ "$took" -le $((length + 20)) ]
done
"$EVENHAND" history --json --player slow-pedals > h.json
is "the turn again" "$(turns h.json resets 1)" "0 0 1 0"
finish
