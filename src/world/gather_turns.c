/*
 * gather_turns.c - the turns of a sitting joined, each with its mark
 *
 * A turn with a higher row took the place of one with a lower, and a mark with
 * a higher row that of a lower one, if it is higher than the turn's own.  With
 * the same row they are the same; where they are not, the greater one by what
 * they say stays, on every computer alike.
 */
#include <stdlib.h>
#include <string.h>

#include "gather_parts.h"
#include "record_turn.h"

/* A turn as it is here. */
struct here {
	int64_t key;
	struct record_turn turn;
};

static int order(int64_t a, int64_t b)
{
	return (a > b) - (a < b);
}

/* By what was played, not by row or mark. */
static int turn_order(const struct record_turn *a, const struct record_turn *b)
{
	const int64_t x[] = { a->kind, a->round, a->pulses, a->bows_asked,
		a->bows_done, a->first_go, a->resets, a->dropouts, a->start_ms,
		a->slide_um, a->ended.utc, a->ended.offset };
	const int64_t y[] = { b->kind, b->round, b->pulses, b->bows_asked,
		b->bows_done, b->first_go, b->resets, b->dropouts, b->start_ms,
		b->slide_um, b->ended.utc, b->ended.offset };
	int by = strcmp(a->stage, b->stage);

	if (by == 0)
		by = strcmp(a->unit, b->unit);
	for (size_t i = 0; by == 0 && i < sizeof(x) / sizeof(x[0]); i++)
		by = order(x[i], y[i]);
	return by;
}

static int mark_order(const struct record_turn *a, const struct record_turn *b)
{
	int by = order(a->mark, b->mark);

	return by != 0 ? by : order(a->mark_ms, b->mark_ms);
}

static void put_turn(struct query *q, const struct record_turn *t)
{
	query_put(q, 4, t->number);
	query_put(q, 5, t->row);
	query_put(q, 6, t->ended.utc);
	query_put(q, 7, t->ended.offset);
	query_put(q, 8, t->kind);
	query_put_text(q, 9, t->stage);
	query_put_text(q, 10, t->unit);
	query_put(q, 11, t->round);
	query_put(q, 12, t->pulses);
	query_put(q, 13, t->bows_asked);
	query_put(q, 14, t->bows_done);
	query_put(q, 15, t->first_go);
	query_put(q, 16, t->resets);
	query_put(q, 17, t->dropouts);
	query_put(q, 18, t->start_ms);
	query_put(q, 19, t->slide_um);
}

static enum query_end write_turn(struct gathering *g,
    const struct record_turn *t, const struct local *l, bool new)
{
	struct query *q = gather_query_of(g, new ? ADD_TURN : SET_TURN);

	query_put(q, 2, l->key);
	put_turn(q, t);
	if (new) {
		query_put(q, 1, l->origin);
		query_put(q, 3, l->day);
		query_put(q, 20, t->mark);
		query_put(q, 21, t->mark_ms);
		query_put(q, 22, t->mark_row);
	}
	return query_run(q);
}

/* Writes it; where its number is taken, its sitting is set apart first. */
static bool write_apart(struct gathering *g, const struct record_sitting *s,
    const struct record_turn *t, struct local *l, bool new)
{
	enum query_end end = write_turn(g, t, l, new);

	if (end == QUERY_CLASH && gather_set_apart(g, s, l))
		end = write_turn(g, t, l, new);
	return end == QUERY_GOOD;
}

static bool add_turn(struct gathering *g, const struct record_sitting *s,
    const struct record_turn *t, struct local *l, struct here *h)
{
	if (!write_apart(g, s, t, l, true))
		return false;
	h->key = sqlite3_last_insert_rowid(g->d->handle);
	h->turn = *t;
	g->news->turns_new++;
	return true;
}

static bool write_mark(struct gathering *g, const struct here *h)
{
	struct query *q = gather_query_of(g, SET_TURN_MARK);

	query_put(q, 1, h->key);
	query_put(q, 2, h->turn.mark);
	query_put(q, 3, h->turn.mark_ms);
	query_put(q, 4, h->turn.mark_row);
	return query_run(q) == QUERY_GOOD;
}

static void take_mark(struct record_turn *to, const struct record_turn *from)
{
	to->mark = from->mark;
	to->mark_ms = from->mark_ms;
	to->mark_row = from->mark_row;
}

