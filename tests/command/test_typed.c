/*
 * test_typed.c - a question that is being typed is a sign of life, and kept
 *
 * A real terminal, and a device whose time runs much faster than the typing:
 * the letters take nearly four minutes of it, and three minutes without a key
 * end a practice.
 */
#define _XOPEN_SOURCE 700

#include "../world/seat.h"

#include <stdio.h>
#include <string.h>

#include "../../src/command/practise.h"
#include "../../src/world/device_parts.h"

enum {
	RATE = 48000,
	LOOK_S = 8,	/* of the device, from one look to the next; */
	LETTER_MS = 200 /* a look is every 50 ms */
};

static struct practice p;
static int result[2];

/* --- a device that is in a hurry --- */

static int64_t reached;

static void look(struct device *d)
{
	(void)d;
	reached += LOOK_S * RATE;
}

static int64_t frame(const struct device *d)
{
	(void)d;
	return reached;
}

static int64_t lost_ms(const struct device *d)
{
	(void)d;
	return 0;
}

static int dropouts(const struct device *d)
{
	(void)d;
	return 0;
}

static enum device_state state(const struct device *d)
{
	(void)d;
	return DEVICE_UNHEARD;
}

static const struct device_kind kind = { .look = look,
	.frame = frame,
	.heard = frame,
	.lost_ms = lost_ms,
	.dropouts = dropouts,
	.state = state };
static struct device device = { &kind, true };

/* --- the child: the last page, until it is over --- */

static void say_result(void)
{
	char said[SESSION_WORDS_MAX + 40] = "nothing";

	for (int i = 0; i < p.effects.count; i++)
		if (p.effects.at[i].kind == EFFECT_NOTE)
			snprintf(said, sizeof said, "kept: %s",
			    p.effects.at[i].note.words);
	if (write(result[1], said, strlen(said)) < 0)
		_exit(1);
}

static void ask(struct keys *k)
{
	char folder[] = "/tmp/evenhand-typed-XXXXXX", path[64], command[64];
	struct fault f;

	if (!mkdtemp(folder))
		_exit(1);
	snprintf(path, sizeof path, "%s/journal.db", folder);
	p.journal = journal_open(path, &f);
	p.keys = k;
	p.device = &device;
	p.first = (struct first) { .session = &p.session, .part = FIRST_OVER };
	p.session.rate = RATE;
	p.session.page = PAGE_QUESTION;
	p.session.first_sound = 0;
	p.session.last_press = -RATE;
	practice_run(&p);
	say_result();
	keys_close(k);
	journal_close(p.journal);
	snprintf(command, sizeof command, "rm -rf %s", folder);
	_exit(system(command));
}

/* --- */

static struct seat seat;

static void type_slowly(const char *letters)
{
	assert_int_equal(pipe(result), 0);
	seat_open(&seat, ask);
	close(result[1]);
	for (; *letters; letters++) {
		sleep_ms(LETTER_MS);
		assert_int_equal(write(seat.master, letters, 1), 1);
	}
}

static void comes_to(const char *expected)
{
	char said[SESSION_WORDS_MAX + 40] = "";
	int status;

	assert_true(read(result[0], said, sizeof said - 1) > 0);
	assert_string_equal(said, expected);
	waitpid(seat.child, &status, 0);
	close(result[0]);
	close(seat.master);
}

/* All of it, and then no more. */
static void test_slow(void **state)
{
	(void)state;
	type_slowly("why so?");
	comes_to("kept: why so?");
}

static void test_nothing(void **state)
{
	(void)state;
	type_slowly("");
	comes_to("nothing");
}

/* The terminal is closed over the words; Ctrl-C takes them back. */
static void test_signals(void **state)
{
	(void)state;
	type_slowly("why");
	sleep_ms(LETTER_MS);
	kill(seat.child, SIGHUP);
	comes_to("kept: why");
	type_slowly("why\003");
	comes_to("nothing");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_slow),
		cmocka_unit_test(test_nothing),
		cmocka_unit_test(test_signals),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
