#!/bin/sh
# test_sound_wait.sh - nothing that happens to the sound makes a session wait: the
# longest time between two looks at the device, and the longest call of it
#
# tests/whole/drive.c does to a device what a session does and measures; in turn
# the server is killed, frozen, ended and started anew meanwhile.
#
# Functions are called by way of so and within.
# shellcheck disable=SC2317
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
: "${DRIVE:?the program that measures}"

# says WORDS: the program has said so by now
says()
{
	grep -q "$1" drive.out
}

# heard_again N: it said N times that it sounds
heard_again()
{
	[ "$(grep -c '^[0-9]* sounds' drive.out)" -ge "$1" ]
}

# figure SED: a number of what it said at its end
figure()
{
	sed -n "s/$1/\1/p" drive.out
}

# at_most LABEL FIGURE LIMIT
at_most()
{
	so "$1: $2, at most $3" awk -v a="$2" -v b="$3" \
	    'BEGIN { exit !(a != "" && a + 0 <= b + 0) }'
}

# back N LABEL: it sounds for the Nth time, within 2 s
back()
{
	since=$(now_ms)
	so "$kind, $2: it sounds again" within 4 heard_again "$1"
	at_most "$kind, $2: ms to sound" $(($(now_ms) - since)) 2000
}

for kind in pipewire jack; do
	server "$kind"
	: > drive.out
	(exec "$server" run "$DRIVE" 20 > drive.out 2> "$work/err") &
	pid=$!
	so "$kind: it sounds" within 3 heard_again 1
	sleep 1
	"$server" cut KILL
	so "$kind: killed is noticed" within 1 says ' lost'
	sleep 1
	"$server" restore
	back 2 killed
	sleep 1
	"$server" freeze
	sleep 2
	"$server" thaw
	back 3 frozen
	sleep 1
	"$server" cut
	"$server" restore
	back 4 ended
	members=$(children "$pid")
	wait "$pid"
	status_is $? 0 "$kind: it ends"
	sed "s/^/    $kind /" drive.out
	at_most "$kind: us of the longest call" \
	    "$(figure 'longest call \(.*\) us')" 20000
	# 50 ms it waits by itself; a busy computer may add some.
	at_most "$kind: ms from look to look" \
	    "$(figure 'longest round \(.*\) ms')" 100
	# All is counted: no frame is lost while the sound comes and goes.
	# It may stand for a buffer's length when the clock changes hands.
	at_most "$kind: ms that the count is off" \
	    "$(figure 'frames.*off by \(.*\) ms')" 200
	at_most "$kind: ms lost" "$(figure 'frames.* \([0-9]*\) ms lost.*')" 0
	at_most "$kind: ms of a core" "$(figure 'spent \(.*\) ms')" 1000
	at_most "$kind: us to close" "$(figure 'closed in \(.*\) us')" 20000
	for member in $members; do
		so "$kind: nobody is left" within 2 ended "$member"
	done
	is "$kind: nothing on standard error" "$(cat "$work/err")" ""
	server_stop
done
finish
