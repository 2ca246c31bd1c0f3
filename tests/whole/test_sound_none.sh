#!/bin/sh
# test_sound_none.sh - no card, no server, settings of ALSA on which PortAudio
# aborts, a server that stands still: a session is a session, and says once why
# nothing is heard
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
tiny tiny.yaml
printf '%s\n' '- forward' '- forward' '0:06.5 clean' '0:11 clean' \
    '0:15 shaky' '0:19 clean' '- forward' > keys

# tiny_session NAME COMMAND...: 20 s at true pace
tiny_session()
{
	name=$1
	shift
	start=$(now_ms)
	"$@" --lines --at 2026-03-02T17:00 --script keys --marking turn \
	    --player "$name" tiny.yaml > "$name.out" 2> "$name.err" < /dev/null
	echo $? > "$name.status"
	echo $(($(now_ms) - start)) > "$name.took"
}

for kind in dead bare empty; do
	alsa "$kind"
	mv "$alone" "$kind.conf"
	ALSA_CONFIG_PATH=$PWD/$kind.conf tiny_session "$kind" "$EVENHAND" &
done
wait

server pipewire
"$server" freeze
(tiny_session frozen "$server" run "$EVENHAND")
server_stop

for name in dead bare empty frozen; do
	status_is "$(cat "$name.status")" 0 "$name: the session"
	is "$name: nothing on standard error" "$(cat "$name.err")" ""
	so "$name: it took its time" [ "$(cat "$name.took")" -ge 20000 ]
	so "$name: and no more" [ "$(cat "$name.took")" -le 24000 ]
	is "$name: it says once why nothing is heard" \
	    "$(grep -c '^There is no loudspeaker yet\|^The sound of this computer d' "$name.out")" 1
	is "$name: and what is left to follow" \
	    "$(grep -c '^Without sound, follow these lines' "$name.out")" 1
	"$EVENHAND" history --json --player "$name" > "$name.json"
	is "$name: turns" "$(turns "$name.json" bows_done 1)" "2 2 2 2"
done
finish
