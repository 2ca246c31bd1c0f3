#!/bin/sh
# test_lines_held.sh - line mode before a reader who does not read: the session
# goes on at its pace and keeps all; the reader who comes back reads all of it
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
tiny tiny.yaml
printf '%s\n' '- forward' '- forward' '0:06.5 clean' '0:10.25 shaky' > keys.txt

# full NAME: a pipe that takes nothing more
full()
{
	mkfifo "$1"
	exec 7<> "$1"
	# It blocks when it is full, which is what is wanted.
	dd if=/dev/zero of="$1" bs=4096 count=4096 2> /dev/null &
	filler=$!
	sleep 1
	kill "$filler"
	wait "$filler" 2> /dev/null
}

# held NAME: a session into it
held()
{
	"$EVENHAND" --lines --silent --at 2026-03-02T17:00 --player "$1" \
	    --script keys.txt --marking turn tiny.yaml 2> "$1.err" \
	    < /dev/null >&7 &
	pid=$!
}

# shellcheck disable=SC2317 # called by so
ended()
{
	left=120
	while [ "$left" -gt 0 ]; do
		kill -0 "$pid" 2> /dev/null || return 0
		left=$((left - 1))
		sleep 1
	done
	kill -KILL "$pid"
	return 1
}

# --- nobody ever reads ----------------------------------------------------------

full never
start=$(date +%s)
held never
so "it ends by itself" ended
wait "$pid"
status_is $? 0 "nobody reads"
took=$(($(date +%s) - start))
so "at its own pace: $took s" [ "$took" -ge 18 ]
exec 7>&-
"$EVENHAND" history --json --player never > never.json
is "all turns are kept, with their marks" "$(ask never.json "select
    group_concat(json_extract(value, '\$.mark'))
    from f, json_each(j, '\$.turns')")" \
    "clean,shaky,none,none"

# --- somebody reads again -------------------------------------------------------

full later
held later
sleep 8
# The bytes that filled it are no lines.
tr -d '\000' < later > later.out 7>&- &
reader=$!
so "it ends by itself" ended
wait "$pid"
status_is $? 0 "read later"
exec 7>&-
wait "$reader"
has later.out "Forward: begin. Back: not today."
has later.out "Marked: clean."
has later.out "Marked: shaky."
has later.out "That was today's session."
finish
