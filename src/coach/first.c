/*
 * first.c - the first minutes, from part to part
 */
#include "evenhand/coach/first.h"

#include <string.h>

#include "evenhand/base/frames.h"
#include "first_parts.h"
#include "session_parts.h"

/* What one event or one key can bring about, and to spare. */
enum { ROOM = UNITS_MAX + 6 };

bool first_due(const struct history *h, bool seen)
{
	return !seen && !history_begun(h);
}

bool first_shows(const struct first *f)
{
	return f->part != FIRST_OVER;
}

bool first_plays(const struct first *f)
{
	return f->part == FIRST_HEAR || f->part == FIRST_TRY;
}

void first_show(struct first *f, enum first_part part, struct effects *out)
{
	f->part = part;
	effect_add(out, EFFECT_PAGE)->page = f->session->page;
}

void first_begin(struct first *f, struct session *s, const struct plan_wish *w,
    int rate, bool teach, struct effects *out)
{
	memset(f, 0, sizeof(*f));
	f->session = s;
	f->wish = *w;
	f->rate = rate;
	f->last_press = -frames_of_ms(REPEAT_MS, rate);
	f->part = FIRST_OVER;
	if (!teach) {
		session_begin(s, w, rate, out);
		return;
	}
	first_prepare(f, FIRST_HEAR);
	out->count = 0;
	out->more = false;
	first_show(f, FIRST_WELCOME, out);
}

/* --- on to the session --- */

static void hand_out_all(struct first *f, struct effects *out)
{
	for (int i = 0; i < f->inner.count; i++)
		*effect_add(out, f->inner.at[i].kind) = f->inner.at[i];
	f->inner.count = 0;
}

/* The session begins, at the frame that is reached. */
static void go_on(struct first *f, struct effects *out)
{
	struct session *s = f->session;
	bool hurt = f->part == FIRST_PAIN, whole = f->part == FIRST_LAST;

	first_hush(f, out);
	session_begin(s, &f->wish, f->rate, &f->inner);
	f->part = FIRST_OVER;
	s->now = f->now;
	s->last_key = f->last_key;
	s->last_press = f->last_press;
	s->lost_ms = f->lost_ms;
	s->silent_device = f->silent_device;
	s->taught = whole;
	if (hurt) {
		f->inner.count = 0;
		page_hurt(s, &f->inner);
	}
	hand_out_all(f, out);
}

/* Three minutes without a key: the session's own end of that. */
static void alone(struct first *f, struct effects *out)
{
	int before = out->count;

	go_on(f, out);
	/* Its first page would only flash by. */
	out->count = before;
	page_alone(f->session, out);
}

/* --- keys --- */

static void key_forward(struct first *f, enum key key, struct effects *out)
{
	if (key == KEY_FORWARD)
		first_show(f, FIRST_BACK, out);
	else
		effect_say(out,
		    message_of(key == KEY_BACK ? M_FIRST_FORWARD_NOT
					       : M_FIRST_KEY_NOT));
}

static void key_back(struct first *f, enum key key, struct effects *out)
{
	if (key == KEY_BACK)
		first_show(f, FIRST_LISTEN, out);
	else
		effect_say(out,
		    message_of(key == KEY_FORWARD ? M_FIRST_BACK_NOT
						  : M_FIRST_KEY_NOT));
}

/* Back on a silent page: what was silenced is left out. */
static void leave_out(struct first *f, struct effects *out)
{
	f->session->page = PAGE_SORE;
	first_show(f, f->silenced == FIRST_TRY ? FIRST_LAST : FIRST_MARK, out);
}

/* A page with two answers. */
static void answer(struct first *f, bool forward, struct effects *out)
{
	const struct input on = {
		.kind = INPUT_KEY, .frame = f->now, .key = KEY_FORWARD
	};

	switch (f->part) {
	case FIRST_WELCOME:
		forward ? first_show(f, FIRST_FORWARD, out) : go_on(f, out);
		break;
	case FIRST_LISTEN:
		forward ? first_play(f, FIRST_HEAR, out)
			: first_show(f, FIRST_MARK, out);
		break;
	case FIRST_MARK:
		forward ? first_play(f, FIRST_TRY, out)
			: first_show(f, FIRST_LAST, out);
		break;
	case FIRST_LAST:
		forward ? go_on(f, out) : first_show(f, FIRST_MARK, out);
		break;
	case FIRST_SILENT:
		forward ? first_pass(f, &on, out) : leave_out(f, out);
		break;
	case FIRST_PAIN:
		forward ? first_show(f, f->slip_to, out) : go_on(f, out);
		break;
	default:
		break;
	}
}

/* Everything stops. */
static void hurt(struct first *f, struct effects *out)
{
	if (f->part == FIRST_PAIN)
		return;
	if (first_plays(f)) {
		first_hush(f, out);
		/* The session waits where it would after a silence. */
		f->session->page = PAGE_SILENT;
		f->silenced = f->part;
		f->slip_to = FIRST_SILENT;
	} else {
		f->slip_to = f->part;
	}
	first_show(f, FIRST_PAIN, out);
}

