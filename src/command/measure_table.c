/*
 * measure_table.c - several recordings, a row for each
 */
#include <string.h>

#include "evenhand/base/tongue.h"
#include "measure.h"
#include "options.h"

enum {
	NAME_BYTES = 200,
	NAME_COLUMNS = 20,
	CELL_BYTES_MAX = 16,
	MS = 1000,
	PERCENT = 100,
};

void measure_table_head(struct text *out)
{
	text_format(out, "%s\n%s\n", message_sentence(M_MEASURE_TABLE),
	    message_sentence(M_MEASURE_TABLE_UNITS));
}

/* A figure to the right of its column, or nothing. */
static void cell(
    struct text *out, int columns, const struct sum_of *x, double times)
{
	char bytes[CELL_BYTES_MAX];
	struct text t = text_in(bytes, sizeof(bytes));

	if (x->weight > 0)
		tongue_tenths(&t, sum_mean(x) * times);
	else
		text_add(&t, "-");
	text_format(out, "%*s", columns, bytes);
}

void measure_table_row(const struct measured *m, struct text *out)
{
	const struct sum *s = &m->sum;
	const struct sum_of none = { .weight = 0 };
	bool width = measured_width(m);
	struct message clock = message_with(
	    M_MEASURE_CLOCK, CLOCK((int64_t)(measured_s(m) * MS + 0.5)));
	const char *slash = strrchr(m->path, '/');
	char name[NAME_BYTES], time[CELL_BYTES_MAX];
	size_t clip;

	message_text(&clock, time, sizeof(time));
	text_clean(name, sizeof(name), slash ? slash + 1 : m->path);
	clip = text_clip(name, NAME_COLUMNS);
	name[clip] = '\0';
	text_add(out, name);
	for (int i = text_columns(name); i < NAME_COLUMNS; i++)
		text_add(out, " ");
	text_format(out, "%6s%7.0f%8d", time,
	    s->sound_s > 0 ? PERCENT * s->note_s / s->sound_s : 0, s->arrivals);
	cell(out, 7, width ? &s->way_cents : &none, 1);
	cell(out, 6, &s->even, PERCENT);
	cell(out, 8, &s->rate_hz, 1);
	cell(out, 7, width ? &s->width_cents : &none, 1);
	cell(out, 6, &s->regular, PERCENT);
	cell(out, 5, &s->unsteady_db, 1);
	text_add(out, "\n");
}
