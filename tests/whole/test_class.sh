#!/bin/sh
# test_class.sh - `evenhand class` and `evenhand print class`, the real binary on
# real records: gathered by themselves, in lines, as a table, for programs, on
# paper; what is damaged, closed or not there
#
# shellcheck source=tests/whole/lib.sh
# shellcheck disable=SC2317 # functions called by so
. "$(dirname "$0")/lib.sh"

out=$work/out
err=$work/err
noon=2026-03-08T12:00

# student INITIALS DAY...: practises tone on these days of March 2026 and gives
# a record of Saturday the 7th into the class
student()
{
	initials=$1
	shift
	for day do
		session "2026-03-${day}T17:00" keys --marking turn \
		    --player "$initials" tone.yaml
	done
	run 0 give --player "$initials" --initials "$initials" \
	    --at 2026-03-07T10:00 -o "class/$initials.yaml"
}

# The words of the class, name by name: states FILE
states()
{
	ask "$1" "select group_concat(json_extract(value, '\$.name') || ' ' ||
	    json_extract(value, '\$.state'), ', ') from f, json_each(j, '\$.students')"
}

# --- no class -----------------------------------------------------------------
unchanged 66 "there is no folder nowhere" class nowhere
touch file
unchanged 66 "file is not a folder" class file
unchanged 64 "something is missing" class
unchanged 64 "has no name" class ''
mkdir empty
unchanged 64 "Take one of them" class empty --csv --json
before=$(disk)
run 0 class empty
has "$out" "empty has no students yet."
run 0 class empty --json
is "an empty class" "$(ask "$out" "select json_array_length(j, '\$.students') from f")" 0
so "looking makes nothing" [ "$(disk)" = "$before" ]
unchanged 66 "empty has no students yet" print class empty -o none.pdf

# What lies there instead is told, and what to do about it.
mkdir wrong
echo "a letter" > wrong/letter.txt
cp empty/../file wrong/notes.yaml
run 0 class wrong
has "$out" "wrong has no students yet: 2 files lie in it, but no record ("
unchanged 66 "letter.txt is none" print class wrong -o none.pdf
echo 'evenhand_record: 1' > wrong/notes.yaml
run 0 class wrong
has "$err" "wrong/notes.yaml:"
has "$out" "1 record lies in it, but nothing could be taken from"

# --- records that simply lie there ----------------------------------------------
routine_at tone
pedals keys
mkdir class
student "W. P." 02 03 04 05 06
student "A. B." 02 03
cp tone.yaml class/routine.yaml
run 0 class class --at "$noon"
has "$err" "2 new records were gathered from the folder."
has "$out" "Class on 2026-03-08: 2 students. 1 ready, 1 fine."
has "$out" "ready: W. P.: ready to show \"A tone apart\"."
has "$out" "Record of 2026-03-07."
is "the routine is none of ours" "$(grep -c routine.yaml "$err")" 0
so "nothing for others" [ -z "$(find class -newer keys ! -type d -perm /077 ! -name routine.yaml)" ]
so "nor its folder" [ -z "$(find class/students -perm /077)" ]

# --- looked at again: nothing gathered, nothing changed -----------------------------
before=$(disk)
run 0 class class --at "$noon" --json
so "nothing was gathered twice" [ ! -s "$err" ]
so "the disk is as before" [ "$(disk)" = "$before" ]
is "as JSON" "$(states "$out")" "W. P. ready, A. B. fine"

# --- the wrong folder, a file that mail gave another ending -------------------------
run 0 class class/students
has "$out" "folder above it: evenhand class class/students/.."
mkdir mailed
cp "class/A. B..yaml" "mailed/A. B..yaml.txt"
cp keys mailed/letter.pdf
run 0 class mailed --at "$noon"
has "$err" "1 new record was gathered from the folder."
has "$out" "A. B.:"
run 0 class mailed --at "$noon"
so "once" [ ! -s "$err" ]
mkdir taken taken/class.sqlite
unchanged 66 "taken/class.sqlite is no file" class taken
unchanged 66 "taken/class.sqlite is no file" gather --class taken "class/A. B..yaml"

# --- a later day, without any new record ---------------------------------------------
run 0 class class --at 2026-03-14T12:00 --json
is "a week later" "$(states "$out")" "W. P. ready, A. B. fine"
run 0 class class --at 2026-03-15T12:00 --json
is "no record for eight days" "$(states "$out")" "A. B. absent, W. P. absent"
run 0 class class --at 2026-05-02T12:00 --json
is "for eight weeks" "$(states "$out")" "A. B. gone, W. P. gone"

# --- pain comes first --------------------------------------------------------------
printf '%s\n' '0:26 c' '2:40 h' > hurts
session 2026-03-06T17:00 hurts --marking turn --player "Z. Z." tone.yaml
run 0 give --player "Z. Z." --initials "Z. Z." --at 2026-03-07T11:00 \
    -o "class/third.yml"
