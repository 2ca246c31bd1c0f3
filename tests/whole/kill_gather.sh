#!/bin/sh
# kill_gather.sh - gathering killed (SIGKILL) at random moments: the journal is
# as it was before or holds the whole record, and nothing between
#
# KILLS says how often; 20 when it is not set.
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
kills=${KILLS:-20}

routine_at wide
printf '%s\n' '0:45 c' '0:57 c' > keys
for day in 02 03 04 05 06; do
	session "2026-03-${day}T17:00" keys --marking turn wide.yaml
done
run 0 give -o early.yaml
for day in 10 11 12 13 14 15 16 17 18 19 20; do
	session "2026-03-${day}T17:00" keys --marking turn wide.yaml
done
run 0 give -o whole.yaml
run 0 gather --player before early.yaml
run 0 gather --player after early.yaml whole.yaml
told()
{
	"$EVENHAND" history --json --player "$1" 2> "$work/err" |
	    grep -v '^"made_on"'
}
told before > before.json
told after > after.json
is "sittings before and after" "$(grep -c '"began"' before.json) \
$(grep -c '"began"' after.json)" "5 16"

# How long a merge takes, to spread the kills over it.
cp "$journals/player-before.db" "$journals/player-timed.db"
start=$(now_ms)
run 0 gather --player timed whole.yaml
whole=$(($(now_ms) - start))

i=0
old=0
new=0
while [ "$i" -lt "$kills" ]; do
	i=$((i + 1))
	rm -f "$journals"/player-killed.db*
	cp "$journals/player-before.db" "$journals/player-killed.db"
	cut_off $((whole + 5)) gather --player killed whole.yaml
	told killed > killed.json
	if cmp -s killed.json before.json; then
		old=$((old + 1))
	elif cmp -s killed.json after.json; then
		new=$((new + 1))
	else
		fail "kill $i after $delay ms: neither the old history nor the new"
	fi
	is "integrity" "$(sqlite3 "$journals/player-killed.db" \
	    'pragma integrity_check')" ok
done
so "$old kills left the old history, $new the new one" [ "$old" -gt 0 ]
run 0 gather --player killed whole.yaml
told killed > killed.json
so "gathered again, it is whole" cmp killed.json after.json

# Two students of a class who are one: two lines, or one line with all of it.
session 2026-03-21T17:00 keys --marking turn --player other wide.yaml
run 0 give -o other.yaml --player other
run 65 gather other.yaml
ids=$(grep -o '[0-9a-f]*+[0-9a-f]*' "$work/err")
lines_of()
{
	"$EVENHAND" class "$1" --csv --at 2026-03-22T17:00 2> "$work/err"
}
run 0 gather --class apart whole.yaml other.yaml
lines_of apart > apart.csv
cp -R apart joined
start=$(now_ms)
run 0 gather --class joined --join "$ids"
whole=$(($(now_ms) - start))
lines_of joined > joined.csv
is "lines before and after" "$(wc -l < apart.csv) $(wc -l < joined.csv)" "3 2"
i=0
while [ "$i" -lt "$kills" ]; do
	i=$((i + 1))
	rm -rf killed
	cp -R apart killed
	cut_off $((whole + 5)) gather --class killed --join "$ids"
	lines_of killed > killed.csv
	cmp -s killed.csv apart.csv || cmp -s killed.csv joined.csv ||
	    fail "kill $i after $delay ms: neither the old class nor the new"
done
run 0 gather --class killed --join "$ids"
lines_of killed > killed.csv
so "joined again, it is one line" cmp killed.csv joined.csv

# A record that is given leaves the old file or the new one.
run 0 give -o kept.yaml --at 2026-03-21T10:00
grep -v '^given' kept.yaml > rest
torn=0
i=0
while [ "$i" -lt "$kills" ]; do
	i=$((i + 1))
	cut_off 40 give -o kept.yaml --force --at 2026-03-22T10:00
	grep -v '^given' kept.yaml > now
	cmp -s rest now || torn=$((torn + 1))
done
is "torn files of $kills" "$torn" 0
finish
