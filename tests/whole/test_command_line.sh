#!/bin/sh
# test_command_line.sh - slips on the command line and files that are not
# there: one sentence, an exit status of sysexits, and nothing changed on disk
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

# --- options --------------------------------------------------------------

unchanged 64 'I do not know --markign. Did you mean --marking?' --markign turn
unchanged 64 'I do not know --frobnicate. evenhand practise --help lists' \
    --frobnicate
unchanged 64 'I do not know -x.' -x
unchanged 64 'I do not know -x.' practise -xyz
unchanged 64 '--marking needs a word behind it: --marking turn|round' --marking
unchanged 64 '--lines takes no value. Write --lines alone' --lines=yes
unchanged 64 '--marking is there twice. Write it once' \
    --marking turn --marking round
unchanged 64 '--output is there twice' track -o a.wav --output b.wav
unchanged 64 '--class is there twice' gather --class a --class b c.yaml
unchanged 64 '--f could be --from or --force. Write more of it' new --f x.yaml
unchanged 64 '--marking is turn or round, not "both"' --marking both
unchanged 64 '--clock can only be fast, not "slow"' --clock slow
unchanged 64 'there is a word too many: "b.yaml"' a.yaml b.yaml
unchanged 64 'something is missing. Write it like this: evenhand new' new
unchanged 64 'I do not know --jsn. Did you mean --json?' history --jsn

for flag in --help -h help; do
	run 0 $flag
	has "$work/out" 'evenhand COMMAND'
done
run 0 -V
is 'a version' "$(cut -d' ' -f1 "$work/out")" evenhand
run 0 check -h
has "$work/out" 'Usage: evenhand check'

# --- verbs ----------------------------------------------------------------

unchanged 64 'no command and no routine "chekc". Did you mean evenhand check?' \
    chekc wren.yaml
unchanged 64 'no command and no routine "frobnicate".' frobnicate
unchanged 64 'the command comes first: evenhand today' --lines today

# --- times that cannot be -------------------------------------------------

for time in 2026-02-30T17:00 2026-13-01T10:00 2026-03-02T25:00 \
    2026-03-02T17:60 2026-03-02 17:00 yesterday '' 2026-3-2T17:00 \
    2026-03-02T17:00x 1969-12-31T23:59; do
	unchanged 64 "\"$time\" is no date and time. Write it like this:" \
	    --at "$time"
	unchanged 64 "\"$time\" is no date and time. Write it like this:" \
	    today --at "$time"
done

# --- players --------------------------------------------------------------

for player in '' . .. ../x a/b "$(printf 'a\tb')" \
    aaaaaaaaaabbbbbbbbbbccccccccccdddddddddde; do
	unchanged 64 '' --player "$player"
	unchanged 64 '' today --player "$player"
	unchanged 64 '' history --json --player "$player"
done

# --- files ----------------------------------------------------------------

unchanged 66 'nowhere.yaml' nowhere.yaml
unchanged 66 'nowhere/at/all.yaml' today nowhere/at/all.yaml
unchanged 66 'nowhere.keys' --script nowhere.keys
unchanged 66 'files' --script "$work/files"
unchanged 66 'files' "$work/files"
if [ "$(id -u)" -ne 0 ]; then
	mkdir closed
	echo '- forward' > closed/keys
	chmod 000 closed
	unchanged 66 'closed/keys' --script closed/keys
	unchanged 66 'closed/a.yaml' closed/a.yaml
	chmod 700 closed
	rm -r closed
fi

# --- scripts with slips ---------------------------------------------------

printf '\377\376\n' > picture
unchanged 65 'picture' --script picture

slip()
{
	printf '%b' "$1" > keys
	unchanged 65 "keys:$2: $3" --script keys
}

slip '- forward\n0:75 c\n' 2:1 '"0:75" is no time'
slip '0:10 c\n0:09.5 c\n' 2:1 'this key is at 0:09.5 and the one before it'
slip '# a note\n  0:10 cleen\n' 2:8 'I do not know the key "cleen". Did you'
slip '- \n' 1:3 'a key is missing behind -'
slip '0:10 c c\n' 1:8 '"c" is too much here'
rm keys

# --- good ways to write it ------------------------------------------------

run 0 --version
so "the version in one line" grep -qx 'evenhand [0-9.]*' "$work/out"
run 0 --vers
run 0 --help
has "$work/out" 'evenhand COMMAND [options]'
has "$work/out" '--version  say which version'
has "$work/out" 'This is a practice aid for use with a teacher.'
so "help is narrow" [ "$(grep -c '.\{80\}' "$work/out")" = 0 ]
for verb in practise today check new history; do
	run 0 --help
	has "$work/out" "  $verb "
	run 0 "$verb" --help
	has "$work/out" "Usage: evenhand $verb"
	has "$work/out" '--help'
	is "nothing on standard error" "$(cat "$work/err")" ""
	so "help is narrow" [ "$(grep -c '.\{80\}' "$work/out")" = 0 ]
done
run 0 today --at 2026-03-02T17:00 --mark turn
run 0 today --at=2026-03-02T17:00 --mark=turn cello
run 0 today cello --at 2026-03-02T17:00
cp "$root/routines/cello.yaml" -- --odd.yaml
run 0 today --at 2026-03-02T17:00 -- --odd.yaml

# --- lines without sound --------------------------------------------------

# told COUNT ARGUMENTS...: how often it is said what is left to follow
told()
{
	count=$1
	shift
	run 0 "$@" cello
	is "$*: said how often" \
	    "$(grep -c '^Without sound, follow these lines' "$work/out")" "$count"
}

told 1 --lines --silent
# Nobody practises along where no time passes.
told 0 --lines --silent --clock fast
mkdir -p "$HOME/.config/evenhand"
echo 'sound: no' > "$HOME/.config/evenhand/settings.yaml"
told 1 --lines
rm "$HOME/.config/evenhand/settings.yaml"

# --- output that cannot be written ----------------------------------------

"$EVENHAND" --help > /dev/full 2> "$work/err"
status_is $? 74 'evenhand --help > /dev/full'
has "$work/err" 'cannot be printed'
"$EVENHAND" --help 2> "$work/err" >&-
status_is $? 74 'evenhand --help with no output'

finish
