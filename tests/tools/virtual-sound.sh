#!/bin/sh
# virtual-sound.sh VERB... - a loudspeaker and a microphone for tests on a
# computer without them
#
#	start            a PipeWire of our own with one virtual loudspeaker and one
#	                 virtual microphone, by one clock
#	run COMMAND...   the command finds these two, through ALSA, and no others
#	record FILE SECONDS    what reaches the loudspeaker, as a WAV file
#	feed FILE        plays a WAV file into the microphone, until it is over;
#	                 it ends best with a bit of silence
#	loop on [SECONDS]      the microphone hears the loudspeaker, so much later
#	loop off         it does not
#	cut [SIGNAL]     the server is killed (TERM when no signal is named)
#	restore          it is started again
#	freeze, thaw     it stands still and answers nobody; it goes on
#	stop             all is ended and its folder removed
#
# SOUND_FOLDER  where its socket, settings and logs lie; it is made.  Several
#               servers in several folders do not know of each other.
# SOUND_TAP     set for `run`: a file that gets every frame the program writes to
#               the card, raw, in the format of its stream.  It is exact also
#               when the computer is too busy for the server to be; it begins
#               anew whenever the card is opened.
# SOUND_CYCLE   frames in a cycle of the server, a power of two (256)
#
# No root, no dbus, no kernel sound; the processes are known by their numbers,
# and only those are ended.
set -eu
# shellcheck source=tests/tools/processes.sh
. "$(dirname "$0")/processes.sh"
: "${SOUND_FOLDER:?a folder for the sound server}"
cycle=${SOUND_CYCLE-256}
room=$SOUND_FOLDER/run
settings=$SOUND_FOLDER/settings

die()
{
	echo "virtual-sound: $*" >&2
	exit 1
}

