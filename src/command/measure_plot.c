/*
 * measure_plot.c - a recording drawn on paper, with what is said of it
 *
 * Laid out in a pure room, drawn by evenhand-paper, and put in its place whole
 * or not at all, like every sheet.
 */
#include <stdlib.h>
#include <string.h>

#include "evenhand/paper/list.h"
#include "evenhand/paper/plot.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/paper_maker.h"
#include "measure.h"
#include "options.h"

enum { WORDS_BYTES = 32768, TITLE_BYTES = 200 };

/* Too large for the stack. */
struct sheet {
	struct paper_maker maker;
	struct paper paper;
	char list[LIST_BYTES_MAX];
	char words[WORDS_BYTES];
	char title[TITLE_BYTES];
};

/* Lines become lines under the picture, as many as there is room for. */
static void take_words(struct sheet *s, struct plot_wish *w)
{
	char *line = s->words;

	while (*line && w->words < PLOT_WORDS_MAX) {
		size_t length = strcspn(line, "\n");

		w->word[w->words++] = line;
		if (!line[length])
			break;
		line[length] = '\0';
		line += length + 1;
	}
}

static bool put(struct sheet *s, const struct paper_target *to, struct fault *f)
{
	struct text list = text_in(s->list, sizeof(s->list));

	list_write(&list, &s->paper);
	if (!paper_begin(&s->maker, to, f))
		return false;
	/* Where it is not taken, the end tells why. */
	paper_give(&s->maker, list.bytes, list.length);
	return paper_end(&s->maker, f);
}

bool measure_plot(const struct measured *m, int *status)
{
	struct sheet *s = calloc(1, sizeof(*s));
	const char *slash = strrchr(m->path, '/');
	struct plot_wish w = { .outline = &m->outline,
		.reference_hz = m->ask->reference_hz };
	struct text words, title;
	struct paper_target to = { m->ask->plot, PAPER_PDF, m->ask->force };
	struct fault f;
	bool good;

	if (!s) {
		struct message none = message_of(M_COMMAND_NO_MEMORY);

		command_say(&none);
		*status = EXIT_OS;
		return false;
	}
	words = text_in(s->words, sizeof(s->words));
	title = text_in(s->title, sizeof(s->title));
	text_add_clean(&title, slash ? slash + 1 : m->path);
	/* Where not all of it has room, the whole comes before its parts. */
	if (m->sum.stretches > 1)
		measure_say_sum(m, &words);
	measure_say_stretches(m, &words);
	if (m->sum.stretches <= 1)
		measure_say_sum(m, &words);
	take_words(s, &w);
	w.title = s->title;
	w.day = moment_day(clock_now());
	paper_format_of(to.path, &to.format);
	paper_plot(&s->paper, &w);
	good = put(s, &to, &f);
	if (!good) {
		command_fault(&f);
		*status = command_status(&f);
	}
	free(s);
	return good;
}
