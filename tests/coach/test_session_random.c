/*
 * test_session_random.c - any keys at any time, thousands of sittings
 *
 * Three shells get the same keys.  One steps when it should, one far too
 * often, one only when a key comes and so always too late; a fourth goes on
 * from a copy of the first, made in the middle.  All must see the same effects.
 * What must hold always is checked in sitting.h.
 */
#include "../score/seeded.h"
#include "sitting.h"

enum { SITTINGS = 3000, INPUTS_MAX = 150 };

static const struct history nothing;
static struct sitting plain, eager, late, copy;
static struct input input[INPUTS_MAX];

static struct routine any_routine(void)
{
	static const int rates[][3] = { { 4, 6, 8 }, { 3, 4, 6 },
		{ 2, 5, 16 } };
	struct routine r = programme_cello(seeded(0, 5));

	r.bow_ms = seeded(100, 600) * 10;
	r.change_ms = seeded(200, 700) * 10;
	r.count_in_bows = seeded(0, 3);
	r.bows_each = seeded(1, 4);
	r.cap_ms = seeded(60, 400) * 1000;
	r.units = seeded(1, 4);
	r.take = (enum take)seeded(TAKE_FINGERS, TAKE_STRINGS);
	if (r.take != TAKE_FINGERS)
		for (int u = 0; u < r.units; u++) {
			memcpy(r.unit[u].name, "0-1", 4);
			r.unit[u].from = u;
			r.unit[u].to = u + 1;
		}
	memcpy(r.ladder, rates[seeded(0, 2)], sizeof(rates[0]));
	for (int i = 1; i < r.stages; i++)
		r.stage[i].start_pulses = 0;
	r.stage[5].fade_after = seeded(0, 8);
	r.stage[0].minutes_ms = seeded(60, 200) * 1000;
	return r;
}

static enum key one_of(const enum key *keys, int count)
{
	return keys[seeded(0, count - 1)];
}

/* A calm student marks in the changes and seldom stops; a wild one does not. */
static enum key any_key(const struct session *s, bool calm)
{
	static const enum key wild[] = { KEY_FORWARD, KEY_FORWARD, KEY_BACK,
		KEY_CLEAN, KEY_SHAKY, KEY_SILENCE, KEY_DIGIT, KEY_HELP,
		KEY_OTHER };
	static const enum key marks[] = { KEY_FORWARD, KEY_CLEAN, KEY_CLEAN,
		KEY_BACK, KEY_SHAKY, KEY_DIGIT };

	if (seeded(0, calm ? 400 : 40) == 0)
		return (enum key)seeded(0, KEY_OTHER);
	if (!calm || seeded(0, 40) == 0)
		return one_of(wild, 9);
	if (s->page != PAGE_PLAY)
		return KEY_FORWARD;
	if (s->phase == PHASE_CHANGE &&
	    (s->plan.marking == MARKING_TURN ||
		s->turn == s->at.passage.turns - 1))
		return one_of(marks, 6);
	return KEY_OTHER;
}

/* What comes next for a session that stands at the input's frame. */
static struct input any_input(const struct session *s, int64_t frame, bool calm)
{
	struct input in = { .kind = INPUT_KEY,
		.frame = frame,
		.key = any_key(s, calm),
		.digit = seeded(0, 9),
		.words = "Why?" };

	if (seeded(0, calm ? 100 : 25) == 0)
		in.kind = (enum input_kind)seeded(INPUT_WORDS, INPUT_GAP);
	return in;
}

static int64_t any_pause(int rate)
{
	int ms = seeded(0, 9) == 0 ? seeded(0, 300) : seeded(0, 9000);

	if (seeded(0, 60) == 0)
		ms = seeded(0, 400000);
	return frames_of_ms(ms, rate) + seeded(0, 3);
}

