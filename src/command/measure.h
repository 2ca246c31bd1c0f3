/*
 * measure.h - a recording on its way from samples to what is said of it
 *
 *	measure.c		the command line, one recording after the other
 *	measure_ask.c		what is known of what was played
 *	measure_file.c		samples to stretches
 *	measure_track.c		every instant as a row (CSV)
 *	measure_words.c		the sentences
 *	measure_page.c		the page, and a picture on it
 *	measure_table.c		a row for each of several
 *	measure_plot.c		a drawing on paper
 *	measure_json.c		everything, for programs
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_MEASURE_H
#define EVENHAND_COMMAND_MEASURE_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/text.h"
#include "evenhand/listen/outline.h"
#include "evenhand/listen/sum.h"
#include "evenhand/world/audio_file.h"
#include "evenhand/world/file.h"

enum {
	MEASURE_STRETCHES = 12, /* told one by one on a page */
	MEASURE_WORDS_BYTES = 16384,
};

/* What the command line says. */
struct measure_ask {
	const char *routine, *stage, *finger, *notes, *channel;
	const char *track, *plot;
	bool json, force, ascii;
	bool lines;	    /* no pictures, and sentences in place of a table */
	int channel_number; /* 0: all */
	struct stretch_asked asked;
	double reference_hz;
};

/* Text that grows; failed when memory was short. */
struct measure_list {
	char *bytes;
	size_t length, size;
	bool failed;
};

/* Rows on their way into a file. */
struct measure_track {
	struct file_new file;
	bool open, failed;
	long rows;
	struct text text;
	char bytes[65536];
};

/* Too large for a stack. */
struct measured {
	const char *path;
	const struct measure_ask *ask;
	struct audio_head head;
	struct audio_tail tail;
	struct sum sum;
	struct outline outline;
	struct measure_list stretches, events, bows; /* with --json */
	struct measure_track track;		     /* with --track */
	/* Of the stretches, on the page; [1]: with widths. */
	struct text words[2];
	char bytes[2][MEASURE_WORDS_BYTES];
};

/* --- measure_ask.c --- */

/* Fills what is known; false: said, and *status is the end. */
bool measure_known(struct measure_ask *a, int *status);

/* --- measure_file.c --- */

/* Measures m->path for m->ask; false: said, and *status is the end. */
bool measure_file(struct measured *m, int *status);
void measured_free(struct measured *m); /* NULL is allowed */

/* Seconds of it. */
double measured_s(const struct measured *m);

/* Whether widths can be believed: not from a far microphone. */
bool measured_width(const struct measured *m);

/* --- measure_track.c --- */

bool measure_track_open(struct measured *m, struct fault *f);
void measure_track_add(struct measured *m, const struct stretch *s);
bool measure_track_close(struct measured *m, struct fault *f);

/* --- measure_words.c --- */

/*
 * Adds the sentences of a stretch to m->words, the first few of them.  Whether
 * widths are known is known at the end, so it is said both ways.
 */
void measure_say_stretch(struct measured *m, const struct stretch *s);

/*
 * Each adds sentences, one in a line, however long: what the recording is, what
 * its stretches show (with widths where they are known), and what all of it
 * comes to with the cautions.
 */
void measure_say_head(const struct measured *m, struct text *out);
void measure_say_stretches(const struct measured *m, struct text *out);
void measure_say_sum(const struct measured *m, struct text *out);

/* --- measure_page.c --- */

/*
 * The page for a screen so many columns wide, its picture left out in lines;
 * false, with the status to end with: standard output took no more, or there is
 * no memory, which is said.
 */
bool measure_page(const struct measured *m, int columns, int *status);

/* --- measure_table.c --- */

/* The head of a table of recordings, and a row of it, for so many columns. */
void measure_table_head(int columns, struct text *out);
void measure_table_row(const struct measured *m, int columns, struct text *out);

/* --- measure_plot.c --- */

/* Draws it into m->ask->plot; false: said, and *status is the end. */
bool measure_plot(const struct measured *m, int *status);

/* --- measure_json.c --- */

void measure_json_stretch(struct measured *m, const struct stretch *s);
/* False: standard output took no more. */
bool measure_json_print(const struct measured *m);

#endif
