/*
 * practise_listen.c - a microphone beside the practice
 *
 * The loop hands samples on as it looks at the device and asks for answers: it
 * never waits for the one or the other.  What is to be said of the microphone
 * is said when nothing sounds.
 */
#include "practise_listen.h"

#include "choices.h"
#include "evenhand/listen/ask.h"
#include "evenhand/world/clock.h"
#include "options.h"
#include "practise.h"

enum {
	WAIT_MS = 1000, /* for the last answer */
	WAIT_STEP_US = 5000,
	IDLE_US = 100,
};

void listen_open(struct practice *p)
{
	struct practice_listen *l = &p->listen;
	struct sound_wish wish;
	struct faults faults = { 0 };

	if (!p->chosen.now.listen)
		return;
	if (!p->keeper) {
		l->owed = message_of(M_COMMAND_LISTEN_DEVICE);
		return;
	}
	choices_microphone(&p->chosen.now, &wish);
	l->listener = listener_open();
	if (!l->listener) {
		l->owed = message_of(M_COMMAND_LISTEN_ROOM);
		return;
	}
	device_listen(p->device, &wish);
	latency_read(&l->delays, &faults);
	command_faults(&faults);
	device_correct(p->device, &l->delays);
}

void listen_close(struct practice *p)
{
	listener_close(p->listen.listener);
	p->listen.listener = NULL;
}

/* --- turns --- */

static void begin(struct practice *p, const struct turn_now *t)
{
	const struct ask_time when = { 0, t->bow_ms, t->bows, t->pulses };
	struct listener_turn turn = { .frame = t->frame,
		.rate = p->session.rate };

	p->listen.turn = true;
	p->listen.turn_frame = t->frame;
	if (t->unit < 0 ||
	    !ask_turn(p->routine, t->stage, t->unit, &when, &turn.asked)) {
		listener_drop(p->listen.listener);
		return;
	}
	/* Late and early mean something only where the delay was measured. */
	turn.asked.latency_known = device_latency(p->device) != NULL;
	listener_begin(p->listen.listener, &turn);
}

void listen_follow(struct practice *p)
{
	struct practice_listen *l = &p->listen;
	struct turn_now now;
	bool plays;

	if (!l->listener)
		return;
	plays = session_turn_now(&p->session, &now);
	if (l->turn && (!plays || now.frame != l->turn_frame)) {
		l->turn = false;
		listener_drop(l->listener);
	}
	if (plays && !l->turn)
		begin(p, &now);
}

void listen_kept(struct practice *p, const struct turn_row *row)
{
	struct practice_listen *l = &p->listen;

	if (!l->listener || !l->turn)
		return;
	l->turn = false;
	listener_end(l->listener, row->number, row->bows_done);
}

/* --- what is said --- */

static struct message missing(const struct practice *p)
{
	const char *name = p->chosen.now.microphone;

	return *name ? message_with(M_COMMAND_LISTEN_NO_SUCH, TEXT(name))
		     : message_of(M_COMMAND_LISTEN_NONE);
}

/* What has become of the microphone; one that comes and goes is told once. */
static void say_state(struct practice *p)
{
	struct practice_listen *l = &p->listen;
	enum microphone_state state = device_microphone(p->device);

	if (state == l->state)
		return;
	l->state = state;
	if (state == MICROPHONE_HEARS && !l->told)
		practice_say(p, message_of(M_COMMAND_LISTENS));
	else if (state == MICROPHONE_MISSING)
		practice_say(p, missing(p));
	else if (state == MICROPHONE_NO_ROOM)
		practice_say(p, message_of(M_COMMAND_LISTEN_ROOM));
	else if (state == MICROPHONE_LOST && !l->told_lost)
		practice_say(p, message_of(M_COMMAND_LISTEN_LOST));
	l->told |= state == MICROPHONE_HEARS;
	l->told_lost |= state == MICROPHONE_LOST;
}

