/*
 * gather_sitting.c - a sitting of a record, new or the same as one here
 *
 * The same sitting may have grown since, there or here: turns are joined, its
 * end is that with the higher number, and while it was never said to end the
 * longer time counts.
 */
#include "gather_parts.h"

static int64_t routine_key(
    const struct gathering *g, const struct record_routine *of)
{
	const struct record_routine *m = g->r->routine;
	int i = 0;

	for (; m != NULL && m != of; m = m->next)
		i++;
	return g->routine[i];
}

static bool add_sitting(
    struct gathering *g, const struct record_sitting *s, struct local *l)
{
	struct query *q = gather_query_of(g, ADD_SITTING);

	query_put(q, 1, l->origin);
	query_put(q, 2, s->row);
	query_put(q, 3, s->began.utc);
	query_put(q, 4, s->began.offset);
	query_put(q, 5, s->day);
	query_put(q, 6, routine_key(g, s->routine));
	query_put_text(q, 7, s->work_stage);
	query_put_text(q, 8, s->asked_stage);
	query_put_text(q, 9, s->instrument);
	query_put(q, 10, s->marking);
	query_put(q, 11, s->cap_ms);
	query_put(q, 12, s->planned_ms);
	query_put(q, 13, s->length_ms);
	query_put(q, 14, s->how);
	query_put(q, 15, s->ended.utc);
	query_put(q, 16, s->ended.offset);
	query_put(q, 17, s->ended_row);
	if (query_run(q) != QUERY_GOOD)
		return false;
	l->key = sqlite3_last_insert_rowid(g->d->handle);
	l->day = s->day;
	l->new = true;
	g->news->sittings_new++;
	gather_added(g, s->computer, s->row);
	return true;
}

/* Less than, equal or greater than 0, as a is than b. */
static int order(int64_t a, int64_t b)
{
	return (a > b) - (a < b);
}

/* Of two ends with one number the greater by what they say. */
static int end_order(const struct record_sitting *s, const struct local *l)
{
	int by = order((int)s->how, l->how);

	if (by == 0)
		by = order(s->ended.utc, l->ended.utc);
	if (by == 0)
		by = order(s->ended.offset, l->ended.offset);
	return by != 0 ? by : order(s->length_ms, l->length_ms);
}

static bool set_end(
    struct gathering *g, const struct record_sitting *s, const struct local *l)
{
	struct query *q = gather_query_of(g, SET_END);

	query_put(q, 1, l->key);
	query_put(q, 2, s->how);
	query_put(q, 3, s->length_ms);
	query_put(q, 4, s->ended.utc);
	query_put(q, 5, s->ended.offset);
	query_put(q, 6, s->ended_row);
	return query_run(q) == QUERY_GOOD;
}

static bool join_end(struct gathering *g, const struct record_sitting *s,
    const struct local *l, bool *more)
{
	int by = order(s->ended_row, l->ended_row);
	struct query *q;

	if (s->ended_row == 0 && l->ended_row == 0) {
		if (s->length_ms <= l->length_ms)
			return true;
		*more = true;
		q = gather_query_of(g, SET_LENGTH);
		query_put(q, 1, l->key);
		query_put(q, 2, s->length_ms);
		return query_run(q) == QUERY_GOOD;
	}
	if (by == 0) {
		by = end_order(s, l);
		g->news->different += by != 0;
	}
	if (by <= 0)
		return true;
	*more = true;
	return set_end(g, s, l);
}

/* Of two shares of one unit each number is the greater one. */
static bool join_share(struct gathering *g, const struct record_share *share,
    int64_t key, bool *more)
{
	struct query *q = gather_query_of(g, SHARE_AT);
	int planned = -1, dropped = -1;

	query_put(q, 1, key);
	query_put_text(q, 2, share->stage);
	query_put_text(q, 3, share->unit);
	if (query_next(q)) {
		planned = query_int(q, 0);
		dropped = query_int(q, 1);
	}
	query_again(q);
	if (planned == share->planned && dropped == share->dropped)
		return true;
	g->news->different += planned >= 0;
	if (share->planned <= planned && share->dropped <= dropped)
		return true;
	*more = true;
	q = gather_query_of(g, planned < 0 ? ADD_SHARE : SET_SHARE);
	query_put(q, 1, key);
	query_put_text(q, 2, share->stage);
	query_put_text(q, 3, share->unit);
	query_put(q, 4, share->planned > planned ? share->planned : planned);
	query_put(q, 5, share->dropped > dropped ? share->dropped : dropped);
	return query_run(q) == QUERY_GOOD;
}

static bool join_shares(struct gathering *g, const struct record_sitting *s,
    const struct local *l, bool *more)
{
	for (int i = 0; i < s->shares; i++)
		if (!join_share(g, &s->share[i], l->key, more))
			return false;
	return true;
}

/* What belongs to a sitting that is here by now. */
static bool join(
    struct gathering *g, const struct record_sitting *s, struct local *l)
{
	bool more = l->new;

	if (!join_shares(g, s, l, &more) || !gather_turns(g, s, l, &more) ||
	    (!l->new && !join_end(g, s, l, &more)))
		return false;
	if (!l->new) {
		g->news->sittings_more += more;
		g->news->sittings_known += !more;
	}
	if (!more)
		return true;
	g->changed = true;
	/* A day on which nothing was played has no roll-up. */
	return (s->turns == 0 || gather_day(g, l->day)) &&
	    database_renew(g->d, RENEW_SEEN, l->key) &&
	    database_renew(g->d, RENEW_SHARES, l->key);
}

static bool find_or_add(
    struct gathering *g, const struct record_sitting *s, struct local *l)
{
	bool taken;

	if (!gather_find_sitting(g, s, l, &taken))
		return false;
	if (l->key != 0)
		return true;
	l->origin = g->computer[s->computer];
	return (!taken || gather_set_apart(g, s, l)) && add_sitting(g, s, l);
}

bool gather_sitting(struct gathering *g, const struct record_sitting *s)
{
	struct local l;

	if (!find_or_add(g, s, &l) || !join(g, s, &l))
		return false;
	for (const struct record_note *n = s->note; n != NULL; n = n->next)
		if (!gather_note(g, n, l.key))
			return false;
	return true;
}
