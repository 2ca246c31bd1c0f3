#!/bin/sh
# test_first_minutes.sh - who never practised is led through the first minutes,
# in a real terminal (tmux), at true pace, with two pedals and no other key
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"
unset XDG_CONFIG_HOME
file=$HOME/.config/evenhand/settings.yaml

# A pedal, not sooner than it counts.
forward()
{
	sleep 0.4
	key PageDown
}

back()
{
	sleep 0.4
	key PageUp
}

leave()
{
	sleep 0.4
	key q
}

start()
{
	command_line "clear; $EVENHAND --silent $*"
}

# Sittings and notes that were kept.
kept()
{
	history_json kept.json > "$work/log"
	ask kept.json "select json_array_length(j, '\$.sittings') +
	    json_array_length(j, '\$.notes') from f"
}

# --- the whole way, on a full screen --------------------------------------

terminal 80x24
start
waits 5 seen 'Welcome. In about a minute'
so "it is for use with a teacher" seen 'for use with a teacher'
so "a grown-up should know" seen 'A grown-up should know'
forward
waits 5 seen 'Press forward now'
back
waits 5 seen 'That was back. Now the other one'
forward
waits 5 seen 'Now press back'
back
waits 5 seen 'Next comes one turn'
forward
sleep 9
# It plays: a pedal stops it.
forward
waits 5 seen 'Silent. So you stop it'
forward
waits 25 seen 'Try it: two bows'
sleep 1
forward
# 4 s of stillness, 4 s of count-in, 8 s of bows; then it can be marked.
sleep 18
back
waits 15 seen 'You marked it shaky.'
sleep 1
forward
waits 5 seen 'Nothing sore today?'
is "nothing is kept of it" "$(kept)" 0
leave
waits 5 seen 'ready>'
so "but that it was seen" grep -qx 'first_minutes_seen: yes' "$file"

# --- never twice ----------------------------------------------------------

start
waits 5 seen 'Nothing sore today?'
so "not again" [ "$(screen | grep -c Welcome)" = 0 ]
leave
waits 5 seen 'ready>'

# --- skipped with one key, in lines ---------------------------------------

rm "$file"
start --lines
shows 5 'Forward: go on. Back: skip all this.'
back
shows 5 'Nothing sore today?'
leave
shows 5 'Not today, then.'
waits 5 prompted
so "a skipped one was seen too" grep -qx 'first_minutes_seen: yes' "$file"

# --- it hurts -------------------------------------------------------------

rm "$file"
start
waits 5 seen 'Welcome. In about a minute'
sleep 0.4
key h
waits 5 seen 'Does something hurt?'
back
waits 5 seen 'Where does it hurt?'
sleep 0.4
key 2
waits 5 seen 'No start before four'
sleep 0.4
forward
waits 5 seen 'ready>'
is "and that is kept" "$(kept)" 1

finish
