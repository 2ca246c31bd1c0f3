#!/bin/sh
# test_story_load.sh - two sessions a day at the widest stage, 8 pulses: what a
# week may hold is kept
#
# Ten bows of finger 1 from first to fourth position at 8 pulses are 24.7 m; a
# week may hold six such sessions, 148 m (see tests/coach/test_load.c).
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# metres FINGER: of the whole history, to the tenth
metres()
{
	history_json h.json > /dev/null
	ask h.json "select printf('%.1f', sum(json_extract(value,
	    '\$.slide_um')) / 1e6) from f, json_each(j, '\$.turns')
	    where json_extract(value, '\$.unit') = '$1'"
}

# said WORDS: somewhere in what was printed, lines put together
said()
{
	tr '\n' ' ' < "$work/out" > joined
	has joined "$1"
}

routine_at wide
sed -i.old 's/start_pulses: 4/start_pulses: 8/' wide.yaml
n=46
while [ "$n" -le 274 ]; do
	printf '%d:%02d clean\n' $((n / 60)) $((n % 60))
	n=$((n + 12))
done > keys

for day in 02 03 04; do
	for hour in 09 17; do
		session "2026-03-${day}T$hour:00" keys --marking turn wide.yaml
		status_is $? 0 "$day March at $hour:00"
	done
done
is "six sessions, finger 1" "$(metres 1)" 148.0
is "finger 4" "$(metres 4)" 124.5

# The next day a first session is only the air, and a second goes.
run 0 today --at 2026-03-05T09:00 --marking turn --why wide.yaml
said 'F5 [O] With all that could be played today, the tip of finger 1 would slide 172.7 metres in seven days. 148 are allowed this week.'
said 'F5 [O] So only the arm swings today. Rest is part of the work.'
said 'Finger 1: with today at most 148 of 148 metres and 480 of 480 pulses'
said 'A week may hold 20 percent more than the week before'
said '0:28 the end.'
session 2026-03-05T09:00 keys --marking turn wide.yaml
is "nothing more slid" "$(metres 1)" 148.0
run 0 today --at 2026-03-05T17:00 --marking turn wide.yaml
said 'So another session today is left out.'
said 'Nothing is played today.'
session 2026-03-05T17:00 keys --marking turn wide.yaml
status_is $? 0 "a second session that is left out"
history_json h.json
is "and no sitting" "$(ask h.json "select json_array_length(j,
    '\$.sittings') from f")" 7

# When the days have gone by there is room again, and a fifth more.
run 0 today --at 2026-03-09T09:00 --marking turn --why wide.yaml
said 'Finger 1: with today at most 123.4 of 148 metres and 400 of 480 pulses'
finish
