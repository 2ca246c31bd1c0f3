#!/bin/sh
# test_story_secure.sh - acceptance stories 7 and 8: when a stage is secure, and
# what two bad days do
#
# Without a recap before it the work of the stage "thirds" begins at 1:24, its
# first turn at 1:32, and the change after turn n (from 0) at 1:40 + 12 n s; for
# "wide" all of that is 56 s earlier.
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# marks FIRST LETTERS: a key in the change after each turn of the work
marks()
{
	echo '0:26 clean'
	echo "$2" | fold -w 1 | awk -v first="$1" '{
		t = first + 2 + 12 * (NR - 1)
		printf "%d:%02d %s\n", t / 60, t % 60,
		    $1 == "-" ? "?" : $1 == "c" ? "clean" : "shaky"
	}'
}

# played PLAYER DAY FIRST LETTERS
played()
{
	marks "$3" "$4" > keys
	session "2026-03-0${2}T17:00" keys --marking turn --player "$1" thirds.yaml
	status_is $? 0 "$1 on day $2: $4"
}

# today PLAYER DAY ARGUMENTS...
today()
{
	player=$1
	day=$2
	shift 2
	run 0 today --at "2026-03-0${day}T16:00" --marking turn \
	    --player "$player" "$@" thirds.yaml
	tr '\n' ' ' < "$work/out" > said
}

# first_goes PLAYER: rung and first-go marks of each day on thirds
first_goes()
{
	"$EVENHAND" history --json --player "$1" > h.json
	ask h.json "select group_concat(r, ' ') from (select
	    max(json_extract(value, '\$.pulses')) || group_concat(substr(
	    json_extract(value, '\$.mark'), 1, 1), '') as r
	    from f, json_each(j, '\$.turns') where $(block work thirds) and
	    json_extract(value, '\$.first_go') = 1
	    group by json_extract(value, '\$.sitting'))"
}

# --- 7. secure ----------------------------------------------------------------

routine_at thirds
played wren 2 100 csccccccccccssss
played wren 3 100 sccccccccccccccc
played wren 4 100 ccsccccccccccccc
today wren 5
has said 'Stay with "First to third position": 3 of 5 practice days so far.'
played wren 5 100 cccccccccccccccc
played wren 6 100 cccscccccccccccc
today wren 7
has said 'Stay with "First to third position": finger 4 was shaky in the first round on 2026-03-06.'
today wren 7 --why
has said 'First rounds all clean at 8 pulses: 1 of the last 3'
has said 'it can be shown after 1 more practice day.'
today wren 7 --json
is "what is missing, for programs" "$(ask "$work/out" "select
    j ->> '\$.standing.ready', j ->> '\$.standing.missing',
    j ->> '\$.standing.unit', j ->> '\$.standing.days',
    j ->> '\$.standing.clean_days', j ->> '\$.standing.more_days'
    from f")" "0|clean first go|4|5|1|1"
is "the turns of the work" "$(ask "$work/out" "select group_concat(t, ' ') from
    (select (t.value ->> 'unit') || ':' || (t.value ->> 'round') as t from f,
    json_each(j, '\$.blocks') b, json_each(b.value, '\$.turns') t
    where b.value ->> 'kind' = 'work')")" \
    "1:1 2:1 3:1 4:1 1:2 2:2 3:2 4:2 1:3 2:3 3:3 4:3 1:4 2:4 3:4 4:4"
is "their shares" "$(ask "$work/out" "select group_concat(t, ' ') from (select
    (value ->> 'turns') || '-' || (value ->> 'left_out') as t from f,
    json_each(j, '\$.shares'))")" "4-0 4-0 4-0 4-0"
played wren 7 100 ccccssssssssssss
is "rungs and marks" "$(first_goes wren)" \
    "6cscc 6sccc 8ccsc 8cccc 8cccs 8cccc"
has "$work/out" 'Ready to show'
today wren 8
has said 'Ready to show: play "First to third position" to your teacher'
has said 'Today: First to third position, day 7.'
today wren 8 --json
is "for programs" "$(ask "$work/out" "select j ->> '\$.standing.ready',
    j ->> '\$.work_stage', j ->> '\$.day_on_stage' from f")" "1|thirds|7"

# The teacher saw finger 2 otherwise in the lesson of that day.
cat > lesson.yaml <<-'END'
	homework_for: W.
	routine: thirds.yaml
	lesson_marks:
	  - {date: 2026-03-07, stage: thirds, clean: [1, 3, 4], shaky: [2]}
END
run 0 today --at 2026-03-08T16:00 --player wren lesson.yaml
tr '\n' ' ' < "$work/out" > said
has said 'your teacher marked finger 2 shaky on 2026-03-07'

# The student decides, and the file lets nobody past its limit.
sed 's/decided_by: teacher/decided_by: student/' thirds.yaml > own.yaml
run 0 today --at 2026-03-08T16:00 --player wren own.yaml
has "$work/out" 'Today: First to third position, day 7.'
sed 's/no_further_than: .*/no_further_than: tone/' own.yaml > further.yaml
run 0 today --at 2026-03-08T16:00 --player wren further.yaml
has "$work/out" 'Today: A tone apart, day 1.'

# --- 8. bad days ----------------------------------------------------------------

sed 's/id: thirds/&\n    start_pulses: 4/' thirds.yaml > low.yaml
mv low.yaml thirds.yaml
played lark 2 100 ssccssssssssssss
today lark 3
has said 'Today: First to third position, day 2.'
cp -R "$journals" kept
played lark 3 100 cssc------------
today lark 4
has said 'Today: First to fourth position, day 1.'
has said 'was shaky from the start on two practice days running, 2026-03-02 and 2026-03-03'
played lark 4 44 sccccccccccccccccccc
so "nothing of how the stage before stands" [ "$(grep -c \
    'Stay with\|to show' "$work/out")" = 0 ]
today lark 5
has said 'Today: First to fourth position, day 2.'
has said 'You are at "First to fourth position".'
played lark 5 44 cccccccccccccccccccc
today lark 6
has said '"First to fourth position" was all clean'
has said 'Today: First to third position, day 3.'

# The second day with one shaky: hold.
rm -rf "$journals"
mv kept "$journals"
played lark 3 100 ccsc------------
today lark 4
has said 'Today: First to third position, day 3.'
finish
