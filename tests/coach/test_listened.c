/*
 * test_listened.c - what was heard, and the one thing that is said of it
 */
#include "sitting.h"

static struct sitting d;
static struct routine r;
static const struct history nothing;

/* --- one turn --- */

static struct turn_heard full_turn(void)
{
	struct turn_heard h = { .answer = TURN_HEARD,
		.distance = DISTANCE_NEAR,
		.share = 0.95,
		.bows = 2,
		.bows_listened = 2,
		.bows_full = 2,
		.arrivals = { .asked = 12,
		    .heard = 12,
		    .travel_share = 0.97,
		    .sure = 0.9 },
		.calm_known = true,
		.calm_sure = 0.9 };

	for (int i = 0; i < 2; i++)
		h.bow[i] = (struct bow_heard) {
			.listened = true, .asked = 6, .tops = 6, .full = true
		};
	return h;
}

static void test_turn(void **state)
{
	struct turn_heard h = full_turn();
	struct listened l;

	(void)state;
	h.bow[1].tops = 4;
	h.bow[1].full = false;
	h.bows_full = 1;
	h.stops = 1;
	listened_of(&l, &h);
	assert_true(l.told);
	assert_int_equal(l.bows, 2);
	assert_int_equal(l.bows_full, 1);
	assert_int_equal(l.tops, 10);
	assert_int_equal(l.tops_asked, 12);
	assert_int_equal(l.stops, 1);
	assert_float_equal(l.travel_share, 0.97, 1e-6);
	/* More tops in one bow stand for none in another. */
	h.bow[0].tops = 8;
	listened_of(&l, &h);
	assert_int_equal(l.tops, 10);
	/* What was not listened to is in neither number. */
	h.bow[1].listened = false;
	h.bows_listened = 1;
	listened_of(&l, &h);
	assert_int_equal(l.tops_asked, 6);
	assert_int_equal(l.tops, 6);
}

/* What is unsure is not told, and where nothing was asked nothing is. */
static void test_turn_unsure(void **state)
{
	struct turn_heard h = full_turn();
	struct listened l;

	(void)state;
	h.arrivals.sure = 0.4;
	h.arrivals.timed = true;
	h.arrivals.late_s = 0.2;
	h.calm_sure = 0.4;
	h.stops = 3;
	h.sway = (struct sway) { .heard = true, .rate_hz = 5, .sure = 0.3 };
	listened_of(&l, &h);
	assert_float_equal(l.travel_share, 0, 0);
	assert_false(l.timed);
	assert_int_equal(l.stops, 0);
	assert_float_equal(l.rate_hz, 0, 0);
	h.arrivals = (struct arrivals) { 0 };
	listened_of(&l, &h);
	assert_int_equal(l.bows, 0);
	assert_int_equal(l.tops_asked, 0);
	h = full_turn();
	h.answer = TURN_NOISE;
	listened_of(&l, &h);
	assert_true(l.told);
	assert_int_equal(l.answer, TURN_NOISE);
	assert_int_equal(l.bows + l.tops_asked, 0);
}

/* --- a block --- */

static struct listened_sum sum;

static void four_full(void)
{
	sum = (struct listened_sum) { .turns = 4, .heard = 4 };
	for (int u = 0; u < 4; u++) {
		sum.unit[u] = (struct listened_unit) {
			.tops = 12, .tops_asked = 12, .travel_share = 1
		};
		sum.tops += 12;
		sum.tops_asked += 12;
	}
}

static void lose(int unit, int tops, int of_clean)
{
	sum.unit[unit].tops -= tops;
	sum.unit[unit].clean_missing += of_clean;
	sum.tops -= tops;
}

static void found(enum finding_kind kind, int unit, int count)
{
	struct finding f = finding_of(&sum, false);

	assert_int_equal(f.kind, kind);
	if (unit >= 0)
		assert_int_equal(f.unit, unit);
	if (count >= 0)
		assert_int_equal(f.count, count);
}

