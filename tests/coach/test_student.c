/*
 * test_student.c - one line of a class: every reason with its boundaries, the
 * order, and that a later day needs no history
 */
#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "evenhand/coach/class.h"
#include "evenhand/coach/student.h"
#include "evenhand/coach/where.h"
#include "made.h"

#include "../score/seeded.h"

/* What the tests look at. */
static struct routine routine;
static struct student student;
static struct student_state state;
static struct plan plan;
static char words[1000];

static int begin(void **context)
{
	routine = programme_cello(WIDE);
	*context = past_new();
	return 0;
}

static int end(void **context)
{
	free(*context);
	return 0;
}

/* Finger 4 shaky, all others clean. */
static enum mark fourth_shaky(void *context, int stage, int unit, int round)
{
	(void)context, (void)stage, (void)round;
	return unit == 3 ? MARK_SHAKY : MARK_CLEAN;
}

static enum mark all_shaky(void *context, int stage, int unit, int round)
{
	(void)context, (void)stage, (void)unit, (void)round;
	return MARK_SHAKY;
}

static void practise(struct past *p, int day, mark_maker *mark)
{
	made_plan(&plan, &routine, p, made_moment(day, 17));
	past_play(p, &routine, &plan, mark, NULL, PLAY_ALL, ENDED_WHOLE);
}

/* All clean at the top rung: the past of these tests does not climb. */
static void practise_at_top(struct past *p, int day)
{
	made_plan(&plan, &routine, p, made_moment(day, 17));
	for (int b = 0; b < plan.blocks; b++)
		if (plan.block[b].kind == BLOCK_WORK)
			plan.block[b].pulses = 8;
	past_play(p, &routine, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);
}

/* So many days running, every step days one. */
static void practise_days(
    struct past *p, int from, int days, int step, mark_maker *mark)
{
	for (int i = 0; i < days; i++)
		practise(p, from + i * step, mark);
}

/* Takes the facts on a day, with a record of it, and looks on another. */
static void look(const struct past *p, int taken, int today)
{
	student_of(&student, &routine, &p->h, taken);
	student.given = taken;
	student_look(&state, &student, today);
}

/* The first reason as a sentence. */
static const char *why(void)
{
	message_text(&state.reason[0].message, words, sizeof(words));
	return words;
}

static bool has(enum message_id id)
{
	for (int i = 0; i < state.reasons; i++)
		if (state.reason[i].message.id == id)
			return true;
	return false;
}

/* --- fine, ready, never --- */

static void test_fine(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 3, 1, all_clean);
	look(p, FIRST_DAY + 3, FIRST_DAY + 3);
	assert_int_equal(state.order, STUDENT_FINE);
	assert_int_equal(state.reasons, 1);
	assert_string_equal(
	    why(), "\"First to fourth position\": 3 of 5 practice days");
	assert_int_equal(state.week_days, 3);
	assert_int_equal(state.away, 1);
	assert_int_equal(state.week_ms, 3 * p->sitting[0].length_ms);
	assert_int_equal(student.stage, WIDE);
	assert_int_equal(student.stages, 6);
	assert_int_equal(student.on_days, 3);
	/* Of the forecast: 9 days for a stage between the first and the last. */
	assert_int_equal(student.usual_days, 9);
}

static void test_ready(void **context)
{
	struct past *p = *context;

	int day = FIRST_DAY;

	do {
		practise_at_top(p, day++);
		look(p, day, day);
	} while (student.missing != MISSING_NOTHING && day < FIRST_DAY + 20);
	assert_int_equal(state.order, STUDENT_READY);
	assert_string_equal(
	    why(), "ready to show \"First to fourth position\"");
	/* Pain comes first; that it is ready is still said. */
	past_note(p, day - 1, NOTE_SORE, 0);
	look(p, day, day);
	assert_int_equal(state.order, STUDENT_PAIN);
	assert_true(has(M_CLASS_READY));
}

