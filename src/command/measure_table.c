/*
 * measure_table.c - several recordings, a row for each
 *
 *	                            clear  glides  ...
 *	recording             long      %      up  ...
 *	kite.wav              0:08     98      12  ...
 *
 * A column is as wide as the widest of its two names and of what a figure takes.
 * Where a screen has not that many, names stand in a line of their own and the
 * figures below them, in as many rows as they need, and so do their heads.
 */
#include <math.h>
#include <string.h>

#include "evenhand/base/tongue.h"
#include "measure.h"
#include "options.h"

enum {
	NAME_BYTES = 200,
	NAME_COLUMNS = 20,
	NAME_LEAST = 12,
	CELL_BYTES_MAX = 32,
	FIGURES = 9,
	APART = 2, /* columns between names */
	MS = 1000,
	PERCENT = 100,
};

/* What a figure takes, with a column before it: "12:34", "100", "1200.0". */
static const int takes[FIGURES] = { 6, 4, 5, 7, 5, 5, 6, 5, 5 };

struct table {
	int wide[FIGURES]; /* columns, with those before it */
	int name;	   /* of the name; 0: it has its own line */
	int screen;
};

/* A name of a head: the first is the recording's, the others of figures. */
static void name_of(enum message_id head, int k, char *name)
{
	const char *s = message_sentence(head);
	struct text t = text_in(name, CELL_BYTES_MAX);

	for (; k > 0 && *s; s++)
		k -= *s == '|';
	text_add_bytes(&t, s, strcspn(s, "|"));
}

static int most(int a, int b)
{
	return a > b ? a : b;
}

static struct table table_of(int screen)
{
	struct table t = { .name = screen, .screen = screen };

	for (int i = 0; i < FIGURES; i++) {
		char above[CELL_BYTES_MAX], below[CELL_BYTES_MAX];

		name_of(M_MEASURE_TABLE, i + 1, above);
		name_of(M_MEASURE_TABLE_UNITS, i + 1, below);
		t.wide[i] = most(takes[i],
		    APART + most(text_columns(above), text_columns(below)));
		t.name -= t.wide[i];
	}
	t.name = t.name < NAME_LEAST ? 0
	    : t.name > NAME_COLUMNS  ? NAME_COLUMNS
				     : t.name;
	return t;
}

/* The first figure that does not go into the row of this one. */
static int row_end(const struct table *t, int from)
{
	int left = t->screen, i = from;

	if (t->name > 0)
		return FIGURES;
	while (i < FIGURES && (i == from || t->wide[i] <= left))
		left -= t->wide[i++];
	return i;
}

static void put_spaces(struct text *out, int n)
{
	for (; n > 0; n--)
		text_add(out, " ");
}

/* To the left of its column, or in its own line. */
static void put_name(struct text *out, const struct table *t, char *name)
{
	name[text_clip(name, t->name > 0 ? t->name : t->screen)] = '\0';
	text_add(out, name);
	if (t->name == 0)
		text_add(out, "\n");
	else
		put_spaces(out, t->name - text_columns(name));
}

/* Figures from..to to the right of their columns. */
static void put_row(struct text *out, const struct table *t, int from, int to,
    char figure[][CELL_BYTES_MAX])
{
	for (int i = from; i < to; i++) {
		put_spaces(out, t->wide[i] - text_columns(figure[i]));
		text_add(out, figure[i]);
	}
	text_add(out, "\n");
}

void measure_table_head(int columns, struct text *out)
{
	struct table t = table_of(columns);
	char above[FIGURES][CELL_BYTES_MAX], below[FIGURES][CELL_BYTES_MAX];
	char name[CELL_BYTES_MAX];

	for (int i = 0; i < FIGURES; i++) {
		name_of(M_MEASURE_TABLE, i + 1, above[i]);
		name_of(M_MEASURE_TABLE_UNITS, i + 1, below[i]);
	}
	name_of(M_MEASURE_TABLE_UNITS, 0, name);
	if (t.name == 0)
		put_name(out, &t, name);
	for (int i = 0, end; i < FIGURES; i = end) {
		end = row_end(&t, i);
		put_spaces(out, t.name);
		put_row(out, &t, i, end, above);
		if (t.name > 0)
			put_name(out, &t, name);
		put_row(out, &t, i, end, below);
	}
}

/* A mean, or a dash where there is none. */
static void cell(char *bytes, const struct sum_of *x, double times)
{
	struct text t = text_in(bytes, CELL_BYTES_MAX);

	if (x->weight > 0)
		tongue_tenths(&t, sum_mean(x) * times);
	else
		text_add(&t, "-");
}

static void count(char *bytes, double n)
{
	struct text t = text_in(bytes, CELL_BYTES_MAX);

	text_number(&t, round(n));
}

static void read_figures(
    const struct measured *m, char figure[][CELL_BYTES_MAX])
{
	const struct sum *s = &m->sum;
	const struct sum_of none = { .weight = 0 };
	bool width = measured_width(m);
	struct message clock = message_with(
	    M_MEASURE_CLOCK, CLOCK((int64_t)(measured_s(m) * MS + 0.5)));

	message_text(&clock, figure[0], CELL_BYTES_MAX);
	count(figure[1], s->sound_s > 0 ? PERCENT * s->note_s / s->sound_s : 0);
	count(figure[2], s->arrivals);
	cell(figure[3], width ? &s->way_cents : &none, 1);
	cell(figure[4], &s->even, PERCENT);
	cell(figure[5], &s->rate_hz, 1);
	cell(figure[6], width ? &s->width_cents : &none, 1);
	cell(figure[7], &s->regular, PERCENT);
	cell(figure[8], &s->unsteady_db, 1);
}

void measure_table_row(const struct measured *m, int columns, struct text *out)
{
	struct table t = table_of(columns);
	const char *slash = strrchr(m->path, '/');
	char name[NAME_BYTES], figure[FIGURES][CELL_BYTES_MAX];

	read_figures(m, figure);
	text_clean(name, sizeof(name), slash ? slash + 1 : m->path);
	put_name(out, &t, name);
	for (int i = 0, end; i < FIGURES; i = end) {
		end = row_end(&t, i);
		put_row(out, &t, i, end, figure);
	}
}
