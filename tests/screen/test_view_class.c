/*
 * test_view_class.c - a class on a screen and in lines, beside the pages that
 * were looked at
 */
#include "class_made.h"
#include "evenhand/screen/class_page.h"
#include "golden_pages.h"

static struct canvas canvas;
static struct student students[CLASS_SIZE];
static struct class_row rows[CLASS_SIZE];
static struct class_row *order[CLASS_SIZE];
static struct class_page page;
static struct lesson_words lesson;
static char shown[CANVAS_ROWS_MAX * CANVAS_COLUMNS_MAX * 4];
static char text[GOLDEN_BYTES];

static int begin(void **context)
{
	(void)context;
	class_make(students);
	students[7].unread = true;
	class_rows(rows, order, students, CLASS_SIZE, CLASS_TODAY);
	page = (struct class_page) {
		.order = order, .count = CLASS_SIZE, .today = CLASS_TODAY
	};
	return 0;
}

static const char *draw(int columns, int rows_high)
{
	canvas_init(&canvas, columns, rows_high);
	class_draw(&canvas, &page);
	canvas_text(&canvas, shown, sizeof(shown));
	return shown;
}

static bool shows(const char *words)
{
	return strstr(shown, words) != NULL;
}

static void add_page(struct text *t, const char *label)
{
	text_format(t, "--- %s\n%s", label, shown);
}

/* The row of the list that has the sign of the chosen one. */
static const struct class_row *chosen(void)
{
	return order[page.chosen];
}

static void look_at(int columns, int rows_high, bool ascii, const char *name)
{
	struct text t = text_in(text, sizeof(text));

	page.ascii = ascii;
	draw(columns, rows_high);
	add_page(&t, "the first screen");
	class_press(&page, CLASS_KEY_PAGE_ON, columns, rows_high);
	draw(columns, rows_high);
	add_page(&t, "a screen on");
	class_find(&page, "a. r");
	page.finding = true;
	draw(columns, rows_high);
	add_page(&t, "finding");
	class_find(&page, "nobody");
	draw(columns, rows_high);
	add_page(&t, "finding nobody");
	page.finding = false;
	class_find(&page, "");
	page.help = true;
	draw(columns, rows_high);
	add_page(&t, "help");
	assert_false(t.cut);
	golden_check(name, text);
}

static void test_large(void **context)
{
	(void)context;
	look_at(120, 40, false, "class-120x40");
}

static void test_usual(void **context)
{
	(void)context;
	look_at(80, 24, false, "class-80x24");
}

static void test_small(void **context)
{
	(void)context;
	look_at(40, 12, false, "class-40x12");
}

static void test_ascii(void **context)
{
	(void)context;
	look_at(120, 40, true, "class-120x40-ascii");
	for (const char *s = text; *s; s++)
		assert_true((unsigned char)*s < 0x80);
}

static void test_lines(void **context)
{
	struct text t = text_in(text, sizeof(text));

	(void)context;
	class_head(&t, order, CLASS_SIZE, CLASS_TODAY);
	for (int i = 0; i < CLASS_SIZE; i++)
		class_line(&t, order[i], CLASS_TODAY);
	assert_false(t.cut);
	golden_check("class-lines", text);
	for (const char *s = text; *s; s = strchr(s, '\n') + 1)
		assert_true(strcspn(s, "\n") < 80);
}

/* What the lesson page of one of them says. */
static void make_lesson(int at)
{
	static struct plan plan;
	struct routine r = programme_cello(class_made[at].stage);
	struct past *p = past_new();
	struct lesson_facts facts;

	class_past_of(p, &r, &class_made[at]);
	made_plan(&plan, &r, p, made_moment(CLASS_TODAY, 12));
	lesson_facts_of(&facts, &r, &p->h, &plan);
	lesson_words_of(&lesson, &facts);
	free(p);
}

static void test_lesson(void **context)
{
	static const int sizes[][2] = { { 120, 40 }, { 80, 24 }, { 40, 12 } };
	struct text t = text_in(text, sizeof(text));

	(void)context;
	make_lesson(1);
	while (strcmp(chosen()->name, "K. O.") != 0)
		class_press(&page, CLASS_KEY_NEXT, 80, 24);
	page.lesson = &lesson;
	for (int i = 0; i < 3; i++) {
		char label[40];
		struct text l = text_in(label, sizeof(label));
		int was = page.chosen;

		text_format(&l, "%dx%d", sizes[i][0], sizes[i][1]);
		page.line = 0;
		do {
			int line = page.line;

			draw(sizes[i][0], sizes[i][1]);
			add_page(&t, label);
			class_press(
			    &page, CLASS_KEY_PAGE_ON, sizes[i][0], sizes[i][1]);
			assert_true(page.line > line || page.chosen != was);
		} while (page.chosen == was);
		/* Behind its end is the next student. */
		assert_int_equal(page.chosen, was + 1);
		assert_int_equal(page.line, 0);
		class_press(&page, CLASS_KEY_PREVIOUS, 80, 24);
	}
	golden_check("class-lesson", text);
}