static void test_never(void **context)
{
	struct past *p = *context;

	look(p, FIRST_DAY, FIRST_DAY);
	assert_int_equal(state.order, STUDENT_ABSENT);
	assert_string_equal(why(), "nothing practised yet");
	assert_int_equal(state.away, -1);
	/* Without a routine there is still what was practised. */
	practise_days(p, FIRST_DAY, 2, 1, all_clean);
	student_of(&student, NULL, &p->h, FIRST_DAY + 1);
	student_look(&state, &student, FIRST_DAY + 1);
	assert_int_equal(state.order, STUDENT_FINE);
	assert_string_equal(why(), "the routine is not known");
	assert_int_equal(state.week_days, 2);
}

/* --- pain --- */

static void test_pain_days(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 2, 1, all_clean);
	past_note(p, FIRST_DAY + 1, NOTE_PAIN, 0);
	p->note[0].words = "wrist\x1b[31m";
	practise_days(p, FIRST_DAY + 2, 12, 1, all_clean);
	look(p, FIRST_DAY + 14, FIRST_DAY + 14);
	assert_int_equal(state.order, STUDENT_PAIN);
	/* Escape codes of a record reach no terminal. */
	assert_string_equal(why(), "pain on 2026-03-03: wrist?[31m");
	look(p, FIRST_DAY + 15, FIRST_DAY + 15);
	assert_int_not_equal(state.order, STUDENT_PAIN);
}

static void test_sore_days(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 8, 1, all_clean);
	past_note(p, FIRST_DAY + 1, NOTE_SKIN, 3);
	look(p, FIRST_DAY + 7, FIRST_DAY + 7);
	assert_int_equal(state.order, STUDENT_PAIN);
	assert_string_equal(why(), "sore on 2026-03-03: skin of finger 3");
	look(p, FIRST_DAY + 8, FIRST_DAY + 8);
	assert_int_not_equal(state.order, STUDENT_PAIN);
}

static void test_pain_came_back(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 3, 1, all_clean);
	past_note(p, FIRST_DAY, NOTE_PAIN, 0);
	past_note(p, FIRST_DAY + 2, NOTE_PAIN, 0);
	look(p, FIRST_DAY + 3, FIRST_DAY + 3);
	assert_int_equal(state.reason[0].message.id, M_CLASS_ASK_FIRST);
	assert_true(has(M_CLASS_PAIN));
	/* It lasts until somebody was asked, however long that is. */
	look(p, FIRST_DAY + 40, FIRST_DAY + 40);
	assert_int_equal(state.reason[0].message.id, M_CLASS_ASK_FIRST);
	routine.seen = true;
	look(p, FIRST_DAY + 40, FIRST_DAY + 40);
	assert_int_not_equal(state.order, STUDENT_PAIN);
}

/* Twelve notes are kept, the newest ones. */
static void test_many_notes(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 1, 1, all_clean);
	for (int i = 0; i < 20; i++)
		past_note(p, FIRST_DAY + (i * 7) % 20, NOTE_SORE, 0);
	look(p, FIRST_DAY + 20, FIRST_DAY + 20);
	assert_int_equal(student.notes, STUDENT_NOTES_MAX);
	for (int i = 0; i < STUDENT_NOTES_MAX; i++)
		assert_int_equal(student.note[i].day, FIRST_DAY + 8 + i);
}

/* --- stuck --- */

static void test_long_on_a_stage(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 17, 1, fourth_shaky);
	look(p, FIRST_DAY + 17, FIRST_DAY + 17);
	assert_int_equal(student.on_days, 17);
	assert_int_equal(state.order, STUDENT_FINE);
	practise(p, FIRST_DAY + 17, fourth_shaky);
	look(p, FIRST_DAY + 18, FIRST_DAY + 18);
	assert_int_equal(state.order, STUDENT_STUCK);
	assert_string_equal(why(),
	    "18 practice days, 9 are usual: \"First to fourth position\"");
}

