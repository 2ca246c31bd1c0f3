/*
 * record_take_sitting.c - a sitting out of a journal, with what belongs to it
 */
#include <limits.h>
#include <string.h>

#include "evenhand/base/text.h"
#include "record_take.h"
#include "record_turn.h"

void take_prepare(struct taking *k)
{
	k->shares = query_of(k->d,
	    "SELECT stage, unit, planned, dropped FROM shares "
	    "WHERE sitting = ?1 ORDER BY stage, unit");
	k->turns = query_of(k->d,
	    "SELECT " TURN_COLUMNS
	    " FROM turns WHERE sitting = ?1 ORDER BY number");
	k->measures = query_of(k->d,
	    "SELECT t.number, method, name, value FROM measures m JOIN turns t "
	    "ON t.key = m.turn WHERE t.sitting = ?1 "
	    "ORDER BY t.number, method, name");
	k->notes = query_of(k->d,
	    "SELECT " TAKE_NOTE " FROM notes WHERE sitting = ?1 ORDER BY key");
}

bool take_prepared_done(struct taking *k)
{
	bool good = query_done(&k->shares);

	good = query_done(&k->turns) && good;
	good = query_done(&k->measures) && good;
	return query_done(&k->notes) && good;
}

static int computer_of(const struct taking *k, int64_t key)
{
	for (int i = 0; i < k->r->computers; i++)
		if (k->computer[i] == key)
			return i;
	return -1;
}

static const struct record_routine *routine_of(
    const struct taking *k, int64_t key)
{
	const struct record_routine *m = k->r->routine;

	for (int i = 0; m != NULL && k->routine[i] != key; i++)
		m = m->next;
	return m;
}

static void take_shares(
    struct taking *k, struct record_sitting *s, int64_t key, int number)
{
	s->share = take_room(k, number, sizeof(*s->share));
	query_bind(&k->shares, key);
	while (!k->no_memory && s->shares < number && query_next(&k->shares)) {
		struct record_share *share = &s->share[s->shares++];

		share->stage = take_text(k, &k->shares, 0);
		share->unit = take_text(k, &k->shares, 1);
		share->planned = query_int(&k->shares, 2);
		share->dropped = query_int(&k->shares, 3);
	}
}

static void take_turns(
    struct taking *k, struct record_sitting *s, int64_t key, int number)
{
	s->turn = take_room(k, number, sizeof(*s->turn));
	query_bind(&k->turns, key);
	while (!k->no_memory && s->turns < number && query_next(&k->turns))
		k->no_memory = !turn_read(
		    &k->turns, &s->turn[s->turns++], &k->r->arena);
	k->r->turns += s->turns;
}

/* A value of the turn and method that were read last, or of others. */
static struct record_measure *measure_at(
    struct taking *k, struct record_sitting *s, int turn, int method)
{
	struct record_measure *m = &s->measure[s->measures - (s->measures > 0)];

	if (s->measures > 0 && m->turn == turn && m->method == method)
		return m;
	m = &s->measure[s->measures++];
	m->turn = turn;
	m->method = method;
	m->value = take_room(k, RECORD_VALUES_MAX, sizeof(*m->value));
	return m;
}

static void take_measures(
    struct taking *k, struct record_sitting *s, int64_t key, int number)
{
	const struct query *q = &k->measures;

	s->measure = take_room(k, number, sizeof(*s->measure));
	query_bind(&k->measures, key);
	while (!k->no_memory && s->measures <= number &&
	    query_next(&k->measures)) {
		struct record_measure *m = measure_at(
		    k, s, query_int(q, 0), query_int(q, 1));
		struct text name;

		if (m->value == NULL || m->values == RECORD_VALUES_MAX)
			continue;
		if (strcmp(query_text(q, 2), "sequence") == 0) {
			m->row = query_whole(q, 3);
			continue;
		}
		name = text_in(m->value[m->values].name, RECORD_NAME_MAX);
		text_add(&name, query_text(q, 2));
		m->value[m->values++].value = query_real(q, 3);
	}
}

/* The columns of a note begin with these; its sitting is bound or none. */
static struct record_note *take_note(struct taking *k, const struct query *q)
{
	struct record_note *n = take_room(k, 0, sizeof(*n));

	if (n == NULL)
		return NULL;
	n->computer = computer_of(k, query_whole(q, 0));
	n->row = query_whole(q, 1);
	n->at.utc = query_whole(q, 2);
	n->at.offset = query_int(q, 3);
	n->day = query_int(q, 4);
	n->kind = (enum note_kind)query_within(q, 5, 0, INT_MAX);
	n->finger = query_int(q, 6);
	n->words = take_text(k, q, 7);
	return n;
}

void take_notes(
    struct taking *k, struct query *q, int64_t key, struct record_note **end)
{
	query_bind(q, key);
	while (!k->no_memory && query_next(q)) {
		struct record_note *n = take_note(k, q);

		if (n == NULL)
			return;
		if (!record_note_good(k->r, n)) {
			k->left->notes++;
			continue;
		}
		*end = n;
		end = &n->next;
		k->r->notes++;
	}
}

static void take_head(
    struct taking *k, const struct query *q, struct record_sitting *s)
{
	s->computer = computer_of(k, query_whole(q, 1));
	s->row = query_whole(q, 2);
	s->began.utc = query_whole(q, 3);
	s->began.offset = query_int(q, 4);
	s->day = query_int(q, 5);
	s->routine = routine_of(k, query_whole(q, 6));
	s->work_stage = take_text(k, q, 7);
	s->asked_stage = take_text(k, q, 8);
	s->instrument = take_text(k, q, 9);
	s->marking = query_int(q, 10);
	s->cap_ms = query_int(q, 11);
	s->planned_ms = query_int(q, 12);
	s->how = (enum ended)query_within(q, 13, 0, INT_MAX);
	s->length_ms = query_int(q, 14);
	s->ended.utc = query_whole(q, 15);
	s->ended.offset = query_int(q, 16);
	s->ended_row = query_whole(q, 17);
}

void take_sitting(
    struct taking *k, const struct query *q, struct record_sitting ***end)
{
	struct record_sitting *s = take_room(k, 0, sizeof(*s));
	int64_t key = query_whole(q, 0);

	if (s == NULL)
		return;
	take_head(k, q, s);
	take_shares(k, s, key, query_int(q, 18));
	take_turns(k, s, key, query_int(q, 19));
	take_measures(k, s, key, query_int(q, 20));
	if (k->no_memory)
		return;
	if (!record_sitting_good(k->r, s)) {
		k->left->sittings++;
		return;
	}
	take_notes(k, &k->notes, key, &s->note);
	**end = s;
	*end = &s->next;
	k->r->sittings++;
}