static void test_missing(void **state)
{
	(void)state;
	four_full();
	found(FINDING_ALL, -1, -1);
	/* One alone may have been there. */
	lose(0, 1, 1);
	lose(1, 1, 1);
	found(FINDING_COUNT, -1, -1);
	lose(3, 3, 0);
	found(FINDING_MISSING, 3, 3);
	lose(2, 5, 2);
	found(FINDING_CLEAN_MISSING, 2, 2);
	/* Of as many the lower one. */
	four_full();
	lose(1, 2, 2);
	lose(3, 2, 2);
	found(FINDING_CLEAN_MISSING, 1, 2);
}

static void test_short(void **state)
{
	(void)state;
	four_full();
	sum.unit[3].travel_share = 0.86F;
	found(FINDING_ALL, -1, -1);
	sum.unit[3].travel_share = 0.8F;
	sum.unit[1].travel_share = 0.7F;
	found(FINDING_SHORT, 1, -1);
	/* Where the upper note need not be exact nothing is said of it. */
	assert_int_equal(finding_of(&sum, true).kind, FINDING_ALL);
	/* Nor from a far microphone, */
	sum.far = true;
	found(FINDING_ALL, -1, -1);
	sum.far = false;
	/* nor of a unit whose way is not known. */
	sum.unit[1].travel_share = sum.unit[3].travel_share = 0;
	found(FINDING_ALL, -1, -1);
}

static void test_otherwise(void **state)
{
	(void)state;
	four_full();
	sum.timed = 4;
	sum.late_s = 0.079F;
	sum.stops = 1;
	found(FINDING_ALL, -1, -1);
	sum.rate_hz = 5.2F;
	found(FINDING_SWINGS, -1, -1);
	sum.late_s = 0.09F;
	found(FINDING_LATE, -1, -1);
	sum.late_s = -0.09F;
	found(FINDING_EARLY, -1, -1);
	sum.stops = 2;
	found(FINDING_BOW, -1, 2);
	lose(0, 2, 0);
	found(FINDING_MISSING, 0, 2);
	/* The bow alone was listened to. */
	sum = (struct listened_sum) { .turns = 4, .heard = 4 };
	found(FINDING_NONE, -1, -1);
	sum.stops = 2;
	found(FINDING_BOW, -1, 2);
}

static void test_unheard(void **state)
{
	(void)state;
	sum = (struct listened_sum) { 0 };
	found(FINDING_NONE, -1, -1);
	sum.turns = 4;
	sum.answers[TURN_SILENT] = 2;
	sum.answers[TURN_ELSEWHERE] = 2;
	found(FINDING_UNHEARD, -1, -1);
	sum.turns = 3;
	sum.answers[TURN_SILENT] = 1;
	found(FINDING_ELSEWHERE, -1, -1);
}

/* --- in a session --- */

static struct listened heard_turn(int tops)
{
	return (struct listened) { .told = true,
		.distance = DISTANCE_NEAR,
		.bows = 2,
		.bows_full = tops >= 12 ? 2 : 0,
		.tops = tops,
		.tops_asked = 12,
		.travel_share = 1 };
}

static void hear(int number, const struct listened *l)
{
	const struct input in = { .kind = INPUT_HEARD,
		.frame = d.s.now,
		.number = number,
		.heard = l };

	sitting_step(&d, &in);
}

static bool said(size_t from, const char *words)
{
	return strstr(d.said + from, words) != NULL;
}

static bool short_titles;

/*
 * Plays a session, all marked clean, and tells after each turn what was heard
 * of it; where is where said[] began when the lead-in of a block began.
 */
static void play(int stage, struct listened (*of)(const struct turn_row *),
    size_t *where, int *blocks)
{
	int told = 0, block = 0;

	r = programme_cello(stage);
	for (int i = 0; short_titles && i < r.stages; i++)
		r.stage[i].title = "Slide";
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	sitting_start(&d);
	where[0] = d.said_length;
	while (d.s.page == PAGE_PLAY) {
		size_t from = d.said_length;

		sitting_step(&d,
		    &(struct input) {
			.kind = INPUT_FRAME, .frame = session_wake(&d.s) });
		if (d.s.at.from.block > block)
			where[block = d.s.at.from.block] = from;
		for (; told < d.turns; told++) {
			struct listened l = of(&d.turn[told]);

			sitting_step(&d,
			    &(struct input) { .kind = INPUT_KEY,
				.key = KEY_CLEAN,
				.frame = d.s.now + d.s.rate });
			if (l.told)
				hear(told, &l);
		}
	}
	*blocks = block + 1;
	where[*blocks] = d.said_length;
}

