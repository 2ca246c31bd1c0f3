#!/bin/sh
# test_settings.sh - the settings file and the real binary: what it says counts,
# the command line counts more and is remembered, and no fault of it stops a
# practice
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
unset XDG_CONFIG_HOME
config=$HOME/.config/evenhand
file=$config/settings.yaml
tiny tiny.yaml
printf -- '- forward\n- forward\n' > keys.txt

settings()
{
	mkdir -p "$config"
	printf '%b' "$1" > "$file"
}

# practise ARGUMENTS...: a whole session with nobody at the keys, not a script
practise()
{
	printf '\n\n' | "$EVENHAND" --lines --clock fast --silent \
	    --at 2026-03-02T17:00 "$@" tiny.yaml > "$work/out" 2> "$work/err"
	status_is $? 0 "practise $*"
}

# --- nothing chosen -------------------------------------------------------

practise
has "$work/out" "After each round: forward all clean"
so "nothing is written unasked" [ ! -e "$config" ]
is "nothing on standard error" "$(cat "$work/err")" ""

# --- a choice is remembered -----------------------------------------------

practise --marking turn
has "$work/out" "After each turn: forward is clean"
so "it is written" grep -qx 'marking: turn' "$file"
is "for its owner alone" "$(find "$file" -perm 0600)" "$file"
is "and so is the folder" "$(find "$config" -prune -perm 0700)" "$config"
practise
has "$work/out" "After each turn: forward is clean"
before=$(cat "$file")
session 2026-03-02T17:00 keys.txt --marking round tiny.yaml
has "$work/out" "After each round: forward all clean"
is "a script chooses nothing for others" "$(cat "$file")" "$before"

# --- what was written by hand stays ---------------------------------------

settings '# Ours, at home.\nlines: yes   # always\n\nmarking: round # W.\nvolume: 11\n'
practise --marking turn
is "only the value is another one" "$(cat "$file")" "$(printf '%s\n' \
    '# Ours, at home.' 'lines: yes   # always' '' 'marking: turn # W.' \
    'volume: 11')"
practise --loudness 20
so "a new word goes behind the others" \
    [ "$(tail -n 1 "$file")" = 'loudness: 20' ]
has "$file" '# Ours, at home.'
practise --card loud --through JACK
practise --card loud
so "a card alone is reached by whatever way there is" \
    grep -qx 'sound_through: ""' "$file"
is "one file, and nothing beside it" "$(ls "$config")" settings.yaml

# --- faults are said, and it goes on --------------------------------------

settings 'marking: turn\nloudness: loud\nlinse: yes\n'
practise
has "$work/err" 'settings.yaml:2:11: "loudness" is a number, and "loud" is none'
has "$work/err" 'settings.yaml:3:1: I do not know "linse". Did you mean "lines"?'
is "each said once" "$(wc -l < "$work/err" | tr -d ' ')" 2
has "$work/out" "After each turn: forward is clean"
has "$work/out" "Next session:"

settings 'marking: [turn\n'
practise --marking turn
has "$work/err" 'settings.yaml:1:10: a [ was opened here and not closed'
has "$work/err" 'this file has a slip, so "marking" is not remembered'
has "$work/out" "After each turn: forward is clean"
is "it is left as it was" "$(cat "$file")" 'marking: [turn'

# --- places ---------------------------------------------------------------

mkdir "$work/elsewhere"
XDG_CONFIG_HOME=$work/elsewhere practise --marking turn
so "in XDG_CONFIG_HOME" grep -qx 'marking: turn' \
    "$work/elsewhere/evenhand/settings.yaml"
settings 'marking: turn\n'
XDG_CONFIG_HOME=elsewhere practise
has "$work/out" "After each turn: forward is clean"
touch "$work/no-folder"
XDG_CONFIG_HOME=$work/no-folder practise --marking turn --loudness 30
has "$work/err" 'no-folder/evenhand: this folder cannot be made'
is "said once" "$(wc -l < "$work/err" | tr -d ' ')" 1
has "$work/out" "Next session:"

# --- the journals say nothing of it ---------------------------------------

settings 'marking: turn\nmirrored: yes\nascii: yes\ncolours: none\n'
rm -rf "$journals"
session 2026-03-02T17:00 keys.txt tiny.yaml
history_json one.json
settings 'marking: turn\nlines: yes\nsound: no\nloudness: 1\n'
rm -rf "$journals"
session 2026-03-02T17:00 keys.txt tiny.yaml
history_json two.json
grep -v '"made_on"' one.json > one
grep -v '"made_on"' two.json > two
so "looks and loudness leave no trace in it" cmp -s one two
is "turns that were practised for it" \
    "$(ask one.json "select json_array_length(j, '\$.turns') from f")" 4

finish
