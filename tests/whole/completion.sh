# shellcheck shell=sh
# completion.sh - the completions made from the program under test, and a
# folder with what they may offer; behind lib.sh
# shellcheck disable=SC2034,SC2154
for shell in bash zsh fish; do
	so "made for $shell" sh -c \
	    "sh '$root/docs/completion/make.sh' $shell '$EVENHAND' \
	    '$root'/routines/*.yaml > '$work/evenhand.$shell'"
done

mkdir -p "$journals" inner
touch "$journals/player-Wren.db" "$journals/player-Ann Lee.db" \
    "$journals/journal.db" lesson.yaml other.yml keys.txt inner/deep.yaml

verbs=$("$EVENHAND" --help | awk '/^Commands:/ { on = 1; next } /^$/ { on = 0 }
	on { print $1 }')