static void step_eagerly(struct sitting *d, const struct input *in)
{
	for (int i = seeded(0, 5); i > 0 && in->frame > d->s.now; i--) {
		int64_t left = in->frame - d->s.now;

		sitting_reach(d,
		    d->s.now + (int64_t)(seeded_bits() % (uint64_t)(left + 1)));
	}
	sitting_reach(d, in->frame);
	sitting_step(d, in);
}

/* Never woken: all that was due comes with the key. */
static void step_late(struct sitting *d, const struct input *in)
{
	do {
		session_step(&d->s, in, &d->e);
		sitting_take(d, 0, false);
	} while (d->e.more);
}

static void assert_same(const struct sitting *a, const struct sitting *b)
{
	assert_int_equal(a->s.page, b->s.page);
	assert_int_equal(a->turns, b->turns);
	assert_int_equal(a->passages, b->passages);
	assert_true(a->digest == b->digest);
}

/* With no more keys it ends by itself, in so many steps. */
static void assert_ends(struct sitting *d)
{
	int64_t wake;
	int steps = 0;

	while ((wake = session_wake(&d->s)) != INT64_MAX) {
		assert_true(steps++ < 5000);
		sitting_step(
		    d, &(struct input) { .kind = INPUT_FRAME, .frame = wake });
	}
	assert_int_equal(d->over, 1);
	assert_int_equal(d->begun, d->ended);
}

static void play(const struct routine *r, enum marking m, int rate)
{
	int count = seeded(1, INPUTS_MAX), middle = seeded(0, count - 1);
	bool calm = seeded(0, 1);
	int64_t frame = 0;

	sitting_begin(&plain, r, &nothing, m, rate);
	eager = late = plain;
	for (int i = 0; i < count; i++) {
		if (i == middle)
			copy = plain;
		frame += any_pause(rate);
		sitting_reach(&plain, frame);
		input[i] = any_input(&plain.s, frame, calm);
		sitting_step(&plain, &input[i]);
		step_eagerly(&eager, &input[i]);
		step_late(&late, &input[i]);
		assert_same(&plain, &eager);
		assert_same(&plain, &late);
	}
	for (int i = middle; i < count; i++) {
		sitting_reach(&copy, input[i].frame);
		sitting_step(&copy, &input[i]);
	}
	assert_same(&plain, &copy);
}

static void test_any_keys(void **state)
{
	static const int rates[] = { 8000, 11025, 44100, 48000, 192000 };
	int begun = 0, whole = 0, most = 0;

	(void)state;
	seeded_begin("any keys");
	for (int i = 0; i < SITTINGS; i++) {
		struct routine r = any_routine();

		play(&r, (enum marking)seeded(0, 1), rates[seeded(0, 4)]);
		if (seeded(0, 1)) {
			sitting_step(&plain,
			    &(struct input) {
				.kind = INPUT_END, .frame = plain.s.now });
			assert_int_equal(plain.over, 1);
			assert_int_equal(plain.begun, plain.ended);
		} else {
			assert_ends(&plain);
		}
		begun += plain.begun;
		whole += plain.how == ENDED_WHOLE || plain.how == ENDED_CAP;
		most = late.most > most ? late.most : most;
	}
	/* The keys must have led somewhere, or nothing was tested. */
	assert_true(begun > SITTINGS / 2);
	assert_true(whole > SITTINGS / 10);
	print_message("%d begun, %d to their end, %d effects at most\n", begun,
	    whole, most);
}

/* Left alone after the first two keys, with every routine. */
static void test_no_keys(void **state)
{
	(void)state;
	seeded_begin("no keys");
	for (int i = 0; i < SITTINGS / 3; i++) {
		struct routine r = any_routine();

		sitting_begin(
		    &plain, &r, &nothing, (enum marking)seeded(0, 1), 48000);
		if (plain.s.page == PAGE_SORE) {
			sitting_soon(&plain, KEY_FORWARD);
			sitting_soon(&plain, KEY_FORWARD);
		}
		assert_ends(&plain);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_any_keys),
		cmocka_unit_test(test_no_keys),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
