/*
 * test_least.c - least squares and spread against published numbers
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>

#include "../../src/listen/least.h"
#include "../../src/listen/series.h"

static void near(double got, double want, double within)
{
	if (!(fabs(got - want) <= within))
		fail_msg("%.15g is not within %g of %.15g", got, within, want);
}

/*
 * NIST StRD, Norris (linear least squares, lower difficulty): 36 points, and
 * the certified line through them, itl.nist.gov/div898/strd/lls/data/Norris.
 */
static void test_norris(void **state)
{
	static const double x[] = { 0.2, 337.4, 118.2, 884.6, 10.1, 226.5,
		666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9,
		338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3,
		556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1,
		448.9, 0.5 };
	static const double y[] = { 0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5,
		998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
		448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6,
		339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2,
		0.2 };
	struct least l;
	double b[2];

	(void)state;
	least_begin(&l, 2);
	for (size_t i = 0; i < sizeof(x) / sizeof(*x); i++)
		least_add(&l, (const double[]) { 1, x[i] }, y[i]);
	assert_true(least_solve(&l, b));
	near(b[0], -0.262323073774029, 1e-10);
	near(b[1], 1.00211681802045, 1e-12);
}

/* Rows that are alike, or none at all, say nothing. */
static void test_nothing_told(void **state)
{
	struct least l;
	double b[2];

	(void)state;
	least_begin(&l, 2);
	assert_false(least_solve(&l, b));
	for (int i = 0; i < 5; i++)
		least_add(&l, (const double[]) { 1, 2 }, i);
	assert_false(least_solve(&l, b));
}

/*
 * Coefficients of variation as printed in encyclopaedias (from memory), with n
 * below the line: 0.0816 and 1.104.
 */
static void test_spread(void **state)
{
	const double even[] = { 90, 100, 110 };
	const double wild[] = { 1, 5, 6, 8, 10, 40, 65, 88 };
	double mixed[] = { 9, 1, 5, 7, 3 };

	(void)state;
	near(series_sd(even, 3) / series_mean(even, 3), 0.0816, 5e-5);
	near(series_sd(wild, 8) / series_mean(wild, 8), 1.104, 5e-4);
	near(series_median(mixed, 5), 5, 0);
	near(series_share(mixed, 5, 0), 1, 0);
	near(series_share(mixed, 5, 1), 9, 0);
	near(series_share(mixed, 5, 0.625), 6, 1e-12);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_norris),
		cmocka_unit_test(test_nothing_told),
		cmocka_unit_test(test_spread),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
