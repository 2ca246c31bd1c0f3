#!/bin/sh
# test_screen_pages.sh - the pages that a terminal shows, beside those that were
# looked at; and a whole session with two keys at three sizes
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"

export LC_ALL=C.UTF-8
practised
tiny tiny.yaml

# looked_at PAGE SIZE [LEAF]: the page in the golden file, of a size as 40 x 12
# shellcheck disable=SC2317
looked_at()
{
	awk -v head="--- $2, ${3:-1} of " 'index($0, "--- ") == 1 {
	    in_it = index($0, head) == 1; next } in_it' \
	    "$root/tests/screen/golden/page-$1.txt"
}

# alike PAGE SIZE [LEAF]: the terminal shows it, within a moment
# shellcheck disable=SC2317
alike()
{
	looked_at "$@" > "$work/wanted"
	screen > "$work/shown"
	[ -s "$work/wanted" ] && cmp -s "$work/wanted" "$work/shown"
}

# is_page PAGE SIZE [LEAF]
is_page()
{
	waits 5 alike "$@" && ok "$1 at $2 is the page that was looked at"
}

# shellcheck disable=SC2317
unseen()
{
	! seen "$1"
}

for size in '40 x 12' '80 x 24' '120 x 40'; do
	terminal "$(echo "$size" | tr -d ' ')"
	command_line "$EVENHAND --silent --at 2026-03-02T17:00"
	is_page sore-first "$size"
	key '?'
	is_page help "$size" 1
	key '?'
	is_page sore-first "$size"
	sleep 0.3
	key PageUp
	waits 5 seen 'finger 1?'
	sleep 0.3
	key PageUp
	is_page where "$size"
	sleep 0.3
	key q
	waits 5 prompted

	# Two keys, from the first page to the shell, and all of it is kept.
	name=$(echo "two$size" | tr -d ' ')
	command_line "$EVENHAND tiny.yaml --silent --marking turn --player $name; echo over-\$?"
	waits 5 seen 'sore'
	key PageDown
	waits 5 seen 'Today'
	sleep 0.3
	key PageDown
	# Its page has that arrow, too.
	waits 5 unseen 'Today'
	# Bows of a second and changes of two: 2 s in 4, from 0:04 on.
	for pedal in PageDown PageUp PageDown PageDown; do
		waits 9 seen '←'
		sleep 0.3
		key "$pedal"
		sleep 1.9
	done
	waits 9 seen 'One thing to keep'
	# Where it takes two leaves the left pedal turns them.
	if [ "$size" = '40 x 12' ]; then
		waits 5 seen 'Back: read on.' && ok "back reads on"
		sleep 0.4
		key PageUp
		waits 5 seen 'more (2 of' && ok "the pedal turns the leaf"
		sleep 0.4
	fi
	key PageDown
	waits 5 seen 'question for your teacher'
	sleep 0.4
	key PageDown
	shows 5 'over-0'
	"$EVENHAND" history --json --player "$name" < /dev/null > h.json
	is "the marks at $size" "$(turns h.json mark 1)" 'clean shaky clean clean'
	is "how it ended" "$(ask h.json "select json_extract(j,
	    '\$.sittings[0].ended') from f")" whole
done
finish
