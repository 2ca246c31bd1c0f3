#!/bin/sh
# test_today.sh - what today holds and why, from real files and a real journal
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# today TIME ARGUMENTS...
today()
{
	at=$1
	shift
	run 0 today --at "$at" --marking turn "$@"
}

# --- a tone apart, defaults ----------------------------------------------
# Blocks at 0:00, 0:28, 1:24 and 2:20; the end at 4:52; 40 bows, 10 a finger.

routine_at tone
before=$(disk)
today 2026-03-02T17:00 tone.yaml
for words in '0:00 in the air: ' '0:28 again: First to fourth position.' \
    '1:24 again: First to third position.' \
    '2:20 the work: A tone apart. 3 rounds, beginning at 6 pulses.' \
    'finger 1 at 2:28, 2 at 2:40, 3 at 2:52, 4 at 3:04.' \
    'Round 2 at 3:16: 1, 2, 3, 4.' 'Round 3 at 4:04: 1, 2, 3, 4.' \
    '4:52 the end: 40 bows, 10 for each finger.' 'Nails short?' \
    'Nothing sore today?'; do
	has "$work/out" "$words"
done
so "its lines are narrow" [ "$(grep -c '.\{80\}' "$work/out")" = 0 ]
cp "$work/out" once
today 2026-03-02T17:00 tone.yaml
so "the same again" cmp -s once "$work/out"
rm once
so "nothing was kept" [ "$(disk)" = "$before" ]

run 0 today --at 2026-03-02T17:00 tone.yaml
has "$work/out" 'finger 1 at 2:28, 2 at 2:39, 3 at 2:50, 4 at 3:01.'

# --- the other stages ------------------------------------------------------

while read -r stage length; do
	routine_at "$stage"
	today 2026-03-02T17:00 "$stage.yaml"
	has "$work/out" "It ends at $length."
done <<-'END'
	air 2:48
	wide 4:36
	thirds 4:44
	tone 4:52
	semitone 4:52
	letting-go 4:52
END
has "$work/out" 'Keep it as loose as the widest stage.'

# --- why ---------------------------------------------------------------------

today 2026-03-02T17:00 --why tone.yaml
for words in 'F1 [C] ' 'F1 [O] ' 'F2 [C] ' 'F2 [O] ' 'F3 [O] ' \
    '[O] 5:00 less 2:20' '[C] is common practice'; do
	has "$work/out" "$words"
done

# --- cut off twice: all fingers even again -------------------------------
# After six turns of work, at 3:40, the input ends.

pedals all
head -n 15 all > six
echo '3:39 q' >> six
printf '%s\n' '- back' '- forward' '- forward' >> six
session 2026-03-02T17:00 six --marking turn tone.yaml
status_is $? 0 'a session of six turns of work'
today 2026-03-03T17:00 tone.yaml
has "$work/out" 'day 2.'
has "$work/out" 'Nothing sore from last time?'
has "$work/out" 'first go: finger 3 at 2:28, 4 at 2:40, 1 at 2:52, 2 at 3:04.'
has "$work/out" 'Those who missed a turn begin: 3, 4.'
session 2026-03-03T17:00 six --marking turn tone.yaml
status_is $? 0 'and another'
history_json h.json
is "turns of work" "$(ask h.json "select group_concat(n, ' ') from (select
    count(*) as n from f, json_each(j, '\$.turns') where
    $(block work tone) group by json_extract(value, '\$.unit') order by
    json_extract(value, '\$.unit'))")" "3 3 3 3"
today 2026-03-04T17:00 tone.yaml
has "$work/out" 'first go: finger 1 at 2:28, 2 at 2:40, 3 at 2:52, 4 at 3:04.'

# Today's second session: the first go has been.
today 2026-03-03T21:00 tone.yaml
has "$work/out" 'Round 1: finger 1'
today 2026-03-03T18:00 tone.yaml
has "$work/out" 'the next one is due at 20:'

# --- another player's journal is another past ------------------------------

today 2026-03-04T17:00 --player other tone.yaml
has "$work/out" 'day 1.'

# --- pain ----------------------------------------------------------------

printf '%s\n' '0:26 c' '1:00 h' '- 4' > pain
session 2026-03-05T17:00 pain --marking turn tone.yaml
today 2026-03-05T23:00 tone.yaml
has "$work/out" 'Nothing is played today.'
today 2026-03-06T17:00 tone.yaml
has "$work/out" 'It ends at 3:00.'
has "$work/out" 'beginning at 4 pulses'

finish
