# shellcheck shell=sh
# lib.sh - what the tests of the real binary share
#
# A private home and working folder, gone at the end; output in $work/out, what
# goes to standard error in $work/err.  Each check prints an "ok" or a "BAD"
# line; finish exits with 1 when there was a BAD one.
# shellcheck disable=SC2034
set -u
: "${EVENHAND:?the program to test}"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
root=$(cd "$(dirname "$0")/../.." && pwd)
export HOME="$work/home" LC_ALL=C TZ=UTC
unset LANGUAGE XDG_DATA_HOME XDG_STATE_HOME XDG_CONFIG_HOME NO_COLOR
mkdir "$work/home" "$work/files"
cd "$work/files" || exit 1
journals=$HOME/.local/share/evenhand
# Debian's own python3 is the one its packages are for.
python=python3
if [ -x /usr/bin/python3 ]; then
	python=/usr/bin/python3
fi
bad=0

ok()
{
	echo "ok $1"
}

fail()
{
	echo "BAD $1"
	bad=1
}

# run STATUS ARGUMENTS...: nothing on its input
run()
{
	want=$1
	shift
	"$EVENHAND" "$@" > "$work/out" 2> "$work/err" < /dev/null
	status_is "$?" "$want" "evenhand $*"
}

status_is()
{
	if [ "$1" -eq "$2" ]; then
		ok "$3: status $2"
	else
		fail "$3: status $1, not $2"
		sed 's/^/    /' "$work/out" "$work/err"
	fi
}

# so LABEL COMMAND...: the command succeeds
so()
{
	label=$1
	shift
	if "$@"; then
		ok "$label"
	else
		fail "$label"
	fi
}

# is LABEL GOT WANTED: two values are the same
is()
{
	if [ "$2" = "$3" ]; then
		ok "$1: $3"
	else
		fail "$1: \"$2\", not \"$3\""
	fi
}

# has FILE WORDS: some line of the file holds these words
has()
{
	if grep -qF -- "$2" "$1"; then
		ok "${1##*/} says \"$2\""
	else
		fail "${1##*/} does not say \"$2\""
		sed 's/^/    /' "$1"
	fi
}

# one_sentence WORDS: standard error is one line that holds the words, and
# nothing stands on standard output
one_sentence()
{
	has "$work/err" "$1"
	is "one sentence" "$(wc -l < "$work/err" | tr -d ' ')" 1
	is "nothing printed" "$(wc -c < "$work/out" | tr -d ' ')" 0
}

# What is on the disk, in names and bytes.
disk()
{
	# A folder's time moves when a test's own file comes and goes in it.
	(cd "$work" && find home files -exec ls -ld {} + | sort -k9 |
	    awk '/^d/ { $5 = $6 = $7 = $8 = "" } { print }' &&
	    find home files -type f -exec cksum {} + | sort -k3)
}

# unchanged STATUS WORDS ARGUMENTS...: one sentence, and nothing on disk moved
unchanged()
{
	want=$1
	words=$2
	shift 2
	before=$(disk)
	run "$want" "$@"
	one_sentence "$words"
	so "the disk is as before" [ "$(disk)" = "$before" ]
}

# ask FILE QUERY: an answer of SQL over a JSON file, named j in the query
ask()
{
	sqlite3 -batch :memory: \
	    "create table f as select cast(readfile('$1') as text) as j; $2"
}

# comes FILE WORDS: waits until the words stand in it, a minute at most
comes()
{
	tries=600
	until grep -qsF -- "$2" "$1"; do
		tries=$((tries - 1))
		if [ "$tries" -le 0 ]; then
			fail "${1##*/} never says \"$2\""
			return 1
		fi
		sleep 0.1
	done
}

# A session at a time of March 2026: session TIME SCRIPT ARGUMENTS...
session()
{
	at=$1
	keys=$2
	shift 2
	"$EVENHAND" --lines --clock fast --at "$at" --script "$keys" "$@" \
	    > "$work/out" 2> "$work/err" < /dev/null
}

now_ms()
{
	echo $(($(date +%s%N) / 1000000))
}

# cut_off MOST ARGUMENTS...: the program, killed (SIGKILL) at a random moment of
# so many ms; that moment is in $delay
cut_off()
{
	delay=$(($(od -An -N2 -tu2 /dev/urandom) % $1))
	shift
	"$EVENHAND" "$@" > "$work/out" 2> "$work/err" < /dev/null &
	pid=$!
	sleep "$(printf '%d.%03d' $((delay / 1000)) $((delay % 1000)))"
	kill -KILL "$pid" 2> "$work/quiet"
	wait "$pid" 2> "$work/quiet"
}

# The history as JSON in a file.
history_json()
{
	"$EVENHAND" history --json > "$1" 2> "$work/err" < /dev/null
	status_is $? 0 "history --json"
}

# turns FILE COLUMN WHERE: a column of the turns of a history, in order
turns()
{
	ask "$1" "select group_concat(v, ' ') from (select
	    json_extract(value, '\$.$2') as v from f, json_each(j, '\$.turns')
	    where $3)"
}

# A condition for turns: block KIND STAGE
block()
{
	echo "json_extract(value, '\$.block') = '$1' and
	    json_extract(value, '\$.stage') = '$2'"
}

# The cello routine with another line to work on: routine_at STAGE
routine_at()
{
	sed "s/^\( *work_on:\) .*/\1 $1/; s/^\( *no_further_than:\) .*/\1 $1/" \
	    "$root/routines/cello.yaml" > "$1.yaml"
}

# tiny FILE: a routine of one stage whose session takes 20 s: a round of four
# turns of two seconds, after four seconds of stillness
tiny()
{
	cat > "$1" <<-'END'
	routine: Tiny
	player: {instrument: cello}
	bowing: {bow_seconds: 1, pulses: [2, 4], count_in_bows: 0,
	  because: a short one}
	turns: {change_seconds: 2}
	session: {minutes: 0.5}
	stages:
	  - {id: small, title: Small, place: string D, travel: semitone}
	END
}

# pedals FILE: a clean mark in the change after each turn of a session at the
# stage "tone" with --marking turn
pedals()
{
	for at in 26 46 58 70 82 102 114 126 138 158 170 182 194 206 218 230 \
	    242 254 266 278 290; do
		printf '%d:%02d clean\n' $((at / 60)) $((at % 60))
	done > "$1"
}

finish()
{
	exit "$bad"
}