/* A press; whether it counts. */
static bool press(struct first *f, enum key key)
{
	int64_t since = f->now - f->last_press;

	f->last_press = f->now;
	if (since < frames_of_ms(REPEAT_MS, f->rate) && key != KEY_HURT)
		return false;
	f->last_key = f->now;
	return true;
}

/* One of its pages, and a key that is no special one. */
static void page_takes(struct first *f, enum key key, struct effects *out)
{
	bool forward = key == KEY_FORWARD || key == KEY_CLEAN;
	bool back = key == KEY_BACK || key == KEY_SHAKY;

	/* It was meant for what sounded a moment ago. */
	if (f->now < f->open_at)
		return;
	if (f->part == FIRST_FORWARD)
		key_forward(f, key, out);
	else if (f->part == FIRST_BACK)
		key_back(f, key, out);
	else if (forward || back)
		answer(f, forward, out);
}

static void take_key(
    struct first *f, const struct input *in, struct effects *out)
{
	if (!press(f, in->key))
		return;
	if (in->key == KEY_HURT)
		hurt(f, out);
	else if (in->key == KEY_LEAVE)
		go_on(f, out);
	else if (first_plays(f))
		first_pass(f, in, out);
	else if (in->key == KEY_HELP)
		effect_say(out, first_help(f));
	else if (in->key != KEY_LEAF)
		page_takes(f, in->key, out);
}

/* --- steps --- */

static void take_sound(struct first *f, bool lost, struct effects *out)
{
	if (lost != f->silent_device)
		effect_say(out,
		    message_of(
			lost ? M_SESSION_SOUND_LOST : M_SESSION_SOUND_BACK));
	f->silent_device = lost;
}

static void take(struct first *f, const struct input *in, struct effects *out)
{
	switch (in->kind) {
	case INPUT_KEY:
		take_key(f, in, out);
		break;
	case INPUT_SOUND_LOST:
	case INPUT_SOUND_BACK:
		if (first_plays(f))
			first_pass(f, in, out);
		else
			take_sound(f, in->kind == INPUT_SOUND_LOST, out);
		break;
	case INPUT_GAP:
		f->lost_ms += in->lost_ms;
		if (first_plays(f))
			first_pass(f, in, out);
		break;
	case INPUT_END:
		go_on(f, out);
		session_step(f->session, in, &f->inner);
		hand_out_all(f, out);
		break;
	case INPUT_FRAME:
	case INPUT_DROPOUT:
	case INPUT_HEARD:
	case INPUT_WORDS:
		break;
	}
}

static bool has_room(struct effects *out)
{
	out->more = SESSION_EFFECTS_MAX - out->count < ROOM;
	return !out->more;
}

/* What is due at a frame. */
static void event(struct first *f, int64_t frame, struct effects *out)
{
	const struct input in = { .kind = INPUT_FRAME, .frame = frame };

	if (frame > f->now)
		f->now = frame;
	if (first_plays(f))
		first_pass(f, &in, out);
	else
		alone(f, out);
}

/* The shell reads the clock and the last press in the session. */
static void agree(struct first *f)
{
	f->session->now = f->now;
	f->session->last_press = f->last_press;
}

void first_step(struct first *f, const struct input *in, struct effects *out)
{
	if (!first_shows(f)) {
		session_step(f->session, in, out);
		return;
	}
	out->count = 0;
	while (first_shows(f) && first_wake(f) <= in->frame) {
		if (!has_room(out))
			return;
		event(f, first_wake(f), out);
	}
	if (!has_room(out) || !first_shows(f))
		return;
	if (in->frame > f->now)
		f->now = in->frame;
	take(f, in, out);
	agree(f);
}

int64_t first_wake(const struct first *f)
{
	if (!first_shows(f) || first_plays(f))
		return session_wake(f->session);
	return f->last_key + frames_of_ms(NO_KEY_MS, f->rate);
}

bool first_waits(const struct first *f)
{
	return first_shows(f) ? !first_plays(f) : session_waits(f->session);
}

struct message first_help(const struct first *f)
{
	static const enum message_id keys[] = {
		[FIRST_WELCOME] = M_FIRST_WELCOME_KEYS,
		[FIRST_FORWARD] = M_FIRST_FORWARD,
		[FIRST_BACK] = M_FIRST_BACK,
		[FIRST_LISTEN] = M_FIRST_LISTEN_KEYS,
		[FIRST_MARK] = M_FIRST_MARK_GO,
		[FIRST_LAST] = M_FIRST_LAST_KEYS,
		[FIRST_SILENT] = M_FIRST_SILENT_KEYS,
		[FIRST_PAIN] = M_FIRST_PAIN_KEYS,
		[FIRST_OVER] = M_NONE,
	};

	if (!first_shows(f) || first_plays(f))
		return session_help(f->session);
	return message_of(keys[f->part]);
}
