#!/bin/sh
# test_sound_die.sh - however the program ends, nobody stays behind that makes
# sound; stopped, it is silent and stays so
#
# Functions are called by way of so and within.
# shellcheck disable=SC2317
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
minute minute.yaml
minute_keys > keys
server pipewire

grows()
{
	was=$(stat -c %s "$tap" 2> /dev/null || echo 0)
	sleep 0.1
	[ "$(stat -c %s "$tap" 2> /dev/null || echo 0)" -gt "$was" ]
}

# family: its children and theirs, as numbers
family()
{
	for child in $(children "$pid"); do
		echo "$child"
		children "$child" | tr ' ' '\n'
	done | grep .
}

# begin NAME: a session that sounds, and who is there for it
begin()
{
	rm -f "$tap"
	practise "$1" minute.yaml
	so "$1: it sounds" within 5 grows
	members=$(family)
	so "$1: somebody makes sound" [ "$(echo "$members" | wc -l)" -ge 1 ]
}

# alone LABEL: they all end
alone()
{
	for member in $members; do
		so "$1: $member is gone" within 2 ended "$member"
	done
}

# Ctrl-C is tried in a terminal; a background program of sh does not take it.
for signal in KILL TERM SEGV HUP; do
	begin "$signal"
	kill "-$signal" "$pid"
	wait "$pid" 2> /dev/null
	alone "$signal"
done

# Stopped: silence in a second, and death ends it all from there too.
begin STOP
sleep 4
kill -STOP "$pid"
sleep 1.5
size=$(stat -c %s "$tap")
sleep 3
so "STOP: the card gets its frames" [ "$(stat -c %s "$tap")" -gt "$size" ]
tail -c "+$((size / 8 * 8 + 1))" "$tap" > rest
mv rest "$tap"
is "STOP: nothing is heard" "$(tapped --measure)" ""
kill -KILL "$pid"
wait "$pid" 2> /dev/null
alone STOP

# Stopped and sent on: it sounds again.
begin CONT
sleep 2
kill -STOP "$pid"
sleep 2
kill -CONT "$pid"
so "CONT: it sounds again" within 2 grows
kill -TERM "$pid"
wait "$pid"
alone CONT

# What makes the sound dies in mid turn, and another one takes its place.
begin maker
sleep 2
keeper=$(children "$pid" | tr -d ' ')
maker=$(children "$keeper" | tr -d ' ')
kill -KILL "$maker"
so "its maker of sound was killed: it is gone" within 1 ended "$maker"
so "there is another one" within 2 grows
so "and that is said" within 2 grep -q 'The sound is back' "$work/out"
so "and it is another" [ "$(children "$keeper" | tr -d ' ')" != "$maker" ]

# The keeper dies too: the practice goes on by sight.
members=$(family)
kill -KILL "$keeper"
alone keeper
so "its keeper was killed: the practice goes on" running "$pid"
sleep 1
kill -TERM "$pid"
wait "$pid"
is "both times it says so" "$(grep -cE \
    'The sound is gone|makes sound was ended from outside' "$work/out")" 2
is "and when there was another" "$(grep -c 'The sound is back' "$work/out")" 1
finish
