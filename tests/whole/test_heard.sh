#!/bin/sh
# test_heard.sh - whole sessions through PortAudio and ALSA into a file, as fast
# as it takes them: every sound at its frame, none missing, none extra
#
# What should sound is worked out by tests/tools/ticks.py from the routine's
# numbers alone.
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
alsa file
routine_at tone

# --- a session with pedals at the stage "tone" ---------------------------------
# Blocks at 0:00, 0:28, 1:24 and 2:20; the work begins at 6 pulses and its third
# round, after two clean ones, has 8.  The first sound is the count-in at 0:04.

pedals keys
printf '%s\n' '- forward' >> keys
session 2026-03-02T17:00 keys --marking turn --card default tone.yaml
status_is $? 0 "a session into a file"
is "nothing on standard error" "$(cat "$work/err")" ""
tapped --from-first > heard.txt
due --from-first 0:0:air 28:4:1234 84:6:1234 140:6:1234,6:1234,8:1234 \
    > due.txt
is "sounds" "$(wc -l < heard.txt | tr -d ' ')" 311
so "every sound at its frame" cmp heard.txt due.txt
history_json h.json
is "no dropouts" "$(turns h.json dropouts 1 | tr -d ' 0')" ""
is "the session is whole" "$(ask h.json "select json_extract(j,
    '\$.sittings[0].ended') || ' ' || json_extract(j,
    '\$.sittings[0].length_ms') from f")" "whole 292000"

# The same without sound is the same history.
session 2026-03-02T17:00 keys --marking turn --player mute --silent tone.yaml
status_is $? 0 "the same in silence"
"$EVENHAND" history --json --player mute > m.json
for file in h m; do
	grep -v -e made_on -e '"device"' "$file.json" > "$file.txt"
done
so "the same history" cmp h.txt m.txt

# --- peaks ---------------------------------------------------------------------
# Far from clipping, and not next to nothing.

tapped --measure > loud.txt
so "no sample near full scale" [ "$(awk '$4 > 0.7' loud.txt | wc -l)" = 0 ]
so "knocks that can be heard" \
    [ "$(awk '$2 == "down" && $4 < 0.05' loud.txt | wc -l)" = 0 ]

# --- it hurts ------------------------------------------------------------------
# h at 3:20, between two bows of the work: all up to there, then nothing.

head -n 13 keys > hurt.keys
printf '%s\n' '3:20 h' '- back' '- back' '- back' '- back' '- back' '- back' \
    '- back' '- forward' '- forward' '- words What now?' >> hurt.keys
session 2026-03-02T17:00 hurt.keys --marking turn --card default \
    --player hurt tone.yaml
status_is $? 0 "a session with a stop"
tapped --from-first > heard.txt
# The first sound is at 0:04, so 3:20 is at 196 s of the file.
awk '$1 < 196 * 48000' due.txt > until.txt
so "every sound until then" cmp heard.txt until.txt

finish
