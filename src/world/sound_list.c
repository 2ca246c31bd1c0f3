/*
 * sound_list.c - the cards there are, for people to choose from
 */
#include "evenhand/world/sound_list.h"

#include <string.h>
#include <time.h>

#include "evenhand/world/clock.h"
#include "sound_link.h"

enum { PAUSE_MS = 5 };

static char small(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool begins(const char *s, const char *with)
{
	while (*with && small(*s) == *with) {
		s++;
		with++;
	}
	return !*with;
}

bool sound_wireless(const char *name)
{
	/* Names of techniques, as they stand in names of cards. */
	static const char *const words[] = { "bluetooth", "bluez", "bluealsa",
		"a2dp", "hands-free", "handsfree", "(hfp", "(hsp",
		"headset hfp", "headset hsp", "airplay", "raop", "wireless",
		"wi-fi", "bt headset", "bt audio" };

	for (const char *s = name; *s; s++)
		for (size_t i = 0; i < sizeof words / sizeof *words; i++)
			if (begins(s, words[i]))
				return true;
	return false;
}

/* Whether the child is through: it listed, found nothing, or is gone. */
static bool over(struct sound_keeper *k, int32_t number)
{
	enum sound_phase phase = sound_phase(keeper_shared(k), number);
	struct sound_report r;

	while (keeper_report(k, &r))
		if (r.number == number)
			return true;
	return phase == SOUND_LISTED || phase == SOUND_NO_CARD ||
	    keeper_gone(k);
}

bool sound_list(struct sound_keeper *k, struct sound_list *out, int wait_ms,
    struct fault *f)
{
	const struct sound_shared *s = keeper_shared(k);
	struct sound_order o = { .task = SOUND_LIST };
	int32_t number = keeper_make(k, &o);
	int64_t until = clock_steady_ns() + wait_ms * INT64_C(1000000);
	enum sound_phase phase;

	memset(out, 0, sizeof *out);
	while (!over(k, number) && clock_steady_ns() < until)
		nanosleep(&(struct timespec) { .tv_nsec = PAUSE_MS * 1000000L },
		    NULL);
	phase = sound_phase(s, number);
	if (phase == SOUND_LISTED)
		*out = s->list;
	else
		keeper_kill(k);
	return phase == SOUND_LISTED || phase == SOUND_NO_CARD ||
	    fault_set(f, message_of(M_DEVICE_NO_LIST));
}
