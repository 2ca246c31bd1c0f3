/*
 * test_view_play.c - the page of the playing, at exact frames of real sessions
 *
 * Golden pages stand in tests/screen/golden/play-*.txt; `make golden` writes
 * them anew.  Beside them: what must be read is there and whole at any size.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "../../src/screen/view_play.h"
#include "../../src/screen/view_play_board.h"
#include "../coach/made.h"
#include "../coach/sitting.h"
#include "../score/seeded.h"
#include "evenhand/base/text.h"
#include "golden_pages.h"

enum { RATE = 48000, NO_MARK = -1, PAGE_BYTES = 1 << 17, BOOK_BYTES = 1 << 18 };

static struct sitting d;
static struct past *past;
static struct routine routine;
static struct canvas page, scratch;
static char shown[PAGE_BYTES];

/* A moment of a session, by ms from the first sound. */
struct moment_of {
	const char *name;
	enum marking marking;
	int key_ms;   /* a key before it, 0 none */
	enum key key; /* KEY_DIGIT: shaky 2, then 4 */
	int ms;
};

static const struct moment_of moments[] = {
	{ "settling, in the air", MARKING_TURN, 0, 0, 1500 },
	{ "count-in, in the air", MARKING_TURN, 0, 0, 5000 },
	{ "the swing goes", MARKING_TURN, 0, 0, 10500 },
	{ "how was the swing?", MARKING_TURN, 0, 0, 25000 },
	{ "settling", MARKING_TURN, 0, 0, 30000 },
	{ "count-in", MARKING_TURN, 0, 0, 34000 },
	{ "down bow, pulse 1", MARKING_TURN, 0, 0, 148000 },
	{ "down bow, pulse 3", MARKING_TURN, 0, 0, 149500 },
	{ "up bow, pulse 2", MARKING_TURN, 0, 0, 153000 },
	{ "how was this turn?", MARKING_TURN, 0, 0, 157000 },
	{ "clean", MARKING_TURN, 157000, KEY_FORWARD, 158000 },
	{ "shaky", MARKING_TURN, 157000, KEY_BACK, 158500 },
	{ "a late mark", MARKING_TURN, 160200, KEY_FORWARD, 160300 },
	{ "the last change", MARKING_TURN, 158000, KEY_FORWARD, 290000 },
	{ "next, no mark yet", MARKING_ROUND, 0, 0, 45000 },
	{ "how was this round?", MARKING_ROUND, 0, 0, 78000 },
	{ "2 and 4 shaky", MARKING_ROUND, 78000, KEY_DIGIT, 80000 },
	{ "the round clean", MARKING_ROUND, 79000, KEY_FORWARD, 80000 },
};
enum { MOMENTS = sizeof(moments) / sizeof(moments[0]) };

/* Four whole sessions in the days before. */
static int setup(void **state)
{
	struct plan plan;

	(void)state;
	routine = programme_cello(TONE);
	past = past_new();
	for (int day = 4; day >= 1; day--) {
		made_plan(
		    &plan, &routine, past, made_moment(FIRST_DAY - day, 17));
		past_play(past, &routine, &plan, all_clean, NULL, PLAY_ALL,
		    ENDED_WHOLE);
	}
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	free(past);
	return 0;
}

/* Brings the sitting to a moment; the view is as the ear is, not behind. */
static struct view come_to(const struct routine *r, const struct moment_of *m)
{
	sitting_begin(&d, r, &past->h, m->marking, RATE);
	sitting_start(&d);
	if (m->key_ms > 0 && m->key == KEY_DIGIT) {
		sitting_digit(&d, m->key_ms, 2);
		sitting_digit(&d, m->key_ms + 400, 4);
	} else if (m->key_ms > 0) {
		sitting_key(&d, m->key_ms, m->key);
	}
	sitting_until(&d, m->ms);
	assert_int_equal(d.s.page, PAGE_PLAY);
	return (
	    struct view) { .session = &d.s, .heard = sitting_at(&d, m->ms) };
}

