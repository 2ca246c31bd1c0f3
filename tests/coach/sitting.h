/*
 * sitting.h - a shell for sessions under test: steps, keeps and checks
 *
 * It does what a shell must (steps at each frame the session wants to be
 * woken at), writes down every effect, and checks on each of them what must
 * hold always: nothing is decided in the past, nothing is said over a bow, no
 * turn goes beyond the cap, and the sitting begins and ends once.
 */
#ifndef EVENHAND_TESTS_SITTING_H
#define EVENHAND_TESTS_SITTING_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "evenhand/base/frames.h"
#include "evenhand/coach/session.h"
#include "programme.h"

enum { KEPT_MAX = 700, SAID_BYTES = 65536 };

struct sitting {
	struct session s;
	struct effects e;
	int turns;
	struct turn_row turn[KEPT_MAX];
	enum mark mark[KEPT_MAX];
	int64_t mark_ms[KEPT_MAX];
	int passages;
	int64_t frame[KEPT_MAX];
	struct passage passage[KEPT_MAX];
	int notes;
	struct note_row note[64];
	int silences;
	int64_t silence_frame;
	int begun, ended, over;
	enum ended how;
	int64_t length_ms;
	char said[SAID_BYTES];
	size_t said_length;
	uint64_t digest; /* of all effects, in order */
	int most;	 /* effects of one step */
};

/* 2026-03-02, 17:00, in UTC. */
static inline struct moment sitting_now(void)
{
	return (struct moment) { INT64_C(1772470800), 0 };
}

static inline void sitting_stir(struct sitting *d, int64_t value)
{
	d->digest = (d->digest ^ (uint64_t)value) * UINT64_C(1099511628211);
	d->digest ^= d->digest >> 29;
}

static inline void sitting_say(struct sitting *d, const struct message *m)
{
	char line[1024];
	size_t length = message_text(m, line, sizeof(line));

	for (size_t i = 0; i < length; i++)
		sitting_stir(d, line[i]);
	if (d->said_length + length + 2 > SAID_BYTES)
		return;
	memcpy(d->said + d->said_length, line, length);
	d->said_length += length;
	memcpy(d->said + d->said_length, "\n", 2);
	d->said_length++;
}

static inline int64_t sitting_deadline(const struct sitting *d)
{
	return d->s.first_sound + frames_of_ms(d->s.plan.cap_ms, d->s.rate);
}

static inline void sitting_turn(struct sitting *d, const struct turn_row *t)
{
	int bows = t->unit < 0 ? AIR_SWING_BOWS : t->bows_asked;

	assert_int_equal(t->number, d->turns);
	assert_true(d->turns < KEPT_MAX);
	assert_true(d->begun && !d->ended);
	assert_true(t->bows_done <= t->bows_asked);
	assert_true(t->start_ms >= 0);
	assert_true(
	    t->start_ms + bows * d->s.wish.routine->bow_ms <= d->s.plan.cap_ms);
	d->turn[d->turns] = *t;
	d->mark[d->turns++] = MARK_NONE;
	sitting_stir(d, t->stage * 100 + t->unit);
	sitting_stir(d, t->round * 100 + t->pulses);
	sitting_stir(d, t->start_ms);
	sitting_stir(d, t->slide_um + t->bows_done + t->first_go);
	sitting_stir(d, t->resets * 1000 + t->dropouts);
}

static inline void sitting_passage(
    struct sitting *d, const struct effect *e, int64_t now)
{
	int64_t end = e->frame +
	    frames_of_ms(passage_ms(&e->passage), d->s.rate);

	assert_true(e->frame >= now);
	assert_true(end <= sitting_deadline(d));
	assert_true(d->passages < KEPT_MAX);
	d->frame[d->passages] = e->frame;
	d->passage[d->passages++] = e->passage;
	sitting_stir(d, e->frame);
	sitting_stir(d, e->passage.turns * 100 + e->passage.pulses);
	for (int i = 0; i < e->passage.turns; i++)
		sitting_stir(d, e->passage.unit[i]);
	sitting_stir(d, e->passage.last_change_ms + e->passage.coming);
}

static inline void sitting_mark(struct sitting *d, const struct effect *e)
{
	assert_in_range(e->number, 0, d->turns - 1);
	assert_false(d->ended);
	d->mark[e->number] = e->mark;
	d->mark_ms[e->number] = e->mark_ms;
	sitting_stir(d, e->number * 4 + (int)e->mark);
	sitting_stir(d, e->mark_ms);
}

