/*
 * test_view_pages.c - every page but the playing, at every kind of size
 *
 * Golden pages show what was looked at and liked.  The other tests look for
 * what must never be missing: each sentence of line mode, the question and the
 * two answers, whatever the size.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../../src/screen/sentences.h"
#include "../score/seeded.h"
#include "evenhand/base/text.h"
#include "golden_pages.h"
#include "scenes.h"

enum { PAGES_MAX = 64, ROW_BYTES = CANVAS_COLUMNS_MAX * CELL_BYTES };

static struct scene scene;
static struct canvas leaf[PAGES_MAX];
static int leaves;

static void draw_all(int columns, int rows)
{
	leaves = view_leaves(&scene.view, columns, rows);
	assert_in_range(leaves, 1, PAGES_MAX);
	for (int i = 0; i < leaves; i++) {
		canvas_init(&leaf[i], columns, rows);
		scene.view.leaf = i;
		view_draw(&leaf[i], &scene.view);
	}
	scene.view.leaf = 0;
}

/* --- golden pages --- */

static void test_golden(void **state)
{
	static const int sizes[][2] = { { 40, 12 }, { 60, 16 }, { 80, 24 },
		{ 120, 40 } };
	static char all[GOLDEN_BYTES];

	(void)state;
	for (int id = 0; id < SCENES; id++) {
		char name[40];
		struct text t = text_in(all, sizeof(all));

		scene_play(&scene, (enum scene_id)id);
		for (int i = 0; i < 8; i++) {
			static char page[1 << 16];

			scene.view.ascii = i >= 4;
			draw_all(sizes[i % 4][0], sizes[i % 4][1]);
			for (int n = 0; n < leaves; n++) {
				text_format(&t, "--- %d x %d%s, %d of %d\n",
				    sizes[i % 4][0], sizes[i % 4][1],
				    i >= 4 ? " ASCII" : "", n + 1, leaves);
				canvas_text(&leaf[n], page, sizeof(page));
				text_add(&t, page);
			}
		}
		assert_false(t.cut);
		snprintf(name, sizeof(name), "page-%s", scene_names[id]);
		golden_check(name, all);
	}
	scene_done(&scene);
}

/* --- finding sentences in cells --- */

static const char *cell(int n, int row, int column)
{
	return column >= 0 && column < leaf[n].columns
	    ? leaf[n].cell[row][column].text
	    : " ";
}

/* Whether a line of text may begin or end beside this cell. */
static bool is_edge(const char *text)
{
	return strcmp(text, " ") == 0 || strcmp(text, "│") == 0 ||
	    strcmp(text, "|") == 0;
}

/* Whether a line of text ends before this cell: a single space does not. */
static bool is_end(int n, int row, int column)
{
	const char *text = cell(n, row, column);

	return is_edge(text) &&
	    (strcmp(text, " ") != 0 || is_edge(cell(n, row, column + 1)));
}

/* Bytes of whole words that stand at a place, 0 for none. */
static size_t words_at(int n, int row, int column, const char *words)
{
	size_t at = 0, good = 0;

	if (!is_edge(cell(n, row, column - 1)))
		return 0;
	while (words[at]) {
		const char *text = cell(n, row, column);
		size_t bytes = strlen(text);

		if (bytes > 0 && strncmp(words + at, text, bytes) != 0)
			break;
		at += bytes;
		column++;
		if (words[at] == '\0'
			? is_edge(cell(n, row, column))
			: words[at] == ' ' && is_end(n, row, column))
			good = at;
	}
	return good;
}

/* The rest of a sentence on further lines, of this leaf or the next. */
static bool rest_found(int n, int row, const char *words)
{
	words += strspn(words, " ");
	if (*words == '\0')
		return true;
	for (int i = n; i < leaves && i <= n + 1; i++)
		for (int y = i == n ? row : 0; y < leaf[i].rows; y++)
			for (int x = 0; x < leaf[i].columns; x++) {
				size_t some = words_at(i, y, x, words);

				if (some > 0 && rest_found(i, y, words + some))
					return true;
			}
	return false;
}

