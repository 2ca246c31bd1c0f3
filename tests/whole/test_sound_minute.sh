#!/bin/sh
# test_sound_minute.sh - a minute at true pace through a real sound server: every
# frame the program wrote is looked at, and what reached the loudspeaker too; and
# the track of it has the same samples
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
minute minute.yaml
minute_keys > keys
due --from-first 0:6:1234 > due.txt
run 0 track minute.yaml --marking turn --at 2026-03-02T17:00 -o minute.wav
sounds=64
is "sounds that are due" "$(wc -l < due.txt | tr -d ' ')" "$sounds"

# What reaches the loudspeaker may lose a cycle of the server when the computer is
# busy, and a sound may be cut in two by that; so kinds are counted.
# reached FILE: how many of the due are among the heard
reached()
{
	heard "$1" > recorded.txt
	awk 'NR == FNR { due[$2]++; next } { heard[$2]++ }
	    END { for (k in due) n += heard[k] < due[k] ? heard[k] : due[k]
	    print n + 0 }' due.txt recorded.txt
}

# try NAME: a session, recorded behind the server
try()
{
	"$server" record "$work/$kind.wav" 66 &
	recorder=$!
	practise "$1" minute.yaml
	wait "$pid"
	status=$?
	wait "$recorder"
}

for kind in $(kinds pipewire); do
	server "$kind"
	# When the server itself falls behind, the sound is lost for a moment; a very
	# busy computer may have to try again.
	for name in "$kind-1" "$kind-2" "$kind-3"; do
		try "$name"
		grep -q 'The sound is gone' "$work/out" || break
	done
	status_is "$status" 0 "$kind: a minute of practice"
	is "$kind: nothing on standard error" "$(cat "$work/err")" ""
	n=$(reached "$work/$kind.wav")
	so "$kind: $n of $sounds reached the loudspeaker" [ "$n" -ge 60 ]
	if [ "$kind" = pipewire ]; then
		tapped --from-first > heard.txt
		so "$kind: every sound at its frame" cmp heard.txt due.txt
		same=$("$python" "$root/tests/tools/track.py" same "$tap" \
		    minute.wav) || same=0
		so "$kind: every sample of sound is that of the track: $same" \
		    [ "$same" -gt 100000 ]
	fi
	"$EVENHAND" history --json --player "$name" > h.json
	is "$kind: turns" "$(turns h.json start_ms 1)" \
	    "8000 20000 32000 44000"
	is "$kind: all whole" "$(turns h.json bows_done 1)" "2 2 2 2"
	server_stop
done
finish
