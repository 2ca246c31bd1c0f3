/*
 * test_languages.c - every language has every sentence, and each one fits
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "catalogue.h"

static const char *const languages[] = { "src/po/de.po" };

/* How many names of notes there are, 0 when one does not fit. */
static int notes_of(const char *names)
{
	int count = 0;

	for (const char *s = names; *s; s += *s == ' ') {
		size_t takes = strcspn(s, " ");

		if (takes == 0 || takes > TONGUE_NOTE_MAX)
			return 0;
		count++;
		s += takes;
	}
	return count;
}

static void test_every_language(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof(languages) / sizeof(*languages); i++) {
		struct catalogue *c = catalogue_read(languages[i]);
		int missing = 0;

		assert_non_null(c);
		assert_false(c->store.cut);
		for (int id = M_NONE + 1; id < M_COUNT; id++) {
			if (c->tongue.sentence[id])
				continue;
			print_error("%s says no %s\n", languages[i],
			    message_name((enum message_id)id));
			missing++;
		}
		if (*c->first)
			print_error(
			    "%s: %s is wrong\n", languages[i], c->first);
		assert_int_equal(c->others, 0);
		assert_int_equal(c->old, 0);
		assert_int_equal(c->again, 0);
		assert_int_equal(c->unfit, 0);
		assert_int_equal(missing, 0);
		assert_int_equal(notes_of(c->tongue.sentence[M_WORD_NOTES]),
		    notes_of(message_english(M_WORD_NOTES)));
		free(c);
	}
}

/* The check itself sees what it is there for. */
static void test_the_check_bites(void **state)
{
	static const char name[] = "M_COMMAND_USAGE";
	struct catalogue *c = calloc(1, sizeof(*c));
	struct catalogue_entry *e = calloc(1, sizeof(*e));

	(void)state;
	assert_non_null(c);
	assert_non_null(e);
	c->store = text_in(c->bytes, sizeof(c->bytes));
	memcpy(e->part[0], name, sizeof(name));
	e->now = 1;
	catalogue_words(e, "msgid \"Us\"\n");
	catalogue_words(e, "\"age:\"\n");
	e->now = 2;
	catalogue_words(e, "msgstr \"\\\"{0}\\\"\"\n");
	assert_string_equal(e->part[1], "Usage:");
	assert_string_equal(e->part[2], "\"{0}\"");
	catalogue_put(c, e);
	assert_int_equal(c->unfit, 1);
	memcpy(e->part[2], "Aufruf", sizeof("Aufruf"));
	e->fuzzy = true;
	catalogue_put(c, e);
	assert_int_equal(c->old, 1);
	e->fuzzy = false;
	catalogue_put(c, e);
	assert_int_equal(c->again, 0);
	assert_string_equal(c->tongue.sentence[M_COMMAND_USAGE], "Aufruf");
	catalogue_put(c, e);
	assert_int_equal(c->again, 1);
	memcpy(e->part[1], "Use:", sizeof("Use:"));
	catalogue_put(c, e);
	assert_int_equal(c->old, 2);
	memcpy(e->part[0], "M_NOWHERE", sizeof("M_NOWHERE"));
	catalogue_put(c, e);
	assert_int_equal(c->others, 1);
	assert_string_equal(c->first, name);
	free(e);
	free(c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_language),
		cmocka_unit_test(test_the_check_bites),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
