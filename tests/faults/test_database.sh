#!/bin/sh
# test_database.sh - memory that SQLite asks for is not to be had, at places all
# over what is done with the practice history, and from each on
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/../whole/lib.sh"
# shellcheck source=tests/faults/nth.sh
. "${root:?}/tests/faults/nth.sh"

practised_tiny
export FAILS_ONLY=libsqlite3

# every_some EACH AFTER ARGUMENTS...: by themselves; far fewer say the same when
# all that come later fail as well
every_some()
{
	EACH=$1
	shift
	WAYS=alone
	every memory evenhand "$@"
	EACH=$((EACH * 6 + 1))
	WAYS=later
	every memory evenhand "$@"
}

every_some 31 planned today --at "$day" --why tiny.yaml
every_some 61 nothing history --json
every_some 61 nothing history --lines
every_some 47 before_or_after class wrens --at "$day"
every_some 61 a_file give -o new.yaml --at "$day"
every_some 131 before_or_after gather --player other late.yaml
every_some 211 before_or_after gather --class wrens late.yaml
every_some 97 every_turn --lines --clock fast --at "$day" \
    --script keys --marking turn tiny.yaml
finish
