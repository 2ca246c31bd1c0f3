#!/bin/sh
# test_screen.sh - the full screen in a real terminal (tmux), by its keys: sizes,
# resizes, every way of ending, and the terminal as it was afterwards
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"

export LC_ALL=C.UTF-8
at='--silent --at 2026-03-02T17:00'
practised
tiny tiny.yaml

# flag NAME: what tmux knows of the terminal, 0 or 1
flag()
{
	tm display-message -p -t 0 "#{$1}"
}

# shellcheck disable=SC2317
hidden()
{
	[ "$(flag cursor_flag)" = 0 ]
}

# given_back LABEL: the mode, the page and the cursor are the shell's again
given_back()
{
	waits 5 prompted
	is "$1: on the shell's own page" "$(flag alternate_on)" 0
	is "$1: the cursor is seen" "$(flag cursor_flag)" 1
	mode "mode-$1"
	so "$1: the terminal's modes are as they were" \
	    cmp "$work/mode-before" "$work/mode-$1"
}

# begin LINE: a command on a fresh page of the shell, and its first page
begin()
{
	fresh
	command_line "$* 2> $work/said"
	waits 5 seen 'sore'
}

# steady FILE: the screen, when a second changes nothing on it; a page that is
# still being written is none
steady()
{
	for _ in 1 2 3 4 5 6 7 8 9 10; do
		screen > "$1"
		sleep 1
		alike "$1" && break
	done
}

alike()
{
	screen | cmp -s - "$1"
}

# --- every way of ending --------------------------------------------------

terminal 80x24
mode mode-before

begin "$EVENHAND $at"
is "on a page of its own" "$(flag alternate_on)" 1
waits 3 hidden && ok "the cursor is hidden"
key q
given_back q
is "nothing was said beside the page" "$(cat "$work/said")" ''

# What is said last has no page any more, and is there all the same.
begin "$EVENHAND tiny.yaml --player asks --clock fast $at"
key NPage
waits 5 seen 'begin'
key NPage
waits 5 seen 'One thing to keep'
key NPage
waits 5 seen 'question for your teacher'
key -l 'Higher?'
waits 5 seen 'Higher?'
sleep 0.5
key Enter
given_back asked
shows 5 'Your question is kept for your teacher.'
is "it was kept" "$("$EVENHAND" history --player asks |
    grep '^Question')" 'Question: Higher?'

for signal in TERM HUP INT SEGV ABRT BUS FPE ILL QUIT; do
	begin "$EVENHAND $at"
	kill -s "$signal" "$(child)"
	given_back "$signal"
done

begin "$EVENHAND $at"
key C-c
given_back interrupted

# --- what belongs to the shell alone --------------------------------------

begin "$EVENHAND $at"
key +
waits 3 seen 'There is no sound to change.'
sleep 0.4
key q
given_back softer

# Where time goes fast it waits for keys all the same, however quick they are.
begin "$EVENHAND --clock fast $at"
key '?' '?' '?' '?' '?' '?' '?'
sleep 1
is "pages are looked at without being left" "$(flag alternate_on)" 1
key q
given_back fast

# --- what cannot be remembered ----------------------------------------------

# It is said on the page, and once more when the screen is given back; never
# across the page.
mv "$HOME/.config" "$HOME/.config-was"
touch "$HOME/.config"
fresh
command_line "$EVENHAND $at --player blocked 2> $work/said"
waits 5 seen 'Welcome'
key NPage
waits 5 seen 'cannot be made'
is "nothing is said across the page" "$(cat "$work/said")" ''
sleep 0.3
key q
waits 5 seen 'sore'
sleep 0.3
key q
given_back blocked
is "said afterwards, once" "$(grep -c 'cannot be made' "$work/said")" 1
rm "$HOME/.config"
mv "$HOME/.config-was" "$HOME/.config"

# --- suspended and continued ----------------------------------------------

begin "$EVENHAND $at"
steady "$work/first"
key C-z
given_back suspended
command_line fg
waits 5 alike "$work/first" && ok "continued, the page is as it was"
waits 3 hidden && ok "and the cursor is hidden"

# --- sizes ----------------------------------------------------------------

for n in 1 2 3 4 5 6 7 8 9 10; do
	for size in 40x12 120x40 30x8 200x50 81x23; do
		tm resize-window -t 0 -x "${size%x*}" -y "${size#*x}"
		[ "$n" -lt 9 ] || sleep 0.1
	done
done
tm resize-window -t 0 -x 80 -y 24
waits 5 alike "$work/first" && ok "after 50 resizes the page is as it was"
tm resize-window -t 0 -x 39 -y 11
waits 3 seen '40'
tm resize-window -t 0 -x 1 -y 1
sleep 0.3
tm resize-window -t 0 -x 80 -y 24
waits 3 seen 'sore'
key q
given_back resized

# --- what the terminal can do ---------------------------------------------

for kind in vt100 linux xterm xterm-256color screen ansi; do
	begin "TERM=$kind $EVENHAND $at"
	key q
	given_back "$kind"
done
finish
