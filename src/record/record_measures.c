/*
 * record_measures.c - what was heard of the turns of a sitting
 *
 *	measures:
 *	- {turn: 9, method: 1, row: 31, heard: {tops_asked: 12, share: 0.93}}
 */
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

bool record_measure_name_good(const char *name)
{
	return *name >= 'a' && *name <= 'z' && strlen(name) < RECORD_NAME_MAX &&
	    name[strspn(name, "abcdefghijklmnopqrstuvwxyz0123456789_")] ==
	    '\0' &&
	    /* The journal keeps the number of its row under this name. */
	    strcmp(name, "sequence") != 0;
}

static int by_name(const void *a, const void *b)
{
	const struct record_value *x = a, *y = b;

	return strcmp(x->name, y->name);
}

static int count(const struct node *map)
{
	int length = 0;

	for (const struct node *n = map->first; n != NULL; n = n->next)
		length++;
	return length;
}

static bool read_values(
    struct record_reader *rd, const struct node *map, struct record_measure *m)
{
	int length = map->kind == NODE_MAP ? count(map) : 0;

	if (map->kind != NODE_MAP)
		return record_fault(
		    rd, map, message_with(M_RECORD_WANT_MAP, TEXT("heard")));
	if (length > RECORD_VALUES_MAX)
		return record_fault(rd, map,
		    message_with(M_RECORD_TOO_MANY, TEXT("heard"),
			WHOLE(RECORD_VALUES_MAX)));
	m->value = arena_take(
	    &rd->r->arena, (size_t)length * sizeof(*m->value));
	if (m->value == NULL)
		return record_no_memory(rd);
	for (const struct node *n = map->first; n != NULL; n = n->next) {
		struct record_value *v = &m->value[m->values++];
		struct text t = text_in(v->name, sizeof(v->name));

		if (!record_measure_name_good(n->key) ||
		    node_get(map, n->key) != n)
			return record_fault(rd, n,
			    message_with(M_RECORD_MEASURE, TEXT(n->key)));
		text_add(&t, n->key);
		if (!record_real(rd, n, &v->value))
			return false;
	}
	if (m->values > 1)
		qsort(m->value, (size_t)m->values, sizeof(*m->value), by_name);
	return true;
}

static bool read_measure(
    struct record_reader *rd, const struct node *n, struct record_sitting *s)
{
	static const char *const keys[] = { "turn", "method", "row", "heard",
		NULL };
	static const struct map_keys map = { "measures", 4, keys };
	struct record_measure *m = &s->measure[s->measures];
	const struct record_turn *t;

	if (!record_map(rd, n, &map) ||
	    !record_int(rd, node_get(n, "turn"),
		(struct whole) { "turn", 0, NUMBER_MOST }, &m->turn) ||
	    !record_int(rd, node_get(n, "method"),
		(struct whole) { "method", 1, NUMBER_MOST }, &m->method) ||
	    !record_row(rd, node_get(n, "row"), &m->row) ||
	    !read_values(rd, node_get(n, "heard"), m))
		return false;
	/* Each turn and method once, in their order. */
	if (!record_measure_behind(s, m))
		return record_fault(rd, n,
		    message_with(
			M_RECORD_ORDER, WHOLE(m->turn), WHOLE(m[-1].turn)));
	t = record_turn_numbered(s, m->turn);
	if (t == NULL)
		return record_fault(
		    rd, n, message_with(M_RECORD_NO_TURN, WHOLE(m->turn)));
	if (m->row <= t->row)
		return record_fault(rd, node_get(n, "row"),
		    message_with(
			M_RECORD_BEFORE, WHOLE(m->row), WHOLE(t->row)));
	s->measures++;
	return record_row_within(rd, n, s->computer, m->row);
}

bool record_read_measures(
    struct record_reader *rd, const struct node *list, struct record_sitting *s)
{
	int length;

	if (!record_list(
		rd, list, "measures", RECORD_SITTING_TURNS_MAX, &length))
		return false;
	if (length == 0)
		return true;
	s->measure = arena_take(
	    &rd->r->arena, (size_t)length * sizeof(*s->measure));
	if (s->measure == NULL)
		return record_no_memory(rd);
	for (const struct node *n = list->first; n != NULL; n = n->next)
		if (!read_measure(rd, n, s))
			return false;
	return true;
}
