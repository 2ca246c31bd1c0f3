/*
 * track.c - what a session plays when nobody marks
 *
 * The pages before the first sound are answered with forward.  Then the session
 * is stepped at each frame it wishes for, and told each time that somebody is
 * there, by a key that means nothing: it would end itself otherwise.
 */
#include "evenhand/coach/track.h"

#include <assert.h>
#include <math.h>

#include "evenhand/base/frames.h"
#include "evenhand/music/pitch.h"

/* A passage that the session asked for. */
static void take(struct track *t, const struct effect *e)
{
	const struct session *s = &t->session;
	/* The first is playing already; others are decided ahead. */
	const struct passing *p = s->next_decided ? &s->next : &s->at;
	const struct plan_block *b = &s->plan.block[p->from.block];

	assert(t->passages < TRACK_PASSAGES_MAX);
	t->at[t->passages++] = (struct track_passage) {
		.passage = e->passage,
		.frame = e->frame - s->first_sound,
		.stage = b->stage,
		.round = p->from.round,
		.rounds = b->rounds,
	};
}

static void step(struct track *t, struct input in)
{
	struct effects effects;

	do {
		session_step(&t->session, &in, &effects);
		for (int i = 0; i < effects.count; i++)
			if (effects.at[i].kind == EFFECT_PASSAGE)
				take(t, &effects.at[i]);
	} while (effects.more);
}

static void press(struct track *t, int64_t frame, enum key key)
{
	step(t,
	    (struct input) { .kind = INPUT_KEY, .frame = frame, .key = key });
}

/* "Nothing is sore" and "begin", far enough apart to count as two keys. */
static void begin(struct track *t)
{
	int64_t apart = frames_of_ms(REPEAT_MS, t->rate);

	press(t, 0, KEY_FORWARD);
	press(t, apart, KEY_FORWARD);
}

bool track_make(struct track *t, const struct plan_wish *wish,
    const struct plan *p, int rate)
{
	struct session *s = &t->session;
	struct effects effects;

	t->rate = rate;
	t->length = 0;
	t->passages = 0;
	session_begin_on(s, wish, p, rate, &effects);
	if (s->page != PAGE_SORE)
		return false;
	begin(t);
	while (s->page == PAGE_PLAY) {
		int64_t frame = session_wake(s);

		step(t, (struct input) { .kind = INPUT_FRAME, .frame = frame });
		if (s->page == PAGE_PLAY)
			press(t, frame, KEY_OTHER);
	}
	if (t->passages == 0)
		return false;
	t->length = session_length(s);
	return true;
}

/* Millihertz of a note so many semitones above a string. */
static int32_t tone_of(const struct setup *s, int string, double semitones)
{
	double hz = pitch_hz(s->open[string] + semitones, s->reference_hz);

	return (int32_t)lround(hz * 1000);
}

/* The unit that has so many finger notes, which is its finger. */
static int unit_of(const struct routine *r, int finger)
{
	for (int u = 0; u < r->units; u++)
		if (r->unit[u].to == finger)
			return u;
	return -1;
}

void track_tones(struct track *t, const struct routine *r)
{
	for (int i = 0; i < t->passages; i++) {
		struct track_passage *p = &t->at[i];
		int string = r->stage[p->stage].string;
		int unit = unit_of(r, p->passage.unit[0]);
		double from, to;

		if (string < 0 || unit < 0 || r->take != TAKE_FINGERS)
			continue;
		routine_slide(r, p->stage, unit, &from, &to);
		if (to <= from)
			continue;
		p->passage.tone[0] = tone_of(&r->setup, string, from);
		p->passage.tone[1] = tone_of(&r->setup, string, to);
	}
}
