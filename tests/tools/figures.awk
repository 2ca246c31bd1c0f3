# figures.awk - the lines that tests/bench prints, as one table
#
# part NAME; figure WHAT GOAL VALUE UNIT; beside WHAT WHO VALUE: set apart by
# tabs.  A line without a tab is told as it stands.

# short(X): as many places as tell something
function short(x, size)
{
	size = x < 0 ? -x : x
	return sprintf(size >= 1000 ? "%.0f" : size >= 100 ? "%.1f" : \
	    size >= 1 || size == 0 ? "%.2f" : "%.3f", x)
}

# good(VALUE, SIGN, GOAL)
function good(value, sign, goal)
{
	return sign == "<" ? value < goal : sign == "<=" ? value <= goal : \
	    sign == ">" ? value > goal : sign == ">=" ? value >= goal : \
	    value == goal
}

BEGIN {
	FS = "\t"
	rest = "s  %8s %9s  %-13s %7s %1s  %s"
}

$1 == "part" {
	kind[++n] = "part"
	what[n] = $2
	next
}

$1 == "figure" {
	kind[++n] = "figure"
	what[n] = $2
	goal[n] = $3
	value[n] = $4
	unit[n] = $5
	row[$2] = n
	next
}

$1 == "beside" {
	at = row[$2]
	if (!at) {
		at = row[$2] = ++n
		kind[n] = "figure"
		what[n] = $2
	}
	who[at] = $3
	peer[at] = $4
	next
}

{
	kind[++n] = "line"
	what[n] = $0
}

END {
	for (i = 1; i <= n; i++)
		if (kind[i] == "figure" && length(what[i]) > widest)
			widest = length(what[i])
	form = "%-" widest rest
	printf form "\n", "", "goal", "measured", "", "of goal", "", "beside it"
	for (i = 1; i <= n; i++) {
		if (kind[i] != "figure") {
			print kind[i] == "part" ? "-- " what[i] : what[i]
			continue
		}
		share = mark = other = ""
		if (split(goal[i], word, " ") == 2) {
			goals++
			if (word[2] != 0)
				share = short(value[i] / word[2])
			if (good(value[i] + 0, word[1], word[2] + 0))
				met++
			else
				mark = "!"
		}
		if (i in who) {
			other = who[i] " " short(peer[i])
			if (peer[i] != 0 && i in value)
				other = other ", " short(value[i] / peer[i]) " of it"
		}
		line = sprintf(form, what[i], goal[i], (i in value) ? short(value[i]) : "", \
		    unit[i], share, mark, other)
		sub(/ +$/, "", line)
		print line
	}
	printf "%d of %d goals met; %s\n", met, goals, met == goals ? \
	    "none missed" : goals - met " missed, marked !"
}
