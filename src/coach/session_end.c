/*
 * session_end.c - the sums and sentences of the end page
 *
 * One thing to keep is chosen from the marks as they are: first of all the
 * unit that was shaky when it was played cold, with a check of that stage to
 * try next time.  Checks take turns day by day.  Without marks nothing is made
 * up about how it went, and after pain there is nothing to keep but rest.
 */
#include "session_parts.h"

#include "evenhand/base/frames.h"

int session_bows(const struct session *s, int unit)
{
	int bows = 0;

	for (int i = 0; i < s->played; i++)
		if (s->turn_played[i].unit == unit)
			bows += s->turn_played[i].bows_done;
	return bows;
}

double session_metres(const struct session *s)
{
	int64_t um = 0;

	for (int i = 0; i < s->played; i++)
		um += s->turn_played[i].slide_um;
	return (double)um / 1e6;
}

/* --- one thing to keep --- */

static enum block_kind kind_of(const struct session *s, int played)
{
	return s->plan.block[s->turn_played[played].block].kind;
}

/* Shaky marks of a unit in the block of a turn. */
static int shaky_marks(const struct session *s, const struct played_turn *t)
{
	int shaky = 0;

	for (int i = 0; i < s->played; i++)
		shaky += s->turn_played[i].block == t->block &&
		    s->turn_played[i].unit == t->unit &&
		    s->turn_played[i].mark == MARK_SHAKY;
	return shaky;
}

/* How much a shaky turn tells: cold before warm, work before recap. */
static int weight(const struct session *s, int i)
{
	const struct played_turn *t = &s->turn_played[i];

	if (t->mark != MARK_SHAKY)
		return 0;
	return 4000 * t->first_go + 2000 * (kind_of(s, i) != BLOCK_RECAP) +
	    1000 + shaky_marks(s, t);
}

/* The turn that tells most, -1 when none was shaky. */
static int shakiest(const struct session *s)
{
	int best = -1, most = 0;

	for (int i = 0; i < s->played; i++)
		if (weight(s, i) > most) {
			most = weight(s, i);
			best = i;
		}
	return best;
}

/* Today's check of a stage, else its cue, else what is always good. */
static const char *check_of(const struct session *s, int stage)
{
	const struct stage *t = &s->wish.routine->stage[stage];
	int day = s->plan.day_on_stage > 0 ? s->plan.day_on_stage - 1 : 0;

	if (t->checks > 0)
		return t->check[day % t->checks];
	return t->cue[0] ? t->cue : message_sentence(M_SESSION_KEEP_LOOSE);
}

/* The stage to look at when nothing was shaky: that of the last turn. */
static int last_stage(const struct session *s)
{
	int block = s->turn_played[s->played - 1].block;

	return s->plan.block[block].stage;
}

static struct message keep_shaky(const struct session *s, int played)
{
	const struct played_turn *t = &s->turn_played[played];
	int stage = s->plan.block[t->block].stage;
	const char *title = s->wish.routine->stage[stage].title;
	const char *check = check_of(s, stage);
	char unit[UNIT_TEXT_MAX];

	say_unit(s, t->unit, unit);
	if (t->unit < 0)
		return message_with(
		    M_SESSION_KEEP_AIR, TEXT(title), TEXT(check));
	return message_with(
	    t->first_go ? M_SESSION_KEEP_FIRST_GO : M_SESSION_KEEP_SHAKY,
	    TEXT(unit), TEXT(title), TEXT(check));
}

struct message session_keep(const struct session *s)
{
	int shaky = shakiest(s), marks = 0;

	if (s->played == 0 || s->pain)
		return message_of(M_NONE);
	if (shaky >= 0)
		return keep_shaky(s, shaky);
	for (int i = 0; i < s->played; i++)
		marks += s->turn_played[i].mark == MARK_CLEAN;
	return message_with(
	    marks > 0 ? M_SESSION_KEEP_CLEAN : M_SESSION_KEEP_CHECK,
	    TEXT(check_of(s, last_stage(s))));
}

/* --- when the next session may be --- */

/* Frames count from the start of the sitting, without its gaps. */
static struct moment moment_at(const struct session *s, int64_t frame)
{
	struct moment m = s->plan.now;

	m.utc += (frames_to_ms(frame, s->rate) + s->lost_ms) / 1000;
	return m;
}

/* Sittings of today with a turn that was kept, and when the last was over. */
static int sat_today(const struct session *s, struct moment *ended)
{
	const struct history *h = s->wish.history;
	int sat = s->played > 0;

	*ended = moment_at(s, s->practised_to);
	for (int i = 0; h && i < h->sittings; i++) {
		const struct past_sitting *past = &h->sitting[i];

		if (past->day != s->plan.day || !history_sat(past))
			continue;
		sat++;
		if (s->played == 0)
			ended->utc = history_end(past);
	}
	return sat;
}

struct message session_next_start(const struct session *s)
{
	const struct routine *r = s->wish.routine;
	struct moment next;
	int sat = sat_today(s, &next);

	if (s->pain)
		return message_of(moment_is_night(moment_at(s, s->now))
			? M_SESSION_NEXT_PAIN_NIGHT
			: M_SESSION_NEXT_PAIN);
	if (sat == 0 && !moment_is_night(s->plan.now))
		return message_of(M_SESSION_NEXT_ANY);
	next.utc += (int64_t)r->hours_apart * 3600;
	/* A time of day without seconds must not come too early. */
	next.utc += 59;
	if (sat < r->per_day && moment_practice_day(next) == s->plan.day &&
	    moment_day(next) == moment_day(s->plan.now))
		return message_with(
		    M_SESSION_NEXT_TODAY, TIME(moment_minute(next)));
	return message_of(moment_is_night(s->plan.now)
		? M_SESSION_NEXT_AFTER_SLEEP
		: M_SESSION_NEXT_TOMORROW);
}
