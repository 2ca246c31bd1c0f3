#!/bin/sh
# test_manual.sh - the manual of the routine file, the schema and the reader
# know the same keys and bounds, and every example of the manual is good
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# Debian's own python3 is the one its packages are for.
python=python3
if [ -x /usr/bin/python3 ]; then
	python=/usr/bin/python3
fi

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

finish
