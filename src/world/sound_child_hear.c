/*
 * sound_child_hear.c - the life of the process that hears a microphone
 *
 *	begin PortAudio ─▶ choose ─▶ open ─▶ hear, until it is ended
 *
 * A process of its own: a microphone that hangs, aborts or spins when it goes
 * is ended without a gap in the sound.
 */
#include <sched.h>
#include <stdlib.h>
#include <unistd.h>

#include "cards.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/sound_child.h"
#include "sound_child_parts.h"

enum {
	LOOK_MS = 100,
	SPINS = 200, /* looks for a permit before sleeping */
	PERMIT_US = 100,
	PIECE = 256, /* samples, unpaced */
};

static void hear_paced(void)
{
	while (microphone_hears())
		clock_sleep_us(LOOK_MS * INT64_C(1000));
}

/* --- A microphone that gives samples as they are asked for -------------- */

/* Samples that may be heard by now. */
static int64_t permitted(const struct sound_hearing *h)
{
	int64_t frame = atomic_load_explicit(
	    &h->permit.value, memory_order_acquire);

	return frame * h->rate / h->order.rate - inlet_heard(&h->inlet);
}

static void hear_unpaced(struct sound_hearing *h)
{
	int idle = 0;

	for (;;) {
		int64_t left = permitted(h);
		int count = left < PIECE ? (int)left : PIECE;

		if (count > 0 && inlet_room(&h->inlet, count)) {
			idle = 0;
			if (!microphone_read(h, count))
				return;
		} else if (++idle < SPINS) {
			sched_yield();
		} else {
			clock_sleep_us(PERMIT_US);
		}
	}
}

/* ------------------------------------------------------------------------ */

static void hear(struct sound_hearing *h)
{
	bool other;
	int card = cards_choose(&h->order, CARD_HEARS, &other);

	if (card >= 0) {
		card_describe(card, CARD_HEARS, &h->card);
		if (microphone_open(card, h)) {
			hearing_phase_set(h, SOUND_SOUNDS);
			if (h->order.paced)
				hear_paced();
			else
				hear_unpaced(h);
			return;
		}
	}
	hearing_phase_set(h, SOUND_NO_CARD);
}

void sound_child_hear(const char *layout)
{
	struct sound_shared *s = child_begin(layout);
	struct sound_hearing *h;

	if (!s)
		return;
	h = sound_hearing(s);
	child_watch(s, h->order.paced);
	if (cards_begin())
		hear(h);
	else
		hearing_phase_set(h, SOUND_NO_CARD);
	_exit(EXIT_SUCCESS);
}
