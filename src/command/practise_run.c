/*
 * practise_run.c - a sitting from its first page to its end
 *
 * The device's frames are the only clock, and the session lives at the frame
 * that is at the ear: what is seen, heard and marked is one.  A card holds some
 * frames more, which is why passages are decided ahead; one that holds very
 * many must not come too late, so the session is never further behind than
 * AHEAD_MS.
 *
 * Whatever is due (the session's own wish to be stepped, a key of the script)
 * is stepped at exactly its frame, in order, even when the clock has gone a
 * little further; a live key carries the frame that is reached when it comes.
 * So a script gives the same session paced and unpaced:
 *
 *	paced    wait for a key until the frame is reached, then step
 *	unpaced  let the device go to the frame, then step
 */
#include <signal.h>
#include <string.h>

#include "choices.h"
#include "options.h"
#include "practise.h"

#include "evenhand/base/frames.h"

enum {
	LOOK_MS = 50,	   /* how often the device is looked after */
	AHEAD_MS = 150,	   /* DECIDE_MS, less what a slow loop may take */
	KEY_APART_MS = 300 /* unpaced keys, so that none is a repeat */
};

/* No more keys, and nothing was played: the session has no words for it. */
static void say_no_input(struct practice *p)
{
	bool played = p->session.first_sound >= 0 && !first_shows(&p->first);

	if (!played && !keys_signal())
		practice_say(p,
		    message_of(p->script ? M_COMMAND_SCRIPT_OVER
					 : M_COMMAND_INPUT_GONE));
}

static void step(struct practice *p, const struct input *in)
{
	if (in->kind == INPUT_END)
		say_no_input(p);
	do {
		first_step(&p->first, in, &p->effects);
		practice_effects(p);
	} while (p->effects.more);
}

static int64_t later(int64_t a, int64_t b)
{
	return a > b ? a : b;
}

/* The next frame at which something is due. */
static int64_t due(const struct practice *p)
{
	int64_t wake = first_wake(&p->first);
	int64_t key = p->script ? script_due(p->script, &p->session)
				: INT64_MAX;

	return key < wake ? key : wake;
}

/* Words that nobody said were all: they are kept before the end comes. */
static void keep_typed(struct practice *p, int64_t frame)
{
	const char *words = keys_typed(p->keys);

	if (p->session.page == PAGE_QUESTION && *words)
		step(p,
		    &(struct input) { .kind = INPUT_WORDS,
			.frame = later(frame, p->session.now),
			.words = words });
}

/* Steps what is due up to a frame, each at its own. */
static void step_until(struct practice *p, int64_t frame)
{
	int64_t next;

	while (!p->over && (next = due(p)) <= frame) {
		struct input in = { .kind = INPUT_FRAME, .frame = next };

		/* The session's own time first, then the key. */
		if (first_wake(&p->first) > next)
			in = script_take(p->script, &p->session, next);
		else
			keep_typed(p, next - 1);
		if (!p->over)
			step(p, &in);
	}
}

/* Looks at the clock. */
static void look(struct practice *p)
{
	int64_t heard = device_heard(p->device);
	int64_t ahead = frames_of_ms(AHEAD_MS, p->session.rate);

	if (device_paced(p->device))
		heard = later(heard, device_frame(p->device) - ahead);
	else
		heard = device_frame(p->device);
	p->reached = later(p->reached, heard);
}

/* How long to wait for a key, in ms; -1 for as long as it takes. */
static int wait_ms(const struct practice *p)
{
	int rate = p->session.rate;
	int64_t left;

	if (!device_paced(p->device)) {
		if (p->script || !first_waits(&p->first))
			return 0;
		/* Words being typed are to be seen. */
		return p->session.page == PAGE_QUESTION ? LOOK_MS : -1;
	}
	left = due(p) - p->reached;
	if (left <= 0)
		return 0;
	if (left > frames_of_ms(LOOK_MS, rate))
		return LOOK_MS;
	return (int)(left * 1000 / rate) + 1;
}

/* Lets an unpaced device go on: to the key that came, or to what is due. */
static int64_t reach(struct practice *p, enum keys_got got)
{
	int64_t frame = p->session.now;
	int64_t next = due(p);

	if (device_paced(p->device))
		return p->reached;
	/* Where a live key is waited for, no time passes without one. */
	if (got == KEYS_NONE && (p->script || !first_waits(&p->first)))
		frame = next < INT64_MAX ? next : frame;
	else if (got != KEYS_NONE && first_waits(&p->first))
		frame = later(frame,
		    p->session.last_press +
			frames_of_ms(KEY_APART_MS, p->session.rate));
	device_advance(p->device, frame);
	return frame;
}

/* An input that no key gave, at the frame that is reached. */
static void tell(struct practice *p, struct input in)
{
	step_until(p, p->reached);
	in.frame = later(p->reached, p->session.now);
	if (!p->over)
		step(p, &in);
}

/* Tells the session when this program stood still while time went on. */
static void look_for_gap(struct practice *p)
{
	int64_t lost = device_lost_ms(p->device) - p->lost_ms;

	if (lost == 0)
		return;
	p->lost_ms += lost;
	tell(p, (struct input) { .kind = INPUT_GAP, .lost_ms = lost });
}