run 0 class class --at "$noon"
has "$err" "1 new record was gathered from the folder."
is "first of all" "$(sed -n 2p "$out" | cut -c 1-31)" \
    "pain: Z. Z.: pain on 2026-03-06"
run 0 class class --at 2026-03-22T12:00 --json
is "over after two weeks" "$(states "$out")" \
    "A. B. absent, W. P. absent, Z. Z. absent"

# --- a table ------------------------------------------------------------------------
run 0 class class --at "$noon" --csv
is "a row for each" "$(wc -l < "$out" | tr -d ' ')" 4
is "rows end with CR LF" "$(grep -c "$(printf '\r')\$" "$out")" 4
is "its columns" "$(sed -n 2p "$out" | cut -d, -f 1,2,4,5,7)" \
    "pain,Z. Z.,2026-03-06,1,1"

# --- on paper -------------------------------------------------------------------------
if [ -x "$(dirname "$EVENHAND")/evenhand-paper" ]; then
	run 0 print class class --at "$noon" -o sheets.pdf
	is "what was written" "$(cat "$out")" "sheets.pdf is written, 4 pages."
	pdftotext -layout sheets.pdf words.txt
	is "who needs help first, on the list and in the sheets" \
	    "$(grep -o 'Z\. Z\.\|A\. B\.\|W\. P\.' words.txt | tr '\n' ' ')" \
	    "Z. Z. W. P. A. B. Z. Z. W. P. A. B. "
	unchanged 73 "sheets.pdf" print class class --at "$noon" -o sheets.pdf
	run 0 print class class --at "$noon" -o sheets.pdf --force --large \
	    --paper letter
	# What draws may die anywhere in it: the old file stays, or none.
	mkdir alone
	cp "$EVENHAND" alone/evenhand
	real=$EVENHAND
	EVENHAND=$PWD/alone/evenhand
	for dies in 'kill -9 $$' 'head -n 20 > /dev/null; kill -9 $$' \
	    'cat > /dev/null; echo %PDF; kill -9 $$'; do
		printf '#!/bin/sh\n%s\n' "$dies" > alone/evenhand-paper
		chmod +x alone/evenhand-paper
		unchanged 71 "ended from outside" \
		    print class class --at "$noon" -o sheets.pdf --force
		unchanged 71 "ended from outside" \
		    print class class --at "$noon" -o more.pdf
	done
	EVENHAND=$real
	rm -r alone
	unchanged 64 "Choose a file that ends in .pdf" \
	    print class class -o sheets.png
	unchanged 64 "say which class" print class -o sheets.pdf
else
	echo "skipped: there is no evenhand-paper here"
fi

# --- what is wrong with one hides nobody --------------------------------------------------
echo 'evenhand_record: 1' > class/broken.yaml
run 0 class class --at "$noon" --json
has "$err" "class/broken.yaml:"
is "all others" "$(states "$out")" "Z. Z. pain, W. P. ready, A. B. fine"
rm class/broken.yaml
touch class/students/evil.sqlite "class/students/../students/x.sqlite"
id=$(ask "$out" "select json_extract(j, '\$.students[1].id') from f")
head -c 20000 /dev/zero | tr '\0' 'x' > "class/students/$id.sqlite"
run 0 class class --at "$noon" --json
has "$err" "1 journal of this class cannot be read"
is "the damaged one, too" "$(states "$out")" \
    "Z. Z. pain, W. P. unread, A. B. fine"
is "nothing is told of it" "$(ask "$out" "select json_type(j,
    '\$.students[1].last_day') is null from f")" 1
rm "class/students/$id.sqlite"
run 0 class class --at "$noon" --json
is "a journal that is gone" "$(states "$out")" "Z. Z. pain, A. B. fine"

# --- class.sqlite costs nothing ----------------------------------------------------------
rm class/class.sqlite
run 0 class class --at "$noon" --json
has "$err" "3 new records were gathered from the folder."
is "made anew" "$(states "$out")" "Z. Z. pain, W. P. ready, A. B. fine"
echo "no database, but longer than the head of one would be" > class/class.sqlite
run 65 class class --at "$noon"
has "$err" "class/class.sqlite is damaged. Delete it"
rm class/class.sqlite
sqlite3 class/class.sqlite "create table mine (x); insert into mine values (1)"
run 65 class class --at "$noon"
has "$err" "class/class.sqlite is not from evenhand"
is "it was left" "$(sqlite3 class/class.sqlite "select x from mine")" 1
rm class/class.sqlite

# --- a folder that may only be read ---------------------------------------------------------
run 0 class class --at "$noon"
if [ "$(id -u)" -ne 0 ]; then
	chmod a-w class class/students
	cp class/third.yml "$work/files/new.yaml"
	run 0 class class --at 2026-03-30T12:00 --json
	is "read only" "$(states "$out" | tr -dc , | wc -c | tr -d ' ')" 2
	so "with their names" [ "$(states "$out" | grep -c 'Z. Z.')" = 1 ]
	chmod u+w class class/students
else
	echo "skipped: root may write everything"
fi

finish
