#!/bin/sh
# test_memory.sh - every piece of memory that evenhand asks for is not to be had,
# one after the other, and from each on
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/../whole/lib.sh"
# shellcheck source=tests/faults/nth.sh
. "${root:?}/tests/faults/nth.sh"

routine_at tone
pedals keys
practised tone.yaml
every memory evenhand nothing check tone.yaml
every memory evenhand planned today --at "$day" --why tone.yaml
every memory evenhand nothing history --lines
every memory evenhand nothing history --json
every memory evenhand nothing class wrens --at "$day"
every_lying every memory evenhand
every memory evenhand a_file give -o new.yaml --at "$day"
if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
	every memory evenhand a_file print homework -o week.pdf --at "$day"
	every memory evenhand-paper a_file print lesson -o lesson.svg --at "$day"
else
	echo "skipped: there is no evenhand-paper here"
fi
if [ -x "${EVENHAND%/*}/evenhand-file" ]; then
	every memory evenhand a_file track -o today.wav --at "$day"
	every memory evenhand-file a_file track -o today.wav --at "$day"
	tiny tiny.yaml
	run 0 track -o whole.wav --at "$day" --player nobody tiny.yaml
	# Eight seconds of it.
	head -c 768044 whole.wav > "$work/kept/files/heard.wav"
	every memory evenhand a_file measure heard.wav --track heard.csv
	WAYS=alone
	if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
		every memory evenhand a_file measure heard.wav --plot heard.svg
	fi
	unset WAYS
else
	echo "skipped: there is no evenhand-file here"
fi
every memory evenhand before_or_after gather --player other late.yaml
every memory evenhand before_or_after gather --class wrens late.yaml
every memory evenhand every_turn --lines --clock fast --at "$day" \
    --script keys --marking turn tone.yaml
finish
