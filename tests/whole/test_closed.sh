#!/bin/sh
# test_closed.sh - what docs/threats.md claims: nothing goes out, nothing
# unwanted is opened, nothing hidden comes through
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/page.sh
. "$root/tests/whole/page.sh"

page_links "$root/docs/threats.md"

out=$work/out
err=$work/err
build=$(dirname "$EVENHAND")
cp "$root/routines/cello.yaml" "$root/routines/cello-homework.yaml" .

# --- no network code ------------------------------------------------------------
# Names that lead out of a process; a "socket" of our own would be no call.
calls='socket|connect|bind|listen|accept|accept4|getaddrinfo|getnameinfo'
calls="$calls|gethostby[a-z_]*|getservby[a-z_]*|recv|recvfrom|recvmsg|send"
calls="$calls|sendto|sendmsg|inet_[a-z]*|res_[a-z]*|socketpair|syscall"

# calls_of FILE: those it takes from elsewhere, each with its object
calls_of()
{
	nm -A -u "$1" 2> /dev/null | sed 's/@.*//' |
	    grep -E " (U|w) (__)?($calls)\$" |
	    sed -n 's/.*[:/]\([a-z_]*\.o\):.* \([a-z_0-9]*\)$/\1 \2/p' | sort -u
}

if [ -f "$build/libevenhand.a" ] && command -v nm > /dev/null; then
	so "the library's objects are read" [ "$(nm -A -u \
	    "$build/libevenhand.a" 2> /dev/null | grep -c ' U ')" -gt 1000 ]
	is "calls that lead out of the process" \
	    "$(calls_of "$build/libevenhand.a" | tr '\n' ' ')" \
	    "sound_keep.o recv sound_keep.o send sound_keeper.o recv \
sound_keeper.o send sound_keeper.o socketpair "
	is "and in the programs themselves" "$(find "$build/src" -maxdepth 1 \
	    -name 'main*.o' | sort | while read -r o; do calls_of "$o"; done)" ""
	is "what it joins" "$(grep -rhoE 'socketpair\([A-Z_]+' "$root/src" |
	    sort -u)" "socketpair(AF_UNIX"
else
	echo "skipped: objects (no nm, or a program without its library)"
fi

# --- a whole session, its files and their rights ----------------------------------
cards=$work/cards
cat > "$cards" <<END
pcm.tap { type file slave.pcm { type null } file "$work/tap" format raw }
pcm.!default { type plug slave.pcm tap }
END
export ALSA_CONFIG_PATH="$cards" JACK_NO_START_SERVER=1 \
    JACK_DEFAULT_SERVER=evenhand-none
cat > keys <<'END'
0:26 clean
- forward
- words how high may finger 4 be
END
printf '0:01 space\n- q\n- q\n' > soon

# Called by so.
# shellcheck disable=SC2317
# everything WAY...: each kind of file is written once, WAY runs the program
everything()
{
	"$@" "$EVENHAND" --lines --clock fast --at 2026-03-02T17:00 \
	    --script keys cello.yaml > "$out" 2>&1 < /dev/null &&
	    "$@" "$EVENHAND" new mine.yaml > "$out" 2>&1 < /dev/null &&
	    "$@" "$EVENHAND" print lesson cello.yaml -o lesson.pdf \
	        > "$out" 2>&1 < /dev/null &&
	    "$@" "$EVENHAND" track cello.yaml --at 2026-03-03T17:00 -o t.wav \
	        > "$out" 2>&1 < /dev/null &&
	    "$@" "$EVENHAND" give -o w.record > "$out" 2>&1 < /dev/null &&
	    "$@" "$EVENHAND" gather --class class w.record \
	        > "$out" 2>&1 < /dev/null &&
	    "$@" "$EVENHAND" history --json > h.json 2> "$err" < /dev/null
}

# shellcheck disable=SC2317
# with_sound WAY...: a true session that ends in its first second, and settings
with_sound()
{
	"$@" "$EVENHAND" --lines --script soon --at 2026-03-03T17:00 \
	    cello.yaml > "$out" 2>&1 < /dev/null
}

umask 000
so "each kind of file is written" everything env
so "a session with sound" with_sound env
"$EVENHAND" --marking turn --lines --at 2026-03-03T21:00 --script /dev/stdin \
    < soon > "$out" 2>&1
printf 'q\n' | "$EVENHAND" --marking turn --lines --at 2026-03-03T22:00 \
    > "$out" 2>&1
# Where there is no such card the libraries have something to say.
echo 'pcm.!default { type hw card 31 }' > "$work/none"
ALSA_CONFIG_PATH="$work/none" "$EVENHAND" sound > "$out" 2>&1 < /dev/null
umask 022
so "there are settings" [ -f "$HOME/.config/evenhand/settings.yaml" ]
so "and a journal" [ -f "$journals/journal.db" ]
# Its keeper ends a moment after the program.
tries=0
until [ -f "$HOME/.local/state/evenhand/sound.log" ] || [ $tries -ge 200 ]; do
	sleep 0.1
	tries=$((tries + 1))
done
so "and what the sound system said" \
    [ -f "$HOME/.local/state/evenhand/sound.log" ]
is "files of others' right" "$(find "$HOME" class w.record -type f \
    ! -perm 600)" ""
is "folders of others' right" "$(find "$HOME" class -mindepth 1 -type d \
    ! -perm 700)" ""
is "documents are as others" "$(find mine.yaml lesson.pdf t.wav \
    ! -perm 644)" ""

# --- traced -----------------------------------------------------------------------
if strace -o /dev/null true 2> /dev/null; then
	trace=$work/trace
	# Leaks cannot be looked for in what is traced.
	leaks=ASAN_OPTIONS=detect_leaks=0
	rm -rf mine.yaml lesson.pdf t.wav w.record class
	mkdir "$work/second"
	so "traced without sound" everything env "$leaks" \
	    HOME="$work/second" strace -f \
	    -e trace=network,open,openat,creat -o "$trace" -A
	so "the trace holds what was opened" grep -q journal.db "$trace"
	is "sockets without sound" \
	    "$(grep -cE ' (socket|connect|sendto|bind)\(' "$trace")" 0
	# A new file has no name in its folder until it is whole.
	is "opened for writing elsewhere" "$(grep -E \
	    'O_(WRONLY|RDWR|CREAT|TRUNC)' "$trace" | grep -v ' = -1 ' |
	    sed 's/.*openat*([A-Z_]*,* *"\([^"]*\)".*/\1/' |
	    grep -v -e "^$work/" -e '^/dev/null$' -e '^[a-z.]*$' \
	        -e '^class/[a-z0-9/]*[.]sqlite' -e '^class/students/$' |
	    sort -u)" ""
	so "traced with sound" with_sound env "$leaks" strace -f \
	    -e trace=network -o "$trace"
	so "the trace has the keeper's pair" grep -q \
	    'socketpair(AF_UNIX, SOCK_STREAM' "$trace"
	is "sockets of any other kind than those of this computer" \
	    "$(grep -E ' socket(pair)?\(' "$trace" | grep -cv '(AF_UNIX')" 0

	# Words that look like files are no files.
	cat > bait.yaml <<-END
	routine: $work/bait
	homework: {note: "$work/bait"}
	stages:
	  - {id: tone, place: string D, travel: tone, title: "$work/bait",
	     say: "$work/bait", check: ["$work/bait"], cue: "/bait"}
	END
	printf 'homework_for: %s/bait\nroutine: bait.yaml\n' "$work" > hook.yaml
	echo bait > "$work/bait"
	so "a routine with names of files" env "$leaks" strace -f \
	    -o "$trace" "$EVENHAND" today hook.yaml > "$out" 2>&1 < /dev/null
	so "is read" grep -q '"bait.yaml"' "$trace"
	is "and what it names is not" "$(grep -c "\"$work/bait\"" "$trace")" 0
