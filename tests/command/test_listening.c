/*
 * test_listening.c - what is said of a microphone beside the practice
 *
 * A device that says what became of its microphone, and hears silence.
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

#include "../../src/command/practise.h"
#include "../../src/world/device_parts.h"

static struct practice p;
static char folder[] = "/tmp/evenhand-listening-XXXXXX";

static enum microphone_state microphone;

static void listen(struct device *d, const struct sound_wish *wish)
{
	(void)d;
	(void)wish;
	microphone = MICROPHONE_OPENING;
}

static enum microphone_state state_of(const struct device *d)
{
	(void)d;
	return microphone;
}

/* Samples that are all the same, as many as are left. */
static size_t left;

static struct heard_samples hear(struct device *d, float *out, size_t max)
{
	struct heard_samples h = { .rate = 48000, .frames_each = 1 };

	(void)d;
	h.count = left < max ? left : max;
	for (size_t i = 0; i < h.count; i++)
		out[i] = 0;
	left -= h.count;
	return h;
}

static void correct(struct device *d, const struct latencies *known)
{
	(void)d;
	(void)known;
}

static const struct device_kind kind = { .listen = listen,
	.microphone = state_of,
	.hear = hear,
	.correct = correct };
static struct device device = { &kind, true };

/* The loop looks, and says what is owed when it comes by again. */
static void look(enum microphone_state state)
{
	struct listened heard;
	int number;

	microphone = state;
	for (int i = 0; i < 2; i++)
		assert_false(listen_look(&p, &number, &heard));
}

/* How often this was said since the last time; all is taken as read then. */
static int said(enum message_id id)
{
	struct view *v = &p.screen.view;
	int found = 0;

	for (int i = 0; i < v->said; i++)
		found += v->news[i].id == id;
	return found;
}

static void read_all(void)
{
	p.screen.view.said = 0;
}

static int begin(void **state)
{
	static char any;

	(void)state;
	memset(&p, 0, sizeof p);
	left = 0;
	strcpy(folder + sizeof folder - 7, "XXXXXX");
	if (!mkdtemp(folder) || setenv("XDG_STATE_HOME", folder, 1) != 0)
		return -1;
	/* Nothing is drawn here and nothing sounds, so any will do. */
	p.screen.terminal = (struct terminal *)&any;
	p.keeper = (struct sound_keeper *)&any;
	p.device = &device;
	p.chosen.now.listen = true;
	p.listen.first = true;
	p.session.page = PAGE_TODAY;
	return 0;
}

static int end(void **state)
{
	char command[sizeof folder + 16];

	(void)state;
	listen_close(&p);
	sprintf(command, "rm -rf %s", folder);
	return system(command);
}

/* A microphone that goes again and again is missed once. */
static void test_lost_once(void **state)
{
	(void)state;
	listen_open(&p);
	look(MICROPHONE_OPENING);
	look(MICROPHONE_HEARS);
	assert_int_equal(said(M_COMMAND_LISTEN_FIRST), 1);
	assert_int_equal(said(M_COMMAND_LISTENS), 0);
	look(MICROPHONE_LOST);
	assert_int_equal(said(M_COMMAND_LISTEN_LOST), 1);
	read_all();
	for (int i = 0; i < 3; i++) {
		look(MICROPHONE_HEARS);
		look(MICROPHONE_LOST);
	}
	assert_int_equal(p.screen.view.said, 0);
}

/* Who has no microphone is not told that one listens. */
static void test_first_missing(void **state)
{
	(void)state;
	listen_open(&p);
	p.session.page = PAGE_PLAY;
	look(MICROPHONE_MISSING);
	assert_int_equal(p.screen.view.said, 0);
	p.session.page = PAGE_SILENT;
	look(MICROPHONE_MISSING);
	assert_int_equal(p.screen.view.said, 1);
	assert_int_equal(said(M_COMMAND_LISTEN_NONE), 1);
	read_all();
	look(MICROPHONE_MISSING);
	assert_int_equal(p.screen.view.said, 0);
}

/* No room for what hears is no lack of a microphone. */
static void test_no_room(void **state)
{
	(void)state;
	listen_open(&p);
	look(MICROPHONE_NO_ROOM);
	assert_int_equal(p.screen.view.said, 1);
	assert_int_equal(said(M_COMMAND_LISTEN_ROOM), 1);
}

/* What becomes of what is heard is said before any of it is, even in play. */
static void test_first_in_play(void **state)
{
	(void)state;
	listen_open(&p);
	p.session.page = PAGE_PLAY;
	look(MICROPHONE_MISSING);
	look(MICROPHONE_HEARS);
	assert_int_equal(p.screen.view.said, 1);
	assert_int_equal(said(M_COMMAND_LISTEN_FIRST), 1);
	read_all();
	p.session.page = PAGE_SILENT;
	look(MICROPHONE_HEARS);
	assert_int_equal(p.screen.view.said, 0);
}

/* While something sounds only what holds by then is kept to be said. */
static void test_newest_state(void **state)
{
	(void)state;
	p.listen.first = false;
	listen_open(&p);
	p.session.page = PAGE_PLAY;
	look(MICROPHONE_MISSING);
	look(MICROPHONE_HEARS);
	p.session.page = PAGE_SILENT;
	look(MICROPHONE_HEARS);
	assert_int_equal(p.screen.view.said, 1);
	assert_int_equal(said(M_COMMAND_LISTENS), 1);
}

/* A microphone that is dead is told of once, when nothing sounds. */
static void test_dead(void **state)
{
	(void)state;
	p.listen.first = false;
	listen_open(&p);
	p.session.page = PAGE_PLAY;
	left = 3 * (size_t)48000;
	look(MICROPHONE_HEARS);
	/* With each turn that is over it is judged. */
	listener_end(p.listen.listener, 1, 1);
	while (!listener_idle(p.listen.listener))
		usleep(1000);
	look(MICROPHONE_HEARS);
	assert_int_equal(p.screen.view.said, 0);
	p.session.page = PAGE_SILENT;
	look(MICROPHONE_HEARS);
	assert_int_equal(said(M_COMMAND_LISTEN_DEAD), 1);
	read_all();
	left = 48000;
	look(MICROPHONE_HEARS);
	assert_int_equal(p.screen.view.said, 0);
}

/* Where nothing sounds no microphone is heard, and that is said. */
static void test_no_device(void **state)
{
	(void)state;
	p.keeper = NULL;
	listen_open(&p);
	look(MICROPHONE_UNWISHED);
	assert_int_equal(p.screen.view.said, 1);
	assert_int_equal(said(M_COMMAND_LISTEN_DEVICE), 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(test_lost_once, begin, end),
		cmocka_unit_test_setup_teardown(test_first_missing, begin, end),
		cmocka_unit_test_setup_teardown(test_no_room, begin, end),
		cmocka_unit_test_setup_teardown(test_first_in_play, begin, end),
		cmocka_unit_test_setup_teardown(test_newest_state, begin, end),
		cmocka_unit_test_setup_teardown(test_dead, begin, end),
		cmocka_unit_test_setup_teardown(test_no_device, begin, end),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
