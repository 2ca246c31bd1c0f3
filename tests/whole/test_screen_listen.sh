#!/bin/sh
# test_screen_listen.sh - what the first page of the full screen tells of a
# microphone stays there to be read, whatever is told of the sound after it, and
# of one that is missing it is not said that it listens
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"
practised
# The settings of a computer without any card.
: > "$work/alsa.conf"
export ALSA_CONFIG_PATH="$work/alsa.conf"
export JACK_NO_START_SERVER=1 JACK_DEFAULT_SERVER=none-of-ours
export PULSE_SERVER=none-of-ours XDG_RUNTIME_DIR="$work"

terminal 120x40
command_line "'$EVENHAND' --listen"
waits 10 seen "There is no microphone, so nobody listens."
waits 10 seen "There is no loudspeaker yet"
so "it still stands there that nobody listens" \
    seen "There is no microphone, so nobody listens."
so "and not that a microphone does" [ "$(page | grep -c "From now on")" -eq 0 ]
key q
waits 10 seen "ready>"
finish