static const char *draw(const struct view *v, int columns, int rows)
{
	page.columns = columns;
	page.rows = rows;
	view_draw(&page, v);
	assert_int_equal(page.columns, columns);
	assert_int_equal(page.rows, rows);
	canvas_text(&page, shown, sizeof(shown));
	return shown;
}

/* --- golden pages --- */

struct edition {
	const char *name;
	int columns, rows;
	bool ascii, mirror;
	int every; /* of the moments: large pages only some */
};

static void book(const struct edition *e)
{
	static char bytes[BOOK_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));

	for (int i = 0; i < MOMENTS; i++) {
		if (i % e->every != 0)
			continue;

		struct view v = come_to(&routine, &moments[i]);

		v.ascii = e->ascii;
		v.mirror = e->mirror;
		text_format(&t, "--- %s ---\n", moments[i].name);
		text_add(&t, draw(&v, e->columns, e->rows));
	}
	assert_false(t.cut);
	golden_check(e->name, bytes);
}

static void test_golden(void **state)
{
	static const struct edition editions[] = {
		{ "play-40x12", 40, 12, false, false, 1 },
		{ "play-40x12-ascii-left", 40, 12, true, true, 1 },
		{ "play-60x16", 60, 16, false, false, 1 },
		{ "play-80x24", 80, 24, false, false, 1 },
		{ "play-80x24-ascii", 80, 24, true, false, 2 },
		{ "play-80x24-left", 80, 24, false, true, 2 },
		{ "play-120x40", 120, 40, false, false, 1 },
		{ "play-120x40-ascii-left", 120, 40, true, true, 3 },
		{ "play-160x24", 160, 24, false, false, 4 },
		{ "play-200x60", 200, 60, false, false, 4 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(editions) / sizeof(editions[0]); i++)
		book(&editions[i]);
}

/* Trouble has its place: no sound, gaps in it, something said. */
static void test_golden_trouble(void **state)
{
	static char bytes[BOOK_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));
	struct view v = come_to(&routine, &moments[7]);

	(void)state;
	v.sounding = SOUNDING_LOST;
	v.dropped = 3;
	v.said = 2;
	v.news[0] = message_with(M_SESSION_NEXT, TEXT("finger 2"));
	v.news[1] = message_of(M_SESSION_SOUND_LOST);
	text_add(&t, draw(&v, 80, 24));
	text_add(&t, "---\n");
	text_add(&t, draw(&v, 40, 12));
	text_add(&t, "---\n");
	v.said = 0;
	text_add(&t, draw(&v, 80, 24));
	text_add(&t, "---\n");
	v.sounding = SOUNDING_ON;
	text_add(&t, draw(&v, 60, 16));
	text_add(&t, "---\n");
	text_add(&t, draw(&v, 40, 12));
	golden_check("play-trouble", bytes);
}

/* The routine with pairs of strings for fingers. */
static struct routine by_strings(void)
{
	static const char *const names[] = { "D-A", "G-D", "C-G" };
	struct routine r = routine;

	r.take = TAKE_STRINGS;
	r.units = 3;
	for (int u = 0; u < r.units; u++) {
		strcpy(r.unit[u].name, names[u]);
		r.unit[u].from = u + 1;
		r.unit[u].to = u;
	}
	return r;
}

static void test_golden_strings(void **state)
{
	static const struct moment_of some[] = {
		{ "down bow", MARKING_TURN, 0, 0, 37000 },
		{ "up bow", MARKING_TURN, 0, 0, 42500 },
		{ "how were they?", MARKING_TURN, 0, 0, 45000 },
	};
	static char bytes[BOOK_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));
	struct routine r = by_strings();

	(void)state;
	for (int i = 0; i < 6; i++) {
		struct view v = come_to(&r, &some[i / 2]);

		text_format(&t, "--- %s ---\n", some[i / 2].name);
		text_add(&t, i % 2 ? draw(&v, 40, 12) : draw(&v, 80, 24));
	}
	golden_check("play-strings", bytes);
}

/* --- what must be read is there, whole --- */

