/*
 * view_page_text.c - the sentences of a page, set into its flow
 *
 * What each sentence is for gives it a place in the order and a look:
 *
 *	plan		0:28  again:      First to fourth position. ...
 *	teacher's note	strong
 *	watch for	with a dot before it
 *	caution		! with a sign of its own
 *	one to keep	in a frame
 */
#include "view_page_text.h"

#include <string.h>

#include "signs.h"
#include "view_first.h"

enum {
	TIME_COLUMNS = 6,  /* "2:20" and room */
	PART_COLUMNS = 18, /* and "in the air:" */
	PARTS_FROM = 56,   /* columns from which on the parts are a table */
	KEY_COLUMNS = 8,   /* "Space:" and room */
	SIGN_COLUMNS = 2,
	WORDS_BYTES = 1024,
};

/* In the order in which they stand. */
enum kind {
	KIND_URGENT, /* cautions, where something hurts */
	KIND_STOP,
	KIND_KEEP,
	KIND_OTHERWISE, /* what is not as always today */
	KIND_PART,
	KIND_SORE, /* cautions because of it */
	KIND_NOTE,
	KIND_WATCH,
	KIND_CARE,
	KIND_SOON, /* when the next time is */
	KIND_TEXT,
	KIND_SAY,
	KIND_KEY,
	KIND_HOW, /* how to mark */
	KIND_AID, /* what the program is, among its keys */
	KIND_COUNT
};

static enum kind care_of(const struct view *v, enum message_id id)
{
	if (v->help)
		return KIND_AID;
	if (v->session->page != PAGE_TODAY)
		return KIND_URGENT;
	return id == M_COACH_CAUTION_SKIN || id == M_COACH_CAUTION_PAIN ||
		id == M_COACH_CAUTION_NUMB
	    ? KIND_SORE
	    : KIND_CARE;
}

static enum kind kind_of(const struct view *v, enum message_id id)
{
	if (id == M_SESSION_STOP_NOW)
		return KIND_STOP;
	if (story_is_care(id))
		return care_of(v, id);
	switch (id) {
	case M_SESSION_KEEP_FIRST_GO:
	case M_SESSION_KEEP_SHAKY:
	case M_SESSION_KEEP_AIR:
	case M_SESSION_KEEP_CLEAN:
	case M_SESSION_KEEP_CHECK:
		return KIND_KEEP;
	case M_COACH_LINE_AIR:
	case M_COACH_LINE_RECAP:
	case M_COACH_LINE_WORK:
	case M_COACH_LINE_END_EVEN:
	case M_COACH_LINE_END_EACH:
	case M_COACH_LINE_END_AIR:
		return KIND_PART;
	case M_COACH_HURT:
	case M_COACH_HURT_ALL:
	case M_COACH_AIR_ONLY:
	case M_COACH_EASED:
	case M_COACH_NO_WORK:
		return KIND_OTHERWISE;
	case M_COACH_LINE_NOTE:
		return KIND_NOTE;
	case M_PAGE_TODAY_CHECK:
	case M_PAGE_TODAY_FEEL:
		return KIND_WATCH;
	case M_PAGE_TODAY_SAY:
		return KIND_SAY;
	case M_PAGES_HELP_SILENCE:
	case M_PAGES_HELP_HURTS:
	case M_PAGES_HELP_CLEAN:
	case M_PAGES_HELP_SHAKY:
	case M_PAGES_HELP_LEVEL:
	case M_PAGES_HELP_LEAF:
	case M_PAGES_HELP_LEAVE:
	case M_PAGES_HELP_HELP:
		return KIND_KEY;
	case M_SESSION_NEXT_PAIN:
	case M_SESSION_NEXT_PAIN_NIGHT:
	case M_SESSION_NEXT_TODAY:
	case M_SESSION_NEXT_ANY:
	case M_SESSION_NEXT_TOMORROW:
	case M_SESSION_NEXT_AFTER_SLEEP:
		return KIND_SOON;
	case M_PAGE_FIRST_KEYS:
	case M_PAGE_PLAY:
	case M_PAGE_PLAY_TURN:
	case M_PAGE_PLAY_ROUND:
	case M_PAGE_PLAY_DIGITS:
	case M_PAGE_FIRST_MARKS:
		return KIND_HOW;
	default:
		return KIND_TEXT;
	}
}

/* --- one sentence --- */

/* The start of a sentence, kept as a piece of its own. */
static const char *start_of(struct flow *f, const char *words, size_t bytes)
{
	char start[WORDS_BYTES];
	struct text t = text_in(start, sizeof(start));

	text_add_bytes(&t, words, bytes);
	return flow_keep(f, start);
}

/*
 * On the smallest screens a part is its name: how its turns go is heard and
 * seen as they come, and told by `evenhand today`.
 */
static const char *brief_part(struct flow *f, const char *words)
{
	const char *end = strstr(words, ". ");

	if (!f->brief || !end)
		return words;
	return start_of(f, words, (size_t)(end + 1 - words));
}

