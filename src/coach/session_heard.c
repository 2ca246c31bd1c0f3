/*
 * session_heard.c - what was heard of a block, said after its last mark
 *
 * In play it is said in the stillness of the next lead-in, in as many words as
 * are over before the next pulse, or not at all: a screen has room for more,
 * and the end page tells all of it.  That a block could not be heard is said
 * once.
 */
#include "evenhand/coach/listened.h"
#include "session_parts.h"

#include <math.h>

enum { WORDS_BYTES = MESSAGE_TEXT_MAX, WAYS_MAX = 8 };

static bool upper_near(const struct session *s, int block)
{
	const struct plan_block *b = &s->plan.block[block];

	return s->wish.routine->stage[b->stage].upper_near;
}

/* To a tenth: more is not heard. */
static struct argument swings_of(const struct finding *f)
{
	return NUMBER(round((double)f->rate_hz * 10) / 10);
}

/* --- on the end page --- */

/* What was found, as a sentence of its own; M_NONE: the count says it. */
static struct message found_sentence(
    const struct session *s, const struct finding *f)
{
	char unit[UNIT_TEXT_MAX];

	say_unit(s, f->unit, unit);
	switch (f->kind) {
	case FINDING_CLEAN_MISSING:
		return message_with(
		    M_HEARD_CLEAN_MISSING, TEXT(unit), WHOLE(f->count));
	case FINDING_MISSING:
		return message_with(
		    M_HEARD_MISSING, TEXT(unit), WHOLE(f->count));
	case FINDING_SHORT:
		return message_with(M_HEARD_SHORT, TEXT(unit));
	case FINDING_BOW:
		return message_with(M_HEARD_BOW, WHOLE(f->count));
	case FINDING_LATE:
		return message_of(M_HEARD_LATE);
	case FINDING_EARLY:
		return message_of(M_HEARD_EARLY);
	case FINDING_SWINGS:
		return message_with(M_HEARD_SWINGS, swings_of(f));
	default:
		return message_of(M_NONE);
	}
}

static struct message count_sentence(
    const char *title, const struct listened_sum *sum)
{
	if (sum->tops == sum->tops_asked)
		return message_with(
		    M_HEARD_BLOCK_ALL, TEXT(title), WHOLE(sum->tops));
	return message_with(M_HEARD_BLOCK, TEXT(title), WHOLE(sum->tops),
	    WHOLE(sum->tops_asked));
}

static struct message unmeasured(const char *title, enum finding_kind kind)
{
	return message_with(kind == FINDING_ELSEWHERE ? M_HEARD_BLOCK_ELSEWHERE
						      : M_HEARD_BLOCK_UNHEARD,
	    TEXT(title));
}

static const char *title_of(const struct session *s, int block)
{
	return s->wish.routine->stage[s->plan.block[block].stage].title;
}

/* With nothing to count the finding has the title before it. */
static struct message with_title(const char *title, const char *found)
{
	return message_with(M_HEARD_BLOCK_ONLY, TEXT(title), TEXT(found));
}

struct message session_heard(const struct session *s, int block)
{
	char count[WORDS_BYTES], found[WORDS_BYTES];
	const char *title = title_of(s, block);
	struct listened_sum sum;
	struct finding f;
	struct message m;

	listened_sum(&sum, s, block);
	f = finding_of(&sum, upper_near(s, block));
	if (f.kind == FINDING_NONE)
		return message_of(M_NONE);
	if (f.kind == FINDING_UNHEARD || f.kind == FINDING_ELSEWHERE)
		return unmeasured(title, f.kind);
	m = found_sentence(s, &f);
	if (m.id == M_NONE)
		return count_sentence(title, &sum);
	message_text(&m, found, sizeof(found));
	if (sum.tops_asked == 0)
		return with_title(title, found);
	m = count_sentence(title, &sum);
	message_text(&m, count, sizeof(count));
	return message_with(M_HEARD_TWO, TEXT(count), TEXT(found));
}

struct message session_microphone(const struct session *s)
{
	int turns = 0, silent = 0;
	bool far = false;

	for (int b = 0; b < s->plan.blocks; b++) {
		struct listened_sum sum;

		listened_sum(&sum, s, b);
		turns += sum.turns;
		silent += sum.answers[TURN_SILENT];
		far |= sum.far;
	}
	if (turns > 0 && silent == turns)
		return message_of(M_HEARD_DEAF);
	return message_of(far ? M_HEARD_FAR : M_NONE);
}

/* --- in play --- */

/* Ways to say one thing, the fullest first. */
struct ways {
	int count;
	struct message way[WAYS_MAX];
};

static void add_way(struct ways *w, struct message m)
{
	w->way[w->count++] = m;
}

/* Tops of a unit that are missing: from a question down to three words. */
static void missing_ways(
    struct ways *w, const struct session *s, const struct finding *f)
{
	char unit[UNIT_TEXT_MAX];

	say_unit(s, f->unit, unit);
	if (f->kind == FINDING_CLEAN_MISSING)
		add_way(w,
		    message_with(M_HEARD_SAY_CLEAN_MISSING, TEXT(unit),
			WHOLE(f->count)));
	add_way(
	    w, message_with(M_HEARD_SAY_MISSING, TEXT(unit), WHOLE(f->count)));
	add_way(w, message_with(M_HEARD_SAY_LISTEN, TEXT(unit)));
}

static void finding_ways(
    struct ways *w, const struct session *s, const struct finding *f)
{
	char unit[UNIT_TEXT_MAX];

