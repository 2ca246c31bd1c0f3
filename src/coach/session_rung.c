/*
 * session_rung.c - the rung of the next round (rule F3)
 *
 * Nothing is counted as it goes; the rung is worked out from all marks of the
 * block each time it is asked for, so a late mark or a change of mind is as
 * good as an early one:
 *
 *	round	1	2	3		the next
 *	marks	clean	clean	4 shaky
 *	rung	6	6	8		8 (one shaky of four)
 */
#include "ladder.h"
#include "session_parts.h"

/* A round of the block, as it is marked by now. */
struct judged {
	int turns, clean, shaky;
	int pulses;
};

static struct judged judge(const struct session *s, int round)
{
	struct judged j = { 0 };

	for (int i = 0; i < s->played; i++) {
		const struct played_turn *t = &s->turn_played[i];

		if (t->block != s->at.from.block || t->round != round ||
		    !t->whole)
			continue;
		j.turns++;
		j.clean += t->mark == MARK_CLEAN;
		j.shaky += t->mark == MARK_SHAKY;
		j.pulses = t->pulses;
	}
	return j;
}

static bool half_shaky(const struct judged *j)
{
	return j->shaky > 0 && j->shaky * 2 >= j->turns;
}

/*
 * Half of the last round shaky; or of the one before, when its last marks
 * came too late for the rung of the round after it.
 */
static bool falls(const struct session *s, int round)
{
	struct judged last = judge(s, round);

	if (half_shaky(&last))
		return true;
	if (round == 0)
		return false;

	struct judged before = judge(s, round - 1);

	return half_shaky(&before) && last.pulses >= before.pulses;
}

static bool rises(const struct session *s, int round)
{
	int running = s->plan.clean_rounds;

	for (int i = 0; i <= round; i++) {
		struct judged j = judge(s, i);

		running = j.turns > 0 && j.clean == j.turns ? running + 1 : 0;
	}
	return running >= 2 && !s->climbed;
}

int rung_next(const struct session *s)
{
	const struct plan_block *b = &s->plan.block[s->at.from.block];
	int round = s->at.from.round;

	if (b->kind != BLOCK_WORK || s->at.pulses == 0)
		return s->at.pulses;
	/* A slower day: the first go is over. */
	if (falls(s, round) || (s->plan.slower && round == 0))
		return rung_lower(s->wish.routine, s->at.pulses);
	if (rises(s, round))
		return rung_higher(s->wish.routine, s->at.pulses);
	return s->at.pulses;
}
