#!/bin/sh
# test_history.sh - `evenhand history`, the real binary on a real journal: in
# lines, as JSON, without a journal, beside a practice, with a broken one
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

out=$work/out
err=$work/err

# --- nothing practised yet: said, and nothing made ------------------------------
before=$(disk)
run 0 history
is "nothing yet" "$(cat "$out")" "Nothing has been practised yet."
run 0 history --json
is "an empty history" "$(ask "$out" "select json_array_length(j, '\$.turns') +
    json_array_length(j, '\$.sittings') + json_array_length(j, '\$.notes') +
    json_array_length(j, '\$.routines') from f")" 0
so "the disk is as before" [ "$(disk)" = "$before" ]

# --- one day in lines -------------------------------------------------------------
# Stage 2 of the cello programme: air 0:28, then five rounds of 48 s after
# 8 s: 276 s; two bows a turn, so ten bows for each finger.
routine_at wide
printf '%s\n' '0:25 c' '0:45 c' '0:57 c' '1:09 s' '2:33 c' '3:57 c' > keys
session 2026-03-02T17:00 keys --marking turn wide.yaml
run 0 history
cat > wanted <<'END'
Week from 2026-03-02: 1 day, 1 session, 4:36.
Stages of the week: air on 1 day, wide on 1 day.

2026-03-02: 4:36 in 1 session.
Stages: air, wide.
Bows: finger 1: 10, finger 2: 10, finger 3: 10, finger 4: 10.
Metres along the string: finger 1: 12.3, finger 2: 11.6, finger 3: 11, finger
4: 10.4.
First go of air: clean.
First go of wide, 4 pulses: finger 1 clean, finger 2 clean, finger 3 shaky,
finger 4 no mark.

END
so "the day in lines" cmp "$out" wanted
is "and no more" "$(wc -c < "$err" | tr -d ' ')" 0

# --- the same as JSON; looking changes nothing ---------------------------------------
before=$(disk)
history_json "$work/h.json"
so "the disk is as before" [ "$(disk)" = "$before" ]
is "turns" "$(ask "$work/h.json" "select json_array_length(j, '\$.turns') from f")" 21
is "marks" "$(turns "$work/h.json" mark "json_extract(value, '\$.round') = 0")" \
    "clean clean clean shaky none"
is "who and where stand in one line" "$(grep -c '"origin"\|"device"' "$work/h.json")" 1

# --- as tables ----------------------------------------------------------------------
# Five turns of wide for each finger, eight pulses a turn; 12.336 m is 80 times
# the 154.2 mm from first to fourth position there and back (a whole-size D
# string of 690 mm: 690 x (2^(-2/12) - 2^(-7/12)) = 154.2).
run 0 history --csv
printf '%s\r\n' \
    'day,stage,block,unit,turns,bows,pulses,metres,clean,shaky,first_go,first_go_pulses,resets,bows_listened,bows_all_tops,instrument' \
    '2026-03-02,air,air,,1,0,0,0,1,0,clean,,0,,,cello' \
    '2026-03-02,wide,work,1,5,10,40,12.336,2,0,clean,4,0,,,cello' \
    '2026-03-02,wide,work,2,5,10,40,11.644,2,0,clean,4,0,,,cello' \
    '2026-03-02,wide,work,3,5,10,40,10.99,0,1,shaky,4,0,,,cello' \
    '2026-03-02,wide,work,4,5,10,40,10.373,0,0,none,4,0,,,cello' > wanted
so "the table" cmp "$out" wanted
run 0 history --sessions
printf '%s\r\n' 'session,day,began,work_stage,length_s,cap_s,ended,instrument' \
    '1,2026-03-02,2026-03-02T17:00:00+00:00,wide,276,300,whole,cello' > wanted
so "the table of sessions" cmp "$out" wanted

# --- from one day to another --------------------------------------------------------
for day in 03 04 08 09; do
	session "2026-03-${day}T17:00" keys --marking turn --player days wide.yaml
done
run 0 history --player days --from 2026-03-04 --to 2026-03-08
is "its days" "$(grep -o '^2026-03-[0-9]*:' "$out" | tr '\n' ' ')" \
    "2026-03-04: 2026-03-08: "
has "$out" "Week from 2026-03-02: 2 days, 2 sessions, 9:12."
has "$out" "All together, 2026-03-04 to 2026-03-08: 2 days, 2 sessions, 9 minutes."
has "$out" "Bows: finger 1: 20, finger 2: 20, finger 3: 20, finger 4: 20."
run 0 history --player days --from 2026-03-09
is "a day alone" "$(grep -c '^2026\|^All' "$out")" 1
run 0 history --player days --csv --to 2026-03-03
is "rows of the table" "$(grep -c '^2026-03-03' "$out")" 5
is "and no others" "$(wc -l < "$out" | tr -d ' ')" 6
run 0 history --player days --sessions --from 2026-03-08
is "sessions of the table" "$(cut -d, -f1,2 "$out" | tr '\n' ' ')" \
    "session,day 3,2026-03-08 4,2026-03-09 "
