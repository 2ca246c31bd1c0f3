/*
 * measure_json.c - everything that was measured of a recording, for programs
 *
 * Lists grow while the recording is heard, since an hour has thousands of
 * arrivals; the rest is written when it is over.  What is not known is not
 * there.
 */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/json.h"
#include "evenhand/music/pitch.h"
#include "measure.h"
#include "options.h"

enum { LINE_BYTES = 512, HEAD_BYTES = 2 * FILE_PATH_MAX + 4096 };

static void add_line(struct measure_list *l, const char *line)
{
	size_t length = strlen(line);

	if (l->length + length + 1 > l->size) {
		size_t size = 2 * l->size + length + LINE_BYTES;
		char *more = realloc(l->bytes, size);

		if (!more) {
			l->failed = true;
			return;
		}
		l->bytes = more;
		l->size = size;
	}
	memcpy(l->bytes + l->length, line, length + 1);
	l->length += length;
}

static void begin(struct text *t, const struct measure_list *l)
{
	text_add(t, l->length > 0 ? ",\n    {" : "\n    {");
}

static void number(struct text *t, const char *key, double x, int decimals)
{
	if (t->length > 0 && t->bytes[t->length - 1] != '{')
		text_add(t, ", ");
	if (isfinite(x))
		text_format(t, "\"%s\": %.*f", key, decimals, x);
	else
		text_format(t, "\"%s\": null", key);
}

static void add_event(struct measured *m, const struct arrival *a, double hz)
{
	char line[LINE_BYTES];
	struct text t = text_in(line, sizeof(line));

	begin(&t, &m->events);
	number(&t, "up50", a->half_s, 6);
	number(&t, "up90", a->nine_s, 6);
	number(&t, "span", a->upper_cents - a->lower_cents, 3);
	number(&t, "lower_hz", pitch_above(hz, a->lower_cents), 3);
	number(&t, "upper_hz", pitch_above(hz, a->upper_cents), 3);
	number(&t, "sure", a->sure, 3);
	text_add(&t, "}");
	add_line(&m->events, line);
}

static void add_bow(struct measured *m, const struct stretch_bow *b)
{
	char line[LINE_BYTES];
	struct text t = text_in(line, sizeof(line));

	begin(&t, &m->bows);
	number(&t, "from_s", b->from_s, 3);
	number(&t, "to_s", b->to_s, 3);
	number(&t, "gain_sd_db", b->bow.unsteady_db, 4);
	number(&t, "drift_db", b->bow.drift_db, 3);
	number(&t, "stops", b->bow.stops, 0);
	number(&t, "sure", b->bow.sure, 3);
	text_add(&t, "}");
	add_line(&m->bows, line);
}

static void add_vibrato(struct text *t, const struct stretch *s)
{
	number(t, "rate_hz", s->sway.rate_hz, 5);
	number(t, "cv", s->sway.unevenness, 5);
	number(t, "extent", s->sway.width_cents, 4);
	number(t, "extent_sd", s->sway.width_spread, 4);
	number(t, "cycles", s->sway.cycles, 0);
	number(t, "sure", s->sway.sure, 3);
}

static void add_glides(struct text *t, const struct stretch *s)
{
	number(t, "glides", s->arrivals, 0);
	number(t, "span", s->sum.travel_cents, 3);
	number(t, "span_sd", s->sum.travel_spread, 3);
	if (s->sum.even_known)
		number(t, "cv", s->sum.unevenness, 5);
	number(t, "sure", s->sum.sure, 3);
}

