/* test_lines.c - sentences and pages as plain lines */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../coach/sitting.h"
#include "evenhand/base/text.h"
#include "evenhand/screen/lines.h"

static const struct history nothing;
static struct sitting d;
static struct routine r;
static char bytes[LINES_BYTES_MAX];
static struct text out;
static int columns = LINE_COLUMNS;

/* Every line is ended, fits a screen, and has no space at its end. */
static void assert_lines(void)
{
	const char *line = bytes;

	assert_false(out.cut);
	while (*line) {
		const char *end = strchr(line, '\n');
		char one[200];

		assert_non_null(end);
		assert_true(end > line && end[-1] != ' ');
		assert_true((size_t)(end - line) < sizeof(one));
		memcpy(one, line, (size_t)(end - line));
		one[end - line] = '\0';
		if (text_columns(one) > columns)
			fail_msg("too long: %s", one);
		line = end + 1;
	}
}

static void page(void)
{
	out = text_in(bytes, sizeof(bytes));
	lines_page(&out, columns, &d.s, d.s.page);
	assert_lines();
}

static void assert_says(const char *words)
{
	if (!strstr(bytes, words))
		fail_msg("\"%s\" is not in:\n%s", words, bytes);
}

static void begin(enum marking marking)
{
	r = programme_cello(3);
	sitting_begin(&d, &r, &nothing, marking, 48000);
}

static void test_wrap(void **state)
{
	char words[MESSAGE_TEXT_MAX];
	struct message m;

	(void)state;
	m = message_with(M_SESSION_NEXT, TEXT("finger 2"));
	out = text_in(bytes, sizeof(bytes));
	lines_say(&out, &m);
	assert_string_equal(bytes, "Next: finger 2.\n");

	/* 100 letters without a space, then words. */
	memset(words, 'x', 100);
	strcpy(words + 100,
	    " and more words that must go on in further lines "
	    "when a line is full, as this one is by now");
	m = message_with(M_SESSION_CUE, TEXT(words));
	out = text_in(bytes, sizeof(bytes));
	lines_say(&out, &m);
	assert_lines();
	assert_int_equal(strchr(bytes, '\n') - bytes, LINE_COLUMNS);
	assert_says("by now.\n");
}

/* As broad as the screen, but no broader than is easily read. */
static void test_columns(void **state)
{
	const char *words = "Marked shaky: finger 1, finger 2, finger 3. The "
			    "others are clean, which is much.";
	struct message m = message_with(M_SESSION_CUE, TEXT(words));

	(void)state;
	assert_int_equal(lines_columns(0), LINE_COLUMNS);
	assert_int_equal(lines_columns(200), LINE_COLUMNS);
	assert_int_equal(lines_columns(80), LINE_COLUMNS);
	assert_int_equal(lines_columns(79), 79);
	assert_int_equal(lines_columns(60), 60);
	assert_int_equal(lines_columns(40), 40);
	assert_int_equal(lines_columns(9), LINE_COLUMNS_MIN);
	for (columns = 40; columns < LINE_COLUMNS; columns++) {
		out = text_in(bytes, sizeof(bytes));
		lines_say_within(&out, columns, &m);
		assert_lines();
		assert_non_null(strchr(strchr(bytes, '\n') + 1, '\n'));
	}
	columns = LINE_COLUMNS;
}

