/*
 * test_view_first.c - the first minutes in lines and on pages of every size
 *
 * What line mode says of a part stands on its pages too, word for word, over
 * as many leaves as it takes; what tells the two keys stands in the answers.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "../coach/programme.h"
#include "evenhand/coach/first.h"
#include "evenhand/screen/lines.h"
#include "evenhand/screen/view.h"

enum { RATE = 48000, BYTES = 200000, COLUMNS = 80, ROWS = 24 };

static struct routine r;
static struct session s;
static struct first f;
static struct effects e;
static struct canvas c;
static struct view v;
static char words[BYTES], page[BYTES];

static void press(enum key key)
{
	first_step(&f,
	    &(struct input) {
		.kind = INPUT_KEY, .frame = s.now + 2 * RATE, .key = key },
	    &e);
}

static void begin(enum marking marking)
{
	static const struct history nothing;
	struct plan_wish w = { .routine = &r,
		.history = &nothing,
		.now = { INT64_C(1772470800), 0 },
		.marking = marking };

	first_begin(&f, &s, &w, RATE, true, &e);
	v = (struct view) { .session = &s, .first = &f };
}

/* Two keys, to a part. */
static void go_to(enum first_part part)
{
	begin(MARKING_TURN);
	for (int i = 0; i < 30 && f.part != part; i++) {
		if (first_plays(&f))
			first_step(&f,
			    &(struct input) {
				.kind = INPUT_FRAME, .frame = first_wake(&f) },
			    &e);
		else
			press(f.part == FIRST_BACK ? KEY_BACK : KEY_FORWARD);
	}
	assert_int_equal(f.part, part);
}

static void go_to_any(enum first_part part)
{
	if (part == FIRST_SILENT) {
		go_to(FIRST_HEAR);
		press(KEY_BACK);
	} else if (part == FIRST_PAIN) {
		begin(MARKING_TURN);
		press(KEY_HURT);
	} else {
		go_to(part);
	}
	assert_int_equal(f.part, part);
}

static const enum first_part parts[] = { FIRST_WELCOME, FIRST_FORWARD,
	FIRST_BACK, FIRST_LISTEN, FIRST_MARK, FIRST_LAST, FIRST_SILENT,
	FIRST_PAIN };

enum { PARTS = sizeof(parts) / sizeof(parts[0]) };

static void tell(void)
{
	struct text t = text_in(words, sizeof(words));

	lines_first(&t, LINE_COLUMNS, &f);
	assert_false(t.cut);
}

/* All leaves of the page, one after the other. */
static int draw(int columns, int rows)
{
	int leaves = view_leaves(&v, columns, rows);
	size_t used = 0;

	for (v.leaf = 0; v.leaf < leaves; v.leaf++) {
		canvas_init(&c, columns, rows);
		view_draw(&c, &v);
		used += canvas_text(&c, page + used, sizeof(page) - used);
	}
	v.leaf = 0;
	return leaves;
}

/* --- lines --- */

static void test_lines(void **state)
{
	(void)state;
	for (int i = 0; i < PARTS; i++) {
		const char *last = "", *line;

		go_to_any(parts[i]);
		tell();
		assert_true(strlen(words) > 20);
		for (line = words; *line; line = strchr(line, '\n') + 1) {
			assert_true(strcspn(line, "\n") < 80);
			last = line;
		}
		/* The last line says what to do. */
		if (parts[i] != FIRST_BACK)
			assert_non_null(strstr(last, "orward"));
		if (parts[i] != FIRST_FORWARD)
			assert_true(strstr(last, "ack") != NULL);
	}
	go_to(FIRST_HEAR);
	tell();
	assert_string_equal(words, "");
	go_to(FIRST_OVER);
	tell();
	assert_string_equal(words, "");
}

static void test_cautions(void **state)
{
	struct text t = text_in(page, sizeof(page));
	struct message aid = message_of(M_COACH_CAUTION_AID);
	struct message child = message_of(M_COACH_CAUTION_CHILD);

	(void)state;
	begin(MARKING_TURN);
	tell();
	lines_say(&t, &aid);
	lines_say(&t, &child);
	assert_non_null(strstr(words, page));
}

static void test_marks(void **state)
{
	(void)state;
	begin(MARKING_ROUND);
	f.part = FIRST_MARK;
	tell();
	assert_non_null(strstr(words, "After the last finger of each round"));
	begin(MARKING_TURN);
	f.part = FIRST_MARK;
	tell();
	assert_non_null(strstr(words, "After each turn"));
	f.part = FIRST_LAST;
	tell();
	assert_null(strstr(words, "mark,"));
	f.tried = true;
	tell();
	assert_non_null(strstr(words, "You gave no mark, which is allowed."));
	f.mark = MARK_SHAKY;
	tell();
	assert_non_null(strstr(words, "You marked it shaky."));
	f.mark = MARK_CLEAN;
	tell();
	assert_non_null(strstr(words, "You marked it clean."));
}

/* --- pages --- */

/* Whether the words of a sentence stand in the page one after the other. */
static bool stands(const char *sentence)
{
	const char *at = page;
	char word[100];

	while (*sentence) {
		size_t length = strcspn(sentence, " \n");

		assert_true(length < sizeof(word));
		memcpy(word, sentence, length);
		word[length] = '\0';
		at = strstr(at, word);
		if (at == NULL)
			return false;
		at += length;
		sentence += length + strspn(sentence + length, " \n");
	}
	return true;
}

