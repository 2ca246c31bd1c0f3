/*
 * test_others.c - turns while something else sounds too, or nothing else does
 *
 * Open strings ring, somebody speaks, somebody plays in the next room; a sound
 * is cut off, set off, holed or doubled.  A turn is measured right then, or it
 * is said that it could not be heard.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "beside.h"
#include "evenhand/listen/ear.h"
#include "evenhand/listen/tape.h"
#include "listening.h"
#include "spoken.h"

#define E3 164.8138

enum { RATE = 48000 };

static const double travels[] = { 500, 200, 50 };

/* 4, 6 and 8 arrivals a bow, the wider the fewer. */
static struct bowed player(int i)
{
	double pulse = 4.0 / (4 + 2 * i);

	return (struct bowed) { .rate = RATE,
		.seconds = 8.5,
		.hz = E3,
		.jitter_cents = 2,
		.noise_db = -30,
		.turn_s = 4,
		.pulses_a_second = 1 / pulse,
		.travel_cents = travels[i],
		.unsteady_s = 0.02,
		.glide_s = fmin(0.15, pulse / 4) };
}

static struct turn_asked wish(const struct bowed *b)
{
	return (struct turn_asked) {
		.asked = { b->hz, b->hz * exp2(b->travel_cents / 1200) },
		.lower_hz = b->hz,
		.travel_cents = b->travel_cents,
		.pulses = (int)(4 * b->pulses_a_second + 0.5),
		.bows = 2,
		.edge_s = { 0, 4, 8 },
	};
}

static struct turn_heard hear(
    const struct turn_asked *asked, const struct bowed_sound *s)
{
	struct ear *e = ear_new(RATE);
	struct turn_heard h;

	assert_true(ear_begin(e, asked));
	ear_take(e, s->x, s->n);
	assert_true(ear_end(e, asked, &h));
	ear_free(e);
	return h;
}

static void is_right(
    const char *what, const struct bowed *b, const struct turn_heard *h)
{
	int tops = 2 * (int)(4 * b->pulses_a_second + 0.5);

	if (h->answer != TURN_HEARD || h->bows_full != 2 ||
	    h->arrivals.heard != tops || h->arrivals.asked != tops ||
	    fabs(h->arrivals.travel_cents - b->travel_cents) > 2 ||
	    h->arrivals.travel_spread > 6 || h->stops != 0)
		fail_msg("%s, %g cents: answer %d, %d full, %d of %d tops, "
			 "%g cents, spread %g, %d stops",
		    what, b->travel_cents, (int)h->answer, h->bows_full,
		    h->arrivals.heard, h->arrivals.asked,
		    h->arrivals.travel_cents, h->arrivals.travel_spread,
		    h->stops);
}

/* What was not said to have been heard is not told; the rest is right. */
static void is_right_or_unsure(
    const char *what, const struct bowed *b, const struct turn_heard *h)
{
	const struct arrivals *a = &h->arrivals;

	if (h->answer != TURN_HEARD)
		return;
	if (fabs(a->travel_cents - b->travel_cents) > 3 ||
	    (a->heard > a->asked && a->sure > 0.95) || h->stops > 0)
		fail_msg("%s, %g cents: %d of %d tops, %g cents, sure %g", what,
		    b->travel_cents, a->heard, a->asked, a->travel_cents,
		    a->sure);
}

/* How evenly it was, against what is true of the half ways. */
static void is_even(const struct bowed_sound *s, const struct turn_heard *h)
{
	double mean = 0, sd = 0;
	int gaps = h->arrivals.heard - 1;

	for (int i = 0; i < gaps; i++)
		mean += (s->half[i + 1] - s->half[i]) / gaps;
	for (int i = 0; i < gaps; i++)
		sd += pow(s->half[i + 1] - s->half[i] - mean, 2) / gaps;
	if (fabs(h->arrivals.unevenness - sqrt(sd) / mean) > 0.01)
		fail_msg("uneven %g, heard %g", sqrt(sd) / mean,
		    h->arrivals.unevenness);
}

