#!/bin/sh
# test_input.sh - no keys, no more keys, nobody reading, and being stopped: the
# practice ends with what was played kept, and says so
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
tiny tiny.yaml

ended()
{
	"$EVENHAND" history --json --player "$1" > e.json
	ask e.json "select json_extract(j, '\$.sittings[0].ended') from f"
}

# --- no keys at all ---------------------------------------------------------

run 0 --player none tiny.yaml
has "$work/out" 'No more keys can come'
"$EVENHAND" --player none tiny.yaml > "$work/out" 2> "$work/err" <&-
status_is $? 0 'input closed'
has "$work/out" 'No more keys can come'
is "nothing was played" "$("$EVENHAND" history --json --player none |
    grep -c '"turn"')" 0

# --- two keys of a pipe, then its end in mid sound --------------------------

# begin PLAYER KEY KEY: a session at true pace in $pid, and the keys that begin
# it; more of them go to 9
begin()
{
	mkfifo in
	"$EVENHAND" --marking turn --player "$1" tiny.yaml < in \
	    > "$work/out" 2> "$work/err" &
	pid=$!
	exec 9> in
	rm in
	comes "$work/out" "Forward: nothing is sore"
	printf '%s' "$2" >&9
	comes "$work/out" "Forward: begin"
	sleep 0.4
	printf '%s' "$3" >&9
}

# The first turn is over at 0:06, the second sounds from 0:08 to 0:10.
mid_sound()
{
	comes "$work/out" "Next: finger 2"
	sleep 2.2
}

begin pipe "$(printf '\033[6~')" "$(printf '\r')"
mid_sound
exec 9>&-
wait "$pid"
status_is $? 0 'a pipe that ends'
has "$work/out" 'All of it is kept.'
is "how it ended" "$(ended pipe)" input
is "what was played is kept" "$(turns e.json bows_done 1)" 2

# --- nobody reads any more ---------------------------------------------------

(sleep 0.2; printf c; sleep 0.5; printf c; sleep 9) |
    "$EVENHAND" --marking turn --player deaf tiny.yaml 2> "$work/err" |
    head -n 1 > "$work/out"
is "no complaint of a reader that went" "$(cat "$work/err")" ""
(printf '%s\n' '- forward' '- forward' '0:06.5 c' '0:30 c') > keys
"$EVENHAND" --clock fast --script keys --player full tiny.yaml \
    > /dev/full 2> "$work/err"
status_is $? 74 'a full disk behind standard output'
is "said once" "$(grep -c 'cannot be printed' "$work/err")" 1
"$EVENHAND" --clock fast --script keys --player shut tiny.yaml \
    2> "$work/err" >&-
status_is $? 74 'output closed'

# --- stopped from outside, in mid sound --------------------------------------

# (A shell lets what it starts in the background ignore INT: that one is
# pressed in test_terminal.)
for case in 'TERM 143' 'HUP 129'; do
	signal=${case% *}
	begin "$signal" c c
	mid_sound
	kill -s "$signal" "$pid"
	wait "$pid"
	status_is $? "${case#* }" "stopped by $signal"
	exec 9>&-
	is "how it ended" "$(ended "$signal")" input
	is "what was played is kept" "$(turns e.json bows_done 1)" 2
done

# --- the program stood still --------------------------------------------------

# In the middle of the first turn, which sounds from 0:04 to 0:06.
begin still c c
sleep 5
kill -STOP "$pid"
sleep 3
kill -CONT "$pid"
sleep 1
kill -TERM "$pid"
wait "$pid"
exec 9>&-
so "it says so" grep -q 'stood still for a while' "$work/out"
so "no turn runs through it" [ "$("$EVENHAND" history --json --player still |
    grep -c '"bows_done": 2')" = 0 ]
finish
