#!/bin/sh
# test_files.sh - no file more may be open (EMFILE) at every place where one is
# opened, one after the other, and from each on
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/../whole/lib.sh"
# shellcheck source=tests/faults/nth.sh
. "${root:?}/tests/faults/nth.sh"

practised_tiny

every files evenhand nothing check tiny.yaml
every files evenhand planned today --at "$day" --why tiny.yaml
every files evenhand nothing history --json
every files evenhand nothing history --lines
every files evenhand before_or_after class wrens --at "$day"
every_lying files
every files evenhand a_file give -o new.yaml --at "$day"
if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
	every files evenhand a_file print homework -o week.pdf --at "$day"
fi
if [ -x "${EVENHAND%/*}/evenhand-file" ]; then
	every files evenhand a_file track -o today.wav --at "$day" tiny.yaml
	"$EVENHAND" track -o "$work/kept/files/heard.wav" --at "$day" tiny.yaml
	every files evenhand a_file measure heard.wav --track heard.csv
fi
every files evenhand before_or_after gather --player other late.yaml
every files evenhand before_or_after gather --class wrens late.yaml
every files evenhand every_turn --lines --clock fast --at "$day" \
    --script keys --marking turn tiny.yaml
finish
