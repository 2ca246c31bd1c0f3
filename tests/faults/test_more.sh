#!/bin/sh
# test_more.sh - processes, threads, pipes, sockets and memory to share are not to
# be had, one after the other, and from each on
#
# Sound is asked for on a card of ALSA's own, which leads nowhere, and a
# microphone that is not there.
#
# Functions are called by way of every.
# shellcheck disable=SC2317
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/../whole/lib.sh"
# shellcheck source=tests/faults/nth.sh
. "${root:?}/tests/faults/nth.sh"

printf '%s\n' '- forward' '- forward' '0:00.2 leave' > leave
echo 'pcm.!default { type null }' > "$work/alsa.conf"
export ALSA_CONFIG_PATH="$work/alsa.conf"
export JACK_NO_START_SERVER=1 JACK_DEFAULT_SERVER=none-of-ours
unset PULSE_SERVER
practised_tiny

every more evenhand nothing history --json
if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
	every more evenhand a_file print homework -o week.pdf --at "$day"
	every more evenhand a_file print lesson -o lesson.svg --at "$day"
else
	echo "skipped: there is no evenhand-paper here"
fi
if [ -x "${EVENHAND%/*}/evenhand-file" ]; then
	every more evenhand a_file track -o today.wav --at "$day" tiny.yaml
	"$EVENHAND" track -o "$work/kept/files/heard.wav" --at "$day" tiny.yaml
	every more evenhand nothing measure heard.wav
	every more evenhand a_file measure heard.wav --plot heard.svg
else
	echo "skipped: there is no evenhand-file here"
fi

if [ "$(uname)" != Linux ]; then
	echo "skipped: there is no card without a card here"
	finish
fi
no_room='The computer has no room left to make sound. Practise without it: it begins as soon as there is some.'

# plain FILE: its words, and why sound is heard or not left out
plain()
{
	tr '\n' ' ' < "$1" | sed "s/Sound comes from default (ALSA)\\. //
	    s/$no_room //"
}

# With sound or without it the session is the same, and why is told in one way.
same()
{
	[ "$(plain "$work/out")" = "$(plain "$work/good")" ]
}

every more evenhand every_turn --lines --clock fast --card default \
    --at "$day" --script keys --marking turn tiny.yaml

# At true pace what is told comes when it comes, and all of it is true.
same()
{
	! grep -q 'evenhand-sound, is\|was ended from outside' "$work/out" &&
	    grep -q 'All of it is kept' "$work/out"
}

every more evenhand every_turn --lines --card default --listen \
    --at "$day" --script leave --marking turn tiny.yaml
WAYS=alone
every more evenhand-sound every_turn --lines --card default --listen \
    --at "$day" --script leave --marking turn tiny.yaml
finish
