#!/bin/sh
# test_sound_lost.sh - the sound server is killed, frozen and started anew in mid
# turn: the practice goes on by sight, nothing is lost, and the sound comes back
#
# The session has turns at 0:08, 0:20, 0:32 and 0:44; three of them lose their
# sound:
#
#	0:10 killed    0:13 started again
#	0:22 frozen    0:25 thawed
#	0:34 ended     0:35 started again
#
# Functions are called by way of so and within.
# shellcheck disable=SC2317
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/sound.sh
. "$root/tests/whole/sound.sh"
minute minute.yaml
minute_keys > keys
due 0:6:1234 > due.txt

# What changes while the program gives sound to the server.
pulse()
{
	case $kind in
	pipewire) stat -c '%i %s' "$tap" 2> /dev/null ;;
	jack) on_server timeout 1 jack_lsp -c 2> /dev/null | grep -A 1 '^[Pp]ort[Aa]ud' |
	    grep -q system:playback && date +%N ;;
	esac
}

# moves: sound is given now
moves()
{
	was=$(pulse)
	sleep 0.1
	[ -n "$was" ] && [ "$(pulse)" != "$was" ]
}

still()
{
	! moves
}

# until_ms MS: waits until so many ms after the session's first second
until_ms()
{
	left=$(($1 - $(now_ms) + began))
	if [ "$left" -gt 0 ]; then
		sleep "$((left / 1000)).$(printf '%03d' $((left % 1000)))"
	fi
}

# back LABEL: sound is given again within 2 s
back()
{
	since=$(now_ms)
	so "$kind, $1: it sounds again" within 4 moves
	took=$(($(now_ms) - since))
	so "$kind, $1: after $took ms" [ "$took" -le 2000 ]
}

# spent: hundredths of a core that the program and those it started have used
spent()
{
	for p in "$pid" $(children "$pid") \
	    $(for c in $(children "$pid"); do children "$c"; done); do
		used "$p"
	done | awk '{ n += $1 } END { print n + 0 }'
}

# lost LABEL: no sound is given, and nobody spins over it
lost()
{
	so "$kind, $1: no sound is given" within 1 still
	before=$(spent)
	sleep 1
	so "$kind, $1: nobody spins ($(($(spent) - before)) %)" \
	    [ $(($(spent) - before)) -lt 50 ]
	so "$kind, $1: the practice goes on" running "$pid"
}

# alike: what was heard is the end of what was due.  Behind JACK's server, which
# is not tapped but recorded, a busy computer may lose two of its cycles.
alike()
{
	awk -v cycle=512 -v lost="$([ "$kind" = jack ] && echo 2 || echo 0)" '
	    NR == FNR { at[NR] = $1; what[NR] = $2; next }
	    $2 != what[FNR] { exit bad = 1 }
	    FNR > 1 { off = at[FNR] - at[FNR - 1] - $1 + before
	        if (off < 0 || off % cycle) exit bad = 1
	        sum += off / cycle }
	    { before = $1 }
	    END { exit bad || sum > lost }' rest.txt heard.txt
}

# lose NAME: a session that loses its sound three times
lose()
{
	practise "$1" minute.yaml
	# The two pages are answered at once, and the session begins.
	so "$kind: it sounds" within 3 moves
	began=$(now_ms)
	until_ms 10000
	"$server" cut KILL
	lost killed
	until_ms 13000
	"$server" restore
	back killed
	until_ms 22000
	so "$kind: it sounds before it freezes" moves
	"$server" freeze
	lost frozen
	until_ms 25000
	"$server" thaw
	back frozen
	until_ms 34000
	so "$kind: it sounds before it is ended" moves
	"$server" cut
	"$server" restore
	if [ "$kind" = jack ]; then
		"$server" record rest.wav 21 &
		recorder=$!
	fi
	back "ended and started anew"
	family=$(children "$pid")
	wait "$pid"
	status=$?
	for member in $family; do
		so "$kind: nobody is left" within 2 ended "$member"
	done
}

# listened: what was heard from the last return to the end, and what was due
listened()
{
	if [ "$kind" = jack ]; then
		wait "$recorder"
		heard rest.wav > heard.txt
	else
		tapped --from-first > heard.txt
	fi
	n=$(wc -l < heard.txt | tr -d ' ')
	tail -n "$n" due.txt > rest.txt
}

for kind in $(kinds pipewire); do
	server "$kind"
	# A very busy computer may lose the sound once more, by itself, or a recorder
	# more than it may; it may have to try again.
	for name in "$kind-1" "$kind-2" "$kind-3"; do
		lose "$name"
		listened
		[ "$(grep -c 'The sound is gone' "$work/out")" -gt 3 ] ||
		    ! alike || break
	done
	status_is "$status" 0 "$kind: the session"
	is "$kind: it says three times that it is gone" \
	    "$(grep -c 'The sound is gone' "$work/out")" 3
	is "$kind: nothing on standard error" "$(cat "$work/err")" ""
	"$EVENHAND" history --json --player "$name" > h.json
	is "$kind: turns" "$(turns h.json start_ms 1)" \
	    "8000 20000 32000 44000"
	is "$kind: all whole" "$(turns h.json bows_done 1)" "2 2 2 2"
	is "$kind: all marked" "$(turns h.json mark 1)" \
	    "clean clean clean clean"
	# The journal knows of the three turns that they lost their sound.
	is "$kind: turns that were not heard whole" "$(turns h.json \
	    'dropouts' 1 | awk '{ print ($1 > 0) + ($2 > 0) + ($3 > 0) }')" 3
	# From the last return to the end every sound is at its frame.
	so "$kind: after that $n sounds to the end, at their frames" \
	    [ "$n" -ge 18 ] && so "$kind: none missing, none extra" alike
	server_stop
done
finish
