/*
 * device_sound_hear.c - the microphone's child: made, watched, made anew
 *
 * It is made when it is known whether there is sound, so that nothing waits for
 * a microphone.  What it does, hangs, spins or dies, is no matter of the child
 * that sounds.  One that never answers is left out in the end.
 */
#include <sched.h>

#include "device_sound.h"

#include "evenhand/base/frames.h"
#include "evenhand/world/clock.h"

enum {
	PATIENCE_MS = 5000, /* with a child that opens */
	MUTE_MAX = 2,	    /* one that never answered is tried so often */
	STILL_MS = 500,	    /* samples may stand so long */
	AGAIN_MS = 500,	    /* from one child to the next, ... */
	LATER_MS = 5000,    /* ... after a minute, ... */
	SELDOM_MS = 30000,  /* ... and where there never was one */
	LATER_AFTER_MS = 60000,
	UNPACED_MS = 5000, /* its opening is waited for, unpaced */
};

void hearing_wish(struct sound_device *d, const struct sound_wish *microphone)
{
	struct sound_microphone *m = &d->microphone;

	m->state = MICROPHONE_OPENING;
	m->order = (struct sound_order) { .task = SOUND_HEAR,
		.wish = *microphone,
		.paced = d->device.paced,
		.no_other = true,
		.rate = d->count.rate };
}

bool hearing_hears(const struct sound_device *d)
{
	return d->microphone.state == MICROPHONE_HEARS;
}

static void make(struct sound_device *d, int64_t now)
{
	struct sound_microphone *m = &d->microphone;

	m->number = keeper_make(d->keeper, &m->order);
	m->killed = false;
	m->made_ms = now;
}

static void plan_next(struct sound_microphone *m, int64_t now, int unfit)
{
	bool never = unfit && unfit != SOUND_EXIT_NO_ROOM;

	if (never || (m->opened == 0 && m->mute >= MUTE_MAX))
		m->next_ms = INT64_MAX;
	else if (m->opened == 0 && m->mute == 0)
		m->next_ms = now + SELDOM_MS;
	else if (m->opened > 0 && now - m->lost_at_ms > LATER_AFTER_MS)
		m->next_ms = now + LATER_MS;
	else
		m->next_ms = now + AGAIN_MS;
}

static void lose(struct sound_microphone *m, int64_t now)
{
	if (m->state == MICROPHONE_HEARS) {
		m->state = MICROPHONE_LOST;
		m->lost_at_ms = now;
	} else if (m->state != MICROPHONE_LOST) {
		m->state = MICROPHONE_MISSING;
	}
}

static void end_child(struct sound_device *d, int64_t now)
{
	lose(&d->microphone, now);
	keeper_kill(d->keeper, d->microphone.number);
	d->microphone.killed = true;
}

void hearing_gone(struct sound_device *d, int ended)
{
	int64_t now = clock_steady_ms();

	lose(&d->microphone, now);
	d->microphone.number = 0;
	if (ended == SOUND_EXIT_NO_ROOM &&
	    d->microphone.state == MICROPHONE_MISSING)
		d->microphone.state = MICROPHONE_NO_ROOM;
	plan_next(&d->microphone, now, ended);
	/* Its samples would begin anew, at a frame that is over. */
	if (!d->device.paced)
		d->microphone.next_ms = INT64_MAX;
}

static void watch_opening(struct sound_device *d, int64_t now)
{
	struct sound_microphone *m = &d->microphone;
	struct sound_hearing *h = sound_hearing(d->shared);

	if (hearing_phase(h, m->number) == SOUND_SOUNDS &&
	    (!d->device.paced || inlet_heard(&h->inlet) > 0)) {
		m->state = MICROPHONE_HEARS;
		m->opened++;
		m->mute = 0;
		m->card = h->card;
		m->seen = 0;
		times_begin(d);
	} else if (now - m->made_ms > PATIENCE_MS) {
		m->mute++;
		end_child(d, now);
	}
}

/* Time by the wall, which leaves out when this program stood still. */
static void watch_hearing(struct sound_device *d, int64_t now)
{
	struct sound_microphone *m = &d->microphone;
	int64_t heard = inlet_heard(&sound_hearing(d->shared)->inlet);
	int64_t wall = d->wall ? wall_frame(d->wall) : 0;

	if (heard != m->seen) {
		m->seen = heard;
		m->seen_wall = wall;
	} else if (wall - m->seen_wall >
	    frames_of_ms(STILL_MS, d->count.rate)) {
		end_child(d, now);
	}
}

void hearing_look(struct sound_device *d)
{
	struct sound_microphone *m = &d->microphone;
	int64_t now = clock_steady_ms();

	if (m->state == MICROPHONE_UNWISHED || d->state == DEVICE_OPENING)
		return;
	if (keeper_gone(d->keeper)) {
		lose(m, now);
		m->number = 0;
	} else if (m->number == 0) {
		if (now >= m->next_ms)
			make(d, now);
	} else if (!m->killed) {
		if (hearing_hears(d))
			watch_hearing(d, now);
		else
			watch_opening(d, now);
	}
	times_look(d);
}

void hearing_permit(struct sound_device *d, int64_t frame)
{
	int64_t until = clock_steady_ms() + UNPACED_MS;

	while (d->microphone.state == MICROPHONE_OPENING &&
	    clock_steady_ms() < until) {
		sounding_look(d);
		hearing_look(d);
		sched_yield();
	}
	atomic_store_explicit(&sound_hearing(d->shared)->permit.value, frame,
	    memory_order_release);
}

void hearing_end(struct sound_device *d)
{
	if (d->microphone.number)
		keeper_kill(d->keeper, d->microphone.number);
}
