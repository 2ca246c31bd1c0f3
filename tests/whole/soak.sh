#!/bin/sh
# soak.sh MINUTES - one session at true pace for so long, by hand: make soak
#
# On a sound server of our own and in a real terminal of 120x40, while a bowed
# string is played into the microphone.  Every 15 s a line for each process goes
# to $SOAK (./soak.txt): seconds, its part, private memory in kB, time of a core
# in hundredths of a second, open files.  In the end the sounds that were written
# to the card are compared with those that were due.
#
# A session may only be this long after weeks of practice, which are played
# first, without waiting.
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/tmux.sh
. "$root/tests/whole/tmux.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
: "${BOWING:?the program that bows}" "${SOAK:?the file for what is measured}"
minutes=$1
# Longer cycles are lost less often when the computer is busy.
export SOUND_CYCLE=1024
trap 'kill "$feeder" 2> /dev/null; tm kill-server 2> /dev/null; server_stop
    rm -rf "$work"' EXIT
feeder=
practised

# routine FILE MINUTES
routine()
{
	cat > "$1" <<-END
	routine: Long
	player: {instrument: cello}
	session: {minutes: $2, because: "a test of the program, nobody plays"}
	stages:
	  - {id: tone, title: Tone, place: string D, travel: tone}
	END
}

# The keys of a session with --marking turn: each turn is clean.
keys_for()
{
	printf '%s\n' '- forward' '- forward'
	awk -v last=$(($1 * 60 - 12)) 'BEGIN { for (s = 18; s <= last; s += 12)
	    printf "%d:%02d clean\n", int(s / 60), s % 60 }'
	printf '%s\n' '- forward'
}

# measure PID: a line for each process, as long as that one is there
measure()
{
	from=$(date +%s)
	keeper=$(children "$1")
	keeper=${keeper%% *}
	while [ -d "/proc/$1" ]; do
		screen | grep -o '[0-9]* gaps\{0,1\} in the sound' > "$work/gap" &&
		    mv "$work/gap" "$work/gaps"
		for pid in "$1" $keeper $(children "$keeper"); do
			echo "$(($(date +%s) - from))" \
			    "$(tr '\0' ' ' < "/proc/$pid/cmdline" | awk '{
			        sub(/.*[/]/, "", $1)
			        print $1 ($2 ~ /^--(for|hear)$/ ? $2 : "") }')-$pid" \
			    "$(awk '/^Private/ { n += $2 } END { print n }' \
			        "/proc/$pid/smaps_rollup")" \
			    "$(used "$pid")" "$(find "/proc/$pid/fd" | wc -l)"
		done 2> /dev/null
		sleep 15
	done
}

routine long.yaml "$minutes"
routine minute.yaml 1
keys_for "$minutes" > keys
for month in 04 05 06; do
	for day in $(seq -w 1 28); do
		session "2026-$month-${day}T17:00" keys --marking turn long.yaml
	done
done
"$BOWING" minute.yaml bowed.wav 0 > truth.txt
server pipewire
while "$server" feed "$PWD/bowed.wav"; do :; done > "$work/feed" 2>&1 &
feeder=$!
terminal 120x40
command_line "'$server' run '$EVENHAND' --listen --marking turn \
--at 2026-06-30T17:00 --script keys long.yaml 2> '$work/err'; date +%s > over"
waits 10 seen "Tone, "
# Its keeper is the younger one of that name.
practice=$(pgrep -o -f "^$EVENHAND --listen --marking turn")
begun=$(date +%s)
measure "$practice" > "$SOAK"
waits 10 [ -s over ]
echo "It took $(($(cat over) - begun)) s."
is "nothing on standard error" "$(cat "$work/err")" ""

# What was due, by the journal's own rounds.
"$EVENHAND" history --json > h.json
ask h.json "select group_concat(part) from (select
    json_extract(value, '\$.pulses') || ':' ||
    group_concat(json_extract(value, '\$.unit'), '') as part
    from f, json_each(j, '\$.turns') where json_extract(value, '\$.sitting') =
    (select max(json_extract(value, '\$.sitting')) from f,
    json_each(j, '\$.turns')) group by json_extract(value, '\$.round')
    order by min(json_extract(value, '\$.start_ms')))" > rounds
due --from-first "0:$(cat rounds)" > due.txt
tapped --from-first > heard.txt
# When the server falls behind the card is opened anew, and so is what it holds.
echo "$(wc -l < heard.txt) sounds of $(wc -l < due.txt) were written since the" \
    "card was opened last."
cat "$work/gaps" 2> /dev/null || echo "No gap was told."
so "every sound at its frame" match due.txt heard.txt
awk '!($2 in first) { first[$2] = $3; at[$2] = NR }
    { last[$2] = $3; most[$2] = $3 > most[$2] ? $3 : most[$2]; cpu[$2] = $4
      files[$2] = $5; s[$2] = $1 }
    END { for (p in first) printf "%s: private memory %d kB, %d at most, %d " \
        "in the end; %.2f percent of a core; %d open files\n", p, first[p],
        most[p], last[p], cpu[p] / (s[p] ? s[p] : 1), files[p] }' "$SOAK" | sort
finish
