# The table of make.sh as lines for fish.
function told(text) {
	gsub(/[\\\047]/, "\\\\&", text)
	return text
}
function takes(name, value) {
	if (name == "player")
		return " -x -a \047(__evenhand_players)\047"
	if (name == "from" && value == "NAME")
		return " -x -a \047" names "\047"
	if (value == "FILE")
		return " -r -F"
	if (value ~ /^[a-z0-9|]+$/) {
		gsub(/\|/, " ", value)
		return " -x -a \047" value "\047"
	}
	return value == "" ? "" : " -x"
}
$1 == "verb" {
	verbs = verbs " " $2
	rules = rules sprintf("complete -c evenhand -n __evenhand_first" \
	    " -a %s -d \047%s\047\n", $2, told($3))
	if ($5 != "")
		rules = rules sprintf("complete -c evenhand -n " \
		    "\047__evenhand_in %s\047 -a \047%s\047\n", $2, $5)
	if ($4 == "ROUTINE")
		rules = rules sprintf("complete -c evenhand -n " \
		    "\047__evenhand_in %s\047 -a \047%s\047 -d routine\n", $2,
		    names)
	if ($4 != "")
		rules = rules sprintf("complete -c evenhand -n " \
		    "\047__evenhand_in %s\047 -a \047(__evenhand_files)\047\n",
		    $2)
}
$1 == "option" {
	rules = rules sprintf("complete -c evenhand -n \047__evenhand_in %s\047" \
	    " -l %s%s -d \047%s\047\n", $2, $3, takes($3, $4), told($5))
}
$1 == "alone" {
	rules = rules sprintf("complete -c evenhand -n __evenhand_first" \
	    " -l %s -d \047%s\047\n", $2, told($4))
}
END {
	printf "set -g __evenhand_verbs%s\n\n", verbs
	printf "complete -c evenhand -f\n%s\n", rules
}
