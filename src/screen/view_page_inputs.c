/*
 * view_page_inputs.c - what can be chosen and what is typed
 *
 *	  skin of finger 1	  thumb		  neck
 *	  skin of finger 2	> hand		  somewhere else
 */
#include "signs.h"
#include "view_page_text.h"

enum {
	SIGN_COLUMNS = 2,
	WORDS_BYTES = 1024,
	CHOICE_BYTES = 80,
	CHOICE_WAYS = 4,
};

/* Columns that the choices of one column take with their sign and a gap. */
static int choices_width(const struct session *s, int from, int count)
{
	char words[CHOICE_BYTES];
	int widest = 0;

	for (int i = from; i < from + count && i < story_choices(s); i++) {
		struct message m = story_choice(s, i);

		message_text(&m, words, sizeof(words));
		if (text_columns(words) > widest)
			widest = text_columns(words);
	}
	return widest + 2 * SIGN_COLUMNS;
}

/* Whether so many columns of choices fit; fills in where each begins. */
static bool choices_fit(
    const struct session *s, int ways, int width, int *column)
{
	int rows = (story_choices(s) + ways - 1) / ways, used = 0;

	for (int w = 0; w < ways; w++) {
		column[w] = used;
		used += choices_width(s, w * rows, rows);
	}
	for (int w = 1; w < ways; w++)
		column[w] += w * (width - used) / ways;
	return used <= width || ways == 1;
}

/* As few columns as the room allows, at most so many as are wide enough. */
static int choices_ways(
    const struct session *s, int width, int room, int *column)
{
	int ways = 1, try[CHOICE_WAYS];

	for (int w = 1; w <= CHOICE_WAYS; w++) {
		if ((story_choices(s) + ways - 1) / ways <= room)
			break;
		if (choices_fit(s, w, width, try))
			ways = w;
	}
	choices_fit(s, ways, width, column);
	return ways;
}

static void set_choice(
    struct flow *f, const struct session *s, int choice, int column)
{
	struct message m = story_choice(s, choice);
	bool chosen = choice == s->choice;
	char words[CHOICE_BYTES];

	message_text(&m, words, sizeof(words));
	if (chosen) {
		flow_beside(f, column, ATTRIBUTE_STRONG,
		    sign_of(SIGN_CHOSEN, f->ascii));
		flow_mark(f);
	}
	flow_beside(f, column + SIGN_COLUMNS,
	    chosen ? ATTRIBUTE_REVERSE : ATTRIBUTE_PLAIN, flow_keep(f, words));
}

/* All choices, one below the other, the chosen one marked. */
void page_choices(struct flow *f, const struct session *s, int room)
{
	int column[CHOICE_WAYS] = { 0 };
	int choices = story_choices(s);
	int ways = choices_ways(s, f->width, room, column);
	int rows = (choices + ways - 1) / ways;

	for (int row = 0; row < rows; row++) {
		flow_row(f, ATTRIBUTE_PLAIN, "");
		for (int i = row; i < choices; i += rows)
			set_choice(f, s, i, column[i / rows]);
	}
}

/* Rows that words take at a width. */
static int rows_of(const char *words, int width)
{
	size_t next;
	int rows = 0;

	for (; *words; words += next, rows++)
		text_wrap(words, width, &next);
	return rows;
}

/*
 * What is typed, with a sign where the next letter comes.  What has no room is
 * left out at its beginning.
 */
void page_typed(struct flow *f, const char *typed, int room)
{
	enum { EDGES = 2, SIDES = 4, ROWS_LEAST = 3, ROWS_MOST = 6 };
	char words[WORDS_BYTES];
	bool framed = f->frames || room > EDGES + 1;
	int most = framed ? room - EDGES : room;
	int width = framed ? f->width - SIDES : f->width;
	size_t bytes;

	if (most > ROWS_MOST)
		most = ROWS_MOST;
	if (most < 1)
		most = 1;
	for (const char *from = typed;; from += bytes) {
		struct text t = text_in(words, sizeof(words));

		text_add(&t, from > typed ? "..." : "");
		text_add(&t, from);
		text_add(&t, sign_of(SIGN_LOWER, f->ascii));
		if (rows_of(words, width) <= most || !*from)
			break;
		text_letter(from, &bytes);
	}
	if (framed)
		flow_frame(f, ATTRIBUTE_STRONG, flow_keep(f, words),
		    most < ROWS_LEAST ? most : ROWS_LEAST);
	else
		flow_words(f, ATTRIBUTE_STRONG, flow_keep(f, words));
}
