/*
 * measure_file.c - a recording, from its samples to its stretches
 */
#include <stdlib.h>
#include <unistd.h>

#include "evenhand/listen/tape.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/recording.h"
#include "measure.h"
#include "options.h"

enum { TENTHS = 10 };

#define PATIENCE_NS 2000000000 /* what takes no longer says nothing */

/* How far it has come: a line at each tenth, so that it can be spoken. */
struct progress {
	int64_t begun_ns;
	int64_t frames, all;
	int said; /* tenths */
	bool wanted;
};

static void tell_progress(struct progress *p, const char *path)
{
	int tenths = p->all > 0 ? (int)(TENTHS * p->frames / p->all) : 0;
	struct message m;

	if (!p->wanted || tenths <= p->said || tenths >= TENTHS ||
	    clock_steady_ns() - p->begun_ns < PATIENCE_NS)
		return;
	p->said = tenths;
	m = message_with(
	    M_MEASURE_PROGRESS, TEXT(path), WHOLE((int64_t)tenths * TENTHS));
	command_say(&m);
}

double measured_s(const struct measured *m)
{
	return m->head.rate > 0 ? (double)m->tail.frames / m->head.rate : 0;
}

bool measured_width(const struct measured *m)
{
	return sum_distance(&m->sum) != DISTANCE_FAR;
}

static void add(struct measured *m, const struct stretch *s)
{
	sum_add(&m->sum, s);
	for (size_t k = 0; k < s->n; k++)
		outline_add(&m->outline, &s->m[k]);
	measure_say_stretch(m, s);
	if (m->ask->json)
		measure_json_stretch(m, s);
	if (m->track.open)
		measure_track_add(m, s);
}

static bool no_memory(const struct measured *m, struct fault *f)
{
	fault_set(f, message_of(M_WORLD_FILE_NO_MEMORY));
	return fault_at(f, m->path, 0, 0);
}

/* Whether memory was short for what is to be written. */
static bool lists_failed(const struct measured *m)
{
	return m->stretches.failed || m->events.failed || m->bows.failed;
}

/* All samples; false with a fault. */
static bool hear(struct measured *m, struct recording *r, struct tape *t,
    struct stretch *s, struct fault *f)
{
	struct progress p = { clock_steady_ns(), 0, m->head.frames, 0,
		isatty(STDERR_FILENO) };
	float x[RECORDING_READ_MAX];
	int n;

	do {
		n = recording_read(r, x, f);
		if (n < 0)
			return false;
		if (n > 0)
			tape_samples(t, x, (size_t)n);
		else
			tape_end(t);
		while (tape_next(t, s))
			add(m, s);
		if (tape_failed(t) || lists_failed(m))
			return no_memory(m, f);
		p.frames += n;
		tell_progress(&p, m->path);
	} while (n > 0);
	m->tail = *recording_tail(r);
	if (m->tail.frames > 0)
		return true;
	fault_set(f, message_of(M_MEASURE_EMPTY));
	return fault_at(f, m->path, 0, 0);
}

static bool measure(struct measured *m, struct recording *r, struct fault *f)
{
	struct stretch *s = malloc(sizeof(*s));
	struct tape *t = NULL;
	bool good = false;

	m->head = *recording_head(r);
	if (m->head.rate < TAPE_RATE_MIN || m->head.rate > TAPE_RATE_MAX) {
		fault_set(f, message_with(M_MEASURE_RATE, WHOLE(m->head.rate)));
		fault_at(f, m->path, 0, 0);
		goto done;
	}
	t = tape_new(m->head.rate, &m->ask->asked);
	if (!t || !s)
		no_memory(m, f);
	else
		good = (!m->ask->track || measure_track_open(m, f)) &&
		    hear(m, r, t, s, f) && measure_track_close(m, f);
done:
	tape_free(t);
	free(s);
	return good;
}

bool measure_file(struct measured *m, int *status)
{
	struct fault f;
	struct recording *r;
	bool good;

	for (int i = 0; i < 2; i++)
		m->words[i] = text_in(m->bytes[i], sizeof(m->bytes[i]));
	r = recording_open(m->path, m->ask->channel_number, &f);
	good = r && measure(m, r, &f);
	recording_close(r);
	if (good)
		return true;
	command_fault(&f);
	*status = command_status(&f);
	return false;
}

void measured_free(struct measured *m)
{
	if (!m)
		return;
	if (m->track.open)
		file_new_drop(&m->track.file);
	free(m->stretches.bytes);
	free(m->events.bytes);
	free(m->bows.bytes);
	free(m);
}