	say_unit(s, f->unit, unit);
	switch (f->kind) {
	case FINDING_CLEAN_MISSING:
	case FINDING_MISSING:
		missing_ways(w, s, f);
		break;
	case FINDING_SHORT:
		add_way(w, message_with(M_HEARD_SAY_SHORT, TEXT(unit)));
		break;
	case FINDING_BOW:
		add_way(w, message_with(M_HEARD_BOW, WHOLE(f->count)));
		break;
	case FINDING_LATE:
		add_way(w, message_of(M_HEARD_SAY_LATE));
		break;
	case FINDING_EARLY:
		add_way(w, message_of(M_HEARD_SAY_EARLY));
		break;
	case FINDING_SWINGS:
		add_way(w, message_with(M_HEARD_SAY_SWINGS, swings_of(f)));
		break;
	case FINDING_UNHEARD:
		add_way(w, message_of(M_HEARD_SAY_UNHEARD));
		break;
	case FINDING_ELSEWHERE:
		add_way(w, message_of(M_HEARD_SAY_ELSEWHERE));
		add_way(w, message_of(M_HEARD_SAY_STRING));
		break;
	case FINDING_ALL:
	case FINDING_COUNT:
	case FINDING_NONE:
		break;
	}
}

/* With the count before it first, and the count alone last. */
static void all_ways(struct ways *w, const struct session *s, int block)
{
	char bytes[2][WORDS_BYTES];
	struct listened_sum sum;
	struct finding f;
	struct message count;

	w->count = 0;
	listened_sum(&sum, s, block);
	f = finding_of(&sum, upper_near(s, block));
	if (f.kind == FINDING_NONE)
		return;
	if (sum.tops_asked == 0) {
		finding_ways(w, s, &f);
		return;
	}
	count = message_with(
	    M_HEARD_SAY_COUNT, WHOLE(sum.tops), WHOLE(sum.tops_asked));
	w->count = 1;
	finding_ways(w, s, &f);
	if (w->count > 1) {
		message_text(&count, bytes[0], WORDS_BYTES);
		message_text(&w->way[1], bytes[1], WORDS_BYTES);
		w->way[0] = message_with(
		    M_HEARD_TWO, TEXT(bytes[0]), TEXT(bytes[1]));
	} else {
		w->count = 0;
	}
	add_way(w, count);
	add_way(w,
	    message_with(
		M_HEARD_SAY_FEW, WHOLE(sum.tops), WHOLE(sum.tops_asked)));
}

struct message session_heard_in(const struct session *s, int block, int letters)
{
	struct ways w;

	all_ways(&w, s, block);
	for (int i = 0; i < w.count; i++)
		if (talk_letters(&w.way[i]) <= letters + 1)
			return w.way[i];
	return message_of(M_NONE);
}

/* A bit for what is told once: what could not be heard; 0 anything else. */
static uint32_t once(const struct session *s, int block)
{
	struct listened_sum sum;
	enum finding_kind kind;

	listened_sum(&sum, s, block);
	kind = finding_of(&sum, upper_near(s, block)).kind;
	return kind == FINDING_UNHEARD || kind == FINDING_ELSEWHERE
	    ? UINT32_C(1) << kind
	    : 0;
}

static bool told_before(const struct session *s, int block)
{
	return s->unheard_said & once(s, block);
}

/* Letters, with a breath, that can be read aloud before a frame. */
static int letters_until(const struct session *s, int64_t end)
{
	int64_t begin = s->talk_until > s->now ? s->talk_until : s->now;

	return end > begin
	    ? (int)((end - begin) * LETTERS_A_SECOND / s->rate) - 1
	    : 0;
}

/* Whether the last turn of a block has its measure, if there will be one. */
static bool all_told(const struct session *s, int block)
{
	for (int i = s->played - 1; i >= 0; i--)
		if (s->turn_played[i].block == block)
			return s->turn_played[i].heard.told;
	return false;
}

void heard_say(struct session *s, struct effects *out)
{
	const struct passing *p = &s->at;
	int block = s->tell_block;
	struct message m;

	if (block < 0 || s->now < s->tell_at || s->phase != PHASE_LEAD ||
	    s->page != PAGE_PLAY || !all_told(s, block))
		return;
	s->tell_block = -1;
	if (told_before(s, block))
		return;
	s->told_block = block;
	m = session_heard_in(s, block,
	    letters_until(
		s, p->frame + session_frames(s, p->passage.settle_ms)));
	/* What there was no time for may still be told after another block. */
	if (m.id != M_NONE)
		s->unheard_said |= once(s, block);
	effect_say(out, m);
}

/* Whether so many letters are enough for more than a count of tops. */
static bool finds_in(const struct session *s, int letters)
{
	struct message m = session_heard_in(s, s->tell_block, letters);

	return m.id != M_NONE && m.id != M_HEARD_SAY_COUNT &&
	    m.id != M_HEARD_SAY_FEW;
}

bool heard_needs(const struct session *s, int full, int brief)
{
	int letters = s->at.passage.settle_ms * LETTERS_A_SECOND / 1000 - 1;

	if (s->tell_block < 0 || !all_told(s, s->tell_block) ||
	    told_before(s, s->tell_block))
		return false;
	return !finds_in(s, letters - full) && finds_in(s, letters - brief);
}

void heard_take(struct session *s, const struct input *in, struct effects *out)
{
	if (in->number < 0 || in->number >= s->played || !in->heard)
		return;
	s->turn_played[in->number].heard = *in->heard;
	heard_say(s, out);
}