# ALSA takes the name of its settings for a list, cut at spaces and colons.
case $SOUND_FOLDER in
/*) ;;
*) die "SOUND_FOLDER must begin with a slash: $SOUND_FOLDER" ;;
esac
case $SOUND_FOLDER in
*[!A-Za-z0-9/._+-]*) die "SOUND_FOLDER holds more than letters, digits and" \
    "/._+-: $SOUND_FOLDER" ;;
esac
[ ${#room} -lt 90 ] || die "$SOUND_FOLDER is too long for the name of a socket"

# Everything a program needs to find this server, and nothing that leads it to
# another one.
use()
{
	unset DBUS_SESSION_BUS_ADDRESS PIPEWIRE_NODE PIPEWIRE_LATENCY \
	    PIPEWIRE_QUANTUM PIPEWIRE_PROPS PULSE_SERVER DISPLAY
	export PIPEWIRE_RUNTIME_DIR="$room" PIPEWIRE_REMOTE=virtual-0
	export PIPEWIRE_CONFIG_DIR="$settings"
	export ALSA_CONFIG_PATH="$settings/alsa.conf"
	export JACK_NO_START_SERVER=1 JACK_DEFAULT_SERVER=none-of-ours
}

# What every process of PipeWire loads: libraries, then modules by name.
libraries()
{
	cat <<-END
	context.spa-libs = {
	    audio.convert.* = audioconvert/libspa-audioconvert
	    support.* = support/libspa-support
	}
	END
}

modules()
{
	echo 'context.modules = ['
	for module do
		echo "    { name = libpipewire-module-$module }"
	done
	echo ']'
}

write_alsa()
{
	cat <<-'END'
	pcm.loudspeaker { type asym playback.pcm { type pipewire } }
	pcm.microphone { type asym capture.pcm { type pipewire } }
	pcm.!default {
	    type asym
	    playback.pcm {
	        type file
	        slave.pcm loudspeaker
	        format raw
	        file { @func getenv vars [ SOUND_TAP ] default "/dev/null" }
	    }
	    capture.pcm microphone
	}
	END
}

write_server()
{
	cat <<-END
	context.properties = {
	    core.daemon = true
	    core.name = virtual-0
	    support.dbus = false
	    mem.allow-mlock = false
	    log.level = 2
	    default.clock.rate = 48000
	    default.clock.allowed-rates = [ 48000 ]
	    default.clock.quantum = $cycle
	    default.clock.min-quantum = $cycle
	    default.clock.max-quantum = $cycle
	}
	END
	libraries
	modules protocol-native metadata spa-node-factory client-node \
	    client-device access adapter link-factory session-manager
	cat <<-'END'
	context.objects = [ { factory = adapter args = {
	    factory.name = support.null-audio-sink
	    node.name = loudspeaker
	    node.description = "Virtual loudspeaker"
	    media.class = Audio/Sink
	    object.linger = true
	    audio.position = [ FL FR ]
	    node.group = one-clock
	    node.pause-on-idle = false
	} }
	{ factory = adapter args = {
	    factory.name = support.null-audio-sink
	    node.name = microphone
	    node.description = "Virtual microphone"
	    media.class = Audio/Source/Virtual
	    object.linger = true
	    audio.position = [ MONO ]
	    node.group = one-clock
	    node.pause-on-idle = false
	} } ]
	END
}

write_client()
{
	cat <<-'END'
	context.properties = {
	    log.level = 0 mem.allow-mlock = false support.dbus = false
	}
	END
	libraries
	modules protocol-native client-node client-device adapter metadata \
	    session-manager
}

# Who connects a program's sound with the loudspeaker.
write_matchmaker()
{
	cat <<-'END'
	context.properties = {
	    log.level = 2 wireplumber.script-engine = lua-scripting
	    support.dbus = false
	}
	wireplumber.components = [
	    { name = libwireplumber-module-lua-scripting, type = module }
	    { name = ours.lua, type = config/lua }
	]
	END
	libraries
	modules protocol-native client-node client-device adapter metadata \
	    session-manager
}

write_matchmaker_parts()
{
	cat <<-'END'
	components = {}
	function module(name, arguments)
	    components[name] = { "libwireplumber-module-" .. name,
	        type = "module", args = arguments }
	end
	function script(name, arguments)
	    components[name] = { name, type = "script/lua", args = arguments }
	end
	module("metadata")
	module("default-nodes", { ["use-persistent-storage"] = false })
	module("si-node")
	module("si-audio-adapter")
	module("si-standard-link")
	module("si-audio-endpoint")
	module("default-nodes-api")
	module("mixer-api")
	script("create-item.lua", {})
	script("policy-node.lua", { ["move"] = true, ["follow"] = true,
	    ["audio.no-dsp"] = false })
	END
}

write_all()
{
	mkdir -p "$room" "$settings/ours.lua.d" "$SOUND_FOLDER/state"
	chmod 700 "$SOUND_FOLDER"
	write_alsa > "$settings/alsa.conf"
	write_server > "$settings/server.conf"
	# The plugin of ALSA and pw-cat look for these two names.
	write_client > "$settings/client.conf"
	write_client > "$settings/client-rt.conf"
	write_matchmaker > "$settings/wireplumber.conf"
	write_matchmaker_parts > "$settings/ours.lua.d/10-ours.lua"
}

number_of()
{
	cat "$SOUND_FOLDER/$1.pid" 2>/dev/null || echo 0
}

# launch NAME COMMAND...
launch()
{
	name=$1
	shift
	setsid "$@" > "$SOUND_FOLDER/$name.log" 2>&1 < /dev/null &
	echo $! > "$SOUND_FOLDER/$name.pid"
}

# end NAME [SIGNAL]
end()
{
	pid=$(number_of "$1")
	if running "$pid"; then
		kill "-${2-TERM}" "$pid" || :
		kill -CONT "$pid" 2>/dev/null || :
		within 2 ended "$pid" || kill -KILL "$pid"
	fi
	rm -f "$SOUND_FOLDER/$1.pid"
}

answers()
{
	timeout 2 pw-cli info 0 > /dev/null 2>&1
}

# The matchmaker has given both their ports.
ready()
{
	ports=$(timeout 2 pw-link -io 2>/dev/null)
	case $ports in
	*loudspeaker:playback_FR*) ;;
	*) return 1 ;;
	esac
	case $ports in
	*microphone:capture_MONO*) return 0 ;;
	*) return 1 ;;
	esac
}

# The air between loudspeaker and microphone is there.
air_ready()
{
	ports=$(timeout 2 pw-link -io 2>/dev/null)
	case $ports in
	*air.out:output_MONO*) ;;
	*) return 1 ;;
	esac
	case $ports in
	*air.in:input_MONO*) return 0 ;;
	*) return 1 ;;
	esac
}

air()
{
	launch air pw-loopback -n air -d "$1" -m '[ MONO ]' \
	    --capture-props='{ node.name = air.in node.autoconnect = false
	        node.group = one-clock }' \
	    --playback-props='{ node.name = air.out node.autoconnect = false
	        node.group = one-clock }'
	within 5 air_ready || die "no air: see $SOUND_FOLDER/air.log"
	pw-link loudspeaker:monitor_FL air.in:input_MONO
	pw-link air.out:output_MONO microphone:input_MONO
}

feeds()
{
	timeout 2 pw-link -o 2>/dev/null | grep -q "^feed$1:"
}

feed()
{
	pw-cat -p --target 0 \
	    -P "{ node.name = feed$$ node.autoconnect = false }" "$1" &
	player=$!
	trap 'kill $player 2>/dev/null' TERM INT
	within 5 feeds $$ || die "nothing feeds the microphone"
	port=$(pw-link -o | grep "^feed$$:" | head -n 1)
	pw-link "$port" microphone:input_MONO
	wait "$player"
}

up()
{
	use
	rm -f "$room"/virtual-0*
	launch server pipewire -c "$settings/server.conf"
	within 5 answers || die "no server: see $SOUND_FOLDER/server.log"
	export XDG_STATE_HOME="$SOUND_FOLDER/state"
	export WIREPLUMBER_CONFIG_DIR="$settings"
	launch matchmaker wireplumber
	within 5 ready ||
	    die "neither can be used: see $SOUND_FOLDER/matchmaker.log"
}

down()
{
	end air
	end matchmaker
	end server "${1-TERM}"
}

case ${1-} in
start)
	for program in pipewire wireplumber pw-cli pw-link pw-cat setsid \
	    timeout; do
		command -v "$program" > /dev/null || die "no $program here"
	done
	write_all
	up ;;
run)
	shift
	use
	exec "$@" ;;
record)
	use
	# It ends by itself and says so by its status; what counts is the file.
	timeout -s INT "$3" pw-cat -r --target loudspeaker --format s16 \
	    --rate 48000 --channels 2 -P '{ stream.capture.sink = true }' \
	    "$2" || :
	[ -s "$2" ] ;;
feed)
	use
	feed "$2" ;;
loop)
	use
	end air
	[ "$2" = off ] || air "${3-0}" ;;
cut) down "${2-TERM}" ;;
restore) up ;;
freeze) kill -STOP "$(number_of server)" ;;
thaw) kill -CONT "$(number_of server)" ;;
stop)
	down
	if [ -f "$settings/alsa.conf" ]; then
		rm -rf "$SOUND_FOLDER"
	fi ;;
*) die "verbs: start run record feed loop cut restore freeze thaw stop" ;;
esac
