#!/bin/sh
# test_schema.sh - the published schema against a general-purpose validator:
# every routine that ships fits it, every broken file is refused where it is
# broken
set -u
here=$(cd "$(dirname "$0")/../.." && pwd)
# Debian's own python3 is the one its packages are for.
python=python3
if [ -x /usr/bin/python3 ]; then
	python=/usr/bin/python3
fi
judge()
{
	"$python" "$here/tests/tools/schema.py" \
	    "$here/routines/evenhand.schema.json" "$@"
}
bad=0
judge good "$here"/routines/*.yaml || bad=1
judge bad "$here"/tests/routine/schema/*.yaml || bad=1
exit $bad
