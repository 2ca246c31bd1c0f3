/*
 * test_effects.c - what the session asks for while the device has no room
 *
 * A passage that cannot be played is said once and practised unheard.  And on
 * a full screen nothing that was said outlives its page.
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
#include "../../src/world/device_parts.h"
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

/* A device that has room for so many passages. */
static int room, silences;

static bool play(struct device *d, const struct passage *passage, int64_t frame)
{
	(void)d;
	(void)frame;
	assert_int_equal(passage->pulses, 4);
	return room-- > 0;
}

static void silence(struct device *d)
{
	(void)d;
	silences++;
}

static const struct device_kind kind = { .play = play, .silence = silence };
static struct device device = { &kind, true };

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
	room = silences = 0;
	strcpy(folder + sizeof folder - 7, "XXXXXX");
	if (!mkdtemp(folder))
		return -1;
	sprintf(journal, "%s/journal.db", folder);
	sprintf(words, "%s/words", folder);
	p.journal = journal_open(journal, &f);
	p.device = &device;
	p.keys = keys_open(-1);
	p.session.rate = 48000;
	return p.journal && p.keys ? 0 : -1;
}

static int end(void **state)
{
	char command[sizeof folder + 16];

	(void)state;
	keys_close(p.keys);
	journal_close(p.journal);
	sprintf(command, "rm -rf %s", folder);
	return system(command);
}

/* Said at the first passage that is unheard, then not. */
static void test_no_room(void **state)
{
	(void)state;
	room = 4;
	for (int i = 0; i < 4; i++)
		passage_at(48000);
	assert_int_equal(printed("sound cannot be made"), 0);
	passage_at(96000);
	assert_int_equal(printed("sound cannot be made"), 1);
	passage_at(96000);
	assert_int_equal(printed("sound cannot be made"), 1);
	assert_false(p.over || p.mute);

	/* The next is heard, and another failure said anew. */
	room = 1;
	passage_at(48000 * 11);
	assert_int_equal(printed("sound cannot be made"), 1);
	passage_at(48000 * 11);
	assert_int_equal(printed("sound cannot be made"), 2);
}

static void test_silence(void **state)
{
	(void)state;
	p.effects = (struct effects) { .count = 1 };
	p.effects.at[0].kind = EFFECT_SILENCE;
	effects_out();
	assert_int_equal(silences, 1);
}

/* One step of the session on a full screen. */
static void step_says(enum message_id id, bool page)
{
	p.effects = (struct effects) { .count = 0 };
	if (page)
		p.effects.at[p.effects.count++].kind = EFFECT_PAGE;
	if (id != M_NONE) {
		p.effects.at[p.effects.count].kind = EFFECT_SAY;
		p.effects.at[p.effects.count++].message = message_of(id);
	}
	practice_effects(&p);
}

/* What was said belongs to its page, and to the one that comes with it. */
static void test_news(void **state)
{
	static char any;
	const struct view *v = &p.screen.view;

	(void)state;
	/* Nothing is drawn here, so any screen will do. */
	p.screen.terminal = (struct terminal *)&any;
	step_says(M_SESSION_MARK_ROUND, false);
	assert_int_equal(v->said, 1);
	step_says(M_NONE, false);
	assert_int_equal(v->said, 1);
	step_says(M_NONE, true);
	assert_int_equal(v->said, 0);
	step_says(M_SESSION_SOUND_LOST, true);
	assert_int_equal(v->said, 1);
	assert_int_equal(v->news[0].id, M_SESSION_SOUND_LOST);
	p.screen.terminal = NULL;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(test_no_room, begin, end),
		cmocka_unit_test_setup_teardown(test_silence, begin, end),
		cmocka_unit_test_setup_teardown(test_news, begin, end),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
