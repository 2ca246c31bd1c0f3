/*
 * view_play_drain.c - what is left of a change or lead-in, and what to press
 *
 * A bar that grows shorter, without a hand, so that it is never taken for a
 * bow.  It only ever goes out, so it cannot blink.  Each key stands on the
 * side of its pedal.
 */
#include "evenhand/base/text.h"
#include "signs.h"
#include "view_play.h"

enum {
	ALL_ROOM = 22, /* columns that "forward: all clean" wants */
	NEXT_ROOM = 6, /* "next" and room */
};

/* Where the stick is in a bow. */
static int bar_row(const struct layout *l)
{
	return l->line + l->line_rows - 3;
}

/* Beside the finger: under the bow's word, or as near as can be. */
static int beside_from(const struct layout *l)
{
	return l->signs ? l->unit_end + 1 : l->word;
}

static void draw_bar(struct canvas *c, const struct view *v,
    const struct now *n, int row, int from, int to)
{
	int halves = 2 * (to - from);
	int steps = now_steps(v, n, halves);
	int left = (int)((int64_t)halves * (steps - now_step(v, n, steps)) /
	    steps);

	for (int x = 0; 2 * x + 1 <= left; x++) {
		bool whole = 2 * x + 2 <= left;

		if (whole || !v->ascii)
			canvas_put(c, row, from + x, ATTRIBUTE_FAINT,
			    sign_of(whole ? SIGN_FULL : SIGN_LEFT, v->ascii));
	}
}

/* "all clean" where there is room for it, and it is about more than one. */
static const char *key_words(
    const struct view *v, bool forward, int room, char *buffer)
{
	bool each = v->session->plan.marking == MARKING_TURN || room < ALL_ROOM;
	const char *sign = sign_of(
	    forward ? SIGN_FORWARD : SIGN_BACK, v->ascii);
	enum message_id id = forward
	    ? (each ? M_VIEW_FORWARD_CLEAN : M_VIEW_FORWARD_ALL_CLEAN)
	    : (each ? M_VIEW_BACK_SHAKY : M_VIEW_BACK_ALL_SHAKY);

	return words_of(message_with(id, TEXT(sign)), buffer);
}

/* What digits do: whom they mean, where the names do not tell. */
static const char *digit_words(const struct view *v, int room, char *buffer)
{
	struct message m = session_digits(v->session, M_VIEW_DIGITS);

	if (m.id == M_NONE)
		return words_of(message_of(M_VIEW_DIGIT), buffer);
	if (text_columns(words_of(m, buffer)) > room)
		words_of(message_of(M_VIEW_DIGITS_MANY), buffer);
	return buffer;
}

/* Beside the finger, where the question stands below it. */
static void draw_asking_beside(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	char words[WORDS_MAX];
	int from = beside_from(l), room = l->right - from - NEXT_ROOM;

	if (n->coming != COMING_END && l->label < 0)
		put_left(c, l->large, from, l->right, ATTRIBUTE_FAINT,
		    words_of(message_of(M_VIEW_NEXT_SHORT), words));
	if (v->session->plan.marking == MARKING_ROUND && n->unit >= 0 &&
	    text_columns(digit_words(v, room, words)) <= room)
		put_right(c, l->large, from, l->right, ATTRIBUTE_FAINT, words);
	draw_bar(c, v, n, l->large + 1, from, l->right);
	if (n->marked.clean + n->marked.shaky > 0)
		play_mark_words(v, n, words);
	else if (text_columns(play_asked_words(v, n, words)) > l->right - from)
		words_of(message_of(M_VIEW_ASK_SHORT), words);
	put_left(c, l->large + 2, from, l->right, ATTRIBUTE_PLAIN, words);
	put_left(c, l->large + 3, from, l->right, ATTRIBUTE_STRONG,
	    key_words(v, false, l->right - from, words));
	put_right(c, l->large + 4, from, l->right, ATTRIBUTE_STRONG,
	    key_words(v, true, l->right - from, words));
}

static void draw_asking(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	char words[WORDS_MAX];
	int row = bar_row(l);

	draw_bar(c, v, n, row, l->left, l->right);
	put_left(c, row + 1, l->left, l->right, ATTRIBUTE_STRONG,
	    key_words(v, false, l->right - l->left, words));
	put_right(c, row + 1, l->left, l->right, ATTRIBUTE_STRONG,
	    key_words(v, true, l->right - l->left, words));
	if (n->marked.clean + n->marked.shaky > 0)
		put_middle(c, row + 2, l->left, l->right, ATTRIBUTE_FAINT,
		    words_of(message_of(M_VIEW_TAKE_BACK), words));
	else if (v->session->plan.marking == MARKING_ROUND && n->unit >= 0)
		put_middle(c, row + 2, l->left, l->right, ATTRIBUTE_FAINT,
		    digit_words(v, l->right - l->left, words));
}

static void draw_lead(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	char words[WORDS_MAX];
	int row = bar_row(l);
	struct message m = n->going == GOING_SETTLE
	    ? message_of(M_VIEW_SETTLE)
	    : message_with(M_VIEW_COUNT_IN, WHOLE(n->bow + 1), WHOLE(n->bows));

	draw_bar(c, v, n, row, l->left, l->right);
	put_left(c, row + 1, l->left, l->right, ATTRIBUTE_STRONG,
	    words_of(m, words));
}

void play_drain(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l)
{
	if (play_question_below(l, n))
		draw_asking_beside(c, v, n, l);
	else if (n->going == GOING_CHANGE && n->asks)
		draw_asking(c, v, n, l);
	else if (n->going == GOING_CHANGE)
		draw_bar(c, v, n, bar_row(l), l->left, l->right);
	else if (n->going != GOING_BOW)
		draw_lead(c, v, n, l);
}

int64_t play_drain_change(
    const struct view *v, const struct now *n, const struct layout *l)
{
	int from = play_question_below(l, n) ? beside_from(l) : l->left;

	return now_step_change(v, n, now_steps(v, n, 2 * (l->right - from)));
}
