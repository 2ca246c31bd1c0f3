/*
 * sound_child_watch.c - how a child begins, and when nobody is left for it
 */
#include <pthread.h>
#include <stdlib.h>
#include <string.h>
#include <sysexits.h>
#include <unistd.h>

#include "evenhand/world/clock.h"
#include "evenhand/world/sound_child.h"
#include "sound_child_parts.h"

enum {
	WATCH_MS = 100,
	ALONE_MS = 10000, /* without a beat it ends */
};

struct sound_shared *child_begin(const char *layout)
{
	char own[SOUND_LAYOUT_BYTES];

	sound_shared_layout(own, sizeof own);
	return strcmp(layout, own) == 0 ? sound_shared_join(SOUND_CHILD_MEMORY)
					: NULL;
}

static uint32_t beats(const struct sound_shared *s)
{
	return atomic_load_explicit(
	    &s->outlet.beat.value, memory_order_relaxed);
}

static void watch(const struct sound_shared *s, bool paced)
{
	uint32_t last = beats(s);
	int alone = 0;

	while (getppid() == (pid_t)s->keeper && alone < ALONE_MS) {
		clock_sleep_us(WATCH_MS * INT64_C(1000));
		alone += WATCH_MS;
		if (!paced || beats(s) != last)
			alone = 0;
		last = beats(s);
	}
	_exit(EXIT_SUCCESS);
}

static void *watch_paced(void *s)
{
	watch(s, true);
	return NULL;
}

static void *watch_unpaced(void *s)
{
	watch(s, false);
	return NULL;
}

void child_watch(struct sound_shared *s, bool paced)
{
	pthread_t thread;

	if (pthread_create(
		&thread, NULL, paced ? watch_paced : watch_unpaced, s) != 0)
		_exit(EX_OSERR);
}
