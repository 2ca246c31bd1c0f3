/*
 * plan_lines.c - today's plan, sentence by sentence
 *
 *	Today: A tone apart, day 3. It ends at 4:52.
 *	0:00 in the air: Forearm swing, no instrument, 1 swing.
 *	0:28 again: First to fourth position. Each finger once, 1, 2, 3, 4, at 4
 *	pulses.
 *	2:20 the work: A tone apart. 3 rounds, beginning at 6 pulses.
 *	Round 1, the first go: finger 1 at 2:28, 2 at 2:40, 3 at 2:52, 4 at 3:04.
 *
 * Then what is special about today, the teacher's note and the cautions.  The
 * question whether anything is sore is left to the start of the practice.
 */
#include "sentences.h"

enum { LIST_BYTES = 240, SENTENCE_BYTES = 1024 };

/* What is told. */
struct telling {
	struct sentences *out;
	const struct routine *routine;
	const struct plan *plan;
	enum telling_much much;
};

static void say(struct telling *t, struct message m)
{
	sentences_add(t->out, m);
}

static void list_add(struct text *list, struct message m)
{
	char words[LIST_BYTES];

	message_text(&m, words, sizeof(words));
	if (list->length > 0)
		text_add(list, ", ");
	text_add(list, words);
}

/* "1, 2, 3, 4": who plays in one round of a block. */
static void list_round(const struct telling *t, const struct plan_block *b,
    int round, struct text *list)
{
	for (int i = 0; i < b->turns; i++) {
		const struct plan_turn *turn =
		    &t->plan->turn[b->first_turn + i];

		if (turn->round != round)
			continue;
		if (list->length > 0)
			text_add(list, ", ");
		text_add(list, t->routine->unit[turn->unit].name);
	}
}

/* "finger 1 at 2:28, 2 at 2:40": the same with times. */
static void list_times(const struct telling *t, const struct plan_block *b,
    int round, struct text *list)
{
	enum message_id word = plan_unit_word(t->routine->take);

	for (int i = 0; i < b->turns; i++) {
		const struct plan_turn *turn =
		    &t->plan->turn[b->first_turn + i];
		const char *name = t->routine->unit[turn->unit].name;

		if (turn->round != round)
			continue;
		if (list->length == 0)
			list_add(list,
			    message_with(M_COACH_LINE_UNIT_AT, WORD(word),
				TEXT(name), CLOCK(turn->start_ms)));
		else
			list_add(list,
			    message_with(M_COACH_LINE_AT, TEXT(name),
				CLOCK(turn->start_ms)));
	}
}

static int round_start_ms(
    const struct plan *p, const struct plan_block *b, int round)
{
	for (int i = 0; i < b->turns; i++)
		if (p->turn[b->first_turn + i].round == round)
			return p->turn[b->first_turn + i].start_ms;
	return b->end_ms;
}

/* --- blocks --- */

static const char *title(const struct telling *t, const struct plan_block *b)
{
	return t->routine->stage[b->stage].title;
}

static void tell_air(struct telling *t, const struct plan_block *b)
{
	say(t,
	    message_with(M_COACH_LINE_AIR, CLOCK(b->start_ms),
		TEXT(title(t, b)), WHOLE(b->turns)));
}

static void tell_recap(struct telling *t, const struct plan_block *b)
{
	char buffer[LIST_BYTES];
	struct text list = text_in(buffer, sizeof(buffer));

	list_round(t, b, 0, &list);
	say(t,
	    message_with(M_COACH_LINE_RECAP, CLOCK(b->start_ms),
		TEXT(title(t, b)), WORD(plan_unit_word(t->routine->take)),
		TEXT(buffer), WHOLE(b->pulses)));
}

static void tell_round(struct telling *t, const struct plan_block *b, int round)
{
	const struct plan *p = t->plan;
	char buffer[LIST_BYTES];
	struct text list = text_in(buffer, sizeof(buffer));

	if (round > 0) {
		list_round(t, b, round, &list);
		say(t,
		    message_with(M_COACH_LINE_ROUND, WHOLE(round + 1),
			CLOCK(round_start_ms(p, b, round)), TEXT(buffer)));
		return;
	}
	list_times(t, b, round, &list);
	say(t,
	    message_with(p->first_go >> b->stage & 1 ? M_COACH_LINE_FIRST_GO
						     : M_COACH_LINE_TIMES,
		WHOLE(round + 1), TEXT(buffer)));
}

static void tell_work(struct telling *t, const struct plan_block *b)
{
	say(t,
	    message_with(M_COACH_LINE_WORK, CLOCK(b->start_ms),
		TEXT(title(t, b)), WHOLE(b->rounds), WHOLE(b->pulses)));
	for (int round = 0; t->much != TELL_SHORT && round < b->rounds; round++)
		tell_round(t, b, round);
}

