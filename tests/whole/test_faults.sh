#!/bin/sh
# test_faults.sh - the page of what goes wrong, docs/faults.md, at its word: the
# sentences, what is kept, and the tests it names
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
page=$root/docs/faults.md

# says WORDS: the page has this sentence, and standard error, with any words
# where the page has "…"
says()
{
	so "the page has: $1" grep -qF "\"$1\"" "$page"
	so "it is said" grep -q "$(printf '%s' "$1" | sed 's/[].[*^$\\]/\\&/g
	    s/…/.*/g')" "$work/err"
}

# Every sentence is one of the program's, every test is there.
cat "$root"/include/evenhand/base/messages/*.h | tr '\n' ' ' |
    sed 's/"  *"//g; s/\\"/"/g' > "$work/table"
grep -o '"[^"]*"' "$page" | sed 's/^"//; s/"$//; s/…/\n/g' |
    sed 's/^ //; s/ $//' | awk 'length > 3' > "$work/pieces"
so "the page has sentences" [ "$(wc -l < "$work/pieces")" -ge 30 ]
while IFS= read -r piece; do
	so "of the program: $piece" grep -qF -- "$piece" "$work/table"
done < "$work/pieces"
grep -o 'tests/[a-z_/.]*' "$page" | sort -u > "$work/tests"
while read -r test; do
	so "$test is there" [ -f "$root/$test" ]
done < "$work/tests"

tiny tiny.yaml
echo '0:07 clean' > keys
journal=$journals/journal.db
practise()
{
	session 2026-03-02T17:00 keys --marking turn tiny.yaml
	status_is $? 0 'a session'
}
practise
is "nothing is said" "$(cat "$work/err")" ""
each=$("$EVENHAND" history --json | grep -c '"turn":')
so "it has turns" [ "$each" -gt 0 ]
cp "$journal" good.db

# waiting: so many turns wait beside the journal
waiting()
{
	is "turns in the spool" "$(grep -c '	turn	' "$journal.spool")" "$each"
	rm "$journal.spool"
}

# --- the history ---------------------------------------------------------------
mkfifo hold
sqlite3 "$journal" < hold > "$work/held" 2>&1 &
holder=$!
exec 9> hold
printf '%s\n' 'begin exclusive;' 'select "it is held";' >&9
comes "$work/held" 'it is held'
practise
says 'another program is busy with the practice history in …. What you practise is kept beside it and added as soon as it is free'
exec 9>&-
wait "$holder"
waiting

head -c 20000 good.db > "$journal"
practise
says 'the practice history in … is damaged. It is left as it is, and today is planned without it. What you practise is kept beside it. Put a good copy in its place, or move it away'
waiting
so "it is left as it is" [ "$(wc -c < "$journal")" -eq 20000 ]

rm "$journal"
sqlite3 "$journal" 'create table recipes (cake)'
practise
says '… is not a practice history. It is left as it is, and what you practise is kept beside it. Move it away'
waiting
is "it is left as it is" "$(sqlite3 "$journal" .tables)" recipes

cp good.db "$journal"
sqlite3 "$journal" 'pragma user_version = 99' > "$work/quiet"
practise
says 'the practice history in … was made by a newer evenhand, so this one only reads it. What you practise is kept beside it for the newer one'
waiting
cp good.db "$journal"

mkfifo in
"$EVENHAND" --silent tiny.yaml < in > first.out 2> first.err &
pid=$!
exec 9> in
comes first.out Forward
run 75 --clock fast tiny.yaml
says 'another evenhand is open for this player. Close it first, or add --player NAME for another player'
exec 9>&-
wait "$pid"

# --- home ----------------------------------------------------------------------
(unset HOME && session 2026-03-02T17:00 keys tiny.yaml)
status_is $? 73 'without a home folder'
says 'I do not know your home folder: neither XDG_DATA_HOME nor HOME is set to a whole path'
for home in "$work/files/tiny.yaml" /proc/1; do
	HOME=$home session 2026-03-02T17:00 keys --marking turn tiny.yaml
	status_is $? 0 "with $home as a home folder"
	says 'the practice history in … cannot be reached. What you practise is kept apart and added when it can'
	spool=$(sed -n 's/.* It is kept in \(.*\) until .*/\1/p' "$work/err")
	is "turns in the last place" "$(grep -c '	turn	' "$spool")" "$each"
	rm -f "$spool"
done

# --- language --------------------------------------------------------------------
# made FOLDER: everything that is written, by a locale
made()
{
	mkdir "$1"
	cp good.db "$journal"
	run 0 give -o "$1/give.yaml" --at 2026-03-03T18:00
	run 0 history --csv
	mv "$work/out" "$1/history.csv"
	run 0 history --json
	grep -v '^"made_on"' "$work/out" > "$1/history.json"
	run 0 today --json --at 2026-03-03T17:00 tiny.yaml
	mv "$work/out" "$1/today.json"
	if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
		run 0 print lesson -o "$1/lesson.svg" --at 2026-03-03T17:00
	fi
}
made plain
LC_ALL=xx_XX.UTF-8 made unknown
so "the same in a language that is not there" diff -r plain unknown
mkdir "$work/locales"
if localedef -i de_DE -f UTF-8 "$work/locales/de_DE.UTF-8" \
    > "$work/quiet" 2>&1; then
	is "it has decimal commas" "$(LOCPATH=$work/locales LC_ALL=de_DE.UTF-8 \
	    bash -c 'printf %.1f 1,5')" 1,5
	LOCPATH=$work/locales LC_NUMERIC=de_DE.UTF-8 LC_ALL='' made commas
	LOCPATH=$work/locales LC_ALL=de_DE.UTF-8 LANGUAGE=en made all
	so "the same with decimal commas" diff -r plain commas
	# Sheets are written in the reader's own language.
	rm -f all/lesson.svg plain/lesson.svg
	so "files are the same in that language" diff -r plain all
else
	echo "there is no German here to compare with"
fi
finish
