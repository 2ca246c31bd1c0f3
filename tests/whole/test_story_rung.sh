#!/bin/sh
# test_story_rung.sh - acceptance story 6: how many pulses are worked at, from
# the marks alone
#
# Stage tone with pedals: the first turn of the work begins at 2:28 and each
# takes 12 s, so the change after turn n (of 0 to 11) begins at 2:36 + 12 n s.
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
routine_at tone

# marks LETTERS: a key in the change after each turn of the work: c, s or -
marks()
{
	echo '1:50 ?'
	echo "$1" | fold -w 1 | awk '{
		t = 158 + 12 * (NR - 1)
		printf "%d:%02d %s\n", t / 60, t % 60, $1 == "-" ? "?" : $1
	}'
}

# rungs PLAYER NUMBER: pulses of the twelve turns of work of a session
rungs()
{
	"$EVENHAND" history --json --player "$1" > r.json
	turns r.json pulses "$(block work tone) and
	    json_extract(value, '\$.sitting') = $2"
}

# played PLAYER DAY LETTERS
played()
{
	marks "$3" > keys
	session "2026-03-0${2}T17:00" keys --marking turn --player "$1" tone.yaml
	status_is $? 0 "$1 on day $2: $3"
}

# All clean, all clean at 6, then round 3 at 8 with finger 4 shaky.
played rises 2 cccccccccccs
is "6, 6, 8" "$(rungs rises 1)" "6 6 6 6 6 6 6 6 8 8 8 8"
has "$work/out" 'Next: 8 pulses.'
played rises 3 ------------
is "the next session starts at 6" "$(rungs rises 2)" "6 6 6 6 6 6 6 6 6 6 6 6"

# Two shaky at 6: the next round at 4.
played falls 2 ccss--------
is "6, then 4" "$(rungs falls 1)" "6 6 6 6 4 4 4 4 4 4 4 4"
has "$work/out" 'Next: 4 pulses.'

# One unmarked turn: not all clean, and nothing falls.
played unmarked 2 ccccccc-----
is "6 and 6 and 6" "$(rungs unmarked 1)" "6 6 6 6 6 6 6 6 6 6 6 6"
so "nothing is said of pulses" [ "$(grep -c 'Next: [0-9]* pulses' "$work/out")" = 0 ]

# Without pedals it is the same: the marks come after the rounds, which begin at
# 2:28, 3:16 and 4:04.
printf '%s\n' '1:50 ?' '3:12 forward' '4:00 forward' '4:48 4' > keys
session 2026-03-02T17:00 keys --player round tone.yaml
is "6, 6, 8" "$(rungs round 1)" "6 6 6 6 6 6 6 6 8 8 8 8"
session 2026-03-03T17:00 keys --player round tone.yaml
is "and 6 again" "$(rungs round 2 | cut -c 1-7)" "6 6 6 6"
finish
