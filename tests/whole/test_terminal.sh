#!/bin/sh
# test_terminal.sh - line mode at its true pace in a real terminal (tmux), with
# real keys; suspended and continued; and the terminal as it was afterwards
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"

practised
terminal 90x40
mode before

# --- pages, sound, silence, and once more ---------------------------------

command_line "clear; $EVENHAND --lines --at 2026-03-02T17:00"
shows 5 'sore'
key PageDown
shows 2 'Forward: begin.'
sleep 0.4
key Right
shows 2 'In the air:'
sleep 6
key Space
shows 2 'Silent.'
sleep 0.4
key Enter
shows 2 'Going on: the swing.'
sleep 2
key q
shows 2 'Tight or tired?'
so "keys are not echoed" [ "$(page | grep -c '\^\[')" = 0 ]

# --- suspended and continued ----------------------------------------------

key C-z
waits 5 prompted
mode stopped
so "suspended, the terminal is the shell's" \
    cmp "$work/before" "$work/stopped"
command_line 'fg'
waits 5 raw
key C-c
waits 5 prompted
command_line 'echo status-$?'
shows 5 'status-0'
history_json h.json
is "how it ended" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].ended') from f")" input
mode after
so "after Ctrl-C the terminal is as it was" cmp "$work/before" "$work/after"

# --- stopped from outside -------------------------------------------------

for signal in TERM HUP SEGV; do
	fresh
	command_line "$EVENHAND --lines"
	shows 5 'sore'
	kill -s "$signal" "$(child)"
	waits 5 prompted
	mode "$signal"
	so "after $signal the terminal is as it was" \
	    cmp "$work/before" "$work/$signal"
done
finish