/*
 * A sentence on one leaf or over several; column says where it begins.  Of
 * several places the lowest one: the answers stand below all else.
 */
static bool found(int from, int to, const char *words, int *column)
{
	for (int n = from; n < to; n++)
		for (int y = leaf[n].rows - 1; y >= 0; y--)
			for (int x = 0; x < leaf[n].columns; x++) {
				size_t some = words_at(n, y, x, words);

				if (some == 0 ||
				    !rest_found(n, y, words + some))
					continue;
				*column = x;
				return true;
			}
	return false;
}

static void assert_found(int from, int to, const char *words)
{
	int column;

	if (!found(from, to, words, &column))
		fail_msg("%d x %d, leaf %d: \"%s\" is missing", leaf[0].columns,
		    leaf[0].rows, from, words);
}

/* The sentences of one message apart: "Forward: this. Back: that." */
static void assert_parts_found(const char *words)
{
	char part[1024];

	while (*words) {
		const char *end = strstr(words, ". ");
		size_t bytes = end ? (size_t)(end - words) + 1 : strlen(words);

		assert_true(bytes < sizeof(part));
		memcpy(part, words, bytes);
		part[bytes] = '\0';
		assert_found(0, leaves, part);
		words += bytes + strspn(words + bytes, " ");
	}
}

/* --- what must be there --- */

/* The question, or what the page is about. */
static const char *question(void)
{
	switch (scene.d.s.page) {
	case PAGE_SORE:
		return message_sentence(history_begun(scene.d.s.wish.history)
			? M_PAGE_SORE_ASK
			: M_PAGE_SORE_ASK_FIRST);
	case PAGE_WHERE:
		return message_sentence(M_PAGE_WHERE);
	case PAGE_PAIN:
		return message_sentence(M_PAGE_PAIN);
	case PAGE_PAIN_WHERE:
		return message_sentence(M_PAGE_PAIN_WHERE);
	case PAGE_LEAVE:
		return message_sentence(M_PAGE_LEAVE);
	case PAGE_QUESTION:
		return message_sentence(M_PAGE_QUESTION);
	default:
		return NULL;
	}
}

/* The answers' sentences, back and forward. */
static void answers(const char **back, const char **forward)
{
	static const enum message_id two[][2] = {
		[PAGE_SORE] = { M_PAGES_BACK_SORE, M_PAGES_FORWARD_SORE },
		[PAGE_WHERE] = { M_PAGES_BACK_WHERE, M_PAGES_FORWARD_WHERE },
		[PAGE_REST] = { M_PAGES_BACK_LEAVE, M_PAGES_FORWARD_LEAVE },
		[PAGE_TODAY] = { M_PAGES_BACK_TODAY, M_PAGES_FORWARD_TODAY },
		[PAGE_PLAY] = { M_PAGES_BACK_SILENCE, M_PAGES_FORWARD_SILENCE },
		[PAGE_SILENT] = { M_PAGE_SILENT_BACK, M_PAGES_FORWARD_GO_ON },
		[PAGE_PAIN] = { M_PAGES_BACK_HURT, M_PAGES_FORWARD_HURT },
		[PAGE_PAIN_WHERE] = { M_PAGES_BACK_WHERE,
		    M_PAGES_FORWARD_WHERE },
		[PAGE_LEAVE] = { M_PAGES_BACK_END_HERE, M_PAGES_FORWARD_GO_ON },
		[PAGE_END] = { M_PAGES_BACK_READ, M_PAGES_FORWARD_GO_ON },
		[PAGE_QUESTION] = { M_PAGES_BACK_BEFORE, M_PAGE_QUESTION_KEYS },
	};
	bool typed = scene.d.s.page == PAGE_QUESTION && *scene.view.typed;

	*back = message_sentence(
	    typed ? M_PAGES_BACK_RUB_OUT : two[scene.d.s.page][0]);
	*forward = message_sentence(
	    typed ? M_PAGES_FORWARD_SEND : two[scene.d.s.page][1]);
}

