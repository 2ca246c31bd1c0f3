#!/bin/sh
# make.sh SHELL PROGRAM ROUTINE... - the completion of a shell, to stdout
#
# SHELL is bash, zsh or fish.  The commands, their options and what these take
# are read from the program's own --help, which is printed from the very tables
# that read the command line: so a completion never offers what is not there.
# A ROUTINE is a file that ships in the program, and its name is offered.
#
#	verb <Tab> name <Tab> what it does <Tab> what it works on <Tab> word first
#	option <Tab> verb <Tab> name <Tab> value <Tab> what it does
#	alone <Tab> name <Tab> <Tab> what it does	an option that comes first
set -eu
shell=$1
program=$2
shift 2
here=$(dirname "$0")
tab=$(printf '\t')

names=
for file do
	name=${file##*/}
	names="$names ${name%.yaml}"
done

# The lines of --help under a heading, as: first word, second or "", the rest.
# What does not stand in its column is a mistake that must not pass.
under()
{
	awk -v heading="$1" -v column="$2" '
	/^[^ ]/ { inside = $0 == heading; next }
	!inside || !/^  / { next }
	substr($0, column - 1, 1) != " " || substr($0, column, 1) == " " {
		print "!\t" $0
		next
	}
	{
		n = split(substr($0, 1, column - 1), word, " ")
		print word[1] "\t" (n > 1 ? word[2] : "") "\t" substr($0, column)
	}'
}

# What a verb works on: FILE, ROUTINE or nothing.
operand()
{
	case $("$program" "$1" --help | sed -n '1s/ -o FILE$//;1p') in
	*ROUTINE*) echo ROUTINE ;;
	*FILE* | *FOLDER*) echo FILE ;;
	esac
}

# The word that has to stand before that, if there is one.
word()
{
	"$program" "$1" --help | head -n 1 |
	    sed -n 's/.*\[options\] \([a-z|]*\) .*/\1/p' | tr '|' ' '
}

table()
{
	"$program" --help | under Commands: 14 |
	while IFS="$tab" read -r verb about; do
		printf 'verb\t%s\t%s\t%s\t%s\n' "$verb" "$about" \
		    "$(operand "$verb")" "$(word "$verb")"
		"$program" "$verb" --help | under Options: 28 |
		    sed "s/^--/option$tab$verb$tab/"
	done
	"$program" --help | under Options: 14 | grep -v '^--help' |
	    sed "s/^--/alone$tab/"
}

lines=$(table)
case $lines in
*"!$tab"*)
	echo "make.sh: a line of $program --help stands in no column:" >&2
	printf '%s\n' "$lines" | grep "!$tab" >&2
	exit 1 ;;
verb*option*alone*) ;;
*)
	echo "make.sh: $program tells no commands or no options" >&2
	exit 1 ;;
esac

printf '# Made from %s; do not change it here.\n' "$("$program" --version)" |
    if [ "$shell" = zsh ]; then
	echo '#compdef evenhand'
	cat
    else
	cat
    fi
printf '%s\n' "$lines" |
    awk -F '\t' -v names="${names# }" -f "$here/$shell.awk"
cat "$here/evenhand.$shell"
