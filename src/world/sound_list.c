/*
 * sound_list.c - the cards there are, for people to choose from
 */
#include "evenhand/world/sound_list.h"

#include <string.h>

#include "evenhand/world/clock.h"
#include "sound_link.h"

enum { PAUSE_US = 5000 };

/* Whether the child is through: it listed, found nothing, or is gone. */
static bool over(struct sound_keeper *k, int32_t number, int *ended)
{
	enum sound_phase phase = sound_phase(keeper_shared(k), number);
	struct sound_report r;

	while (keeper_report(k, &r))
		if (r.number == number) {
			*ended = report_exit(&r);
			return true;
		}
	return phase == SOUND_LISTED || phase == SOUND_NO_CARD ||
	    keeper_gone(k);
}

static bool no_list(int ended, struct fault *f)
{
	enum message_id id = M_DEVICE_NO_LIST;

	if (ended == SOUND_EXIT_MISSING)
		id = M_SOUND_NO_PROGRAM;
	else if (ended == SOUND_EXIT_OTHER)
		id = M_SOUND_OTHER_PROGRAM;
	else if (ended == SOUND_EXIT_NO_ROOM)
		id = M_DEVICE_NO_KEEPER;
	return fault_set(f, message_of(id));
}

bool sound_list(struct sound_keeper *k, struct sound_lists *out, int wait_ms,
    struct fault *f)
{
	const struct sound_shared *s = keeper_shared(k);
	struct sound_order o = { .task = SOUND_LIST };
	int32_t number = keeper_make(k, &o);
	int64_t until = clock_steady_ns() + wait_ms * INT64_C(1000000);
	enum sound_phase phase;
	int ended = 0;

	memset(out, 0, sizeof *out);
	while (!over(k, number, &ended) && clock_steady_ns() < until)
		clock_sleep_us(PAUSE_US);
	phase = sound_phase(s, number);
	if (phase == SOUND_LISTED)
		*out = (struct sound_lists) { s->list, s->microphones };
	else
		keeper_kill(k, number);
	return phase == SOUND_LISTED || phase == SOUND_NO_CARD ||
	    no_list(ended, f);
}
