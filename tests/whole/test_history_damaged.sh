#!/bin/sh
# test_history_damaged.sh - journals with rows that cannot be: what is shown of
# them, one sentence where it cannot be shown, nothing lost and no crash
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

routine_at tone
pedals keys
for day in 02 03 04; do
	session "2026-03-${day}T17:00" keys --marking turn tone.yaml
done
journal=$journals/journal.db
cp "$journal" good.db
escape=$(printf '\033')

# looked STATUS VERB...: ends so, with one sentence on standard error if it is
# not 0, no more than one else, nothing of a terminal's own, nothing changed
looked()
{
	want=$1
	shift
	before=$(cksum "$journal")
	run "$want" "$@"
	is "sentences of it" "$(wc -l < "$work/err" | tr -d ' ')" \
	    "$([ "$want" -eq 0 ] && echo 0 || echo 1)"
	so "no escapes" [ "$(cat "$work/out" "$work/err" |
	    grep -c "$escape")" = 0 ]
	so "the journal is as before" [ "$(cksum "$journal")" = "$before" ]
}

# damage SQL [LINES-STATUS [JSON-STATUS]]: every way to look at it
damage()
{
	cp good.db "$journal"
	sqlite3 "$journal" "$1"
	echo "--- $1"
	looked "${2-0}" history --csv
	looked "${2-0}" history --sessions
	looked "${3-0}" history --json
	today=${2-0}
	[ "$today" -eq 0 ] || today=66
	looked "$today" today --at 2026-03-05T17:00 tone.yaml
	looked "${2-0}" history --lines
}

# kept LABEL: no row of the journal is missing in the JSON
kept()
{
	history_json h.json
	is "$1: sittings, turns" "$(ask h.json "select
	    json_array_length(j, '\$.sittings') || ' ' ||
	    json_array_length(j, '\$.turns') from f")" "3 63"
}

# --- dates that cannot be -----------------------------------------------------------
damage "update sittings set day = 200000; update turns set day = 200000;
    update days set day = day + 180000"
has "$work/out" "2517-08-01: 14:36 in 3 sessions."
kept "far ahead"
damage "update sittings set day = -5000; update days set day = day - 30000"
has "$work/out" "1956-04-24: 14:36 in 3 sessions."
has "$work/out" "1944-01-12: how long it took was not kept."
kept "before 1970"
damage "update sittings set day = 99999999999;
    update turns set day = 9223372036854775807;
    update days set day = day - 99999999999"
kept "no date at all"
damage "update sittings set began_utc = 9223372036854775807,
    utc_offset = 99999999; update turns set utc = -9223372036854775808"
has "$work/out" "2026-03-02: 4:52 in 1 session."

# --- numbers that cannot be -----------------------------------------------------------
damage "update sittings set length_ms = -5, cap_ms = -1, ended = 77"
has "$work/out" "2026-03-02: 0:00 in 1 session."
damage "update sittings set length_ms = 9223372036854775807"
damage "update sittings set began_utc = 9223372036854775807, ended_utc = NULL"
damage "update sittings set day = 20517, began_utc = -9223372036854775808,
    ended_utc = 9223372036854775807 where key > 1"
has "$work/out" "2026-03-05"
damage "update turns set kind = 55, mark = -4, bows_done = -9, round = 99999,
    pulses = -2, first_go = 7, slide_um = -1; update shares set planned = -1"
damage "update days set tallies = replace(tallies, ',6,', ',-6,')"

# --- names that cannot be, or are no more ---------------------------------------------
damage "update turns set stage = 'gone'; update sittings set work_stage = 'gone';
    update days set tallies = replace(tallies, 'tone', 'gone')"
has "$work/out" "Stages: air, wide (recap), thirds (recap), gone."
damage "update days set tallies = replace(tallies, 'tone', 'to,ne')"
"$EVENHAND" history --csv > "$work/out"
has "$work/out" '2026-03-02,"to,ne",work,1,'
damage "update days set tallies = replace(tallies, 'tone', 'to' || char(27) ||
    '[31mne')"
has "$work/out" 'to?[31mne'
damage "update days set tallies = replace(tallies, 'tone',
    replace(hex(zeroblob(200)), '0', 'x'))"
damage "delete from sittings"
has "$work/out" "2026-03-02: how long it took was not kept."

# --- roll-ups that cannot be read are counted anew ---------------------------------------
cp good.db "$journal"
for form in csv sessions json; do
	"$EVENHAND" history "--$form" > "whole.$form"
done
# counted SQL: what it did to the roll-ups is not seen anywhere
counted()
{
	damage "$1"
	for form in csv sessions json; do
		"$EVENHAND" history "--$form" > "$work/out"
		so "$form as before" cmp -s "whole.$form" "$work/out"
	done
}
counted "update days set tallies = 'nonsense'"
counted "update days set tallies = '[[[' || char(27) || '[2J'"
counted "update days set entries = 2000000000"
counted "update days set entries = -1"
counted "update days set tallies = replace(tallies, ',2,', ',99999999999,')"
damage "update sittings set seen = '['"
"$EVENHAND" history --csv > "$work/out"
so "what was seen, too" cmp -s whole.csv "$work/out"
kept "without what was seen"
session 2026-03-05T17:00 keys --marking turn tone.yaml
is "practised on" "$(sqlite3 "$journal" "select count(*) from sittings")" 4

# --- what cannot be read is said -------------------------------------------------------
damage "drop table days" 65
has "$work/err" "cannot be read"
damage "drop table turns" 65 65
cp good.db whole.db
head -c 20000 whole.db > good.db
damage "" 65 65
finish
