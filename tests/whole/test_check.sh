#!/bin/sh
# test_check.sh - `evenhand check` and `evenhand new`, the real binary on real
# files: sentences, places, exit statuses, and nothing changed on disk
set -u
: "${EVENHAND:?the program to test}"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
here=$(cd "$(dirname "$0")/../.." && pwd)
export HOME="$work/home" LC_ALL=C.UTF-8 TZ=UTC
unset XDG_DATA_HOME
mkdir "$work/home" "$work/files"
cd "$work/files" || exit 1
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

# run STATUS ARGUMENTS...: output in ../out, faults in ../err
run()
{
	want=$1
	shift
	"$EVENHAND" "$@" > ../out 2> ../err < /dev/null
	got=$?
	if [ "$got" -ne "$want" ]; then
		fail "evenhand $*: status $got, not $want"
		sed 's/^/    /' ../out ../err
		return 1
	fi
	ok "evenhand $*: status $want"
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

# has FILE LINE: the file holds this whole line
has()
{
	if grep -qxF -- "$2" "../$1"; then
		ok "$1: $2"
	else
		fail "$1 lacks the line: $2"
		sed 's/^/    /' "../$1"
	fi
}

empty()
{
	if [ -s "../$1" ]; then
		fail "$1 is not empty"
		sed 's/^/    /' "../$1"
	else
		ok "$1 is empty"
	fi
}

# narrow FILE: every line fits a screen of 80 columns
narrow()
{
	so "$1 is narrow" [ "$(grep -c '.\{80\}' "../$1")" = 0 ]
}

# --- every routine that ships is good ------------------------------------
for name in cello violin viola bass trills crossings; do
	run 0 new $name.yaml --from $name
	run 0 new $name-homework.yaml --from $name-homework
	run 0 check $name.yaml $name-homework.yaml
	empty err
	narrow out
	so "$name is the file that ships" \
	    cmp -s $name.yaml "$here/routines/$name.yaml"
done

# --- the dry run of the cello programme -----------------------------------
sed 's/work_on: wide/work_on: tone/; s/than: wide/than: tone/' \
    cello.yaml > tone.yaml
run 0 check tone.yaml
has out 'tone.yaml is good: From wide to still, edition 1, 6 stages.'
has out 'Homework: work on tone, no further than tone.'
has out '  air         air 0:00, end 2:48'
has out '  wide        air 0:00, wide 0:28, end 4:36'
has out '  thirds      air 0:00, wide 0:28, thirds 1:24, end 4:44'
has out '  tone        air 0:00, wide 0:28, thirds 1:24, tone 2:20, end 4:52'
has out '  tone        10 each, 40 in all'
has out '  wide        finger 1: 12.3 to 24.7, finger 2: 11.6 to 23.3,'
has out '  wide        0.31 with 4 pulses, 0.46 with 6 pulses, 0.62 with 8 pulses'
grep -A1 'One pass' ../out | tr '\n' ' ' > ../pass
case $(cat ../pass) in
'One pass through all stages takes 5:08, 8 s over 5:00.'*) ok 'one pass 5:08' ;;
*) fail "one pass: $(cat ../pass)" ;;
esac
sed -i 's/change_seconds: 4/change_seconds: 3/' tone.yaml
run 0 check tone.yaml
has out 'One pass through all stages takes 4:47 and fits into 5:00.'

# --- faults: all of them, with places, and the good files all the same -----
cat > slips.yaml <<'END'
routine: Slips
turns: {bows_eech: 2}
stages:
  - id: one
    title: First
    place: string D
    travel: tone
    cue: KEEP THE BOW EVEN
END
run 65 check slips.yaml cello.yaml
has err 'slips.yaml:2:9: I do not know "bows_eech". Did you mean "bows_each"?'
so 'both faults in one pass' \
    grep -q '^slips.yaml:8:10: 17 characters' ../err
has out 'cello.yaml is good: From wide to still, edition 1, 6 stages.'
so 'no dry run of a file with faults' [ "$(grep -c slips ../out)" = 0 ]

# --- a file that is not there, options, help --------------------------------
run 66 check nowhere.yaml
empty out
run 65 check nowhere.yaml slips.yaml
run 64 check
empty out
run 64 check --bogus cello.yaml
empty out
run 0 check --help
empty err
run 66 check --player Nobody cello.yaml
run 64 check --player ../etc cello.yaml
printf 'homework_for: W.\nroutine: gone.yaml\n' > lost.yaml
run 66 check lost.yaml

# --- new never overwrites -----------------------------------------------------
echo mine > kept.yaml
run 73 new kept.yaml
so 'kept as it was' [ "$(cat kept.yaml)" = mine ]
run 0 new kept.yaml --force
so 'force gives the cello routine' \
    cmp -s kept.yaml "$here/routines/cello.yaml"
run 64 new other.yaml --from harpsichord
so 'names are listed' grep -q 'cello, cello-homework, crossings' ../err
run 64 new
run 64 new one.yaml two.yaml
run 0 new --help
mkdir alone
run 0 new alone/wren.yaml --from cello-homework
so 'says which routine goes with it' \
    grep -q 'evenhand new alone/cello.yaml --from cello' ../out
run 73 new nowhere/mine.yaml
for file in other.yaml one.yaml nowhere; do
	so "no $file after a fault" [ ! -e $file ]
done

# --- checking writes nothing ----------------------------------------------------
so 'the home folder is empty' [ -z "$(find "$work/home" -mindepth 1)" ]
exit $bad
