#!/bin/sh
# test_sound_measure.sh - evenhand sound --measure: 50 ms of air are 50 ms, with
# noise too; and what it says where nothing can be measured
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
: "${DRIVE:?the program drive}"
# A long cycle, so that a busy computer loses few of them.
export SOUND_CYCLE=1024
server pipewire
state=$work/state
export XDG_STATE_HOME="$state"
delays=$state/evenhand/delays.yaml

# measure STATUS ARGUMENTS...: a very busy computer may interrupt the sound; it
# may have to try again
measure()
{
	want=$1
	shift
	for _ in 1 2 3; do
		on_server timeout -s KILL 90 "$EVENHAND" sound --measure "$@" \
		    > "$work/out" 2> "$work/err" < /dev/null
		got=$?
		[ "$got" -ne "$want" ] || break
	done
	status_is "$got" "$want" "evenhand sound --measure $*"
}

# What the file says of the one pair there is.
kept()
{
	sed -n "s/^ *$1: //p" "$delays"
}

# Called through "so".
# shellcheck disable=SC2317
near()
{
	[ "$1" -ge 49000 ] && [ "$1" -le 51000 ]
}

# --- what there is ---------------------------------------------------------------

on_server "$EVENHAND" sound > "$work/out" 2> "$work/err"
has "$work/out" 'Microphones:'
has "$work/out" '  microphone (ALSA)'

# --- fifty ms of air -----------------------------------------------------------------

"$server" loop on 0.05
measure 0
has "$work/out" 'Take headphones off your ears.'
has "$work/out" '12 of 12:'
has "$work/out" 'The microphone hears the loudspeaker'
so "50 ms are 50 ms: $(kept delay_us) us" near "$(kept delay_us)"
so "with its spread" [ "$(kept spread_us)" -le 1000 ]
is "for its owner alone" "$(stat -c %a "$delays")" 600
is "of this pair" "$(kept microphone) $(kept rate)" '"default" 48000'
so "nothing that was heard is kept" [ "$(find "$state" -type f |
    grep -vc -e delays.yaml -e sound.log)" = 0 ]

# --- what it is for ----------------------------------------------------------------------

# What is heard is placed where it sounded, by so much earlier.
HEAR=1 CORRECT=1 on_server "$DRIVE" 12 > pulses.txt 2> "$work/err" < /dev/null
so "pulses are heard" [ "$(grep -c '^pulse' pulses.txt)" -ge 20 ]
middle=$(sed -n 's/^pulse //p' pulses.txt | sort -n |
    awk '{ x[NR] = $1 } END { printf "%d", x[int((NR + 1) / 2)] * 1000 }')
so "where they sounded: $middle us" [ "${middle#-}" -le 1000 ]

# --- noise -----------------------------------------------------------------------------

"$python" - "$work/noise.wav" <<-'END'
	import random, struct, sys, wave
	w = wave.open(sys.argv[1], "wb")
	w.setparams((1, 2, 48000, 0, "NONE", ""))
	random.seed(1)
	few = [int(random.gauss(0, 300)) for _ in range(48000)]
	w.writeframes(struct.pack("<48000h", *few) * 60)
END
"$server" feed "$work/noise.wav" > "$work/feed" 2>&1 &
feeder=$!
sleep 1
measure 0
so "in noise: $(kept delay_us) us" near "$(kept delay_us)"
kill "$feeder" 2> /dev/null || :
wait "$feeder" || :
cp "$delays" before.yaml

# --- what is not believed -----------------------------------------------------------------

# It hears itself no more.
"$server" loop off
measure 69
has "$work/err" 'nothing but silence'

# Another microphone than there is.
measure 69 --microphone piano
one_sentence 'no microphone here is called "piano", or it does not answer'

# A card that only plays.
cat > "$SOUND_FOLDER/deaf.conf" <<-'END'
	pcm.!default { type asym playback.pcm { type pipewire } }
END
on_server env ALSA_CONFIG_PATH="$SOUND_FOLDER/deaf.conf" timeout -s KILL 60 \
    "$EVENHAND" sound --measure > "$work/out" 2> "$work/err" < /dev/null
status_is $? 69 "without a microphone"
one_sentence 'there is no microphone, or it does not answer'

# The server goes in the middle.
"$server" loop on 0.05
on_server timeout -s KILL 90 "$EVENHAND" sound --measure > "$work/out" \
    2> "$work/err" < /dev/null &
pid=$!
so "it begins" within 15 grep -q 'At loudness' "$work/out"
sleep 2
"$server" cut
wait "$pid"
status_is $? 69 "the server is gone"
has "$work/err" 'was lost on the way'

so "what was known before is kept" cmp "$delays" before.yaml

# --- slips ----------------------------------------------------------------------------

"$EVENHAND" sound --measure --try > "$work/out" 2> "$work/err"
status_is $? 64 "two things at once"
one_sentence 'two things'
finish
