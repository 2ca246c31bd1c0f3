/*
 * test_latency.c - chirps found in rooms that were made up, and delays kept
 *
 * What a microphone hears is made by rule: the engine's own chirp after a delay
 * that need not be whole samples, its echoes, noise, hum, clipping.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include <cmocka.h>

#include "../sound/render.h"
#include "evenhand/base/frames.h"
#include "evenhand/world/file.h"
#include "evenhand/world/latency.h"
#include "evenhand/world/latency_find.h"

enum { RATE_MOST = 192000, ROOM = RATE_MOST * 3 / 4, LENGTH_MOST = 11520 };

static float shape[LENGTH_MOST], heard[ROOM], match[ROOM];
static size_t length, count;

static double even(double low, double high)
{
	return low + (high - low) * ((double)(seeded_bits() >> 11) * 0x1p-53);
}

/* Gaussian noise of a level (Box and Muller, 1958). */
static double noise(double level)
{
	return level * sqrt(-2 * log(even(1e-12, 1))) *
	    cos(6.283185307179586 * even(0, 1));
}

static void begin_room(int rate)
{
	const struct passage chirp = {
		.bow_ms = 1000, .bows_each = 1, .turns = 1, .sweeps = true
	};
	struct engine *e = render_engine(rate, 500);

	length = (size_t)frames_of_ms(SWEEP_MS, rate);
	count = (size_t)frames_of_ms(730, rate);
	assert_true(render_play(e, &chirp, 0));
	render_to(e, shape, (int64_t)length, 512);
	free(e);
	memset(heard, 0, sizeof heard);
}

/* The chirp after some samples; between two of them it is bent straight. */
static void add(double delay, double gain)
{
	size_t at = (size_t)delay;
	double part = delay - (double)at;

	for (size_t i = 0; i <= length; i++) {
		double now = i < length ? (double)shape[i] : 0;
		double before = i > 0 ? (double)shape[i - 1] : 0;

		heard[at + i] += (float)(gain *
		    ((1 - part) * now + part * before));
	}
}

static void add_noise(double level)
{
	for (size_t i = 0; i < count; i++)
		heard[i] += (float)noise(level);
}

static struct sweep find(void)
{
	return sweep_find(heard, count, shape, length, match);
}

/* Any rate, any place, quiet: to a fiftieth of a ms. */
static void test_place(void **state)
{
	static const int rates[] = { 16000, 44100, 48000, 96000 };

	(void)state;
	seeded_begin("place");
	for (int i = 0; i < 12; i++) {
		int rate = rates[i % 4];
		double at = even(0.01, 0.64) * rate;
		struct sweep s;

		begin_room(rate);
		add(at, even(0.01, 1));
		add_noise(0.0003);
		s = find();
		assert_int_equal(s.way, SWEEP_HEARD);
		assert_true(fabs(s.at - at) < 0.02e-3 * rate);
	}
}

/* In noise as loud as it is, on a hum, with the lows cut off. */
static void test_noise(void **state)
{
	(void)state;
	seeded_begin("noise");
	for (int i = 0; i < 12; i++) {
		double at = even(5000, 30000), before = 0;
		struct sweep s;

		begin_room(48000);
		add(at, 0.1);
		for (size_t k = 0; k < count; k++)
			heard[k] += (float)(0.2 * sin((double)k * 0.00654));
		add_noise(0.02);
		for (size_t k = 0; k < count && i % 2 == 1; k++) {
			double x = (double)heard[k];

			heard[k] = (float)(x - 0.7 * before);
			before = x;
		}
		s = find();
		assert_int_equal(s.way, SWEEP_HEARD);
		assert_true(fabs(s.at - at) < 0.1e-3 * 48000);
	}
}

/* Off the walls it comes later, sometimes louder: the first one counts. */
static void test_echo(void **state)
{
	(void)state;
	seeded_begin("echo");
	for (int i = 0; i < 6; i++) {
		double at = even(5000, 12000);
		struct sweep s;

		begin_room(48000);
		add(at, 0.2);
		add(at + even(100, 2000), 0.3);
		for (int k = 0; k < 40; k++)
			add(at + even(200, 12000),
			    0.05 * (seeded(0, 1) ? 1 : -1));
		add_noise(0.0005);
		s = find();
		assert_int_equal(s.way, SWEEP_HEARD);
		assert_true(fabs(s.at - at) < 0.3e-3 * 48000);

		/* Far too loud an echo is not believed. */
		add(at + 1500, 0.3);
		s = find();
		assert_true(s.way == SWEEP_ECHO || fabs(s.at - at) < 15);
	}
	begin_room(48000);
	add(9000, 0.1);
	add(10000, 0.3);
	assert_int_equal(find().way, SWEEP_ECHO);
}

