/*
 * measure_words.c - what a recording shows, said
 *
 *	kite.wav: 0:08 long, WAV (Microsoft), 48000 samples a second, 1 channel.
 *	0:00 to 0:08: vibrato about G3: 5.5 swings a second, 20 cents to each side.
 *	...
 *	    a picture of its pitch
 *	...
 */
#include <math.h>
#include <stdlib.h>

#include "evenhand/music/pitch.h"
#include "evenhand/screen/lines.h"
#include "evenhand/screen/track_plot.h"
#include "measure.h"
#include "options.h"

/* Spread of the time from top to top, or of periods, over their mean. */
#define WELL 0.02 /* what a bow jitters is about as much */
#define NEARLY 0.06
#define OVERDRIVEN 0.0005 /* of all samples; less is a chance */
#define CANCELLED 0.05	  /* of what the channels have, each alone */

enum {
	NAME_BYTES = 48,
	MS = 1000,
	PERCENT = 100,
	PAGE_BYTES = 32768,
	PAGES_BYTES = 65536,
};

static void say(struct text *out, struct message m)
{
	lines_say(out, &m);
}

/* A number with one decimal at most. */
static double tenth(double x)
{
	return floor(x * 10 + 0.5) / 10;
}

static double hundredth(double x)
{
	return floor(x * 100 + 0.5) / 100;
}

static int64_t ms(double s)
{
	return (int64_t)(s * MS + 0.5);
}

/* "G3", "G3 and 4 cents", "G3 less 4 cents". */
static void name_of(const struct measured *m, double hz, char *name)
{
	struct message words;
	char note[PITCH_NAME_MAX];
	double cents;
	int nearest = pitch_nearest(hz, m->ask->reference_hz, &cents);
	int whole = (int)floor(cents + 0.5);

	pitch_name(nearest < 0	? 0
		: nearest > 127 ? 127
				: nearest,
	    false, note);
	words = whole == 0 ? message_with(M_MEASURE_NOTE, TEXT(note))
	    : whole > 0
	    ? message_with(M_MEASURE_NOTE_HIGH, TEXT(note), WHOLE(whole))
	    : message_with(M_MEASURE_NOTE_LOW, TEXT(note), WHOLE(-whole));
	message_text(&words, name, NAME_BYTES);
}

static enum message_id by_evenness(double spread, enum message_id well,
    enum message_id nearly, enum message_id not_)
{
	return spread < WELL ? well : spread < NEARLY ? nearly : not_;
}

/* How even, as words of their own. */
static void even_words(double spread, bool swings, char *words, size_t size)
{
	enum message_id id = swings
	    ? by_evenness(spread, M_MEASURE_REGULAR_WELL,
		  M_MEASURE_REGULAR_NEARLY, M_MEASURE_REGULAR_NOT)
	    : by_evenness(spread, M_MEASURE_EVEN_WELL, M_MEASURE_EVEN_NEARLY,
		  M_MEASURE_EVEN_NOT);
	struct message m = message_with(id, NUMBER(tenth(spread * PERCENT)));

	message_text(&m, words, size);
}

static void say_glides(struct measured *m, const struct stretch *s,
    const char *when, const char *low, const char *high)
{
	const struct arrivals *a = &s->sum;
	double every = (s->arrival[s->arrivals - 1].half_s -
			   s->arrival[0].half_s) /
	    (s->arrivals - 1);
	char even[NAME_BYTES];

	say(&m->words,
	    message_with(M_MEASURE_GLIDES, TEXT(when), WHOLE(s->arrivals),
		TEXT(low), TEXT(high)));
	if (!a->even_known) {
		say(&m->words,
		    message_with(M_MEASURE_WAY_FEW,
			NUMBER(tenth(a->travel_cents)),
			NUMBER(tenth(a->travel_spread))));
		return;
	}
	even_words(a->unevenness, false, even, sizeof(even));
	say(&m->words,
	    message_with(M_MEASURE_WAY, NUMBER(tenth(a->travel_cents)),
		NUMBER(tenth(a->travel_spread)), NUMBER(hundredth(every)),
		TEXT(even)));
}

static void say_vibrato(struct measured *m, const struct stretch *s,
    const char *when, const char *middle)
{
	char regular[NAME_BYTES];

	even_words(s->sway.unevenness, true, regular, sizeof(regular));
	say(&m->words,
	    message_with(M_MEASURE_VIBRATO, TEXT(when), TEXT(middle),
		NUMBER(hundredth(s->sway.rate_hz)),
		NUMBER(tenth(s->sway.width_cents))));
	say(&m->words,
	    message_with(
		M_MEASURE_SWINGS, TEXT(regular), WHOLE(s->sway.cycles)));
}