/* The mark that stays of both; true when the one here changes. */
static bool join_mark(
    struct gathering *g, const struct record_turn *t, struct record_turn *to)
{
	int by = order(t->mark_row, to->mark_row);
	bool changes = false;

	if (by == 0 && t->mark_row != 0) {
		by = mark_order(t, to);
		g->news->different += by != 0;
	}
	if (by > 0) {
		take_mark(to, t);
		changes = true;
	}
	if (to->mark_row != 0 && to->mark_row <= to->row) {
		take_mark(to, &(struct record_turn) { .mark = MARK_NONE });
		changes = true;
	}
	return changes;
}

static bool join_turn(struct gathering *g, const struct record_sitting *s,
    const struct record_turn *t, struct local *l, struct here *h, bool *more)
{
	int by = order(t->row, h->turn.row);
	struct record_turn was = h->turn;
	struct query *q;

	if (by == 0) {
		by = turn_order(t, &h->turn);
		g->news->different += by != 0;
	}
	if (by > 0) {
		h->turn = *t;
		take_mark(&h->turn, &was);
		*more = true;
		if (!write_apart(g, s, t, l, false))
			return false;
	}
	if (h->turn.row > was.row) {
		q = gather_query_of(g, DROP_OLD_MEASURES);
		query_put(q, 1, h->key);
		query_put(q, 2, h->turn.row);
		if (query_run(q) != QUERY_GOOD)
			return false;
	}
	if (!join_mark(g, t, &h->turn))
		return true;
	*more = true;
	return write_mark(g, h);
}

/* Room for one more; false, and nothing is left, when there is no memory. */
static bool more_room(struct here **all, int count, int *room)
{
	struct here *more;

	if (count < *room)
		return true;
	more = realloc(*all, (size_t)*room * 2 * sizeof(*more));
	if (more == NULL) {
		free(*all);
		*all = NULL;
		return false;
	}
	*all = more;
	*room *= 2;
	return true;
}

/* The turns here that may be meant, in the order of their numbers. */
static struct here *read_here(
    struct gathering *g, const struct local *l, int last, int *count)
{
	struct query *q = gather_query_of(g, TURNS_OF);
	int room = 64;
	struct here *all = malloc((size_t)room * sizeof(*all));

	*count = 0;
	query_put(q, 1, l->key);
	while (all != NULL && !l->new &&query_next(q) &&
	    more_room(&all, *count, &room)) {
		struct here *h = &all[*count];

		*h = (struct here) { .key = query_whole(q, TURN_BEHIND) };
		if (!turn_read(q, &h->turn, &g->scratch)) {
			free(all);
			all = NULL;
		} else if (h->turn.number > last) {
			break;
		} else {
			++*count;
		}
	}
	query_again(q);
	g->no_memory |= all == NULL;
	return all;
}

/* The measures of a turn; those of a sitting are in the order of its turns. */
static bool join_measures(struct gathering *g, const struct record_sitting *s,
    int *at, const struct here *h, bool new, bool *more)
{
	for (; *at < s->measures && s->measure[*at].turn == h->turn.number;
	     ++*at)
		if (!gather_measures(
			g, &s->measure[*at], &h->turn, h->key, new, more))
			return false;
	return true;
}

static bool walk(struct gathering *g, const struct record_sitting *s,
    struct local *l, struct here *here, int count, bool *more)
{
	int at = 0, measure = 0;

	for (int i = 0; i < s->turns; i++) {
		const struct record_turn *t = &s->turn[i];
		struct here added;
		bool new;

		while (at < count && here[at].turn.number < t->number)
			at++;
		new = at == count || here[at].turn.number != t->number;
		*more = *more || new;
		if (new ? !add_turn(g, s, t, l, &added)
			: !join_turn(g, s, t, l, &here[at], more))
			return false;
		if (!join_measures(
			g, s, &measure, new ? &added : &here[at], new, more))
			return false;
	}
	return true;
}

bool gather_turns(struct gathering *g, const struct record_sitting *s,
    struct local *l, bool *more)
{
	struct here *here;
	int count;
	bool good;

	if (s->turns == 0)
		return true;
	here = read_here(g, l, s->turn[s->turns - 1].number, &count);
	good = here != NULL && walk(g, s, l, here, count, more);
	free(here);
	arena_done(&g->scratch);
	return good;
}
