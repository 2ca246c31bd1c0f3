/*
 * measure_words.c - what a recording shows, said
 *
 *	0:00 to 0:08: vibrato about G3: 5.5 swings a second, 20 cents to each side.
 *	...
 *	98 % of the sound was a clear note.
 */
#include <math.h>

#include "evenhand/base/tongue.h"
#include "evenhand/music/pitch.h"
#include "measure.h"
#include "options.h"

/* Spread of the time from top to top, or of periods, over their mean. */
#define WELL 0.02 /* what a bow jitters is about as much */
#define NEARLY 0.06
#define OVERDRIVEN 0.0005 /* of all samples; less is a chance */
#define CANCELLED 0.05	  /* of what the channels have, each alone */

enum {
	NAME_BYTES = 48,
	SENTENCE_BYTES = 1024,
	MS = 1000,
	PERCENT = 100,
};

/* Whole in one line: a screen and a sheet cut it each in their own way. */
static void say(struct text *out, struct message m)
{
	char sentence[SENTENCE_BYTES];

	message_text(&m, sentence, sizeof(sentence));
	text_add(out, sentence);
	text_add(out, "\n");
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

static void note_of(int nearest, char *note)
{
	pitch_name(nearest < 0	? 0
		: nearest > 127 ? 127
				: nearest,
	    false, note);
	tongue_note(note);
}

/* "G3", "G3 +4 cents", "G3 -4 cents". */
static void name_of(
    const struct measured *m, double hz, bool with_cents, char *name)
{
	struct message words;
	char note[PITCH_NAME_MAX];
	double cents;
	int nearest = pitch_nearest(hz, m->ask->reference_hz, &cents);
	int whole = with_cents ? (int)floor(cents + 0.5) : 0;

	note_of(nearest, note);
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

/* A stretch on its way into words. */
struct told {
	const struct measure_ask *ask;
	const struct stretch *s;
	bool width; /* said */
	const char *when, *low, *high;
};

static void say_way(struct text *out, const struct told *t)
{
	const struct arrivals *a = &t->s->sum;
	double every = hundredth(a->every_s);
	double way = tenth(a->travel_cents), spread = tenth(a->travel_spread);
	char even[NAME_BYTES];

	even_words(a->unevenness, false, even, sizeof(even));
	if (t->width && a->even_known)
		say(out,
		    message_with(M_MEASURE_WAY, NUMBER(way), NUMBER(spread),
			NUMBER(every), TEXT(even)));
	else if (t->width)
		say(out,
		    message_with(
			M_MEASURE_WAY_FEW, NUMBER(way), NUMBER(spread)));
	else if (a->even_known)
		say(out,
		    message_with(M_MEASURE_PACE, NUMBER(every), TEXT(even)));
	else
		say(out, message_of(M_MEASURE_PACE_FEW));
}

static void say_vibrato(struct text *out, const struct told *t)
{
	const struct sway *w = &t->s->sway;
	double rate = hundredth(w->rate_hz);
	char regular[NAME_BYTES];

	even_words(w->unevenness, true, regular, sizeof(regular));
	if (t->width)
		say(out,
		    message_with(M_MEASURE_VIBRATO, TEXT(t->when), TEXT(t->low),
			NUMBER(rate), NUMBER(tenth(w->width_cents))));
	else
		say(out,
		    message_with(M_MEASURE_VIBRATO_RATE, TEXT(t->when),
			TEXT(t->low), NUMBER(rate)));
	say(out,
	    message_with(M_MEASURE_SWINGS, TEXT(regular), WHOLE(w->cycles)));
}

static void say_kind(struct text *out, const struct told *t)
{
	switch (t->s->kind) {
	case STRETCH_UNCLEAR:
		say(out,
		    message_with(t->s->share < STRETCH_CLEAR ? M_MEASURE_UNCLEAR
							     : M_MEASURE_PIECES,
			TEXT(t->when)));
		break;
	case STRETCH_ELSEWHERE:
		say(out, message_with(M_MEASURE_ELSEWHERE, TEXT(t->when)));
		break;
	case STRETCH_HELD:
		say(out,
		    t->ask->asked.only_bow
			? message_with(M_MEASURE_BOW_ONLY, TEXT(t->when))
			: message_with(
			      M_MEASURE_HELD, TEXT(t->when), TEXT(t->low)));
		break;
	case STRETCH_NOTES:
		say(out,
		    message_with(M_MEASURE_NOTES, TEXT(t->when), TEXT(t->low),
			TEXT(t->high)));
		break;
	case STRETCH_GLIDES:
		say(out,
		    message_with(M_MEASURE_GLIDES, TEXT(t->when),
			WHOLE(t->s->arrivals), TEXT(t->low), TEXT(t->high)));
		say_way(out, t);
		break;
	case STRETCH_VIBRATO:
		say_vibrato(out, t);
		break;
	case STRETCH_QUIET:
	case STRETCH_KINDS:
		break;
	}
}

/* Cents of two notes would tell how far they lie apart. */
static void say_stretch(
    struct measured *m, const struct stretch *s, const char *when, bool width)
{
	bool cents = width || s->kind == STRETCH_VIBRATO ||
	    s->kind == STRETCH_HELD;
	char low[NAME_BYTES] = "", high[NAME_BYTES] = "";
	struct told t = { m->ask, s, width, when, low, high };

	if (s->hz > 0) {
		name_of(m, s->hz, cents, low);
		name_of(m, s->upper_hz, cents, high);
	}
	say_kind(&m->words[width], &t);
}

void measure_say_stretch(struct measured *m, const struct stretch *s)
{
	struct message between = message_with(
	    M_MEASURE_BETWEEN, CLOCK(ms(s->from_s)), CLOCK(ms(s->to_s)));
	char when[NAME_BYTES];

	if (m->sum.stretches > MEASURE_STRETCHES)
		return;
	message_text(&between, when, sizeof(when));
	say_stretch(m, s, when, false);
	say_stretch(m, s, when, true);
}

/* What many stretches come to; one has been told. */
static void say_all(const struct sum *s, bool width, struct text *out)
{
	long share = lround(PERCENT * s->note_s / s->sound_s);

	say(out,
	    message_with(M_MEASURE_ALL, WHOLE(s->stretches),
		CLOCK(ms(s->sound_s)), WHOLE(share)));
	if (s->of_kind[STRETCH_VIBRATO] > 0)
		say(out,
		    message_with(M_MEASURE_ALL_VIBRATO,
			WHOLE(s->of_kind[STRETCH_VIBRATO]),
			NUMBER(hundredth(sum_mean(&s->rate_hz))),
			NUMBER(hundredth(s->rate_hz.least)),
			NUMBER(hundredth(s->rate_hz.most))));
	if (s->of_kind[STRETCH_VIBRATO] > 0 && width)
		say(out,
		    message_with(M_MEASURE_ALL_WIDTH,
			NUMBER(tenth(sum_mean(&s->width_cents))),
			NUMBER(tenth(s->width_cents.least)),
			NUMBER(tenth(s->width_cents.most))));
	if (s->of_kind[STRETCH_GLIDES] > 0 && !width)
		say(out,
		    message_with(M_MEASURE_ALL_GLIDES_FAR,
			WHOLE(s->of_kind[STRETCH_GLIDES]), WHOLE(s->arrivals)));
	else if (s->of_kind[STRETCH_GLIDES] > 0)
		say(out,
		    message_with(M_MEASURE_ALL_GLIDES,
			WHOLE(s->of_kind[STRETCH_GLIDES]), WHOLE(s->arrivals),
			NUMBER(tenth(sum_mean(&s->way_cents))),
			NUMBER(tenth(s->way_cents.least)),
			NUMBER(tenth(s->way_cents.most))));
}

/* Unknown, it matters only where there are widths. */
static void say_distance(const struct sum *s, struct text *out)
{
	enum turn_distance distance = sum_distance(s);

	if (distance == DISTANCE_FAR)
		say(out, message_of(M_MEASURE_FAR));
	else if (distance == DISTANCE_UNKNOWN &&
	    s->way_cents.weight + s->width_cents.weight > 0)
		say(out, message_of(M_MEASURE_DISTANCE_UNKNOWN));
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

void measure_say_head(const struct measured *m, struct text *out)
{
	say(out,
	    message_with(M_MEASURE_HEAD, TEXT(m->path),
		CLOCK(ms(measured_s(m))), TEXT(m->head.format),
		WHOLE(m->head.rate), WHOLE(m->head.channels)));
}

void measure_say_stretches(const struct measured *m, struct text *out)
{
	text_add(out, m->bytes[measured_width(m)]);
	if (m->sum.stretches > MEASURE_STRETCHES)
		say(out,
		    message_with(M_MEASURE_STRETCHES_LEFT,
			WHOLE(m->sum.stretches - MEASURE_STRETCHES)));
}

void measure_say_sum(const struct measured *m, struct text *out)
{
	const struct sum *s = &m->sum;

	if (s->stretches == 0) {
		say(out, message_of(M_MEASURE_SILENT));
	} else if (s->stretches > 1) {
		say_all(s, measured_width(m), out);
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
	say_distance(s, out);
	say_odd(m, out);
	say(out, message_of(M_MEASURE_CAUTION));
}
