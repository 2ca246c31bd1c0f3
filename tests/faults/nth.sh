# shellcheck shell=sh
# nth.sh - the n-th call of a program fails, for every n; read after lib.sh
#
# FAILS is the shared object of fails.c.  Home and working folder are put back
# before each run.  After it stands either
#
#	what comes of a run without a fault, on the disk and in words, or
#	a status that sentences have (sysexits.h), and a sentence,
#
# and never a signal, a hang, half a file or a journal that is damaged.  What
# else has to be true afterwards is told by a command.
# shellcheck disable=SC2034,SC2154
: "${FAILS:?the shared object of fails.c}"

#
# Thousands of runs are tried, so no process is started for what the shell can
# do: files are put back only when something is another, and only then is a
# journal looked into.

# What there is, in one folder; and as every run finds it.
mkdir "$work/there"
ln -s ../home ../files "$work/there"

# keep: what stands on the disk now is what every run begins with
keep()
{
	rm -rf "$work/kept"
	mkdir "$work/kept"
	cp -Rp "$work/home" "$work/files" "$work/kept"
	moved=yes
}

# back: as it was kept
back()
{
	[ "$moved" = yes ] || return 0
	cd "$work" || exit 1
	rm -rf home files
	cp -Rp kept/home kept/files .
	cd files || exit 1
	moved=no
}

# still: nothing on the disk is another; what is not is told in $work/moved
still()
{
	moved=yes
	diff -rq "$work/kept" "$work/there" > "$work/moved" || return 1
	moved=no
}

# failing N ARGUMENTS...: the program, run by what ON says, with its n-th call
# failing, its status in $status; $work/came is empty when it came to no such call
failing()
{
	n=$1
	shift
	printf '\0\0\0\0\0\0\0\0' > "$work/count"
	: > "$work/came"
	status=0
	# Several words, on purpose.
	# shellcheck disable=SC2086
	LD_PRELOAD=$FAILS FAILS_AT=$n FAILS_COUNT=$work/count \
	    FAILS_CAME=$work/came ${ON-} "$EVENHAND" "$@" > "$work/out" \
	    2> "$work/err" < /dev/null || status=$?
}

# What a run without a fault says is what this one said.
same()
{
	cmp "$work/out" "$work/good"
}

