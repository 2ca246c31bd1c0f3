/*
 * test_effects.c - what the session asks for while the engine has no room
 *
 * A passage that cannot be played is said once and practised unheard; a silence
 * that finds the command ring full is asked for again.
 */
#include <fcntl.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "../../src/command/practise.h"
#include "../sound/render.h"

static struct practice p;
static char folder[] = "/tmp/evenhand-effects-XXXXXX";
static char journal[sizeof folder + 16], words[sizeof folder + 16];

/* Standard output goes to a file while effects are carried out. */
static void effects_out(void)
{
	int kept, file;

	fflush(stdout);
	kept = dup(STDOUT_FILENO);
	file = open(words, O_WRONLY | O_CREAT | O_APPEND, 0600);
	assert_true(kept >= 0 && file >= 0);
	dup2(file, STDOUT_FILENO);
	practice_effects(&p);
	fflush(stdout);
	dup2(kept, STDOUT_FILENO);
	close(kept);
	close(file);
}

/* How often this was printed so far. */
static int printed(const char *what)
{
	char line[256];
	int found = 0;
	FILE *f = fopen(words, "r");

	while (f && fgets(line, sizeof line, f))
		found += strstr(line, what) != NULL;
	if (f)
		fclose(f);
	return found;
}

static void passage_at(int64_t frame)
{
	p.effects = (struct effects) { .count = 1 };
	p.effects.at[0].kind = EFFECT_PASSAGE;
	p.effects.at[0].passage = render_turn(1000, 4);
	p.effects.at[0].frame = frame;
	effects_out();
}

static int begin(void **state)
{
	struct fault f;

	(void)state;
	memset(&p, 0, sizeof p);
	strcpy(folder + sizeof folder - 7, "XXXXXX");
	if (!mkdtemp(folder))
		return -1;
	sprintf(journal, "%s/journal.db", folder);
	sprintf(words, "%s/words", folder);
	p.journal = journal_open(journal, &f);
	p.engine = render_engine(48000, 500);
	p.device = device_null_open(p.engine, false, &f);
	p.keys = keys_open(-1);
	p.session.rate = 48000;
	return p.journal && p.device && p.keys ? 0 : -1;
}

static int end(void **state)
{
	char command[sizeof folder + 16];

	(void)state;
	keys_close(p.keys);
	device_close(p.device);
	journal_close(p.journal);
	free(p.engine);
	sprintf(command, "rm -rf %s", folder);
	return system(command);
}

/* All slots are in use: said at the first passage that is unheard, then not. */
static void test_no_slot(void **state)
{
	(void)state;
	for (int i = 0; i < ENGINE_SLOTS; i++)
		passage_at(48000);
	assert_int_equal(printed("sound cannot be made"), 0);
	passage_at(96000);
	assert_int_equal(printed("sound cannot be made"), 1);
	passage_at(96000);
	assert_int_equal(printed("sound cannot be made"), 1);
	assert_false(p.over || p.mute);

	/* It is over; the next is heard, and another failure said anew. */
	device_advance(p.device, 48000 * 10);
	for (int i = 0; i < ENGINE_SLOTS; i++)
		passage_at(48000 * 11);
	assert_int_equal(printed("sound cannot be made"), 1);
	passage_at(48000 * 11);
	assert_int_equal(printed("sound cannot be made"), 2);
}

/* A passage that has no score is unheard too. */
static void test_no_score(void **state)
{
	int slot;

	(void)state;
	p.effects = (struct effects) { .count = 1 };
	p.effects.at[0].kind = EFFECT_PASSAGE;
	p.effects.at[0].passage = render_turn(1000, PULSES_MAX + 1);
	effects_out();
	assert_int_equal(printed("sound cannot be made"), 1);
	passage_at(0);
	assert_int_equal(printed("sound cannot be made"), 1);
	assert_non_null(engine_slot(p.engine, &slot));
	assert_int_equal(slot, 1);
}

static float heard(int64_t from, int64_t to)
{
	static float buffer[48000];

	device_advance(p.device, from);
	render_to(p.engine, buffer, to, 512);
	return render_peak(buffer, to - from);
}

/* The ring is full of commands when a key asks for silence. */
static void test_silence_waits(void **state)
{
	(void)state;
	passage_at(0);
	assert_true(heard(0, 4800) > 0);
	while (engine_level(p.engine, 500))
		;
	p.effects = (struct effects) { .count = 1 };
	p.effects.at[0].kind = EFFECT_SILENCE;
	effects_out();
	assert_true(p.hush);
	/* The callback takes the commands; then there is room. */
	assert_true(heard(4800, 4800 + 512) >= 0);
	practice_hush(&p);
	assert_false(p.hush);
	assert_true(heard(12000 + 512, 48000) == 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(test_no_slot, begin, end),
		cmocka_unit_test_setup_teardown(test_no_score, begin, end),
		cmocka_unit_test_setup_teardown(test_silence_waits, begin, end),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
