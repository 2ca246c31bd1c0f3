#!/bin/sh
# test_gather.sh - `evenhand gather`: two computers of one student come together,
# a class gets a journal for each, and hostile files change nothing
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

out=$work/out
err=$work/err
routine_at wide
printf '%s\n' '0:25 c' '0:45 c' '0:57 c' '1:09 s' '2:33 c' '3:57 c' > keys

# The history without where it was made.
all_but_machine()
{
	"$EVENHAND" history --json "$@" 2> "$work/quiet" | grep -v '^"made_on"'
}

# --- a second computer ----------------------------------------------------------
for day in 02 03 05; do
	session "2026-03-${day}T17:00" keys --marking turn wide.yaml
done
run 0 give -o one.yaml
all_but_machine > one.json
run 0 gather --player second one.yaml
is "what it brought" "$(cat "$out")" \
    "one.yaml: 3 sessions new, 0 known, 0 notes new."
all_but_machine --player second > second.json
so "the second tells what the first told" cmp one.json second.json
is "rights" "$(stat -c %a "$journals/player-second.db")" 600
run 0 gather --player second one.yaml
is "twice is once" "$(cat "$out")" \
    "one.yaml: 0 sessions new, 3 known, 0 notes new."
all_but_machine --player second > again.json
so "and nothing changed" cmp second.json again.json

# --- both are practised on, and come together --------------------------------------
session 2026-03-06T17:00 keys --marking turn --player second wide.yaml
session 2026-03-07T17:00 keys --marking turn wide.yaml
run 0 give -o two.yaml --player second --since 2026-03-06
run 0 gather two.yaml
has "$out" "1 session new, 0 known"
run 0 give -o one.yaml --force --since 2026-03-07
run 0 gather --player second one.yaml
all_but_machine > one.json
all_but_machine --player second > second.json
so "both tell the same" cmp one.json second.json
is "sessions" "$(grep -c '"began"' one.json)" 5
grep -o '"began": "[^"]*"' one.json > began
so "in the order of time" sort -c began
run 0 today wide.yaml --at 2026-03-08T17:00

# --- somebody else's -----------------------------------------------------------------
session 2026-03-02T17:00 keys --marking turn --player ada wide.yaml
run 0 give -o ada.yaml --player ada
unchanged 65 'of another student' gather ada.yaml
session 2026-03-02T17:00 keys --marking turn --player ben wide.yaml
run 0 give -o ben.yaml --player ben

# --- the same person, who began on two computers -----------------------------------
two_ids()
{
	grep -o '[0-9a-f]*+[0-9a-f]*' "$err"
}
session 2026-03-02T17:00 keys --marking turn --player left wide.yaml
session 2026-03-03T17:00 keys --marking turn --player right wide.yaml
run 0 give -o left.yaml --initials W. --player left
run 0 give -o right.yaml --initials W. --player right
unchanged 64 'beginnings of two ids' gather --player left --join both right.yaml
unchanged 65 'Only if both are the same person' gather --player left right.yaml
ids=$(two_ids)
unchanged 65 'of another student' gather --player left --join 00000000+"${ids#*+}" \
    right.yaml
run 0 gather --player left --join "$ids" right.yaml
has "$out" "1 more id is this student's from now on"
run 0 gather --player left --join "$ids" right.yaml
is "twice is once" "$(cat "$out")" \
    "right.yaml: 0 sessions new, 1 known, 0 notes new."
session 2026-03-04T17:00 keys --marking turn --player right wide.yaml
run 0 give -o right.yaml --force --initials W. --player right
run 0 gather --player left right.yaml
has "$out" "1 session new, 1 known"
run 0 give -o both.yaml --initials W. --player left
has both.yaml "evenhand_record: 2"
so "the record of both fits the schema" "$python" \
    "$root/tests/tools/schema.py" \
    "$root/routines/evenhand-record.schema.json" good both.yaml

lines_of()
{
	"$EVENHAND" class pair --csv --at 2026-03-05T17:00 2> "$work/quiet" |
	    sed 1d
}
run 0 gather --class pair left.yaml right.yaml
is "two lines" "$(lines_of | wc -l)" 2
unchanged 65 'Only if both are the same person' gather --class pair both.yaml
unchanged 65 'nobody in the class' gather --class pair --join 00000000+"${ids#*+}"
unchanged 64 'FILE' gather --class pair
run 0 gather --class pair --join "$ids"
has "$out" "1 more id is this student's from now on"
is "one line" "$(lines_of | wc -l)" 1
lines_of > pair.csv
run 0 gather --class pair --join "$ids"
has "$out" "one student's already"
run 0 gather --class pair left.yaml right.yaml both.yaml
has "$out" "0 sessions new"
lines_of > again.csv
so "and nothing changed" cmp pair.csv again.csv
# Other orders: the join first, or with the records, or a record of both first.
run 0 gather --class other --join "$ids" right.yaml left.yaml
is "one line at once" "$("$EVENHAND" class other --csv | sed 1d | wc -l)" 1
run 0 gather --class third both.yaml
run 0 gather --class third right.yaml left.yaml
is "one line of both" "$("$EVENHAND" class third --csv | sed 1d | wc -l)" 1

