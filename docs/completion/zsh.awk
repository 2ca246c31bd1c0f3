# The table of make.sh as functions for zsh.
function quoted(text) {
	gsub(/\047/, "\047\\\047\047", text)
	return text
}
function told(text) {
	gsub(/[\[\]:\\]/, "\\\\&", text)
	return quoted(text)
}
function takes(name, value) {
	if (name == "player")
		return ":player:_evenhand_players"
	if (name == "from" && value == "NAME")
		return ":routine:(" names ")"
	if (value == "FILE")
		return ":file:_files"
	if (value ~ /^[a-z0-9|]+$/) {
		gsub(/\|/, " ", value)
		return ":" name ":(" value ")"
	}
	return ":" tolower(value) ": "
}
$1 == "verb" {
	verbs = verbs sprintf("\t\t\047%s:%s\047\n", $2, told($3))
	on[$2] = $4
	word[$2] = $5
	order[++n] = $2
}
$1 == "option" {
	options[$2] = options[$2] sprintf(" \\\n\t    \047--%s%s[%s]%s\047", $3,
	    $4 == "" ? "" : "=", told($5), $4 == "" ? "" : takes($3, $4))
}
$1 == "alone" {
	alone = alone sprintf(" \047--%s[%s]\047", $2, told($4))
}
END {
	printf "_evenhand_routines=(%s)\n\n", names
	print "_evenhand_verbs()\n{\n\tlocal -a verbs=("
	printf "%s\t)\n\n\t_describe -t commands command verbs\n}\n", verbs
	for (i = 1; i <= n; i++) {
		verb = order[i]
		printf "\n_evenhand_%s()\n{\n\t_arguments \"$@\"%s", verb,
		    options[verb]
		if (word[verb] != "")
			printf " \\\n\t    \0471:what:(%s)\047", word[verb]
		if (on[verb] == "ROUTINE")
			printf " \\\n\t    \047*:routine:_evenhand_routine\047"
		if (on[verb] == "FILE")
			printf " \\\n\t    \047*:file:_evenhand_files\047"
		print "\n}"
	}
	printf "\n_evenhand_alone=(%s)\n\n", substr(alone, 2)
}