/* Whether a text stands somewhere on the page in large letters. */
static bool shows(const struct face *f, bool ascii, const char *s)
{
	int columns = letters_columns(f, s), rows = letters_rows(f);

	if (columns == 0 || columns > page.columns || rows > page.rows)
		return false;
	canvas_init(&scratch, columns, rows);
	letters_draw(&scratch, 0, 0, 0, f, ascii, s);
	for (int y = 0; y + rows <= page.rows; y++)
		for (int x = 0; x + columns <= page.columns; x++) {
			int n = 0;

			while (n < rows * columns &&
			    strcmp(scratch.cell[n / columns][n % columns].text,
				page.cell[y + n / columns][x + n % columns]
				    .text) == 0)
				n++;
			if (n == rows * columns)
				return true;
		}
	return false;
}

static void must_show(
    const struct layout *l, const struct view *v, const char *s)
{
	if (!shows(&l->face, v->ascii, s))
		fail_msg("%dx%d does not show %s:\n%s", page.columns, page.rows,
		    s, shown);
}

static void must_say(const char *s)
{
	if (!strstr(shown, s))
		fail_msg("%dx%d does not say \"%s\":\n%s", page.columns,
		    page.rows, s, shown);
}

/* Parts in their order, none over another, all on the page. */
static void check_layout(const struct layout *l, int columns, int rows)
{
	int cue = l->cue_face.scale ? letters_rows(&l->cue_face) : 1;
	int large = l->large + letters_rows(&l->face);

	assert_in_range(l->large, 1, rows);
	if (l->label >= 0)
		assert_int_equal(l->label, l->large - 1);
	assert_true(large <= l->line);
	assert_true(l->line_rows >= 3);
	assert_true(l->line + l->line_rows <= l->counted);
	if (l->count < 0 && l->cue_face.scale > 0)
		assert_true(l->counted < l->cue);
	else
		assert_int_equal(l->counted, l->cue);
	assert_true(l->cue + cue <= l->panels || l->panel_rows == 0);
	assert_true(l->cue + cue <= l->info);
	if (l->panel_rows > 0)
		assert_true(l->panels + l->panel_rows <= l->info);
	assert_true(l->info < l->keys);
	if (l->status >= 0)
		assert_true(l->info < l->status && l->status < l->keys);
	assert_int_equal(l->keys, rows - 1);
	assert_true(l->left < l->word && l->word < l->word_end);
	assert_true(l->word_end <= (l->count >= 0 ? l->count : l->right));
	assert_true(l->right <= columns);
	if (l->side > 0)
		assert_true(l->right < l->side && l->side < columns);
}

static void check_count(const struct layout *l, const struct view *v,
    const char *large, const char *small)
{
	if (l->count >= 0)
		must_show(l, v, large);
	else
		must_say(small);
}

static void check_cue(
    const struct layout *l, const struct view *v, const char *cue)
{
	if (l->cue_face.scale == 0)
		must_say(cue);
	else if (!shows(&l->cue_face, v->ascii, cue))
		fail_msg("%dx%d: no cue:\n%s", page.columns, page.rows, shown);
}

static void check_bow(const struct view *v, const struct layout *l, int moment)
{
	bool down = moment != 8;

	must_show(l, v, "1");
	must_show(l, v, down ? "DOWN" : "UP");
	if (moment == 6)
		check_count(l, v, "1/6", "pulse 1 of 6");
	else if (moment == 7)
		check_count(l, v, "3/6", "pulse 3 of 6");
	else
		check_count(l, v, "2/6", "pulse 2 of 6");
	check_cue(l, v, "ARM LEADS");
	must_say("next: finger 2");
	must_say("frog");
	must_say("tip");
}

static void check_moment(const struct view *v, const struct layout *l, int i)
{
	must_say("h it hurts");
	switch (i) {
	case 2:
		must_show(l, v, "SWING");
		check_count(l, v, "1/4", "part 1 of 4");
		check_cue(l, v, "LOOSE ARM");
		break;
	case 6:
	case 7:
	case 8:
		check_bow(v, l, i);
		break;
	case 9:
		must_show(l, v, "2");
		must_show(l, v, "CLEAN?");
		must_say("back: shaky");
		must_say("forward: clean");
		break;
	case 10:
		must_show(l, v, "CLEAN");
		break;
	case 11:
		must_show(l, v, "SHAKY");
		break;
	case 12:
		must_show(l, v, "2");
		must_show(l, v, "DOWN");
		must_say("finger 1: clean");
		break;
	case 16:
		must_show(l, v, "~ 2 4");
		break;
	default:
		break;
	}
}

