/*
 * record_rows.c - numbers of rows: none twice, none beyond its computer's last
 *
 * In a journal no two sittings, no two turns and no two notes of one computer
 * have the same number.  The numbers are gathered with their lines, sorted at
 * the end, and neighbours compared.
 */
#include <stdlib.h>
#include <string.h>

#include "reader.h"

bool record_row_within(
    struct record_reader *rd, const struct node *n, int computer, int64_t row)
{
	int64_t rows = rd->r->computer[computer].rows;

	return row <= rows ||
	    record_fault(rd, n,
		message_with(M_RECORD_ROW_BEYOND, WHOLE(row), WHOLE(rows)));
}

bool record_count_row(struct record_reader *rd, const struct node *n, int kind,
    int computer, int64_t row)
{
	if (!record_row_within(rd, n, computer, row))
		return false;
	if (rd->row_count == rd->row_room) {
		size_t room = rd->row_room * 2 + 1024;
		struct row_place *more = realloc(
		    rd->rows, room * sizeof(*rd->rows));

		if (more == NULL)
			return record_no_memory(rd);
		rd->rows = more;
		rd->row_room = room;
	}
	rd->rows[rd->row_count++] = (struct row_place) {
		.computer = computer, .kind = kind, .row = row, .line = n->line
	};
	return true;
}

static int by_number(const void *a, const void *b)
{
	const struct row_place *x = a, *y = b;

	if (x->kind != y->kind)
		return x->kind < y->kind ? -1 : 1;
	if (x->computer != y->computer)
		return x->computer < y->computer ? -1 : 1;
	if (x->row != y->row)
		return x->row < y->row ? -1 : 1;
	return (x->line > y->line) - (x->line < y->line);
}

static bool same(const struct row_place *x, const struct row_place *y)
{
	return x->kind == y->kind && x->computer == y->computer &&
	    x->row == y->row;
}

bool record_rows_apart(struct record_reader *rd)
{
	if (rd->row_count > 1)
		qsort(rd->rows, rd->row_count, sizeof(*rd->rows), by_number);
	for (size_t i = 1; i < rd->row_count; i++) {
		const struct row_place *x = &rd->rows[i - 1], *y = x + 1;

		if (same(x, y))
			return faults_add(rd->faults,
			    message_with(M_RECORD_ROW_TWICE, WHOLE(y->row),
				WHOLE(x->line)),
			    rd->path, y->line, 1);
	}
	return true;
}

/* --- before it is written ---------------------------------------------------- */

/* Places of all rows; their lines are numbers of sittings, or of notes. */
struct places {
	struct row_place *at; /* NULL: they are only counted */
	size_t count;
};

static void put(struct places *p, int kind, int computer, int64_t row, int line)
{
	if (p->at != NULL)
		p->at[p->count] = (struct row_place) { .computer = computer,
			.kind = kind,
			.row = row,
			.line = line };
	p->count++;
}

static int put_notes(struct places *p, const struct record_note *n, int line)
{
	for (; n != NULL; n = n->next)
		put(p, ROWS_OF_NOTES, n->computer, n->row, line++);
	return line;
}

static void put_all(struct places *p, const struct record *r)
{
	int sitting = 0, note = 0;

	p->count = 0;
	for (const struct record_sitting *s = r->sitting; s != NULL;
	     s = s->next, sitting++) {
		put(p, ROWS_OF_SITTINGS, s->computer, s->row, sitting);
		for (int i = 0; i < s->turns; i++)
			put(p, ROWS_OF_TURNS, s->computer, s->turn[i].row,
			    sitting);
		note = put_notes(p, s->note, note);
	}
	put_notes(p, r->note, note);
}

static void mark_twice(struct places *p, bool *sitting, bool *note)
{
	qsort(p->at, p->count, sizeof(*p->at), by_number);
	for (size_t i = 1; i < p->count; i++) {
		const struct row_place *y = &p->at[i];

		if (same(y - 1, y))
			(y->kind == ROWS_OF_NOTES ? note
						  : sitting)[y->line] = true;
	}
}

/* Unhangs notes that are marked; returns the first mark behind theirs. */
static const bool *leave_notes(struct record *r, struct record_note **at,
    const bool *twice, struct record_left *left)
{
	for (; *at != NULL; twice++) {
		if (!*twice) {
			at = &(*at)->next;
			continue;
		}
		*at = (*at)->next;
		r->notes--;
		left->notes++;
	}
	return twice;
}

static int count_notes(const struct record_note *n)
{
	int count = 0;

	for (; n != NULL; n = n->next)
		count++;
	return count;
}

static void leave(struct record *r, const bool *sitting, const bool *note,
    struct record_left *left)
{
	struct record_sitting **at = &r->sitting;

	while (*at != NULL) {
		struct record_sitting *s = *at;

		note = leave_notes(r, &s->note, note, left);
		if (!*sitting++) {
			at = &s->next;
			continue;
		}
		*at = s->next;
		r->sittings--;
		r->turns -= s->turns;
		r->notes -= count_notes(s->note);
		left->sittings++;
	}
	leave_notes(r, &r->note, note, left);
}

bool record_leave_twice(struct record *r, struct record_left *left)
{
	struct places p = { 0 };
	bool *sitting = calloc((size_t)r->sittings + 1, sizeof(*sitting));
	bool *note = calloc((size_t)r->notes + 1, sizeof(*note));
	bool good;

	put_all(&p, r);
	p.at = calloc(p.count + 1, sizeof(*p.at));
	good = p.at != NULL && sitting != NULL && note != NULL;
	if (good) {
		put_all(&p, r);
		mark_twice(&p, sitting, note);
		leave(r, sitting, note, left);
	}
	free(p.at);
	free(sitting);
	free(note);
	return good;
}
