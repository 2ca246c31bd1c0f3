#!/bin/sh
# test_schema.sh - the published schemas against a general-purpose validator:
# every routine that ships fits its own, so do records, and every broken file is
# refused where it is broken
set -u
here=$(cd "$(dirname "$0")/../.." && pwd)
# Debian's own python3 is the one its packages are for.
python=python3
if [ -x /usr/bin/python3 ]; then
	python=/usr/bin/python3
fi
judge()
{
	schema=$1
	shift
	"$python" "$here/tests/tools/schema.py" "$here/routines/$schema" "$@"
}
bad=0
judge evenhand.schema.json good "$here"/routines/*.yaml || bad=1
judge evenhand.schema.json bad "$here"/tests/routine/schema/*.yaml || bad=1
judge evenhand-record.schema.json good "$here"/tests/fuzz/record/*.yaml || bad=1
judge evenhand-record.schema.json bad "$here"/tests/record/schema/*.yaml || bad=1
exit $bad
