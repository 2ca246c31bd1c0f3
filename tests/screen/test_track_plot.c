/*
 * test_track_plot.c - the pitch of a recording in cells: looked at, in every
 * width that there may be
 *
 * Golden: tests/screen/golden/track-plot.txt, by `make golden`.
 */
#include "golden_pages.h"

#include <math.h>

#include "evenhand/base/text.h"
#include "evenhand/screen/track_plot.h"

static struct outline outline;
static struct canvas canvas;

/* Two notes a fifth apart with a rest between them, so many seconds of each. */
static void make(int seconds)
{
	int part = (int)(seconds / HEARD_STEP_S);

	outline = (struct outline) { 0 };
	for (int i = 0; i < 3 * part; i++) {
		bool rest = i / part == 1;
		struct instant m = { .what = rest ? HEARD_NOTHING : HEARD_NOTE,
			.sure = !rest };

		m.hz = rest
		    ? 0
		    : (float)((i < part ? 220 : 330) +
			  5 * sin(2 * 3.14159265 * (i % part) / part * 2));
		m.level_db = rest ? -90 : -20;
		outline_add(&outline, &m);
	}
}

static void test_looked_at(void **context)
{
	static char all[GOLDEN_BYTES];
	struct text t = text_in(all, sizeof(all));

	(void)context;
	for (int way = 0; way < 4; way++) {
		static char page[GOLDEN_BYTES / 8];

		make(way & 1 ? 40 : 3);
		assert_true(track_plot(
		    &canvas, way & 2 ? 118 : 78, &outline, 440, way & 1));
		canvas_text(&canvas, page, sizeof(page));
		text_format(&t, "%s\n", page);
	}
	assert_false(t.cut);
	golden_check("track-plot", all);
}

/* Names of notes stand at their own heights, however narrow it is. */
static void test_narrow(void **context)
{
	(void)context;
	make(3);
	for (int columns = 20; columns <= 200; columns++) {
		static char page[GOLDEN_BYTES / 8];
		const char *upper, *lower;

		assert_true(track_plot(&canvas, columns, &outline, 440, true));
		canvas_text(&canvas, page, sizeof(page));
		upper = strstr(page, "E4");
		lower = strstr(page, "A#3");
		assert_non_null(upper);
		assert_non_null(lower);
		assert_true(upper < lower);
		assert_non_null(strstr(page, "0:00"));
	}
}

/* Without a note there is nothing to draw. */
static void test_nothing(void **context)
{
	struct instant m = { .what = HEARD_NOTHING, .level_db = -90 };

	(void)context;
	outline = (struct outline) { 0 };
	assert_false(track_plot(&canvas, 80, &outline, 440, false));
	outline_add(&outline, &m);
	assert_false(track_plot(&canvas, 80, &outline, 440, false));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_looked_at),
		cmocka_unit_test(test_narrow),
		cmocka_unit_test(test_nothing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
