#!/bin/sh
# test_terminal.sh - line mode at its true pace in a real terminal (tmux), with
# real keys; suspended and continued; and the terminal as it was afterwards
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

if ! command -v tmux > /dev/null; then
	echo "BAD tmux is not installed: make deps"
	exit 1
fi
socket=$work/tmux
trap 'tmux -S "$socket" kill-server 2> /dev/null; rm -rf "$work"' EXIT

tm()
{
	tmux -S "$socket" -f /dev/null "$@"
}

page()
{
	tm capture-pane -p -J -S -500 -t 0
}

# shows SECONDS WORDS: the terminal comes to show these words
shows()
{
	end=$(($(date +%s) + $1 + 1))
	while ! page | grep -qF -- "$2"; do
		if [ "$(date +%s)" -gt "$end" ]; then
			fail "the terminal does not show \"$2\""
			page | sed 's/^/    /'
			return 1
		fi
		sleep 0.1
	done
	ok "the terminal shows \"$2\""
}

key()
{
	tm send-keys -t 0 "$@"
}

# command LINE: typed into the shell
command_line()
{
	key -l "$1"
	key Enter
}

# mode NAME: the terminal's settings, in $work/NAME
mode()
{
	command_line "stty -a > $work/half; mv $work/half $work/$1"
	for _ in 1 2 3 4 5 6 7 8 9 10; do
		[ -s "$work/$1" ] && return
		sleep 0.3
	done
	fail "stty said nothing"
}

tm new-session -d -x 90 -y 40 'PS1="ready> " exec sh -i'
shows 5 'ready>'
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
shows 5 'ready>'
mode stopped
so "suspended, the terminal is the shell's" \
    cmp "$work/before" "$work/stopped"
command_line 'fg'
sleep 1.5
key C-c
sleep 1
command_line 'echo status-$?'
shows 5 'status-0'
history_json h.json
is "how it ended" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].ended') from f")" input
mode after
so "after Ctrl-C the terminal is as it was" cmp "$work/before" "$work/after"

# --- stopped from outside -------------------------------------------------

for signal in TERM HUP SEGV; do
	command_line clear
	sleep 0.5
	tm clear-history -t 0
	command_line "$EVENHAND --lines"
	shows 5 'sore'
	pid=$(pgrep -n -P "$(tm display-message -p -t 0 '#{pane_pid}')")
	kill -s "$signal" "$pid"
	sleep 0.5
	mode "$signal"
	so "after $signal the terminal is as it was" \
	    cmp "$work/before" "$work/$signal"
done
finish
