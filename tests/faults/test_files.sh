#!/bin/sh
# test_files.sh - no file more may be open (EMFILE) at every place where one is
# opened, one after the other, and from each on
#
# Functions are called by way of so.
# shellcheck disable=SC2317
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/../whole/lib.sh"
# shellcheck source=tests/faults/nth.sh
. "${root:?}/tests/faults/nth.sh"

practised_tiny

# The sentences of the page of faults, and what else may be said of such a run.
{
	grep -o '"[^"]*"' "$root/docs/faults.md" |
	    sed 's/^"//; s/"$//; s/[].[*^$\\]/\\&/g; s/…/.*/g'
	printf '%s\n' ' is written, [0-9]* rows\.$' \
	    ': 1 new record was gathered from the folder\.$'
} > "$work/page"

on_the_page()
{
	! grep -vf "$work/page" "$work/said"
}

# files AFTER ARGUMENTS...: what is told tells what to do
files()
{
	every files evenhand "$@"
	so "all of it is on the page" on_the_page
}

files nothing check tiny.yaml
files planned today --at "$day" --why tiny.yaml
files nothing history --json
files nothing history --lines
files before_or_after class wrens --at "$day"
every_lying files
files a_file give -o new.yaml --at "$day"
if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
	files a_file print homework -o week.pdf --at "$day"
fi
if [ -x "${EVENHAND%/*}/evenhand-file" ]; then
	files a_file track -o today.wav --at "$day" tiny.yaml
	"$EVENHAND" track -o "$work/kept/files/heard.wav" --at "$day" tiny.yaml
	files a_file measure heard.wav --track heard.csv
fi
files before_or_after gather --player other late.yaml
files before_or_after gather --class wrens late.yaml
files every_turn --lines --clock fast --at "$day" \
    --script keys --marking turn tiny.yaml
finish
