#!/bin/sh
# cover.sh BUILD - which lines of src the tests went through, from what gcc's
# --coverage left in a build: a line for each file with the lines that nobody
# went through, and one for each room.  A file that nothing was linked with
# counts, too.
set -eu
find "$1/src" -name '*.gcno' | sort |
    LC_ALL=C xargs gcov --stdout --relative-only 2> "$1/cover.log" |
    awk '
function missed_to(line)
{
	if (first && last == line - 1)
		last = line
	else {
		told()
		first = last = line
	}
}
function told()
{
	if (first)
		missing = missing " " first (last > first ? "-" last : "")
	first = 0
}
function done()
{
	if (!file)
		return
	told()
	split(file, part, "/")
	room = part[3] ? part[2] : "(main)"
	lines[room] += all
	through[room] += seen
	if (all)
		printf "%-12s %6.1f %% of %4d  %s%s\n", room, 100 * seen / all, all,
		    file, missing
	file = ""
}
{
	count = $0
	sub(/:.*/, "", count)
	line = $0
	sub(/^[^:]*: */, "", line)
	sub(/:.*/, "", line)
}
line == 0 && /:Source:/ {
	done()
	file = $0
	sub(/.*:Source:/, "", file)
	if (file !~ /^src\/.*\.c$/)
		file = ""
	all = seen = first = 0
	missing = ""
}
line > 0 && count !~ /-/ {
	all++
	if (count ~ /#|=/)
		missed_to(line + 0)
	else
		seen++
}
END {
	done()
	for (room in lines)
		printf "%-12s %6.1f %% of %4d  all of it\n", room,
		    100 * through[room] / lines[room], lines[room]
}' | sort -k 1,1 -k 5,5
