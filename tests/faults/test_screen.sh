#!/bin/sh
# test_screen.sh - memory is not to be had in a session on a full screen: whatever
# comes of it, the terminal is given back as it was, and the turns are kept
#
# Functions are called by way of every.
# shellcheck disable=SC2317
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/../whole/lib.sh"
# shellcheck source=tests/faults/nth.sh
. "${root:?}/tests/faults/nth.sh"

practised_tiny
ON="${python:?} $root/tests/tools/terminal.py 80 24"
export TERM=xterm-256color FAILS_OWN=yes

# What is shown hangs on the moments at which it is drawn.  Without memory for a
# screen the practice goes on in lines.
same()
{
	grep -q '\[?1049h\|^Today: ' "$work/out"
}

kept()
{
	"$EVENHAND" history --json 2>&1 < /dev/null | grep -c '"turn":'
}

# in_history LABEL: a session that says nothing has all its turns in the history
in_history()
{
	[ "$status" -eq 0 ] || return 0
	[ "$(kept)" = "$whole" ] ||
	    grep -q 'will be missing in\|cannot be kept just now' "$work/err" ||
	    fail "$1: $(kept) of $whole turns are kept"
}

failing 0 --clock fast --at "$day" --script keys --marking turn \
    tiny.yaml
whole=$(kept)
so "a session adds turns: $turns_before, $whole" \
    [ "$whole" -gt "$turns_before" ]
every memory evenhand in_history --clock fast --at "$day" \
    --script keys --marking turn tiny.yaml
finish
