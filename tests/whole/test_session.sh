#!/bin/sh
# test_session.sh - whole sessions of the real binary, with pedals and without:
# every turn at its exact time, every finger its bows, all of it in the journal
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

routine_at tone
all=1

# --- with pedals: a tone apart, defaults ----------------------------------
# Blocks at 0:00, 0:28, 1:24 and 2:20; the first round of the work at 2:28,
# 2:40, 2:52 and 3:04; the end at 4:52; 40 bows, 10 for each finger.

pedals keys
printf '%s\n' '- forward' '- words How loose is loose?' >> keys
session 2026-03-02T17:00 keys --marking turn tone.yaml
status_is $? 0 'a session with pedals'
is "nothing on standard error" "$(cat "$work/err")" ""
so "its lines are narrow" [ "$(grep -c '.\{80\}' "$work/out")" = 0 ]
history_json h.json

is "air" "$(turns h.json start_ms "$(block air air)")" 8000
is "wide" "$(turns h.json start_ms "$(block recap wide)")" \
    "36000 48000 60000 72000"
is "thirds" "$(turns h.json start_ms "$(block recap thirds)")" \
    "92000 104000 116000 128000"
is "tone" "$(turns h.json start_ms "$(block work tone)")" \
    "148000 160000 172000 184000 196000 208000 220000 232000 244000 256000 \
268000 280000"
is "first go" "$(turns h.json start_ms "json_extract(value, '\$.first_go')
    and json_extract(value, '\$.block') = 'work'")" \
    "148000 160000 172000 184000"
is "rungs of the work" "$(turns h.json pulses "$(block work tone)")" \
    "6 6 6 6 6 6 6 6 8 8 8 8"
is "marks" "$(turns h.json mark "$all")" "clean clean clean clean clean clean \
clean clean clean clean clean clean clean clean clean clean clean clean clean \
clean clean"
is "time of the marks" "$(turns h.json mark_ms "$(block recap wide)")" \
    "46000 58000 70000 82000"
is "bows" "$(ask h.json "select sum(json_extract(value, '\$.bows_done'))
    from f, json_each(j, '\$.turns')")" 40
for finger in 1 2 3 4; do
	is "bows of finger $finger" "$(ask h.json "select
	    sum(json_extract(value, '\$.bows_done')) from f,
	    json_each(j, '\$.turns') where json_extract(value, '\$.unit') =
	    '$finger'")" 10
done
is "how it ended" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].ended') || ' ' || json_extract(j,
    '\$.sittings[0].length_ms') from f")" "whole 292000"
is "when it began" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].began') from f" | cut -c 1-16)" "2026-03-02T17:00"
is "the practice day" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].day') from f")" "2026-03-02"
is "the question" "$(ask h.json "select json_extract(j, '\$.notes[0].kind')
    || ' ' || json_extract(j, '\$.notes[0].words') from f")" \
    "question How loose is loose?"

# The journal is a sound database that only its owner may read.
is "integrity" "$(sqlite3 "$journals"/*.db 'pragma integrity_check')" ok
is "rights of the journal" \
    "$(stat -c %a "$journals"/*.db)" 600
is "rights of its folder" "$(stat -c %a "$journals")" 700

# --- without pedals: the round keeps its 48 seconds -----------------------
# Its turns begin at 0, 11, 22 and 33 s, and the marks come in the 7 s at its
# end: forward all clean, back all shaky, a digit that finger shaky.

{
	echo '0:26 clean'
	echo '1:20 forward'
	echo '2:16 back'
	echo '3:12 4'
	echo '4:00 forward'
	echo '4:48 forward'
} > rounds
session 2026-03-03T17:00 rounds --player round tone.yaml
status_is $? 0 'a session without pedals'
"$EVENHAND" history --json --player round > r.json
is "wide" "$(turns r.json start_ms "$(block recap wide)")" \
    "36000 47000 58000 69000"
is "tone" "$(turns r.json start_ms "$(block work tone)")" \
    "148000 159000 170000 181000 196000 207000 218000 229000 244000 255000 \
266000 277000"
is "marks of wide" "$(turns r.json mark "$(block recap wide)")" \
    "clean clean clean clean"
is "marks of thirds" "$(turns r.json mark "$(block recap thirds)")" \
    "shaky shaky shaky shaky"
is "marks of tone" "$(turns r.json mark "$(block work tone)")" \
    "clean clean clean shaky clean clean clean clean clean clean clean clean"
is "how it ended" "$(ask r.json "select json_extract(j,
    '\$.sittings[0].ended') || ' ' || json_extract(j,
    '\$.sittings[0].length_ms') from f")" "whole 292000"

# --- the lengths of the other stages ---------------------------------------

for want in 'wide 276000' 'thirds 284000' 'semitone 292000' \
    'letting-go 292000'; do
	stage=${want% *}
	routine_at "$stage"
	awk 'BEGIN { for (t = 10; t < 300; t += 150)
	    printf "%d:%02d ?\n", t / 60, t % 60 }' > keys
	session 2026-03-04T17:00 keys --player "$stage" "$stage.yaml"
	"$EVENHAND" history --json --player "$stage" > s.json
	is "$stage" "$(ask s.json "select json_extract(j,
	    '\$.sittings[0].length_ms') from f")" "${want#* }"
done

# --- the same keys another time: the same history --------------------------

pedals keys
printf '%s\n' '- forward' '- words How loose is loose?' >> keys
session 2026-03-02T17:00 keys --marking turn --player again tone.yaml
has "$work/out" "A new journal begins, for again."
"$EVENHAND" history --json --player again > a.json
grep -v made_on h.json > h1
grep -v made_on a.json > a1
so "the same keys give the same history" cmp h1 a1
session 2026-03-03T17:00 keys --marking turn --player again tone.yaml
is "no new journal the day after" "$(grep -c "A new journal" "$work/out")" 0

finish
