/*
 * test_sound_choose.c - the card that is meant by a part of its name
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <string.h>

#include <cmocka.h>

#include "evenhand/world/sound_list.h"

static const struct sound_list cards = {
	.count = 5,
	.card = {
		{ .name = "Hall Of Steam", .api = "ALSA" },
		{ .name = "USB Audio: Front", .api = "ALSA" },
		{ .name = "default", .api = "ALSA", .is_default = true,
		    .is_default_there = true },
		{ .name = "USB", .api = "JACK Audio Connection Kit" },
		{ .name = "system", .api = "JACK Audio Connection Kit",
		    .is_default_there = true },
	},
};

static void test_by_name(void **state)
{
	static const struct {
		const char *name, *api;
		int card; /* -1: none */
		bool other;
	} table[] = {
		/* Nothing is wished: the computer's own choice. */
		{ "", "", 2, false },
		/* A part, in any letters; the first that has it. */
		{ "steam", "", 0, false },
		{ "FRONT", "", 1, false },
		{ "a", "", 0, false },
		/* A whole name before a part of an earlier one. */
		{ "usb", "", 3, false },
		{ "usb", "alsa", 1, false },
		/* No name: what is usual there. */
		{ "", "jack", 4, false },
		{ "", "alsa", 2, false },
		/* It is not there: the usual one, and that is told. */
		{ "piano", "", 2, true },
		{ "steam", "jack", 2, true },
		{ "", "nothing", 2, true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
		struct sound_wish w = { .level = 1 };
		bool other = !table[i].other;

		memcpy(w.name, table[i].name, strlen(table[i].name));
		memcpy(w.api, table[i].api, strlen(table[i].api));
		assert_ptr_equal(sound_choose(&cards, &w, &other),
		    &cards.card[table[i].card]);
		assert_int_equal(other, table[i].other);
	}
}

static void test_none_usual(void **state)
{
	struct sound_list few = { .count = 1,
		.card = { { .name = "horn", .api = "ALSA" } } };
	struct sound_wish w = { .name = "" };
	bool other = true;

	(void)state;
	assert_null(sound_choose(&few, &w, &other));
	assert_false(other);
	memcpy(w.name, "piano", 5);
	assert_null(sound_choose(&few, &w, &other));
	assert_false(other);
	memcpy(w.name, "horn", 5);
	assert_ptr_equal(sound_choose(&few, &w, &other), &few.card[0]);
	few.count = 0;
	assert_null(sound_choose(&few, &w, &other));
}

static void test_wireless(void **state)
{
	(void)state;
	assert_true(sound_wireless("Headphones (Bluetooth)"));
	assert_true(sound_wireless("bluez_output.00_11"));
	assert_true(sound_wireless("bluealsa"));
	assert_true(sound_wireless("WIRELESS Speaker"));
	assert_false(sound_wireless("default"));
	assert_false(sound_wireless("USB Audio: Front"));
	assert_false(sound_wireless("Blue Horn"));
	assert_false(sound_wireless(""));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_by_name),
		cmocka_unit_test(test_none_usual),
		cmocka_unit_test(test_wireless),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
