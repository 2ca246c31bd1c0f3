/*
 * test_colours.c - whether every look can be read
 *
 * Contrast as WCAG 2.2 defines it (www.w3.org/TR/WCAG22, "contrast ratio" and
 * "relative luminance", written from memory of the text): of sRGB parts c in
 * 0..1, c/12.92 up to 0.04045, else ((c + 0.055)/1.055)^2.4; luminance
 * 0.2126 R + 0.7152 G + 0.0722 B; ratio (L1 + 0.05)/(L2 + 0.05).
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/screen/canvas.h"
#include "evenhand/screen/colours.h"

enum { ALL = 2 * ATTRIBUTE_BOW };

static double part(uint32_t rgb, int shift)
{
	double c = (double)(rgb >> shift & 255) / 255;

	return c <= 0.04045 ? c / 12.92 : pow((c + 0.055) / 1.055, 2.4);
}

static double luminance(uint32_t rgb)
{
	return 0.2126 * part(rgb, 16) + 0.7152 * part(rgb, 8) +
	    0.0722 * part(rgb, 0);
}

static double contrast(uint32_t a, uint32_t b)
{
	double l = luminance(a), m = luminance(b);

	return (fmax(l, m) + 0.05) / (fmin(l, m) + 0.05);
}

static void assert_about(double value, double expected)
{
	if (fabs(value - expected) > 0.01)
		fail_msg("%g, not %g", value, expected);
}

/* Well-known ratios: 21 at most, and the grey that is just enough on white. */
static void test_formula(void **state)
{
	(void)state;
	assert_about(contrast(0x000000, 0xffffff), 21);
	assert_about(contrast(0x777777, 0x777777), 1);
	assert_about(contrast(0x767676, 0xffffff), 4.54);
	assert_about(contrast(0xff0000, 0xffffff), 4.00);
}

/* Places of the table as it is published with xterm (256colres.pl). */
static void test_palette(void **state)
{
	(void)state;
	assert_int_equal(colour_rgb(0), 0x000000);
	assert_int_equal(colour_rgb(3), 0xcdcd00);
	assert_int_equal(colour_rgb(7), 0xe5e5e5);
	assert_int_equal(colour_rgb(15), 0xffffff);
	assert_int_equal(colour_rgb(16), 0x000000);
	assert_int_equal(colour_rgb(21), 0x0000ff);
	assert_int_equal(colour_rgb(46), 0x00ff00);
	assert_int_equal(colour_rgb(67), 0x5f87af);
	assert_int_equal(colour_rgb(196), 0xff0000);
	assert_int_equal(colour_rgb(220), 0xffd700);
	assert_int_equal(colour_rgb(231), 0xffffff);
	assert_int_equal(colour_rgb(232), 0x080808);
	assert_int_equal(colour_rgb(244), 0x808080);
	assert_int_equal(colour_rgb(255), 0xeeeeee);
}

/* What is read in play has 7:1 (1.4.6), all other text 4.5:1 (1.4.3). */
static double goal(unsigned attributes)
{
	bool quiet = attributes & (ATTRIBUTE_FAINT | ATTRIBUTE_CARE) &&
	    !(attributes &
		(ATTRIBUTE_STRONG | ATTRIBUTE_HAND | ATTRIBUTE_REVERSE));

	return quiet ? 4.5 : 7;
}

static void test_many_colours(void **state)
{
	(void)state;
	for (unsigned a = 0; a < ALL; a++) {
		struct style s = style_of(PALETTE_256, a);
		double c;

		/* Its own background: the terminal's may be anything. */
		assert_in_range(s.foreground, 16, 255);
		assert_in_range(s.background, 16, 255);
		assert_false(s.reverse);
		c = contrast(
		    colour_rgb(s.foreground), colour_rgb(s.background));
		if (c < goal(a))
			fail_msg("attributes %u: %g, wanted %g", a, c, goal(a));
	}
}

/*
 * The eight colours are not the same everywhere.  xterm's, and those of PC
 * text screens (the IBM CGA and VGA default palette; from memory), where bold
 * text is the brighter twin.
 */
static void test_eight_colours(void **state)
{
	static const uint32_t pc[] = { 0x000000, 0xaa0000, 0x00aa00, 0xaa5500,
		0x0000aa, 0xaa00aa, 0x00aaaa, 0xaaaaaa };
	static const uint32_t pc_bold[] = { 0x555555, 0xff5555, 0x55ff55,
		0xffff55, 0x5555ff, 0xff55ff, 0x55ffff, 0xffffff };

	(void)state;
	for (unsigned a = 0; a < ALL; a++) {
		struct style s = style_of(PALETTE_8, a);

		assert_in_range(s.foreground, 0, 7);
		assert_in_range(s.background, 0, 7);
		assert_false(s.reverse);
		/* Bold black is grey or black, as it happens. */
		assert_false(s.bold && s.foreground == 0);
		const uint32_t *front = s.bold ? pc_bold : pc;
		double x = contrast(
		    colour_rgb(s.foreground), colour_rgb(s.background));
		double p = contrast(front[s.foreground], pc[s.background]);

		if (x < goal(a) || p < goal(a))
			fail_msg(
			    "attributes %u: %g on xterm, %g on a PC", a, x, p);
	}
}

/*
 * Without colours nothing is chosen for the terminal, and all is told apart;
 * the hand, the bow and the marks are told apart by their shapes, and blocks
 * must not be reversed.
 */
static void test_no_colours(void **state)
{
	static const unsigned kinds[] = { ATTRIBUTE_PLAIN, ATTRIBUTE_STRONG,
		ATTRIBUTE_REVERSE, ATTRIBUTE_CARE };
	int looks[4];

	(void)state;
	for (unsigned a = 0; a < ALL; a++) {
		struct style s = style_of(PALETTE_NONE, a);

		assert_int_equal(s.foreground, -1);
		assert_int_equal(s.background, -1);
		if (a & ATTRIBUTE_CARE)
			assert_true(s.underline);
		assert_int_equal(s.reverse,
		    (a & ATTRIBUTE_REVERSE) && !(a & ATTRIBUTE_HAND));
		if (a & ATTRIBUTE_STRONG)
			assert_true(s.bold);
	}
	for (int i = 0; i < 4; i++) {
		struct style s = style_of(PALETTE_NONE, kinds[i]);

		looks[i] = s.bold + 2 * s.reverse + 4 * s.underline;
		for (int j = 0; j < i; j++)
			assert_int_not_equal(looks[i], looks[j]);
	}
}

/* With colours every meaning is told apart from every other. */
static void test_told_apart(void **state)
{
	static const unsigned kinds[] = { ATTRIBUTE_PLAIN, ATTRIBUTE_STRONG,
		ATTRIBUTE_FAINT, ATTRIBUTE_REVERSE, ATTRIBUTE_HAND,
		ATTRIBUTE_CARE, ATTRIBUTE_CLEAN };

	(void)state;
	for (int p = PALETTE_8; p <= PALETTE_256; p++)
		for (int i = 0; i < 7; i++)
			for (int j = 0; j < i; j++) {
				struct style a = style_of(
				    (enum palette)p, kinds[i]);
				struct style b = style_of(
				    (enum palette)p, kinds[j]);

				assert_true(a.foreground != b.foreground ||
				    a.background != b.background ||
				    a.bold != b.bold);
			}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_formula),
		cmocka_unit_test(test_palette),
		cmocka_unit_test(test_many_colours),
		cmocka_unit_test(test_eight_colours),
		cmocka_unit_test(test_no_colours),
		cmocka_unit_test(test_told_apart),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