# --- a class ---------------------------------------------------------------------------
run 0 gather --class lessons one.yaml two.yaml ada.yaml ben.yaml
has "$out" "4 records: 4 sessions new, 0 known, 0 notes new."
is "a journal each" "$(find lessons/students -name '*.sqlite' | wc -l)" 3
run 0 gather --class lessons ada.yaml
has "$out" "0 sessions new, 1 known"
unchanged 66 "ada.yaml is not a folder. A class is" \
    gather --class ada.yaml one.yaml two.yaml
unchanged 64 "has no name" gather --class '' one.yaml
unchanged 66 "the folder ada.yaml/below cannot be read or written" \
    gather --class ada.yaml/below one.yaml
unchanged 64 'two places' gather --class lessons --player ada ada.yaml

# --- a copied home folder ------------------------------------------------------------------
cp "$journals/player-ada.db" "$journals/player-copy.db"
session 2026-03-03T17:00 keys --marking turn --player ada wide.yaml
session 2026-03-04T17:00 keys --marking turn --player copy wide.yaml
run 0 give -o ada.yaml --force --player ada
run 0 gather --player copy ada.yaml
has "$out" "1 session new, 1 known"
has "$out" "has the number of another on the same computer"
is "nothing is lost" "$(all_but_machine --player copy | grep -c '"began"')" 3

# --- hostile files: a sentence with a place, and nothing moves --------------------------------
hostile()
{
	words=$1
	unchanged 65 "$words" gather hostile.yaml
	unchanged 65 "$words" gather --class lessons hostile.yaml
}
printf 'routine: no record\n' > hostile.yaml
hostile "hostile.yaml:1:1: this is not a practice record"
sed 's/^evenhand_record: 1/evenhand_record: 7/' one.yaml > hostile.yaml
hostile "hostile.yaml:6:18: this record was written by a newer evenhand"
sed 's/^  day: .*/  day: \&a 2026-03-07/' one.yaml > hostile.yaml
hostile "words may not begin with"
sed 's/initials: "/&\\e[31mred/' one.yaml > hostile.yaml
hostile "hostile.yaml:7:21: an invisible control character"
sed "s/initials: \"/&$(printf '\033')[31m/" one.yaml > hostile.yaml
hostile "hostile.yaml:7:22: an invisible control character"
sed 's/^  computer: 1/  computer: 5/' one.yaml > hostile.yaml
hostile "this record has no computer 5"
sed 's/^  - \[0, /  - [[[[[[[[[0, /' one.yaml > hostile.yaml
hostile "steps inwards"
{
	printf 'evenhand_record: 1\nstudent: "'
	head -c 10000000 /dev/zero | tr '\0' x
	echo '"'
} > hostile.yaml
hostile "hostile.yaml:2:1: this line has more than"
head -c 60000000 /dev/zero | tr '\0' '\n' > hostile.yaml
unchanged 66 "larger than" gather hostile.yaml
printf 'evenhand_record: 1\nstudent: \377\376\n' > hostile.yaml
hostile "hostile.yaml:2:10: the letter here is not written in UTF-8"
head -n 11 one.yaml > hostile.yaml
hostile "is missing here"
: > hostile.yaml
hostile "this is not a practice record"
unchanged 66 'no such file' gather nowhere.yaml
unchanged 66 '"": there is no such file' gather ''
unchanged 66 'this is a folder' gather lessons
# A record of very many turns is over soon, in the time that it works: so many
# seconds of it, and the system ends it.
awk '/^  - \[/ && !done { for (i = 0; i < 700000; i++)
	print "  - [" i ", air, a, \"\", 0, none, 0, 0, 0, 0, 0, " i + 1 ", 0, 0]"
	done = 1; next } !/^  - \[/ { print }' one.yaml > hostile.yaml
(
	# POSIX knows no limit but of files; every sh that runs this does.
	# shellcheck disable=SC3045
	ulimit -t 60 && exec "$EVENHAND" gather hostile.yaml
) > "$out" 2> "$err" < /dev/null
status_is $? 65 "700 000 turns in a minute of work"
rm hostile.yaml

# One bad file keeps no other from being gathered.
echo "nothing" > bad.yaml
run 65 gather --player third bad.yaml one.yaml
has "$err" "bad.yaml:1:1: this is not a practice record"
has "$out" "1 session new"

# --- while somebody practises ---------------------------------------------------------------
mkfifo hold
"$EVENHAND" --lines --silent --at 2026-03-20T17:00 wide.yaml < hold > "$work/held" \
    2>&1 &
pid=$!
exec 9> hold
comes "$work/held" "sore"
unchanged 75 'another evenhand is open' gather one.yaml
exec 9>&-
wait "$pid"

finish
