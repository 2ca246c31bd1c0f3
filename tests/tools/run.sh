#!/bin/sh
# run.sh PROGRAM... - runs test programs, shows what failed, counts
#
# A program is a unit test of cmocka or a script that drives the real binary; it
# passes when it exits with 0.  A line that begins with "skipped: " is shown; it
# says what could not be tried on this computer, and with SKIP=no in the
# environment that counts as failed.  NAME runs only those whose path holds it.
# JOBS run at a time, one if left out; what is told of one is told in one piece.
# UNDER is a command that is to run them.  What failed is told once more behind
# the count, in few lines, for those who see only the end of a long log.
set -u

# failing FILE: the lines of a log that say what failed, and what explains them
failing()
{
	awk '
	/^ok / { more = 0; next }
	/^BAD |FAILED|ERROR|[Ee]rror: |Sanitizer|[Aa]ssert|^skipped: |^==[0-9]+==/ {
		more = 4
		print
		next
	}
	/^\[/ { more = 0 }
	more-- > 0 { print }' "$1" | cut -c 1-200 > "$1.failing"
	[ -s "$1.failing" ] || tail -n 15 "$1" > "$1.failing"
	sed -n 's/^/      /; 1,40p' "$1.failing"
}

# one DIRECTORY PROGRAM: runs it; its report and whether it was good are files
one()
{
	log=$(mktemp "$1/log.XXXXXX") || exit 2
	start=$(date +%s)
	# Several words, on purpose.
	# shellcheck disable=SC2086
	if ${UNDER-} "$2" > "$log" 2>&1 < /dev/null; then
		skipped=$(grep -c '^skipped: ' "$log")
		tests=$(grep -cE '^\[ +OK \]|^ok ' "$log")
		verdict=good
		{
			printf 'good  %s (%s checks, %s s)\n' "$2" "$tests" \
			    "$(($(date +%s) - start))"
			grep '^skipped: ' "$log" | sed 's/^/      /'
			if [ $((tests + skipped)) -eq 0 ] ||
			    { [ "$skipped" -gt 0 ] && [ "${SKIP-}" = no ]; }; then
				echo "      ... not all was checked, so it counts as failed"
				echo 'skipped: not all was checked' >> "$log"
				verdict=BAD
			fi
		} > "$log.report"
	else
		verdict=BAD
		{
			printf 'BAD   %s\n' "$2"
			sed 's/^/      /' "$log"
		} > "$log.report"
	fi
	echo "$verdict $2" > "$log.verdict"
	tell "$1" "$log.report"
}

# tell DIRECTORY FILE: in one piece, whoever else has something to tell
tell()
{
	tries=0
	until mkdir "$1/telling" 2> "$1/quiet"; do
		tries=$((tries + 1))
		# Who was killed while telling does not hold up the others.
		[ "$tries" -lt 100 ] || break
		sleep 0.1
	done
	cat "$2"
	rmdir "$1/telling" 2> "$1/quiet"
}

# again PROGRAM: if it did not pass, its name and why
again()
{
	verdict=$(grep -lxF -e "good $1" -e "BAD $1" "$reports"/*.verdict)
	if [ -z "$verdict" ]; then
		printf 'BAD   %s\n      ended from outside\n' "$1"
	elif ! grep -q '^good ' "$verdict"; then
		printf 'BAD   %s\n' "$1"
		failing "${verdict%.verdict}"
	fi
}

if [ "${1-}" = --one ]; then
	one "$2" "$3"
	exit 0
fi
reports=$(mktemp -d) || exit 2
trap 'rm -rf "$reports"' EXIT
trap 'exit 1' INT TERM HUP
for program do
	case $program in
	*"${NAME-}"*) ;;
	*) continue ;;
	esac
	printf '%s\n' "$program"
done > "$reports/programs"
asked=$(wc -l < "$reports/programs" | tr -d ' ')
xargs -P "${JOBS:-1}" -n 1 sh "$0" --one "$reports" < "$reports/programs"
passed=$(cat "$reports"/*.verdict 2> "$reports/quiet" | grep -c '^good ')
# One that left no verdict was ended from outside: it did not pass.
failed=$((asked - passed))
printf '%d passed, %d failed\n' "$passed" "$failed"
while read -r program; do
	again "$program" 2> "$reports/quiet"
done < "$reports/programs"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
