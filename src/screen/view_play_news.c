/*
 * view_play_news.c - what was said and is not seen on the page anyway
 *
 * Who comes, what is asked and what was marked have their places; said once
 * more they would only grow old there.
 */
#include "evenhand/base/text.h"
#include "view_play.h"

/* Said in as few words as there was time for; here is room for more. */
static bool is_heard(enum message_id id)
{
	switch (id) {
	case M_HEARD_TWO:
	case M_HEARD_BOW:
	case M_HEARD_SAY_COUNT:
	case M_HEARD_SAY_FEW:
	case M_HEARD_SAY_LISTEN:
	case M_HEARD_SAY_CLEAN_MISSING:
	case M_HEARD_SAY_MISSING:
	case M_HEARD_SAY_SHORT:
	case M_HEARD_SAY_LATE:
	case M_HEARD_SAY_EARLY:
	case M_HEARD_SAY_SWINGS:
	case M_HEARD_SAY_UNHEARD:
	case M_HEARD_SAY_ELSEWHERE:
		return true;
	default:
		return false;
	}
}

static bool seen_anyway(enum message_id id)
{
	switch (id) {
	case M_NONE:
	case M_SESSION_LEAD_AIR:
	case M_SESSION_LEAD_RECAP:
	case M_SESSION_LEAD_WORK:
	case M_SESSION_CUE_FIRST:
	case M_SESSION_FIRST:
	case M_SESSION_CUE:
	case M_SESSION_NEXT:
	case M_SESSION_MARK_TURN:
	case M_SESSION_MARK_TURN_NEXT:
	case M_SESSION_MARK_ROUND:
	case M_SESSION_MARK_ROUND_NEXT:
	case M_SESSION_MARKED_CLEAN:
	case M_SESSION_MARKED_SHAKY:
	case M_SESSION_UNMARKED:
	case M_SESSION_ROUND_CLEAN:
	case M_SESSION_ROUND_SHAKY:
	case M_SESSION_ROUND_SOME:
	case M_SESSION_ROUND_UNMARKED:
	case M_SESSION_AGAIN:
	case M_SESSION_GOES_ON:
		return true;
	default:
		return is_heard(id);
	}
}

/* What was heard of the block before, for as long as it is still. */
static struct message heard(
    const struct view *v, const struct now *n, int columns)
{
	const struct session *s = v->session;
	bool lead = n->going == GOING_SETTLE || n->going == GOING_COUNT;

	if (!lead || s->told_block < 0)
		return message_of(M_NONE);
	return session_heard_in(s, s->told_block, columns);
}

/* What is true only until the change is over. */
static bool of_the_change(enum message_id id)
{
	return id == M_SESSION_NEXT_PULSES || id == M_SESSION_NO_SUCH ||
	    id == M_SESSION_STILL_THERE || id == M_SESSION_STILL_THERE_DIGIT;
}

/* Gone is the sound only until it is heard again. */
static bool is_past(const struct view *v, enum message_id id)
{
	return id == M_SESSION_SOUND_LOST && v->sounding == SOUNDING_ON;
}

bool play_news(
    const struct view *v, const struct now *n, int columns, char *buffer)
{
	struct message of_before = heard(v, n, columns);
	struct text t = text_in(buffer, WORDS_MAX);
	char words[WORDS_MAX];

	if (of_before.id != M_NONE)
		text_add(&t, words_of(of_before, words));
	for (int i = 0; i < v->said; i++) {
		enum message_id id = v->news[i].id;

		if (seen_anyway(id) || is_past(v, id) ||
		    (of_the_change(id) && n->going != GOING_CHANGE))
			continue;
		text_add(&t, t.length > 0 ? " " : "");
		text_add(&t, words_of(v->news[i], words));
	}
	return t.length > 0;
}
