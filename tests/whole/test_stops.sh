#!/bin/sh
# test_stops.sh - pain, sore fingers, silences and endings, in the real journal
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

routine_at tone

# --- it hurts at 3:20 -------------------------------------------------------
# Whole turns kept: wide 4, thirds 4, tone 4.  No start before four in the
# morning.

printf '%s\n' '0:26 c' '1:54 c' '3:20 h' '- 4' > keys
session 2026-03-02T17:00 keys --marking turn tone.yaml
status_is $? 0 'a pain stop'
history_json h.json
is "wide" "$(turns h.json bows_done "$(block recap wide)")" "2 2 2 2"
is "thirds" "$(turns h.json bows_done "$(block recap thirds)")" "2 2 2 2"
is "tone" "$(turns h.json bows_done "$(block work tone)")" "2 2 2 2"
is "how it ended" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].ended') from f")" pain
is "a note of pain" "$(ask h.json "select count(*) from f,
    json_each(j, '\$.notes') where json_extract(value, '\$.kind') in
    ('pain', 'skin')")" 1

sittings()
{
	history_json s.json > "$work/quiet"
	ask s.json "select count(*) from f, json_each(j, '\$.sittings')
	    where json_extract(value, '\$.length_ms') > 0"
}

printf '%s\n' '0:26 c' '1:00 c' > keys
for at in 2026-03-02T17:10 2026-03-02T23:59 2026-03-03T03:59; do
	session "$at" keys tone.yaml
	status_is $? 0 "refused at $at"
	is "sittings after $at" "$(sittings)" 1
	so "it says why" grep -qi 'pain' "$work/out"
done
session 2026-03-03T04:00 keys tone.yaml
status_is $? 0 "allowed at four"
is "sittings after four" "$(sittings)" 2

# For three clear days: 60 % of the time, 4 pulses, nothing wider than a tone.
history_json h.json
is "no wide stage" "$(turns h.json start_ms "json_extract(value, '\$.sitting')
    = 2 and json_extract(value, '\$.stage') in ('wide', 'thirds')")" ""
is "lowest rung" "$(ask h.json "select group_concat(distinct
    json_extract(value, '\$.pulses')) from f, json_each(j, '\$.turns') where
    json_extract(value, '\$.sitting') = 2 and
    json_extract(value, '\$.block') <> 'air'")" 4
is "the cap" "$(ask h.json "select json_extract(j, '\$.sittings[1].cap_ms')
    from f")" 180000

# --- silence and the same turn again ----------------------------------------
# Silence in the third turn of wide at 1:02; on at 1:05 after a count-in.

printf '%s\n' '0:50 ?' '1:02 space' '1:05 forward' '2:30 ?' '4:50 ?' > keys
session 2026-03-02T17:00 keys --marking turn --player still tone.yaml
status_is $? 0 'a silence'
"$EVENHAND" history --json --player still > h.json
is "wide, one turn again" "$(turns h.json resets "$(block recap wide)")" \
    "0 0 1 0"
is "wide, whole" "$(turns h.json bows_done "$(block recap wide)")" "2 2 2 2"
so "the cap holds" [ "$(ask h.json "select json_extract(j,
    '\$.sittings[0].length_ms') from f")" -le 300000 ]

# --- nobody there -----------------------------------------------------------

printf '%s\n' '- forward' '- forward' '0:26 c' '1:00 space' '9:00 c' > keys
session 2026-03-02T17:00 keys --player away tone.yaml
status_is $? 0 'nobody at the keys'
"$EVENHAND" history --json --player away > h.json
is "three minutes without a key" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].ended') from f")" 'no key'

# --- leaving early ----------------------------------------------------------

printf '%s\n' '1:20 q' '- back' '- forward' '- forward' > keys
session 2026-03-02T17:00 keys --marking turn --player early tone.yaml
status_is $? 0 'leaving early'
"$EVENHAND" history --json --player early > h.json
is "ended early" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].ended') from f")" early
is "its turns" "$(turns h.json bows_done "$(block recap wide)")" "2 2 2 2"

# --- the script is over while a key is awaited -------------------------------

printf '%s\n' '- forward' > keys
session 2026-03-02T17:00 keys --player over tone.yaml
status_is $? 0 'a script that ends too early'
is "nothing was kept" "$("$EVENHAND" history --json --player over |
    grep -c '"turn"')" 0
# --- the days after pain: everything at the lowest rung, however clean ----------------
routine_at tone
printf '%s\n' '0:40 h' '- forward' > hurts
session 2026-03-02T17:00 hurts --player eased tone.yaml
status_is $? 0 'a stop for pain'
pedals clean
session 2026-03-03T17:00 clean --player eased --marking turn tone.yaml
status_is $? 0 'the day after'
run 0 history --json --player eased
is 'its rungs' "$(turns "$work/out" pulses \
    "json_extract(value, '\$.day') = '2026-03-03' and
    json_extract(value, '\$.block') = 'work'" | tr ' ' '\n' | sort -u)" 4
so 'more than one round of them' [ "$(turns "$work/out" round \
    "json_extract(value, '\$.day') = '2026-03-03'" | tr ' ' '\n' |
    sort -n | tail -1)" -ge 1 ]
run 0 today --at 2026-03-04T17:00 --player eased --why tone.yaml
is 'no step up is told' "$(grep -c 'one step up' "$work/out")" 0

finish
