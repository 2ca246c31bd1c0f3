#!/bin/sh
# test_screen_class.sh - a class in a real terminal: keys, a lesson page, a name
# that is looked for, sizes, and the terminal as it was before
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"

export LC_ALL=C.UTF-8
routine_at tone
pedals keys
mkdir class
for name in "A. B." "W. P." "Y. Z."; do
	for day in 02 03 04; do
		session "2026-03-${day}T17:00" keys --marking turn \
		    --player "$name" tone.yaml
	done
	run 0 give --player "$name" --initials "$name" \
	    --at 2026-03-05T10:00 -o "class/$name.yaml"
done
run 0 class class --at 2026-03-06T12:00

# see WORDS: they come to stand on the screen
see()
{
	waits 5 seen "$1" && ok "the screen shows \"$1\""
}

for size in 40x12 80x24 120x40; do
	terminal "$size"
	rm -f "$work/before" "$work/after"
	mode before
	command_line "$EVENHAND class class --at 2026-03-06T12:00; echo over-\$?"
	see '1 of 3'
	see '►   fine'
	so "who is chosen is told" seen 'A. B.: "A tone'
	key Down
	see '2 of 3'
	key Enter
	see 'W. P., 2026-03-06'
	see 'HOLD'
	key Down
	see 'Y. Z., 2026-03-06'
	key Left
	see '3 of 3'
	key f
	see 'Find a name: _'
	key w
	see '1 of 1'
	key Enter
	key Right
	see 'W. P., 2026-03-06'
	key Escape
	see '1 of 1'
	key '?'
	see 'q or Esc: leave.'
	key x
	see '1 of 1'
	key q
	see 'over-0'
	mode after
	so "the terminal is as before" cmp "$work/before" "$work/after"
done

finish
