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

# literal PAGE SECTION: what is to be typed there
literal()
{
	awk -v section="$2" '
	/^\.Sh / { here = $0 == ".Sh " section }
	here && /^\.Ed/ { inside = 0 }
	here && sub(/^\.Dl /, "") || here && inside {
		gsub(/\\\(dq/, "\"")
		print
	}
	here && /^\.Bd -literal/ { inside = 1 }' "$root/man/$1"
}

# evenhand.1: its examples, run as they stand there; what is given away is what
# the session among them left.

literal evenhand.1 SCRIPTS > keys.txt
so "the manual has a script" [ -s keys.txt ]
literal evenhand.1 EXAMPLES > examples
so "the manual has examples" [ "$(wc -l < examples)" -ge 3 ]
# those PATTERN: runs those that fit
those()
{
	grep "$@" examples > some
	while read -r name arguments; do
		is "an example of" "$name" evenhand
		# shellcheck disable=SC2086
		run 0 $arguments
	done < some
}
those -v -e ' give ' -e ' gather '
has "$work/out" "Everything is silent"
those -e ' give ' -e ' gather '
has "$work/out" "1 known"
so "the first example wrote a routine" cmp -s mine.yaml "$root/routines/cello.yaml"

# evenhand-record.5: its session, in a record whose routine it names, is gathered
# and given again as it stands there.
literal evenhand-record.5 EXAMPLES > session
so "the manual has a session" [ -s session ]
fingerprint=$(sed -n 's/^- fingerprint: //p' wren.yaml)
{
	sed '/^since: /d; /^sittings:/q' wren.yaml
	sed "s/^  routine: .*/  routine: $fingerprint/" session
	echo 'notes: []'
} > example.yaml
HOME=$work/another
mkdir "$HOME"
run 0 gather example.yaml
run 0 give -o again.yaml
HOME=$work/home
sed -n '/^sittings:/,$p' example.yaml > was
sed -n '/^sittings:/,$p' again.yaml > given
so "the session of the manual comes out as it went in" cmp was given

# What it says of settings can be written, every key of them.
settings=$HOME/.config/evenhand/settings.yaml
mkdir -p "${settings%/*}"
literal evenhand.1 SETTINGS > "$settings"
run 0 today
is "faults of the settings in the manual" "$(cat "$work/err")" ""
is "their keys" "$(sed 's/:.*//' "$settings" | sort | tr '\n' ' ')" \
    "$(sed -n '/\[MAP_SETTINGS\] = {/,/} }/p' "$root/src/routine/keys.c" |
	grep -o '"[a-z_][a-z_]*"' | tr -d '"' | sort | tr '\n' ' ')"
sed -i.kept 's/^loudness: .*/loudness: 101/' "$settings"
run 0 today
has "$work/err" "loudness"
rm "$settings" "$settings.kept"

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