static void test_every_size(void **state)
{
	(void)state;
	seeded_begin("every size");
	for (int i = 0; i < MOMENTS; i++) {
		struct view v = come_to(&routine, &moments[i]);

		for (int n = 0; n < 120; n++) {
			int columns = seeded(40, CANVAS_COLUMNS_MAX);
			int rows = seeded(12, CANVAS_ROWS_MAX);
			struct layout l;

			if (n < 40)
				columns = seeded(40, 130),
				rows = seeded(12, 42);
			if (n < 4) {
				columns = n % 2 ? 40 : CANVAS_COLUMNS_MAX;
				rows = n / 2 ? 12 : CANVAS_ROWS_MAX;
			}
			v.ascii = seeded(0, 1);
			v.mirror = seeded(0, 1);
			layout_of(&v, columns, rows, &l);
			check_layout(&l, columns, rows);
			draw(&v, columns, rows);
			check_moment(&v, &l, i);
		}
	}
}

/* Too small: one sentence, as far as it goes; never a crash. */
static void test_small(void **state)
{
	struct view v = come_to(&routine, &moments[7]);

	(void)state;
	assert_string_equal(draw(&v, 39, 4),
	    "This window is too small. Make it 40\n"
	    "columns wide and 12 rows high.\n\n\n");
	for (int columns = 1; columns < 44; columns += 3)
		for (int rows = 1; rows < 15; rows++) {
			draw(&v, columns, rows);
			if (columns >= 40 && rows >= 12)
				continue;
			assert_true(columns < 4 || strstr(shown, "Th"));
			assert_int_equal(
			    view_change(&v, columns, rows), INT64_MAX);
		}
}

/* Other units have their room too, or a bow's sign in place of its word. */
static void test_pairs_and_strings(void **state)
{
	static const char *const names[] = { "0-1", "1-2", "2-3", "3-4" };
	struct routine pairs = routine;
	static const struct moment_of bow = { "", MARKING_TURN, 0, 0, 37000 };

	(void)state;
	pairs.take = TAKE_PAIRS;
	for (int u = 0; u < 4; u++) {
		strcpy(pairs.unit[u].name, names[u]);
		pairs.unit[u].from = u;
		pairs.unit[u].to = u + 1;
	}
	for (int columns = 40; columns <= 200; columns += 4)
		for (int rows = 12; rows <= 60; rows += 2) {
			struct view v = come_to(&pairs, &bow);
			struct layout l;

			layout_of(&v, columns, rows, &l);
			check_layout(&l, columns, rows);
			draw(&v, columns, rows);
			must_show(&l, &v, "0-1");
			must_show(&l, &v, l.signs ? "⊓" : "DOWN");
			must_say(l.signs ? "DOWN" : "next: fingers 1-2");
			/* Neither stands in the other's way. */
			check_count(&l, &v, "2/4", "pulse 2 of 4");
			check_cue(&l, &v, "LIGHT HAND");
		}
}

/* How often words stand on the page. */
static int times(const char *s)
{
	int found = 0;

	for (const char *at = shown; (at = strstr(at, s)) != NULL; at++)
		found++;
	return found;
}

/* What is asked is asked once, wherever there is room for it. */
static void test_asked_once(void **state)
{
	static const struct moment_of change = { "", MARKING_TURN, 0, 0,
		45000 };
	struct routine strings = by_strings();

	(void)state;
	for (int columns = 40; columns <= 200; columns += 4)
		for (int rows = 12; rows <= 60; rows += 2) {
			struct view v = come_to(&strings, &change);

			struct layout l;

			layout_of(&v, columns, rows, &l);
			draw(&v, columns, rows);
			/* The large letters ask; words where there is a row. */
			if (times("how was it?") !=
				(l.label >= 0 || l.count < 0) ||
			    times("next") > 2)
				fail_msg("%dx%d:\n%s", columns, rows, shown);
		}
}