/* Where time is dear, every other case. */
static int every(void)
{
	return seeded_quick() ? 2 : 1;
}

/* Open strings ring on while others are stopped, and where the bow turns. */
static void test_ringing(void **state)
{
	static const double db[] = { -26, -15 };

	(void)state;
	for (int i = 0; i < 6; i += every()) {
		struct bowed b = player(i % 3);
		struct turn_asked asked = wish(&b);
		struct bowed_sound s;
		struct turn_heard h;

		seeded_state = 20 + (uint64_t)i;
		b.ring_db = db[i / 3];
		s = bowed_make(&b);
		h = hear(&asked, &s);
		is_right("ringing", &b, &h);
		is_even(&s, &h);
		free(s.x);
	}
}

/* Another string plays other notes behind a wall. */
static void test_next_room(void **state)
{
	static const double notes[] = { 185, 110, 293.6648 };

	(void)state;
	for (int i = 0; i < 6; i += every()) {
		struct bowed b = player(i % 3), other = player((i + 1) % 3);
		struct turn_asked asked = wish(&b);
		struct bowed_sound s;
		struct turn_heard h;

		seeded_state = 40 + (uint64_t)i;
		other.hz = notes[(i + i / 3) % 3];
		s = bowed_make(&b);
		beside_next_room(&s, &other, i < 3 ? -20 : -30);
		h = hear(&asked, &s);
		is_right("next room", &b, &h);
		is_even(&s, &h);
		free(s.x);
	}
}

static struct spoken voice(double hz, double lively)
{
	return (struct spoken) { .rate = RATE,
		.seconds = 8.5,
		.hz = hz,
		.lively = lively,
		.tract = hz > 160 ? 1.16 : 1,
		.pause_s = 0.4 };
}

/* Somebody speaks while the string sounds, softly and louder. */
static void test_spoken_to(void **state)
{
	(void)state;
	for (int i = 0; i < 6; i += every()) {
		struct bowed b = player(i % 3);
		struct spoken v = voice(i % 2 ? 190 : 130, 4);
		struct turn_asked asked = wish(&b);
		struct bowed_sound s, speech;
		struct turn_heard h;

		seeded_state = 60 + (uint64_t)i;
		s = bowed_make(&b);
		speech = spoken_make(&v);
		beside_add(&s, &speech, i < 3 ? -20 : -15);
		h = hear(&asked, &s);
		if (i < 3)
			is_right("speech", &b, &h);
		is_right_or_unsure("loud speech", &b, &h);
		free(s.x);
	}
}

/* Speech is no turn, even where it lies at the notes that were asked. */
static void test_speech(void **state)
{
	static const double voices[] = { 95, 130, 165, 230 };

	(void)state;
	for (int i = 0; i < 12; i += every()) {
		struct bowed b = player(i % 3);
		struct spoken v = voice(voices[i / 3], 1 + i % 4);
		struct turn_value value[TURN_VALUES_MAX];
		struct turn_asked asked;
		struct bowed_sound s;
		struct turn_heard h;

		seeded_state = 80 + (uint64_t)i;
		b.hz = v.hz * (i % 2 ? 0.9 : 1);
		asked = wish(&b);
		asked.sways = true;
		s = spoken_make(&v);
		h = hear(&asked, &s);
		if (h.answer == TURN_HEARD || h.arrivals.heard > 0 ||
		    h.bows_full > 0 || h.sway.heard || h.calm_known)
			fail_msg("a voice of %g Hz for %g: answer %d, %d tops",
			    v.hz, b.hz, (int)h.answer, h.arrivals.heard);
		assert_int_equal(turn_values(&h, value), 3);
		free(s.x);
	}
}

