#!/bin/sh
# test_pace.sh - the same script at the clock's pace and as fast as possible:
# the same lines, the same history; and what time it took
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
tiny tiny.yaml

# A mark, a silence in the third turn and on again, a mark in the next bow, and
# two presses where the second is a repeat.
printf '%s\n' '- forward' '- forward' '0:06.5 clean' '0:10.25 shaky' \
    '0:13.125 space' '0:15 forward' '0:15.1 back' '0:19 c' '0:23.5 s' \
    '- forward' '- words Faster?' > keys

session 2026-03-02T17:00 keys --marking turn --player fast tiny.yaml
status_is $? 0 'as fast as possible'
cp "$work/out" fast.out
start=$(date +%s)
"$EVENHAND" --lines --at 2026-03-02T17:00 --script keys --marking turn \
    --player slow tiny.yaml > slow.out 2> "$work/err" < /dev/null
status_is $? 0 "at the clock's pace"
took=$(($(date +%s) - start))

so "the same lines" cmp fast.out slow.out
"$EVENHAND" history --json --player fast > fast.json
"$EVENHAND" history --json --player slow > slow.json
grep -v made_on fast.json > fast.part
grep -v made_on slow.json > slow.part
so "the same history" cmp fast.part slow.part
so "there was something to compare" [ "$(grep -c '"turn"' fast.json)" -ge 4 ]
is "the turn again" "$(turns slow.json resets 1)" "0 0 1 0"
length=$(ask slow.json "select json_extract(j, '\$.sittings[0].length_ms') / 1000
    from f")
so "it took its time: $took s for $length s" [ "$took" -ge "$length" ]
so "and no more" [ "$took" -le $((length + 4)) ]
finish
