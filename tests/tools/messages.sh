#!/bin/sh
# messages.sh - every sentence of the lists is said somewhere
#
# An id counts as said where src or include names it outside the lists.  Of a
# row of numbered ones (M_ROUTINE_1, M_ROUTINE_2, ...) naming the first will do:
# code adds to it.  Prints each id that nobody says; fails on any.
set -eu
cd "${1-.}"

lists=include/evenhand/base/messages
said=$(find src include -name '*.[ch]' ! -path "$lists/*" \
    -exec grep -hoE '\bM_[A-Z0-9_]+' {} + | sort -u)
[ -n "$said" ]
sed -n 's/^MESSAGE(\(M_[A-Z0-9_]*\),.*/\1/p' "$lists"/*.h |
    awk -v said="$said" '
	BEGIN {
		n = split(said, id, "\n")
		for (i = 1; i <= n; i++)
			is_said[id[i]] = 1
	}
	{
		first = $0
		sub(/_[0-9]+$/, "_1", first)
		if (!is_said[$0] && !is_said[first]) {
			print "nobody says " $0
			wrong = 1
		}
	}
	END { exit wrong || NR == 0 }'