/* Nothing there, whatever else is. */
static void test_nothing(void **state)
{
	(void)state;
	seeded_begin("nothing");
	begin_room(48000);
	assert_int_equal(find().way, SWEEP_QUIET);
	for (int i = 0; i < 8; i++) {
		begin_room(48000);
		add_noise(0.003);
		assert_int_equal(find().way, SWEEP_QUIET);
		add_noise(0.1);
		assert_int_equal(find().way, SWEEP_NOISE);
	}
	begin_room(48000);
	add(6000, 8);
	for (size_t k = 0; k < count; k++)
		heard[k] = fmaxf(-1, fminf(1, heard[k]));
	assert_int_equal(find().way, SWEEP_CLIPPED);
}

/* --- What to think of them ---------------------------------------------------- */

static enum latency_trust judge(
    const char *ways, double us, double apart, struct latency_sum *sum)
{
	enum sweep_way way[SWEEPS];
	double at[SWEEPS];

	assert_int_equal(strlen(ways), SWEEPS);
	for (int i = 0; i < SWEEPS; i++) {
		way[i] = (enum sweep_way)(strchr("hqnceb", ways[i]) - "hqnceb");
		at[i] = us + (i % 2 == 0 ? apart : -apart);
	}
	return latency_judge(way, at, SWEEPS, sum);
}

static void test_judge(void **state)
{
	struct latency_sum sum;

	(void)state;
	assert_int_equal(judge("hhhhhhhhhhhh", 7000, 50, &sum), LATENCY_GOOD);
	assert_int_equal(sum.us, 7000);
	assert_int_equal(sum.spread_us, 50);
	assert_int_equal(judge("hhhhqqhhbhqh", 7000, 50, &sum), LATENCY_GOOD);
	assert_int_equal(judge("hhhhqqhhbqqh", 0, 0, &sum), LATENCY_QUIET);
	assert_int_equal(judge("nnnnqqhhbqnh", 0, 0, &sum), LATENCY_NOISE);
	assert_int_equal(judge("cccccccccchh", 0, 0, &sum), LATENCY_CLIPPED);
	assert_int_equal(judge("eehheeehhhhh", 0, 0, &sum), LATENCY_ECHO);
	assert_int_equal(judge("bbbbbbbbbbbb", 0, 0, &sum), LATENCY_BROKEN);
	assert_int_equal(judge("hhhhhhhhhhhh", 9000, 999, &sum), LATENCY_GOOD);
	assert_int_equal(
	    judge("hhhhhhhhhhhh", 9000, 1002, &sum), LATENCY_SPREAD);
	assert_int_equal(judge("hhhhhhhhhhhh", 501000, 10, &sum), LATENCY_ODD);
	assert_int_equal(judge("hhhhhhhhhhhh", -1100, 10, &sum), LATENCY_ODD);
	assert_int_equal(judge("hhhhhhhhhhhh", -900, 10, &sum), LATENCY_GOOD);
	assert_int_equal(sum.us, -900);
}

/* Three that went astray of twelve do not matter; four are too many. */
static void test_astray(void **state)
{
	enum sweep_way way[SWEEPS] = { SWEEP_HEARD };
	double us[SWEEPS];
	struct latency_sum sum;

	(void)state;
	for (int astray = 3; astray <= 4; astray++) {
		for (int i = 0; i < SWEEPS; i++)
			us[i] = 20000 + i + (i < astray ? 5333 : 0);
		assert_int_equal(latency_judge(way, us, SWEEPS, &sum),
		    astray == 3 ? LATENCY_GOOD : LATENCY_SPREAD);
		assert_in_range(sum.us, 20000, 20012);
	}
}

/* --- The file ------------------------------------------------------------------- */

static char folder[] = "/tmp/evenhand-latency-XXXXXX";

static int make_home(void **state)
{
	(void)state;
	strcpy(folder + sizeof folder - 7, "XXXXXX");
	if (!mkdtemp(folder))
		return -1;
	return setenv("XDG_STATE_HOME", folder, 1);
}

static int remove_home(void **state)
{
	char command[sizeof folder + 16];

	(void)state;
	snprintf(command, sizeof command, "rm -rf %s", folder);
	return system(command);
}

static struct latency one_of(const char *card, int rate, int us)
{
	struct latency l = { .us = us, .spread_us = 40, .day = 20000 };

	snprintf(l.pair.card, sizeof l.pair.card, "%s", card);
	snprintf(l.pair.through, sizeof l.pair.through, "ALSA");
	snprintf(
	    l.pair.microphone, sizeof l.pair.microphone, "Mic: \"best\" \\ #1");
	snprintf(l.pair.microphone_through, sizeof l.pair.microphone_through,
	    "ALSA");
	l.pair.rate = rate;
	l.pair.microphone_rate = 48000;
	return l;
}

static void read_good(struct latencies *l)
{
	struct faults faults = { 0 };

	latency_read(l, &faults);
	assert_int_equal(faults.count, 0);
}

