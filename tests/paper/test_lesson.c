/*
 * test_lesson.c - the teacher's sheet: a week counted by hand, what is the one
 * thing to look at, and that nothing on the page meets
 */
#include "../coach/made.h"
#include "../screen/golden_pages.h"
#include "areas.h"

#include "evenhand/coach/lesson.h"
#include "evenhand/coach/week.h"
#include "evenhand/paper/list.h"
#include "evenhand/paper/sheet.h"

static struct paper paper;
static struct plan plan;
static char list[LIST_BYTES_MAX];
static char told[PAPER_BYTES_MAX]; /* all its words, in their order */

static void tell(void)
{
	struct text t = text_in(told, sizeof(told));

	for (int i = 0; i < paper.items; i++)
		if (paper.item[i].kind == PAPER_WORDS)
			text_format(&t, "%s ", paper.item[i].text);
	assert_false(t.cut);
}

static void make(const struct routine *r, const struct past *p, int day,
    enum sheet_size size, bool large)
{
	struct plan_wish wish = {
		.routine = r, .history = &p->h, .now = made_moment(day, 12)
	};
	struct lesson_wish w = { r, &p->h, &plan, "Wren", size, large };
	struct text t = text_in(list, sizeof(list));

	plan_make(&plan, &wish);
	sheet_lesson(&paper, &w);
	assert_false(paper.cut);
	list_write(&t, &paper);
	areas_check(&paper, "lesson");
	tell();
}

static void says(const char *words)
{
	if (!strstr(told, words))
		fail_msg("\"%s\" is not on the sheet", words);
}

/* One session of a round at these pulses, shaky for the bits given. */
static struct past_sitting *play(struct past *p, const char *stage, int day,
    int pulses, unsigned shaky, enum ended ended)
{
	static const char *const names[] = { "1", "2", "3", "4" };
	bool first = p->h.sittings == 0 ||
	    p->sitting[p->h.sittings - 1].day != day;
	struct past_sitting *s = past_sit(
	    p, made_moment(day, 17), stage, ended);

	s->length_ms = 292000;
	strcpy(s->asked_stage, stage);
	for (int u = 0; u < 4; u++)
		past_turn(p, BLOCK_WORK, stage, names[u], 0, pulses,
		    shaky >> u & 1 ? MARK_SHAKY : MARK_CLEAN, first);
	return s;
}

/* An earlier stage in the sitting begun last. */
static void again(struct past *p, const char *stage, enum mark first)
{
	past_turn(p, BLOCK_RECAP, stage, "1", 0, 4, first, true);
	past_turn(p, BLOCK_RECAP, stage, "2", 0, 4, MARK_CLEAN, true);
}

/* Counted by hand: what lies before the week is not in it. */
static void test_week(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *p = past_new();
	struct week w;

	(void)state;
	play(p, "tone", FIRST_DAY - 7, 6, 15, ENDED_PAIN);
	past_note(p, FIRST_DAY - 7, NOTE_PAIN, 0);
	play(p, "tone", FIRST_DAY - 6, 6, 8, ENDED_WHOLE);
	play(p, "tone", FIRST_DAY - 6, 6, 0, ENDED_EARLY);
	play(p, "tone", FIRST_DAY - 2, 8, 0, ENDED_CAP);
	p->tally[p->h.tallies - 1].resets = 5; /* of finger 4 */
	past_tally(p, &p->turn[p->h.turns - 1])->bows += 10;
	play(p, "tone", FIRST_DAY, 8, 9, ENDED_UNDER_WAY);
	past_note(p, FIRST_DAY, NOTE_QUESTION, 0);
	p->note[1].words = "How loose is loose?";
	past_note(p, FIRST_DAY, NOTE_LATER, 0);
	past_note(p, FIRST_DAY - 2, NOTE_SKIN, 2);
	/* What was practised on another instrument is no bow of this one. */
	past_sit(p, made_moment(FIRST_DAY, 18), "/tone", ENDED_WHOLE);
	past_turn(p, BLOCK_WORK, "/tone", "1", 0, 8, MARK_CLEAN, true);

	week_of(&w, &r, &p->h, TONE, FIRST_DAY);
	assert_int_equal(w.first, FIRST_DAY - 6);
	assert_int_equal(w.days, 3);
	assert_int_equal(w.sessions, 5);
	assert_int_equal(w.ms, 4 * 292000);
	assert_int_equal(w.ms_most, 2 * 292000);
	assert_int_equal(w.ms_of[4], 292000);
	assert_int_equal(w.bows[0], 8);
	assert_int_equal(w.bows[3], 18);
	assert_int_equal(w.resets, 5);
	assert_int_equal(w.resets_of[3], 5);
	assert_int_equal(w.whole, 3);
	assert_int_equal(w.early, 1);
	assert_int_equal(w.cut, 1);
	assert_int_equal(w.pain, 0);
	assert_int_equal(w.sore, 1);
	assert_int_equal(w.sore_day, FIRST_DAY - 2);
	assert_string_equal(w.asks, "How loose is loose?");
	assert_int_equal(w.goes, 3);
	assert_int_equal(w.goes_clean, 1);
	assert_int_equal(w.shaky[0], 1);
	assert_int_equal(w.shaky[3], 2);
	free(p);
}

