#!/bin/sh
# size.sh - the budget: a function of ours is under 60 lines, a file under 350
set -eu
cd "${1-.}"
status=0
for file in $(find src include/evenhand tests -name '*.[ch]' | sort); do
	lines=$(wc -l < "$file")
	case $file in
	tests/* | include/evenhand/base/messages/*) limit=900 ;;
	*) limit=350 ;;
	esac
	if [ "$lines" -gt "$limit" ]; then
		echo "$file: $lines lines, the budget is $limit. Split it by idea"
		status=1
	fi
done
for file in $(find src -name '*.c' | sort); do
	awk -v file="$file" '
	/^{/ { start = NR }
	/^}/ { if (start && NR - start - 1 > 60) {
		printf "%s:%d: %d lines in one function, the budget is 60\n",
		    file, start, NR - start - 1; bad = 1 } start = 0 }
	END { exit bad }' "$file" || status=1
done
exit $status