static struct listened not_listened(const struct turn_row *t)
{
	(void)t;
	return (struct listened) { 0 };
}

static struct listened all_heard(const struct turn_row *t)
{
	return t->unit < 0 ? not_listened(t) : heard_turn(12);
}

static struct listened fourth_misses(const struct turn_row *t)
{
	return t->unit < 0 ? not_listened(t)
			   : heard_turn(t->unit == 3 ? 10 : 12);
}

static struct listened deaf(const struct turn_row *t)
{
	return t->unit < 0
	    ? not_listened(t)
	    : (struct listened) { .told = true, .answer = TURN_SILENT };
}

static struct listened elsewhere(const struct turn_row *t)
{
	return t->unit < 0
	    ? not_listened(t)
	    : (struct listened) { .told = true, .answer = TURN_ELSEWHERE };
}

static void has_sentence(struct message m, const char *words)
{
	char line[1024] = "";

	if (m.id != M_NONE)
		message_text(&m, line, sizeof(line));
	assert_string_equal(line, words);
}

/* Of the block before, in the next lead-in, and never in a block itself. */
static void test_told(void **state)
{
	size_t where[PLAN_BLOCKS_MAX + 1];
	int blocks;

	(void)state;
	play(TONE, fourth_misses, where, &blocks);
	assert_int_equal(blocks, 4);
	/* Nothing is heard of the air. */
	assert_false(said(where[0], "heard") &&
	    strstr(d.said + where[0], "heard") < d.said + where[2]);
	/* Its cue and a long title leave no time before the count-in; */
	assert_true(
	    strstr(d.said + where[2], "Listen to") >= d.said + where[3]);
	/* where it is short the cue gives way. */
	assert_true(said(where[3], "First: finger 1.\nListen to finger 4.\n"));
	has_sentence(session_heard(&d.s, 0), "");
	has_sentence(session_heard(&d.s, 1),
	    "\"First to fourth position\": 46 of 48 tops were heard. You "
	    "marked finger 4 clean; 2 tops were not heard. Listen for them.");
	has_sentence(session_microphone(&d.s), "");
}

/* With a short title there is time for the cue as well. */
static void test_told_short(void **state)
{
	size_t where[PLAN_BLOCKS_MAX + 1];
	const char *line;
	int blocks;

	(void)state;
	short_titles = true;
	play(TONE, fourth_misses, where, &blocks);
	short_titles = false;
	line = strstr(d.said + where[2], ", finger 1.\nListen to finger 4.\n");
	assert_non_null(line);
	assert_true(line < d.said + where[3]);
}

/* Letters are counted, and the last way has the fewest. */
static void test_ways(void **state)
{
	size_t where[PLAN_BLOCKS_MAX + 1];
	int blocks;

	(void)state;
	play(TONE, fourth_misses, where, &blocks);
	has_sentence(session_heard_in(&d.s, 1, 200),
	    "46 of 48 tops heard. You marked finger 4 clean: 2 tops not "
	    "heard.");
	has_sentence(session_heard_in(&d.s, 1, 64),
	    "You marked finger 4 clean: 2 tops not heard.");
	has_sentence(
	    session_heard_in(&d.s, 1, 30), "2 tops of finger 4 not heard.");
	has_sentence(session_heard_in(&d.s, 1, 28), "Listen to finger 4.");
	has_sentence(session_heard_in(&d.s, 1, 18), "46 of 48 heard.");
	has_sentence(session_heard_in(&d.s, 1, 13), "");
	has_sentence(session_heard_in(&d.s, 0, 200), "");
}

static void test_told_all(void **state)
{
	size_t where[PLAN_BLOCKS_MAX + 1];
	int blocks;

	(void)state;
	play(TONE, all_heard, where, &blocks);
	has_sentence(session_heard(&d.s, 3),
	    "\"A tone apart\": all 144 tops were heard.");
}

