#!/bin/sh
# test_story_ways.sh - acceptance story 10: the same keys in the full screen, in
# lines, muted and mirrored give the same history
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"

routine_at tone
pedals all
head -n 13 all > hurts
printf '%s\n' '3:20 h' '- ?' '- back' '- back' '- back' '- back' '- back' '- back' \
    '- back' '- forward' '- forward' '- words What now?' >> hurts
line="--at 2026-03-02T17:00 --clock fast --marking turn --script"

# All of a history but whose it is and what it sounded through.
facts()
{
	"$EVENHAND" history --json --player "$1" < /dev/null |
	    grep -vE '"(student|origin|device)":'
}

# way NAME KEYS OPTIONS...: in a terminal; full screen unless they say otherwise
way()
{
	name=$1
	keys=$2
	shift 2
	command_line "clear; $EVENHAND $line $keys $* --player $name tone.yaml; echo over-\$?"
	shows 10 'over-0'
	facts "$name" > "$name.json"
}

terminal 80x24
for keys in all hurts; do
	# Options are words of their own.
	# shellcheck disable=SC2086
	"$EVENHAND" --lines $line "$keys" --player "lines-$keys" tone.yaml \
	    > "$work/out" 2> "$work/err" < /dev/null
	status_is $? 0 "$keys in lines"
	facts "lines-$keys" > lines.json
	so "there is a history" [ "$(grep -c '"bows_done": 2' lines.json)" -ge 12 ]
	for wanted in 'screen-' 'silent- --silent' 'mirrored- --mirrored' \
	    'plain- --ascii'; do
		# shellcheck disable=SC2086
		way "${wanted%% *}$keys" "$keys" ${wanted#*-}
		so "${wanted%%-*}: the same history for $keys" \
		    cmp lines.json "${wanted%% *}$keys.json"
	done
	tm resize-window -t 0 -x 120 -y 40
done
finish