static inline void sitting_rest(struct sitting *d, const struct effect *e)
{
	switch (e->kind) {
	case EFFECT_BEGIN:
		assert_false(d->begun++);
		assert_int_equal(e->frame, d->s.first_sound);
		break;
	case EFFECT_END:
		assert_true(d->begun);
		assert_false(d->ended++);
		d->how = e->ended;
		d->length_ms = e->length_ms;
		assert_in_range(e->length_ms, 0,
		    d->s.plan.cap_ms > 0 ? d->s.plan.cap_ms + 240000 : 0);
		sitting_stir(d, e->length_ms);
		break;
	case EFFECT_NOTE:
		assert_true(d->notes < 64);
		d->note[d->notes++] = e->note;
		sitting_stir(d, (int)e->note.kind * 10 + e->note.finger);
		break;
	case EFFECT_SILENCE:
		d->silences++;
		d->silence_frame = d->s.now;
		break;
	case EFFECT_OVER:
		assert_false(d->over++);
		break;
	default:
		break;
	}
}

/* Writes down what a step did; exact: it was stepped at its very frames. */
static inline void sitting_take(struct sitting *d, int64_t now, bool exact)
{
	assert_in_range(d->e.count, 0, SESSION_EFFECTS_MAX);
	if (d->e.count > d->most)
		d->most = d->e.count;
	for (int i = 0; i < d->e.count; i++) {
		const struct effect *e = &d->e.at[i];

		sitting_stir(d, (int64_t)e->kind);
		if (e->kind == EFFECT_TURN) {
			sitting_turn(d, &e->turn);
		} else if (e->kind == EFFECT_PASSAGE) {
			sitting_passage(d, e, exact ? now : 0);
		} else if (e->kind == EFFECT_MARK) {
			sitting_mark(d, e);
		} else if (e->kind == EFFECT_SAY) {
			sitting_say(d, &e->message);
		} else {
			if (e->kind == EFFECT_PAGE)
				sitting_stir(d, (int64_t)e->page);
			sitting_rest(d, e);
		}
	}
}

static inline void sitting_step(struct sitting *d, const struct input *in)
{
	session_step(&d->s, in, &d->e);
	assert_false(d->e.more);
	for (int i = 0; i < d->e.count; i++)
		if (d->e.at[i].kind == EFFECT_SAY &&
		    in->kind != INPUT_SOUND_LOST &&
		    in->kind != INPUT_SOUND_BACK)
			assert_false(
			    d->s.page == PAGE_PLAY && d->s.phase == PHASE_BOWS);
	sitting_take(d, d->s.now, true);
}

/* Lets time go on to a frame, woken as the session wants. */
static inline void sitting_reach(struct sitting *d, int64_t frame)
{
	int64_t wake;

	while ((wake = session_wake(&d->s)) <= frame)
		sitting_step(
		    d, &(struct input) { .kind = INPUT_FRAME, .frame = wake });
	sitting_step(
	    d, &(struct input) { .kind = INPUT_FRAME, .frame = frame });
}

static inline void sitting_begin(struct sitting *d, const struct routine *r,
    const struct history *h, enum marking marking, int rate)
{
	struct plan_wish w = { .routine = r,
		.history = h,
		.now = sitting_now(),
		.marking = marking };

	memset(d, 0, sizeof(*d));
	session_begin(&d->s, &w, rate, &d->e);
	sitting_take(d, 0, true);
}

/* --- keys, by the frame, by session time, or as soon as they count --- */

static inline void sitting_input(
    struct sitting *d, int64_t frame, struct input in)
{
	sitting_reach(d, frame);
	in.frame = frame;
	sitting_step(d, &in);
}

static inline int64_t sitting_at(const struct sitting *d, int64_t ms)
{
	return d->s.first_sound + frames_of_ms(ms, d->s.rate);
}

static inline void sitting_key(struct sitting *d, int64_t ms, enum key key)
{
	sitting_input(d, sitting_at(d, ms),
	    (struct input) { .kind = INPUT_KEY, .key = key });
}

static inline void sitting_digit(struct sitting *d, int64_t ms, int digit)
{
	sitting_input(d, sitting_at(d, ms),
	    (struct input) {
		.kind = INPUT_KEY, .key = KEY_DIGIT, .digit = digit });
}

static inline void sitting_until(struct sitting *d, int64_t ms)
{
	sitting_reach(d, sitting_at(d, ms));
}

static inline void sitting_soon(struct sitting *d, enum key key)
{
	sitting_input(d, d->s.now + frames_of_ms(300, d->s.rate),
	    (struct input) { .kind = INPUT_KEY, .key = key });
}

/* Nothing is sore, and it begins. */
static inline void sitting_start(struct sitting *d)
{
	sitting_soon(d, KEY_FORWARD);
	sitting_soon(d, KEY_FORWARD);
	assert_int_equal(d->s.page, PAGE_PLAY);
	assert_true(d->begun);
}

static inline bool sitting_said(const struct sitting *d, const char *words)
{
	return strstr(d->said, words) != NULL;
}

/* Whole turns of a stage. */
static inline int sitting_turns_of(const struct sitting *d, int stage)
{
	int turns = 0;

	for (int i = 0; i < d->turns; i++)
		turns += d->turn[i].stage == stage &&
		    d->turn[i].bows_done == d->turn[i].bows_asked;
	return turns;
}

#endif
