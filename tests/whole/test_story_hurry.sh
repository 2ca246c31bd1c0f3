#!/bin/sh
# test_story_hurry.sh - another stage for today, and a slower day after hurry
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# said WORDS: somewhere in what was printed, lines put together
said()
{
	tr '\n' ' ' < "$work/out" > joined
	has joined "$1"
}

# today DAY ARGUMENTS...
today()
{
	day=$1
	shift
	run 0 today --at "2026-03-${day}T16:00" --marking turn "$@" tone.yaml
}

routine_at tone
sed -i.old 's/^    cue: ARM LEADS/    say: Let it swing.\n&/; /say: The forearm moves first/d' \
    tone.yaml
run 0 check tone.yaml
pedals keys

# A stage that is opened may be worked on instead.
session 2026-03-02T09:00 keys --marking turn --stage wide tone.yaml
status_is $? 0 "a session on an earlier stage"
history_json h.json
is "worked on" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].work_stage') from f")" wide
today 03
said 'Today: A tone apart, day 1.'

# One that does not exist, or is not opened, is refused.
run 64 practise --lines --clock fast --stage thirsd tone.yaml
one_sentence 'this routine has no stage "thirsd". What may be worked on: air, wide, thirds, tone'
later()
{
	run 77 --lines --clock fast --at "2026-03-${1}T16:00" --stage semitone \
	    tone.yaml
	one_sentence '"A semitone apart" is not opened yet: that happens in the lesson. Until then there is all up to "A tone apart"'
}
later 03
history_json h.json
is "kept as a note" "$(ask h.json "select json_extract(j, '\$.notes[0].kind')
    || ' ' || json_extract(j, '\$.notes[0].words') from f")" "later semitone"
run 0 history
so "no word of it in the history" [ "$(grep -ci 'semitone\|later' \
    "$work/out")" = 0 ]
today 03 --why
said 'a later stage was asked for, which count twice: 1. Together 2; from 3 on'
so "not slower yet" [ "$(grep -c 'slower day:' "$work/out")" = 0 ]

# Once more on another day: four signs.
session 2026-03-03T17:00 keys --marking turn tone.yaml
later 04
today 04 --why
said 'F7 [O] Today is a slower day: after the first round the work goes one step lower, to 6 pulses, and earlier stages may take more of the time.'
said 'Together 4; from 3 on a day is a slower one.'
said 'which is 2/3 of 5:00'
session 2026-03-04T17:00 keys --marking turn tone.yaml
history_json h.json
is "one step lower, and no further" "$(turns h.json pulses "$(block work tone)
    and json_extract(value, '\$.sitting') = (select
    max(json_extract(t.value, '\$.sitting')) from f,
    json_each(j, '\$.turns') t)")" "8 8 8 8 6 6 6 6 6 6 6 6"
tr '\n' ' ' < "$work/out" > joined
has joined 'Close to the goal, hurry creeps in.'
has joined "Your teacher's words: Let it swing."

# A week later nothing is left of it.
today 12 --why
so "no longer slower" [ "$(grep -c 'slower' "$work/out")" = 0 ]
finish