/* --- eye and ear --- */

/* Middle of the hand in half columns from the left. */
static int hand_at(void)
{
	int first = -1, last = -1;

	for (int y = 0; y < page.rows; y++)
		for (int x = 0; x < page.columns; x++) {
			const struct cell *c = &page.cell[y][x];

			if (!(c->attributes & ATTRIBUTE_HAND))
				continue;
			if (first < 0)
				first = 2 * x + (strcmp(c->text, "▐") == 0);
			last = 2 * x + 1 - (strcmp(c->text, "▌") == 0);
		}
	return first < 0 ? -1 : first + last + 1;
}

/* Twice the column of each notch, with its middle. */
static int notches(int *at)
{
	int count = 0;

	for (int y = 0; y < page.rows; y++)
		for (int x = 0; x < page.columns; x++)
			if (strcmp(page.cell[y][x].text, "╋") == 0)
				at[count++] = 4 * x + 2;
	return count;
}

/* At the very frame of a pulse the hand is on its notch, and not before. */
static void test_hand_on_notch(void **state)
{
	struct view v = come_to(&routine, &moments[4]);
	int64_t bow = sitting_at(&d, 148000);
	int column[40], known = 0;

	(void)state;
	for (int i = 1; i < 6; i++) {
		int at[40], count;

		/* Where the notches are is seen when the hand is elsewhere. */
		sitting_reach(&d, bow + (2 * i - 1) * RATE / 3 + 11);
		v.heard = d.s.now;
		draw(&v, 120, 40);
		count = notches(at);
		assert_in_range(count, 6, 7);
		known = count == 7 ? at[i] : known;
		column[i] = count == 7 ? at[i] : -1;

		int64_t pulse = bow + i * 32000;

		sitting_reach(&d, pulse);
		v.heard = pulse - 1;
		draw(&v, 120, 40);
		assert_true(hand_at() < column[i] || column[i] < 0);
		v.heard = pulse;
		draw(&v, 120, 40);
		if (column[i] >= 0)
			assert_in_range(
			    hand_at(), column[i] - 3, column[i] + 3);
	}
	assert_true(known > 0);
}

/* Frog to tip and back, and the other way round for the left hand. */
static void test_way_of_the_hand(void **state)
{
	(void)state;
	for (int mirror = 0; mirror < 2; mirror++) {
		int last[2] = { 0 };

		for (int ms = 148000; ms < 156000; ms += 100) {
			struct view v = come_to(&routine,
			    &(struct moment_of) { "", MARKING_TURN, 0, 0, ms });
			int bow = ms >= 152000, at;

			v.mirror = mirror;
			draw(&v, 80, 24);
			at = hand_at();
			if (last[bow] > 0 && (bow == 0) != (mirror == 1))
				assert_true(at >= last[bow]);
			else if (last[bow] > 0)
				assert_true(at <= last[bow]);
			last[bow] = at;
			/* The word stands on the side the bow begins at. */
			must_say("frog");
		}
		assert_true(abs(last[1] - last[0]) > 200);
	}
}

/* The ear is a little behind the session: the page goes with the ear. */
static void test_heard_not_made(void **state)
{
	struct view v = come_to(&routine, &moments[9]);
	struct layout l;

	(void)state;
	/* The change has begun for the session; a bow is still heard. */
	sitting_begin(&d, &routine, &past->h, MARKING_TURN, RATE);
	sitting_start(&d);
	sitting_until(&d, 156010);
	assert_int_equal(d.s.phase, PHASE_CHANGE);
	v.heard = sitting_at(&d, 155960);
	layout_of(&v, 80, 24, &l);
	draw(&v, 80, 24);
	must_show(&l, &v, "UP");
	must_show(&l, &v, "6/6");
	assert_int_equal(view_change(&v, 80, 24), sitting_at(&d, 156000));
	v.heard = sitting_at(&d, 156000);
	draw(&v, 80, 24);
	must_show(&l, &v, "CLEAN?");

	/* The next round has begun for the session, its change is heard. */
	sitting_key(&d, 158000, KEY_FORWARD);
	sitting_until(&d, 196000);
	assert_int_equal(d.s.phase, PHASE_BOWS);
	v.heard = sitting_at(&d, 195960);
	draw(&v, 80, 24);
	must_show(&l, &v, "CLEAN?");
	assert_int_equal(view_change(&v, 80, 24), sitting_at(&d, 196000));
	v.heard = sitting_at(&d, 196000);
	draw(&v, 80, 24);
	must_show(&l, &v, "DOWN");
}