static void test_held(void **context)
{
	struct past *p = *context;
	int day = FIRST_DAY;

	/* Every other day: enough days at 10, three weeks after 12. */
	practise_days(p, day, 5, 2, all_clean);
	practise_days(p, day + 10, 11, 2, fourth_shaky);
	look(p, day + 31, day + 31);
	assert_int_equal(student.held_days, 11);
	assert_false(has(M_CLASS_HELD));
	practise(p, day + 32, fourth_shaky);
	look(p, day + 33, day + 33);
	assert_int_equal(student.missing, MISSING_CLEAN);
	assert_int_equal(student.held_since, day + 10);
	assert_true(has(M_CLASS_HELD));
	assert_string_equal(
	    why(), "finger 4 shaky for 3 weeks and 12 practice days");
}

/* Ready but for the tops a microphone did not hear: with its numbers. */
static void test_heard(void **context)
{
	struct past *p = *context;
	struct message hold;
	int day = FIRST_DAY;

	do {
		practise_at_top(p, day++);
		look(p, day, day);
	} while (student.missing != MISSING_NOTHING && day < FIRST_DAY + 20);
	assert_int_equal(student.missing, MISSING_NOTHING);
	for (int i = 0; i < p->h.tallies; i++)
		if (p->tally[i].day == day - 1 &&
		    p->tally[i].kind == BLOCK_WORK) {
			p->tally[i].bows_listened = 6;
			p->tally[i].bows_full = 1;
		}
	look(p, day, day);
	assert_int_equal(student.missing, MISSING_HEARD);
	hold = student_hold(&student);
	message_text(&hold, words, sizeof(words));
	assert_string_equal(words, "every top heard in 4 of 24 bows");
}

/* What is missing for the next stage, in words. */
static void test_missing(void **context)
{
	static const struct {
		enum missing missing;
		bool air;
		const char *unit, *words;
	} cases[] = {
		{ MISSING_NOTHING, false, "", "ready to show" },
		{ MISSING_DAYS, false, "", "3 of 7 practice days" },
		{ MISSING_RUNG, false, "", "first round at 3 pulses of 7" },
		{ MISSING_CLEAN, true, "", "first swing shaky" },
		{ MISSING_CLEAN, false, "4", "finger 4 shaky" },
		{ MISSING_MARK, false, "2", "finger 2 without a mark" },
		{ MISSING_MARK, false, "", "first round without marks" },
		{ MISSING_CLEAN_DAYS, false, "", "3 of 7 days all clean" },
		{ MISSING_SHARE, false, "1",
		    "finger 1 has 3 percent of the bows" },
		{ MISSING_HEARD, false, "", "every top heard in 3 of 7 bows" },
		{ MISSING_WELL, false, "", "look at it in the lesson" },
	};
	struct message m;

	(void)context;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		student = (struct student) { .known = true,
			.missing = cases[i].missing,
			.in_the_air = cases[i].air,
			.take = TAKE_FINGERS,
			.have = 3,
			.wanted = 7 };
		snprintf(
		    student.unit, sizeof(student.unit), "%s", cases[i].unit);
		m = student_hold(&student);
		message_text(&m, words, sizeof(words));
		assert_string_equal(words, cases[i].words);
	}
	student.known = false;
	m = student_hold(&student);
	message_text(&m, words, sizeof(words));
	assert_string_equal(words, "the routine is not known");
}

static void test_back(void **context)
{
	struct past *p = *context;

	routine = programme_cello(THIRDS);
	for (int i = 0; i < 8 && !student.back; i++) {
		practise(p, FIRST_DAY + i, all_shaky);
		look(p, FIRST_DAY + i + 1, FIRST_DAY + i + 1);
	}
	assert_true(student.back);
	assert_int_equal(state.order, STUDENT_STUCK);
	assert_string_equal(why(),
	    "went back to \"First to fourth position\"; the file says \"First "
	    "to third position\"");
}

/* --- hurried --- */

static void test_hurried(void **context)
{
	struct past *p = *context;
	struct guard g;

	practise_days(p, FIRST_DAY, 3, 1, all_clean);
	past_note(p, FIRST_DAY, NOTE_LATER, 0);
	past_note(p, FIRST_DAY + 1, NOTE_LATER, 0);
	look(p, FIRST_DAY + 2, FIRST_DAY + 2);
	assert_int_equal(state.order, STUDENT_HURRIED);
	assert_string_equal(
	    why(), "4 signs of hurry in 7 days; 3 make a day slower");
	/* As the plan of any later day counts them. */
	for (int day = FIRST_DAY + 2; day < FIRST_DAY + 20; day++) {
		guard_of(&g, &routine, &p->h, WIDE, day);
		student_look(&state, &student, day);
		assert_int_equal(has(M_CLASS_HURRY), g.hurried);
	}
}

