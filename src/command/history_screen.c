/*
 * history_screen.c - what was practised, on a full screen
 *
 *	key ─▶ chart ─▶ canvas ─▶ terminal
 *
 * A page is drawn when a key came or the window has another size; a terminal
 * that stands still gets the newest page when it goes on.
 */
#include "history_screen.h"

#include <signal.h>
#include <stdlib.h>
#include <unistd.h>

#include "evenhand/screen/chart.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/keys.h"
#include "options.h"

enum { LOOK_MS = 100 };

/* Too large for a stack. */
struct screen {
	struct terminal *terminal;
	struct keys *keys;
	struct chart chart;
	struct canvas canvas;
	bool stale;
};

static void draw(struct screen *s)
{
	int columns, rows;

	/* A picture that is still on its way comes first. */
	if (!terminal_ready(s->terminal))
		return;
	if (!terminal_size(s->terminal, &columns, &rows) && !s->stale)
		return;
	canvas_init(&s->canvas, columns, rows);
	chart_draw(&s->canvas, &s->chart);
	terminal_show(s->terminal, &s->canvas);
	s->stale = false;
}

/* One key, or a moment in which none came.  False: it is over. */
static bool take(struct screen *s)
{
	enum key key;
	int digit, columns, rows;
	const char *words;

	switch (keys_next(s->keys, LOOK_MS, &key, &digit, &words)) {
	case KEYS_PRESS:
		terminal_size(s->terminal, &columns, &rows);
		s->stale = true;
		return chart_key(&s->chart, key, columns, rows);
	case KEYS_END:
		return false;
	case KEYS_NONE:
	case KEYS_WORDS:
		break;
	}
	return true;
}

static int ending(void)
{
	int number = keys_signal();

	/* Ctrl-C is a way to leave, too. */
	if (number == 0 || number == SIGINT)
		return EXIT_GOOD;
	return 128 + number;
}

/* Takes keys and screen.  False: they are not to be had. */
static bool screen_begin(struct screen *s, enum terminal_colours colours)
{
	s->keys = keys_open(STDIN_FILENO);
	if (s->keys)
		s->terminal = terminal_open(colours);
	s->stale = true;
	return s->terminal != NULL;
}

static void screen_end(struct screen *s)
{
	terminal_close(s->terminal);
	keys_close(s->keys);
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
	    screen_begin(s, colours)) {
		s->chart.ascii = ascii || !terminal_signs(s->terminal);
		do
			draw(s);
		while (take(s));
		*status = ending();
		shown = true;
	}
	screen_end(s);
	free(s);
	return shown;
}
