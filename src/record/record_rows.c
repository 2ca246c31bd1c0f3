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

bool record_rows_apart(struct record_reader *rd)
{
	if (rd->row_count > 1)
		qsort(rd->rows, rd->row_count, sizeof(*rd->rows), by_number);
	for (size_t i = 1; i < rd->row_count; i++) {
		const struct row_place *x = &rd->rows[i - 1], *y = x + 1;

		if (x->kind == y->kind && x->computer == y->computer &&
		    x->row == y->row)
			return faults_add(rd->faults,
			    message_with(M_RECORD_ROW_TWICE, WHOLE(y->row),
				WHOLE(x->line)),
			    rd->path, y->line, 1);
	}
	return true;
}
