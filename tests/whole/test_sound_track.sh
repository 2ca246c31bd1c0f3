#!/bin/sh
# test_sound_track.sh - a minute at true pace on a real sound server, and the
# track of it: every sample is the same
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
minute minute.yaml
printf '%s\n' '- forward' '- forward' '- forward' > keys
run 0 track minute.yaml --marking turn --at 2026-03-02T17:00 -o minute.wav
server pipewire

# What a very busy computer interrupts sounds no more like its track, and may
# have to be tried again.
for name in one two three; do
	practise "$name" minute.yaml
	wait "$pid"
	status_is $? 0 "a minute of practice"
	"$python" "$root/tests/tools/track.py" same "$tap" minute.wav \
	    > "$work/read" 2>&1
	status=$?
	if [ "$status" -eq 0 ]; then
		break
	fi
done
is "every sample is the server's" "$status" 0
so "there is sound in it" [ "$(cat "$work/read")" -gt 100000 ]
server_stop
finish
