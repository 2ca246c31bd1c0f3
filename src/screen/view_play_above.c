/*
 * view_play_above.c - stage and time, and the words over the large letters
 *
 * Nothing here need be read while both hands play.  The time used moves every
 * ten seconds only, so that it does not hurry anybody.
 */
#include "evenhand/base/frames.h"
#include "evenhand/base/text.h"
#include "view_play.h"

enum { TIME_STEP_MS = 10000, MINUTE_S = 60 };

static int64_t used_ms(const struct view *v)
{
	const struct session *s = v->session;
	int64_t frames = v->heard - s->first_sound;

	if (frames < 0)
		return 0;

	int64_t ms = frames_to_ms(frames, s->rate);

	return ms - ms % TIME_STEP_MS;
}

int64_t play_time_change(const struct view *v)
{
	const struct session *s = v->session;

	return s->first_sound +
	    frames_of_ms(used_ms(v) + TIME_STEP_MS, s->rate);
}

/* The minute of the day at which the cap is over at the latest. */
static int end_minute(const struct session *s)
{
	struct moment m = s->plan.now;
	int64_t ms = frames_to_ms(s->first_sound, s->rate) + s->plan.cap_ms +
	    s->lost_ms;

	m.utc += (ms + 999) / 1000 + MINUTE_S - 1;
	return moment_minute(m);
}

static int put_time(struct canvas *c, const struct view *v, int to)
{
	const struct session *s = v->session;
	char words[WORDS_MAX];
	struct message m = message_with(
	    M_VIEW_TIME, CLOCK(used_ms(v)), CLOCK(s->plan.cap_ms));

	/* The first minutes take as long as they take. */
	if (v->first && first_shows(v->first))
		return 0;
	if (c->columns >= 72)
		m = message_with(M_VIEW_TIME_ENDS, CLOCK(used_ms(v)),
		    CLOCK(s->plan.cap_ms), TIME(end_minute(s)));
	return put_right(c, 0, 0, to, ATTRIBUTE_FAINT, words_of(m, words));
}

static struct message stage_message(
    const struct view *v, const struct now *n, bool brief)
{
	const struct session *s = v->session;
	const struct plan_block *b = &s->plan.block[n->block];
	const char *title = s->wish.routine->stage[b->stage].title;

	if (brief)
		return message_with(M_VIEW_STAGE, TEXT(title));
	if (n->air)
		return message_with(M_VIEW_STAGE_AIR, TEXT(title));
	return message_with(
	    b->kind == BLOCK_RECAP ? M_VIEW_STAGE_RECAP : M_VIEW_STAGE_WORK,
	    TEXT(title), WHOLE(s->at.pulses));
}

static void put_top(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l)
{
	char words[WORDS_MAX];
	int left = l->left, right = c->columns - l->left;
	int room;

	/* Where the question takes all rows, what is new takes this one. */
	if (play_question_below(l, n) &&
	    play_news(v, n, l->right - l->left, words)) {
		put_left(c, 0, left, right, ATTRIBUTE_STRONG, words);
		return;
	}
	room = right - put_time(c, v, right) - 2;
	words_of(stage_message(v, n, false), words);
	if (text_columns(words) > room - left)
		words_of(stage_message(v, n, true), words);
	put_left(c, 0, left, room, ATTRIBUTE_STRONG, words);
}

/* --- over the large letters --- */

enum message_id play_unit_label(const struct view *v, const struct now *n)
{
	bool next = n->going == GOING_CHANGE;

	switch (v->session->wish.routine->take) {
	case TAKE_PAIRS:
		return next ? M_VIEW_NEXT_FINGERS : M_VIEW_FINGERS;
	case TAKE_STRINGS:
		return next ? M_VIEW_NEXT_STRINGS : M_VIEW_STRINGS;
	case TAKE_FINGERS:
		break;
	}
	return next ? M_VIEW_NEXT_FINGER : M_VIEW_FINGER;
}

