#!/bin/sh
# test_programs.sh - evenhand-sound: what it says of itself, where evenhand finds
# it, and what becomes of a session without it
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
sound=${EVENHAND%/*}/evenhand-sound

# hand STATUS WORDS ARGUMENTS...: started by hand
hand()
{
	want=$1
	words=$2
	shift 2
	"$sound" "$@" > "$work/out" 2> "$work/err" < /dev/null
	status_is "$?" "$want" "evenhand-sound $*"
	has "$work/$([ "$want" = 0 ] && echo out || echo err)" "$words"
	is "one line" "$(cat "$work/out" "$work/err" | wc -l | tr -d ' ')" 1
}

hand 64 'which starts it by itself. Start evenhand instead.'
hand 64 'which starts it by itself.' wren.yaml
hand 64 'which starts it by itself.' --for
hand 64 'which starts it by itself.' --for 0.0.1/1/64
hand 0 'which starts it by itself.' --help
hand 0 "$("$EVENHAND" --version | sed 's/evenhand/evenhand-sound/')" --version

# A card of ALSA's own, where there is ALSA.
if [ "$(uname)" != Linux ]; then
	echo "skipped: no card without a card here"
	finish
fi
echo 'pcm.!default { type null }' > "$work/alsa.conf"
export ALSA_CONFIG_PATH="$work/alsa.conf"
export JACK_NO_START_SERVER=1 JACK_DEFAULT_SERVER=none-of-ours

# As it is built, as it is installed, through a link, by its name alone.
run 0 sound
has "$work/out" 'evenhand plays on default'
mkdir -p "$work/there/bin" "$work/there/libexec/evenhand" "$work/links"
cp "$EVENHAND" "$work/there/bin"
cp "$sound" "$work/there/libexec/evenhand"
ln -s ../there/bin/evenhand "$work/links/evenhand"
for program in "$work/there/bin/evenhand" "$work/links/evenhand" evenhand; do
	PATH=$work/links:$PATH "$program" sound > "$work/out" 2> "$work/err" \
	    < /dev/null
	status_is $? 0 "$program sound"
	has "$work/out" 'evenhand plays on default'
done

# Without it: said once, and practised by sight.
rm "$work/there/libexec/evenhand/evenhand-sound"
for try in '' --try; do
	# No option is no word.
	# shellcheck disable=SC2086
	"$work/there/bin/evenhand" sound $try > "$work/out" 2> "$work/err" \
	    < /dev/null
	status_is $? 69 "without it: evenhand sound $try"
	one_sentence 'evenhand-sound, is missing or does not start.'
done
tiny tiny.yaml
printf '%s\n' '- forward' '- forward' '0:01 back' > keys
# It is ended when it has said so.
# shellcheck disable=SC2094
(comes "$work/out" 'evenhand-sound, is missing' && echo q) | "$work/there/bin/evenhand" --lines tiny.yaml \
    > "$work/out" 2> "$work/err"
status_is $? 0 "without it: a session"
is "nothing on standard error" "$(cat "$work/err")" ""
is "said once" "$(grep -c 'evenhand-sound, is missing' "$work/out")" 1
finish