/* What the student is told of the sound at first, and each thing once. */
static bool is_news(
    const struct practice *p, enum device_state was, struct message m)
{
	return was == DEVICE_UNHEARD ||
	    (p->heard == DEVICE_MISSING && m.id != p->told_sound);
}

/* Lines count no bow: what is left to follow is said once, at the beginning. */
static void say_by_sight(struct practice *p)
{
	if (!p->screen.terminal && device_paced(p->device))
		practice_say(p, message_of(M_COMMAND_FOLLOW_LINES));
}

/* Tells the session, and at first the student, what became of the sound. */
static void look_for_sound(struct practice *p)
{
	enum device_state state = device_state(p->device);
	enum device_state was = p->heard;
	struct message m;

	for (; p->dropouts < device_dropouts(p->device); p->dropouts++)
		tell(p, (struct input) { .kind = INPUT_DROPOUT });
	if (state == was || state == DEVICE_OPENING || state == DEVICE_UNHEARD)
		return;
	p->heard = state;
	m = device_sentence(p->device);
	if (is_news(p, was, m)) {
		/* At the beginning it joins what the first page was told. */
		if (was != DEVICE_UNHEARD)
			screen_step(p);
		practice_say(p, m);
		p->told_sound = m.id;
		if (was == DEVICE_UNHEARD && state == DEVICE_MISSING)
			say_by_sight(p);
	} else if (state == DEVICE_SOUNDS) {
		tell(p, (struct input) { .kind = INPUT_SOUND_BACK });
	} else if (was == DEVICE_SOUNDS) {
		tell(p, (struct input) { .kind = INPUT_SOUND_LOST });
	}
}

/* Tells the session what was heard of its turns. */
static void look_for_heard(struct practice *p)
{
	struct input in = { .kind = INPUT_HEARD };
	struct listened heard;

	in.heard = &heard;
	while (!p->over && listen_look(p, &in.number, &heard))
		tell(p, in);
}

/* Typing is a sign of life, though it is no key of the session. */
static void look_for_typing(struct practice *p)
{
	const char *now = keys_typed(p->keys);
	struct text typed;

	if (strcmp(now, p->typed) == 0)
		return;
	typed = text_in(p->typed, sizeof p->typed);
	text_add(&typed, now);
	p->screen.stale = true;
	if (device_paced(p->device))
		tell(p, (struct input) { .kind = INPUT_KEY, .key = KEY_OTHER });
}

static void end_input(struct practice *p, int64_t frame)
{
	p->input_over = true;
	/* Ctrl-C takes the words back, too. */
	if (keys_signal() != SIGINT)
		keep_typed(p, frame);
	if (!p->over)
		step(p,
		    &(struct input) { .kind = INPUT_END,
			.frame = later(frame, p->session.now) });
	p->over = true;
}

/* + and -: a step louder or softer, kept for the next time. */
static void change_loudness(struct practice *p, enum key key)
{
	struct settings *s = &p->chosen.now;
	int percent = s->loudness + (key == KEY_LOUDER ? 5 : -5);

	screen_step(p);
	if (!p->keeper) {
		practice_say(p, message_of(M_COMMAND_NO_SOUND));
		return;
	}
	s->loudness = percent < 0 ? 0 : percent > 100 ? 100 : percent;
	p->loudness_changed = true;
	device_level(p->device, choices_level(s->loudness));
	practice_say(p, message_with(M_COMMAND_LOUDNESS, WHOLE(s->loudness)));
}

/* What the shell does with a key; whether it is the session's too. */
static bool take_key(struct practice *p, const struct input *in)
{
	/* First the screen, which clears away what was said before. */
	bool taken = screen_key(p, in->key);

	if (in->key == KEY_LOUDER || in->key == KEY_SOFTER)
		change_loudness(p, in->key);
	return !taken;
}

/* Whoever has gone past the first page is not shown them again. */
static void remember_first(struct practice *p)
{
	struct settings *s = &p->chosen.now;

	if (!p->taught || p->first.part == FIRST_WELCOME || s->first_seen)
		return;
	s->first_seen = true;
	practice_keep(p, SETTING_FIRST_SEEN);
}

/* One turn of the loop: waits, looks at what became due, takes a key. */
static void turn(struct practice *p)
{
	struct input in = { .kind = INPUT_KEY };
	enum keys_got got = keys_next(p->keys, screen_wait_ms(p, wait_ms(p)),
	    &in.key, &in.digit, &in.words);

	device_look(p->device);
	practice_lines_on(p);
	look(p);
	look_for_gap(p);
	look_for_sound(p);
	look_for_heard(p);
	look_for_typing(p);
	in.frame = p->reached = reach(p, got);
	step_until(p, in.frame);
	if (p->over)
		return;
	if (got == KEYS_END || p->mute) {
		end_input(p, in.frame);
		return;
	}
	in.frame = later(in.frame, p->session.now);
	if (got == KEYS_WORDS)
		in.kind = INPUT_WORDS;
	if (got == KEYS_NONE || (got == KEYS_PRESS && !take_key(p, &in)))
		return;
	step(p, &in);
	remember_first(p);
}

void practice_run(struct practice *p)
{
	if (!p->keeper)
		say_by_sight(p);
	practice_effects(p);
	screen_draw(p);
	while (!p->over) {
		turn(p);
		screen_draw(p);
	}
	listen_finish(p);
}
