# shellcheck shell=sh
# page.sh - a page of docs/ taken at its word; read after lib.sh
#
# A fence with a name behind the language, such as ```yaml wren.yaml, is a file.
# A ```console fence holds commands behind "$ ", each followed by what it prints
# on both outputs; a line "..." stands for any lines, or none.
# shellcheck disable=SC2154

# page_files PAGE: writes every file of a page here; their names into $work/names
page_files()
{
	awk -v names="$work/names" '
	inside && /^```$/ { close(inside); inside = ""; next }
	inside { print > inside; next }
	/^```[a-z]+ / { inside = $2; print inside > names; next }
	/^```/ { other = !other }
	END { exit inside != "" || other }' "$1" || fail "a fence is open in $1"
	is "names of files that stand twice" "$(sort "$work/names" | uniq -d)" ""
}

# page_consoles PAGE: every command of a page and what should come of it, as
# $work/console-NN.command and .wanted; how many into $work/consoles
page_consoles()
{
	awk -v base="$work/console-" '
	/^```console$/ { here = 1; next }
	here && /^```$/ { here = 0; next }
	here && /^\$ / {
		name = base sprintf("%02d", ++n)
		print substr($0, 3) > (name ".command")
		printf "" > (name ".wanted")
		next
	}
	here { print > (name ".wanted") }
	END { print n + 0 }' "$1" > "$work/consoles"
}

# like WANTED GOT: line for line the same, where "..." is any lines
like()
{
	awk '
	FILENAME == ARGV[1] { want[++w] = $0; next }
	{ got[++g] = $0 }
	END {
		# fits[j]: what is wanted from here on fits what came from j on.
		fits[g + 1] = 1
		for (i = w; i >= 1; i--) {
			if (want[i] == "...") {
				for (j = g; j >= 1; j--)
					fits[j] = fits[j] || fits[j + 1]
				continue
			}
			for (j = 1; j <= g; j++)
				fits[j] = got[j] == want[i] && fits[j + 1]
			fits[g + 1] = 0
		}
		exit !fits[1]
	}' "$1" "$2"
}

# page_says: runs every command in order and compares
page_says()
{
	# Called by what is read from the page.
	# shellcheck disable=SC2317
	evenhand()
	{
		"$EVENHAND" "$@"
	}
	for command in "$work"/console-*.command; do
		eval "$(cat "$command")" > "$work/out" 2>&1 < /dev/null
		if like "${command%.command}.wanted" "$work/out"; then
			ok "as it is told: $(cat "$command")"
		else
			fail "not as it is told: $(cat "$command")"
			diff "${command%.command}.wanted" "$work/out" |
			    sed 's/^/    /'
		fi
	done
}

# page_links PAGE: every link leads to a file, or to a heading
page_links()
{
	grep -o '](\(#\|[a-z.]\)[^)]*)' "$1" | sed 's/^](//; s/)$//' |
	    sort -u > "$work/links"
	while IFS='#' read -r file heading; do
		target=$1
		[ -z "$file" ] || target=$(dirname "$1")/$file
		so "a link leads to ${target##*/}" [ -f "$target" ]
		[ -z "$heading" ] || so "and to $heading" headed "$target" "$heading"
	done < "$work/links"
}

# headed PAGE HEADING: there is a heading of that name, as links write it
headed()
{
	sed -n 's/^##* //p' "$1" | tr 'A-Z ' 'a-z-' | tr -cd 'a-z0-9\n_-' |
	    grep -qxF -- "$2"
}