/* --- absent --- */

static void test_away(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 3, 1, all_clean);
	/* Three clear days change nothing, as in the plan. */
	look(p, FIRST_DAY + 6, FIRST_DAY + 6);
	assert_int_equal(state.order, STUDENT_FINE);
	look(p, FIRST_DAY + 7, FIRST_DAY + 7);
	assert_int_equal(state.order, STUDENT_ABSENT);
	assert_string_equal(why(), "4 days without practice, since 2026-03-04");
	/* Who has one practice day a week is away after a week. */
	routine.days_a_week = 1;
	look(p, FIRST_DAY + 9, FIRST_DAY + 9);
	assert_int_equal(state.order, STUDENT_FINE);
	look(p, FIRST_DAY + 10, FIRST_DAY + 10);
	assert_int_equal(state.order, STUDENT_ABSENT);
}

/* What no record tells of is not called absence. */
static void test_record(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 3, 1, all_clean);
	look(p, FIRST_DAY + 3, FIRST_DAY + 10);
	assert_int_equal(state.order, STUDENT_FINE);
	look(p, FIRST_DAY + 3, FIRST_DAY + 11);
	assert_int_equal(state.order, STUDENT_ABSENT);
	assert_string_equal(
	    why(), "no record for 8 days; the last is of 2026-03-05");
	look(p, FIRST_DAY + 3, FIRST_DAY + 58);
	assert_int_equal(state.order, STUDENT_ABSENT);
	look(p, FIRST_DAY + 3, FIRST_DAY + 59);
	assert_int_equal(state.order, STUDENT_GONE);
	assert_string_equal(why(), "no record since 2026-03-05");
}

/* The clock of a computer was wrong when it gave: that day counts for nothing. */
static void test_record_to_come(void **context)
{
	struct past *p = *context;
	struct class_row row = { .student = &student };
	struct message told[CLASS_TOLD_MAX];
	char said[300];
	int n;

	practise_days(p, FIRST_DAY, 3, 1, all_clean);
	look(p, FIRST_DAY + 3, FIRST_DAY + 3);
	/* East of the teacher it may be tomorrow by now. */
	student.given = FIRST_DAY + 4;
	assert_int_equal(
	    student_known_until(&student, FIRST_DAY + 3), FIRST_DAY + 3);
	assert_false(student_given_ahead(&student, FIRST_DAY + 3));
	student.given = FIRST_DAY + 100;
	assert_true(student_given_ahead(&student, FIRST_DAY + 10));
	assert_int_equal(
	    student_known_until(&student, FIRST_DAY + 10), FIRST_DAY + 2);
	student_look(&state, &student, FIRST_DAY + 9);
	assert_int_equal(state.order, STUDENT_FINE);
	student_look(&state, &student, FIRST_DAY + 10);
	assert_int_equal(state.order, STUDENT_ABSENT);
	assert_string_equal(
	    why(), "no record for 8 days; the last is of 2026-03-04");
	n = class_tell(&row, FIRST_DAY + 10, told);
	message_text(&told[n - 1], said, sizeof(said));
	assert_string_equal(said,
	    "Record of 2026-06-10, a day that is still to come, so it does not "
	    "count. Is the clock of the student's computer right?");
	student_look(&state, &student, FIRST_DAY + 100);
	n = class_tell(&row, FIRST_DAY + 100, told);
	message_text(&told[n - 1], said, sizeof(said));
	assert_string_equal(said, "Record of 2026-06-10.");
}

