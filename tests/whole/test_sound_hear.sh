#!/bin/sh
# test_sound_hear.sh - a microphone beside the sound for more than a minute, or
# for half of one where time is dear: each pulse is placed where it was, from the
# first to the last; and a microphone that dies takes nothing from the sound
#
# Functions are called by way of so and within.
# shellcheck disable=SC2317
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
: "${DRIVE:?the program drive}"
# A long cycle, so that a busy computer loses few of them.
export SOUND_CYCLE=1024
server pipewire
"$server" loop on 0.05

drives()
{
	HEAR=1 on_server "$DRIVE" "$1" > "$work/out" 2> "$work/err" < /dev/null
}

says()
{
	grep -q "$1" "$work/out"
}

# often COUNT WORDS: so often it said that
often()
{
	[ "$(grep -c "$2" "$work/out")" = "$1" ]
}

# middle FROM TO: of the pulses from one to another, the middle one, in us
middle()
{
	sed -n 's/^pulse //p' "$work/out" | sed -n "$1,$2p" | sort -n |
	    awk '{ x[NR] = $1 } END { printf "%d\n", x[int((NR + 1) / 2)] * 1000 }'
}

# near US: 50 ms and what a pulse takes to be heard at all, to a ms
near()
{
	[ "$1" -ge 49000 ] && [ "$1" -le 51000 ]
}

# --- more than a minute ------------------------------------------------------------

# Four pulses a second, once it hears.
seconds=${EVENHAND_QUICK:+35}
: "${seconds:=75}"
drives "$seconds"
so "it hears" says 'microphone hears'
pulses=$(grep -c '^pulse' "$work/out")
so "pulses in $seconds s: $pulses" [ "$pulses" -ge $((4 * seconds - 60)) ]
for from in 1 $((pulses / 2)) $((pulses - 20)); do
	at=$(middle "$from" $((from + 20)))
	so "from pulse $from on: $at us" near "$at"
done
beside=$(sed -n 's/^pulse //p' "$work/out" |
    awk '$1 < 49 || $1 > 51 { n++ } END { print n + 0 }')
so "pulses that are not: $beside" [ $((beside * 10)) -le "$pulses" ]
call=$(sed -n 's/^longest call \([0-9]*\) us/\1/p' "$work/out")
so "nobody waits for it: $call us" [ "$call" -lt 50000 ]

# --- it dies ---------------------------------------------------------------------------

ear()
{
	for p in $(for c in $(children "$pid"); do children "$c"; done); do
		if tr '\0' ' ' < "/proc/$p/cmdline" | grep -q -- ' --hear '; then
			echo "$p"
		fi
	done
}

(HEAR=1 exec "$server" run "$DRIVE" 20 > "$work/out" 2> "$work/err") &
pid=$!
so "it hears" within 10 says 'microphone hears'
sleep 2
one=$(ear)
so "it is a process of its own" [ -n "$one" ]
kill -KILL "$one"
so "it is lost" within 3 says 'microphone lost'
so "and hears again" within 6 often 2 'microphone hears'
sleep 1
two=$(ear)
so "it is another" [ "$one" != "$two" ]
# One that stands still is no better.
kill -STOP "$two"
so "it is lost again" within 4 often 2 'microphone lost'
so "and hears again" within 6 often 3 'microphone hears'
wait "$pid"
is "the sound was never lost" "$(grep -c ' lost (' "$work/out")" 0
so "nor did it begin anew" [ "$(grep -c ' sounds (' "$work/out")" -le 2 ]
finish