/* An answer on one leaf, on its own side. */
static void check_answer(int n, const char *words, bool forward)
{
	int middle = leaf[n].columns / 2, column;

	if (!found(n, n + 1, words, &column))
		fail_msg("%d x %d, leaf %d: \"%s\" is missing", leaf[0].columns,
		    leaf[0].rows, n, words);
	if ((column >= middle) != forward)
		fail_msg("%d x %d, leaf %d: \"%s\" begins in column %d",
		    leaf[0].columns, leaf[0].rows, n, words, column);
}

/* Whether back turns this leaf of so many, as it does at the end. */
static bool reads_on(int n, int all)
{
	return scene.d.s.page == PAGE_END && !scene.view.help && n + 1 < all;
}

/* The two answers and the question, on every leaf, as the pedals lie. */
static void check_asked(void)
{
	const char *back, *forward;
	const char *more = message_sentence(M_PAGES_BACK_MORE);

	answers(&back, &forward);
	for (int n = 0; n < leaves; n++) {
		int all = leaves;

		/* A sentence must not run on into the next leaf. */
		leaves = n + 1;
		check_answer(n, reads_on(n, all) ? more : back, false);
		check_answer(n, forward, true);
		if (question() && !scene.view.help)
			assert_found(n, n + 1, question());
		leaves = all;
	}
}

/* Where there is little room, what may be told in fewer words or elsewhere. */
static void check_brief(enum message_id id, const char *words)
{
	char part[1024];
	const char *end = strstr(words, ". ");
	struct text t = text_in(part, sizeof(part));

	switch (id) {
	case M_COACH_LINE_AIR:
	case M_COACH_LINE_RECAP:
	case M_COACH_LINE_WORK:
		text_add_bytes(
		    &t, words, end ? (size_t)(end + 1 - words) : strlen(words));
		assert_found(0, leaves, part);
		break;
	case M_PAGE_PLAY:
	case M_PAGE_PLAY_TURN:
	case M_PAGE_PLAY_ROUND:
		/* Only for those who have practised before. */
		if (scene.d.s.wish.history->sittings == 0)
			assert_found(0, leaves, words);
		break;
	default:
		assert_found(0, leaves, words);
		break;
	}
}

/* Everything line mode says, and what was said on the way here. */
static void check_told(void)
{
	bool small = leaf[0].columns < 60 && leaf[0].rows < 20;

	struct sentences told;
	char words[1024];

	sentences_init(&told);
	if (scene.view.help)
		sentences_add(&told, session_help(&scene.d.s));
	else
		sentences_page(&told, &scene.d.s, scene.d.s.page);
	for (int i = 0; i < told.count; i++) {
		enum message_id id = told.at[i].id;

		if (id == M_PAGE_QUESTION_KEYS && *scene.view.typed)
			continue;
		if (id == M_PAGE_SORE_KEYS || id == M_PAGE_WHERE_KEYS ||
		    id == M_PAGE_TODAY_KEYS || id == M_PAGE_PAIN_KEYS ||
		    id == M_PAGE_LEAVE_KEYS || id == M_PAGE_END_KEYS)
			assert_parts_found(told.at[i].words);
		else if (small && scene.d.s.page == PAGE_TODAY)
			check_brief(id, told.at[i].words);
		else
			assert_found(0, leaves, told.at[i].words);
	}
	for (int i = 0; i < scene.view.said && !scene.view.help; i++) {
		message_text(&scene.view.news[i], words, sizeof(words));
		assert_found(0, leaves, words);
	}
}

/* A page that has more says so, and where one is. */
static void check_more(void)
{
	for (int n = 0; n < leaves && leaves > 1; n++) {
		bool there = false;

		for (int i = 1; i <= leaves && !there; i++) {
			struct message m = message_with(
			    M_PAGES_MORE, WHOLE(i), WHOLE(leaves));
			char words[80];
			int column;

			message_text(&m, words, sizeof(words));
			there = found(n, n + 1, words, &column);
		}
		assert_true(there);
	}
}