static void test_seldom(void **context)
{
	struct past *p = *context;

	/* Six days a week: twelve in two weeks, of which six are half. */
	practise_days(p, FIRST_DAY, 5, 3, all_clean);
	look(p, FIRST_DAY + 12, FIRST_DAY + 12);
	assert_int_equal(state.order, STUDENT_FINE);
	look(p, FIRST_DAY + 13, FIRST_DAY + 13);
	assert_int_equal(state.order, STUDENT_ABSENT);
	assert_string_equal(why(), "5 of 12 practice days in two weeks");
	practise(p, FIRST_DAY + 13, all_clean);
	look(p, FIRST_DAY + 13, FIRST_DAY + 13);
	assert_int_equal(state.order, STUDENT_FINE);
}

/* --- the question --- */

static void test_question(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 2, 1, all_clean);
	past_note(p, FIRST_DAY, NOTE_QUESTION, 0);
	p->note[0].words = "How loose?";
	past_note(p, FIRST_DAY + 1, NOTE_QUESTION, 0);
	p->note[1].words = "Which finger first?";
	past_note(p, FIRST_DAY + 1, NOTE_QUESTION, 0);
	look(p, FIRST_DAY + 2, FIRST_DAY + 2);
	assert_string_equal(student.question, "Which finger first?");
	assert_true(student_asks(&student, FIRST_DAY + 28));
	assert_false(student_asks(&student, FIRST_DAY + 29));
	/* A question asks for nothing in the order. */
	assert_int_equal(state.order, STUDENT_FINE);
}

/* --- the order --- */

static void test_compare(void **context)
{
	struct student a = { .id = "1", .initials = "A. A." };
	struct student b = { .id = "2", .initials = "B. B." };
	struct student_state x = { .order = STUDENT_STUCK, .urgency = 1 };
	struct student_state y = { .order = STUDENT_HURRIED, .urgency = 9 };

	(void)context;
	assert_true(student_compare(&a, &x, &b, &y) < 0);
	assert_true(student_compare(&b, &y, &a, &x) > 0);
	y.order = STUDENT_STUCK;
	assert_true(student_compare(&a, &x, &b, &y) > 0);
	y.urgency = 1;
	assert_true(student_compare(&a, &x, &b, &y) < 0);
	b.initials[0] = 'A', b.initials[3] = 'A';
	assert_true(student_compare(&a, &x, &b, &y) < 0);
	assert_int_equal(student_compare(&a, &x, &a, &x), 0);
	/* As the manual says it: who needs the teacher, then fine and gone. */
	for (enum student_order i = 0; i < STUDENT_ORDERS; i++)
		assert_string_equal(message_sentence(student_word(i)),
		    ((const char *[]) { "pain", "stuck", "hurried", "absent",
			"unread", "ready", "fine", "gone" })[i]);
}

/* Pain before soreness, the newer before the older. */
static void test_urgency(void **context)
{
	static const struct {
		enum note_kind kind;
		int ago;
	} rising[] = { { NOTE_SORE, 6 }, { NOTE_SORE, 0 }, { NOTE_PAIN, 13 },
		{ NOTE_PAIN, 1 } };
	int64_t before = -1;

	(void)context;
	for (size_t i = 0; i < sizeof(rising) / sizeof(rising[0]); i++) {
		struct past *p = past_new();

		practise_days(p, FIRST_DAY, 14, 1, all_clean);
		past_note(p, FIRST_DAY + 14 - rising[i].ago, rising[i].kind, 0);
		look(p, FIRST_DAY + 14, FIRST_DAY + 14);
		assert_int_equal(state.order, STUDENT_PAIN);
		assert_true(state.urgency > before);
		before = state.urgency;
		free(p);
	}
}

/* --- later days, odd histories --- */

static enum mark by_chance(void *context, int stage, int unit, int round)
{
	(void)context, (void)stage, (void)unit, (void)round;
	return seeded(0, 5) == 0 ? MARK_SHAKY : MARK_CLEAN;
}

static void random_past(struct past *p)
{
	int day = FIRST_DAY;

	for (int i = seeded(1, 30); i > 0; i--) {
		made_plan(&plan, &routine, p, made_moment(day, 17));
		past_play(
		    p, &routine, &plan, by_chance, NULL, PLAY_ALL, ENDED_WHOLE);
		if (seeded(0, 9) == 0)
			past_note(p, day, (enum note_kind)seeded(1, 5), 0);
		day += seeded(1, 4);
	}
}