static void tell_block(struct telling *t, const struct plan_block *b)
{
	switch (b->kind) {
	case BLOCK_AIR:
		tell_air(t, b);
		break;
	case BLOCK_RECAP:
		tell_recap(t, b);
		break;
	case BLOCK_WORK:
		tell_work(t, b);
		break;
	}
}

/* --- the end --- */

static void count_bows(const struct telling *t, int *bows)
{
	for (int u = 0; u < UNITS_MAX; u++)
		bows[u] = 0;
	for (int i = 0; i < t->plan->turns; i++)
		if (t->plan->turn[i].unit >= 0)
			bows[t->plan->turn[i].unit] += t->routine->bows_each;
}

static bool all_even(const int *value, int count)
{
	for (int i = 1; i < count; i++)
		if (value[i] != value[0])
			return false;
	return true;
}

static void list_bows(
    const struct telling *t, const int *bows, struct text *list)
{
	const struct routine *r = t->routine;

	for (int u = 0; u < r->units; u++) {
		if (list->length == 0)
			list_add(list,
			    message_with(M_COACH_LINE_BOWS,
				WORD(plan_unit_word(r->take)),
				TEXT(r->unit[u].name), WHOLE(bows[u])));
		else
			list_add(list,
			    message_with(M_COACH_LINE_BOWS_NEXT,
				TEXT(r->unit[u].name), WHOLE(bows[u])));
	}
}

static void tell_end(struct telling *t)
{
	const struct plan *p = t->plan;
	int bows[UNITS_MAX];
	char buffer[LIST_BYTES];
	struct text list = text_in(buffer, sizeof(buffer));

	count_bows(t, bows);
	if (p->bows == 0) {
		say(t, message_with(M_COACH_LINE_END_AIR, CLOCK(p->length_ms)));
	} else if (all_even(bows, t->routine->units)) {
		say(t,
		    message_with(M_COACH_LINE_END_EVEN, CLOCK(p->length_ms),
			WHOLE(p->bows), WHOLE(bows[0]),
			WORD(plan_unit_word(t->routine->take))));
	} else {
		list_bows(t, bows, &list);
		say(t,
		    message_with(M_COACH_LINE_END_EACH, CLOCK(p->length_ms),
			WHOLE(p->bows), TEXT(buffer)));
	}
}

/* The stage worked on has the name of the day, even on one when it rests. */
static void tell_head(struct telling *t)
{
	const struct plan *p = t->plan;
	const char *name = t->routine->stage[p->work_stage].title;
	bool works = false;

	for (int i = 0; i < p->blocks; i++)
		works |= p->block[i].stage == p->work_stage;
	say(t,
	    works ? message_with(M_COACH_LINE_HEAD, TEXT(name),
			WHOLE(p->day_on_stage), CLOCK(p->length_ms))
		  : message_with(M_COACH_LINE_HEAD_RESTS, TEXT(name),
			CLOCK(p->length_ms)));
}

static void tell_blocks(struct telling *t)
{
	const struct plan *p = t->plan;

	if (p->blocks == 0) {
		say(t, message_of(M_COACH_LINE_REST));
		return;
	}
	tell_head(t);
	for (int i = 0; i < p->blocks; i++)
		tell_block(t, &p->block[i]);
	tell_end(t);
}

/* --- reasons and cautions --- */

/* "F2 [C] ...": which rule it is and what it rests on. */
static void tell_why(struct telling *t, const struct reason *r)
{
	char sentence[SENTENCE_BYTES];
	struct text line = text_in(sentence, sizeof(sentence));

	if (r->rule > 0)
		text_format(&line, "F%d ", r->rule);
	text_format(&line, "[%c] ", (char)r->ground);
	message_text(&r->message, sentence + line.length,
	    sizeof(sentence) - line.length);
	sentences_add_words(t->out, r->message.id, sentence);
}

static void tell_reasons(struct telling *t)
{
	const struct plan *p = t->plan;
	bool why = t->much == TELL_WHY;

	if (why)
		say(t, message_of(M_COACH_LINE_WHY));
	for (int i = 0; i < p->reasons; i++) {
		if (why)
			tell_why(t, &p->reason[i]);
		else if (!p->reason[i].detail)
			say(t, p->reason[i].message);
	}
	if (why)
		say(t, message_of(M_COACH_LINE_GROUNDS));
}

void sentences_plan(struct sentences *out, const struct routine *r,
    const struct plan *p, enum telling_much much)
{
	struct telling t = { out, r, p, much };

	tell_blocks(&t);
	if (much != TELL_WHY)
		tell_reasons(&t);
	if (*r->note)
		say(&t, message_with(M_COACH_LINE_NOTE, TEXT(r->note)));
	for (int i = 0; i < p->cautions; i++)
		if (p->caution[i].id != M_COACH_CAUTION_START &&
		    p->caution[i].id != M_COACH_CAUTION_START_FIRST)
			say(&t, p->caution[i]);
	if (much == TELL_WHY)
		tell_reasons(&t);
}