void measure_json_stretch(struct measured *m, const struct stretch *s)
{
	static const char *const kinds[STRETCH_KINDS] = { "quiet", "unclear",
		"elsewhere", "held", "notes", "glides", "vibrato" };
	char line[LINE_BYTES];
	struct text t = text_in(line, sizeof(line));

	begin(&t, &m->stretches);
	number(&t, "from_s", s->from_s, 3);
	number(&t, "to_s", s->to_s, 3);
	text_format(&t, ", \"kind\": \"%s\"", kinds[s->kind]);
	number(&t, "sound_s", s->sound_s, 3);
	number(&t, "clear", s->share, 4);
	if (s->hz > 0) {
		number(&t, "hz", s->hz, 4);
		number(&t, "upper_hz", s->upper_hz, 4);
	}
	if (s->kind == STRETCH_VIBRATO)
		add_vibrato(&t, s);
	if (s->kind == STRETCH_GLIDES)
		add_glides(&t, s);
	text_add(&t, "}");
	add_line(&m->stretches, line);
	for (int i = 0; s->kind == STRETCH_GLIDES && i < s->arrivals; i++)
		add_event(m, &s->arrival[i], s->glide_hz);
	for (int i = 0; i < s->bows; i++)
		add_bow(m, &s->bow[i]);
}

/* The name of a file may hold any byte, and a page or a terminal may not. */
static void text_key(struct text *t, const char *key, const char *value)
{
	char clean[FILE_PATH_MAX];
	struct json j = json_in(t);

	text_clean(clean, sizeof(clean), value);
	text_format(t, "\"%s\": ", key);
	json_text(&j, NULL, clean);
}

/* Widths from afar are still written, since programs may want to see them. */
static void add_distance(struct text *t, const struct measured *m)
{
	static const char *const names[] = { [DISTANCE_UNKNOWN] = "null",
		[DISTANCE_NEAR] = "\"near\"",
		[DISTANCE_FAR] = "\"far\"" };

	text_format(t, ", \"distance\": %s", names[sum_distance(&m->sum)]);
	text_format(
	    t, ", \"width_known\": %s", measured_width(m) ? "true" : "false");
	if (m->sum.rooms > 0)
		number(t, "room", sum_room(&m->sum), 3);
}

/* The figures that are one for the whole recording. */
static void add_sum(struct text *t, const struct measured *m)
{
	const struct sum *s = &m->sum;

	if (s->rate_hz.weight > 0) {
		number(t, "rate_hz", sum_mean(&s->rate_hz), 5);
		number(t, "cv", sum_mean(&s->regular), 5);
		number(t, "extent", sum_mean(&s->width_cents), 4);
		number(t, "mean_hz",
		    pitch_hz(sum_mean(&s->middle_semitones), PITCH_ISO_16), 4);
	}
	add_distance(t, m);
	number(t, "sound_s", s->sound_s, 3);
	number(t, "clear", s->sound_s > 0 ? s->note_s / s->sound_s : 0, 4);
	number(t, "glides", s->arrivals, 0);
	number(t, "cycles", s->cycles, 0);
	number(t, "stops", s->stops, 0);
}

static bool put_list(const char *key, const struct measure_list *l, bool last)
{
	char bytes[LINE_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));

	text_format(&t, ",\n  \"%s\": [", key);
	return command_print(&t) &&
	    (l->length == 0 || command_print_bytes(l->bytes, l->length)) &&
	    command_print_bytes(last ? "]\n}" : "]", last ? 3 : 1);
}

bool measure_json_print(const struct measured *m)
{
	char bytes[HEAD_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));
	const struct audio_head *h = &m->head;

	text_add(&t, "{");
	text_key(&t, "file", m->path);
	text_add(&t, ",\n  ");
	text_key(&t, "format", h->format);
	number(&t, "seconds", measured_s(m), 4);
	number(&t, "rate", h->rate, 0);
	number(&t, "channels", h->channels, 0);
	number(&t, "channel", h->channel, 0);
	text_format(&t, ", \"cut\": %s", m->tail.cut ? "true" : "false");
	number(&t, "no_numbers", (double)m->tail.no_numbers, 0);
	number(&t, "overdriven", (double)m->tail.overdriven, 0);
	add_sum(&t, m);
	return command_print(&t) &&
	    put_list("stretches", &m->stretches, false) &&
	    put_list("events", &m->events, false) &&
	    put_list("bows", &m->bows, true);
}