/* Time, what it is, and the rest, under each other in three columns. */
static void set_part(struct flow *f, unsigned attributes, const char *words)
{
	size_t time = strcspn(words, " ");
	const char *rest = words + time + strspn(words + time, " ");
	const char *colon = strstr(rest, ": ");
	const char *clock = start_of(f, words, time);

	if (f->width < PARTS_FROM || !colon) {
		flow_named(
		    f, attributes, clock, TIME_COLUMNS, brief_part(f, rest));
		return;
	}

	size_t name = (size_t)(colon - rest) + 1;
	char spaced[WORDS_BYTES];
	struct text t = text_in(spaced, sizeof(spaced));

	text_add(&t, clock);
	while (t.length < TIME_COLUMNS)
		text_add(&t, " ");
	text_add_bytes(&t, rest, name);
	flow_named(
	    f, attributes, flow_keep(f, spaced), PART_COLUMNS, rest + name + 1);
}

/* "Space: silence", the key in a column of its own. */
static void set_key(struct flow *f, const char *words)
{
	const char *colon = strstr(words, ": ");
	size_t name = (size_t)(colon - words) + 1;

	flow_named(f, ATTRIBUTE_PLAIN, start_of(f, words, name), KEY_COLUMNS,
	    words + name + 1);
}

static void set_sentence(
    struct flow *f, enum kind kind, const struct sentence *s)
{
	const char *words = s->words;

	if (story_is_care(s->id)) {
		flow_named(f, ATTRIBUTE_CARE, message_sentence(M_PAGES_CARE),
		    SIGN_COLUMNS, words);
		return;
	}
	switch (kind) {
	case KIND_KEEP:
		if (f->frames)
			flow_frame(f, ATTRIBUTE_STRONG, words, 1);
		else
			flow_words(f, ATTRIBUTE_STRONG, words);
		break;
	case KIND_PART:
		set_part(f,
		    s->id == M_COACH_LINE_WORK ? ATTRIBUTE_STRONG
					       : ATTRIBUTE_PLAIN,
		    words);
		break;
	case KIND_NOTE:
		flow_words(f, ATTRIBUTE_STRONG, words);
		break;
	case KIND_WATCH:
		flow_named(f, ATTRIBUTE_PLAIN, sign_of(SIGN_ITEM, f->ascii),
		    SIGN_COLUMNS, words);
		break;
	case KIND_KEY:
		set_key(f, words);
		break;
	default:
		flow_words(f, ATTRIBUTE_PLAIN, words);
		break;
	}
}

/* --- what is no sentence of line mode --- */

/* The cue of the stage worked on, before what to watch for. */
static void set_cue(struct flow *f, const struct session *s)
{
	const char *cue = s->wish.routine->stage[s->plan.work_stage].cue;
	struct message m = message_with(M_PAGES_CUE, TEXT(cue));
	char words[WORDS_BYTES];

	if (!*cue)
		return;
	message_text(&m, words, sizeof(words));
	flow_words(f, ATTRIBUTE_STRONG, flow_keep(f, words));
}

/* --- all of it --- */

static void set_kind(struct flow *f, const struct story *story,
    const struct view *v, enum kind kind)
{
	bool first = true;

	for (int i = 0; i < story->told.count; i++) {
		const struct sentence *s = &story->told.at[i];

		if (kind_of(v, s->id) != kind)
			continue;
		if (first)
			flow_gap(f);
		first = false;
		set_sentence(f, kind, s);
	}
}

/* Where a page says something of its own between the sentences. */
static void set_own(struct flow *f, const struct view *v, enum kind after,
    bool pictures, int room)
{
	const struct session *s = v->session;
	bool where = s->page == PAGE_WHERE || s->page == PAGE_PAIN_WHERE;

	/* Before the first session its pages are not the ones that are seen. */
	if (v->help || view_first_shows(v))
		return;
	if (s->page == PAGE_QUESTION && after == KIND_URGENT)
		page_typed(f, v->typed ? v->typed : "", room);
	if (where && after == KIND_URGENT) {
		flow_gap(f);
		/* With a row for what a digit does. */
		page_choices(f, s, room - 1 - f->gaps);
	}
	if (s->page == PAGE_TODAY && after == KIND_NOTE) {
		flow_gap(f);
		set_cue(f, s);
	}
	if (!pictures)
		return;
	if (s->page == PAGE_TODAY && after == KIND_WATCH)
		page_scale(f, s);
	if (s->page == PAGE_END && !s->pain && after == KIND_SOON) {
		page_bars(f, s);
		page_tops(f, s);
	}
}

static bool today_again(const struct view *v)
{
	const struct session *s = v->session;

	return !v->help && s->page == PAGE_TODAY && s->wish.history &&
	    s->wish.history->sittings > 0;
}

void page_text(struct flow *f, const struct story *story, const struct view *v,
    bool pictures, int room)
{
	for (int k = 0; k < KIND_COUNT; k++) {
		/* Who has practised before finds the keys behind "?". */
		if (k == KIND_HOW && f->brief && today_again(v))
			continue;
		set_kind(f, story, v, (enum kind)k);
		set_own(f, v, (enum kind)k, pictures, room);
	}
}