/* --- finding the one who needs help --- */

/* Whoever needs the teacher stands on the first rows, and says why. */
static void test_first_rows(void **context)
{
	int before = 0;

	(void)context;
	for (int i = 0; i < CLASS_SIZE; i++) {
		assert_true((int)order[i]->state.order >= before);
		before = (int)order[i]->state.order;
		assert_true(order[i]->state.reasons > 0);
	}
	assert_int_equal(order[0]->state.order, STUDENT_PAIN);
	/* All 25 stand on one screen of 120 columns and 40 rows. */
	draw(120, 40);
	for (int i = 0; i < CLASS_SIZE; i++)
		assert_true(shows(order[i]->name));
}

/* Two with the same initials are told apart, and nobody else is renamed. */
static void test_names(void **context)
{
	int alike = 0;

	(void)context;
	for (int i = 0; i < CLASS_SIZE; i++) {
		const char *name = order[i]->name;

		alike += strncmp(name, "A. R. (", 7) == 0;
		assert_true(strchr(name, '(') == NULL ||
		    strncmp(name, "A. R. (", 7) == 0);
	}
	assert_int_equal(alike, 2);
}

/* --- keys --- */

static void test_keys(void **context)
{
	int screens = 1;

	(void)context;
	class_press(&page, CLASS_KEY_PREVIOUS, 80, 24);
	assert_int_equal(page.chosen, 0);
	class_press(&page, CLASS_KEY_NEXT, 80, 24);
	assert_int_equal(page.chosen, 1);
	/* Screen by screen to the end; the last one stays chosen there. */
	for (int was = -1; was != page.chosen; screens++) {
		was = page.chosen;
		class_press(&page, CLASS_KEY_PAGE_ON, 80, 24);
		draw(80, 24);
		assert_true(shows(chosen()->name));
	}
	assert_int_equal(page.chosen, CLASS_SIZE - 1);
	assert_in_range(screens, 2, 4);
	for (int i = 0; i < 4; i++)
		class_press(&page, CLASS_KEY_PAGE_BACK, 80, 24);
	assert_int_equal(page.chosen, 0);
	/* While names are left out the keys step over them. */
	class_find(&page, "A. R");
	assert_true(class_chosen(&page));
	class_press(&page, CLASS_KEY_PREVIOUS, 80, 24);
	for (int i = 0; i < 5; i++) {
		assert_non_null(strstr(chosen()->name, "A. R."));
		class_press(&page, CLASS_KEY_NEXT, 80, 24);
	}
	class_find(&page, "xx");
	assert_false(class_chosen(&page));
	class_press(&page, CLASS_KEY_NEXT, 80, 24);
	draw(80, 24);
	assert_true(shows("No name holds"));
}

/* Nobody, and any size, breaks nothing. */
static void test_any_size(void **context)
{
	(void)context;
	make_lesson(0);
	for (int columns = 1; columns < 200; columns += 7)
		for (int high = 1; high < 70; high += 3) {
			page.lesson = NULL;
			page.chosen = CLASS_SIZE - 1;
			draw(columns, high);
			page.lesson = &lesson;
			draw(columns, high);
			class_press(&page, CLASS_KEY_PAGE_ON, columns, high);
		}
	page = (struct class_page) { .order = order, .today = CLASS_TODAY };
	draw(80, 24);
	assert_true(shows("0 students"));
	class_press(&page, CLASS_KEY_NEXT, 80, 24);
	class_press(&page, CLASS_KEY_PAGE_ON, 80, 24);
	assert_false(class_chosen(&page));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
#define CASE(f) cmocka_unit_test_setup(f, begin)
		CASE(test_large),
		CASE(test_usual),
		CASE(test_small),
		CASE(test_ascii),
		CASE(test_lines),
		CASE(test_lesson),
		CASE(test_first_rows),
		CASE(test_names),
		CASE(test_keys),
		CASE(test_any_size),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