else
	echo "skipped: traces (no strace, or it may not trace)"
fi

# --- hidden characters --------------------------------------------------------------

# Control characters but line ends, C1 ones, and signs that turn writing round;
# in a table lines end with CR LF.
hidden()
{
	LC_ALL=C awk '{
		sub(/\r$/, "")
		gsub(/\302[\200-\237]/, "\001")
		gsub(/\342\200[\252-\256]/, "\001")
		gsub(/\342\201[\246-\251]/, "\001")
		if ($0 ~ /[\001-\010\013-\037\177]/)
			n++
	}
	END { print n + 0 }' "$1"
}

printf 'a\033b\n\302\233\n\342\200\256\n\177\nplain \303\251\t\n' > seen
is "lines with something hidden" "$(hidden seen)" 4

# shows LABEL ARGUMENTS...: nothing hidden on either output
shows()
{
	label=$1
	shift
	"$EVENHAND" "$@" > "$out" 2> "$err" < /dev/null
	is "hidden in $label" "$(hidden "$out") $(hidden "$err")" "0 0"
}

# routine_with WORDS: everywhere words may stand
routine_with()
{
	cat > hidden.yaml <<-END
	routine: "a$1"
	written_by: "b$1"
	homework: {note: "c$1"}
	stages:
	  - {id: tone, place: string D, travel: tone, title: "d$1",
	     cue: "e$1", say: "f$1", check: ["g$1"]}
	END
}

