#!/bin/sh
# test_cookbook.sh - every recipe of the cookbook is good as it stands, and every
# answer shown is what the program says
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/page.sh
. "$root/tests/whole/page.sh"

page=$root/docs/cookbook.md
page_files "$page"
page_consoles "$page"
page_links "$page"
is "every example has a name" "$(grep -c '^```yaml$' "$page")" 0
is "as many files as examples" "$(find . -name '*.yaml' | wc -l | tr -d ' ')" \
    "$(grep -c '^```yaml ' "$page")"
is "as many commands as are shown" "$(cat "$work/consoles")" \
    "$(grep -c '^\$ ' "$page")"
so "there are many" [ "$(wc -l < "$work/names")" -ge 20 ]

# Those with a fault are the ones whose fault is shown.
cat "$work"/console-*.wanted | sed -n 's/^\([a-z-]*\.yaml\):[0-9]*:.*/\1/p' |
    sort -u > "$work/faulty"
is "files with a fault" "$(tr '\n' ' ' < "$work/faulty")" \
    "$(grep '^slip-' "$work/names" | sort | tr '\n' ' ')"
grep -vxF -f "$work/faulty" "$work/names" > "$work/good"
while read -r file; do
	run 0 check "$file"
	has "$work/out" "$file is good"
	is "no fault" "$(cat "$work/err")" ""
done < "$work/good"
while read -r file; do
	"$EVENHAND" check "$file" > "$work/out" 2>&1 < /dev/null
	case $? in
	65 | 66) ok "$file has faults" ;;
	*) fail "$file has no fault" ;;
	esac
done < "$work/faulty"
page_says

# What editors are told of the files agrees.
# Names of files have no spaces.
# shellcheck disable=SC2046
"$python" "$root/tests/tools/schema.py" "$root/routines/evenhand.schema.json" \
    good $(cat "$work/good") || bad=1

# The first recipe is the routine that ships, but for what it says to leave out:
# it comes to the same.
cp "$root/routines/cello.yaml" .
run 0 check cello.yaml
mv "$work/out" "$work/shipped"
run 0 check wide-to-still.yaml
sed 's/^wide-to-still\.yaml/cello.yaml/' "$work/out" > "$work/ours"
so "the cello recipe comes to what the shipped routine does" \
    cmp -s "$work/ours" "$work/shipped"

# Without a finger the history goes on.
echo '0:26 clean' > keys
routine_at tone
session 2026-03-02T17:00 keys tone.yaml
status_is $? 0 "a session with four fingers"
run 0 today --at 2026-03-03T17:00 without-three.yaml
has "$work/out" "Today: A tone apart, day 2."

finish