/*
 * What was taken when a record was gathered says the same on a later day as what
 * would be taken then.
 */
static void test_later_days(void **context)
{
	(void)context;
	seeded_begin("test_later_days");
	for (int n = 0; n < 60; n++) {
		struct past *p = past_new();
		struct student_state then;
		struct student fresh;
		int last;

		routine = programme_cello(seeded(AIR, LETTING_GO));
		random_past(p);
		last = p->sitting[p->h.sittings - 1].day;
		student_of(&student, &routine, &p->h, last);
		student.given = last + seeded(0, 9);
		for (int today = last; today < last + 80; today += 3) {
			student_of(&fresh, &routine, &p->h, today);
			fresh.given = student.given;
			student_look(&state, &student, today);
			student_look(&then, &fresh, today);
			assert_int_equal(state.order, then.order);
			assert_int_equal(state.reasons, then.reasons);
			assert_int_equal(state.month_ms, then.month_ms);
			assert_memory_equal(
			    state.reason, then.reason, sizeof(then.reason));
		}
		free(p);
	}
}

/* A clock that was wrong: what lies ahead is not there yet. */
static void test_ahead(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 3, 1, all_clean);
	past_swing(p, FIRST_DAY + 400, FIRST_DAY + 400);
	look(p, FIRST_DAY + 9, FIRST_DAY + 9);
	assert_true(student.ahead);
	assert_int_equal(student.last, FIRST_DAY + 2);
	assert_int_equal(state.order, STUDENT_ABSENT);
	/* Looked at before its last day it is seen as on that. */
	student_look(&state, &student, FIRST_DAY - 5);
	assert_int_equal(state.away, 0);
	assert_int_equal(state.week_days, 3);
}

/* A file may hold any number; nothing overflows, and nothing is endless. */
static void test_any_numbers(void **context)
{
	static const int days[] = { INT_MIN, -1, 0, FIRST_DAY, INT_MAX - 1,
		INT_MAX };
	struct past *p = *context;

	practise_days(p, FIRST_DAY, 3, 1, all_clean);
	for (size_t i = 0; i < sizeof(days) / sizeof(days[0]); i++) {
		p->sitting[1].day = days[i];
		p->sitting[1].length_ms = INT_MAX;
		past_note(p, days[i], NOTE_PAIN, 9);
		for (size_t k = 0; k < sizeof(days) / sizeof(days[0]); k++) {
			student_of(&student, &routine, &p->h, days[k]);
			student_look(&state, &student, days[k]);
			assert_in_range(state.reasons, 1, STUDENT_REASONS_MAX);
		}
	}
}

/* 28 whole days are more milliseconds than an int holds. */
static void test_whole_days(void **context)
{
	struct past *p = *context;

	practise_days(p, FIRST_DAY, STUDENT_DAYS, 1, all_clean);
	for (int i = 0; i < p->h.sittings; i++)
		p->sitting[i].length_ms = DAY_SECONDS * 1000;
	look(p, FIRST_DAY + STUDENT_DAYS - 1, FIRST_DAY + STUDENT_DAYS - 1);
	assert_int_equal(state.month_days, STUDENT_DAYS);
	assert_true(
	    state.month_ms == INT64_C(1000) * DAY_SECONDS * STUDENT_DAYS);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
#define CASE(f) cmocka_unit_test_setup_teardown(f, begin, end)
		CASE(test_fine),
		CASE(test_ready),
		CASE(test_never),
		CASE(test_pain_days),
		CASE(test_sore_days),
		CASE(test_pain_came_back),
		CASE(test_many_notes),
		CASE(test_long_on_a_stage),
		CASE(test_held),
		CASE(test_heard),
		CASE(test_missing),
		CASE(test_back),
		CASE(test_hurried),
		CASE(test_away),
		CASE(test_record),
		CASE(test_record_to_come),
		CASE(test_seldom),
		CASE(test_question),
		CASE(test_compare),
		CASE(test_urgency),
		CASE(test_later_days),
		CASE(test_ahead),
		CASE(test_any_numbers),
		CASE(test_whole_days),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
