#!/bin/sh
# test_story_away.sh - acceptance story 9: ten days away at the semitone
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# day NUMBER of March: a whole session, all clean
day()
{
	session "2026-03-${1}T17:00" keys --marking turn semitone.yaml
	status_is $? 0 "a session on $1 March"
}

# today NUMBER
today()
{
	run 0 today --at "2026-03-${1}T16:00" --marking turn semitone.yaml
	tr '\n' ' ' < "$work/out" > said
}

routine_at semitone
pedals keys
day 02
day 03
day 04
has "$work/out" 'A tone apart'

today 15
has said '10 days without practice: 60 percent of the time, 3:00'
has said 'It ends at 2:20.'
has said '0:28 again: First to fourth position. Each finger once, 1, 2, 3, 4, at 4 pulses.'
has said '1:24 again: First to third position. Each finger once, 1, 2, 3, 4, at 4 pulses.'
has said '"A semitone apart" comes back next time, at the lowest step'
so "no work" [ "$(grep -c 'the work:' "$work/out")" = 0 ]

# 690 mm and equal temperament: 4.03, 3.81, 3.59 and 3.39 m.
day 15
history_json h.json
is "metres by finger" "$(ask h.json "select group_concat(m, ' ') from (select
    printf('%.2f', sum(json_extract(value, '\$.slide_um')) / 1e6) as m
    from f, json_each(j, '\$.turns') where json_extract(value, '\$.sitting') = 4
    and json_extract(value, '\$.unit') <> '' group by
    json_extract(value, '\$.unit'))")" "4.03 3.81 3.59 3.39"
today 16
has said 'the work: A semitone apart. 3 rounds, beginning at 4 pulses.'
has said 'It ends at 4:52.'

# Up to three days change nothing, four cost a step.
day 16
today 20
so "three days" [ "$(grep -c 'without practice' "$work/out")" = 0 ]
today 21
has said '4 days without practice: all is one step lower today.'
finish
