/*
 * test_equal.c - rule F1: shares and order of turns from a biased past
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "evenhand/coach/equal.h"

static void expect_order(
    int turns, int units, const int *ledger, const int *share, const char *want)
{
	int order[EQUAL_TURNS_MAX];
	char got[EQUAL_TURNS_MAX + 1] = "";

	equal_order(turns, units, ledger, share, order);
	for (int i = 0; i < turns; i++)
		got[i] = (char)('1' + order[i]);
	assert_string_equal(got, want);
}

static void expect_share(int turns, const int *ledger, const int *want)
{
	int share[4];

	equal_share(turns, 4, ledger, share);
	for (int u = 0; u < 4; u++)
		assert_int_equal(share[u], want[u]);
}

/* A student whose first finger did most of the work so far. */
static void test_biased_past(void **state)
{
	const int ledger[4] = { 58, 27, 10, 5 };
	const int want[4] = { 2, 2, 4, 4 };

	(void)state;
	expect_share(12, ledger, want);
	expect_order(12, 4, ledger, want, "432143432143");
}

static double weakest(const int *had)
{
	int least = had[0], all = 0;

	for (int u = 0; u < 4; u++) {
		all += had[u];
		least = had[u] < least ? had[u] : least;
	}
	return (double)least / all;
}

/* Ten sessions bring the weakest finger to a fifth of all turns. */
static void test_ten_sessions(void **state)
{
	int had[4] = { 58, 27, 10, 5 }, share[4];
	const int want[4] = { 78, 49, 48, 45 };

	(void)state;
	for (int session = 1; session <= 10; session++) {
		assert_true(weakest(had) < 0.20);
		equal_share(12, 4, had, share);
		for (int u = 0; u < 4; u++)
			had[u] += share[u];
	}
	assert_true(weakest(had) >= 0.20);
	for (int u = 0; u < 4; u++)
		assert_int_equal(had[u], want[u]);
}

/* The same past without making up: the even share takes 25 sessions. */
static void test_evenly(void **state)
{
	const int no_past[4] = { 0 };
	int had[4] = { 58, 27, 10, 5 }, share[4], sessions = 0;

	(void)state;
	while (weakest(had) < 0.20) {
		equal_share(12, 4, no_past, share);
		for (int u = 0; u < 4; u++)
			had[u] += share[u];
		sessions++;
	}
	assert_int_equal(sessions, 25);
}

static void test_no_past(void **state)
{
	const int ledger[4] = { 0 }, want[4] = { 3, 3, 3, 3 };

	(void)state;
	expect_share(12, ledger, want);
	expect_order(12, 4, ledger, want, "123412341234");
}

static void test_cut_off(void **state)
{
	const int ledger[4] = { 2, 2, 1, 1 }, want[4] = { 3, 3, 3, 3 };

	(void)state;
	expect_share(12, ledger, want);
	expect_order(12, 4, ledger, want, "341234123412");
}

/* Two pairs of strings: equal and in turns, whatever the past. */
static void test_two(void **state)
{
	const int ledger[2] = { 40, 1 };
	int share[2];

	(void)state;
	equal_share(10, 2, ledger, share);
	assert_int_equal(share[0], 5);
	assert_int_equal(share[1], 5);
	expect_order(10, 2, ledger, share, "2121212121");
}

static void test_one(void **state)
{
	const int ledger[1] = { 7 };
	int share[1];

	(void)state;
	equal_share(3, 1, ledger, share);
	assert_int_equal(share[0], 3);
	expect_order(3, 1, ledger, share, "111");
}

/* A ledger of any kind, small or large, all alike or all apart. */
static void random_ledger(int units, int *ledger)
{
	const int reach[] = { 0, 1, 3, 20, 1000, 1000000 };
	int most = reach[seeded(0, 5)];

	for (int u = 0; u < units; u++)
		ledger[u] = seeded(-most, most);
}

/* Whole, within bounds, and no single turn would lie better elsewhere. */
static void check_share(
    int rounds, int units, const int *ledger, const int *share)
{
	int all = 0, least = (rounds + 1) / 2, most = rounds + rounds / 2;

	for (int u = 0; u < units; u++) {
		all += share[u];
		assert_true(2 * share[u] >= rounds);
		assert_true(2 * share[u] <= 3 * rounds);
	}
	assert_int_equal(all, rounds * units);
	for (int a = 0; a < units && units > 2; a++)
		for (int b = 0; b < units; b++)
			if (share[a] > least && share[b] < most)
				assert_true(ledger[a] + share[a] <=
				    ledger[b] + share[b] + 1);
}

static void check_order(
    int turns, int units, const int *share, const int *order)
{
	int had[UNITS_MAX] = { 0 };

	for (int i = 0; i < turns; i++) {
		assert_in_range(order[i], 0, units - 1);
		if (i < units)
			assert_int_equal(had[order[i]], 0);
		if (i > 0 && units > 1)
			assert_int_not_equal(order[i], order[i - 1]);
		had[order[i]]++;
	}
	for (int u = 0; u < units; u++)
		assert_int_equal(had[u], share[u]);
}

static void test_random(void **state)
{
	(void)state;
	seeded_begin("test_equal");
	for (int i = 0; i < 20000; i++) {
		int units = seeded(1, UNITS_MAX);
		int rounds = seeded(0, EQUAL_TURNS_MAX / units);
		int ledger[UNITS_MAX], share[UNITS_MAX];
		int order[EQUAL_TURNS_MAX];

		if (seeded(0, 3))
			rounds = seeded(0, 8);
		random_ledger(units, ledger);
		equal_share(rounds * units, units, ledger, share);
		check_share(rounds, units, ledger, share);
		equal_order(rounds * units, units, ledger, share, order);
		check_order(rounds * units, units, share, order);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_biased_past),
		cmocka_unit_test(test_ten_sessions),
		cmocka_unit_test(test_evenly),
		cmocka_unit_test(test_no_past),
		cmocka_unit_test(test_cut_off),
		cmocka_unit_test(test_two),
		cmocka_unit_test(test_one),
		cmocka_unit_test(test_random),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
