#!/bin/sh
# test_no_room.sh - no room for the memory that evenhand shares with what makes
# its sound: it is told, and practised by sight
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
if [ "$(uname)" != Linux ]; then
	echo "skipped: there is no /dev/shm here"
	finish
fi
tiny tiny.yaml
printf '%s\n' '0:07 clean' '0:11 shaky' '0:15 clean' > keys
# A card of ALSA's own, which leads nowhere.
echo 'pcm.!default { type null }' > "$work/alsa.conf"
export ALSA_CONFIG_PATH="$work/alsa.conf"
export JACK_NO_START_SERVER=1 JACK_DEFAULT_SERVER=none-of-ours
told='the computer has no room left to make sound. Close other programs and start again'

# with SIZE COMMAND...: with a /dev/shm of its own, of that size
# shellcheck disable=SC2016
with()
{
	unshare -rm sh -c 'mount -t tmpfs -o size=$0 none /dev/shm && exec "$@"' \
	    "$@" > "$work/out" 2> "$work/err" < /dev/null
}

# practise SIZE: a session with sound, as fast as it goes
practise()
{
	with "$1" "$EVENHAND" --lines --clock fast --card default --player "p$1" \
	    --at 2026-03-02T17:00 --script keys --marking turn tiny.yaml
	status_is $? 0 "a session with $1"
	"$EVENHAND" history --json --player "p$1" > h.json
	is "with $1: turns" "$(turns h.json bows_done 1)" "2 2 2 2"
}

if with 64m true; then
	# A page, some, and more than enough.
	for size in 4k 64k; do
		practise "$size"
		is "with $size" "$(cat "$work/err")" "evenhand: $told"
		with "$size" "$EVENHAND" sound
		status_is $? 71 "evenhand sound with $size"
		one_sentence "$told"
	done
	practise 64m
	is "with 64m nothing is said" "$(cat "$work/err")" ""
else
	echo "skipped: one may not have a /dev/shm of one's own here"
fi

# Files that may not grow as large are told of alike, and not by a signal.
(ulimit -f 8 && exec "$EVENHAND" sound > "$work/out" 2> "$work/err" < /dev/null)
status_is $? 71 "evenhand sound with files of 4 KB"
one_sentence "$told"
finish
