#!/bin/sh
# test_story_programme.sh - acceptance story 2: what the whole programme comes
# to, and how its earlier stages take turns in coming back
#
# Once through all six stages is 28 + 5 x 56 = 308 s; with changes of 3 s a turn
# is 11 s and the swing in the air 27 s: 27 + 5 x 52 = 287 s.
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"

routine_at letting-go
run 0 check letting-go.yaml
has "$work/out" 'One pass through all stages takes 5:08, 8 s over 5:00.'
sed 's/change_seconds: 4/change_seconds: 3/' letting-go.yaml > quick.yaml
run 0 check quick.yaml
has "$work/out" 'One pass through all stages takes 4:47 and fits into 5:00.'

# --- recaps at stage 6, day after day --------------------------------------------

# marked DAY PLAYER: the keys of a session, all clean; for the player "shaky"
# every turn of a recap of "tone" is shaky
marked()
{
	pedals keys
	[ "$2" = shaky ] || return 0
	"$EVENHAND" today --at "$1" --marking turn --player "$2" \
	    letting-go.yaml > plan
	case $(grep ' again: A tone apart' plan) in
	0:28*) at='0:46 0:58 1:10 1:22' ;;
	1:24*) at='1:42 1:54 2:06 2:18' ;;
	*) return 0 ;;
	esac
	for t in $at; do
		sed "s/^$t clean/$t shaky/" keys > k && mv k keys
	done
}

# recaps PLAYER DAYS: what came back in each session of that player
recaps()
{
	for day in $2; do
		marked "2026-03-${day}T17:00" "$1"
		session "2026-03-${day}T17:00" keys --marking turn \
		    --player "$1" letting-go.yaml
	done
	"$EVENHAND" history --json --player "$1" > "$1.json"
	ask "$1.json" "select group_concat(s, ', ') from (select
	    group_concat(stage, ' ') as s from (select distinct
	    json_extract(value, '\$.sitting') as n,
	    json_extract(value, '\$.stage') as stage from f,
	    json_each(j, '\$.turns') where
	    json_extract(value, '\$.block') = 'recap') group by n order by n)"
}

# A day off in each week, as the routine wants it.
is "all clean" "$(recaps clean '02 03 04 05 06 07')" "wide thirds, \
tone semitone, wide thirds, tone semitone, wide thirds, tone semitone"
is "tone always shaky" "$(recaps shaky '02 03 04 05 06')" "wide thirds, \
tone semitone, wide tone, thirds tone, tone semitone"
is "it was shaky each time" "$(ask shaky.json "select count(*) || ' ' ||
    sum(json_extract(value, '\$.mark') = 'shaky') from f,
    json_each(j, '\$.turns') where $(block recap tone)")" "16 16"
finish