/* The word, or a shorter one, or none. */
static void put_label(struct canvas *c, const struct layout *l, int from,
    int to, enum message_id id, enum message_id shorter)
{
	char words[WORDS_MAX];

	words_of(message_of(id), words);
	if (text_columns(words) > to - from)
		words_of(message_of(shorter), words);
	if (text_columns(words) <= to - from)
		put_left(c, l->label, from, to, ATTRIBUTE_FAINT, words);
}

const char *play_asked_words(
    const struct view *v, const struct now *n, char *buffer)
{
	char who[WORDS_MAX];

	if (n->unit < 0)
		return words_of(message_of(M_VIEW_ASK_SWING), buffer);
	if (v->session->plan.marking == MARKING_ROUND)
		return words_of(message_of(M_VIEW_ASK_ROUND), buffer);
	words_of(session_unit(v->session, n->unit), who);
	return words_of(message_with(M_VIEW_ASK_UNIT, TEXT(who)), buffer);
}

/* Over the question what it is about, over single shaky ones the word. */
static const char *asked_label(
    const struct view *v, const struct now *n, char *buffer)
{
	const struct marked *m = &n->marked;

	if (m->shaky > 0 && m->clean > 0)
		return words_of(message_of(M_VIEW_SHAKY_ONES), buffer);
	return play_asked_words(v, n, buffer);
}

/* Over the count: pulses of a bow, or parts of a swing in the air. */
static const char *count_label(const struct now *n, int room, char *buffer)
{
	words_of(message_of(n->air ? M_VIEW_PART : M_VIEW_PULSE), buffer);
	if (text_columns(buffer) > room)
		words_of(message_of(M_VIEW_PART_SHORT), buffer);
	return buffer;
}

static void put_labels(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	int unit = n->going == GOING_CHANGE ? n->next_unit : n->unit;
	char words[WORDS_MAX];

	if (unit >= 0)
		put_label(c, l, l->left, l->word - 1, play_unit_label(v, n),
		    n->going == GOING_CHANGE ? M_VIEW_NEXT_SHORT : M_NONE);
	if (n->going == GOING_CHANGE && n->asks && !play_question_below(l, n))
		put_middle(c, l->label, l->word, l->right, ATTRIBUTE_FAINT,
		    asked_label(v, n, words));
	if (n->going != GOING_BOW)
		return;
	if (!n->air)
		put_label(c, l, l->word, l->word_end, M_VIEW_BOW, M_NONE);
	if (l->count >= 0 && n->pulses > 0)
		put_right(c, l->label, l->word_end, l->right, ATTRIBUTE_FAINT,
		    count_label(n, l->right - l->word_end, words));
}

/* The count where it has no room in large letters. */
static void put_count(
    struct canvas *c, const struct now *n, const struct layout *l)
{
	char words[WORDS_MAX];
	struct message m = n->still
	    ? message_with(M_VIEW_PULSES, WHOLE(n->pulses))
	    : message_with(n->air ? M_VIEW_PART_OF : M_VIEW_PULSE_OF,
		  WHOLE(n->pulse), WHOLE(n->pulses));

	int left = l->left;

	if (n->going != GOING_BOW || n->pulses == 0)
		return;
	if (l->signs && !n->air)
		left += 1 +
		    put_left(c, l->counted, left, l->right, ATTRIBUTE_STRONG,
			words_of(message_of(n->bow % 2 == 0 ? M_VIEW_BIG_DOWN
							    : M_VIEW_BIG_UP),
			    words));
	put_left(c, l->counted, left, l->right, ATTRIBUTE_STRONG,
	    words_of(m, words));
}

void play_above(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l)
{
	put_top(c, v, n, l);
	if (l->label >= 0)
		put_labels(c, v, n, l);
	if (l->count < 0 && !play_question_below(l, n))
		put_count(c, n, l);
}
