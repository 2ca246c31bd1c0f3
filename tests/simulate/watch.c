/*
 * watch.c - what must hold in every course, and what is counted for the table
 */
#include <string.h>

#include "evenhand/base/frames.h"
#include "simulate.h"

const char *const broken_name[BROKENS] = { "no session passes its cap",
	"nobody plays twice running", "each earlier stage comes back in time",
	"nothing is played on a day of rest",
	"no stage is played that is not open" };

enum { UNSEEN_LONG = 3 };

void watch_break(struct watch *w, enum broken b, const char *what, int number)
{
	struct result *out = w->result;

	out->broken[b]++;
	if (out->tell[0] == '\0')
		snprintf(out->tell, sizeof(out->tell), "day %d, %s: %s (%d)",
		    w->day, broken_name[b], what, number);
}

static bool has_reason(const struct plan *p, enum message_id id)
{
	for (int i = 0; i < p->reasons; i++)
		if (p->reason[i].message.id == id)
			return true;
	return false;
}

/* By their names in the plan's own reasons. */
const char *const load_name[LOADS] = { "RECAPS", "NO_CLIMB", "LOWEST", "SHORT",
	"AIR", "REST" };

void watch_load(struct watch *w, const struct plan *p)
{
	static const char start[] = "M_COACH_LOAD_";

	w->result->plans++;
	for (int i = 0; i < p->reasons; i++) {
		const char *name = message_name(p->reason[i].message.id);

		if (strncmp(name, start, sizeof(start) - 1) != 0)
			continue;
		for (int k = 0; k < LOADS; k++)
			w->result->load[k] += strcmp(name + sizeof(start) - 1,
						  load_name[k]) == 0;
	}
}

static int recaps_of(const struct plan *p, uint32_t *stages)
{
	int recaps = 0;

	*stages = 0;
	for (int b = 0; b < p->blocks; b++)
		if (p->block[b].kind == BLOCK_RECAP) {
			*stages |= UINT32_C(1) << p->block[b].stage;
			recaps++;
		}
	return recaps;
}

/*
 * Every plan that holds a recap brings back one of n stages.  What was not
 * played for three sessions goes first, so nobody waits for more than those
 * three and one turn of each of the others.
 */
static void watch_recaps(struct watch *w, const struct plan *p)
{
	const struct routine *r = w->routine;
	uint32_t chosen;
	int recaps = recaps_of(p, &chosen), candidates = 0;

	/* Who is back at it does not wait for it. */
	w->result->seen[p->work_stage].waiting = 0;
	/* In the days after pain nothing wide comes back. */
	if (recaps == 0 || has_reason(p, M_COACH_EASED))
		return;
	for (int i = 0; i < p->work_stage; i++)
		candidates += !r->stage[i].in_the_air;
	for (int i = 0; i < p->work_stage; i++) {
		struct stage_seen *s = &w->result->seen[i];

		if (r->stage[i].in_the_air)
			continue;
		s->waiting++;
		if (s->waiting > UNSEEN_LONG + candidates)
			watch_break(
			    w, BROKEN_REVISIT, r->stage[i].id, s->waiting);
		if (!(chosen >> i & 1))
			continue;
		s->sightings++;
		s->gap_sum += s->waiting;
		if (s->waiting > s->gap_max)
			s->gap_max = s->waiting;
		s->waiting = 0;
	}
}

void watch_plan(struct watch *w, const struct plan *p)
{
	const struct routine *r = w->routine;
	int open = r->decided_by == DECIDED_BY_STUDENT ? r->no_further_than
						       : r->work_on;

	if (p->length_ms > p->cap_ms)
		watch_break(w, BROKEN_CAP, "planned", p->length_ms);
	if (p->verdict != VERDICT_PRACTISE)
		watch_break(w, BROKEN_REST, "verdict", (int)p->verdict);
	for (int b = 0; b < p->blocks; b++)
		if (p->block[b].stage > open)
			watch_break(w, BROKEN_PAST,
			    r->stage[p->block[b].stage].id, open);
	watch_recaps(w, p);
}

static int playing(const struct plan *p)
{
	int units = 0;

	for (int u = 0; u < UNITS_MAX; u++)
		units += p->share[u] > p->dropped[u];
	return units;
}

void watch_turn(
    struct watch *w, const struct session *s, const struct turn_row *row)
{
	int block = s->at.from.block;

	if (row->unit < 0 || row->bows_done < row->bows_asked)
		return;
	if (row->kind == BLOCK_WORK && row->unit < FINGERS)
		w->work_turns[row->unit]++;
	if (row->unit < FINGERS && w->day <= DAYS_MAX)
		w->day_metres[w->day][row->unit] += (double)row->slide_um / 1e6;
	if (block == w->last_block && row->unit == w->last_unit &&
	    playing(&s->plan) > 1)
		watch_break(w, BROKEN_TWICE, "finger", row->unit + 1);
	w->last_block = block;
	w->last_unit = row->unit;
	w->result->digest = (w->result->digest ^ (uint64_t)row->stage) *
		UINT64_C(1099511628211) +
	    (uint64_t)(row->unit * 16 + row->pulses);
}

void watch_end(struct watch *w, const struct session *s)
{
	int64_t length = frames_to_ms(session_length(s), s->rate);

	if (length > s->plan.cap_ms)
		watch_break(w, BROKEN_CAP, "played", (int)length);
	w->result->cut_off += s->ended != ENDED_WHOLE;
	w->result->sessions++;
}

void watch_metres(const struct watch *w, double *metres)
{
	for (int f = 0; f < FINGERS; f++) {
		metres[f] = 0;
		for (int d = w->day; d >= 0 && d > w->day - WEEK; d--)
			metres[f] += w->day_metres[d][f];
	}
}

void watch_day(struct watch *w)
{
	struct result *out = w->result;
	double metres[FINGERS];

	watch_metres(w, metres);
	for (int f = 0; f < FINGERS; f++) {
		int bin = (int)(metres[f] / METRES_BIN);

		out->metres[f][bin < METRES_BINS ? bin : METRES_BINS - 1]++;
		if (metres[f] > out->metres_max[f])
			out->metres_max[f] = metres[f];
	}
}

void watch_week(struct watch *w)
{
	struct result *out = w->result;
	double least = 1;
	int all = 0;

	for (int f = 0; f < FINGERS; f++)
		all += w->work_turns[f];
	for (int f = 0; f < FINGERS && all > 0; f++) {
		double share = (double)w->work_turns[f] / all;

		out->share_sum[f] += share;
		least = share < least ? share : least;
	}
	memset(w->work_turns, 0, sizeof(w->work_turns));
	if (all == 0)
		return;
	if (out->weeks == 0 || least < out->least)
		out->least = least;
	out->least_sum += least;
	out->weeks++;
}