# ended LABEL: how a run may end, when it was looked at what it left
ended()
{
	if [ "$status" -eq 0 ] && [ ! -s "$work/err" ]; then
		same || fail "$1: it says something else"
	elif [ ! -s "$work/err" ]; then
		fail "$1: status $status, and nothing is said"
	elif [ "$status" -ne 0 ] &&
	    { [ "$status" -lt 64 ] || [ "$status" -gt 78 ]; }; then
		fail "$1: status $status"
		sed 's/^/    /' "$work/err"
	fi
	[ "$moved" = yes ] || return 0
	for file in "$journals"/*.db; do
		[ ! -f "$file" ] || [ "$(sqlite3 "$file" \
		    'pragma integrity_check' 2>&1)" = ok ] ||
		    fail "$1: a journal is damaged"
	done
}

# one_each LABEL AFTER ARGUMENTS...: every n once, or where there are too many
# each EACH-th
one_each()
{
	which=$1
	looks=$2
	shift 2
	i=$((1 - ${EACH:=1}))
	while i=$((i + EACH)) && [ "$i" -le "$all" ]; do
		back
		failing "$i" "$@"
		moved=yes
		"$looks" "$which, $i"
		ended "$which, $i"
		while read -r line; do
			printf '%s\n' "$line"
		done < "$work/err" >> "$work/said"
		# One that gives up early comes to no later ones.
		[ -s "$work/came" ] || break
	done
}

none_of_the_system()
{
	! grep 'Too many open files\|Cannot allocate memory' "$work/said"
}

# every KIND PROGRAM AFTER ARGUMENTS...: each n by itself, then each with all
# that come later (WAYS: one of the two); AFTER LABEL looks at what is left.  What
# was said is told.
every()
{
	export FAILS_KIND="$1" FAILS_IN="$2"
	after=$3
	shift 3
	each="$FAILS_IN${FAILS_WITH:+ error $FAILS_WITH}: $*"
	# What was kept may have got something more.
	moved=yes
	back
	unset FAILS_ON
	failing 0 "$@"
	status_is "$status" 0 "$each"
	all=$(od -An -tu8 "$work/count" | tr -d ' ')
	cp "$work/out" "$work/good"
	rm -rf "$work/whole"
	cp -Rp . "$work/whole"
	moved=yes
	so "$all calls of kind $FAILS_KIND" [ "$all" -gt 0 ]
	: > "$work/said"
	case ${WAYS-alone later} in
	*alone*) one_each "$each" "$after" "$@" ;;
	esac
	case ${WAYS-alone later} in
	*later*)
		export FAILS_ON=yes
		one_each "$each, and all later" "$after" "$@"
		unset FAILS_ON
		;;
	esac
	# The system's words for it tell nobody what to do.
	so "all of it is said in our own words" none_of_the_system
	sed "s#$work#~#g" "$work/said" | sort | uniq -c | sort -rn
}

# practised ROUTINE: two sessions by the script keys and what comes of them: a
# record of the first and one of both, another player and a class who have the
# first, and what is told of these before the second is gathered and after
practised()
{
	session 2026-03-02T17:00 keys --marking turn "$1"
	run 0 give -o early.yaml --at 2026-03-02T18:00
	session 2026-03-03T17:00 keys --marking turn "$1"
	run 0 give -o late.yaml --at 2026-03-03T18:00
	run 0 gather --player other early.yaml
	run 0 gather --class wrens early.yaml
	turns_before=$("$EVENHAND" history --json | grep -c '"turn":')
	keep
	other > "$work/before.json"
	in_class > "$work/before.csv"
	run 0 gather --player other late.yaml
	run 0 gather --class wrens late.yaml
	other > "$work/after.json"
	in_class > "$work/after.csv"
}

# practised_tiny: the same with the routine tiny.yaml
practised_tiny()
{
	tiny tiny.yaml
	printf '%s\n' '0:07 clean' '0:11 shaky' '0:15 clean' > keys
	practised tiny.yaml
}

# every_lying COMMAND...: the same by such a command, KIND and PROGRAM in it; of a
# record that lies in the folder of the class it is told when it was left out
every_lying()
{
	back
	cp late.yaml wrens
	keep
	"$@" before_or_after class wrens --at "$day"
	moved=yes
	back
	rm wrens/late.yaml
	keep
}

# On the day after those two sessions all is tried.
day=2026-03-04T17:00

other()
{
	"$EVENHAND" history --json --player other 2> "$work/quiet" |
	    grep -v '^"made_on"'
}

# The day of the record, the last but one, is the last thing to be written down.
in_class()
{
	"$EVENHAND" class wrens --csv --at "$day" 2> "$work/quiet" |
	    sed 's/,[^,]*\(,[^,]*\)$/\1/'
}

# --- what may be left ----------------------------------------------------------

# nothing LABEL: no file came, none went, none changed
nothing()
{
	still && return
	fail "$1: the disk is not as before"
	cat "$work/moved"
}

# a_file LABEL: a new file came whole and said so, or none did
a_file()
{
	if [ "$status" -eq 0 ] || grep -q ' is written' "$work/err"; then
		diff -rq "$work/whole" . || fail "$1: the file is not whole"
	elif ! still; then
		fail "$1: something was left"
		cat "$work/moved"
	fi
}

# planned LABEL: what is planned is what was planned without a fault, or nothing
planned()
{
	nothing "$1"
	if [ "$status" -ne 0 ]; then
		[ ! -s "$work/out" ] || same || fail "$1: another plan"
	fi
}

# every_turn LABEL: what was printed of a session is in the history, and it had
# the plan of that history
every_turn()
{
	if [ ! -s "$work/out" ] && still; then
		return
	fi
	for plan in "$work/out" "$work/good"; do
		grep '^Today: ' "$plan" > "$plan.plan"
	done
	[ ! -s "$work/out.plan" ] ||
	    cmp "$work/out.plan" "$work/good.plan" || fail "$1: another plan"
	printed=$(grep -c '^Clean or shaky' "$work/out")
	"$EVENHAND" history --json > "$work/h.json" 2>&1 < /dev/null ||
	    fail "$1: the history cannot be read"
	kept=$(($(grep -c '"turn":' "$work/h.json") - turns_before))
	[ "$kept" -ge "$printed" ] ||
	    grep -q 'will be missing in\|cannot be kept just now' "$work/err" ||
	    fail "$1: $printed turns were printed, $kept are kept"
}

# before_or_after LABEL: all of the record is in, or nothing of it
before_or_after()
{
	! still || return 0
	other > "$work/now.json"
	in_class > "$work/now.csv"
	for now in json csv; do
		cmp -s "$work/now.$now" "$work/before.$now" ||
		    cmp -s "$work/now.$now" "$work/after.$now" ||
		    fail "$1: neither the old history nor the new"
	done
}
