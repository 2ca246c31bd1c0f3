# shellcheck shell=sh
# tmux.sh - a real terminal for tests of the real binary; behind lib.sh
#
# One tmux server in the private folder, with a shell that says "ready> ".
# shellcheck disable=SC2154
if ! command -v tmux > /dev/null; then
	echo "BAD tmux is not installed: make deps"
	exit 1
fi
socket=$work/tmux
trap 'tmux -S "$socket" kill-server 2> /dev/null; rm -rf "$work"' EXIT

tm()
{
	tmux -u -S "$socket" -f /dev/null "$@"
}

# The first minutes were seen: practice begins with its own first page.
practised()
{
	mkdir -p "$HOME/.config/evenhand"
	echo 'first_minutes_seen: yes' > "$HOME/.config/evenhand/settings.yaml"
}

# terminal COLUMNSxROWS: a new one of this size
terminal()
{
	tm kill-server 2> /dev/null
	# One that is still ending would take the new one with it.
	servers=$((${servers:-0} + 1))
	socket=$work/tmux$servers
	tm new-session -d -x "${1%x*}" -y "${1#*x}" 'PS1="ready> " exec sh -i'
	shows 5 'ready>'
}

# All that the terminal has shown, or only what stands there now.
page()
{
	tm capture-pane -p -J -S -500 -t 0
}

screen()
{
	tm capture-pane -p -t 0
}

# shows SECONDS WORDS: the terminal comes to show these words; a busy computer
# gets ten times as long
shows()
{
	end=$(($(date +%s) + 10 * $1))
	while ! page | grep -qF -- "$2"; do
		if [ "$(date +%s)" -gt "$end" ]; then
			fail "the terminal does not show \"$2\""
			page | sed 's/^/    /'
			return 1
		fi
		sleep 0.1
	done
	ok "the terminal shows \"$2\""
}

key()
{
	tm send-keys -t 0 "$@"
}

# command_line LINE: typed into the shell
command_line()
{
	key -l "$1"
	key Enter
}

# prompted: the shell waits for a line; what was started has ended or stopped
prompted()
{
	[ "$(screen | grep . | tail -n 1)" = 'ready>' ]
}

# bare: and nothing else stands there
bare()
{
	[ "$(screen | grep .)" = 'ready>' ]
}

# fresh: a page of the shell with nothing on it, and nothing that scrolled away
fresh()
{
	command_line clear
	waits 5 bare
	tm clear-history -t 0
}

# raw: the program reads key by key, so it has the terminal
raw()
{
	stty -a < "$(tm display-message -p -t 0 '#{pane_tty}')" |
	    grep -q -e '-icanon'
}

# mode NAME: the terminal's settings, in $work/NAME
mode()
{
	command_line "stty -a > $work/half; mv $work/half $work/$1"
	waits 5 [ -s "$work/$1" ]
}

# The process that the shell of the terminal runs.
child()
{
	pgrep -n -P "$(tm display-message -p -t 0 '#{pane_pid}')"
}

# waits SECONDS COMMAND: until it succeeds; a busy computer gets ten times as long
waits()
{
	tries=$(($1 * 200))
	shift
	until "$@"; do
		tries=$((tries - 1))
		if [ "$tries" -le 0 ]; then
			fail "waited in vain for: $*"
			screen | sed 's/^/    /'
			return 1
		fi
		sleep 0.05
	done
}

# seen WORDS: they stand on the screen now
# shellcheck disable=SC2317
seen()
{
	screen | grep -qF -- "$1"
}