static void check_size(int columns, int rows)
{
	draw_all(columns, rows);
	if (columns < VIEW_COLUMNS_MIN || rows < VIEW_ROWS_MIN) {
		assert_int_equal(leaves, 1);
		return;
	}
	check_asked();
	check_told();
	check_more();
}

static void test_sizes(void **state)
{
	static const int corners[][2] = { { 1, 1 }, { 39, 12 }, { 40, 11 },
		{ 40, 12 }, { 41, 13 }, { 60, 16 }, { 80, 24 }, { 120, 40 },
		{ 300, 120 }, { 40, 120 }, { 300, 12 } };
	int tries = getenv("EVENHAND_QUICK") ? 5 : 60;

	(void)state;
	seeded_begin("sizes");
	for (int id = 0; id < SCENES; id++) {
		scene_play(&scene, (enum scene_id)id);
		for (size_t i = 0; i < 11; i++)
			check_size(corners[i][0], corners[i][1]);
		for (int i = 0; i < tries; i++)
			check_size(seeded(40, 160), seeded(12, 60));
		for (int i = 0; i < tries; i++) {
			scene.view.ascii = true;
			check_size(seeded(1, 300), seeded(1, 120));
			scene.view.ascii = false;
		}
	}
	scene_done(&scene);
}

/* A routine with as many words as it may have. */
static void test_many_words(void **state)
{
	static const char *const long_say =
	    "Say it slowly and mean each word: the arm is heavy, the hand is "
	    "light, the thumb only glides along and nothing is ever pressed.";

	(void)state;
	scene_play(&scene, SCENE_SORE);
	for (int i = 0; i < scene.routine.stages; i++)
		scene.routine.stage[i].say = long_say;
	scene.routine.stage[TONE].checks = CHECKS_MAX;
	scene.routine.stage[TONE].feels = CHECKS_MAX;
	for (int i = 0; i < CHECKS_MAX; i++) {
		scene.routine.stage[TONE].check[i] = long_say;
		scene.routine.stage[TONE].feel[i] = long_say;
	}
	SCENE_KEYS(&scene, PAGE_TODAY, KEY_FORWARD);
	check_size(40, 12);
	assert_true(leaves > 10);
	check_size(80, 24);
	check_size(120, 40);
	check_size(300, 120);
	scene_done(&scene);
}

/* --- from two metres --- */

static bool is_block(const char *text)
{
	return strcmp(text, "█") == 0 || strcmp(text, "▀") == 0 ||
	    strcmp(text, "▄") == 0;
}

static int blocks(int from_row, int to_row, int from, int to)
{
	int count = 0;

	for (int y = from_row; y < to_row; y++)
		for (int x = from; x < to; x++)
			count += is_block(cell(0, y, x));
	return count;
}

/* At 80 x 24 and up both answers, and what is asked, stand in large letters. */
static void test_large(void **state)
{
	static const int sizes[][2] = { { 80, 24 }, { 100, 30 }, { 120, 40 },
		{ 200, 60 } };

	(void)state;
	for (int id = 0; id < SCENES; id++) {
		scene_play(&scene, (enum scene_id)id);
		for (int i = 0; i < 4; i++) {
			int columns = sizes[i][0], rows = sizes[i][1];

			draw_all(columns, rows);
			assert_true(
			    blocks(rows - 10, rows, 0, columns / 2) > 20);
			assert_true(
			    blocks(rows - 10, rows, columns / 2, columns) > 20);
			if (question())
				assert_true(
				    blocks(0, rows - 10, 0, columns) > 50);
		}
	}
	scene_done(&scene);
}

/* --- signs --- */

static void test_ascii(void **state)
{
	(void)state;
	for (int id = 0; id < SCENES; id++) {
		scene_play(&scene, (enum scene_id)id);
		scene.view.ascii = true;
		for (int size = 0; size < 3; size++) {
			draw_all(40 + 60 * size, 12 + 14 * size);
			for (int n = 0; n < leaves; n++)
				for (int y = 0; y < leaf[n].rows; y++)
					for (int x = 0; x < leaf[n].columns;
					     x++)
						assert_in_range(
						    (unsigned char)cell(
							n, y, x)[0],
						    ' ', '~');
		}
	}
	scene_done(&scene);
}

