#!/bin/sh
# test_screen_history.sh - the charts of a history in a real terminal: keys,
# sizes, colours, and the terminal as it was before
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"

export LC_ALL=C.UTF-8
routine_at wide
routine_at tone
pedals keys
for day in 02 03 04 06; do
	session "2026-03-${day}T17:00" keys --marking turn wide.yaml
done
for day in 12 13; do
	session "2026-04-${day}T17:00" keys --marking turn tone.yaml
done
session 2024-02-29T17:00 keys --marking turn wide.yaml

# see WORDS: they come to stand on the screen
see()
{
	waits 5 seen "$1" && ok "the screen shows \"$1\""
}

for size in 80x24 120x40; do
	terminal "$size"
	rm -f "$work/before" "$work/after"
	mode before
	command_line "$EVENHAND history; echo over-\$?"
	see '►minutes'
	see 'to 2026-04-'
	so "bars" seen '█'
	key Tab
	see '►fingers'
	see 'metres along the string'
	key Tab
	see '►first go'
	see '2026-04-13'
	so "a mark" seen '✓'
	key Tab
	see '►stages'
	see '█ work  ░ recap'
	key PageUp
	# Two years without practice are one step.
	see '2024-02-26 to'
	key PageDown
	see '2026-'
	key -
	see 'by week'
	key -
	see 'by month'
	see '2024'
	key +
	key +
	see 'by day'
	key '?'
	see 'q or Esc: leave.'
	key Left
	see '►stages'
	key q
	see 'over-0'
	mode after
	so "the terminal is as before" cmp "$work/before" "$work/after"
done

# --- other sizes, at any moment -------------------------------------------------------
terminal 80x24
command_line "$EVENHAND history; echo over-\$?"
see '►minutes'
tm resize-window -t 0 -x 30 -y 10
see 'This window is too small.'
tm resize-window -t 0 -x 40 -y 12
see 'Tab  ? keys  q leave'
tm resize-window -t 0 -x 200 -y 60
see 'closer, - wider'
for n in 1 2 3 4 5 6 7 8 9 10; do
	tm resize-window -t 0 -x $((30 + n * 13)) -y $((8 + n * 5))
	key Tab
done
tm resize-window -t 0 -x 80 -y 24
see '►first go'
key Escape
see 'over-0'

# --- plain letters, no colours, lines ---------------------------------------------------
terminal 80x24
command_line "$EVENHAND history --ascii; echo over-\$?"
see '>minutes'
so "plain letters alone" [ "$(screen | LC_ALL=C grep -c '[^ -~]')" = 0 ]
key q
see 'over-0'
terminal 80x24
command_line "NO_COLOR=1 $EVENHAND history; echo over-\$?"
see '►minutes'
so "no colours" [ "$(tm capture-pane -e -p -t 0 |
    grep -c "$(printf '\033')\[[0-9;]*[34]8;5")" = 0 ]
key q
see 'over-0'
terminal 80x24
command_line "$EVENHAND history --lines; echo over-\$?"
see 'over-0'
page > shown
has shown 'All together, 2024-02-29 to 2026-04-13'
terminal 80x24
command_line "$EVENHAND history --player nobody; echo over-\$?"
see 'over-0'
see 'Nothing has been practised yet.'

# --- ended from outside -------------------------------------------------------------------
for status in 143 129; do
	signal=$((status - 128))
	terminal 80x24
	rm -f "$work/before" "$work/after"
	mode before
	command_line "$EVENHAND history; echo over-\$?"
	see '►minutes'
	kill "-$signal" "$(child)"
	see "over-$status"
	mode after
	so "the terminal is as before" cmp "$work/before" "$work/after"
done
finish
