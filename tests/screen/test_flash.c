/*
 * test_flash.c - nothing blinks more than three times a second
 *
 * WCAG 2.2, 2.3.1 "Three Flashes or Below Threshold" (from memory of its
 * definitions): a flash is a pair of opposing changes of luminance, and no more
 * than three may fall into one second.  It exempts small areas; we do not: the
 * rule is held by every cell.  How bright a cell is: the part of it that its
 * sign fills, roughly.
 *
 * Whole sessions are walked from change to change, as the shell draws them.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "../coach/made.h"
#include "../coach/sitting.h"
#include "../score/seeded.h"
#include "evenhand/screen/view.h"

enum {
	RATE = 48000,
	FLASHES = 3,
	CHANGES = 2 * FLASHES + 1, /* so many in a second are too many */
	DRAWS = 30,
};

/* One cell over time: the last changes that went the other way. */
struct light {
	int level, way;
	int64_t at[CHANGES];
	int changes;
};

static struct light lights[CANVAS_ROWS_MAX][CANVAS_COLUMNS_MAX];
static struct canvas page, shown, again;
static struct sitting d;
static const struct history nothing;

/* Quarters of a cell that are lit. */
static int level_of(const struct cell *c)
{
	static const struct {
		const char *sign;
		int level;
	} signs[] = { { " ", 0 }, { "", 0 }, { "█", 4 }, { "▀", 2 }, { "▄", 2 },
		{ "▌", 2 }, { "▐", 2 }, { "#", 4 }, { "_", 2 }, { "\"", 2 } };

	for (size_t i = 0; i < sizeof(signs) / sizeof(signs[0]); i++)
		if (strcmp(signs[i].sign, c->text) == 0)
			return signs[i].level;
	return 1; /* small letters and lines */
}

/* Steps on while the change goes on in one direction; else a new change. */
static void see(struct light *l, int level, int64_t frame, int x, int y)
{
	int way = (level > l->level) - (level < l->level);

	l->level = level;
	if (way == 0 || way == l->way)
		return;
	l->way = way;
	l->at[l->changes++ % CHANGES] = frame;
	if (l->changes >= CHANGES && frame - l->at[l->changes % CHANGES] < RATE)
		fail_msg("column %d, row %d blinks at frame %lld", x, y,
		    (long long)frame);
}

/* A row that is as it was before changes no light. */
static void see_page(int64_t frame)
{
	for (int y = 0; y < page.rows; y++) {
		size_t size = sizeof(page.cell[y][0]) * (size_t)page.columns;

		if (memcmp(page.cell[y], shown.cell[y], size) == 0)
			continue;
		memcpy(shown.cell[y], page.cell[y], size);
		for (int x = 0; x < page.columns; x++)
			see(&lights[y][x], level_of(&page.cell[y][x]), frame, x,
			    y);
	}
}

/* A frame between now and the next change shows the same page. */
static void check_still(const struct view *v, int64_t next)
{
	struct view later = *v;

	/* Now and then will do. */
	if (next - v->heard < 2 || seeded(0, 3) > 0)
		return;
	later.heard = seeded(0, 1)
	    ? next - 1
	    : v->heard + seeded(1, (int)(next - v->heard) - 1);
	if (later.heard > session_wake(&d.s))
		return;
	again.columns = page.columns;
	again.rows = page.rows;
	view_draw(&again, &later);
	for (int y = 0; y < page.rows; y++)
		if (memcmp(page.cell[y], again.cell[y],
			sizeof(page.cell[0][0]) * (size_t)page.columns) != 0)
			fail_msg("row %d is another at frame %lld, not only at "
				 "%lld",
			    y, (long long)later.heard, (long long)next);
}

/* Never more than so many draws in a second. */
static void check_rate(int64_t *drawn, int *draws, int64_t frame)
{
	int64_t before = *draws >= DRAWS ? drawn[*draws % DRAWS] : -2 * RATE;

	if (frame - before < RATE)
		fail_msg("31 draws in the second before frame %lld",
		    (long long)frame);
	drawn[(*draws)++ % DRAWS] = frame;
}

