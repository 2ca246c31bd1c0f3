#!/bin/sh
# test_check_places.sh - what `evenhand check` says that no single file shows:
# each sentence whole, with its path, line and column
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

err=$work/err

# said STATUS ARGUMENTS... : standard error is what stands on our input
said()
{
	want=$1
	shift
	cat > "$work/wanted"
	run "$want" "$@"
	if cmp -s "$work/wanted" "$err"; then
		ok "evenhand $*: $(wc -l < "$err") lines, letter by letter"
	else
		fail "evenhand $* says something else"
		diff "$work/wanted" "$err" | sed 's/^/    /'
	fi
}

# --- a homework file and its routine, each fault under its own path ------------
mkdir class
cat > class/base.yaml <<'END'
routine: Base
session: {minutes: 15}
stages:
  - id: wide
    place: string D
    shift: first to forth
END
cat > class/wren.yaml <<'END'
homework_for: W.
routine: base.yaml
homework: {work_on: wise}
END
said 65 check class/wren.yaml <<'END'
class/base.yaml:2:20: 15 minutes is three times the usual five and is where blisters and tired hands begin. If it is meant, add because: "..."; the first two weeks of a stage stay at 5
class/base.yaml:6:12: I do not know the position "forth". Write half, first, third or fourth, a note such as F, or give travel in semitones instead
class/wren.yaml:3:21: no stage has the id "wise". Did you mean "wide"?
END

# --- more faults than are shown ----------------------------------------------------
{
	echo 'routine: Many'
	for i in $(seq 1 43); do
		echo "wrong$i: 1"
	done
	printf 'stages:\n  - {id: a, place: in the air}\n'
} > many.yaml
run 65 check many.yaml
is 'lines shown' "$(grep -c '^many.yaml:' "$err")" 40
is 'and what is left out' "$(grep -v '^many.yaml:' "$err")" \
    'evenhand: and 3 faults more. Mend these first'

# --- stages with history that are gone -----------------------------------------------
routine_at tone
echo "0:26 clean" > keys
session 2026-03-02T17:00 keys tone.yaml
status_is $? 0 'a session'
sed 's/id: thirds/id: minor-third/; s/id: air/id: swing/' tone.yaml > new.yaml
first=$(grep -n 'id: swing' new.yaml | cut -d: -f1)
said 0 check new.yaml <<END
new.yaml:$first:9: stage "air" has 1 turn of history and is gone from this edition. If you renamed it, add to the new one: was: air. If it is meant to go, leave it so
new.yaml:$first:9: stage "thirds" has 4 turns of history and is gone from this edition. If you renamed it, add to the new one: was: thirds. If it is meant to go, leave it so
END
has "$work/out" "new.yaml is good"
said 66 check --player Wren tone.yaml <<'END'
evenhand: there is no journal of a player called "Wren"
END

# --- a journal that cannot be read: the routine is looked at all the same -----------
for journal in "$journals"/*.sqlite "$journals"/*.db; do
	[ -f "$journal" ] && printf 'no journal at all, just words' > "$journal"
done
rm -f "$journals"/*-wal "$journals"/*-shm
said 0 check tone.yaml <<END
evenhand: the practice history in $journal is damaged and cannot be read. It was left as it is
evenhand: stages with history that are gone from this edition were not looked for
END
has "$work/out" 'tone.yaml is good'

finish
