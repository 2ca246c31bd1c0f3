#!/bin/sh
# figures.sh [--page] SIMULATE BENCH... - every figure, in one table
#
# Runs the programs one after the other, so that none takes a core from another,
# and says on its standard error which one is at work.  With --page what is
# written is docs/figures.md, which tells the machine too.  One that cannot
# measure, because too much else was at work, gets another try; when that fails
# too, it ends with 1.  A goal that is missed is told and no more.
set -eu

page=
if [ "$1" = --page ]; then
	page=yes
	shift
fi
simulate=$1
shift
tools=$(dirname "$0")
rows=$(mktemp)
once=$(mktemp)
load=$(uptime | sed 's/.*average[s]*: *//; s/[ ,].*//')
trap 'rm -f "$rows" "$once"' EXIT

# part NAME COMMAND...: adds what it prints
part()
{
	name=$1
	shift
	echo "measuring: $name" >&2
	if ! "$@" > "$once"; then
		echo "measuring again: $name" >&2
		if ! "$@" > "$once"; then
			echo "no figures of $name: $* failed twice" >&2
			exit 1
		fi
	fi
	printf 'part\t%s\n' "$name" | cat - "$once" >> "$rows"
}

# students: whole programmes of many of them, in seconds
students()
{
	from=$(date +%s)
	"$simulate" --students 500 --seed 1 > /dev/null
	printf 'figure\t500 invented students, whole programmes\t< 60\t%d\ts\n' \
	    $(($(date +%s) - from))
}

begun=$(date +%s)
for bench; do
	name=${bench##*/bench_}
	part "${name%.sh}" "$bench"
done
part simulate students
printf 'figure\tall of these, measured one after the other\t< 300\t%d\ts\n' \
    $(($(date +%s) - begun)) >> "$rows"

if [ -z "$page" ]; then
	awk -f "$tools/figures.awk" "$rows"
	exit
fi

# Names of the kind of machine, and none of the machine's own.
model=$(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo 2> /dev/null | sed 1q)
cat << END
# Measured figures

What \`make figures\` measured, best on a machine where nothing else is at work:

- processor: ${model:-$(uname -m)}, $(getconf _NPROCESSORS_ONLN) cores
- system: $(uname -s) $(uname -r | sed 's/-.*//')
- compiler: $(${CC:-cc} --version | sed 1q)
- load before it began: $load
- day: $(date -u +%Y-%m-%d)

A goal is in the unit of its figure.
*of goal* is the figure divided by its goal: for a goal that begins with \`<\` less is better, for one with \`>\` more.
A figure that misses its goal is marked **!**.
*beside it* is the same figure of somebody else, measured in the same run, and ours divided by it: \`aubio\` is a general-purpose library that hears the same sounds and knows nothing of what was asked, \`true(1)\` a program that does nothing, so what starting any program takes.

\`\`\`
END
awk -f "$tools/figures.awk" "$rows"
echo '```'