static void test_file(void **state)
{
	static struct latencies l;
	struct latency a = one_of("Fl\xc3\xbcgel: no", 48000, 7310);
	struct latency b = one_of("Fl\xc3\xbcgel: no", 44100, -20);
	const struct latency *found;
	struct fault f;
	struct stat s;

	(void)state;
	read_good(&l);
	assert_int_equal(l.count, 0);
	assert_true(latency_keep(&l, &a, &f));
	assert_true(latency_keep(&l, &b, &f));
	assert_int_equal(stat(l.path, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0600);
	read_good(&l);
	assert_int_equal(l.count, 2);
	found = latency_of(&l, &a.pair);
	assert_non_null(found);
	assert_memory_equal(found, &a, sizeof a);
	assert_int_equal(latency_of(&l, &b.pair)->us, -20);
	b.pair.microphone_rate = 16000;
	assert_null(latency_of(&l, &b.pair));

	/* A pair has one delay, the last. */
	a.us = 8000;
	assert_true(latency_keep(&l, &a, &f));
	read_good(&l);
	assert_int_equal(l.count, 2);
	assert_int_equal(latency_of(&l, &a.pair)->us, 8000);

	/* There is room for so many, and the oldest goes. */
	for (int i = 0; i < LATENCIES_MAX; i++) {
		struct latency c = one_of("card", 8000 + i, i);

		assert_true(latency_keep(&l, &c, &f));
	}
	read_good(&l);
	assert_int_equal(l.count, LATENCIES_MAX);
	assert_null(latency_of(&l, &a.pair));
}

/* Where its folder cannot be made the fault is about the file. */
static void test_no_folder(void **state)
{
	static struct latencies l;
	struct latency a = one_of("card", 48000, 7310);
	char path[sizeof folder + 16];
	struct fault f;
	FILE *file;

	(void)state;
	snprintf(path, sizeof path, "%s/evenhand", folder);
	file = fopen(path, "w");
	assert_non_null(file);
	fclose(file);
	latency_read(&l, &(struct faults) { 0 });
	assert_false(latency_keep(&l, &a, &f));
	assert_int_equal(f.message.id, M_WORLD_FOLDER_OF_UNMADE);
	assert_ptr_equal(f.path, l.path);
}

#define GOOD \
	"delays:\n  - card: a\n    through: b\n    microphone: c\n" \
	"    microphone_through: d\n    rate: 48000\n" \
	"    microphone_rate: 48000\n    delay_us: 5\n    spread_us: 6\n" \
	"    day: 2026-03-02\n"

/* A file that was written into by hand: all is right, or nothing counts. */
static void reads(const char *bytes, int expected, int line)
{
	static struct latencies l;
	struct faults faults = { 0 };
	char path[sizeof folder + 40];
	struct fault f;

	snprintf(path, sizeof path, "%s/evenhand", folder);
	assert_true(folder_make(path, &f));
	strcat(path, "/delays.yaml");
	assert_true(file_replace(path, bytes, strlen(bytes), &f));
	latency_read(&l, &faults);
	assert_int_equal(l.count, expected);
	assert_int_equal(faults.count, expected == 0 && line > 0);
	if (faults.count > 0) {
		assert_int_equal(faults.at[0].message.id, M_LATENCY_BROKEN);
		assert_int_equal(faults.at[0].line, line);
	}
}

/* The good file with one thing in it written otherwise. */
static void reads_instead(const char *old, const char *new, int line)
{
	char bytes[1024], *at;

	strcpy(bytes, GOOD);
	at = strstr(bytes, old);
	assert_non_null(at);
	snprintf(at, sizeof bytes - (size_t)(at - bytes), "%s%s", new,
	    strstr(GOOD, old) + strlen(old));
	reads(bytes, 0, line);
}

static void test_strict(void **state)
{
	(void)state;
	reads(GOOD, 1, 0);
	reads("", 0, 0);
	reads("delays: []\n", 0, 0);
	reads("delays: 5\n", 0, 1);
	reads("nothing: 5\n", 0, 1);
	reads("- a\n", 0, 1);
	reads("delays: [a]\n", 0, 1);
	reads("delays: {\n", 0, 1);
	reads(GOOD "more: 1\n", 0, 1);
	reads_instead("48000\n    micro", "48k\n    micro", 6);
	reads_instead("48000\n    micro", "7999\n    micro", 6);
	reads_instead("delay_us: 5", "delay_us: 5.5", 8);
	reads_instead("delay_us: 5", "delay_us: +5", 8);
	reads_instead("delay_us: 5", "delay_us: 500001", 8);
	reads_instead("delay_us: 5", "delay_us: -1001", 8);
	reads_instead("delay_us: 5", "delay_us: 99999999999999999999", 8);
	reads_instead("spread_us: 6", "spread_us: 1001", 9);
	reads_instead("2026-03-02", "2026-02-30", 10);
	reads_instead("    day: 2026-03-02\n", "", 2);
	reads_instead("day", "Day", 2);
	reads_instead("card: a", "card: [a]", 2);
	reads_instead("delay_us: 5", "delay_us: 5\n    more: 1", 2);
}

int main(void)
{
#define HOME(f) cmocka_unit_test_setup_teardown(f, make_home, remove_home)
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_place),
		cmocka_unit_test(test_noise),
		cmocka_unit_test(test_echo),
		cmocka_unit_test(test_nothing),
		cmocka_unit_test(test_judge),
		cmocka_unit_test(test_astray),
		HOME(test_file),
		HOME(test_no_folder),
		HOME(test_strict),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