/* Attributes of the first cell of a text in small letters. */
static unsigned attributes_of(int column, const char *s)
{
	for (int y = 0; y < page.rows; y++) {
		int n = 0;

		while (s[n] && column + n < page.columns &&
		    page.cell[y][column + n].text[0] == s[n])
			n++;
		if (s[n] == '\0')
			return page.cell[y][column].attributes;
	}
	fail_msg("no \"%s\" on the page", s);
	return 0;
}

/* While a mark may still be late it stands out, and then no more. */
static void test_late_mark(void **state)
{
	struct view v = come_to(&routine, &moments[12]);
	int left = 2;

	(void)state;
	draw(&v, 80, 24);
	assert_int_equal(
	    attributes_of(left, "finger 1: clean"), ATTRIBUTE_STRONG);
	v.heard = sitting_at(&d, 160500) - 1;
	assert_int_equal(view_change(&v, 80, 24), sitting_at(&d, 160500));
	sitting_until(&d, 160500);
	v.heard = sitting_at(&d, 160500);
	draw(&v, 80, 24);
	assert_int_equal(
	    attributes_of(left, "finger 1: clean"), ATTRIBUTE_PLAIN);
}

/* Pulses too quick to be read are not counted out, only told. */
static void test_quick_pulses(void **state)
{
	struct routine r = routine;
	static const struct moment_of bow = { "", MARKING_TURN, 0, 0, 12500 };
	struct view v;
	struct layout l;

	(void)state;
	r.bow_ms = 1000;
	r.count_in_bows = 0;
	r.stage[WIDE].start_pulses = 0;
	for (int i = 0; i < r.ladder_count; i++)
		r.ladder[i] = 8;
	v = come_to(&r, &bow);
	while (d.s.phase != PHASE_BOWS ||
	    d.s.plan.block[d.s.at.from.block].kind == BLOCK_AIR)
		sitting_reach(&d, d.s.now + RATE / 10);
	v.heard = d.s.now;
	layout_of(&v, 80, 24, &l);
	draw(&v, 80, 24);
	must_show(&l, &v, "8");
	assert_false(shows(&l.face, false, "1/8"));
	draw(&v, 40, 12);
	must_say("8 pulses");
}

/* --- the panels --- */

/*
 * Places of frets by the published step rule: each fret is the remaining length
 * over 17.817 on from the one before (noah.org, "fret positioning", 2015); the
 * octave is the middle of the string.
 */
static void test_board_to_scale(void **state)
{
	double length = routine.setup.length_mm, at = 0;

	(void)state;
	for (int n = 0; n <= 12; n++) {
		for (int columns = 20; columns <= 200; columns++) {
			double exact = at / (length / 2) * (columns - 1);
			int drawn = board_column(&routine, n, columns);

			if (fabs(drawn - exact) > 0.51)
				fail_msg("%d semitones: column %d of %d, not "
					 "%g",
				    n, drawn, columns, exact);
		}
		at += (length - at) / 17.817;
	}
}

/* Columns of the two places in the row of a stage. */
static int places(int stage_row, int *first)
{
	int row = 0, at = -1, count = 0;

	for (int y = 0; y < page.rows; y++) {
		bool any = false;

		for (int x = 0; x < page.columns; x++)
			any |= strcmp(page.cell[y][x].text, "●") == 0;
		if (!any || row++ != stage_row)
			continue;
		for (int x = 0; x < page.columns; x++) {
			if (strcmp(page.cell[y][x].text, "●") != 0)
				continue;
			if (count++ == 0)
				*first = x;
			at = x;
		}
	}
	assert_int_equal(count, 2);
	return at - *first;
}

