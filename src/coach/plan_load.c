/*
 * plan_load.c - no finger over its week by what is planned (rule F5)
 *
 * When today would bring a finger over what its week may hold, the gentlest
 * thing that is enough is done:
 *
 *	earlier stages wider than a tone are played on the lowest rung
 *	no rung is gained today
 *	a second session of the day is left out
 *	the session gets shorter
 *	the work is played on the lowest rung, in a shorter session or not
 *	only the arm swings
 *
 * The rung comes late: only a first go at the top rung shows a stage secure, so
 * a rung taken away costs evidence, and minutes do not.  While a past is caught
 * up with it is the other way round.
 *
 * Until the session is laid out all is counted as if no finger were hurt, and
 * a rung that may be gained as if it were, so what is played is never more.
 *
 * A shorter session must never hold more turns than a longer one.  So a
 * session that is too much becomes the longest shorter one that is not, and
 * whether a second one is left out is asked of one of five minutes, whatever
 * the file's own are.
 */
#include <string.h>

#include "plan_parts.h"

static void add_round(struct loads *to, const struct making *m, int stage,
    int pulses, const int *turns)
{
	for (int u = 0; u < m->routine->units; u++)
		load_add_turns(to, m->routine, stage, u, pulses, turns[u]);
}

/*
 * Turns of work that come after a rung may have been gained: it takes two
 * clean rounds, or one more.  With uneven shares a round may leave one out.
 */
static void after_climb(const struct making *m, const int *share, int *after)
{
	int units = m->routine->units, rounds = 2 - m->plan->clean_rounds;

	for (int u = 1; u < units; u++)
		if (share[u] != share[0])
			rounds = 1;
	for (int u = 0; u < units; u++)
		after[u] = share[u] > rounds ? share[u] - rounds : 0;
	if (m->plan->climbed)
		memset(after, 0, sizeof(*after) * (size_t)units);
}

static void add_work(struct loads *to, const struct making *m)
{
	int units = m->routine->units;
	int share[UNITS_MAX], after[UNITS_MAX];

	if (m->rounds == 0)
		return;
	equal_share(m->rounds * units, units, m->ledger, share);
	after_climb(m, share, after);
	for (int u = 0; u < units; u++)
		share[u] -= after[u];
	add_round(to, m, m->stage, m->pulses, share);
	add_round(to, m, m->stage, rung_higher(m->routine, m->pulses), after);
}

static void add_recaps(struct loads *to, const struct making *m)
{
	int once[UNITS_MAX];

	for (int u = 0; u < UNITS_MAX; u++)
		once[u] = 1;
	for (int i = 0; i < m->candidates; i++)
		if (m->recap[i].chosen)
			add_round(
			    to, m, m->recap[i].stage, m->recap[i].pulses, once);
}

/* The week with all that is planned. */
static void add_up(struct making *m)
{
	struct loads today = { 0 };

	add_recaps(&today, m);
	add_work(&today, m);
	for (int f = 1; f <= FINGERS_MAX; f++) {
		m->week.finger[f].slide_um = m->had.finger[f].slide_um +
		    today.finger[f].slide_um;
		m->week.finger[f].pulses = m->had.finger[f].pulses +
		    today.finger[f].pulses;
	}
	m->today = today;
}

/* Whether a finger that plays today comes over its week; the first of them. */
static bool is_over(struct making *m)
{
	add_up(m);
	for (int f = 1; f <= FINGERS_MAX; f++) {
		const struct load *w = &m->week.finger[f];
		const struct load *a = &m->allowed.finger[f];

		if (m->today.finger[f].slide_um == 0)
			continue;
		if (w->slide_um <= a->slide_um && w->pulses <= a->pulses)
			continue;
		if (m->over.finger == 0)
			m->over = (struct load_over) { f, *w, *a };
		return true;
	}
	return false;
}

static bool lower_recaps(struct making *m)
{
	int lowest = m->routine->ladder[0];
	bool any = false;

	for (int i = 0; i < m->candidates; i++) {
		struct recap *c = &m->recap[i];

		if (!c->chosen || c->pulses == lowest ||
		    !plan_is_wide(&m->routine->stage[c->stage]))
			continue;
		c->pulses = lowest;
		any = true;
	}
	return any;
}

/* --- other lengths --- */

