#!/bin/sh
# kill_write.sh - sheets and tracks killed (SIGKILL) at random moments while they
# are written: the old file is there or the new one, whole, and no half of one
#
# KILLS says how often; 40 when it is not set.
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
kills=${KILLS:-40}

now_ms()
{
	echo $(($(date +%s%N) / 1000000))
}

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
		random=$(od -An -N2 -tu2 /dev/urandom | tr -d ' ')
		delay=$((random % (whole + whole / 4 + 5)))
		"$EVENHAND" "$@" -o "$file" --force --at 2026-03-02T17:00 \
		    > "$work/out" 2> "$work/err" < /dev/null &
		pid=$!
		sleep "$(printf '%d.%03d' $((delay / 1000)) $((delay % 1000)))"
		kill -KILL "$pid" 2> "$work/quiet"
		wait "$pid" 2> "$work/quiet"
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

killed week.pdf print homework
killed lesson.svg print lesson
if [ -x "${EVENHAND%/*}/evenhand-file" ]; then
	killed today.flac track
	killed today.wav track
fi
finish
