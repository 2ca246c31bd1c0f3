/*
 * lines_pages.c - a page of the session in words
 *
 * What is asked, what can be chosen, and the keys, each a sentence of its own
 * so that a listener may stop at any of them.
 */
#include "sentences.h"

#include <math.h>

#include "evenhand/base/frames.h"

enum { LIST_BYTES = 200 };

static void say(struct sentences *out, struct message m)
{
	sentences_add(out, m);
}

static void say_id(struct sentences *out, enum message_id id)
{
	say(out, message_of(id));
}

/* --- before the playing --- */

static bool first_time(const struct session *s)
{
	return !history_begun(s->wish.history);
}

static void page_sore(struct sentences *out, const struct session *s)
{
	if (first_time(s) && !s->taught)
		say_id(out, M_PAGE_FIRST_KEYS);
	say_id(out, M_PAGE_SORE);
	say_id(out, first_time(s) ? M_PAGE_SORE_ASK_FIRST : M_PAGE_SORE_ASK);
	say_id(out, M_PAGE_SORE_KEYS);
}

static void page_where(struct sentences *out, const struct session *s)
{
	say_id(out, M_PAGE_WHERE);
	say_id(out, M_PAGE_WHERE_KEYS);
	say(out, session_choice(s));
}

/* What the teacher says to each stage that will be heard. */
static void say_stages(struct sentences *out, const struct session *s)
{
	for (int b = 0; b < s->plan.blocks; b++) {
		const struct stage *t =
		    &s->wish.routine->stage[s->plan.block[b].stage];

		if (t->say[0])
			say(out,
			    message_with(M_PAGE_TODAY_SAY, TEXT(t->title),
				TEXT(t->say)));
	}
}

/* All that needs time is told here, where no clock of music runs. */
static void page_today(struct sentences *out, const struct session *s)
{
	const struct routine *r = s->wish.routine;
	const struct stage *t = &r->stage[s->plan.work_stage];

	sentences_plan(out, r, &s->plan, TELL_SHORT);
	say_stages(out, s);
	for (int i = 0; i < t->checks; i++)
		say(out, message_with(M_PAGE_TODAY_CHECK, TEXT(t->check[i])));
	for (int i = 0; i < t->feels; i++)
		say(out, message_with(M_PAGE_TODAY_FEEL, TEXT(t->feel[i])));
	say_id(out,
	    s->plan.marking == MARKING_TURN ? M_PAGE_PLAY_TURN
					    : M_PAGE_PLAY_ROUND);
	if (s->plan.marking == MARKING_ROUND)
		say(out, session_digits(s, M_PAGE_PLAY_DIGITS));
	say_id(out, M_PAGE_PLAY);
	if (first_time(s))
		say_id(out, M_PAGE_FIRST_MARKS);
	say_id(out, M_PAGE_TODAY_KEYS);
}

static void page_rest(struct sentences *out, const struct session *s)
{
	if (s->pain)
		say(out, session_next_start(s));
	else
		sentences_plan(out, s->wish.routine, &s->plan, TELL_SHORT);
	say_id(out, M_PAGE_REST_KEYS);
}

/* --- while playing --- */

static void page_silent(struct sentences *out, const struct session *s)
{
	say(out, session_staying(s));
	say_id(out, M_PAGE_SILENT_BACK);
}

static void page_pain(struct sentences *out)
{
	say_id(out, M_PAGE_PAIN);
	say_id(out, M_PAGE_PAIN_HEAT);
	say_id(out, M_PAGE_PAIN_KEYS);
}

static void page_pain_where(struct sentences *out, const struct session *s)
{
	say_id(out, M_PAGE_PAIN_WHERE);
	say_id(out, M_PAGE_WHERE_KEYS);
	say(out, session_choice(s));
}

static void page_leave(struct sentences *out)
{
	say_id(out, M_PAGE_LEAVE);
	say_id(out, M_PAGE_LEAVE_KEYS);
}

/* --- after the playing --- */

