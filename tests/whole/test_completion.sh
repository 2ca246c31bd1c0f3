#!/bin/sh
# test_completion.sh - what the shells offer behind "evenhand", asked of real
# shells; zsh and fish where they are installed
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# shellcheck source=tests/whole/completion.sh
. "$root/tests/whole/completion.sh"

# A help that is laid out otherwise is not read by guessing.
cat > "$work/odd" <<-'END'
	#!/bin/sh
	printf 'Commands:\n  check  far too near\n\nOptions:\n  --help  x\n'
	END
chmod +x "$work/odd"
so "an odd help is refused" sh -c "! sh '$root/docs/completion/make.sh' bash \
    '$work/odd' > '$work/out' 2> '$work/err'"
has "$work/err" "stands in no column"

# The options of a verb, as it tells them itself.
told()
{
	"$EVENHAND" "$@" --help | sed -n 's/^  \(--[a-z-]*\).*/\1/p' | sort |
	    tr '\n' ' '
}

so "there are verbs" [ "$(echo "$verbs" | wc -l)" -ge 5 ]

# --- bash -----------------------------------------------------------------

# offered WORD...: what bash offers for the last of the words, in order
offered()
{
	bash -c '. "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1))
	    _evenhand; printf "%s\n" "${COMPREPLY[@]}"' bash \
	    "$work/evenhand.bash" "$@" 2> /dev/null | sort | tr '\n' ' '
}

so "shellcheck knows nothing against it" sh -c \
    "! command -v shellcheck > /dev/null || \
    shellcheck -s bash '$work/evenhand.bash'"
for verb in $verbs; do
	is "bash, options of $verb" "$(offered evenhand "$verb" --)" \
	    "$(told "$verb")"
	# And what is offered is taken.
	for option in $(told "$verb"); do
		"$EVENHAND" "$verb" "$option" --help > "$work/out" \
		    2> "$work/err" < /dev/null
		so "$verb takes $option" \
		    [ "$(grep -c 'I do not know' "$work/err")" = 0 ]
	done
done
for verb in $verbs; do
	case " $(offered evenhand '') " in
	*" $verb "*) ok "bash offers $verb" ;;
	*) fail "bash does not offer $verb" ;;
	esac
done
is "bash, without a command" "$(offered evenhand --m)" \
    "$(told practise | tr ' ' '\n' | grep '^--m' | tr '\n' ' ')"
is "bash, the first word" "$(offered evenhand --v)" "--version "
is "bash, a later word" "$(offered evenhand practise --v)" " "
is "bash, a verb" "$(offered evenhand che)" "check "
is "bash, routines and files" "$(offered evenhand practise l)" "lesson.yaml "
is "bash, a routine of ours" "$(offered evenhand today viol)" \
    "viola viola-homework violin violin-homework "
is "bash, files of check" "$(offered evenhand check '')" \
    "inner lesson.yaml other.yml "
is "bash, in a folder" "$(offered evenhand check inner/)" "inner/deep.yaml "
is "bash, no files for history" "$(offered evenhand history '')" " "
is "bash, marking" "$(offered evenhand --marking '')" "round turn "
is "bash, marking begun" "$(offered evenhand today --marking t)" "turn "
is "bash, marking with =" "$(offered evenhand --marking =)" "round turn "
is "bash, marking with = begun" "$(offered evenhand --marking = r)" "round "
is "bash, the clock" "$(offered evenhand --clock '')" "fast "
is "bash, a time is not guessed" "$(offered evenhand --at '')" " "
is "bash, players" "$(offered evenhand --player '')" 'Ann\ Lee Wren '
is "bash, players of a verb" "$(offered evenhand history --player W)" "Wren "
is "bash, a routine to begin from" "$(offered evenhand new --from cel)" \
    "cello cello-deutsch cello-deutsch-homework cello-homework "
is "bash, a day is not guessed" "$(offered evenhand history --from '')" " "
is "bash, any file as a script" "$(offered evenhand --script k)" "keys.txt "
is "bash, a sheet" "$(offered evenhand print ho)" "homework "
is "bash, the sheets" "$(offered evenhand print '' | tr ' ' '\n' |
    grep -xc -e homework -e lesson -e class)" 3
is "bash, a routine for it" "$(offered evenhand print homework oth)" \
    "other.yml "
is "bash, its paper" "$(offered evenhand print --paper '')" "a4 letter "
is "bash, behind --" "$(offered evenhand check -- le)" "lesson.yaml "
mkdir -p "$work/data/evenhand"
touch "$work/data/evenhand/player-Zoe.db"
is "bash, players elsewhere" \
    "$(XDG_DATA_HOME=$work/data offered evenhand --player '')" "Zoe "
is "bash, a folder that is no whole path" \
    "$(XDG_DATA_HOME=data offered evenhand --player W)" "Wren "

# --- fish -----------------------------------------------------------------

fish_offers()
{
	fish --no-config -c "source $work/evenhand.fish; complete -C '$1'" |
	    cut -f1 | sort | tr '\n' ' '
}

if command -v fish > /dev/null; then
	for verb in $verbs; do
		is "fish, options of $verb" "$(fish_offers "evenhand $verb --")" \
		    "$(told "$verb")"
	done
	is "fish, a verb" "$(fish_offers "evenhand che")" "check "
	is "fish, no verb twice" "$(fish_offers "evenhand today histo")" ""
	is "fish, the first word" "$(fish_offers "evenhand --ver")" "--version "
	is "fish, a later word" "$(fish_offers "evenhand today --ver")" ""
	is "fish, marking" "$(fish_offers "evenhand --marking ")" "round turn "
	is "fish, marking with =" "$(fish_offers "evenhand today --marking=t")" \
	    "--marking=turn "
	is "fish, players" "$(fish_offers "evenhand history --player ")" \
	    "Ann Lee Wren "
	is "fish, files" "$(fish_offers "evenhand check ")" \
	    "inner/ lesson.yaml other.yml "
	is "fish, a routine of ours" "$(fish_offers "evenhand today viol")" \
	    "viola viola-homework violin violin-homework "
	is "fish, a routine to begin from" \
	    "$(fish_offers "evenhand new --from cel")" \
	    "cello cello-deutsch cello-deutsch-homework cello-homework "
	is "fish, a day is not guessed" \
	    "$(fish_offers "evenhand history --from ")" ""
	is "fish, any file as a script" "$(fish_offers "evenhand --script k")" \
	    "keys.txt "
	is "fish, a sheet" "$(fish_offers "evenhand print ho")" "homework "
	is "fish, no files for history" "$(fish_offers "evenhand history ")" ""
else
	echo "skipped: fish is not installed"
fi

finish
