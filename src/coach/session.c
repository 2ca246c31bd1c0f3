/*
 * session.c - one sitting, step by step
 *
 * A step first does what became due by itself, each thing at its own frame,
 * and then takes the input.  So it makes no difference how often the session
 * is stepped between two keys, or how late.
 */
#include "session_parts.h"

#include <assert.h>
#include <string.h>

#include "evenhand/base/frames.h"

/* What one event or one key can bring about, and to spare. */
enum { ROOM = UNITS_MAX + 6, TALK_BYTES = 1024 };

struct effect *effect_add(struct effects *out, enum effect_kind kind)
{
	assert(out->count < SESSION_EFFECTS_MAX);
	struct effect *e = &out->at[out->count++];

	memset(e, 0, sizeof(*e));
	e->kind = kind;
	return e;
}

void effect_say(struct effects *out, struct message m)
{
	if (m.id != M_NONE)
		effect_add(out, EFFECT_SAY)->message = m;
}

void session_show(struct session *s, enum page page, struct effects *out)
{
	s->page = page;
	effect_add(out, EFFECT_PAGE)->page = page;
}

int64_t session_frames(const struct session *s, int64_t ms)
{
	return frames_of_ms(ms, s->rate);
}

int talk_letters(const struct message *m)
{
	char words[TALK_BYTES];

	return (int)message_text(m, words, sizeof(words)) + 1;
}

/* What was just said is read aloud behind what was said before. */
static void talk(struct session *s, const struct effects *out, int from)
{
	for (int i = from; i < out->count; i++) {
		if (out->at[i].kind != EFFECT_SAY)
			continue;
		if (s->talk_until < s->now)
			s->talk_until = s->now;
		s->talk_until += (int64_t)talk_letters(&out->at[i].message) *
		    s->rate / LETTERS_A_SECOND;
	}
}

static void clear(struct effects *out)
{
	out->count = 0;
	out->more = false;
}

/* Three minutes without a key ended the last sitting: ask why. */
static void ask_why(const struct session *s, struct effects *out)
{
	const struct history *h = s->wish.history;

	if (h && h->sittings > 0 &&
	    h->sitting[h->sittings - 1].ended == ENDED_NO_KEY)
		effect_say(out, message_of(M_SESSION_ASK_WHY));
}

void session_begin_on(struct session *s, const struct plan_wish *w,
    const struct plan *p, int rate, struct effects *out)
{
	memset(s, 0, sizeof(*s));
	s->wish = *w;
	s->plan = *p;
	s->rate = rate;
	s->first_sound = -1;
	s->last_press = -frames_of_ms(REPEAT_MS, rate);
	s->turn = -1;
	s->tell_block = s->told_block = -1;
	clear(out);
	if (p->verdict != VERDICT_PRACTISE || p->blocks == 0) {
		session_show(s, PAGE_REST, out);
		return;
	}
	ask_why(s, out);
	session_show(s, PAGE_SORE, out);
}

void session_begin(
    struct session *s, const struct plan_wish *w, int rate, struct effects *out)
{
	struct plan p;

	plan_make(&p, w);
	session_begin_on(s, w, &p, rate, out);
}

bool session_waits(const struct session *s)
{
	return s->page != PAGE_PLAY && s->page != PAGE_OVER;
}

/*
 * The frame at which nobody pressed a key for three minutes.  Over bows that
 * is looked at when they end, so that no bow is broken off.
 */
static int64_t alone_at(const struct session *s)
{
	if (s->page == PAGE_PLAY && s->phase == PHASE_BOWS)
		return INT64_MAX;
	return s->last_key + session_frames(s, NO_KEY_MS);
}

int64_t session_wake(const struct session *s)
{
	int64_t alone, due;

	if (s->page == PAGE_OVER)
		return INT64_MAX;
	alone = alone_at(s);
	due = s->page == PAGE_PLAY ? play_due(s) : INT64_MAX;
	return alone < due ? alone : due;
}

/* What is due first, at its frame. */
static void event(struct session *s, struct effects *out)
{
	int64_t frame = session_wake(s);
	int from = out->count;

	if (frame > s->now)
		s->now = frame;
	if (alone_at(s) <= frame)
		page_alone(s, out);
	else
		play_event(s, out);
	talk(s, out, from);
}

/* A press; whether it counts. */
static bool press(struct session *s, enum key key)
{
	int64_t since = s->now - s->last_press;

	s->last_press = s->now;
	if (since < session_frames(s, REPEAT_MS) && key != KEY_HURT)
		return false;
	s->last_key = s->now;
	s->asked = false;
	return true;
}

static void take_key(
    struct session *s, const struct input *in, struct effects *out)
{
	struct input key = *in;

	if (!press(s, in->key))
		return;
	if (key.key == KEY_CLEAN)
		key.key = KEY_FORWARD;
	else if (key.key == KEY_SHAKY)
		key.key = KEY_BACK;
	if (key.key == KEY_HELP)
		say_help(s, out);
	else if (key.key == KEY_HURT)
		page_hurt(s, out);
	else if (s->page == PAGE_PLAY)
		play_key(s, &key, out);
	else
		page_key(s, &key, out);
}

/* Over bows the sound that is back tells of itself, and is told of later. */
static void sound_back(struct session *s, struct effects *out)
{
	bool bows = s->page == PAGE_PLAY && s->phase == PHASE_BOWS;

	if (s->silent_device && !bows)
		effect_say(out, message_of(M_SESSION_SOUND_BACK));
	s->back_owed = s->silent_device && bows;
	s->silent_device = false;
}

static void take(struct session *s, const struct input *in, struct effects *out)
{
	switch (in->kind) {
	case INPUT_FRAME:
		break;
	case INPUT_KEY:
		take_key(s, in, out);
		break;
	case INPUT_WORDS:
		s->last_key = s->now;
		page_words(s, in->words ? in->words : "", out);
		break;
	case INPUT_SOUND_LOST:
		if (!s->silent_device)
			effect_say(out, message_of(M_SESSION_SOUND_LOST));
		s->silent_device = true;
		s->back_owed = false;
		break;
	case INPUT_SOUND_BACK:
		sound_back(s, out);
		break;
	case INPUT_DROPOUT:
		s->dropouts += s->page == PAGE_PLAY && s->phase == PHASE_BOWS;
		break;
	case INPUT_HEARD:
		heard_take(s, in, out);
		break;
	case INPUT_GAP:
		s->lost_ms += in->lost_ms;
		stop_gap(s, out);
		break;
	case INPUT_END:
		page_input_over(s, out);
		break;
	}
}

static bool has_room(struct effects *out)
{
	out->more = SESSION_EFFECTS_MAX - out->count < ROOM;
	return !out->more;
}

void session_step(
    struct session *s, const struct input *in, struct effects *out)
{
	int from;

	clear(out);
	while (session_wake(s) <= in->frame) {
		if (!has_room(out))
			return;
		event(s, out);
	}
	if (!has_room(out) || s->page == PAGE_OVER)
		return;
	if (in->frame > s->now)
		s->now = in->frame;
	from = out->count;
	take(s, in, out);
	talk(s, out, from);
}