/* That it could not be heard is said once in play. */
static void test_told_deaf(void **state)
{
	size_t where[PLAN_BLOCKS_MAX + 1];
	const char *first, *second;
	int blocks;

	(void)state;
	short_titles = true;
	play(TONE, deaf, where, &blocks);
	first = strstr(d.said, "That was not heard.");
	assert_non_null(first);
	second = strstr(first + 1, "That was not heard.");
	assert_null(second);
	short_titles = false;
	has_sentence(session_microphone(&d.s),
	    "The microphone heard next to nothing. Is it on, and is it the "
	    "right one?");
}

/* A block on another string is told, in fewer words where there is less time. */
static void test_told_elsewhere(void **state)
{
	size_t where[PLAN_BLOCKS_MAX + 1];
	int blocks;

	(void)state;
	play(TONE, elsewhere, where, &blocks);
	has_sentence(session_heard_in(&d.s, 1, 23), "Other notes were heard.");
	has_sentence(session_heard_in(&d.s, 1, 22), "Another string?");
	has_sentence(session_heard_in(&d.s, 1, 15), "Another string?");
	has_sentence(session_heard_in(&d.s, 1, 14), "");
	/* After long titles there is no time; after the next block there is. */
	assert_true(said(where[3], "ARM LEADS, finger 1.\nAnother string?\n"));
	assert_ptr_equal(strstr(d.said, "Another string?"),
	    strstr(d.said + where[3], "Another string?"));
}

static void test_not_listened(void **state)
{
	size_t where[PLAN_BLOCKS_MAX + 1];
	int blocks;

	(void)state;
	play(TONE, not_listened, where, &blocks);
	assert_null(strstr(d.said, "heard"));
	for (int b = 0; b < blocks; b++)
		has_sentence(session_heard(&d.s, b), "");
	has_sentence(session_microphone(&d.s), "");
}

/* Whatever is heard, what is played and kept is the same. */
static void test_same_journal(void **state)
{
	static struct sitting without;
	size_t where[PLAN_BLOCKS_MAX + 1];
	int blocks;

	(void)state;
	play(TONE, not_listened, where, &blocks);
	memcpy(&without, &d, sizeof(d));
	play(TONE, fourth_misses, where, &blocks);
	assert_int_equal(d.turns, without.turns);
	assert_memory_equal(
	    d.turn, without.turn, (size_t)d.turns * sizeof(d.turn[0]));
	assert_memory_equal(
	    d.mark, without.mark, (size_t)d.turns * sizeof(d.mark[0]));
	assert_memory_equal(
	    d.mark_ms, without.mark_ms, (size_t)d.turns * sizeof(d.mark_ms[0]));
	assert_int_equal(d.passages, without.passages);
	assert_memory_equal(
	    d.frame, without.frame, (size_t)d.passages * sizeof(d.frame[0]));
	assert_int_equal(d.how, without.how);
	assert_int_equal(d.length_ms, without.length_ms);
}

/* What comes late, of nothing, or of another turn, is no harm. */
static void test_odd_inputs(void **state)
{
	const struct listened l = heard_turn(12);
	size_t where[PLAN_BLOCKS_MAX + 1];
	int blocks, turns;

	(void)state;
	play(TONE, not_listened, where, &blocks);
	turns = d.turns;
	hear(-1, &l);
	hear(turns, &l);
	hear(0, NULL);
	assert_false(d.s.turn_played[0].heard.told);
	/* On the end page it still counts for what is told there. */
	hear(turns - 1, &l);
	assert_true(d.s.turn_played[turns - 1].heard.told);
	assert_int_equal(d.s.page, PAGE_END);
	has_sentence(session_heard(&d.s, blocks - 1),
	    "\"A tone apart\": all 12 tops were heard.");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_turn),
		cmocka_unit_test(test_turn_unsure),
		cmocka_unit_test(test_missing),
		cmocka_unit_test(test_short),
		cmocka_unit_test(test_otherwise),
		cmocka_unit_test(test_unheard),
		cmocka_unit_test(test_told),
		cmocka_unit_test(test_told_short),
		cmocka_unit_test(test_ways),
		cmocka_unit_test(test_told_all),
		cmocka_unit_test(test_told_deaf),
		cmocka_unit_test(test_told_elsewhere),
		cmocka_unit_test(test_not_listened),
		cmocka_unit_test(test_same_journal),
		cmocka_unit_test(test_odd_inputs),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
