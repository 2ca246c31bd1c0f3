/*
 * test_homework.c - the homework sheet: all of it is there, nothing overlaps
 * and nothing is cut, for every routine that ships, at every stage, in every
 * size; and a few lists that were looked at on paper
 */
#include "../screen/golden_pages.h"

#include "../base/catalogue.h"
#include "../score/seeded.h"
#include "areas.h"
#include "evenhand/paper/list.h"
#include "evenhand/paper/sheet.h"
#include "evenhand/world/load.h"

enum { DAY = 20514 /* 2026-03-02, a Monday */ };

static struct paper paper;
static char list[LIST_BYTES_MAX];

static struct routine *load(const char *name)
{
	static struct load_paths paths;
	static struct faults faults;
	bool unreadable = false;
	char path[200];
	struct routine *r;

	snprintf(path, sizeof(path), "routines/%s.yaml", name);
	faults = (struct faults) { 0 };
	r = load_routine(path, &paths, &faults, &unreadable);
	assert_non_null(r);
	return r;
}

static void make(const struct sheet_wish *w)
{
	struct text t = text_in(list, sizeof(list));

	sheet_homework(&paper, w);
	assert_false(paper.cut);
	list_write(&t, &paper);
	assert_false(t.cut);
}

/* --- all of it is there --- */

/* Every word of a text stands on the sheet. */
static void check_says(const char *words, const char *what)
{
	char word[100];

	while (*words) {
		size_t length = strcspn(words, " ");

		assert_true(length < sizeof(word));
		memcpy(word, words, length);
		word[length] = '\0';
		if (!strstr(list, word))
			fail_msg("%s: \"%s\" is not on the sheet", what, word);
		words += length + strspn(words + length, " ");
	}
}

static void check_all_there(const struct routine *r, const char *what)
{
	const struct stage *s = &r->stage[r->work_on];

	check_says(r->name, what);
	check_says(r->homework_for, what);
	check_says(r->note, what);
	check_says(s->say, what);
	for (int i = 0; i < s->checks; i++)
		check_says(s->check[i], what);
	for (int i = 0; i < s->feels; i++)
		check_says(s->feel[i], what);
	for (int i = 0; i <= r->work_on; i++) {
		check_says(r->stage[i].title, what);
		check_says(r->stage[i].cue, what);
	}
	check_says("stop now, and not again today. 2026-03-02", what);
}

static void check_every_way(struct routine *r, const char *name)
{
	for (int way = 0; way < 8; way++) {
		struct sheet_wish w = { .routine = r,
			.day = DAY,
			.size = way & 1 ? SHEET_LETTER : SHEET_A4,
			.large = way & 2 };
		char what[100];

		r->left_handed = way & 4;
		snprintf(what, sizeof(what), "%s, %s, way %d", name,
		    r->stage[r->work_on].id, way);
		make(&w);
		areas_check(&paper, what);
		check_all_there(r, what);
		if (!w.large && paper.pages != 1)
			fail_msg("%s: %d pages", what, paper.pages);
		if (strstr(list, "page 1 of 1"))
			fail_msg("%s: one page is counted", what);
	}
}

static const char *const names[] = { "cello", "cello-homework", "cello-deutsch",
	"cello-deutsch-homework", "violin", "violin-homework", "viola",
	"viola-homework", "bass", "bass-homework", "trills", "crossings" };

static void test_every_sheet(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof(names) / sizeof(names[0]); i++) {
		struct routine *r = load(names[i]);

		for (r->work_on = 0; r->work_on < r->stages; r->work_on++)
			check_every_way(r, names[i]);
		routine_free(r);
	}
}

static void check_in_german(struct routine *r, const char *name)
{
	for (int large = 0; large < 2; large++) {
		struct sheet_wish w = { .routine = r,
			.day = DAY,
			.size = SHEET_A4,
			.large = large };
		char what[100];

		snprintf(what, sizeof(what), "%s, %s, %s in German", name,
		    r->stage[r->work_on].id, large ? "large," : "");
		make(&w);
		areas_check(&paper, what);
		if (!w.large && paper.pages != 1)
			fail_msg("%s: %d pages", what, paper.pages);
		if (!strstr(list, " Hausaufgabe") || strstr(list, " mm from"))
			fail_msg("%s: it is not in German", what);
	}
}

