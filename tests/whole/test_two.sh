#!/bin/sh
# test_two.sh - a second evenhand at the same time
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

mkfifo in
"$EVENHAND" < in > first.out 2> first.err &
pid=$!
exec 9> in
comes first.out Forward
run 75 --clock fast --at 2026-03-02T17:00
one_sentence 'another evenhand is open for this player. Close it first'
run 0 today
run 0 history --json
run 0 --player other --clock fast --at 2026-03-02T17:00
exec 9>&-
wait "$pid"
status_is $? 0 'the first one'
is "the first one saw nothing of it" "$(cat first.err)" ""
run 0 --clock fast --at 2026-03-02T17:00

# One that was killed leaves no lock behind.
"$EVENHAND" < in > second.out 2> first.err &
pid=$!
exec 9> in
comes second.out Forward
kill -KILL "$pid"
wait "$pid" 2> "$work/quiet"
exec 9>&-
run 0 --clock fast --at 2026-03-02T17:00
finish
