#!/bin/sh
# test_language.sh - the language and the signs of the person before it: where
# catalogues are found, which of their sentences are said, and what never changes
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

if ! command -v msgfmt > "$work/quiet"; then
	echo "skipped: msgfmt is not here"
	finish
fi
cp "$root/routines/cello.yaml" .
printf '0:26 clean\n- forward\n' > keys
session 2026-03-02T17:00 keys cello.yaml
status_is $? 0 "a session to look back on"

# --- a locale of our own, so that nothing hangs on what is installed --------------
if localedef -i de_DE -f UTF-8 "$work/de_DE.UTF-8" > "$work/quiet" 2>&1; then
	german=de_DE.UTF-8
else
	echo "skipped: localedef cannot make a German locale here"
	finish
fi
export LOCPATH="$work"
unset LANGUAGE LANG LC_MESSAGES LC_TIME LC_NUMERIC LC_CTYPE

# --- a catalogue of our own ---------------------------------------------------------
# One sentence is good; the others must not be said.
cat > some.po <<'END'
msgid ""
msgstr "Content-Type: text/plain; charset=UTF-8\n"

msgctxt "M_COMMAND_USAGE"
msgid "Usage:"
msgstr "Aufruf, übersetzt:"

msgctxt "M_HISTORY_DAY"
msgid "{0}: {1} in {2} {2|session|sessions}."
msgstr "{0}: {1}, {2} {2|Sitzung|Sitzungen}, {3}."

msgctxt "M_COMMAND_OPTION_HELP"
msgid "say this, but in words of long ago"
msgstr "veraltet"

msgctxt "M_COMMAND_OPTION_VERSION"
msgid "say which version this is"
msgstr "Glocke\a"
END
place=$work/there
mkdir -p "$place/bin" "$place/share/locale/de/LC_MESSAGES"
cp "$EVENHAND" "$place/bin/evenhand"
msgfmt -o "$place/share/locale/de/LC_MESSAGES/evenhand.mo" some.po
so "the words are the program's own" grep -qF "say which version this is" \
    "$root/include/evenhand/base/messages/command.h"

# there VARIABLE=VALUE... ARGUMENTS...: the program in its new place
there()
{
	env "$@" > "$work/out" 2> "$work/err" < /dev/null
	status_is $? 0 "$*"
}

program=$place/bin/evenhand
there LC_ALL=C LANGUAGE=de "$program" --help
has "$work/out" 'Usage:'
there LC_ALL=nowhere LANGUAGE=de "$program" --help
has "$work/out" 'Usage:'
there LC_ALL="$german" "$program" --help
has "$work/out" 'Aufruf, übersetzt:'
has "$work/out" '  --help     say this'
has "$work/out" '  --version  say which version this is'
# The words of one language, the dates of another.
there LC_ALL= LANG=C LC_CTYPE="$german" LC_MESSAGES="$german" "$program" \
    history
has "$work/out" '2026-03-02: '
there LC_ALL="$german" "$program" history
has "$work/out" '02.03.2026: '
has "$work/out" ' in 1 session.'

# Beside a program that was only built; and one that is no catalogue.
mkdir -p "$work/built/locale"
cp "$EVENHAND" "$work/built/evenhand"
cp -R "$place/share/locale/de" "$work/built/locale/de"
there LC_ALL="$german" "$work/built/evenhand" --help
has "$work/out" 'Aufruf, übersetzt:'
for bytes in 'no catalogue' '\0336\0022\0004\0225\0000\0377\0377\0377'; do
	printf %b "$bytes" > "$work/built/locale/de/LC_MESSAGES/evenhand.mo"
	there LC_ALL="$german" "$work/built/evenhand" --help
	has "$work/out" 'Usage:'
done

# --- what programs read is the same everywhere ----------------------------------------
# same ARGUMENTS...: what is printed does not hang on the locale
same()
{
	LC_ALL=C "$EVENHAND" "$@" > english 2> "$work/err" < /dev/null
	status_is $? 0 "English: $*"
	LC_ALL=$german "$EVENHAND" "$@" > other 2> "$work/err" < /dev/null
	status_is $? 0 "German: $*"
	so "the same: $*" cmp english other
	so "and something" [ -s english ]
}

