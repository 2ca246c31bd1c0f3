#!/bin/sh
# test_manual.sh - the manual of the routine file, the schema and the reader
# know the same keys and bounds, and every example of the manual is good
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

"$python" "$root/tests/tools/manual.py" "$root/man/evenhand-routine.5" \
    "$root/routines/evenhand.schema.json" "$root/src/routine/keys.c" . \
    "$root"/include/evenhand/base/messages/*.h || bad=1

fits()
{
	"$python" "$root/tests/tools/schema.py" \
	    "$root/routines/evenhand.schema.json" "$@"
}

cp "$root/routines/cello.yaml" .
for file in example-*.yaml good-*.yaml; do
	run 0 check "$file"
done
for file in bad-*.yaml; do
	run 65 check "$file"
	is "one fault" "$(wc -l < "$work/err" | tr -d ' ')" 1
done
fits good example-*.yaml good-*.yaml || bad=1
fits bad bad-*.yaml || bad=1

# evenhand.1: its examples, run as they stand there.
literal()
{
	awk -v section="$1" '
	/^\.Sh / { here = $0 == ".Sh " section }
	here && /^\.Ed/ { inside = 0 }
	here && inside { print }
	here && /^\.Bd -literal/ { inside = 1 }' "$root/man/evenhand.1"
}

literal SCRIPTS > keys.txt
so "the manual has a script" [ -s keys.txt ]
literal EXAMPLES > examples
so "the manual has examples" [ "$(wc -l < examples)" -ge 3 ]
while read -r name arguments; do
	is "an example of" "$name" evenhand
	# shellcheck disable=SC2086
	run 0 $arguments
done < examples
has "$work/out" "Everything is silent"
so "the first example wrote a routine" cmp -s mine.yaml "$root/routines/cello.yaml"

# Its list of JSON keys is that of a history.
awk '/^\.Sh THE HISTORY AS JSON/ { here = 1; next } /^\.Sh / { here = 0 }
	here && /^(\.It )?\.?(Li|It Li|Pq Li) |^\.Li |^\.It Li / { print }' \
    "$root/man/evenhand.1" | grep -v -e '^\.P' -e '[\\] ' |
    sed 's/^\.It Li//; s/^\.Li//; s/[,;.]//g' | tr ' ' '\n' |
    grep '^[a-z_][a-z_]*$' | sort -u > manual-keys
history_json history.json
ask history.json "select distinct key from f, json_tree(j)
    where typeof(key) = 'text' order by 1" > json-keys
is "keys of the history that the manual has" \
    "$(comm -13 manual-keys json-keys)" ""
# Only a turn that was listened to has a method: see test_listen.sh.
is "and no other" "$(comm -23 manual-keys json-keys | grep -vx method |
    tr '\n' ' ')" ""

finish