static void choose_anew(struct making *m)
{
	for (int i = 0; i < m->candidates; i++)
		m->recap[i].chosen = false;
	plan_choose(m);
}

/* What would go into a session of another length. */
static struct making at_cap(const struct making *m, int cap_ms)
{
	struct making other = *m;
	int own = m->plan->cap_ms;

	m->plan->cap_ms = cap_ms;
	other.recaps_fit = other.rounds = 0;
	plan_fit(&other);
	m->plan->cap_ms = own;
	return other;
}

static bool alike(const struct making *a, const struct making *b)
{
	return a->recaps_fit == b->recaps_fit && a->rounds == b->rounds;
}

/* The shortest session that holds as much. */
static int shortest_alike(const struct making *m, int cap_ms)
{
	const struct making whole = at_cap(m, cap_ms);
	int low = 0, high = cap_ms;

	while (low < high) {
		int middle = low + (high - low) / 2;
		const struct making other = at_cap(m, middle);

		if (alike(&other, &whole))
			high = middle;
		else
			low = middle + 1;
	}
	return low;
}

static void leave_out(struct making *m)
{
	m->recaps_fit = m->rounds = 0;
	m->rung_why = RUNG_NONE;
	choose_anew(m);
}

/* The longest session that is not too much, if there is one. */
static bool shorten(struct making *m)
{
	int recaps = m->recaps_fit, rounds = m->rounds;
	int cap = shortest_alike(m, m->plan->cap_ms);

	while (cap > 0) {
		struct making other;

		cap = shortest_alike(m, cap - 1);
		other = at_cap(m, cap);
		m->recaps_fit = other.recaps_fit;
		m->rounds = other.rounds;
		choose_anew(m);
		if (m->recaps_fit + m->rounds > 0 && !is_over(m)) {
			m->load = LOAD_SHORT;
			m->plan->cap_ms = cap;
			return true;
		}
	}
	m->recaps_fit = recaps;
	m->rounds = rounds;
	choose_anew(m);
	return false;
}

/* --- a second session of the day --- */

static bool sat_today(const struct making *m)
{
	for (int i = 0; i < m->history->sittings; i++)
		if (m->history->sitting[i].day == m->plan->day &&
		    history_sat(&m->history->sitting[i]))
			return true;
	return false;
}

/* Whether one of five minutes would be too much, whatever could be lowered. */
static bool five_minutes_over(struct making *m)
{
	struct plan *p = m->plan;
	int clean_rounds = p->clean_rounds;
	bool climbed = p->climbed, over;
	struct making five = at_cap(m, NEW_STAGE_CAP_MS);

	choose_anew(&five);
	plan_rung(&five);
	lower_recaps(&five);
	p->climbed = true;
	over = is_over(&five);
	p->clean_rounds = clean_rounds;
	p->climbed = climbed;
	if (over)
		m->over = five.over;
	return over;
}

/* --- together --- */

static void work_lowest(struct making *m)
{
	m->load = LOAD_LOWEST;
	if (m->rounds == 0)
		return;
	m->pulses = m->routine->ladder[0];
	m->rung_why = RUNG_LOAD;
}

static void ease(struct making *m)
{
	if (!is_over(m))
		return;
	m->load = LOAD_RECAPS;
	m->recaps_lowered = lower_recaps(m);
	if (!is_over(m))
		return;
	m->load = LOAD_NO_CLIMB;
	m->plan->climbed = true;
	m->plan->clean_rounds = 0;
	if (!is_over(m))
		return;
	/* Who catches up needs the turns more than the rung. */
	if (m->past != PAST_ALL && shorten(m))
		return;
	work_lowest(m);
	if (!is_over(m) || shorten(m))
		return;
	m->load = LOAD_AIR;
	leave_out(m);
}

void plan_load(struct making *m)
{
	int today = m->plan->day;

	m->full_cap_ms = m->plan->cap_ms;
	if (m->in_the_air || m->plan->air_only)
		return;
	load_of_days(&m->had, m->history, today - LOAD_WEEK_DAYS + 1, today);
	load_allowed(&m->allowed, m->routine, m->history, today);
	if (sat_today(m) && five_minutes_over(m)) {
		m->load = LOAD_REST;
		m->swings = 0;
		leave_out(m);
	} else {
		ease(m);
	}
	add_up(m);
}
