/*
 * view_play_large.c - finger, bow, count, question and cue in large letters
 *
 * Each idea has its lane and keeps it.  DOWN stands where a down bow begins
 * and UP where an up bow begins, so that place and word say the same.  A mark
 * stands on the side of its pedal: SHAKY left, CLEAN right, the question in
 * the middle.
 */
#include "evenhand/base/text.h"
#include "signs.h"
#include "view_play.h"

enum { BYTES = 64 };

/* Where large letters may stand, from..to. */
struct lane {
	int row, from, to;
};

enum side { SIDE_LEFT, SIDE_MIDDLE, SIDE_RIGHT };

/* The face of the page, or a lower one where a long word needs it. */
static struct face face_for(const struct layout *l, int columns, const char *s)
{
	struct face f = l->face;

	while (f.scale > 1 && letters_columns(&f, s) > columns)
		f.scale--;
	return f;
}

static void place(struct canvas *c, const struct view *v,
    const struct layout *l, struct lane at, enum side side, unsigned attributes,
    const char *s)
{
	struct face face = face_for(l, at.to - at.from, s);
	int room = at.to - at.from - letters_columns(&face, s);
	int row = at.row + (letters_rows(&l->face) - letters_rows(&face)) / 2;
	int column = at.from;

	if (room < 0 || !letters_can(s)) {
		put_left(c, at.row + letters_rows(&l->face) / 2, at.from, at.to,
		    ATTRIBUTE_STRONG, s);
		return;
	}
	if (side != SIDE_LEFT)
		column += side == SIDE_RIGHT ? room : room / 2;
	letters_draw(c, row, column, attributes, &face, v->ascii, s);
}

static void place_word(struct canvas *c, const struct view *v,
    const struct layout *l, struct lane at, enum side side, unsigned attributes,
    enum message_id id)
{
	char words[WORDS_MAX];

	place(c, v, l, at, side, attributes, words_of(message_of(id), words));
}

/* Right of the finger, all of it. */
static struct lane wide_lane(const struct layout *l)
{
	return (struct lane) { l->large, l->word, l->right };
}

/*
 * The same, but nearer to the finger when the word needs it, or in its place
 * when there is none.
 */
static struct lane lane_for(
    const struct layout *l, const struct now *n, enum message_id id)
{
	struct lane at = wide_lane(l);
	char words[WORDS_MAX];
	int columns = letters_columns(
	    &l->face, words_of(message_of(id), words));
	if (columns > at.to - at.from)
		at.from = l->unit_end + 1;
	if (columns > at.to - at.from && n->unit < 0)
		at.from = l->left;
	return at;
}

/* --- the finger, pair or strings --- */

static const char *unit_name(const struct view *v, int unit)
{
	return unit < 0 ? "" : v->session->wish.routine->unit[unit].name;
}

/* In a change the one who comes. */
static int unit_shown(const struct now *n)
{
	return n->going == GOING_CHANGE ? n->next_unit : n->unit;
}

static void draw_unit(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	struct lane at = { l->large, l->left, l->word - 1 };

	place(c, v, l, at, SIDE_LEFT, ATTRIBUTE_STRONG,
	    unit_name(v, unit_shown(n)));
}

/* --- bow and count --- */

static void draw_bow_word(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	struct lane at = { l->large, l->word, l->word_end };
	bool down = n->bow % 2 == 0;
	enum message_id word = down ? M_VIEW_BIG_DOWN : M_VIEW_BIG_UP;

	if (l->signs)
		word = down ? M_VIEW_SIGN_DOWN : M_VIEW_SIGN_UP;
	place_word(c, v, l, at, down != v->mirror ? SIDE_LEFT : SIDE_RIGHT,
	    ATTRIBUTE_STRONG, word);
}

/* "3/6"; too quick to follow: only how many.  A count-in: only the count. */
static void count_text(const struct now *n, struct text *t)
{
	if (n->still)
		text_format(t, "%d", n->pulses);
	else if (n->going == GOING_COUNT)
		text_format(t, "%d", n->pulse);
	else
		text_format(t, "%d/%d", n->pulse, n->pulses);
}

static void draw_count(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l, struct lane at)
{
	char bytes[BYTES];
	struct text t = text_in(bytes, sizeof(bytes));

	if (n->pulses == 0)
		return;
	count_text(n, &t);
	place(c, v, l, at, SIDE_RIGHT, ATTRIBUTE_PLAIN, bytes);
}

static void draw_bow(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	struct lane at = { l->large, l->count, l->right };

	if (n->air)
		place_word(c, v, l,
		    (struct lane) { l->large, l->left, l->right }, SIDE_LEFT,
		    ATTRIBUTE_STRONG, M_VIEW_BIG_SWING);
	else
		draw_bow_word(c, v, n, l);
	if (l->count >= 0)
		draw_count(c, v, n, l, at);
}

/* --- before the first bow --- */

static void draw_settle(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	place_word(c, v, l, lane_for(l, n, M_VIEW_BIG_READY), SIDE_LEFT,
	    ATTRIBUTE_FAINT, M_VIEW_BIG_READY);
}

/*
 * Without a row for words over them finger and count are two bare digits: each
 * has its name beside it, the finger's on top and the count's at the foot.
 */
