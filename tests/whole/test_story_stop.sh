#!/bin/sh
# test_story_stop.sh - acceptance story 10, in lines: it hurts at 3:20
#
# Stage tone with pedals: the fourth turn of the work is bowed from 3:04 to 3:12
# and the fifth from 3:16, so at 3:20 four whole turns of each stage on the
# string are kept.  That the sound is gone within 50 ms is proved in samples, in
# tests/world/test_story.c.
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

routine_at tone
pedals all
head -n 13 all > hurts
printf '%s\n' '3:20 h' '- back' '- back' '- back' '- back' '- back' '- back' '- back' \
    '- forward' '- forward' '- words What now?' >> hurts

# kept JSON: whole turns of each stage, in the order of the programme
kept()
{
	ask "$1" "select group_concat(s || ' ' || n, ', ') from (select
	    json_extract(value, '\$.stage') as s, count(*) as n from f,
	    json_each(j, '\$.turns') where json_extract(value, '\$.bows_done') = 2
	    group by s order by min(json_extract(value, '\$.start_ms')))"
}

# --- silence, and what is kept ----------------------------------------------

session 2026-03-02T17:00 hurts --marking turn tone.yaml
status_is $? 0 'a session that hurts at 3:20'
history_json h.json
is "whole turns kept" "$(kept h.json)" "wide 4, thirds 4, tone 4"
is "the turn under way has no row" "$(ask h.json "select count(*) from f,
    json_each(j, '\$.turns') where json_extract(value, '\$.start_ms') >=
    196000")" 0
is "how it ended, and when" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].ended') || ' ' || json_extract(j,
    '\$.sittings[0].length_ms') from f")" "pain 200000"
is "where it hurt" "$(ask h.json "select json_extract(value, '\$.words')
    from f, json_each(j, '\$.notes') where json_extract(value, '\$.kind') =
    'pain'")" wrist
for words in 'Everything is silent. Put the instrument down.' 'Stop now.' \
    'Playing through pain is not practice.' \
    'Stopped because it hurts, after 3:20.' \
    'No start before four tomorrow morning' 'For a parent'; do
	has "$work/out" "$words"
done
so "nothing is praised or blamed" \
    [ "$(grep -ciE 'one thing to keep|well done|should have|missed|sorry' \
	"$work/out")" = 0 ]

# --- no start before four in the morning ------------------------------------

while read -r at morning; do
	session "$at" all --marking turn tone.yaml
	status_is $? 0 "refused at $at"
	has "$work/out" 'Nothing is played today.'
	has "$work/out" "Nothing more is played before four $morning"
done <<-'END'
	2026-03-02T17:05 tomorrow morning
	2026-03-02T23:59 tomorrow morning
	2026-03-03T00:00 this morning
	2026-03-03T03:59 this morning
END
history_json r.json
so "nothing was kept of that" cmp h.json r.json
session 2026-03-03T04:00 all --marking turn tone.yaml
has "$work/out" 'Pain was noted on 2026-03-02.'
history_json r.json
is "a session at four" "$(ask r.json "select json_extract(j,
    '\$.sittings[1].length_ms') > 0 from f")" 1

# --- the same keys by another way: the same journal ---------------------------

# Lines are what comes out by itself where there is no terminal.
"$EVENHAND" --clock fast --at 2026-03-02T17:00 --script hurts --marking turn \
    --player itself tone.yaml > "$work/out" 2> "$work/err" < /dev/null
"$EVENHAND" history --json --player itself > i.json
grep -v made_on h.json > h1
grep -v made_on i.json > i1
so "lines by themselves: the same" cmp h1 i1

# Mirrored it is another text of the routine, and nothing else.
sed 's/bow_hand: right/bow_hand: left/' tone.yaml > left.yaml
session 2026-03-02T17:00 hurts --marking turn --player left left.yaml
"$EVENHAND" history --json --player left > l.json
grep -v 'made_on\|"fingerprint"' h.json |
    sed 's/"routine": "[^"]*"/"routine": ""/' > h2
grep -v 'made_on\|"fingerprint"' l.json |
    sed 's/"routine": "[^"]*"/"routine": ""/' > l2
so "mirrored: the same" cmp h2 l2
so "there was something to compare" [ "$(grep -c '"slide_um"' l2)" = 13 ]
finish
