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

mode()
{
	command_line "stty -a > $work/$1; echo mode-$1"
	shows 5 "
mode-$1" > /dev/null || shows 5 "mode-$1"
}

tm new-session -d -x 90 -y 40 'PS1="ready> " exec sh -i'
shows 5 'ready>'
mode before

# --- pages, sound, silence, and once more ---------------------------------

command_line "clear; $EVENHAND --lines --at 2026-03-02T17:00"
shows 5 'sore'
command_line_seen=$(page | grep -c 'sore')
key PageDown
sleep 0.4
key Right
sleep 1
so "keys are not echoed" [ "$(page | grep -c '\^\[')" = 0 ]
sleep 5
key Space
sleep 0.5
tm send-keys -t 0 Enter
sleep 3
key q
sleep 0.5
so "pages were told" [ "$command_line_seen" -ge 1 ]

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
mode after
so "after Ctrl-C the terminal is as it was" cmp "$work/before" "$work/after"

# --- stopped from outside -------------------------------------------------

for signal in TERM HUP SEGV; do
	command_line "clear; $EVENHAND --lines & sleep 0"
	key C-l
	command_line 'fg'
	shows 5 'sore'
	pid=$(pgrep -P "$(tm display-message -p -t 0 '#{pane_pid}')" evenhand)
	kill -s "$signal" "$pid"
	sleep 1
	mode "$signal"
	so "after $signal the terminal is as it was" \
	    cmp "$work/before" "$work/$signal"
done
finish
