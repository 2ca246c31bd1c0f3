# shellcheck shell=sh
# sound.sh - what the tests with real sound share; lib.sh comes before it
#
# server KIND...    starts a server of our own in $work/server: pipewire or jack
# kinds KIND        the servers to try: one of them where time is dear, else all
# on_server COMMAND...   runs a command that finds this one and no other
# alsa KIND         no server, only settings of ALSA; the tap is $work/tap
#
# A test that needs what is not there says "skipped: ..." and ends well.
# shellcheck disable=SC2034,SC2154
# shellcheck source=tests/tools/processes.sh
. "$root/tests/tools/processes.sh"
ticks=$root/tests/tools/ticks.py
tap=$work/tap
server=
alone=
export SOUND_FOLDER="$work/server" SOUND_TAP="$tap"
# Nobody's own server may be found by chance.
export JACK_NO_START_SERVER=1 JACK_DEFAULT_SERVER=none-of-ours
export PULSE_SERVER=none-of-ours XDG_RUNTIME_DIR="$work"
trap 'server_stop; rm -rf "$work"' EXIT
trap 'exit 1' INT TERM

kinds()
{
	if [ -n "${EVENHAND_QUICK-}" ]; then
		echo "$1"
	else
		echo pipewire jack
	fi
}

server_stop()
{
	if [ -n "$server" ]; then
		"$server" stop || :
	fi
	server=
}

needs()
{
	for program do
		if ! command -v "$program" > /dev/null; then
			echo "skipped: there is no $program here"
			exit 0
		fi
	done
}

server()
{
	case $1 in
	pipewire)
		needs pipewire wireplumber pw-cli pw-link pw-cat
		server=$root/tests/tools/virtual-sound.sh ;;
	jack)
		needs jackd jack_lsp jack_rec
		server=$root/tests/tools/virtual-jack.sh ;;
	esac
	if ! "$server" start 2> "$work/err"; then
		fail "the server starts"
		cat "$work/err" "$SOUND_FOLDER"/*.log
		exit 1
	fi
}

on_server()
{
	"$server" run "$@"
}

# file: a device that takes frames as fast as they come; null: one that leads
# nowhere; dead: a default device without a card; bare: no default at all, on
# which released versions of PortAudio abort; empty: nothing at all
alsa()
{
	alone=$work/alsa.conf
	case $1 in
	file) cat > "$alone" <<-'END' ;;
		pcm.nothing { type null }
		pcm.!default {
		    type file
		    slave.pcm nothing
		    format raw
		    file { @func getenv vars [ SOUND_TAP ]
		        default "/dev/null" }
		}
		END
	dead) echo 'pcm.!default { type hw card 31 }' > "$alone" ;;
	bare) echo 'pcm.other { type null }' > "$alone" ;;
	empty) : > "$alone" ;;
	esac
	export ALSA_CONFIG_PATH="$alone"
}

# children PID: the numbers of its children
children()
{
	cat "/proc/$1/task/$1/children" 2> /dev/null
}

# Hundredths of a second of a core that a process has used so far.
used()
{
	sed 's/.*) //' "/proc/$1/stat" 2> /dev/null |
	    awk '{ print $12 + $13 }'
}

# heard FILE ARGUMENTS...: what a WAV file holds
heard()
{
	"$python" "$ticks" heard "$@" --format wav
}

# tapped ARGUMENTS...: what the tap holds, in the two channels of a card
tapped()
{
	"$python" "$ticks" heard "$tap" --channels 2 "$@"
}

due()
{
	"$python" "$ticks" due "$@"
}

match()
{
	"$python" "$ticks" match "$@"
}

# minute FILE: a routine of one stage whose session takes 56 s: 4 s to settle, a
# bow to count in and a round of four turns at six pulses, begun at 0:08, 0:20,
# 0:32 and 0:44
minute()
{
	cat > "$1" <<-'END'
	routine: Minute
	player: {instrument: cello}
	session: {minutes: 1}
	stages:
	  - {id: small, title: Small, place: string D, travel: semitone}
	END
}

# The keys of that session with --marking turn: begin, mark each turn, end.
minute_keys()
{
	printf '%s\n' '- forward' '- forward' '0:18 clean' '0:30 clean' \
	    '0:42 clean' '0:54 clean' '- forward'
}

# practise NAME ARGUMENTS...: a session at true pace on the server, in the
# background; its number is in $pid
practise()
{
	name=$1
	shift
	(exec "$server" run "$EVENHAND" --lines --at 2026-03-02T17:00 \
	    --script keys --marking turn --player "$name" "$@" \
	    > "$work/out" 2> "$work/err" < /dev/null) &
	pid=$!
}

# measured FILE NAME: a measure of each turn that has it, in order
measured()
{
	turns "$1" "measures.$2" \
	    "json_extract(value, '\$.measures.$2') is not null"
}

# near NAME LOW HIGH: each of the four turns' measures in h.json lies between
# shellcheck disable=SC2016
near()
{
	measured h.json "$1" | tr ' ' '\n' > values
	so "$1 lies from $2 to $3: $(tr '\n' ' ' < values)" \
	    awk -v low="$2" -v high="$3" '$1 < low || $1 > high { bad = 1 }
		END { exit bad || NR != 4 }' values
}
