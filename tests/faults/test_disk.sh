#!/bin/sh
# test_disk.sh - whatever changes a file or a folder fails: the disk is full
# (ENOSPC), gives errors (EIO), or may not be written (EROFS), at every place
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/../whole/lib.sh"
# shellcheck source=tests/faults/nth.sh
. "${root:?}/tests/faults/nth.sh"

practised_tiny

# each AFTER ARGUMENTS...: a full disk stays full, one with errors goes on, and
# one that may not be written never could be
each()
{
	for error in '28 later' '5 alone' '30 later'; do
		export FAILS_WITH="${error% *}"
		WAYS=${error#* }
		every disk evenhand "$@"
	done
}

each a_file give -o new.yaml --at "$day"
if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
	each a_file print homework -o week.pdf --at "$day"
	FAILS_WITH=28
	every disk evenhand-paper a_file print lesson -o lesson.pdf --at "$day"
fi
if [ -x "${EVENHAND%/*}/evenhand-file" ]; then
	each a_file track -o today.wav --at "$day" tiny.yaml
	FAILS_WITH=28
	WAYS=later
	# One block of samples after the other.
	EACH=7
	every disk evenhand-file a_file track -o today.wav --at "$day" tiny.yaml
	EACH=1
	"$EVENHAND" track -o "$work/kept/files/heard.wav" --at "$day" tiny.yaml
	each a_file measure heard.wav --track heard.csv
	each a_file measure heard.wav --plot heard.svg
fi
each before_or_after gather --player other late.yaml
each before_or_after gather --class wrens late.yaml
each every_turn --lines --clock fast --at "$day" --script keys \
    --marking round --loudness 40 tiny.yaml
finish
