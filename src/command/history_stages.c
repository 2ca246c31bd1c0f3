/*
 * history_stages.c - the stages of a day and their first goes, in lines
 *
 * The same id on two instruments is two exercises: their marks are not mixed.
 */
#include "history_stages.h"

#include <string.h>

static bool same_stage(const struct tally *a, const struct tally *b)
{
	return a->kind == b->kind && strcmp(a->stage, b->stage) == 0;
}

static bool same_instrument(const struct tally *a, const struct tally *b)
{
	return strcmp(a->instrument, b->instrument) == 0;
}

/*
 * Whether an earlier row of the day has the same stage and kind; on the same
 * instrument, where these are told apart.
 */
static bool came(
    const struct days *d, const struct day_sum *day, int i, bool apart)
{
	const struct tally *t = days_tally(d, day, i);

	for (int k = 0; k < i; k++) {
		const struct tally *before = days_tally(d, day, k);

		if (same_stage(before, t) &&
		    (!apart || same_instrument(before, t)))
			return true;
	}
	return false;
}

void stages_say(
    struct history_page *p, const struct days *d, const struct day_sum *day)
{
	struct history_list list;

	list_begin(&list, p, M_HISTORY_STAGES);
	for (int i = 0; i < day->tallies; i++) {
		const struct tally *t = days_tally(d, day, i);

		if (!came(d, day, i, false))
			list_add(&list,
			    message_with(t->kind == BLOCK_RECAP
				    ? M_HISTORY_STAGE_RECAP
				    : M_HISTORY_STAGE,
				TEXT(t->stage)));
	}
	list_end(&list);
}

static enum message_id word_of(enum mark mark)
{
	if (mark == MARK_CLEAN)
		return M_WORD_CLEAN;
	return mark == MARK_SHAKY ? M_WORD_SHAKY : M_WORD_NO_MARK;
}

/* A stage, with its instrument on a day that had it on another one too. */
static void name_stage(const struct days *d, const struct day_sum *day, int i,
    char name[HISTORY_LIST_BYTES])
{
	const struct tally *t = days_tally(d, day, i);
	struct message m = message_with(M_HISTORY_STAGE, TEXT(t->stage));

	for (int k = 0; k < day->tallies; k++)
		if (*t->instrument && same_stage(days_tally(d, day, k), t) &&
		    !same_instrument(days_tally(d, day, k), t))
			m = message_with(M_HISTORY_STAGE_ON, TEXT(t->stage),
			    TEXT(t->instrument));
	message_text(&m, name, HISTORY_LIST_BYTES);
}

/* The first-go marks of one stage, that of row i and those like it. */
static void say_first_go(struct history_page *p, const struct days *d,
    const struct day_sum *day, int i)
{
	const struct tally *first = days_tally(d, day, i);
	char name[HISTORY_LIST_BYTES];
	struct history_list list;

	name_stage(d, day, i, name);
	list_begin(&list, p, M_HISTORY_FIRST_GO_AIR);
	list.stage = name;
	for (int k = i; k < day->tallies; k++) {
		const struct tally *t = days_tally(d, day, k);
		enum message_id word = word_of(t->first_go);

		if (!same_stage(t, first) || !same_instrument(t, first) ||
		    (t->first_go_pulses == 0 && t->first_go == MARK_NONE))
			continue;
		if (t->first_go_pulses > 0) {
			list.sentence = M_HISTORY_FIRST_GO;
			list.pulses = t->first_go_pulses;
		}
		list_add(&list,
		    *t->unit ? message_with(days_finger(t->unit)
				       ? M_HISTORY_MARK_FINGER
				       : M_HISTORY_MARK_UNIT,
				   TEXT(t->unit), WORD(word))
			     : message_of(word));
	}
	list_end(&list);
}

void first_goes_say(
    struct history_page *p, const struct days *d, const struct day_sum *day)
{
	for (int i = 0; i < day->tallies; i++)
		if (!came(d, day, i, true))
			say_first_go(p, d, day, i);
}