/* Every page, on the way through a session with two keys. */
static void test_pages(void **state)
{
	(void)state;
	begin(MARKING_ROUND);
	r.stage[3].say = "The forearm moves first.";
	page();
	assert_says("Two keys do all.");
	assert_says("Nothing sore today?\n");
	sitting_soon(&d, KEY_BACK);
	page();
	assert_says("Where is it sore?\n");
	assert_says("The skin of finger 1?\n");
	sitting_soon(&d, KEY_FORWARD);
	page();
	assert_says("finger 1");
	assert_says("A tone apart: The forearm moves first.\n");
	assert_says("Watch for: Forearm and hand in one line.\n");
	assert_says("After each round: forward all clean");
	assert_says("While you bow, forward, back and Space are silence.");
	assert_says("Forward: begin. Back: not today.\n");
	sitting_soon(&d, KEY_FORWARD);
	sitting_key(&d, 31000, KEY_SILENCE);
	page();
	assert_says("Silent. Forward: on with finger 2.\n");
	sitting_soon(&d, KEY_FORWARD);
	sitting_key(&d, 40000, KEY_SILENCE);
	page();
	assert_says("Silent. A fresh start is a good habit. Forward: finger 2 "
		    "again.\n");
	assert_says("Back: it hurts, or enough for today.\n");
	sitting_soon(&d, KEY_BACK);
	page();
	assert_says("Does something hurt?\n");
	sitting_soon(&d, KEY_FORWARD);
	page();
	assert_says("a short good session counts in full");
	sitting_soon(&d, KEY_BACK);
	page();
	assert_says("Ended here, after 0:40.\n");
	assert_says("No whole turn was bowed.\n");
	assert_says("Next session: not before 20:01 today.\n");
	assert_says("For a parent to ask");
	sitting_soon(&d, KEY_FORWARD);
	page();
	assert_says("Is there a question for your teacher?");
	sitting_soon(&d, KEY_FORWARD);
	page();
	assert_string_equal(bytes, "");
}

/* The keys are told before, where there is time; playing has no page of words. */
static void test_play_has_no_words(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	sitting_soon(&d, KEY_FORWARD);
	page();
	assert_says("After each turn: forward is clean, back is shaky.");
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_PLAY);
	page();
	assert_string_equal(bytes, "");
	sitting_key(&d, 40000, KEY_SILENCE);
	sitting_key(&d, 50000, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_PLAY);
	page();
	assert_string_equal(bytes, "");
}

static void test_end(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	sitting_start(&d);
	sitting_key(&d, 120000, KEY_OTHER);
	sitting_key(&d, 194000, KEY_SHAKY);
	sitting_until(&d, 300000);
	page();
	assert_says("That was today's session. It took 4:52.\n");
	assert_says(
	    "40 bows: 10 for finger 1, 10 for finger 2, 10 for finger 3, "
	    "10 for finger 4.\n");
	assert_says("metres.\n");
	assert_says("It is for finger 4, shaky");
	assert_says("Next session: not before 20:05 today.\n");
}

static void test_pain(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	sitting_start(&d);
	sitting_key(&d, 50000, KEY_HURT);
	page();
	assert_says("Everything is silent. Put the instrument down. Where does "
		    "it hurt?\n");
	sitting_soon(&d, KEY_FORWARD);
	page();
	assert_says("Stopped because it hurts, after 0:50.\n");
	assert_says("No start before four tomorrow morning");
	assert_says("For a parent: rest comes first now.");

	begin(MARKING_TURN);
	sitting_soon(&d, KEY_HURT);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_REST);
	page();
	assert_says("No start before four tomorrow morning");
}

/* Words as long as a file may have them, and a player of eight pairs. */
static void test_long_words(void **state)
{
	static char longest[600];

	(void)state;
	memset(longest, 'w', sizeof(longest) - 1);
	for (size_t i = 9; i < sizeof(longest) - 1; i += 10)
		longest[i] = ' ';
	begin(MARKING_ROUND);
	r.take = TAKE_PAIRS;
	r.units = UNITS_MAX;
	for (int u = 0; u < r.units; u++) {
		strcpy(r.unit[u].name, "10-11");
		r.unit[u].from = 0;
		r.unit[u].to = 1;
	}
	for (int i = 0; i < r.stages; i++) {
		r.stage[i].title = longest;
		r.stage[i].check[0] = longest;
		r.stage[i].feels = 1;
		r.stage[i].feel[0] = longest;
	}
	r.note = longest;
	r.cap_ms = 600000;
	sitting_begin(&d, &r, &nothing, MARKING_ROUND, 48000);
	while (d.s.page != PAGE_OVER) {
		page();
		if (d.s.page == PAGE_PLAY)
			sitting_key(&d, 150000, KEY_LEAVE);
		else if (d.s.page == PAGE_LEAVE)
			sitting_soon(&d, KEY_BACK);
		else
			sitting_soon(&d, KEY_FORWARD);
	}
	assert_true(d.begun);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_wrap),
		cmocka_unit_test(test_columns),
		cmocka_unit_test(test_pages),
		cmocka_unit_test(test_play_has_no_words),
		cmocka_unit_test(test_end),
		cmocka_unit_test(test_pain),
		cmocka_unit_test(test_long_words),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