/* The chosen place is marked by a sign on the leaf that comes first. */
static void test_chosen(void **state)
{
	(void)state;
	scene_play(&scene, SCENE_PAIN_WHERE);
	for (int choice = 0; choice < PAIN_CHOICES; choice++) {
		for (int size = 0; size < 4; size++) {
			int signs = 0;

			draw_all(40 + 20 * size, 12 + 4 * size);
			for (int y = 0; y < leaf[0].rows; y++)
				for (int x = 0; x < leaf[0].columns; x++)
					signs += strcmp(cell(0, y, x), "►") ==
					    0;
			assert_int_equal(signs, 1);
		}
		sitting_soon(&scene.d, KEY_BACK);
	}
	scene_done(&scene);
}

/* --- typing --- */

/* What is typed goes on being seen at its end, with a sign behind it. */
static void test_typing(void **state)
{
	static const char *const words[] = { "", "a", "Größe ist 弓 und 音",
		"One two three four five six seven eight nine ten eleven "
		"twelve thirteen fourteen fifteen sixteen seventeen eighteen "
		"nineteen twenty twentyone twentytwo twentythree twentyfour "
		"twentyfive END",
		"弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓"
		"弓"
		"弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓弓"
		"音" };
	static const char *const ends[] = { "▄", "a▄", "音▄", "END▄", "音▄" };
	static char page[1 << 16];

	(void)state;
	scene_play(&scene, SCENE_QUESTION);
	for (int i = 0; i < 5; i++) {
		scene.view.typed = words[i];
		for (int size = 0; size < 6; size++) {
			draw_all(40 + 13 * size, 12 + 5 * size);
			canvas_text(&leaf[0], page, sizeof(page));
			if (!strstr(page, ends[i]))
				fail_msg(
				    "\"%s\" is missing in:\n%s", ends[i], page);
		}
	}
	/* Where the beginning has no room it is said so. */
	scene.view.typed = words[3];
	draw_all(40, 12);
	canvas_text(&leaf[0], page, sizeof(page));
	assert_non_null(strstr(page, "..."));
	assert_null(strstr(page, "One "));
	draw_all(80, 24);
	canvas_text(&leaf[0], page, sizeof(page));
	assert_non_null(strstr(page, "One "));
	scene_done(&scene);
}

/* --- leaves --- */

/* Turning on from the last leaf comes back to the first. */
static void test_leaves(void **state)
{
	static char first[1 << 14], again[1 << 14];

	(void)state;
	scene_play(&scene, SCENE_TODAY);
	draw_all(40, 12);
	assert_true(leaves > 2);
	canvas_text(&leaf[0], first, sizeof(first));
	for (int n = 1; n < leaves; n++) {
		canvas_text(&leaf[n], again, sizeof(again));
		assert_string_not_equal(first, again);
	}
	scene.view.leaf = leaves;
	canvas_init(&leaf[0], 40, 12);
	view_draw(&leaf[0], &scene.view);
	canvas_text(&leaf[0], again, sizeof(again));
	assert_string_equal(first, again);
	scene_done(&scene);
}

/* Behind the first minutes forward turns the leaves, as it did in them. */
static void test_taught(void **state)
{
	(void)state;
	scene_play(&scene, SCENE_TODAY);
	scene.d.s.taught = true;
	draw_all(40, 12);
	assert_true(leaves > 2);
	for (int n = 0; n < leaves; n++)
		check_answer(n,
		    message_sentence(n + 1 < leaves ? M_FIRST_DO_MORE
						    : M_PAGES_FORWARD_TODAY),
		    true);
	scene_done(&scene);
}

