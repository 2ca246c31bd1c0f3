#!/bin/sh
# virtual-jack.sh VERB... - a JACK server for tests, whose loudspeaker is the air
#
#	start            a server of our own, at true pace, with one device
#	run COMMAND...   the command finds that device, and none but that
#	record FILE SECONDS    what reaches the device, as a WAV file
#	cut [SIGNAL]     the server is killed (TERM when no signal is named)
#	restore          it is started again
#	freeze, thaw     it stands still and answers nobody; it goes on
#	stop             all is ended and the folder removed
#
# SOUND_FOLDER  where its log and settings lie; its last part names the server
# SOUND_CYCLE   frames in a cycle of the server, a power of two (512)
#
# JACK keeps a list of eight servers in /dev/shm, and one that was killed stays
# on it until a server of the same name ends as it should.  So a killed one is
# started once more before `stop` ends it.
set -eu
# shellcheck source=tests/tools/processes.sh
. "$(dirname "$0")/processes.sh"
: "${SOUND_FOLDER:?a folder for the sound server}"
name=evenhand-${SOUND_FOLDER##*/}-$(id -u)
cycle=${SOUND_CYCLE-512}
settings=$SOUND_FOLDER/alsa.conf

die()
{
	echo "virtual-jack: $*" >&2
	exit 1
}

case $SOUND_FOLDER in
*[!A-Za-z0-9/._+-]*) die "SOUND_FOLDER holds more than letters, digits and" \
    "/._+-: $SOUND_FOLDER" ;;
esac

use()
{
	export JACK_DEFAULT_SERVER="$name" JACK_NO_START_SERVER=1
	export ALSA_CONFIG_PATH="$settings"
}

# ALSA has a default device, as everywhere, but it leads nowhere.
write_alsa()
{
	echo 'pcm.!default { type hw card 31 }'
}

answers()
{
	timeout 2 jack_lsp 2>/dev/null | grep -q '^system:monitor_1'
}

number()
{
	cat "$SOUND_FOLDER/server.pid" 2>/dev/null || echo 0
}

# A killed server that nobody asks how it ended counts as running with JACK, so
# a shell stays behind to ask.
up()
{
	use
	# That shell expands them.
	# shellcheck disable=SC2016
	CYCLE=$cycle FOLDER=$SOUND_FOLDER setsid sh -c '
		jackd --no-realtime --name "$JACK_DEFAULT_SERVER" \
		    --port-max 32 -d dummy --rate 48000 --period "$CYCLE" \
		    --wait $((CYCLE * 1000000 / 48000)) --monitor &
		echo $! > "$FOLDER/server.pid"
		wait' > "$SOUND_FOLDER/server.log" 2>&1 < /dev/null &
	within 5 answers ||
	    die "no server: see $SOUND_FOLDER/server.log"
}

# down SIGNAL
down()
{
	pid=$(number)
	if running "$pid"; then
		kill "-$1" "$pid" || :
		kill -CONT "$pid" 2>/dev/null || :
		within 3 ended "$pid" || kill -KILL "$pid" || :
	fi
	rm -f "$SOUND_FOLDER/server.pid"
}

case ${1-} in
start)
	for program in jackd jack_lsp jack_rec setsid timeout; do
		command -v "$program" > /dev/null || die "no $program here"
	done
	mkdir -p "$SOUND_FOLDER"
	write_alsa > "$settings"
	up ;;
run)
	shift
	use
	exec "$@" ;;
record)
	use
	jack_rec -f "$2" -d "$3" -b 32 system:monitor_1 > /dev/null 2>&1
	[ -s "$2" ] ;;
cut)
	down "${2-TERM}"
	if [ "${2-TERM}" != TERM ]; then
		touch "$SOUND_FOLDER/killed"
	fi ;;
restore)
	up
	rm -f "$SOUND_FOLDER/killed" ;;
freeze) kill -STOP "$(number)" ;;
thaw) kill -CONT "$(number)" ;;
stop)
	if [ -f "$SOUND_FOLDER/killed" ]; then
		up
	fi
	down TERM
	if [ -f "$settings" ]; then
		rm -rf "$SOUND_FOLDER"
	fi ;;
*) die "verbs: start run record cut restore freeze thaw stop" ;;
esac