static void name_both(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	char bytes[BYTES], words[WORDS_MAX];
	struct text t = text_in(bytes, sizeof(bytes));
	int from = l->unit_end + 1, to;

	count_text(n, &t);
	to = l->right - letters_columns(&l->face, bytes) - 1;
	put_left(c, l->large, from, to, ATTRIBUTE_STRONG,
	    words_of(message_of(play_unit_label(v, n)), words));
	put_right(c, l->large + letters_rows(&l->face) - 1, from, to,
	    ATTRIBUTE_STRONG, words_of(message_of(M_VIEW_COUNTED), words));
}

/* Where word and count have no room side by side, the count. */
static void draw_count_in(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	struct lane at = { l->large, l->count >= 0 ? l->count : l->word,
		l->right };

	if (l->count < 0 && l->label < 0 && n->pulses > 0)
		name_both(c, v, n, l);
	if (l->count >= 0 || n->pulses == 0)
		place_word(c, v, l, lane_for(l, n, M_VIEW_BIG_COUNT), SIDE_LEFT,
		    ATTRIBUTE_FAINT, M_VIEW_BIG_COUNT);
	draw_count(c, v, n, l, at);
}

/* --- marks --- */

/* The shaky ones of a round by name: "~ 2 4". */
static void shaky_names(
    const struct view *v, const struct now *n, struct text *t)
{
	text_add(t, "~");
	for (int i = n->marked.from; i < n->marked.to; i++) {
		const struct played_turn *p = &v->session->turn_played[i];

		if (p->mark != MARK_SHAKY)
			continue;
		text_add(t, " ");
		text_add(t, unit_name(v, p->unit));
	}
}

/* The first of both that has room. */
static void place_either(struct canvas *c, const struct view *v,
    const struct layout *l, struct lane at, enum side side, unsigned attributes,
    const char *better, const char *shorter)
{
	bool room = letters_columns(&l->face, better) <= at.to - at.from;

	place(c, v, l, at, side, attributes, room ? better : shorter);
}

static void draw_mark(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l, struct lane at)
{
	bool clean = n->marked.clean == n->marked.whole;
	bool some = n->marked.clean > 0 && !clean;
	char word[WORDS_MAX], bytes[WORDS_MAX];
	struct text t = text_in(bytes, sizeof(bytes));

	words_of(message_of(clean ? M_VIEW_BIG_CLEAN : M_VIEW_BIG_SHAKY), word);
	if (some)
		shaky_names(v, n, &t);
	else
		text_format(&t, clean ? "%s ✓" : "~ %s", word);
	place_either(c, v, l, at, clean ? SIDE_RIGHT : SIDE_LEFT,
	    ATTRIBUTE_STRONG | (clean ? ATTRIBUTE_CLEAN : ATTRIBUTE_SHAKY),
	    bytes, word);
}

bool play_question_below(const struct layout *l, const struct now *n)
{
	return n->going == GOING_CHANGE && n->asks && l->count < 0;
}

static void draw_change(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	struct lane at = wide_lane(l);

	if (!n->asks) {
		place_word(
		    c, v, l, at, SIDE_LEFT, ATTRIBUTE_FAINT, M_VIEW_BIG_NEXT);
		return;
	}
	if (play_question_below(l, n))
		at = (struct lane) { l->line, l->left, l->right };
	if (n->marked.clean + n->marked.shaky > 0)
		draw_mark(c, v, n, l, at);
	else
		place_word(c, v, l, at, SIDE_MIDDLE, ATTRIBUTE_PLAIN,
		    M_VIEW_BIG_CLEAN_ASK);
}

/* --- the cue --- */

static void draw_large_cue(struct canvas *c, const struct view *v,
    const struct layout *l, const char *cue)
{
	int room = l->right - l->left - letters_columns(&l->cue_face, cue);

	letters_draw(c, l->cue, l->left + room / 2, ATTRIBUTE_PLAIN,
	    &l->cue_face, v->ascii, cue);
}

static void draw_cue(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	const struct session *s = v->session;
	int block = n->block;

	if (n->going == GOING_CHANGE && n->coming == COMING_BLOCK)
		block = n->next_block;

	const char *cue =
	    s->wish.routine->stage[s->plan.block[block].stage].cue;

	if (l->cue_face.scale > 0)
		draw_large_cue(c, v, l, cue);
	else if (l->count >= 0)
		put_middle(c, l->cue, l->left, l->right, ATTRIBUTE_STRONG, cue);
	else
		put_right(c, l->cue, l->left, l->right, ATTRIBUTE_STRONG, cue);
}

void play_large(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l)
{
	if (n->going != GOING_BOW || !n->air)
		draw_unit(c, v, n, l);
	switch (n->going) {
	case GOING_SETTLE:
		draw_settle(c, v, n, l);
		break;
	case GOING_COUNT:
		draw_count_in(c, v, n, l);
		break;
	case GOING_BOW:
		draw_bow(c, v, n, l);
		break;
	case GOING_CHANGE:
		draw_change(c, v, n, l);
		break;
	}
	if (!play_question_below(l, n))
		draw_cue(c, v, n, l);
}
