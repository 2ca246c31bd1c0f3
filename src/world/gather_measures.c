/*
 * gather_measures.c - what was heard of a turn, whole for each method
 *
 * The number of its row stands among the values as "sequence": the higher one
 * stays.  With the same number they are the same, but for the last digits that
 * a number loses on its way through words; where they are not, the greater
 * values stay.
 */
#include <math.h>
#include <string.h>

#include "gather_parts.h"

#define SAME_WITHIN 1e-9

static int value_order(double a, double b)
{
	double size = fabs(a) > fabs(b) ? fabs(a) : fabs(b);

	if (fabs(a - b) <= SAME_WITHIN * size)
		return 0;
	return a < b ? -1 : 1;
}

/* The values here: how they compare, and the number of their row, 0: none. */
static bool look(struct gathering *g, const struct record_measure *m,
    int64_t turn_key, int64_t *row, int *by)
{
	struct query *q = gather_query_of(g, MEASURES_OF);
	int i = 0;

	*row = *by = 0;
	query_put(q, 1, turn_key);
	query_put(q, 2, m->method);
	while (query_next(q)) {
		const char *name = query_text(q, 0);
		double value = query_real(q, 1);

		if (strcmp(name, "sequence") == 0) {
			*row = query_whole(q, 1);
			continue;
		}
		/* A name the other does not have makes it the greater one. */
		if (*by == 0)
			*by = i == m->values ? -1
					     : -strcmp(m->value[i].name, name);
		if (*by == 0)
			*by = value_order(m->value[i].value, value);
		i++;
	}
	query_again(q);
	if (*by == 0 && i < m->values)
		*by = 1;
	return !q->bad;
}

static bool add(struct gathering *g, const struct record_measure *m,
    int64_t turn_key, const char *name, double value)
{
	struct query *q = gather_query_of(g, ADD_MEASURE);

	query_put(q, 1, turn_key);
	query_put(q, 2, m->method);
	query_put_text(q, 3, name);
	query_put_real(q, 4, value);
	return query_run(q) == QUERY_GOOD;
}

static bool write_all(
    struct gathering *g, const struct record_measure *m, int64_t turn_key)
{
	struct query *q = gather_query_of(g, DROP_MEASURES);

	query_put(q, 1, turn_key);
	query_put(q, 2, m->method);
	if (query_run(q) != QUERY_GOOD)
		return false;
	for (int i = 0; i < m->values; i++)
		if (!add(g, m, turn_key, m->value[i].name, m->value[i].value))
			return false;
	return add(g, m, turn_key, "sequence", (double)m->row);
}

bool gather_measures(struct gathering *g, const struct record_measure *m,
    const struct record_turn *turn, int64_t turn_key, bool new, bool *more)
{
	int64_t row = 0;
	int by = 0;

	/* They are of a turn whose place another took. */
	if (m->row <= turn->row)
		return true;
	if (!new && !look(g, m, turn_key, &row, &by))
		return false;
	if (m->row == row)
		g->news->different += by != 0;
	if (m->row < row || (m->row == row && by <= 0))
		return true;
	*more = true;
	return write_all(g, m, turn_key);
}