static enum message_id ended_sentence(enum ended ended)
{
	switch (ended) {
	case ENDED_CAP:
		return M_PAGE_END_CAP;
	case ENDED_EARLY:
	case ENDED_NOT_TODAY:
	case ENDED_UNDER_WAY:
		return M_PAGE_END_EARLY;
	case ENDED_PAIN:
		return M_PAGE_END_PAIN;
	case ENDED_NO_KEY:
		return M_PAGE_END_NO_KEY;
	case ENDED_INPUT:
		return M_PAGE_END_INPUT;
	case ENDED_WHOLE:
		break;
	}
	return M_PAGE_END_WHOLE;
}

static void say_bows(struct sentences *out, const struct session *s)
{
	char bytes[LIST_BYTES], name[LIST_BYTES];
	struct text list = text_in(bytes, sizeof(bytes));
	int all = 0;

	for (int u = 0; u < s->wish.routine->units; u++) {
		struct message unit = session_unit(s, u);
		int bows = session_bows(s, u);

		message_text(&unit, name, sizeof(name));
		struct message m = message_with(
		    M_PAGE_END_BOWS, TEXT(name), WHOLE(bows));

		message_text(&m, name, sizeof(name));
		text_add(&list, u > 0 ? ", " : "");
		text_add(&list, name);
		all += bows;
	}
	if (all == 0)
		say_id(out, M_PAGE_END_NO_BOWS);
	else
		say(out,
		    message_with(M_PAGE_END_BOWS_ALL, WHOLE(all), TEXT(bytes)));
}

/* What was heard, block by block, and what is to be said of the microphone. */
static void say_heard(struct sentences *out, const struct session *s)
{
	struct message microphone = session_microphone(s);

	if (s->pain)
		return;
	if (microphone.id != M_HEARD_DEAF)
		for (int b = 0; b < s->plan.blocks; b++)
			say(out, session_heard(s, b));
	say(out, microphone);
}

static enum message_id parent_sentence(const struct session *s)
{
	static const enum message_id by_day[] = {
		M_PAGE_END_PARENT_A,
		M_PAGE_END_PARENT_B,
		M_PAGE_END_PARENT_C,
	};

	return s->pain ? M_PAGE_END_PARENT_PAIN
		       : by_day[(unsigned)s->plan.day % 3];
}

static void page_end(struct sentences *out, const struct session *s)
{
	double metres = round(session_metres(s) * 10) / 10;

	say(out,
	    message_with(ended_sentence(s->ended),
		CLOCK(frames_to_ms(session_length(s), s->rate))));
	say_bows(out, s);
	if (metres > 0)
		say(out, message_with(M_PAGE_END_METRES, NUMBER(metres)));
	say(out, session_keep(s));
	say_heard(out, s);
	say(out, session_standing(s));
	say(out, session_next_start(s));
	say_id(out, parent_sentence(s));
	if (s->ended != ENDED_INPUT)
		say_id(out, M_PAGE_END_KEYS);
}

static void page_question(struct sentences *out)
{
	say_id(out, M_PAGE_QUESTION);
	say_id(out, M_PAGE_QUESTION_KEYS);
}

void sentences_page(
    struct sentences *out, const struct session *s, enum page page)
{
	switch (page) {
	case PAGE_SORE:
		page_sore(out, s);
		break;
	case PAGE_WHERE:
		page_where(out, s);
		break;
	case PAGE_REST:
		page_rest(out, s);
		break;
	case PAGE_TODAY:
		page_today(out, s);
		break;
	case PAGE_SILENT:
		page_silent(out, s);
		break;
	case PAGE_PAIN:
		page_pain(out);
		break;
	case PAGE_PAIN_WHERE:
		page_pain_where(out, s);
		break;
	case PAGE_LEAVE:
		page_leave(out);
		break;
	case PAGE_END:
		page_end(out, s);
		break;
	case PAGE_QUESTION:
		page_question(out);
		break;
	case PAGE_PLAY:
	case PAGE_OVER:
		break;
	}
}
