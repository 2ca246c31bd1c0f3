/*
 * sound_child.c - the life of the process that makes sound
 *
 *	begin PortAudio ─▶ choose a card ─▶ open ─▶ sound ─▶ fade ─▶ end
 *
 * Any step may hang, abort or spin; then the keeper ends it.
 */
#include <sched.h>
#include <stdlib.h>
#include <unistd.h>

#include "cards.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/sound_child.h"
#include "sound_child_parts.h"
#include "sound_pace.h"

enum {
	LOOK_MS = 20,
	FADED_MS = 50, /* silence behind a fade */
	SPINS = 200,   /* looks for a permit before sleeping */
	PERMIT_US = 100,
};

static bool quits(const struct sound_shared *s)
{
	return atomic_load_explicit(&s->quit.value, memory_order_acquire) ==
	    s->order.number;
}

/* --- A card that takes frames in its own time ------------------------- */

/* With more latency it might keep up; if there is no more, it plays on. */
static bool slow(struct pace *p, const struct sound_shared *s)
{
	struct outlet_time t;
	bool begun = outlet_read(&s->outlet, &t);

	return pace_slow(p, begun ? &t : NULL, s->rate, LOOK_MS) &&
	    (!begun || s->order.latency_ms < SOUND_LATENCY_MAX_MS);
}

static void sound_paced(struct sound_shared *s)
{
	struct pace pace = { 0 };

	while (!quits(s)) {
		clock_sleep_us(LOOK_MS * INT64_C(1000));
		if (slow(&pace, s)) {
			sound_phase_set(s, SOUND_SLOW);
			return;
		}
	}
	outlet_end(&s->outlet);
	clock_sleep_us(
	    INT64_C(1000) * (ENGINE_FADE_MS + FADED_MS + card_delay_ms()));
}

/* --- A card that takes frames as they come ---------------------------- */

/* Frames it may go on by now. */
static int64_t permitted(const struct sound_shared *s, struct engine *e)
{
	return atomic_load_explicit(&s->permit.value, memory_order_acquire) -
	    engine_frame(e);
}

static void sound_unpaced(struct sound_shared *s)
{
	struct engine *e = sound_engine(s);
	int idle = 0;

	for (;;) {
		int64_t left = permitted(s, e);

		if (left > 0) {
			idle = 0;
			if (!card_write(s,
				left < DEVICE_BLOCK ? (int)left : DEVICE_BLOCK))
				return;
		} else if (quits(s)) {
			return;
		} else if (++idle < SPINS) {
			sched_yield();
		} else {
			clock_sleep_us(PERMIT_US);
		}
	}
}

/* --- Its tasks ---------------------------------------------------------- */

static void play(struct sound_shared *s)
{
	int card = cards_choose(&s->order, CARD_PLAYS, &s->other);

	if (card >= 0) {
		card_describe(card, CARD_PLAYS, &s->card);
		if (card_open(card, s)) {
			sound_phase_set(s, SOUND_SOUNDS);
			if (s->order.paced)
				sound_paced(s);
			else
				sound_unpaced(s);
			/* Servers like a proper end, and may not get it. */
			card_close(!s->order.paced);
			cards_end();
			return;
		}
	}
	sound_phase_set(s, SOUND_NO_CARD);
}

void sound_child(const char *layout)
{
	struct sound_shared *s = child_begin(layout);

	if (!s)
		return;
	child_watch(s, s->order.paced);
	if (!cards_begin()) {
		sound_phase_set(s, SOUND_NO_CARD);
	} else if (s->order.task == SOUND_LIST) {
		cards_list(&s->list, CARD_PLAYS);
		cards_list(&s->microphones, CARD_HEARS);
		sound_phase_set(s, SOUND_LISTED);
		cards_end();
	} else {
		play(s);
	}
	_exit(EXIT_SUCCESS);
}