# As bytes, and as YAML hides them.
for words in "$(printf '\033[31m')" "$(printf '\302\233')" \
    "$(printf '\342\200\256')" "$(printf '\177')" '\e[31m' '\x9b' '\a' '\0' \
    '\u202e' '\u2066' '\x7f' '\u0085' '\L'; do
	routine_with "$words"
	shows "a routine" today hidden.yaml
	has "$err" "an invisible control character stands here"
done
for words in '\n' '\r' '\t'; do
	routine_with "$words"
	shows "a routine with line ends" today hidden.yaml
	has "$out" "Today: d"
done

strange=$(printf 'x\033[31m\302\233')
echo 'no routine' > "$strange.yaml"
shows "a file's name" check "$strange.yaml"
has "$err" 'x?[31m?.yaml:1:1: there is no colon'
shows "a word of the command line" "$strange"
shows "a player's name" today --player "$strange"
shows "an option" check "--$strange"
shows "a time" today --at "$strange"
printf -- '- %s\n' "$strange" > bad.keys
shows "a script" --clock fast --script bad.keys cello.yaml
printf '%s: yes\nloudness: %s\n' "$strange" "$strange" \
    > "$HOME/.config/evenhand/settings.yaml"
shows "settings" --clock fast --at 2026-03-05T09:00 --script keys cello.yaml
has "$err" "an invisible control character stands here"
rm "$HOME/.config/evenhand/settings.yaml"

# What somebody wrote into a journal.
sqlite3 "$journals/journal.db" "update notes set words = 'x' || char(27) ||
    '[31m' || char(155) || char(8238); update routines set name = 'y' ||
    char(27) || '[31m'; update turns set stage = 'z' || char(27) || '[31m'"
so "the journal holds it" [ "$(sqlite3 "$journals/journal.db" "select count(*)
    from notes where words like '%' || char(27) || '%'")" -ge 1 ]
for way in --lines --csv --sessions --json; do
	shows "history $way" history $way
done
shows "the plan" today --why --at 2026-03-06T17:00 cello.yaml
shows "a lesson's sheet" print lesson cello.yaml -o hidden.pdf \
    --at 2026-03-06T17:00
pdftotext hidden.pdf - | tr -d '\f' > sheet.txt
so "the sheet has words" [ -s sheet.txt ]
is "hidden on the sheet" "$(hidden sheet.txt)" 0

# A record that somebody changed.
for words in "$(printf '\033[31m')" "$(printf '\342\200\256')" '\e[31m'; do
	routine_with x
	{ printf 'evenhand_record: 1\nnote: "%s"\n' "$words"; } > bad.record
	shows "a record" gather --class class bad.record
	so "is refused" [ -s "$err" ]
done

# --- what is no file, and files that are too much ---------------------------------------
mkfifo pipe.yaml
for file in pipe.yaml /dev/zero .; do
	for verb in check today gather; do
		timeout 100 "$EVENHAND" $verb "$file" > "$out" 2> "$err" \
		    < /dev/null
		status_is $? 66 "$verb $file"
	done
done
head -c 300000 /dev/zero | tr '\0' '#' > big.yaml
run 65 check big.yaml
has "$err" "this file is larger than 256 KB"
cat > bomb.yaml <<'END'
routine: &a Bomb
written_by: *a
stages: []
END
run 65 check bomb.yaml
has "$err" 'bomb.yaml:1:10: words may not begin with * & ! % @'

for name in ../secret.yaml "$work/secret.yaml" .. files/secret.yaml; do
	printf 'routine: Secret words\n' > "$work/secret.yaml"
	printf 'homework_for: W.\nroutine: %s\n' "$name" > path.yaml
	run 65 check path.yaml
	one_sentence "names a folder"
	is "what it said" "$(grep -c 'Secret' "$err")" 0
done

# --- what is there stays ---------------------------------------------------------------
echo mine > target
ln -s target link.yaml
unchanged 73 link.yaml new link.yaml
run 0 new link.yaml --force
is "what the link led to" "$(cat target)" mine
so "the link is a file now" [ ! -L link.yaml ]

# --- the environment -----------------------------------------------------------------------
for variable in HOME XDG_DATA_HOME; do
	(
		unset HOME
		export "$variable=relative"
		"$EVENHAND" history > "$out" 2> "$err" < /dev/null
	)
	is "a $variable that is no whole path" "$(wc -l < "$err" | tr -d ' ')" 1
	so "is no folder" [ ! -e relative ]
done
for name in ../x .hidden a/b '' -x; do
	unchanged 64 "no name for a player" today --player="$name" cello.yaml
done

finish
