/*
 * view_play_news.c - what was said and is not seen on the page anyway
 *
 * Who comes, what is asked and what was marked have their places; said once
 * more they would only grow old there.
 */
#include "evenhand/base/text.h"
#include "view_play.h"

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
		return false;
	}
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

bool play_news(const struct view *v, const struct now *n, char *buffer)
{
	struct text t = text_in(buffer, WORDS_MAX);
	char words[WORDS_MAX];

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
