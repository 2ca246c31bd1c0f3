#!/bin/sh
# test_clock_sense.sh - days, nights, summer time, zones, leap days, a clock
# set back and years of gap, by the real binary
#
# Zones are written in the form of POSIX (XBD 8.3, TZ), so that no time zone
# files are needed.
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

tiny tiny.yaml
routine_at tone
echo '0:14 c' > keys
cet='CET-1CEST,M3.5.0,M10.5.0/3'

# at PLAYER ZONE TIME...: a session at each of these local times
at()
{
	player=$1
	zone=$2
	shift 2
	for time; do
		TZ=$zone "$EVENHAND" --clock fast --at "$time" --script keys \
		    --player "$player" tiny.yaml > "$work/out" 2> "$work/err" \
		    < /dev/null
		status_is $? 0 "a session at $time in ${zone%%,*}"
	done
}

# days PLAYER: practice days of the sessions, in the order of the journal
days()
{
	"$EVENHAND" history --json --player "$1" > h.json < /dev/null
	ask h.json "select group_concat(json_extract(value, '\$.day'), ' ')
	    from f, json_each(j, '\$.sittings')"
}

# moments PLAYER: when they began, and the distance from UTC then
moments()
{
	ask h.json "select group_concat(json_extract(value, '\$.began') || ' ' ||
	    json_extract(value, '\$.offset_s'), ' ') from f,
	    json_each(j, '\$.sittings')"
}

# told PLAYER: the days that the lines tell, in their order
told()
{
	"$EVENHAND" history --player "$1" < /dev/null |
	    sed -n 's/^\([0-9-]*\): .* in \([0-9]*\) session.*/\1 \2/p' |
	    tr '\n' ' '
}

# --- the day turns at four in the morning ---------------------------------------------
at night UTC0 2026-03-02T23:50 2026-03-03T00:20 2026-03-03T03:59 \
    2026-03-03T04:00
is "until four it is the day before" "$(days night)" \
    "2026-03-02 2026-03-02 2026-03-02 2026-03-03"
is "as the lines tell it" "$(told night)" "2026-03-02 3 2026-03-03 1 "

# --- summer time: 2026-03-29, 02:00 becomes 03:00; 2026-10-25, 03:00 becomes 02:00 ----
at spring "$cet" 2026-03-28T23:30 2026-03-29T03:30 2026-03-29T04:00
is "spring" "$(days spring)" "2026-03-28 2026-03-28 2026-03-29"
is "spring, in truth" "$(moments)" \
    "2026-03-28T22:30:00Z 3600 2026-03-29T01:30:00Z 7200 2026-03-29T02:00:00Z 7200"
at autumn "$cet" 2026-10-25T01:30 2026-10-25T03:59 2026-10-25T04:00
is "autumn" "$(days autumn)" "2026-10-24 2026-10-24 2026-10-25"
is "autumn, in truth" "$(moments)" \
    "2026-10-24T23:30:00Z 7200 2026-10-25T02:59:00Z 3600 2026-10-25T03:00:00Z 3600"

# Three hours are three hours: 23:30 to 03:30 is that in spring, though the
# clock on the wall shows four.
for zone in "$cet" UTC0; do
	name=apart${zone%%-*}
	at "$name" "$zone" 2026-03-28T23:30
	TZ=$zone "$EVENHAND" today --at 2026-03-29T03:20 --player "$name" \
	    tiny.yaml > "$work/$name" < /dev/null
	status_is $? 0 "today in ${zone%%,*}"
done
is "too early in spring" "$(grep -c 'due at 03:3' "$work/apartCET")" 1
is "not where no clock was changed" "$(grep -c 'due at' "$work/apartUTC0")" 0

# --- a clock set back, and one that was far ahead --------------------------------------
at back UTC0 2026-06-10T17:00 2026-06-08T17:00 2099-01-01T17:00 \
    2026-06-11T17:00
is "in the order they were played" "$(days back)" \
    "2026-06-10 2026-06-08 2099-01-01 2026-06-11"
is "told by their days" "$(told back)" \
    "2026-06-08 1 2026-06-10 1 2026-06-11 1 2099-01-01 1 "
for time in 2026-06-08T20:00 2026-06-12T17:00 2098-12-31T17:00; do
	run 0 today --at "$time" --player back tiny.yaml
	is "nothing to complain of" "$(wc -c < "$work/err" | tr -d ' ')" 0
	so "no length below zero" [ "$(grep -c -e '[ (]-[0-9]' "$work/out")" = 0 ]
done

# --- across the date line ---------------------------------------------------------------
# 08:00 on 3 March at thirteen hours east is before 20:00 on 2 March at eight
# hours west.
at line UTC-13 2026-03-03T08:00
at line UTC+8 2026-03-02T20:00 2026-03-03T20:00
is "each on the day it was there" "$(days line)" \
    "2026-03-03 2026-03-02 2026-03-03"
is "in truth one after the other" "$(moments)" \
    "2026-03-02T19:00:00Z 46800 2026-03-03T04:00:00Z -28800 2026-03-04T04:00:00Z -28800"
is "told by their days" "$(told line)" "2026-03-02 1 2026-03-03 2 "

# --- leap days: 25 February to 1 March is a day longer then ------------------------------
# Up to three clear days away change nothing, with four the rung is lower.
pedals pedalled
for year in 2024 2023 2000 2100; do
	for day in 23 24 25; do
		session "$year-02-${day}T17:00" pedalled --marking turn \
		    --player "leap$year" tone.yaml
	done
	run 0 today --why --at "$year-03-01T17:00" --player "leap$year" tone.yaml
	cp "$work/out" "leap$year"
done
has leap2024 '4 days without practice'
has leap2000 '4 days without practice'
is "no leap year" "$(grep -c '[0-9] days without practice' leap2023)" 0
is "no leap year, though a fourth one" "$(grep -c '[0-9] days without practice' leap2100)" 0

# --- years of gap, and the ends of the calendar ------------------------------------------
run 0 today --at 2041-03-02T17:00 --player night tiny.yaml
is "fifteen years later" "$(wc -c < "$work/err" | tr -d ' ')" 0
at ends UTC0 1970-01-02T00:00 9999-12-31T17:00
is "from end to end" "$(days ends)" "1970-01-01 9999-12-31"
run 0 today --at 9999-12-31T23:59 --player ends tiny.yaml
run 0 history --player ends --from 9999-12-31
has "$work/out" "9999-12-31: 0:14 in 1 session."
unchanged 64 'is no date and time' today --at 1969-12-31T17:00
unchanged 64 'is no date and time' today --at 2026-02-29T17:00
unchanged 64 'is no date and time' today --at 10000-01-01T17:00
finish
