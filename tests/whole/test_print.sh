#!/bin/sh
# test_print.sh - sheets of paper: written whole or not at all, in every format
# and size, with words that can be searched, and what is said when they cannot
#
# shellcheck source=tests/whole/lib.sh
# shellcheck disable=SC2317 # functions called by so
. "$(dirname "$0")/lib.sh"
paper=${EVENHAND%/*}/evenhand-paper
cp "$root"/routines/*.yaml .
when='--at 2026-03-02T17:00'

# print ARGUMENTS...: a sheet of Wren's week
print()
{
	# shellcheck disable=SC2086
	run 0 print homework cello-homework.yaml $when "$@"
}

# info FILE KEY: what a PDF tells of itself
info()
{
	pdfinfo "$1" | sed -n "s/^$2: *//p"
}

# --- PDF ------------------------------------------------------------------

print -o a4.pdf
is "said" "$(cat "$work/out")" "a4.pdf is written, 1 page."
is "nothing beside it" "$(find . -name 'a4.pdf*' | wc -l | tr -d ' ')" 1
# ISO 216: A4 is 210 x 297 mm; ANSI letter is 8.5 x 11 inches of 72 points.
is "A4" "$(info a4.pdf 'Page size')" "595.276 x 841.89 pts (A4)"
print --paper letter --output letter.pdf
is "letter" "$(info letter.pdf 'Page size')" "612 x 792 pts (letter)"
is "title" "$(info a4.pdf Title)" "Homework for Wren"
is "author" "$(info a4.pdf Author)" "J. Penhallow, Saltbridge Strings"
is "pages" "$(info a4.pdf Pages)" 1
is "day" "$(info a4.pdf CreationDate | cut -c 1-10)" "Mon Mar  2"
pdftotext -layout a4.pdf words
for text in 'Homework for Wren' 'ARM LEADS' 'This week: A tone apart' \
    'Finger 4: keep 1, 2 and 3 down beside it.' 'string 620 mm' \
    'begin with 6' 'Forearm and hand in one line' 'stop now' \
    'Mo' 'STEADY BOW' '5 minutes at a time, 2 times a day at most'; do
	has words "$text"
done
# 620 (1 - 2^(-2/12)) = 67.6, 620 (1 - 2^(-4/12)) = 127.9, 60.3 apart.
so "places in mm" grep -qE '^1 +68 128 60$|^1 .* 68 +128 +60$' words
print --large -o large.pdf
so "large takes pages" [ "$(info large.pdf Pages)" -gt 1 ]
is "as many as were said" "$(cat "$work/out")" \
    "large.pdf is written, $(info large.pdf Pages) pages."
pdftotext large.pdf words
has words "page 1 of $(info large.pdf Pages)"

# The same again is the same, byte for byte.
print -o again.pdf
so "the same bytes" cmp -s a4.pdf again.pdf

# --- pictures -------------------------------------------------------------

print -o sheet.PNG
is "PNG of 8 dots to the mm" "$(od -An -tx1 -j 1 -N 23 sheet.PNG | tr -d ' \n')" \
    "504e470d0a1a0a0000000d49484452000006900000""0948"
print --large -o sheet.svg
so "SVG" grep -q '<svg' sheet.svg
so "well-formed" python3 -c 'import sys, xml.dom.minidom as m
m.parse(sys.argv[1])' sheet.svg

# The built-in routine, and one by its name.
# shellcheck disable=SC2086
run 0 print homework $when -o built-in.pdf
pdftotext built-in.pdf words
has words 'LIGHT HAND'
run 0 print homework trills -o trills.pdf
pdftotext trills.pdf words
has words '0-1, 1-2, 2-3, 3-4'

# --- the lesson -----------------------------------------------------------

# On a teacher's computer nobody practised.
run 0 print lesson cello-homework.yaml -o nobody.pdf
has "$work/out" "Nothing has been practised in this journal."
rm nobody.pdf

# Two days of Wren's week: clean but for finger 4 in the first round of each.
# In the first go of the first day finger 2 is shaky, too.
pedals keys
sed 's/^3:14 clean/3:14 shaky/; s/^2:50 clean/2:50 shaky/' keys > first
sed 's/^3:14 clean/3:14 shaky/' keys > second
session 2026-03-02T17:00 first --marking turn cello-homework.yaml
session 2026-03-03T17:00 second --marking turn cello-homework.yaml
run 0 print lesson cello-homework.yaml --at 2026-03-04T12:00 -o lesson.pdf
is "its title" "$(info lesson.pdf Title)" "Before the lesson: Wren"
is "one page" "$(info lesson.pdf Pages)" 1
pdftotext lesson.pdf words
for text in HOLD '2026-02-26 to 2026-03-04' \
    'Stay with "A tone apart": 2 of 5 practice days so far.' \
    'Days: 2 of 7, in 2 sessions. The file says 6.' \
    'Minutes: 9:44 in all, 4:52 on the longest day.' \
    'Bows: 1 has 20, 2 has 20, 3 has 20, 4 has 20.' \
    'First rounds of the day: 0 of 2 all clean.' \
    'Sessions played whole: 2. Ended early: 0, cut off: 0, for pain: 0.' \
    'Asks: nothing.'; do
	has words "$text"
done
so "the one thing" sh -c \
    "tr '\n' ' ' < words | grep -q 'thing: finger 4 was shaky in 2 of 2 first rounds'"
before=$(disk)
run 0 print lesson cello-homework.yaml --at 2026-03-04T12:00 -o lesson.pdf \
    --force --large --paper letter