/* A microphone that cannot be trusted, in a sentence. */
static enum message_id judgement_words(enum judgement what)
{
	switch (what) {
	case JUDGE_DEAD:
		return M_COMMAND_LISTEN_DEAD;
	case JUDGE_QUIET:
		return M_COMMAND_LISTEN_QUIET;
	case JUDGE_CLIPS_IT:
		return M_COMMAND_LISTEN_CLIPS;
	case JUDGE_GATED:
	case JUDGE_NARROW:
	case JUDGE_PUMPED:
		return M_COMMAND_LISTEN_FILTERED;
	case JUDGE_NOISY:
		return M_COMMAND_LISTEN_NOISY;
	case JUDGE_UNKNOWN:
	case JUDGE_FINE:
	case JUDGE_FAR: /* told on the end page */
		break;
	}
	return M_NONE;
}

/* The end page tells of a microphone that heard nothing, in its own words. */
static bool page_tells(const struct practice *p, enum message_id words)
{
	return (words == M_COMMAND_LISTEN_DEAD ||
		   words == M_COMMAND_LISTEN_QUIET) &&
	    p->session.page >= PAGE_END &&
	    session_microphone(&p->session).id == M_HEARD_DEAF;
}

/* One is told; then there is silence about it. */
static void say_judgement(struct practice *p)
{
	struct practice_listen *l = &p->listen;
	enum message_id words = judgement_words(
	    listener_judged(l->listener).what);

	if (l->told_judgement || words == M_NONE || page_tells(p, words))
		return;
	l->told_judgement = true;
	practice_say(p, message_of(words));
}

/* Before anything of it is taken, even in play; without one it is not true. */
static void say_first(struct practice *p)
{
	struct practice_listen *l = &p->listen;

	if (!l->first || device_microphone(p->device) != MICROPHONE_HEARS)
		return;
	l->first = false;
	l->told = true;
	practice_say(p, message_of(M_COMMAND_LISTEN_FIRST));
}

void listen_say(struct practice *p)
{
	struct practice_listen *l = &p->listen;

	if (first_plays(&p->first))
		return;
	if (l->listener)
		say_first(p);
	if (p->session.page == PAGE_PLAY)
		return;
	if (l->owed.id != M_NONE)
		practice_say(p, l->owed);
	l->owed = message_of(M_NONE);
	if (!l->listener)
		return;
	say_state(p);
	say_judgement(p);
}

/* --- answers --- */

static bool take_answer(struct practice *p, int *number, struct listened *heard)
{
	struct turn_value value[TURN_VALUES_MAX];
	struct turn_heard turn;

	if (!listener_next(p->listen.listener, number, &turn))
		return false;
	journal_measures(
	    p->journal, *number, value, turn_values(&turn, value), TURN_METHOD);
	p->rows_new = true;
	listened_of(heard, &turn);
	return true;
}

static void hand_on(struct practice *p)
{
	struct practice_listen *l = &p->listen;
	struct heard_samples h;

	do {
		h = device_hear(p->device, l->samples, LISTEN_SAMPLES);
		if (h.count > 0)
			listener_take(l->listener, &h, l->samples);
		/* Where no time passes nothing may depend on it. */
		while (!device_paced(p->device) && !listener_idle(l->listener))
			clock_sleep_us(IDLE_US);
	} while (h.count > 0);
}

bool listen_look(struct practice *p, int *number, struct listened *heard)
{
	listen_say(p);
	if (!p->listen.listener)
		return false;
	hand_on(p);
	return take_answer(p, number, heard);
}

void listen_finish(struct practice *p)
{
	struct practice_listen *l = &p->listen;
	int64_t until = clock_steady_ns() + WAIT_MS * INT64_C(1000000);
	struct listened heard;
	int number;

	if (!l->listener)
		return;
	hand_on(p);
	listener_finish(l->listener);
	while (listener_waits(l->listener) > 0 && clock_steady_ns() < until)
		clock_sleep_us(WAIT_STEP_US);
	while (take_answer(p, &number, &heard))
		continue;
}
