#!/bin/sh
# shellcheck disable=SC2013
# arrows.sh - which room may include which, read from the #include lines
#
# Pure rooms stand in one order and look only back along it; screen and paper
# see pure rooms, sound sees base to score, world sees all of these, command
# sees everything.  Pure rooms include nothing that knows time, locale, streams,
# threads or the outside world.  Prints each wrong arrow; fails on any.
set -eu
cd "${1-.}"

allowed()
{
	case $1 in
	base) echo base ;;
	music) echo base music ;;
	routine) echo base music routine ;;
	score) echo base music routine score ;;
	listen) echo base music routine score listen ;;
	coach) echo base music routine score listen coach ;;
	record) echo base music routine score listen coach record ;;
	screen | paper) echo base music routine score listen coach "$1" ;;
	sound) echo base music routine score sound ;;
	world) echo base music routine score listen coach record screen paper sound world ;;
	command) echo base music routine score listen coach record screen paper sound world command ;;
	esac
}

status=0
wrong()
{
	echo "$1"
	status=1
}

files=$(find src include/evenhand -name '*.[ch]' ! -path 'src/main*.c' | sort)
for file in $files; do
	room=$(echo "$file" | sed 's,^src/,,; s,^include/evenhand/,,; s,/.*,,')
	for to in $(sed -n 's,^#include "evenhand/\([a-z]*\)/.*,\1,p' "$file" | sort -u); do
		case " $(allowed "$room") " in
		*" $to "*) ;;
		*) wrong "$file: $room may not look into $to" ;;
		esac
	done
	case $room in
	world | command | sound) continue ;;
	esac
	for header in $(sed -n 's,^#include <\(.*\)>.*,\1,p' "$file"); do
		case $header in
		assert.h | ctype.h | float.h | limits.h | math.h | stdalign.h | \
		stdarg.h | stdbool.h | stddef.h | stdint.h | stdlib.h | string.h | \
		inttypes.h | utf8proc.h) ;;
		stdio.h)
			[ "$file" = src/base/text.c ] ||
			    wrong "$file: text is made with evenhand/base/text.h, not stdio.h" ;;
		*) wrong "$file: a pure room may not include <$header>" ;;
		esac
	done
done

# What the audio callback may run sees no more than it needs.
for file in $(find src/sound include/evenhand/sound -name '*.[ch]' | sort); do
	for header in $(sed -n 's,^#include <\(.*\)>.*,\1,p' "$file"); do
		case $header in
		assert.h | limits.h | math.h | stdalign.h | stdatomic.h | stdbool.h | \
		stddef.h | stdint.h | string.h) ;;
		*) wrong "$file: the audio callback's room may not include <$header>" ;;
		esac
	done
done

# One file knows each library of the outside world.
only()
{
	for file in $(grep -lE "^#include <$1>" -r src include | sort); do
		# The name is a pattern on purpose.
		# shellcheck disable=SC2254
		case $file in
		$2) ;;
		*) wrong "$file: only $2 may include <$1>" ;;
		esac
	done
}
only yaml.h 'src/world/yaml.c'
only sqlite3.h 'src/world/journal*'
only 'n?curses.h' 'src/world/terminal.c'
only portaudio.h 'src/world/portaudio*.c'
only libintl.h 'src/world/gettext.c'
only sndfile.h 'src/world/sndfile_*.c'
only utf8proc.h 'src/base/text*.c'
only '(cairo|pango)[^>]*' 'src/world/cairo*'

exit $status