/* What a microphone heard takes the line in which there is nothing to say. */
static void test_heard(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *p = past_new();
	struct lesson_facts facts;
	struct lesson_words words;
	int heard = 0, lines;

	(void)state;
	play(p, "tone", FIRST_DAY, 6, 0, ENDED_WHOLE);
	made_plan(&plan, &r, p, made_moment(FIRST_DAY + 1, 17));
	lesson_facts_of(&facts, &r, &p->h, &plan);
	lesson_words_of(&words, &facts);
	lines = words.lines;
	for (int i = 0; i < lines; i++)
		heard += words.line[i].id == M_LESSON_HEARD;
	assert_int_equal(heard, 0);
	p->tally[p->h.tallies - 1].bows_listened = 6;
	p->tally[p->h.tallies - 1].bows_full = 5;
	p->tally[p->h.tallies - 2].bows_listened = 2;
	lesson_facts_of(&facts, &r, &p->h, &plan);
	assert_int_equal(facts.week.bows_listened, 8);
	assert_int_equal(facts.week.bows_full, 5);
	lesson_words_of(&words, &facts);
	assert_int_equal(words.lines, lines);
	for (int i = 0; i < lines; i++)
		heard += words.line[i].id == M_LESSON_HEARD;
	assert_int_equal(heard, 1);
	free(p);
}

static void test_returns(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *p = past_new();
	struct week w;

	(void)state;
	for (int d = 0; d < 4; d++) {
		play(p, "tone", FIRST_DAY + d, 6, 0, ENDED_WHOLE);
		/* Shaky on days 0, 1 and 3: two of the last three. */
		again(p, "wide", d == 2 ? MARK_CLEAN : MARK_SHAKY);
		/* Shaky on days 0 and 3: one of the last three. */
		again(p, "thirds", d % 3 ? MARK_CLEAN : MARK_SHAKY);
	}
	week_of(&w, &r, &p->h, TONE, FIRST_DAY + 3);
	assert_int_equal(w.recap_shaky, 1U << WIDE);
	make(&r, p, FIRST_DAY + 4, SHEET_A4, false);
	says("\"First to fourth position\", an earlier stage");
	free(p);
}

/* Ready, hold, a step back, and an end until somebody was asked. */
static void test_answers(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *p = past_new();

	(void)state;
	for (int d = 0; d < 6; d++)
		play(p, "tone", FIRST_DAY + d, 8, 0, ENDED_WHOLE);
	make(&r, p, FIRST_DAY + 6, SHEET_A4, false);
	says("READY TO SHOW");
	/* To the teacher, who is not told of "your teacher". */
	says("Ready to show: hear \"A tone apart\" in this lesson.");
	assert_null(strstr(told, "your teacher"));
	says("nothing stands out. Hear \"A tone apart\".");

	play(p, "tone", FIRST_DAY + 6, 8, 8, ENDED_WHOLE);
	make(&r, p, FIRST_DAY + 7, SHEET_A4, false);
	says("HOLD");
	says("finger 4 was shaky in 1 of 6 first rounds.");

	for (int d = 7; d < 9; d++)
		play(p, "tone", FIRST_DAY + d, 4, 15, ENDED_WHOLE);
	make(&r, p, FIRST_DAY + 9, SHEET_LETTER, false);
	says("STEP BACK");
	says("was shaky from the start on two practice days running");
	says("Works on \"First to third position\" for now; the file says");

	past_note(p, FIRST_DAY + 8, NOTE_PAIN, 0);
	past_note(p, FIRST_DAY + 9, NOTE_PAIN, 0);
	make(&r, p, FIRST_DAY + 10, SHEET_LETTER, true);
	says("STOP AND ASK");
	says("Nothing is played until you write \"seen: yes\"");
	assert_null(strstr(told, "your teacher"));
	says("sore on 2026-03-11. Ask about it first.");
	free(p);
}

/* Nothing kept yet, at every stage and in every size. */
static void test_nothing_yet(void **state)
{
	struct past *p = past_new();

	(void)state;
	for (int way = 0; way < 4; way++)
		for (int stage = AIR; stage <= LETTING_GO; stage++) {
			struct routine r = programme_cello(stage);

			make(&r, p, FIRST_DAY,
			    way & 1 ? SHEET_LETTER : SHEET_A4, way & 2);
			says("HOLD");
			says("First rounds of the day: no marks.");
			if (!(way & 2))
				assert_int_equal(paper.pages, 1);
		}
	free(p);
}

static void test_looked_at(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *p = past_new();

	(void)state;
	for (int d = 0; d < 6; d++) {
		if (d == 3)
			continue;
		play(p, "tone", FIRST_DAY + d, d < 2 ? 6 : 8, d % 2 ? 0 : 8,
		    d == 4 ? ENDED_EARLY : ENDED_WHOLE);
		again(p, "wide", MARK_SHAKY);
	}
	past_note(p, FIRST_DAY + 5, NOTE_QUESTION, 0);
	p->note[0].words = "Is it all right when the thumb slides too?";
	make(&r, p, FIRST_DAY + 6, SHEET_A4, false);
	golden_check("../../paper/golden/lesson-a4", list);
	free(p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_week),
		cmocka_unit_test(test_heard),
		cmocka_unit_test(test_returns),
		cmocka_unit_test(test_answers),
		cmocka_unit_test(test_nothing_yet),
		cmocka_unit_test(test_looked_at),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
