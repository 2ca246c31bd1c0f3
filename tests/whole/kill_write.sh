#!/bin/sh
# kill_write.sh - sheets and tracks killed (SIGKILL) at random moments while they
# are written: the old file is there or the new one, whole, and no half of one
#
# KILLS says how often; 40 when it is not set.
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
kills=${KILLS:-40}

# killed FILE ARGUMENTS...: writes it again and again
killed()
{
	file=$1
	shift
	start=$(now_ms)
	run 0 "$@" -o "$file" --at 2026-03-02T17:00
	whole=$(($(now_ms) - start))
	mv "$file" "$work/new"
	echo old > "$work/old"
	cp "$work/old" "$file"
	i=0
	old=0
	new=0
	wrong=0
	while [ "$i" -lt "$kills" ]; do
		i=$((i + 1))
		cut_off $((whole + whole / 4 + 5)) "$@" -o "$file" --force \
		    --at 2026-03-02T17:00
		if cmp -s "$file" "$work/old"; then
			old=$((old + 1))
		elif cmp -s "$file" "$work/new"; then
			new=$((new + 1))
			cp "$work/old" "$file"
		else
			wrong=$((wrong + 1))
			ls -l "$file"
		fi
	done
	is "$file: $old times the old, $new times the new, else" "$wrong" 0
	so "some were stopped on the way" [ "$old" -gt 0 ]
	# Between the two steps of a replacement the new one, whole, may stay.
	for beside in "$file".*; do
		if [ -e "$beside" ] && ! cmp "$beside" "$work/new"; then
			fail "half of one stays beside it: $beside"
		fi
		rm -f "$beside"
	done
	is "nothing else is there" "$(find . -name "$file*" | tr '\n' ' ')" \
	    "./$file "
	rm "$file"
}

if [ -x "${EVENHAND%/*}/evenhand-paper" ]; then
	killed week.pdf print homework
	killed lesson.svg print lesson
else
	echo "skipped: there is no evenhand-paper here"
fi
if [ -x "${EVENHAND%/*}/evenhand-file" ]; then
	killed today.flac track
	killed today.wav track
else
	echo "skipped: there is no evenhand-file here"
fi
finish
