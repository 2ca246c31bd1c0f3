#!/bin/sh
# test_sound_verb.sh - evenhand sound: the cards it lists, the bow it plays, and
# how it ends where there is no sound, whatever the reason
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
server pipewire

# sound STATUS ARGUMENTS...: on the server, and it may take 15 s
sound()
{
	want=$1
	shift
	on_server timeout -s KILL 15 "$EVENHAND" sound "$@" > "$work/out" \
	    2> "$work/err" < /dev/null
	status_is "$?" "$want" "evenhand sound $*"
}

# --- the list -------------------------------------------------------------------

sound 0
has "$work/out" 'Sound can be played on:'
has "$work/out" '  default (ALSA), the usual one of this computer'
has "$work/out" '  loudspeaker (ALSA)'
has "$work/out" 'evenhand plays on default (ALSA), at loudness 50 of 100.'
is "nothing on standard error" "$(cat "$work/err")" ""
so "narrow lines" [ "$(grep -c '.\{80\}' "$work/out")" = 0 ]

sound 0 --card loud --loudness 30
has "$work/out" 'plays on loudspeaker (ALSA), at loudness 30 of 100.'
sound 0 --card piano
has "$work/out" 'The card that was chosen, "piano", is not there now.'
has "$work/out" 'evenhand plays on default (ALSA)'

# What is written in the settings counts, and the command line counts more.
mkdir -p "$HOME/.config/evenhand"
printf 'sound_card: loud\nloudness: 20\n' > "$HOME/.config/evenhand/settings.yaml"
sound 0
has "$work/out" 'plays on loudspeaker (ALSA), at loudness 20 of 100.'
sound 0 --card default
has "$work/out" 'plays on default (ALSA), at loudness 20 of 100.'
rm "$HOME/.config/evenhand/settings.yaml"

# --- wireless cards, by their names -----------------------------------------------

cat > "$SOUND_FOLDER/more.conf" <<-END
	<$SOUND_FOLDER/settings/alsa.conf>
	pcm.bluealsa { type pipewire }
END
on_server env ALSA_CONFIG_PATH="$SOUND_FOLDER/more.conf" \
    "$EVENHAND" sound > "$work/out" 2> "$work/err" < /dev/null
status_is $? 0 "with a wireless card"
has "$work/out" 'bluealsa is wireless: its sound comes late'
is "only that one" "$(grep -c 'is wireless' "$work/out")" 1

# --- the bow -------------------------------------------------------------------

# A knock and the pulses 2 to 6 of a bow of 4 s: 32 000 frames apart.
seq 0 5 | awk '{ print $1 * 32000, $1 ? "tick" : "down" }' > bow.txt
#
# try OPTIONS...: a very busy computer may lose the sound by itself; it may have
# to try again
try()
{
	for _ in 1 2 3; do
		start=$(now_ms)
		on_server "$EVENHAND" sound --try "$@" > "$work/out" \
		    2> "$work/err" < /dev/null
		status=$?
		took=$(($(now_ms) - start))
		[ "$status" -eq 69 ] || break
	done
	status_is "$status" 0 "evenhand sound --try $*"
}

try
so "it ends by itself ($took ms)" [ "$took" -lt 9000 ]
tapped --from-first > heard.txt
so "the bow and its pulses, exactly" cmp heard.txt bow.txt
has "$work/out" 'Start quiet. Turn down if ears ring.'
has "$work/out" "Sound comes from the computer's usual loudspeaker."
has "$work/out" 'At loudness 50 of 100: one bow of 4 seconds.'
has "$work/out" 'one knock for the bow and 5 ticks for its pulses'
is "nothing on standard error" "$(cat "$work/err")" ""
tapped --measure | awk 'NR == 1 { print $4 }' > full

# Half as loud is half as high.
try --loudness 25
tapped --measure | awk 'NR == 1 { print $4 }' > half
so "half the loudness: $(cat half) of $(cat full)" awk -v h="$(cat half)" \
    -v f="$(cat full)" 'BEGIN { exit !(h > 0.49 * f && h < 0.51 * f) }'

# Ctrl-C in mid bow.
(exec "$server" run "$EVENHAND" sound --try > "$work/out" 2> "$work/err") &
pid=$!
sleep 2.5
members=$(children "$pid")
start=$(now_ms)
kill -INT "$pid"
wait "$pid"
status_is $? 130 "Ctrl-C"
so "it ends at once" [ $(($(now_ms) - start)) -lt 500 ]
for member in $members; do
	so "nobody is left" within 2 ended "$member"
done

# --- slips -----------------------------------------------------------------------

sound 64 --loudness loud
has "$work/err" '--loudness is a number from 0 to 100, not "loud"'
sound 64 --loudness 101
sound 64 --loudness -1
sound 64 speaker

# --- no sound ----------------------------------------------------------------------

# A server that stands still: PipeWire's cards are known without it, but none of
# them plays; JACK's are not.
"$server" freeze
sound 0
sound 69 --try
one_sentence 'does not answer'
"$server" thaw
sound 0
server_stop
server jack
sound 0
has "$work/out" 'system (JACK Audio Connection Kit), the usual one'
"$server" freeze
sound 69
one_sentence 'does not answer'
sound 69 --try
one_sentence 'does not answer'
"$server" thaw
sound 0 --try
server_stop

# None at all; on the last two PortAudio breaks.
for kind in dead empty bare; do
	alsa "$kind"
	for try in '' --try; do
		# No option is no word.
		# shellcheck disable=SC2086
		timeout -s KILL 15 "$EVENHAND" sound $try > "$work/out" \
		    2> "$work/err" < /dev/null
		status_is $? 69 "$kind: evenhand sound $try"
		one_sentence 'evenhand: '
		if [ "$kind" = dead ]; then
			has "$work/err" 'there is no sound card here'
		fi
	done
done
finish
