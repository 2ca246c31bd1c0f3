#!/bin/sh
# run.sh PROGRAM... - runs test programs, shows what failed, counts
#
# A program is a unit test of cmocka or a script that drives the real binary; it
# passes when it exits with 0.  A line that begins with "skipped: " is shown; it
# says what could not be tried on this computer, and with SKIP=no in the
# environment that counts as failed.  NAME runs only those whose path holds it.
set -u
passed=0
failed=0
log=$(mktemp)
trap 'rm -f "$log"' EXIT
for program do
	case $program in
	*"${NAME-}"*) ;;
	*) continue ;;
	esac
	start=$(date +%s)
	if "$program" > "$log" 2>&1 < /dev/null; then
		passed=$((passed + 1))
		skipped=$(grep -c '^skipped: ' "$log")
		tests=$(grep -cE '^\[ +OK \]|^ok ' "$log")
		printf 'good  %s (%s checks, %s s)\n' "$program" "$tests" \
		    "$(($(date +%s) - start))"
		grep '^skipped: ' "$log" | sed 's/^/      /'
		if [ $((tests + skipped)) -eq 0 ] ||
		    { [ "$skipped" -gt 0 ] && [ "${SKIP-}" = no ]; }; then
			echo "      ... not all was checked, so it counts as failed"
			passed=$((passed - 1))
			failed=$((failed + 1))
		fi
	else
		failed=$((failed + 1))
		printf 'BAD   %s\n' "$program"
		sed 's/^/      /' "$log"
	fi
done
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
