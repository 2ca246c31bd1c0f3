/*
 * test_plot.c - under the drawing of a recording stand whole sentences only, the
 * first that have room, and nothing meets them or the edge
 */
#include "../screen/golden_pages.h"
#include "areas.h"

#include <string.h>

#include "evenhand/paper/list.h"
#include "evenhand/paper/plot.h"

enum { SHORT = 60, LONG = 300 };

static struct paper paper;
static struct outline outline;
static char sentence[PLOT_WORDS_MAX][LONG + 1];

/* A note that sways, five seconds of it. */
static int begin(void **context)
{
	(void)context;
	for (int i = 0; i < 1000; i++) {
		struct instant m = { .what = HEARD_NOTE, .sure = 1 };

		m.hz = (float)(220 + 5 * sin(i / 5.0));
		m.level_db = -20;
		outline_add(&outline, &m);
	}
	return 0;
}

/* Words of a number, then as many more as it takes. */
static void write_sentence(char *to, int number, size_t length)
{
	struct text t = text_in(to, LONG + 1);

	text_format(&t, "Number %d", number);
	while (t.length + sizeof(" word.") <= length)
		text_add(&t, " word");
	text_add(&t, ".");
}

/* How many sentences have words there, and whether each is there to its end. */
static int whole_sentences(void)
{
	int begun = 0, ended = 0;

	for (int i = 0; i < paper.items; i++) {
		const struct paper_item *item = &paper.item[i];

		if (item->kind != PAPER_WORDS || !strstr(item->text, "word"))
			continue;
		begun += strncmp(item->text, "Number", 6) == 0;
		ended += strchr(item->text, '.') != NULL;
	}
	assert_int_equal(begun, ended);
	return begun;
}

static int draw(int count, size_t length)
{
	struct plot_wish w = { .title = "kite.wav",
		.outline = &outline,
		.reference_hz = 440,
		.words = count };

	for (int i = 0; i < count; i++) {
		write_sentence(sentence[i], i, length);
		w.word[i] = sentence[i];
	}
	paper_plot(&paper, &w);
	assert_false(paper.cut);
	areas_check(&paper, "plot");
	return whole_sentences();
}

static void test_few(void **context)
{
	(void)context;
	for (int count = 0; count <= 3; count++)
		assert_int_equal(draw(count, SHORT), count);
}

static void test_many(void **context)
{
	int most = 0;

	(void)context;
	for (size_t length = SHORT; length <= LONG; length += 40) {
		int there = draw(PLOT_WORDS_MAX, length);

		assert_in_range(there, 2, PLOT_WORDS_MAX - 1);
		assert_true(length == SHORT || there <= most);
		most = there;
	}
}

/* A second of a note, a rest, and a rounder one a fifth above. */
static void test_looked_at(void **context)
{
	static struct outline two;
	static char list[LIST_BYTES_MAX];
	struct text t = text_in(list, sizeof(list));
	struct plot_wish w = { .title = "kite.wav",
		.outline = &two,
		.reference_hz = 440,
		.day = 20514,
		.words = 1,
		.word = { "Two notes and a rest." } };

	(void)context;
	for (int i = 0; i < 500; i++) {
		bool rest = i >= 200 && i < 260;
		struct instant m = { .what = rest ? HEARD_NOTHING : HEARD_NOTE,
			.sure = !rest };

		m.hz = rest ? 0
			    : (float)((i < 200 ? 220 : 330) +
				  5 * sin(i / (i < 200 ? 5.0 : 10.0)));
		m.level_db = rest ? -90 : -20;
		outline_add(&two, &m);
	}
	paper_plot(&paper, &w);
	list_write(&t, &paper);
	assert_false(paper.cut || t.cut);
	golden_check("../../paper/golden/plot-a4", list);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_looked_at),
		cmocka_unit_test(test_few),
		cmocka_unit_test(test_many),
	};

	return cmocka_run_group_tests(tests, begin, NULL);
}
