#!/bin/sh
# arrows.sh - which room may include which, read from the #include lines
#
# Pure rooms stand in one order and look only back along it; screen and paper
# see pure rooms, sound sees base to score, world sees all of these, command
# sees everything.  Pure rooms include nothing that knows time, locale, streams,
# threads or the outside world.  Prints each wrong arrow; fails on any.
set -eu
cd "${1-.}"

# may ROOM: into which rooms it may look, in $rooms
may()
{
	case $1 in
	base) rooms="base" ;;
	music) rooms="base music" ;;
	routine) rooms="base music routine" ;;
	score) rooms="base music routine score" ;;
	listen) rooms="base music routine score listen" ;;
	coach) rooms="base music routine score listen coach" ;;
	record) rooms="base music routine score listen coach record" ;;
	screen | paper) rooms="base music routine score listen coach $1" ;;
	sound) rooms="base music routine score sound" ;;
	world) rooms="base music routine score listen coach record screen paper sound world" ;;
	command) rooms="base music routine score listen coach record screen paper sound world command" ;;
	esac
}

# included PATTERN FOLDER...: each file and what it includes, in two words
included()
{
	pattern=$1
	shift
	grep -rE --include='*.[ch]' "^#include $pattern" "$@" |
	    sed 's,:#include [<"], ,; s,[>"].*,,' | sort
}

status=0
wrong()
{
	echo "$1"
	status=1
}

while read -r file to; do
	room=${file#src/}
	room=${room#include/evenhand/}
	room=${room%%/*}
	to=${to#evenhand/}
	to=${to%%/*}
	may "$room"
	case " $rooms " in
	*" $to "*) ;;
	*) wrong "$file: $room may not look into $to" ;;
	esac
done << END
$(included '"evenhand/' src/*/ include/evenhand)
END

while read -r file header; do
	case $header in
	assert.h | ctype.h | float.h | limits.h | math.h | stdalign.h | \
	stdarg.h | stdbool.h | stddef.h | stdint.h | stdlib.h | string.h | \
	inttypes.h | utf8proc.h) ;;
	stdio.h)
		[ "$file" = src/base/text.c ] ||
		    wrong "$file: text is made with evenhand/base/text.h, not stdio.h" ;;
	*) wrong "$file: a pure room may not include <$header>" ;;
	esac
done << END
$(included '<' src/*/ include/evenhand |
    grep -vE '^(src|include/evenhand)/(world|command|sound)/')
END

# What the audio callback may run sees no more than it needs.
while read -r file header; do
	case $header in
	assert.h | limits.h | math.h | stdalign.h | stdatomic.h | stdbool.h | \
	stddef.h | stdint.h | string.h) ;;
	*) wrong "$file: the audio callback's room may not include <$header>" ;;
	esac
done << END
$(included '<' src/sound include/evenhand/sound)
END

# One file knows each library of the outside world.
only()
{
	# shellcheck disable=SC2013
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