/* Every line but the last one, which the answers say. */
static void assert_told(void)
{
	char *line = words, *end;

	while ((end = strchr(line, '\n')) != NULL && end[1] != '\0') {
		*end = '\0';
		if (!stands(line))
			fail_msg("not on the page: %s\n%s", line, page);
		line = end + 1;
	}
}

static void test_pages(void **state)
{
	static const struct {
		int columns, rows, leaves;
	} sizes[] = { { 40, 12, 3 }, { 60, 16, 2 }, { COLUMNS, ROWS, 1 },
		{ 120, 40, 1 }, { 200, 60, 1 } };

	(void)state;
	for (int i = 0; i < PARTS; i++)
		for (int j = 0; j < 5; j++) {
			go_to_any(parts[i]);
			tell();
			assert_in_range(draw(sizes[j].columns, sizes[j].rows),
			    1, sizes[j].leaves);
			assert_told();
			assert_true(stands("Back: Forward:"));
			assert_true(stands("Page Up"));
			assert_true(stands("Page Down"));
		}
}

static void test_small(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	draw(39, 12);
	assert_non_null(strstr(page, "too small"));
	assert_null(strstr(page, "Welcome"));
}

static void test_ascii(void **state)
{
	(void)state;
	for (int i = 0; i < PARTS; i++) {
		go_to_any(parts[i]);
		v.ascii = true;
		draw(COLUMNS, ROWS);
		for (const char *at = page; *at; at++)
			assert_true(*at == '\n' || (*at >= ' ' && *at <= '~'));
	}
}

static void test_news(void **state)
{
	(void)state;
	go_to(FIRST_FORWARD);
	press(KEY_BACK);
	assert_int_equal(e.count, 1);
	v.news[0] = e.at[0].message;
	v.said = 1;
	draw(COLUMNS, ROWS);
	assert_non_null(strstr(page, "That was back. Now the other one"));
	/* Its keys, over the page. */
	v.said = 0;
	v.help = true;
	draw(COLUMNS, ROWS);
	assert_non_null(strstr(page, "q goes straight to the practice."));
	assert_non_null(strstr(page, "Forward is Enter"));
	assert_null(strstr(page, "Press forward now"));
}

/* What tells of sounds says where there are none. */
static void test_by_sight(void **state)
{
	(void)state;
	for (int i = 0; i < PARTS; i++) {
		bool told;

		go_to_any(parts[i]);
		draw(80, 24);
		assert_null(strstr(page, "No sound just now"));
		v.sounding = SOUNDING_NONE;
		draw(80, 24);
		told = strstr(page, "No sound just now") != NULL;
		assert_int_equal(told, parts[i] == FIRST_LISTEN);
		v.sounding = SOUNDING_ON;
	}
}

/* Forward turns the leaves first, and the answer does not say otherwise. */
static void test_more(void **state)
{
	(void)state;
	go_to(FIRST_LISTEN);
	assert_int_equal(view_leaves(&v, 40, 12), 2);
	canvas_init(&c, 40, 12);
	view_draw(&c, &v);
	canvas_text(&c, page, sizeof(page));
	assert_non_null(strstr(page, " MORE "));
	assert_non_null(strstr(page, "Forward: read on."));
	assert_null(strstr(page, "Forward: begin."));
	v.leaf = 1;
	canvas_init(&c, 40, 12);
	view_draw(&c, &v);
	canvas_text(&c, page, sizeof(page));
	assert_non_null(strstr(page, "Forward: begin."));
	assert_null(strstr(page, "read on"));
}

/*
 * While it plays the page is that of any practice, but for the time: there is
 * no end that it would have to come to.
 */
static void test_play(void **state)
{
	struct view plain;

	(void)state;
	go_to(FIRST_HEAR);
	v.heard = s.first_sound + 9 * RATE;
	plain = v;
	plain.first = NULL;
	draw(COLUMNS, ROWS);
	canvas_init(&c, COLUMNS, ROWS);
	view_draw(&c, &plain);
	canvas_text(&c, words, sizeof(words));
	assert_non_null(strstr(words, "0:00 of 30:00"));
	assert_null(strstr(page, " of 30:00"));
	assert_memory_equal(page, words, strlen("  Work: First minutes"));
	assert_string_equal(strchr(page, '\n'), strchr(words, '\n'));
	assert_int_equal(
	    view_change(&v, COLUMNS, ROWS), view_change(&plain, COLUMNS, ROWS));
	assert_true(view_change(&v, COLUMNS, ROWS) > v.heard);
	/* And on its pages nothing moves by itself. */
	press(KEY_BACK);
	assert_int_equal(view_change(&v, COLUMNS, ROWS), INT64_MAX);
	/* Once over, the session's own page is there. */
	go_to(FIRST_OVER);
	draw(COLUMNS, ROWS);
	assert_non_null(strstr(page, "Nothing sore today?"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_lines),
		cmocka_unit_test(test_cautions),
		cmocka_unit_test(test_marks),
		cmocka_unit_test(test_pages),
		cmocka_unit_test(test_small),
		cmocka_unit_test(test_ascii),
		cmocka_unit_test(test_news),
		cmocka_unit_test(test_by_sight),
		cmocka_unit_test(test_more),
		cmocka_unit_test(test_play),
	};

	r = programme_cello(TONE);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
