/*
 * measure_page.c - the page of a recording
 *
 *	kite.wav: 0:08 long, WAV (Microsoft), 48000 samples a second, 1 channel.
 *	what each stretch shows
 *	    a picture of its pitch
 *	what all of it comes to, and the cautions
 */
#include <stdlib.h>

#include "evenhand/screen/lines.h"
#include "evenhand/screen/track_plot.h"
#include "measure.h"
#include "options.h"

enum { MS = 1000, PAGE_BYTES = 32768, PAGES_BYTES = 65536 };

static void say(struct text *out, struct message m)
{
	lines_say(out, &m);
}

static void say_head(const struct measured *m, struct text *out)
{
	say(out,
	    message_with(M_MEASURE_HEAD, TEXT(m->path),
		CLOCK((int64_t)(measured_s(m) * MS + 0.5)),
		TEXT(m->head.format), WHOLE(m->head.rate),
		WHOLE(m->head.channels)));
}

/* Each row of the canvas as a line. */
static void add_plot(const struct measured *m, int columns, struct text *out)
{
	struct canvas *c = malloc(sizeof(*c));
	char *rows = malloc(PAGE_BYTES);

	if (c && rows &&
	    track_plot(
		c, columns, &m->outline, m->ask->reference_hz, m->ask->ascii)) {
		text_add(out, "\n");
		canvas_text(c, rows, PAGE_BYTES);
		text_add(out, rows);
		text_add(out, "\n");
	}
	free(rows);
	free(c);
}

bool measure_page(const struct measured *m, int columns)
{
	char *bytes = malloc(PAGES_BYTES);
	struct text page;
	bool good;

	if (!bytes) {
		struct message none = message_of(M_COMMAND_NO_MEMORY);

		command_say(&none);
		return false;
	}
	page = text_in(bytes, PAGES_BYTES);
	say_head(m, &page);
	text_add(&page, measure_stretches(m));
	if (m->sum.stretches > MEASURE_STRETCHES)
		say(&page,
		    message_with(M_MEASURE_STRETCHES_LEFT,
			WHOLE(m->sum.stretches - MEASURE_STRETCHES)));
	add_plot(m, columns, &page);
	measure_say_sum(m, &page);
	say(&page, message_of(M_MEASURE_CAUTION));
	good = command_print(&page);
	free(bytes);
	return good;
}
