#!/bin/sh
# test_memory.sh - every piece of memory that evenhand asks for is not to be had,
# one after the other, and from each on
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/../whole/lib.sh"
# shellcheck source=tests/faults/nth.sh
. "$root/tests/faults/nth.sh"

routine_at tone
pedals keys
session 2026-03-02T17:00 keys --marking turn tone.yaml
run 0 give -o early.yaml --at 2026-03-02T18:00
session 2026-03-03T17:00 keys --marking turn tone.yaml
run 0 give -o late.yaml --at 2026-03-03T18:00
run 0 gather --player other early.yaml
run 0 gather --class wrens early.yaml
turns_before=42
keep

told()
{
	"$EVENHAND" history --json --player "$1" 2> "$work/quiet" |
	    grep -v '^"made_on"'
}
in_class()
{
	"$EVENHAND" class wrens --csv --at 2026-03-04T17:00 2> "$work/quiet"
}
told other > "$work/before.json"
in_class > "$work/before.csv"
run 0 gather --player other late.yaml
run 0 gather --class wrens late.yaml
told other > "$work/after.json"
in_class > "$work/after.csv"

# before_or_after LABEL: all of the record is in, or nothing of it
# Called by its name.
# shellcheck disable=SC2317
before_or_after()
{
	told other > "$work/now.json"
	in_class > "$work/now.csv"
	for now in json csv; do
		cmp -s "$work/now.$now" "$work/before.$now" ||
		    cmp -s "$work/now.$now" "$work/after.$now" ||
		    fail "$1: neither the old history nor the new"
	done
	diff -rq "$work/kept/files" . > "$work/quiet" ||
	    [ "$(names .)" = "$(names "$work/whole")" ] ||
	    fail "$1: something was left"
}

day=2026-03-04T17:00
every memory evenhand nothing check tone.yaml
every memory evenhand nothing today --at "$day" --why tone.yaml
every memory evenhand nothing history --lines
every memory evenhand nothing history --json
every memory evenhand nothing class wrens --at "$day"
every memory evenhand a_file print homework -o week.pdf --at "$day"
every memory evenhand-paper a_file print lesson -o lesson.svg --at "$day"
every memory evenhand a_file give -o new.yaml --at "$day"
every memory evenhand a_file track -o today.wav --at "$day"
every memory evenhand-file a_file track -o today.wav --at "$day"
every memory evenhand before_or_after gather --player other late.yaml
every memory evenhand before_or_after gather --class wrens late.yaml
every memory evenhand every_turn --lines --clock fast --at "$day" \
    --script keys --marking turn tone.yaml
finish