run 0 give --initials W. -o wren.record
run 0 gather --class class wren.record
same today --json --at 2026-03-03T17:00 cello.yaml
same history --json
same history --csv
same class class --json --at 2026-03-03T17:00
same class class --csv --at 2026-03-03T17:00

# as_in_english NAME ARGUMENTS...: what goes into a file does not either
as_in_english()
{
	file=$1
	shift
	LC_ALL=C "$EVENHAND" "$@" "english-$file" > "$work/out" 2> "$work/err" \
	    < /dev/null
	status_is $? 0 "English: $* $file"
	LC_ALL=$german "$EVENHAND" "$@" "$file" > "$work/out" 2> "$work/err" \
	    < /dev/null
	status_is $? 0 "German: $* $file"
	so "the same: $file" cmp "english-$file" "$file"
}

as_in_english mine.yaml new
as_in_english w.record give --at 2026-03-03T17:00 -o
# A sheet has words, but its places have points.
if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
	LC_ALL=$german "$EVENHAND" print homework cello.yaml -o week.svg \
	    > "$work/out" 2> "$work/err" < /dev/null
	status_is $? 0 "a sheet as SVG"
	so "with decimals" grep -q '="[0-9]*[.][0-9]*"' week.svg
	is "and none with a comma" "$(grep -c '="[0-9]*,[0-9]*"' week.svg)" 0
fi

# A routine is read as before, and a fault says numbers as they are written there.
tiny tiny.yaml
sed 's/minutes: 0.5/minutes: 30.5/' tiny.yaml > long.yaml
LC_ALL=$german "$EVENHAND" check long.yaml > "$work/out" 2> "$work/err" \
    < /dev/null
has "$work/err" 'long.yaml:'
has "$work/err" '30.5 '

# --- all of it in German: a routine whose words are German -------------------------
# german ARGUMENTS...: the program, in German
german()
{
	LC_ALL=$german "$EVENHAND" "$@" > "$work/out" 2> "$work/err" < /dev/null
	status_is $? 0 "German: $*"
}

if [ ! -e "${EVENHAND%/*}/locale/de/LC_MESSAGES/evenhand.mo" ]; then
	echo "skipped: there is no German beside the program"
	finish
fi
german new lagen.yaml --from cello-deutsch
german today --at 2026-03-02T17:00 lagen.yaml
has "$work/out" 'Heute: Erste bis vierte Lage, Tag 1. Es endet bei 4:36.'
german --player Amsel --lines --clock fast --at 2026-03-02T17:00 \
    --script keys lagen.yaml
has "$work/out" 'Arbeit: Erste bis vierte Lage, 4 Pulse.'
has "$work/out" 'ARM FÜHRT, Finger 1.'
if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
	german print homework lagen.yaml -o lagen.pdf
	pdftotext lagen.pdf words
	for text in Hausaufgabe 'Cello, Mensur 635 mm vom Sattel zum Steg' \
	    'ARM FÜHRT' 'D-Saite'; do
		has words "$text"
	done
	for note in Fis H B; do
		so "the note $note" grep -qwF "$note" words
	done
	is "no F#" "$(grep -cF 'F#' words)" 0
	# The sheet for the lesson speaks to who teaches.
	german print lesson lagen.yaml --player Amsel --at 2026-03-03T17:00 \
	    -o stunde.pdf
	pdftotext stunde.pdf - | tr '\n' ' ' > words
	has words 'Bei „Erste bis vierte Lage“ bleiben: '
	is "nobody is told to stay" "$(grep -c 'Bleib' words)" 0
fi
if [ -x "${EVENHAND%/*}/evenhand-file" ]; then
	german track --at 2026-03-02T17:00 lagen.yaml -o lagen.wav
	has "$work/out" 'lagen.wav ist geschrieben: 4:36 lang'
fi
finish
