#!/bin/sh
# test_story_past.sh - acceptance stories 4 and 5: a past in which the first
# finger had most, and sessions that were cut off
#
# Turns so far 58, 27, 10, 5; three rounds of four are twelve turns of work.  At
# least half and at most one and a half times an even share is 2 to 4 of them.
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# worked JSON [SESSIONS]: turns of work of fingers 1 to 4, in the first sessions
worked()
{
	ask "$1" "select group_concat(n, ' ') from (select count(*) as n from f,
	    json_each(j, '\$.turns') where json_extract(value, '\$.block') =
	    'work' and json_extract(value, '\$.sitting') <= ${2-99}
	    group by json_extract(value, '\$.unit'))"
}

# sitting JSON NUMBER: the fingers of the work of one session, in order
sitting()
{
	turns "$1" unit "json_extract(value, '\$.block') = 'work' and
	    json_extract(value, '\$.sitting') = $2"
}

# day NUMBER: a day of practice, Sundays free, from 0
day()
{
	printf '2026-03-%02dT17:00\n' $((2 + $1 + $1 / 6))
}

# whole PLAYER SESSIONS FILE: so many whole sessions, all clean
whole()
{
	pedals keys
	n=0
	while [ "$n" -lt "$2" ]; do
		session "$(day "$n")" keys --marking turn --player "$1" "$3"
		n=$((n + 1))
	done
	"$EVENHAND" history --json --player "$1" > "$1.json"
	is "$1: whole sessions" "$(ask "$1.json" "select count(*) from f,
	    json_each(j, '\$.sittings') where json_extract(value, '\$.ended') =
	    'whole'")" "$2"
}

# share "58 27 10 5" "2 2 4 4": the least finger's share in percent of the sums
share()
{
	echo "$1 $2" | awk '{
		for (i = 1; i <= 4; i++) {
			n = $i + $(i + 4)
			all += n
			if (i == 1 || n < least)
				least = n
		}
		printf "%.2f\n", 100 * least / all
	}'
}

# --- 4. a biased past ---------------------------------------------------------

routine_at tone
sed 's/^make_up: .*/make_up: catch_up/
    s/^homework:/&\n  turns_so_far: [58, 27, 10, 5]/' tone.yaml > biased.yaml
sed '/turns_so_far/d; s/^make_up: .*/make_up: none/' biased.yaml > even.yaml
run 0 check biased.yaml even.yaml

run 0 today --at "$(day 0)" --marking turn biased.yaml
has "$work/out" 'More turns today for: 3, 4.'
whole biased 10 biased.yaml
is "the first session" "$(sitting biased.json 1)" "4 3 2 1 4 3 4 3 2 1 4 3"
is "after ten sessions" "$(worked biased.json)" "20 22 38 40"
is "with what was before: 78, 49, 48, 45" \
    "$(share "58 27 10 5" "$(worked biased.json)")" 20.45

# Nine are not enough, and going on evenly takes 25.
nine=$(share "58 27 10 5" "$(worked biased.json 9)")
so "nine are too few: $nine %" [ "${nine%.*}" -lt 20 ]
whole even 25 even.yaml
is "25 even sessions" "$(worked even.json)" "75 75 75 75"
is "then the least has" "$(share "58 27 10 5" "$(worked even.json)")" 20.00
is "a session before not yet" \
    "$(share "58 27 10 5" "$(worked even.json 24)")" 19.85

# --- 5. cut off twice -----------------------------------------------------------

# After turn 6 of the work (3:28 to 3:36), with q in the change.
pedals all
head -n 15 all > six
printf '%s\n' '3:39 q' '- back' '- forward' '- forward' >> six
session "$(day 0)" six --marking turn tone.yaml
history_json h.json
is "the first session" "$(sitting h.json 1)" "1 2 3 4 1 2"
is "its ledger" "$(worked h.json)" "2 2 1 1"
run 0 today --at "$(day 1)" --marking turn --why tone.yaml
has "$work/out" 'first go: finger 3 at 2:28, 4 at 2:40, 1 at 2:52, 2 at 3:04.'
is "planned for each" "$(grep -c 'Each finger gets the same share of' \
    "$work/out")" 1
has "$work/out" 'work: 3 turns.'
session "$(day 1)" six --marking turn tone.yaml
history_json h.json
is "the second session" "$(sitting h.json 2)" "3 4 1 2 3 4"
is "its ledger" "$(worked h.json)" "3 3 3 3"
finish
