# The table of make.sh as functions for bash.
# What an option takes: words to choose from, a kind of name, or a file.
function takes(name, value) {
	if (value == "")
		return ""
	if (name == "player")
		return "player"
	if ((name == "from" || name == "routine") && value == "NAME")
		return "routine"
	if (value == "FILE")
		return "file"
	if (value ~ /^[a-z0-9|]+$/) {
		gsub(/\|/, " ", value)
		return "words " value
	}
	return "other"
}
$1 == "verb" {
	verbs = verbs " " $2
	on[$2] = $5 ($5 == "" ? "" : " ") $4
	order[++n] = $2
}
$1 == "option" {
	options[$2] = options[$2] " --" $3
	if ($4 != "")
		values = values sprintf("\t%s:--%s) echo \"%s\" ;;\n", $2, $3,
		    takes($3, $4))
}
$1 == "alone" {
	alone = alone " --" $2
}
END {
	printf "_evenhand_alone=\"%s\"\n", substr(alone, 2)
	printf "_evenhand_verbs=\"%s\"\n", substr(verbs, 2)
	printf "_evenhand_routines=\"%s\"\n\n", names
	print "_evenhand_options()\n{\n\tcase $1 in"
	for (i = 1; i <= n; i++)
		printf "\t%s) echo \"%s\" ;;\n", order[i],
		    substr(options[order[i]], 2)
	print "\tesac\n}\n\n_evenhand_takes()\n{\n\tcase $1 in"
	printf "%s", values
	print "\tesac\n}\n\n_evenhand_works_on()\n{\n\tcase $1 in"
	for (i = 1; i <= n; i++)
		printf "\t%s) echo \"%s\" ;;\n", order[i], on[order[i]]
	print "\tesac\n}\n"
}
