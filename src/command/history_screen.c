/*
 * history_screen.c - what was practised, on a full screen
 *
 *	key ─▶ chart ─▶ canvas ─▶ terminal
 *
 * A page is drawn when a key came or the window has another size.
 */
#include "history_screen.h"

#include <stdlib.h>

#include "evenhand/screen/chart.h"
#include "evenhand/world/clock.h"
#include "pages.h"

/* Too large for a stack. */
struct screen {
	struct pages pages;
	struct chart chart;
};

static void draw(struct screen *s)
{
	if (!pages_due(&s->pages))
		return;
	chart_draw(&s->pages.canvas, &s->chart);
	pages_show(&s->pages);
}

/* One key, or a moment in which none came.  False: it is over. */
static bool take(struct screen *s)
{
	enum key key;
	int digit, columns, rows;
	const char *words;

	switch (keys_next(s->pages.keys, PAGES_LOOK_MS, &key, &digit, &words)) {
	case KEYS_PRESS:
		terminal_size(s->pages.terminal, &columns, &rows);
		s->pages.stale = true;
		return chart_key(&s->chart, key, columns, rows);
	case KEYS_END:
		return false;
	case KEYS_NONE:
	case KEYS_WORDS:
		break;
	}
	return true;
}

bool history_show_charts(const struct days *d, enum terminal_colours colours,
    bool ascii, int *status)
{
	struct screen *s;
	bool shown = false;

	if (!terminal_able())
		return false;
	s = calloc(1, sizeof(*s));
	if (!s)
		return false;
	if (chart_begin(&s->chart, d, moment_practice_day(clock_now())) &&
	    pages_open(&s->pages, colours)) {
		s->chart.ascii = ascii || !terminal_signs(s->pages.terminal);
		do
			draw(s);
		while (take(s));
		*status = pages_ended();
		shown = true;
	}
	pages_close(&s->pages);
	free(s);
	return shown;
}