/* A card is told before one plays, and not where nothing is played. */
static void test_card(void **state)
{
	static const struct {
		enum scene_id scene;
		bool told;
	} cases[] = { { SCENE_SORE, true }, { SCENE_REST, false },
		{ SCENE_REST_NOW, false } };
	static char page[1 << 14];

	(void)state;
	for (int i = 0; i < 3; i++) {
		scene_play(&scene, cases[i].scene);
		scene.view.said = 1;
		scene.view.news[0] = message_with(
		    M_DEVICE_SOUNDS, TEXT("Cedar"), TEXT("ALSA"));
		draw_all(80, 24);
		canvas_text(&leaf[0], page, sizeof(page));
		assert_int_equal(strstr(page, "Sound comes from Cedar") != NULL,
		    cases[i].told);
		scene_done(&scene);
	}
}

/*
 * What a microphone heard, part by part and as bars of each finger: finger 4
 * misses a top in each bow of the work, finger 2 stops short in the first part.
 */
static void hear_all(struct session *s)
{
	for (int i = 0; i < s->played; i++) {
		struct played_turn *t = &s->turn_played[i];
		bool work = s->plan.block[t->block].kind == BLOCK_WORK;

		if (t->unit < 0)
			continue;
		t->heard = (struct listened) { .told = true,
			.bows = 2,
			.tops = 12 - (work && t->unit == 3 ? 2 : 0),
			.tops_asked = 12,
			.travel_share = t->block == 1 && t->unit == 1 ? 0.8F
								      : 1 };
	}
}

static void test_heard(void **state)
{
	static const int sizes[][2] = { { 40, 12 }, { 80, 24 }, { 120, 40 } };
	static char all[GOLDEN_BYTES], page[1 << 16];
	struct text t = text_in(all, sizeof(all));

	(void)state;
	scene_play(&scene, SCENE_END);
	hear_all(&scene.d.s);
	for (int i = 0; i < 3; i++) {
		draw_all(sizes[i][0], sizes[i][1]);
		for (int n = 0; n < leaves; n++) {
			text_format(&t, "--- %d x %d, %d of %d\n", sizes[i][0],
			    sizes[i][1], n + 1, leaves);
			canvas_text(&leaf[n], page, sizeof(page));
			text_add(&t, page);
		}
	}
	assert_false(t.cut);
	golden_check("page-end-heard", all);
	scene_done(&scene);
}

/* The keys over the playing: silence over a bow, marks where they count. */
static void test_keys_over_playing(void **state)
{
	static char page[1 << 14];
	int64_t change;

	(void)state;
	scene_play(&scene, SCENE_HELP_PLAY);
	draw_all(80, 24);
	canvas_text(&leaf[0], page, sizeof(page));
	assert_non_null(strstr(page, "Forward: silence."));
	while (scene.d.s.phase != PHASE_CHANGE ||
	    scene.d.s.turn < scene.d.s.at.passage.turns - 1) {
		change = view_change(&scene.view, 80, 24);
		assert_true(change > scene.view.heard);
		assert_true(change < INT64_MAX);
		sitting_reach(&scene.d, change);
		scene.view.heard = change;
	}
	draw_all(80, 24);
	canvas_text(&leaf[0], page, sizeof(page));
	assert_null(strstr(page, "Forward: silence."));
	assert_null(strstr(page, "Back: silence."));
	scene_done(&scene);
}

static void test_over(void **state)
{
	static char page[1 << 14];

	(void)state;
	scene_play(&scene, SCENE_QUESTION);
	SCENE_KEYS(&scene, PAGE_OVER, KEY_FORWARD);
	draw_all(80, 24);
	assert_int_equal(leaves, 1);
	canvas_text(&leaf[0], page, sizeof(page));
	assert_int_equal(strspn(page, "\n"), 24);
	scene_done(&scene);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_golden),
		cmocka_unit_test(test_sizes),
		cmocka_unit_test(test_many_words),
		cmocka_unit_test(test_large),
		cmocka_unit_test(test_ascii),
		cmocka_unit_test(test_chosen),
		cmocka_unit_test(test_typing),
		cmocka_unit_test(test_leaves),
		cmocka_unit_test(test_taught),
		cmocka_unit_test(test_heard),
		cmocka_unit_test(test_card),
		cmocka_unit_test(test_keys_over_playing),
		cmocka_unit_test(test_over),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
