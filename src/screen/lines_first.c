/*
 * lines_first.c - the first minutes in words
 *
 * The last sentence of a page says what its two keys do.
 */
#include "first_words.h"

static void add(struct sentences *out, enum message_id id)
{
	sentences_add(out, message_of(id));
}

static void welcome(struct sentences *out)
{
	add(out, M_FIRST_WELCOME);
	add(out, M_COACH_CAUTION_AID);
	add(out, M_COACH_CAUTION_CHILD);
	add(out, M_FIRST_WELCOME_PEDALS);
	add(out, M_FIRST_WELCOME_KEYS);
}

static void listen(struct sentences *out)
{
	add(out, M_FIRST_LISTEN);
	add(out, M_FIRST_LISTEN_COUNT);
	add(out, M_FIRST_LISTEN_BOWS);
	add(out, M_FIRST_LISTEN_STOP);
	add(out, M_FIRST_LISTEN_EARS);
	add(out, M_FIRST_LISTEN_KEYS);
}

static void how_to_mark(struct sentences *out, const struct first *f)
{
	add(out,
	    f->wish.marking == MARKING_TURN ? M_FIRST_MARK_TURN
					    : M_FIRST_MARK_ROUND);
	add(out, M_FIRST_MARK_KEYS);
	add(out, M_FIRST_MARK_TRY);
	add(out, M_FIRST_MARK_GO);
}

static enum message_id mark_given(const struct first *f)
{
	switch (f->mark) {
	case MARK_CLEAN:
		return M_FIRST_LAST_CLEAN;
	case MARK_SHAKY:
		return M_FIRST_LAST_SHAKY;
	case MARK_NONE:
		break;
	}
	return f->tried ? M_FIRST_LAST_NONE : M_NONE;
}

static void last(struct sentences *out, const struct first *f)
{
	add(out, mark_given(f));
	add(out, M_FIRST_LAST_HURT);
	add(out, M_FIRST_LAST_HELP);
	add(out, M_FIRST_LAST_ALONE);
	add(out, M_FIRST_LAST_KEYS);
}

void sentences_first(struct sentences *out, const struct first *f)
{
	switch (f->part) {
	case FIRST_WELCOME:
		welcome(out);
		break;
	case FIRST_FORWARD:
		add(out, M_FIRST_FORWARD_MEANS);
		add(out, M_FIRST_SKIP);
		add(out, M_FIRST_FORWARD);
		break;
	case FIRST_BACK:
		add(out, M_FIRST_BACK_MEANS);
		add(out, M_FIRST_BACK);
		break;
	case FIRST_LISTEN:
		listen(out);
		break;
	case FIRST_MARK:
		how_to_mark(out, f);
		break;
	case FIRST_LAST:
		last(out, f);
		break;
	case FIRST_SILENT:
		add(out, M_FIRST_SILENT);
		add(out, M_FIRST_SILENT_KEYS);
		break;
	case FIRST_PAIN:
		add(out, M_FIRST_PAIN);
		add(out, M_FIRST_PAIN_KEYS);
		break;
	case FIRST_HEAR:
	case FIRST_TRY:
	case FIRST_OVER:
		break;
	}
}

void lines_first(struct text *out, int columns, const struct first *f)
{
	struct sentences told;

	sentences_init(&told);
	sentences_first(&told, f);
	for (int i = 0; i < told.count; i++)
		lines_text_within(out, columns, told.at[i].words);
}