is "letter" "$(info lesson.pdf 'Page size')" "612 x 792 pts (letter)"
rm lesson.pdf
so "only looked at" [ "$(disk)" = "$(echo "$before" | grep -v lesson.pdf)" ]
unchanged 64 'is no name for a player' print lesson --player ../x -o x.pdf

# --- never over what is there, never half of it ---------------------------

echo mine > mine.pdf
unchanged 73 'is there already' print homework -o mine.pdf
print --force -o mine.pdf
so "with --force" grep -q '%PDF' mine.pdf
unchanged 73 'its folder is not there' print homework -o none/week.pdf
# The disk takes no more than 4 KB of a file.
before=$(disk)
(ulimit -f 8 && "$EVENHAND" print homework -o full.pdf \
    > "$work/out" 2> "$work/err" < /dev/null)
status_is $? 74 "no room for it"
one_sentence 'cannot be written'
so "nothing is left of it" [ "$(disk)" = "$before" ]

# --- slips ----------------------------------------------------------------

unchanged 64 'has to end in .pdf, .svg or .png' print homework -o week.doc
unchanged 64 'has to end in' print homework -o week
unchanged 64 'evenhand print homework -o sheet.pdf' print homework
unchanged 64 'evenhand print class FOLDER -o sheet.pdf' print class
unchanged 64 'I can print homework, lesson or class, not "cello.yaml"' print cello.yaml -o x.pdf
unchanged 64 'evenhand print [options] homework|lesson|class [ROUTINE|FOLDER] -o FILE' print -o x.pdf
unchanged 64 '--paper is a4 or letter, not "a3"' print homework --paper a3 \
    -o x.pdf
unchanged 64 '--output needs a word behind it' print homework -o
unchanged 64 'I do not know -x' print homework -x
unchanged 66 'there is no such file' print homework wren.yaml -o x.pdf
printf 'routine: x\n' > bad.yaml
run 65 print homework bad.yaml -o x.pdf
so "no file of a bad routine" [ ! -e x.pdf ]

# --- without what draws ---------------------------------------------------

mkdir alone
cp "$EVENHAND" alone/evenhand
real=$EVENHAND
EVENHAND=$work/files/alone/evenhand
unchanged 69 'evenhand-paper, is missing or does not start. Install' \
    print homework -o x.pdf

# fake COMMANDS: a program in its place
fake()
{
	printf '#!/bin/sh\n%s\n' "$1" > alone/evenhand-paper
	chmod +x alone/evenhand-paper
}

fake 'cat > /dev/null; exit 65'
unchanged 69 'of another version. Install evenhand anew' \
    print homework -o x.pdf
fake 'exit 64'
unchanged 69 'of another version' print homework -o x.pdf
# Killed in the middle of its work.
fake 'cat > /dev/null; echo half; kill -9 $$'
unchanged 71 'was ended from outside. Nothing was written' \
    print homework -o x.pdf
# What it prints beside the document goes nowhere.
fake "echo noise >&2; exec '$paper' \"\$@\""
run 0 print homework -o quiet.pdf
is "no noise" "$(cat "$work/err")" ""
so "a document" grep -q '%PDF' quiet.pdf
EVENHAND=$real

# No letters on this computer.
printf '<?xml version="1.0"?><fontconfig><cachedir>%s</cachedir></fontconfig>' \
    "$work" > "$work/fonts.conf"
before=$(disk)
FONTCONFIG_FILE=$work/fonts.conf "$EVENHAND" print homework -o x.pdf \
    > "$work/out" 2> "$work/err" < /dev/null
status_is $? 69 "without letters"
one_sentence 'no letters to print with. Install a font'
so "and no file" [ ! -e x.pdf ]

# --- evenhand-paper by hand -----------------------------------------------

# unfinished FILE: a PDF ends with %%EOF (ISO 32000-1, 7.5.5), a PNG with IEND
unfinished()
{
	! grep -aq -e '%%EOF' -e '</svg>' -e IEND "$1"
}

# by_hand STATUS FORMAT: what stands in list
by_hand()
{
	"$paper" "$2" < list > "$work/out" 2> "$work/err"
	status_is $? "$1" "evenhand-paper $2"
	if [ "$1" -ne 0 ]; then
		so "no whole document" unfinished "$work/out"
	fi
}

good='evenhand-paper 1\ntitle \nauthor \nday 2026-03-02\npage 21000 29700\n'
printf '%bwords 100 900 500 plain left 3000 100 \303\251\nend\n' "$good" > list
by_hand 0 pdf
by_hand 0 svg
by_hand 0 png
for wrong in '' 'evenhand-paper 2\npage 1 1\nend\n' "$good" "${good}end" \
    "${good}endless\nend\n" "${good}end\nmore\n" 'evenhand-paper 1\nend\n' \
    'evenhand-paper 1\nline 1 2 3 4 5 6\nend\n' \
    "${good}words 1 2 3 plain left 4 100 \\0377\nend\n" \
    "${good}words 1 2 3 plain left 4 100 a\\0000b\nend\n"; do
	printf '%b' "$wrong" > list
	by_hand 65 pdf
done
{
	printf '%b' "$good"
	for _ in 1 2 3 4 5 6 7 8 9 10 11 12 13 14; do
		echo 'page 21000 29700'
	done
	echo end
} > list
by_hand 73 png
by_hand 0 pdf
for words in '' wren.yaml 'pdf pdf'; do
	# shellcheck disable=SC2086
	"$paper" $words > "$work/out" 2> "$work/err" < /dev/null
	status_is $? 64 "evenhand-paper $words"
	one_sentence 'Start evenhand print instead.'
done
"$paper" --version > "$work/out"
is "its version" "$(cat "$work/out")" \
    "$("$EVENHAND" --version | sed 's/evenhand/evenhand-paper/')"
finish
