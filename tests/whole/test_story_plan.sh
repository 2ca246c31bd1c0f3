#!/bin/sh
# test_story_plan.sh - acceptance story 1: five minutes at each stage, as they
# are planned and as they were played
#
# With a bow of 4 s, two bows a turn, changes of 4 s and four fingers a turn is
# 12 s and a round 48 s; a block begins with 8 s; the swing in the air is 28 s.
#
#	stage 2	0:28 + 8 + 5 x 48			= 276 s
#	stage 3	0:28 + 8 + 48 + 8 + 4 x 48		= 284 s
#	4, 5, 6	0:28 + 2 x (8 + 48) + 8 + 3 x 48	= 292 s
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# blocks JSON: where blocks begin, in seconds: 8 s before the first turn of each
blocks()
{
	ask "$1" "select group_concat(t, ' ') from (select
	    min(json_extract(value, '\$.start_ms')) / 1000 - 8 as t
	    from f, json_each(j, '\$.turns') group by
	    json_extract(value, '\$.stage') order by t)"
}

# seconds JSON WHERE: the starts of turns in seconds
seconds()
{
	ask "$1" "select group_concat(t / 1000.0, ' ') from (select
	    json_extract(value, '\$.start_ms') as t from f,
	    json_each(j, '\$.turns') where $2)" | sed 's/\.0\>//g'
}

ending()
{
	ask "$1" "select json_extract(j, '\$.sittings[0].length_ms') || ' ' ||
	    json_extract(j, '\$.sittings[0].ended') from f"
}

bows()
{
	ask "$1" "select group_concat(n, ' ') from (select
	    sum(json_extract(value, '\$.bows_done')) as n from f,
	    json_each(j, '\$.turns') where
	    json_extract(value, '\$.block') <> 'air' group by
	    json_extract(value, '\$.unit'))"
}

# --- stage tone, as planned -------------------------------------------------

routine_at tone
run 0 today --at 2026-03-02T17:00 --marking turn tone.yaml
has "$work/out" 'Today: A tone apart, day 1. It ends at 4:52.'
is "blocks" "$(grep -o '^[0-9]:[0-9][0-9] \(in\|again\|the work\)' \
    "$work/out" | cut -c 1-4 | tr '\n' ' ')" "0:00 0:28 1:24 2:20 "
has "$work/out" 'finger 1 at 2:28, 2 at 2:40, 3 at 2:52, 4 at 3:04.'
has "$work/out" '4:52 the end: 40 bows, 10 for each finger.'

# --- and as played ----------------------------------------------------------

pedals keys
session 2026-03-02T17:00 keys --marking turn tone.yaml
status_is $? 0 'a session at the stage tone'
history_json h.json
is "blocks" "$(blocks h.json)" "0 28 84 140"
is "round 1" "$(seconds h.json "$(block work tone) and
    json_extract(value, '\$.round') = 0")" "148 160 172 184"
is "fingers of round 1" "$(turns h.json unit "$(block work tone) and
    json_extract(value, '\$.round') = 0")" "1 2 3 4"
is "the end" "$(ending h.json)" "292000 whole"
is "bows of each finger" "$(bows h.json)" "10 10 10 10"

# --- without pedals the times inside a round move, the totals stay ------------

echo '2:05 ?' > sign
session 2026-03-02T17:00 sign --player round tone.yaml
status_is $? 0 'the same without pedals'
"$EVENHAND" history --json --player round > r.json
is "blocks" "$(blocks r.json)" "0 28 84 140"
is "round 1" "$(seconds r.json "$(block work tone) and
    json_extract(value, '\$.round') = 0")" "148 159 170 181"

# --- stages 2, 3 and 6: 276, 284 and 292 s ------------------------------------

while read -r stage length minutes starts; do
	routine_at "$stage"
	run 0 today --at 2026-03-02T17:00 --marking turn "$stage.yaml"
	has "$work/out" "It ends at $minutes."
	session 2026-03-02T17:00 sign --marking turn --player "$stage" \
	    "$stage.yaml"
	status_is $? 0 "a session at the stage $stage"
	"$EVENHAND" history --json --player "$stage" > s.json
	is "$stage: the end" "$(ending s.json)" "$length whole"
	is "$stage: blocks" "$(blocks s.json)" "$starts"
	is "$stage: bows of each finger" "$(bows s.json)" "10 10 10 10"
done <<-'END'
	wide 276000 4:36 0 28
	thirds 284000 4:44 0 28 84
	letting-go 292000 4:52 0 28 84 140
END
finish