/* From stage to stage the distance gets shorter, from the same first place. */
static void test_distance_shrinks(void **state)
{
	struct view v = come_to(&routine, &moments[7]);
	int first = 0, same = 0, last = 1000;

	(void)state;
	for (int mirror = 0; mirror < 2; mirror++, last = 1000) {
		v.mirror = mirror;
		draw(&v, 200, 60);
		must_say("fingerboard to scale, finger 1");
		must_say("154 mm"); /* 690 (2^(-2/12) - 2^(-7/12)) = 154.2 */
		for (int stage = 0; stage < 5; stage++) {
			int apart = places(stage, &first);

			assert_true(apart < last);
			last = apart;
			if (mirror)
				first += apart;
			if (stage > 0)
				assert_int_equal(first, same);
			same = first;
		}
	}
}

/* Equal work, equal bars; what is still planned is seen behind them. */
static void test_bars(void **state)
{
	struct view v = come_to(&routine, &moments[9]);
	int filled[4] = { 0 }, row = -1;

	(void)state;
	draw(&v, 120, 40);
	must_say("bows today");
	must_say("work turns, 7 days");
	for (int y = 0; y < page.rows && row < 0; y++)
		if (strcmp(page.cell[y][3].text, "b") == 0 &&
		    strcmp(page.cell[y][4].text, "o") == 0 &&
		    strcmp(page.cell[y][8].text, "t") == 0)
			row = y + 1;
	assert_true(row > 0);
	for (int u = 0; u < 4; u++)
		for (int x = 5; x < 30; x++)
			filled[u] += strcmp(page.cell[row + u][x].text, "█") ==
			    0;
	/* Six bows to finger 1 so far, four to each of the others. */
	assert_int_equal(session_bows(&d.s, 0), 6);
	assert_int_equal(filled[1], filled[2]);
	assert_int_equal(filled[2], filled[3]);
	assert_int_equal(2 * filled[0], 3 * filled[1]);
}

/* What was said is news only when the page does not show it anyway. */
static void test_news(void **state)
{
	struct view v = come_to(&routine, &moments[7]);

	(void)state;
	v.said = 3;
	v.news[0] = message_of(M_SESSION_MARK_TURN);
	v.news[1] = message_with(M_SESSION_NEXT_PULSES, WHOLE(8));
	v.news[2] = message_of(M_SESSION_SOUND_BACK);
	draw(&v, 80, 24);
	must_say(message_sentence(M_SESSION_SOUND_BACK));
	assert_null(strstr(shown, "Clean or shaky?"));
	assert_null(strstr(shown, "8 pulses."));
	v.heard = sitting_at(&d, 156000);
	draw(&v, 80, 24);
	must_say("Next: 8 pulses. ");
	must_say(message_sentence(M_SESSION_SOUND_BACK));
	/* Back over a bow, where nothing is said: it is not called gone. */
	v.news[2] = message_of(M_SESSION_SOUND_LOST);
	v.sounding = SOUNDING_LOST;
	draw(&v, 80, 24);
	must_say("The sound is gone.");
	v.sounding = SOUNDING_ON;
	draw(&v, 80, 24);
	assert_null(strstr(shown, "The sound is gone."));
	must_say("sound on");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_golden),
		cmocka_unit_test(test_golden_trouble),
		cmocka_unit_test(test_golden_strings),
		cmocka_unit_test(test_every_size),
		cmocka_unit_test(test_small),
		cmocka_unit_test(test_pairs_and_strings),
		cmocka_unit_test(test_asked_once),
		cmocka_unit_test(test_hand_on_notch),
		cmocka_unit_test(test_way_of_the_hand),
		cmocka_unit_test(test_heard_not_made),
		cmocka_unit_test(test_late_mark),
		cmocka_unit_test(test_quick_pulses),
		cmocka_unit_test(test_board_to_scale),
		cmocka_unit_test(test_distance_shrinks),
		cmocka_unit_test(test_bars),
		cmocka_unit_test(test_news),
	};

	return cmocka_run_group_tests(tests, setup, teardown);
}
