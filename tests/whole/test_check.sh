#!/bin/sh
# test_check.sh - `evenhand check` and `evenhand new`, the real binary on real
# files: sentences, places, exit statuses, and nothing changed on disk
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

out=$work/out
err=$work/err

# line FILE LINE: the file holds this whole line
line()
{
	so "${1##*/} has the line \"$2\"" grep -qxF -- "$2" "$1"
}

# no FILE WORDS: no line of the file holds these words
no()
{
	is "${1##*/} is silent about \"$2\"" "$(grep -cF -- "$2" "$1")" 0
}

# --- every routine that ships is good ---------------------------------------
for name in cello cello-deutsch violin viola bass trills crossings; do
	run 0 new $name.yaml --from $name
	run 0 new $name-homework.yaml --from $name-homework
	so "$name is the file that ships" \
	    cmp -s $name.yaml "$root/routines/$name.yaml"
	run 0 check $name.yaml $name-homework.yaml
	is "nothing on standard error" "$(cat "$err")" ""
	so "its lines are narrow" [ "$(grep -c '.\{80\}' "$out")" = 0 ]
	has "$out" "$name-homework.yaml is good"
done

# --- the dry run of the cello programme ---------------------------------------
# Air 28 s; then blocks of 8 s and rounds of 48 s: 28 + 5 x 56 = 308 s for one
# pass.  With changes of 3 s: 27 + 5 x 52 = 287 s.
routine_at tone
run 0 check tone.yaml
line "$out" 'tone.yaml is good: From wide to still, edition 1, 6 stages.'
line "$out" 'Homework: work on tone, no further than tone.'
line "$out" '  air         air 0:00, end 2:48'
line "$out" '  wide        air 0:00, wide 0:28, end 4:36'
line "$out" '  thirds      air 0:00, wide 0:28, thirds 1:24, end 4:44'
line "$out" '  tone        air 0:00, wide 0:28, thirds 1:24, tone 2:20, end 4:52'
line "$out" '  tone        10 each, 40 in all'
line "$out" '  wide        finger 1: 12.3 to 24.7, finger 2: 11.6 to 23.3,'
line "$out" \
    '  wide        0.31 with 4 pulses, 0.46 with 6 pulses, 0.62 with 8 pulses'
has "$out" 'One pass through all stages takes 5:08, 8 s over 5:00.'
sed 's/change_seconds: 4/change_seconds: 3/' tone.yaml > quick.yaml
run 0 check quick.yaml
line "$out" 'One pass through all stages takes 4:47 and fits into 5:00.'

# --- all faults of all files, and the good ones all the same --------------------
cat > slips.yaml <<'END'
routine: Slips
turns: {bows_eech: 2}
stages:
  - id: one
    title: First
    place: string D
    travel: tone
    cue: KEEP THE BOW EVEN
END
run 65 check slips.yaml cello.yaml
line "$err" 'slips.yaml:2:9: I do not know "bows_eech". Did you mean "bows_each"?'
has "$err" 'slips.yaml:8:10: 17 characters'
line "$out" 'cello.yaml is good: From wide to still, edition 1, 6 stages.'
no "$out" slips.yaml
run 65 check nowhere.yaml slips.yaml
printf 'homework_for: W.\nroutine: gone.yaml\n' > lost.yaml
unchanged 66 'gone.yaml' check lost.yaml
unchanged 66 'nowhere.yaml' check nowhere.yaml

# A file may hold anything; no escape sequence reaches the terminal.
printf 'routine: "\033[31mred"\nstages: 4\n\033]0;title\007: x\n' > escape.yaml
run 65 check escape.yaml
no "$err" "$(printf '\033')"

# --- the command line ------------------------------------------------------------
unchanged 64 'evenhand check' check
unchanged 64 '--bogus' check --bogus cello.yaml
unchanged 66 'Nobody' check --player Nobody cello.yaml
unchanged 64 '../etc' check --player ../etc cello.yaml
run 0 check --help
has "$out" 'evenhand check [options] FILE...'
run 0 new --help
has "$out" 'evenhand new [options] FILE'

# --- new never overwrites -----------------------------------------------------------
echo mine > kept.yaml
unchanged 73 'kept.yaml' new kept.yaml
run 0 new kept.yaml --force
so 'force gives the cello routine' cmp -s kept.yaml "$root/routines/cello.yaml"
unchanged 64 'bass, cello-deutsch-homework, cello-deutsch, cello-homework, cello, crossings-homework' new x.yaml --from harpsichord
unchanged 64 'evenhand new' new
unchanged 64 'two.yaml' new one.yaml two.yaml
unchanged 73 'nowhere/mine.yaml' new nowhere/mine.yaml
mkdir alone
run 0 new alone/wren.yaml --from cello-homework
has "$out" 'evenhand new alone/cello.yaml --from cello'
run 0 new alone/cello.yaml
run 0 check alone/wren.yaml
has "$out" 'Homework for Wren: work on tone, no further than tone.'

# --- checking leaves no trace in the home folder ---------------------------------------
is 'the home folder' "$(find "$work/home" -mindepth 1)" ''

# --- a stage with history must not vanish -------------------------------------------------
# A session on tone: 1 air swing, 4 turns each of two recaps, 12 of work.
echo "0:26 clean" > nobody
session 2026-03-02T17:00 nobody tone.yaml
status_is $? 0 'a session'
kept()
{
	find "$journals" -type f -exec cksum {} + | sort
}

before=$(kept)
sed 's/id: thirds/id: minor-third/' tone.yaml > renamed.yaml
run 0 check renamed.yaml
has "$err" 'stage "thirds" has 4 turns of history and is gone'
has "$err" 'was: thirds'
has "$out" 'renamed.yaml is good'
sed 's/id: minor-third/&\n    was: thirds/' renamed.yaml > healed.yaml
run 0 check healed.yaml
# Another routine is not an edition of this one.
run 0 check trills.yaml bass.yaml
is 'nothing on standard error' "$(cat "$err")" ''
so 'the journal is as before' [ "$(kept)" = "$before" ]

finish