/* In German, whose words are longer, nothing overlaps either. */
static void test_in_german(void **state)
{
	struct catalogue *c = catalogue_read("src/po/de.po");

	(void)state;
	assert_non_null(c);
	c->tongue.point[0] = ',';
	tongue_set(&c->tongue);
	for (size_t i = 0; i < sizeof(names) / sizeof(names[0]); i++) {
		struct routine *r = load(names[i]);

		r->work_on = seeded_quick() ? r->stages - 1 : 0;
		for (; r->work_on < r->stages; r->work_on++)
			check_in_german(r, names[i]);
		routine_free(r);
	}
	free(c);
}

static int in_english(void **state)
{
	(void)state;
	tongue_set(NULL);
	return 0;
}

/* The longest texts a routine may have, and as many as it may have. */
static void test_long(void **state)
{
	static char title[61], note[201], name[61];
	struct routine *r = load("cello");
	struct stage *s = &r->stage[5];

	(void)state;
	memset(title, 'W', 60);
	for (int i = 0; i < 60; i += 7)
		title[i] = ' ';
	title[0] = 'W';
	for (int i = 0; i < 200; i++)
		note[i] = i % 9 == 8 ? ' ' : 'm';
	memset(name, 'M', 60);
	name[20] = name[40] = ' ';
	r->note = note;
	r->name = name;
	r->homework_for = title;
	r->work_on = 5;
	for (int i = 0; i < r->stages; i++)
		r->stage[i].title = title;
	/* However wide, a cue is read in one line. */
	s->cue = "WWWWWWWWWW";
	s->checks = s->feels = CHECKS_MAX;
	for (int i = 0; i < CHECKS_MAX; i++)
		s->check[i] = s->feel[i] = title;
	for (int way = 0; way < 4; way++) {
		struct sheet_wish w = { .routine = r,
			.day = DAY,
			.size = way & 1 ? SHEET_LETTER : SHEET_A4,
			.large = way & 2 };

		make(&w);
		areas_check(&paper, "long");
		check_all_there(r, "long");
		assert_true(paper.pages > 1);
		assert_non_null(strstr(list, " 100 WWWWWWWWWW\n"));
		assert_non_null(strstr(list, "page 1 of "));
	}
	routine_free(r);
}

/* The week begins on the day of printing. */
static void test_week(void **state)
{
	static const char *const week[] = { "Th", "Fr", "Sa", "Su", "Mo", "Tu",
		"We" };
	struct routine *r = load("cello");
	struct sheet_wish w = { .routine = r, .day = DAY + 3 };
	const char *at = list;
	char end[8];

	(void)state;
	make(&w); /* 2026-03-05 is a Thursday */
	for (int i = 0; i < 7; i++) {
		snprintf(end, sizeof(end), " %s\n", week[i]);
		at = strstr(at, end);
		assert_non_null(at);
	}
	routine_free(r);
}

/* Both hands: the nut changes its end, and the figures stay. */
static void test_left_hand(void **state)
{
	static char right[LIST_BYTES_MAX];
	struct routine *r = load("cello");
	struct sheet_wish w = { .routine = r, .day = DAY };

	(void)state;
	make(&w);
	memcpy(right, list, sizeof(right));
	r->left_handed = true;
	make(&w);
	assert_string_not_equal(list, right);
	assert_null(strstr(right, "left hand"));
	assert_non_null(strstr(list, "bow in the left hand"));
	/* Finger 1 in first position, 690 mm: 75 mm from the nut. */
	assert_non_null(strstr(right, " 75\n"));
	assert_non_null(strstr(list, " 75\n"));
	routine_free(r);
}

/* --- lists that were looked at --- */

static void test_looked_at(void **state)
{
	static const struct {
		const char *routine, *golden;
		enum sheet_size size;
		bool large, left;
	} sheets[] = {
		{ "cello-homework", "cello-a4", SHEET_A4, false, false },
		{ "cello-homework", "cello-large", SHEET_A4, true, false },
		{ "violin-homework", "violin-letter", SHEET_LETTER, false,
		    true },
		{ "bass", "bass-a4", SHEET_A4, false, false },
		{ "trills", "trills-a4", SHEET_A4, false, false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(sheets) / sizeof(sheets[0]); i++) {
		struct routine *r = load(sheets[i].routine);
		struct sheet_wish w = { r, DAY, sheets[i].size,
			sheets[i].large };
		char name[100];

		r->left_handed = sheets[i].left;
		make(&w);
		snprintf(name, sizeof(name), "../../paper/golden/%s",
		    sheets[i].golden);
		golden_check(name, list);
		routine_free(r);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_sheet),
		cmocka_unit_test_teardown(test_in_german, in_english),
		cmocka_unit_test(test_long),
		cmocka_unit_test(test_week),
		cmocka_unit_test(test_left_hand),
		cmocka_unit_test(test_looked_at),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
