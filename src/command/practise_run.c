/*
 * practise_run.c - a sitting from its first page to its end
 *
 * The device's frames are the only clock.  Whatever is due (the session's own
 * wish to be stepped, a key of the script) is stepped at exactly its frame, in
 * order, even when the clock has gone a little further; a live key carries
 * the frame that is reached when it comes.  So a script gives the same
 * session paced and unpaced:
 *
 *	paced    wait for a key until the frame is reached, then step
 *	unpaced  let the device go to the frame, then step
 */
#include "options.h"
#include "practise.h"

#include "evenhand/base/frames.h"

enum {
	LOOK_MS = 50,	   /* how often the device is looked after */
	KEY_APART_MS = 300 /* unpaced keys, so that none is a repeat */
};

/* No more keys, and nothing was played: the session has no words for it. */
static void say_no_input(struct practice *p)
{
	if (p->session.first_sound < 0 && !keys_signal())
		practice_say(p,
		    message_of(p->script ? M_COMMAND_SCRIPT_OVER
					 : M_COMMAND_INPUT_GONE));
}

static void step(struct practice *p, const struct input *in)
{
	if (in->kind == INPUT_END)
		say_no_input(p);
	do {
		session_step(&p->session, in, &p->effects);
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
	int64_t wake = session_wake(&p->session);
	int64_t key = p->script ? script_due(p->script, &p->session)
				: INT64_MAX;

	return key < wake ? key : wake;
}

/* Steps what is due up to a frame, each at its own. */
static void step_until(struct practice *p, int64_t frame)
{
	int64_t next;

	while (!p->over && (next = due(p)) <= frame) {
		struct input in = { .kind = INPUT_FRAME, .frame = next };

		/* The session's own time first, then the key. */
		if (session_wake(&p->session) > next)
			in = script_take(p->script, &p->session, next);
		step(p, &in);
	}
}

/* How long to wait for a key, in ms; -1 for as long as it takes. */
static int wait_ms(const struct practice *p)
{
	int rate = p->session.rate;
	int64_t left;

	if (!device_paced(p->device))
		return !p->script && session_waits(&p->session) ? -1 : 0;
	left = due(p) - device_frame(p->device);
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
		return device_frame(p->device);
	if (got == KEYS_NONE)
		frame = next < INT64_MAX ? next : frame;
	else if (session_waits(&p->session))
		frame = later(frame,
		    p->session.last_press +
			frames_of_ms(KEY_APART_MS, p->session.rate));
	device_advance(p->device, frame);
	return frame;
}

/* Tells the session when this program stood still while time went on. */
static void look_for_gap(struct practice *p)
{
	int64_t lost = device_lost_ms(p->device);
	int64_t frame = device_frame(p->device);

	if (lost == p->lost_ms)
		return;
	struct input gap = { .kind = INPUT_GAP, .lost_ms = lost - p->lost_ms };

	p->lost_ms = lost;
	step_until(p, frame);
	gap.frame = later(frame, p->session.now);
	step(p, &gap);
}

static void end_input(struct practice *p, int64_t frame)
{
	p->input_over = true;
	step(p,
	    &(struct input) {
		.kind = INPUT_END, .frame = later(frame, p->session.now) });
	p->over = true;
}

void practice_run(struct practice *p)
{
	practice_effects(p);
	while (!p->over) {
		struct input in = { .kind = INPUT_KEY };
		enum keys_got got = keys_next(
		    p->keys, wait_ms(p), &in.key, &in.digit, &in.words);

		device_look(p->device);
		look_for_gap(p);
		in.frame = reach(p, got);
		step_until(p, in.frame);
		if (p->over)
			break;
		if (got == KEYS_END || p->mute) {
			end_input(p, in.frame);
			break;
		}
		in.frame = later(in.frame, p->session.now);
		if (got == KEYS_WORDS)
			in.kind = INPUT_WORDS;
		if (got != KEYS_NONE)
			step(p, &in);
	}
}
