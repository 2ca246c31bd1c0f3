#!/bin/sh
# test_completion_prompt.sh - a Tab at the prompt of a real bash, and of zsh
# where it is installed
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/completion.sh
. "$root/tests/whole/completion.sh"
# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"

# prompt SHELL...: a shell with its prompt
prompt()
{
	tm kill-server 2> /dev/null
	# A name of its own: a server that ends may still hold the old one.
	socket=$work/tmux-$1
	tm new-session -d -x 100 -y 40 "PS1='ready> ' exec $*"
	shows 10 'ready>'
}

# typed LINE WANTED: the line and a Tab become this
typed()
{
	key -l "$1"
	key Tab
	waits 4 seen "ready> $2"
	so "\"$1\" becomes \"$2\"" seen "ready> $2"
	key C-u
	key C-l
	waits 4 seen "ready>"
}

# lists LINE WORD...: the line and Tabs show all these words
lists()
{
	key -l "$1"
	key Tab
	key Tab
	shift
	for word; do
		waits 4 seen "$word"
		so "there is $word" seen "$word"
	done
	key C-c
	key C-l
	waits 4 seen "ready>"
}

# The same lines, the same answers.
common()
{
	typed 'evenhand che' 'evenhand check'
	typed 'evenhand check les' 'evenhand check lesson.yaml'
	typed 'evenhand check in' 'evenhand check inner/'
	typed 'evenhand today --mark' 'evenhand today --marking'
	typed 'evenhand --marking t' 'evenhand --marking turn'
	typed 'evenhand --marking=t' 'evenhand --marking=turn'
	typed 'evenhand history --player W' 'evenhand history --player Wren'
	typed 'evenhand history --player A' \
	    'evenhand history --player Ann\ Lee'
	typed 'evenhand --script k' 'evenhand --script keys.txt'
	typed 'evenhand new --from bass-' 'evenhand new --from bass-homework'
	typed 'evenhand --vers' 'evenhand --version'
	# The verbs are five words of a page.
	# shellcheck disable=SC2086
	lists 'evenhand ' $verbs
	lists 'evenhand new --f' --from --force
}

prompt bash --norc --noprofile -i
command_line ". $work/evenhand.bash; clear"
waits 4 seen 'ready>'
common

if command -v zsh > /dev/null; then
	mkdir "$work/site"
	cp "$work/evenhand.zsh" "$work/site/_evenhand"
	prompt zsh -f -i
	command_line "PS1='ready> '; fpath=($work/site \$fpath)"
	command_line "autoload -Uz compinit; compinit -u -D; clear"
	waits 4 seen 'ready>'
	common
	lists 'evenhand today --' --why --marking --player --at --help
	lists 'evenhand practise viol' viola violin-homework
else
	echo "skipped: zsh is not installed"
fi

finish
