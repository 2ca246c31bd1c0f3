#!/bin/sh
# kill.sh - fast sessions killed (SIGKILL) at random moments: each turn that
# was printed is in the journal with its mark, and the journal opens clean
#
# KILLS says how often; 40 when it is not set.
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
kills=${KILLS:-40}

routine_at tone
pedals keys

count()
{
	grep -c "$1" "$2"
}

# How long a whole session takes, to spread the kills over it.
start=$(now_ms)
session 2026-01-01T17:00 keys --marking turn tone.yaml
status_is $? 0 "a session that is left alone"
whole=$(($(now_ms) - start))
so "it has turns to lose" [ "$(count '^Clean or shaky' "$work/out")" -ge 20 ]

turns_before=0
marks_before=0
history_counts()
{
	if ! "$EVENHAND" history --json > h.json 2> "$work/err"; then
		fail "the journal cannot be read after kill $1"
		cat "$work/err"
	fi
	turns=$(count '"turn":' h.json)
	marks=$(count '"mark": "clean"' h.json)
}
history_counts 0
turns_before=$turns
marks_before=$marks

i=0
middle=0
while [ "$i" -lt "$kills" ]; do
	i=$((i + 1))
	day=$(printf '2026-%02d-%02d' $((i / 28 + 2)) $((i % 28 + 1)))
	cut_off $((whole + 5)) --clock fast --at "${day}T17:00" --script keys \
	    --marking turn tone.yaml
	history_counts "$i"
	asked=$(count '^Clean or shaky' "$work/out")
	marked=$(count '^Marked: .*clean' "$work/out")
	if [ $((turns - turns_before)) -lt "$asked" ]; then
		fail "kill $i after $delay ms: $asked turns were printed, \
$((turns - turns_before)) are kept"
	fi
	if [ $((marks - marks_before)) -lt "$marked" ]; then
		fail "kill $i after $delay ms: $marked marks were printed, \
$((marks - marks_before)) are kept"
	fi
	if [ -s "$work/err" ]; then
		fail "kill $i: the next start complained: $(cat "$work/err")"
	fi
	if [ "$asked" -gt 0 ] && [ "$asked" -lt 20 ]; then
		middle=$((middle + 1))
	fi
	turns_before=$turns
	marks_before=$marks
done
so "$middle of $kills kills in mid session" [ "$middle" -gt 0 ]
for file in "$journals"/*.db; do
	is "integrity" "$(sqlite3 "$file" 'pragma integrity_check')" ok
done
session 2026-12-31T17:00 keys --marking turn tone.yaml
status_is $? 0 "a session after $kills kills"
is "nothing on standard error" "$(cat "$work/err")" ""
[ "$bad" -eq 0 ] && ok "$kills kills, every printed turn and mark kept"
finish
