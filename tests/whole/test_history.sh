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

# --- another player has another history ------------------------------------------------
run 0 history --player Wren
is "nothing yet" "$(cat "$out")" "Nothing has been practised yet."

# --- another program writes meanwhile ---------------------------------------------------
journal=$(ls "$journals"/*.db)
(
	echo 'begin immediate;'
	sleep 3
) | sqlite3 "$journal" &
holder=$!
sleep 0.5
session 2026-03-03T17:00 keys --marking turn wide.yaml
has "$err" "another program is busy with the practice history"
is "said once" "$(wc -l < "$err" | tr -d ' ')" 1
run 0 history
has "$out" "2026-03-03: 4:36 in"
wait "$holder"
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
