/*
 * device_null.c - no sound card: blocks are filled and thrown away
 *
 * Paced, a thread keeps the engine at
 *
 *	frames = (now - origin) x rate
 *
 * worked out anew from the steady clock at every block, so a late wake-up is
 * made good by the next and nothing drifts.  It wakes when a block is due
 * and fills what is due by then, as a sound card would.
 *
 * The jump rule: when more than DEVICE_JUMP_MS are due at once, the program was
 * stopped, the machine slept or was far too busy.  That time is lost, not
 * caught up: the origin moves so that the count goes on from where it stands,
 * and what was lost is counted.
 */
#include <pthread.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <time.h>

#include "evenhand/world/clock.h"
#include "evenhand/world/device.h"
#include "thread_signals.h"

#define SECOND_NS INT64_C(1000000000)

struct device {
	struct engine *engine; /* borrowed */
	bool paced;
	bool started; /* the thread is there */
	atomic_bool stop;
	atomic_int_least64_t lost_ns;
	pthread_t thread;
	int64_t origin_ns; /* when frame `base` was due */
	int64_t base;
	float block[DEVICE_BLOCK];
};

/* Frames in a time at a rate; whole seconds apart, so nothing overflows. */
static int64_t frames_in(int64_t ns, int rate)
{
	return ns / SECOND_NS * rate + ns % SECOND_NS * rate / SECOND_NS;
}

/* The time by which so many frames are due, rounded up. */
static int64_t time_of(int64_t frames, int rate)
{
	return frames / rate * SECOND_NS +
	    (frames % rate * SECOND_NS + rate - 1) / rate;
}

static void fill_to(struct device *d, int64_t frame)
{
	int64_t left;

	while ((left = frame - engine_frame(d->engine)) > 0)
		engine_fill(d->engine, d->block,
		    left < DEVICE_BLOCK ? (int)left : DEVICE_BLOCK);
}

static void sleep_until(int64_t due_ns)
{
	int64_t left = due_ns - clock_steady_ns();

	if (left <= 0)
		return;
	/* A sleep cut short by a signal only makes a short block. */
	nanosleep(&(struct timespec) { .tv_sec = (time_t)(left / SECOND_NS),
		      .tv_nsec = (long)(left % SECOND_NS) },
	    NULL);
}

/* Goes on from where the count stands, done frames after the base. */
static void lose(struct device *d, int64_t now_ns, int64_t done)
{
	int64_t lost = now_ns - d->origin_ns -
	    time_of(done, engine_rate(d->engine));

	atomic_fetch_add_explicit(&d->lost_ns, lost, memory_order_release);
	d->base += done;
	d->origin_ns = now_ns;
}

static void *pace(void *argument)
{
	struct device *d = argument;
	int rate = engine_rate(d->engine);
	int64_t jump = (int64_t)rate * DEVICE_JUMP_MS / 1000;

	while (!atomic_load_explicit(&d->stop, memory_order_acquire)) {
		int64_t done = engine_frame(d->engine) - d->base;

		sleep_until(d->origin_ns + time_of(done + DEVICE_BLOCK, rate));
		int64_t now = clock_steady_ns();
		int64_t due = frames_in(now - d->origin_ns, rate);

		if (due - done > jump) {
			lose(d, now, done);
			continue;
		}
		fill_to(d, d->base + due);
	}
	return NULL;
}

static bool start(struct device *d)
{
	sigset_t before;

	thread_signals_hold(&before);
	d->started = pthread_create(&d->thread, NULL, pace, d) == 0;
	thread_signals_release(&before);
	return d->started;
}

struct device *device_null_open(struct engine *e, bool paced, struct fault *f)
{
	struct device *d = calloc(1, sizeof *d);

	if (!d) {
		fault_set(f, message_of(M_WORLD_NO_CLOCK));
		return NULL;
	}
	d->engine = e;
	d->paced = paced;
	d->base = engine_frame(e);
	d->origin_ns = clock_steady_ns();
	if (paced && !start(d)) {
		fault_set(f, message_of(M_WORLD_NO_CLOCK));
		device_close(d);
		return NULL;
	}
	return d;
}

void device_advance(struct device *d, int64_t frame)
{
	if (!d->paced)
		fill_to(d, frame);
}

int64_t device_frame(const struct device *d)
{
	return engine_frame(d->engine);
}

int64_t device_lost_ms(const struct device *d)
{
	return atomic_load_explicit(&d->lost_ns, memory_order_acquire) /
	    1000000;
}

const char *device_name(const struct device *d)
{
	return d->paced ? "none" : "fast";
}

bool device_paced(const struct device *d)
{
	return d->paced;
}

void device_close(struct device *d)
{
	if (!d)
		return;
	atomic_store_explicit(&d->stop, true, memory_order_release);
	if (d->started)
		pthread_join(d->thread, NULL);
	free(d);
}
