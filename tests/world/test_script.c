/*
 * test_script.c - keys from a file: what is read, when it is due, what is wrong
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "evenhand/world/script.h"

static char path[] = "/tmp/evenhand-script-XXXXXX";
static struct faults faults;
static struct session session; /* stands where a test puts it */

static struct script *script_of_bytes(const char *bytes, size_t length)
{
	FILE *f;

	strcpy(path + sizeof path - 7, "XXXXXX");
	f = fdopen(mkstemp(path), "w");
	assert_non_null(f);
	assert_int_equal(fwrite(bytes, 1, length, f), length);
	fclose(f);
	memset(&faults, 0, sizeof faults);
	struct script *k = script_open(path, &faults);
	unlink(path);
	return k;
}

static struct script *script_of(const char *text)
{
	return script_of_bytes(text, strlen(text));
}

static void stand(enum page page, int64_t first_sound, int64_t now)
{
	memset(&session, 0, sizeof session);
	session.rate = 48000;
	session.page = page;
	session.first_sound = first_sound;
	session.now = now;
}

/* Takes the next key, which must be due at this frame. */
static struct input take(struct script *k, int64_t frame)
{
	assert_int_equal(script_due(k, &session), frame);
	struct input in = script_take(k, &session, frame);
	assert_int_equal(in.frame, frame);
	session.now = frame;
	return in;
}

static void test_times(void **state)
{
	struct script *k = script_of("# a note\n"
				     "\n"
				     "0:00 c\n"
				     "0:24.5 s\r\n"
				     "\t2:36.125   back \n"
				     "12:00.02 q");

	(void)state;
	assert_non_null(k);
	stand(PAGE_PLAY, 1000, 500);
	assert_int_equal(take(k, 1000).key, KEY_CLEAN);
	assert_int_equal(take(k, 1000 + 24500 * 48).key, KEY_SHAKY);
	assert_int_equal(take(k, 1000 + 156125 * 48).key, KEY_BACK);
	assert_int_equal(take(k, 1000 + 720020 * 48).key, KEY_LEAVE);
	/* Over: nothing more is due until a key is waited for. */
	assert_true(script_due(k, &session) == INT64_MAX);
	session.page = PAGE_END;
	assert_int_equal(take(k, session.now + 300 * 48).kind, INPUT_END);
	script_close(k);
}

/* A key never comes before the session stands there. */
static void test_late_time(void **state)
{
	struct script *k = script_of("0:01 c\n0:02 c\n");

	(void)state;
	stand(PAGE_PLAY, 0, 90000);
	assert_int_equal(take(k, 90000).key, KEY_CLEAN);
	assert_int_equal(take(k, 96000).key, KEY_CLEAN);
	script_close(k);
}