/* Of a recording of speech nothing is measured either. */
static void test_speech_on_tape(void **state)
{
	static const double voices[] = { 95, 130, 230 };
	static struct stretch out;

	(void)state;
	for (int i = 0; i < 3; i++) {
		struct spoken v = voice(voices[i], 3);
		struct tape *t = tape_new(
		    RATE, &(struct stretch_asked) { .known = false });
		struct bowed_sound s;

		seeded_state = 100 + (uint64_t)i;
		s = spoken_make(&v);
		for (size_t at = 0; at + 4000 <= s.n; at += 4000) {
			tape_samples(t, s.x + at, 4000);
			while (tape_next(t, &out))
				assert_true(out.kind == STRETCH_UNCLEAR ||
				    out.kind == STRETCH_QUIET);
		}
		tape_end(t);
		while (tape_next(t, &out))
			assert_true(out.kind == STRETCH_UNCLEAR ||
			    out.kind == STRETCH_QUIET);
		assert_false(tape_failed(t));
		tape_free(t);
		free(s.x);
	}
}

/* Who plays nothing while others play in the next room has played nothing. */
static void test_others_alone(void **state)
{
	(void)state;
	for (int i = 0; i < 3; i++) {
		struct bowed b = player(i), other = player(i);
		struct turn_asked asked = wish(&b);
		struct bowed_sound s;
		struct turn_heard h;

		seeded_state = 110 + (uint64_t)i;
		other.hz = E3 * 1.5 * (i == 2 ? 1.5 : 1);
		other.travel_cents = 200;
		s = bowed_make(&other);
		beside_wall(&s, RATE);
		b.travel_cents = 50;
		asked = wish(&b);
		h = hear(&asked, &s);
		if (h.answer != TURN_ELSEWHERE)
			fail_msg("answer %d", (int)h.answer);
		free(s.x);
	}
}

/* What a card may do to a sound. */
enum spoiled { CLIPPED, OFFSET, HOLED, BUZZING, HOLLOW, DOUBLED, WAYS };

static const char *const ways[WAYS] = { "clipped", "a constant", "no numbers",
	"hum", "no fundamental", "two notes at once" };

static struct bowed_sound spoiled(struct bowed *b, enum spoiled how)
{
	struct bowed fifth = *b;
	struct bowed_sound s, other;

	b->hum_db = how == BUZZING ? -20 : 0;
	b->fundamental = how == HOLLOW ? 1e-6 : 1;
	s = bowed_make(b);
	for (size_t k = 0; k < s.n; k++) {
		if (how == CLIPPED)
			s.x[k] = fminf(fmaxf(8 * s.x[k], -1), 1);
		if (how == OFFSET)
			s.x[k] += 0.3F;
		if (how == HOLED && k % 997 == 0)
			s.x[k] = NAN;
	}
	if (how == DOUBLED) {
		fifth.hz *= 1.498307;
		fifth.pulses_a_second = 0;
		other = bowed_make(&fifth);
		beside_add(&s, &other, 0);
	}
	return s;
}

static void test_spoiled(void **state)
{
	(void)state;
	for (int how = 0; how < WAYS; how++)
		for (int i = how % every(); i < 3; i += every()) {
			struct bowed b = player(i);
			struct turn_asked asked = wish(&b);
			struct bowed_sound s;
			struct turn_heard h;

			seeded_state = 120 + (uint64_t)(3 * how + i);
			s = spoiled(&b, (enum spoiled)how);
			h = hear(&asked, &s);
			if (how == DOUBLED)
				is_right_or_unsure(ways[how], &b, &h);
			else
				is_right(ways[how], &b, &h);
			free(s.x);
		}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_ringing),
		cmocka_unit_test(test_next_room),
		cmocka_unit_test(test_spoken_to),
		cmocka_unit_test(test_speech),
		cmocka_unit_test(test_speech_on_tape),
		cmocka_unit_test(test_others_alone),
		cmocka_unit_test(test_spoiled),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