/* Marks now and then, so that those pages are seen too. */
static void press(int64_t frame)
{
	if (d.s.phase == PHASE_CHANGE && d.s.marked_by == KEY_OTHER &&
	    seeded(0, 19) == 0)
		sitting_input(&d, frame,
		    (struct input) { .kind = INPUT_KEY,
			.key = seeded(0, 1) ? KEY_FORWARD : KEY_BACK });
}

static void walk(const struct routine *r, enum marking marking, int columns,
    int rows, bool ascii)
{
	int64_t drawn[DRAWS] = { 0 }, frame;
	int draws = 0;
	struct view v = { .session = &d.s, .ascii = ascii };

	memset(lights, 0, sizeof(lights));
	memset(&shown, 0, sizeof(shown));
	sitting_begin(&d, r, &nothing, marking, RATE);
	sitting_start(&d);
	frame = d.s.now;
	while (d.s.page == PAGE_PLAY) {
		sitting_reach(&d, frame);
		if (d.s.page != PAGE_PLAY)
			break;
		v.heard = frame;
		page.columns = columns;
		page.rows = rows;
		view_draw(&page, &v);
		see_page(frame);
		check_rate(drawn, &draws, frame);

		int64_t next = view_change(&v, columns, rows);

		assert_true(next > frame);
		check_still(&v, next);
		frame = next;
		press(frame);
	}
	assert_true(draws > 100);
}

static struct routine quick(int bow_ms, int pulses)
{
	struct routine r = programme_cello(TONE);

	r.bow_ms = bow_ms;
	r.cap_ms = 60000;
	for (int i = 0; i < r.ladder_count; i++)
		r.ladder[i] = pulses;
	r.stage[WIDE].start_pulses = 0;
	return r;
}

/* The usual bow at every rung of the ladder. */
static void test_usual(void **state)
{
	(void)state;
	seeded_begin("usual");
	for (int pulses = 4; pulses <= 8; pulses += 2) {
		struct routine r = quick(4000, pulses);

		r.cap_ms = 150000;
		walk(&r, MARKING_TURN, 80, 24, false);
		walk(&r, MARKING_ROUND, 40, 12, true);
	}
}

/* The shortest bow there is with every count of pulses there is. */
static void test_quick(void **state)
{
	(void)state;
	seeded_begin("quick");
	for (int pulses = 1; pulses <= PULSES_MAX; pulses++) {
		struct routine r = quick(1000, pulses);

		if (seeded_quick() && pulses % 3 > 0 && pulses % 8 > 0)
			continue;
		walk(&r, MARKING_TURN, 80, 24, pulses % 2);
		if (pulses % 3 == 0)
			walk(&r, MARKING_ROUND, 40, 12, pulses % 2);
		if (pulses % 8 == 0)
			walk(&r, MARKING_TURN, 120, 40, false);
	}
}

/* Pulses of every length round the shortest that is shown. */
static void test_border(void **state)
{
	(void)state;
	seeded_begin("border");
	for (int bow_ms = 1000; bow_ms <= 3400;
	     bow_ms += seeded_quick() ? 3 * 290 : 290) {
		struct routine r = quick(bow_ms, seeded(5, 16));

		walk(&r, MARKING_TURN, 60, 16, false);
	}
}

/* The swing in the air, and a page as large as there is. */
static void test_air_and_large(void **state)
{
	struct routine r = programme_cello(AIR);

	(void)state;
	seeded_begin("air and large");
	r.bow_ms = 1000;
	r.cap_ms = r.stage[AIR].minutes_ms = 60000;
	walk(&r, MARKING_TURN, 80, 24, false);
	r = quick(1000, 5);
	r.cap_ms = 40000;
	walk(&r, MARKING_TURN, 300, 120, false);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_usual),
		cmocka_unit_test(test_quick),
		cmocka_unit_test(test_border),
		cmocka_unit_test(test_air_and_large),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
