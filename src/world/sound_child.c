/*
 * sound_child.c - the life of the process that makes sound
 *
 *	begin PortAudio ─▶ choose a card ─▶ open ─▶ sound ─▶ fade ─▶ end
 *
 * Any step may hang, abort or spin; then the keeper ends it.  A thread of its
 * own ends it too when evenhand has stood still for too long, or the keeper is
 * gone where the system does not tell.
 */
#include <pthread.h>
#include <sched.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "cards.h"
#include "evenhand/world/sound_child.h"
#include "sound_pace.h"

enum {
	LOOK_MS = 20,
	WATCH_MS = 100,
	ALONE_MS = 10000, /* without a beat it ends */
	FADED_MS = 50,	  /* silence behind a fade */
	SPINS = 200,	  /* looks for a permit before sleeping */
	PERMIT_US = 100,
};

static void sleep_us(int64_t us)
{
	nanosleep(&(struct timespec) { .tv_sec = (time_t)(us / 1000000),
		      .tv_nsec = (long)(us % 1000000 * 1000) },
	    NULL);
}

static uint32_t beats(const struct sound_shared *s)
{
	return atomic_load_explicit(
	    &s->outlet.beat.value, memory_order_relaxed);
}

static bool quits(const struct sound_shared *s)
{
	return atomic_load_explicit(&s->quit.value, memory_order_acquire) ==
	    s->order.number;
}

/* --- Nobody left ------------------------------------------------------ */

static void *watch(void *argument)
{
	struct sound_shared *s = argument;
	uint32_t last = beats(s);
	int alone = 0;

	while (getppid() == (pid_t)s->keeper && alone < ALONE_MS) {
		sleep_us(WATCH_MS * INT64_C(1000));
		alone += WATCH_MS;
		if (!s->order.paced || beats(s) != last)
			alone = 0;
		last = beats(s);
	}
	_exit(EXIT_SUCCESS);
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
		sleep_us(LOOK_MS * INT64_C(1000));
		if (slow(&pace, s)) {
			sound_phase_set(s, SOUND_SLOW);
			return;
		}
	}
	outlet_end(&s->outlet);
	sleep_us(INT64_C(1000) * (ENGINE_FADE_MS + FADED_MS + card_delay_ms()));
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
			sleep_us(PERMIT_US);
		}
	}
}

/* --- Its tasks ---------------------------------------------------------- */

static void play(struct sound_shared *s)
{
	int card = cards_choose(&s->order, &s->other);

	if (card >= 0) {
		card_describe(card, &s->card);
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
	char own[SOUND_LAYOUT_BYTES];
	struct sound_shared *s;
	pthread_t thread;

	sound_shared_layout(own, sizeof own);
	s = strcmp(layout, own) == 0 ? sound_shared_join(SOUND_CHILD_MEMORY)
				     : NULL;
	if (!s)
		return;
	if (pthread_create(&thread, NULL, watch, s) != 0)
		_exit(EXIT_FAILURE);
	if (!cards_begin()) {
		sound_phase_set(s, SOUND_NO_CARD);
	} else if (s->order.task == SOUND_LIST) {
		cards_list(&s->list);
		sound_phase_set(s, SOUND_LISTED);
		cards_end();
	} else {
		play(s);
	}
	_exit(EXIT_SUCCESS);
}