run 0 history --player days --json --from 2026-03-04 --to 2026-03-08
is "what the JSON holds" "$(ask "$out" "select
    json_array_length(j, '\$.routines') || ' ' ||
    json_array_length(j, '\$.sittings') || ' ' ||
    json_array_length(j, '\$.turns') || ' ' ||
    json_array_length(j, '\$.made_on.sittings') from f")" "1 2 42 2"
run 0 history --player days --from 2027-01-01
is "none then" "$(cat "$out")" "Nothing was practised in these days."
run 0 history --player days --csv --from 2027-01-01
is "a table without rows" "$(wc -l < "$out" | tr -d ' ')" 1

unchanged 64 '--from wants a day, such as 2026-03-02, not "March"' \
    history --from March
unchanged 64 '--to wants a day, such as 2026-03-02, not "2026-02-30"' \
    history --to 2026-02-30
unchanged 64 '2026-03-09 is after 2026-03-02' \
    history --from 2026-03-09 --to 2026-03-02
unchanged 64 'Take one of them' history --csv --json
unchanged 64 'Take one of them' history --csv --sessions
"$EVENHAND" history --lines > /dev/full 2> "$err"
status_is $? 74 'history > /dev/full'
has "$err" 'cannot be printed'
"$EVENHAND" history --player days --csv > /dev/full 2> "$err"
status_is $? 74 'history --csv > /dev/full'

# --- another player has another history ------------------------------------------------
run 0 history --player Wren
is "nothing yet" "$(cat "$out")" "Nothing has been practised yet."

# --- another program writes meanwhile ---------------------------------------------------
journal=$journals/journal.db
mkfifo hold
sqlite3 "$journal" < hold &
holder=$!
exec 8> hold
printf '%s\n' '.timeout 60000' 'begin immediate;' '.shell echo held > held' >&8
comes held held
session 2026-03-03T17:00 keys --marking turn wide.yaml 8>&- &
practising=$!
comes "$err" "another program is busy with the practice history"
exec 8>&-
wait "$holder" "$practising"
is "said once" "$(wc -l < "$err" | tr -d ' ')" 1
run 0 history
has "$out" "2026-03-03: 4:36 in"
session 2026-03-04T17:00 keys --marking turn wide.yaml
is "nothing is left to say" "$(wc -c < "$err" | tr -d ' ')" 0
is "all three days are in the journal" "$(sqlite3 "$journal" \
    'select count(*), count(distinct day) from turns')" '63|3'
so "the spool is gone" [ ! -e "$journal.spool" ]

# --- where it hurt stays readable -------------------------------------------------------
for presses in 0 5; do
	{
		printf '%s\n' '- forward' '- forward' '1:00 h'
		yes -- '- back' | head -n "$presses"
		echo '- forward'
	} > hurt
	session 2026-03-05T17:00 hurt --player "hurt$presses"
done
run 0 history --player hurt0
has "$work/out" "Stopped for pain: the skin of finger 1."
run 0 history --player hurt5
place=$(sqlite3 "$journals/player-hurt5.db" "select words from notes")
so "the place is known" [ -n "$place" ]
has "$work/out" "Stopped for pain: $place."

# --- the same stage on two instruments, on one day ----------------------------------------
routine_on()
{
	cat > "$1.yaml" <<-END
	routine: Two of them
	player: {instrument: $1}
	session: {minutes: 1}
	stages:
	  - {id: tone, title: Tone, place: string D, travel: tone, start_pulses: $2}
	END
}
routine_on cello 6
routine_on viola 4
printf '%s\n' '- forward' '- forward' '0:54 c' '- forward' > one-round
session 2026-03-06T10:00 one-round --marking round --player two cello.yaml
sed 's/0:54 c/0:54 2/' one-round > second
session 2026-03-06T17:00 second --marking round --player two viola.yaml
run 0 history --player two
tr '\n' ' ' < "$out" > one-line
has one-line "First go of tone (cello), 6 pulses: finger 1 clean, finger 2 clean, finger 3 clean, finger 4 clean."
has one-line "First go of tone (viola), 4 pulses: finger 1 clean, finger 2 shaky, finger 3 clean, finger 4 clean."
has "$out" "Stages: tone."

# --- a journal that is damaged ----------------------------------------------------------
printf 'not a history at all, but long enough to look like a page' > "$journal"
before=$(cksum "$journal")
run 65 history
one_sentence "is damaged and cannot be read"
run 65 history --json
one_sentence "is damaged and cannot be read"
session 2026-03-05T17:00 keys --marking turn wide.yaml
status_is $? 0 "practice goes on"
has "$err" "It is left as it is"
so "it is left as it is" [ "$(cksum "$journal")" = "$before" ]

finish
