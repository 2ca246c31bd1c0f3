/*
 * wall.c - frames by the wall clock, as long as this program runs
 *
 * Whoever asks first after a standstill finds it out, thread or asker; a
 * mutex makes their answers one after the other.
 */
#include "wall.h"

#include <pthread.h>
#include <stdlib.h>
#include <time.h>

#include "evenhand/world/clock.h"
#include "evenhand/world/device.h"
#include "thread_signals.h"

#define SECOND_NS INT64_C(1000000000)
#define MS_NS INT64_C(1000000)

struct wall {
	int rate;
	pthread_t thread;
	pthread_mutex_t mutex; /* all below */
	pthread_cond_t ended;
	bool end;
	int64_t origin_ns, seen_ns, lost_ns;
	int64_t base; /* the frame of the origin */
};

/* Frames in a time at a rate; whole seconds apart, so nothing overflows. */
static int64_t frames_in(int64_t ns, int rate)
{
	return ns / SECOND_NS * rate + ns % SECOND_NS * rate / SECOND_NS;
}

/* The frame now.  The mutex is held. */
static int64_t judge(struct wall *w)
{
	int64_t now = clock_steady_ns();

	if (now - w->seen_ns > DEVICE_JUMP_MS * MS_NS) {
		w->base += frames_in(w->seen_ns - w->origin_ns, w->rate);
		w->lost_ns += now - w->seen_ns;
		w->origin_ns = now;
	}
	w->seen_ns = now;
	return w->base + frames_in(now - w->origin_ns, w->rate);
}

static void *witness(void *argument)
{
	struct wall *w = argument;
	struct timespec until;

	pthread_mutex_lock(&w->mutex);
	while (!w->end) {
		judge(w);
		clock_gettime(CLOCK_REALTIME, &until);
		until.tv_nsec += WALL_LOOK_MS * MS_NS;
		if (until.tv_nsec >= SECOND_NS) {
			until.tv_nsec -= SECOND_NS;
			until.tv_sec++;
		}
		pthread_cond_timedwait(&w->ended, &w->mutex, &until);
	}
	pthread_mutex_unlock(&w->mutex);
	return NULL;
}

static bool start(struct wall *w)
{
	sigset_t before;
	bool started;

	thread_signals_hold(&before);
	started = pthread_create(&w->thread, NULL, witness, w) == 0;
	thread_signals_release(&before);
	return started;
}

struct wall *wall_open(int rate, struct fault *f)
{
	struct wall *w = calloc(1, sizeof *w);

	fault_set(f, message_of(M_WORLD_NO_CLOCK));
	if (!w)
		return NULL;
	pthread_mutex_init(&w->mutex, NULL);
	pthread_cond_init(&w->ended, NULL);
	w->rate = rate;
	w->origin_ns = w->seen_ns = clock_steady_ns();
	if (start(w))
		return w;
	free(w);
	return NULL;
}

int64_t wall_frame(struct wall *w)
{
	int64_t frame;

	pthread_mutex_lock(&w->mutex);
	frame = judge(w);
	pthread_mutex_unlock(&w->mutex);
	return frame;
}

int64_t wall_lost_ms(struct wall *w)
{
	int64_t ms;

	pthread_mutex_lock(&w->mutex);
	judge(w);
	ms = w->lost_ns / MS_NS;
	pthread_mutex_unlock(&w->mutex);
	return ms;
}

void wall_close(struct wall *w)
{
	if (!w)
		return;
	pthread_mutex_lock(&w->mutex);
	w->end = true;
	pthread_cond_signal(&w->ended);
	pthread_mutex_unlock(&w->mutex);
	pthread_join(w->thread, NULL);
	pthread_cond_destroy(&w->ended);
	pthread_mutex_destroy(&w->mutex);
	free(w);
}