static void test_every_key(void **state)
{
	static const struct {
		const char *word;
		enum key key;
		int digit;
	} cases[] = {
		{ "forward", KEY_FORWARD, 0 },
		{ "back", KEY_BACK, 0 },
		{ "space", KEY_SILENCE, 0 },
		{ "silence", KEY_SILENCE, 0 },
		{ "c", KEY_CLEAN, 0 },
		{ "clean", KEY_CLEAN, 0 },
		{ "s", KEY_SHAKY, 0 },
		{ "shaky", KEY_SHAKY, 0 },
		{ "h", KEY_HURT, 0 },
		{ "hurt", KEY_HURT, 0 },
		{ "q", KEY_LEAVE, 0 },
		{ "leave", KEY_LEAVE, 0 },
		{ "?", KEY_HELP, 0 },
		{ "help", KEY_HELP, 0 },
		{ "0", KEY_DIGIT, 0 },
		{ "4", KEY_DIGIT, 4 },
		{ "9", KEY_DIGIT, 9 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char text[40];

		snprintf(text, sizeof text, "0:10 %s\n", cases[i].word);
		struct script *k = script_of(text);
		assert_non_null(k);
		stand(PAGE_PLAY, 0, 0);
		struct input in = take(k, 480000);
		assert_int_equal(in.kind, INPUT_KEY);
		assert_int_equal(in.key, cases[i].key);
		assert_int_equal(in.digit, cases[i].digit);
		script_close(k);
	}
}

static void test_as_soon_as_waited_for(void **state)
{
	struct script *k = script_of("- forward\n- 3\n0:05 c\n- words How?\n");

	(void)state;
	stand(PAGE_SORE, -1, 0);
	assert_int_equal(take(k, 14400).key, KEY_FORWARD);
	assert_int_equal(take(k, 28800).digit, 3);
	stand(PAGE_PLAY, 50000, 50000);
	assert_int_equal(take(k, 50000 + 240000).key, KEY_CLEAN);
	assert_true(script_due(k, &session) == INT64_MAX);
	/* Long after the key before: at once. */
	stand(PAGE_QUESTION, 50000, 900000);
	struct input in = take(k, 900000);
	assert_int_equal(in.kind, INPUT_WORDS);
	assert_string_equal(in.words, "How?");
	assert_int_equal(take(k, 900000 + 14400).kind, INPUT_END);
	script_close(k);
}

/* Pages before the first sound are answered with forward, but not for ever. */
static void test_answers_pages(void **state)
{
	struct script *k = script_of("0:05 c\n");
	int answers = 0;

	(void)state;
	stand(PAGE_SORE, -1, 0);
	assert_int_equal(take(k, 14400).key, KEY_FORWARD);
	session.page = PAGE_TODAY;
	assert_int_equal(take(k, 28800).key, KEY_FORWARD);
	stand(PAGE_PLAY, 40000, 30000);
	assert_int_equal(take(k, 280000).key, KEY_CLEAN);
	script_close(k);

	k = script_of("0:05 c\n");
	stand(PAGE_SORE, -1, 0);
	while (script_take(k, &session, session.now).kind == INPUT_KEY)
		assert_true(answers++ < 100);
	script_close(k);
}

static void wrong(const char *text, int line, int column, const char *sentence)
{
	char said[400];
	struct script *k = script_of(text);

	assert_null(k);
	assert_true(faults.count > 0);
	message_text(&faults.at[0].message, said, sizeof said);
	if (faults.at[0].line != line || faults.at[0].column != column ||
	    strncmp(said, sentence, strlen(sentence)) != 0)
		fail_msg("\"%s\": %d:%d: %s", text, faults.at[0].line,
		    faults.at[0].column, said);
	assert_string_equal(faults.at[0].path, path);
}

static void test_faults(void **state)
{
	(void)state;
	wrong("0:75 c\n", 1, 1, "\"0:75\" is no time");
	wrong("- forward\n75 c\n", 2, 1, "\"75\" is no time");
	wrong("0:5 c\n", 1, 1, "\"0:5\" is no time");
	wrong("0:05. c\n", 1, 1, "\"0:05.\" is no time");
	wrong("0:05.1234 c\n", 1, 1, "\"0:05.1234\" is no time");
	wrong("-0:05 c\n", 1, 1, "\"-0:05\" is no time");
	wrong("99999999999999999999:05 c\n", 1, 1, "\"9999");
	wrong("c\n", 1, 1, "\"c\" is no time");
	wrong("\n\n  0:10 c\n  0:09.9 c\n", 4, 3,
	    "this key is at 0:09.9 and the one before it at 0:10");
	wrong("0:10\n", 1, 5, "a key is missing behind 0:10");
	wrong("-\n", 1, 2, "a key is missing behind -");
	wrong("0:10 forwad\n", 1, 6,
	    "I do not know the key \"forwad\". Did you mean forward?");
	wrong("0:10 x\n", 1, 6, "I do not know the key \"x\". There are");
	wrong("0:10 10\n", 1, 6, "I do not know the key \"10\". There are");
	wrong("0:10 c 0:12 c\n", 1, 8, "\"0:12 c\" is too much here");
	wrong("- words\n", 1, 8, "the words are missing");
	wrong("\xff\xfe c\n", 0, 0, "this file is no plain text");
}

/* All faults of a file are told, and an escape code stays in its file. */
static void test_all_faults(void **state)
{
	char said[400];

	(void)state;
	assert_null(script_of("0:75 x\n0:10 c\n0:09 cleen\n\033[2J c\n"));
	assert_int_equal(faults.count, 5);
	fault_text(&faults.at[4], said, sizeof said);
	assert_null(strchr(said, '\033'));
}

static void test_no_text(void **state)
{
	static const char zero[] = "0:10 c\0 0:20 c\n";

	(void)state;
	assert_null(script_of_bytes(zero, sizeof zero - 1));
	memset(&faults, 0, sizeof faults);
	assert_null(script_open("/nowhere/at/all", &faults));
	assert_int_equal(faults.count, 1);
	assert_int_equal(faults.at[0].line, 0);
	struct script *k = script_of("");
	assert_non_null(k);
	stand(PAGE_SORE, -1, 0);
	assert_int_equal(take(k, 14400).kind, INPUT_END);
	script_close(k);
}

static void test_long_words(void **state)
{
	char text[400] = "- words ";

	(void)state;
	memset(text + 8, 'w', SESSION_WORDS_MAX - 1);
	struct script *k = script_of(text);
	assert_non_null(k);
	script_close(k);
	text[8 + SESSION_WORDS_MAX - 1] = 'w';
	assert_null(script_of(text));
}

/* Any bytes are a script or faults. */
static void test_any_bytes(void **state)
{
	static const char *const pieces[] = { "0:10", "-", " ", "\n", "c",
		"words", "#", ":", ".", "\t", "\r\n", "9", "forward", "\xc3",
		"\0" };
	unsigned seed = 20260302;

	(void)state;
	printf("seed %u\n", seed);
	srand(seed);
	for (int round = 0; round < 2000; round++) {
		char bytes[400];
		size_t length = 0;

		for (int n = rand() % 40; n > 0; n--) {
			const char *piece = pieces[rand() % 15];
			size_t more = *piece ? strlen(piece) : 1;

			memcpy(bytes + length, piece, more);
			length += more;
		}
		struct script *k = script_of_bytes(bytes, length);
		assert_true((k != NULL) == (faults.count == 0));
		script_close(k);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_times),
		cmocka_unit_test(test_late_time),
		cmocka_unit_test(test_every_key),
		cmocka_unit_test(test_as_soon_as_waited_for),
		cmocka_unit_test(test_answers_pages),
		cmocka_unit_test(test_faults),
		cmocka_unit_test(test_all_faults),
		cmocka_unit_test(test_no_text),
		cmocka_unit_test(test_long_words),
		cmocka_unit_test(test_any_bytes),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