static void say_kind(struct measured *m, const struct stretch *s,
    const char *when, const char *low, const char *high)
{
	switch (s->kind) {
	case STRETCH_UNCLEAR:
		say(&m->words, message_with(M_MEASURE_UNCLEAR, TEXT(when)));
		break;
	case STRETCH_ELSEWHERE:
		say(&m->words, message_with(M_MEASURE_ELSEWHERE, TEXT(when)));
		break;
	case STRETCH_HELD:
		say(&m->words,
		    m->ask->asked.only_bow
			? message_with(M_MEASURE_BOW_ONLY, TEXT(when))
			: message_with(M_MEASURE_HELD, TEXT(when), TEXT(low)));
		break;
	case STRETCH_NOTES:
		say(&m->words,
		    message_with(
			M_MEASURE_NOTES, TEXT(when), TEXT(low), TEXT(high)));
		break;
	case STRETCH_GLIDES:
		say_glides(m, s, when, low, high);
		break;
	case STRETCH_VIBRATO:
		say_vibrato(m, s, when, low);
		break;
	case STRETCH_QUIET:
	case STRETCH_KINDS:
		break;
	}
}

void measure_say_stretch(struct measured *m, const struct stretch *s)
{
	struct message between = message_with(
	    M_MEASURE_BETWEEN, CLOCK(ms(s->from_s)), CLOCK(ms(s->to_s)));
	char when[NAME_BYTES], low[NAME_BYTES] = "", high[NAME_BYTES] = "";

	if (m->sum.stretches > MEASURE_STRETCHES)
		return;
	message_text(&between, when, sizeof(when));
	if (s->hz > 0) {
		name_of(m, s->hz, low);
		name_of(m, s->upper_hz, high);
	}
	say_kind(m, s, when, low, high);
}

/* What many stretches come to; one has been told. */
static void say_all(const struct sum *s, struct text *out)
{
	long share = lround(PERCENT * s->note_s / s->sound_s);

	say(out,
	    message_with(M_MEASURE_ALL, WHOLE(s->stretches),
		CLOCK(ms(s->sound_s)), WHOLE(share)));
	if (s->of_kind[STRETCH_VIBRATO] > 0) {
		say(out,
		    message_with(M_MEASURE_ALL_VIBRATO,
			WHOLE(s->of_kind[STRETCH_VIBRATO]),
			NUMBER(hundredth(sum_mean(&s->rate_hz))),
			NUMBER(hundredth(s->rate_hz.least)),
			NUMBER(hundredth(s->rate_hz.most))));
		say(out,
		    message_with(M_MEASURE_ALL_WIDTH,
			NUMBER(tenth(sum_mean(&s->width_cents))),
			NUMBER(tenth(s->width_cents.least)),
			NUMBER(tenth(s->width_cents.most))));
	}
	if (s->of_kind[STRETCH_GLIDES] > 0)
		say(out,
		    message_with(M_MEASURE_ALL_GLIDES,
			WHOLE(s->of_kind[STRETCH_GLIDES]), WHOLE(s->arrivals),
			NUMBER(tenth(sum_mean(&s->way_cents))),
			NUMBER(tenth(s->way_cents.least)),
			NUMBER(tenth(s->way_cents.most))));
}

/* What was odd about the file. */
static void say_odd(const struct measured *m, struct text *out)
{
	const struct audio_tail *t = &m->tail;

	if (t->cut)
		say(out, message_with(M_MEASURE_CUT, CLOCK(ms(measured_s(m)))));
	if (t->no_numbers > 0)
		say(out,
		    message_with(M_MEASURE_NO_NUMBERS, WHOLE(t->no_numbers)));
	if ((double)t->overdriven >
	    OVERDRIVEN * (double)t->frames * m->head.channels)
		say(out, message_of(M_MEASURE_OVERDRIVEN));
	if (m->head.channel == 0 && t->given_square < CANCELLED * t->square)
		say(out, message_of(M_MEASURE_CANCELS));
}

void measure_say_sum(const struct measured *m, struct text *out)
{
	const struct sum *s = &m->sum;

	if (s->stretches == 0) {
		say(out, message_of(M_MEASURE_SILENT));
	} else if (s->stretches > 1) {
		say_all(s, out);
	} else {
		say(out,
		    message_with(M_MEASURE_CLEAR,
			WHOLE(lround(PERCENT * s->note_s / s->sound_s))));
	}
	if (s->bows > 0)
		say(out,
		    message_with(M_MEASURE_BOWS, WHOLE(s->bows),
			NUMBER(tenth(sum_mean(&s->unsteady_db))),
			WHOLE(s->stops)));
	else if (s->stretches > 0)
		say(out, message_of(M_MEASURE_NO_BOWS));
	say_odd(m, out);
}

static void say_head(const struct measured *m, struct text *out)
{
	say(out,
	    message_with(M_MEASURE_HEAD, TEXT(m->path),
		CLOCK(ms(measured_s(m))), TEXT(m->head.format),
		WHOLE(m->head.rate), WHOLE(m->head.channels)));
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
	text_add(&page, m->bytes);
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
