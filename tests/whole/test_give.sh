#!/bin/sh
# test_give.sh - `evenhand give`: the practice as a file that fits its schema,
# tells nothing of the machine, and is there whole or not at all
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

out=$work/out
err=$work/err
fits()
{
	so "$1 fits the schema" "$python" "$root/tests/tools/schema.py" \
	    "$root/routines/evenhand-record.schema.json" good "$1"
}

# --- nothing yet: said, and nothing made -------------------------------------
unchanged 66 'nothing has been practised yet' give -o w.yaml
unchanged 64 'where should it go?' give
unchanged 64 '--since wants a day' give -o w.yaml --since monday
unchanged 64 'too long for initials' give -o w.yaml \
    --initials "Wilhelmina Josephine of Saltbridge"
run 0 give --help
has "$out" "Open it and read it before you"

# --- a week ------------------------------------------------------------------
routine_at wide
printf '%s\n' '0:25 c' '0:45 c' '0:57 c' '1:09 s' '2:33 c' '3:57 c' > keys
for day in 02 03 04 06 07; do
	session "2026-03-${day}T17:00" keys --marking turn wide.yaml
done
run 0 give -o week.yaml --at 2026-03-08T10:00
has "$out" "week.yaml holds 5 sessions, 2026-03-02 to 2026-03-07, and 0 notes."
has "$out" "It holds no initials: --initials adds them. Open it and read it"
fits week.yaml
is "rights" "$(stat -c %a week.yaml)" 600
is "sessions" "$(grep -c '^- began:' week.yaml)" 5
is "turns" "$(grep -c '^  - \[' week.yaml)" 105
is "the routine, once" "$(grep -c '^- fingerprint:' week.yaml)" 1
has week.yaml "given: 2026-03-08T10:00:00+00:00"
# A turn takes a line of some 80 bytes, the routine comes once.
so "a week is small" [ "$(wc -c < week.yaml)" -lt 24000 ]

# --- nothing of the machine ---------------------------------------------------
for word in "$(uname -n)" "$work" "$HOME" fast device rate; do
	is "the record says nothing of $word" \
	    "$(sed '/^  text:/,/^sittings/d' week.yaml | grep -cF -- "$word")" 0
done

# --- a part ---------------------------------------------------------------------
run 0 give -o part.yaml --since 2026-03-06
has "$out" "2 sessions, 2026-03-06 to 2026-03-07"
has part.yaml "since: 2026-03-06"
fits part.yaml
unchanged 66 'nothing was practised since 2026-03-20' \
    give -o later.yaml --since 2026-03-20

# --- never over another file ------------------------------------------------------
unchanged 73 'this file is there already' give -o week.yaml
unchanged 73 'its folder is not there' give -o nowhere/week.yaml
run 0 give -o week.yaml --force --at 2026-03-08T10:00 --initials "W. P."
has week.yaml 'student: {initials: "W. P.", id: "'
cp week.yaml before.yaml
(
	trap '' XFSZ
	ulimit -f 2
	"$EVENHAND" give -o week.yaml --force > "$out" 2> "$err"
)
status_is $? 74 "a disk that takes no more"
so "the old one is whole" cmp before.yaml week.yaml
is "and nothing beside it" "$(find . -name 'week.yaml*' | wc -l)" 1

# --- whose it is ----------------------------------------------------------------------
sed 's/^homework_for: .*/homework_for: Wren Penhallow  # on Tuesdays/' \
    "$root/routines/cello-homework.yaml" > wren.yaml
cp "$root/routines/cello.yaml" .
session 2026-03-09T17:00 keys --marking turn wren.yaml
run 0 give -o named.yaml --since 2026-03-09
has named.yaml 'student: {initials: "W. P.", id: "'
fits named.yaml
session 2026-03-09T17:00 keys --marking turn --player "Ada Kite" wide.yaml
run 0 give -o ada.yaml --player "Ada Kite"
has ada.yaml 'student: {initials: "A. K.", id: "'
session 2026-03-09T17:00 keys --marking turn --player "wren van dyke" wide.yaml
run 0 give -o dyke.yaml --player "wren van dyke"
has dyke.yaml 'student: {initials: "W. V. D.", id: "'
so "two students have two ids" [ "$(grep '^student' ada.yaml | cut -d'"' -f4)" \
    != "$(grep '^student' named.yaml | cut -d'"' -f4)" ]

# --- what hurts and what is asked is in it ----------------------------------------------
printf '%s\n' '0:45 h' > hurt
session 2026-03-10T17:00 hurt --marking turn wide.yaml
run 0 give -o hurt.yaml --since 2026-03-10
fits hurt.yaml
has hurt.yaml "kind: pain"
has hurt.yaml "end: {how: pain, at: "

# --- a journal that somebody has open is read all the same --------------------------------
"$EVENHAND" give -o full.yaml > /dev/full 2> "$err"
status_is $? 74 'give > /dev/full'
so "the record is written all the same" [ -s full.yaml ]
printf 'no journal' > "$journals/player-odd.db"
unchanged 65 'is damaged and cannot be read' give -o odd.yaml --player odd

finish
