/*
 * measure_page.c - the page of a recording
 *
 *	kite.wav: 0:08 long, WAV (Microsoft), 48000 samples a second, 1 channel.
 *	what each stretch shows
 *	    a picture of its pitch
 *	what all of it comes to, and the cautions
 */
#include <stdlib.h>
#include <string.h>

#include "evenhand/screen/lines.h"
#include "evenhand/screen/track_plot.h"
#include "measure.h"
#include "options.h"

enum { SAID_BYTES = 32768, ROWS_BYTES = 32768, PAGE_BYTES = 131072 };

/* Too large for the stack. */
struct printed {
	int columns;
	struct text said, all;
	char said_bytes[SAID_BYTES], bytes[PAGE_BYTES];
	struct canvas picture;
	char rows[ROWS_BYTES];
};

/* What was said since the last time, in lines that the screen has room for. */
static void put_said(struct printed *p)
{
	char *line = p->said_bytes;

	while (*line) {
		char *end = line + strcspn(line, "\n");
		bool last = !*end;

		*end = '\0';
		lines_text_within(&p->all, lines_columns(p->columns), line);
		line = last ? end : end + 1;
	}
	p->said = text_in(p->said_bytes, SAID_BYTES);
}

/* Each row of the canvas as a line. */
static void put_picture(struct printed *p, const struct measured *m)
{
	if (!track_plot(&p->picture, p->columns, &m->outline,
		m->ask->reference_hz, m->ask->ascii))
		return;
	text_add(&p->all, "\n");
	canvas_text(&p->picture, p->rows, ROWS_BYTES);
	text_add(&p->all, p->rows);
	text_add(&p->all, "\n");
}

bool measure_page(const struct measured *m, int columns, int *status)
{
	struct printed *p = malloc(sizeof(*p));
	bool good;

	if (!p) {
		struct message none = message_of(M_COMMAND_NO_MEMORY);

		command_say(&none);
		*status = EXIT_OS;
		return false;
	}
	p->columns = columns;
	p->said = text_in(p->said_bytes, SAID_BYTES);
	p->all = text_in(p->bytes, PAGE_BYTES);
	measure_say_head(m, &p->said);
	measure_say_stretches(m, &p->said);
	put_said(p);
	if (!m->ask->lines)
		put_picture(p, m);
	measure_say_sum(m, &p->said);
	put_said(p);
	good = command_print(&p->all);
	if (!good)
		*status = EXIT_IO;
	free(p);
	return good;
}
