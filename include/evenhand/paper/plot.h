/*
 * plot.h - the pitch and the loudness of a recording, on paper
 *
 * One page, broader than it is high: the pitch over a grid of notes, the
 * loudness below it over the same time, and sentences under both.
 *
 * Pure; any thread.  The same input gives the same list.
 */
#ifndef EVENHAND_PAPER_PLOT_H
#define EVENHAND_PAPER_PLOT_H

#include "evenhand/listen/outline.h"
#include "evenhand/paper/paper.h"

enum { PLOT_WORDS_MAX = 40 };

struct plot_wish {
	const char *title;
	const struct outline *outline;
	double reference_hz;
	int day; /* it was made on; day number */
	int words;
	/* Sentences under it, wrapped; the first that have room are there. */
	const char *word[PLOT_WORDS_MAX];
};

void paper_plot(struct paper *p, const struct plot_wish *w);

#endif
