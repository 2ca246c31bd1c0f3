/*
 * sound_choose.c - which card is meant by what somebody wrote
 *
 *	"usb"     USB Audio (ALSA), USB Audio (JACK): the first
 *	"default" default before "default of the other room"
 *
 * And what a card's own name tells of it.
 */
#include <string.h>

#include "evenhand/world/sound_list.h"

enum { WHOLE_NAME = 2, PART_OF_NAME = 1 };

static char small(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool begins(const char *s, const char *with)
{
	while (*with && small(*s) == small(*with)) {
		s++;
		with++;
	}
	return !*with;
}

/* How well a name fits a wish; 0: not.  No wish is fitted in part. */
static int fit(const char *name, const char *wish)
{
	if (begins(name, wish) && strlen(name) == strlen(wish))
		return WHOLE_NAME;
	for (const char *s = name; *s; s++)
		if (begins(s, wish))
			return PART_OF_NAME;
	return *wish ? 0 : PART_OF_NAME;
}

static const struct sound_card *usual(const struct sound_list *l)
{
	for (int i = 0; i < l->count; i++)
		if (l->card[i].is_default)
			return &l->card[i];
	return NULL;
}

static const struct sound_card *wished(
    const struct sound_list *l, const struct sound_wish *w)
{
	const struct sound_card *best = NULL;
	int best_fit = 0;

	for (int i = 0; i < l->count; i++) {
		const struct sound_card *c = &l->card[i];
		int f = fit(c->api, w->api) ? fit(c->name, w->name) : 0;

		/* Without a name only what is played on by default counts. */
		if (!*w->name && !c->is_default_there)
			continue;
		if (f > best_fit) {
			best_fit = f;
			best = c;
		}
	}
	return best;
}

const struct sound_card *sound_choose(
    const struct sound_list *l, const struct sound_wish *w, bool *other)
{
	const struct sound_card *c;

	*other = false;
	if (!*w->name && !*w->api)
		return usual(l);
	c = wished(l, w);
	if (c)
		return c;
	c = usual(l);
	*other = c != NULL;
	return c;
}

/* Whether a name holds one of some words. */
static bool holds(const char *name, const char *const *words, size_t count)
{
	for (const char *s = name; *s; s++)
		for (size_t i = 0; i < count; i++)
			if (begins(s, words[i]))
				return true;
	return false;
}

bool sound_wireless(const char *name)
{
	/* Names of techniques, as they stand in names of cards. */
	static const char *const words[] = { "bluetooth", "bluez", "bluealsa",
		"a2dp", "hands-free", "handsfree", "(hfp", "(hsp",
		"headset hfp", "headset hsp", "airplay", "raop", "wireless",
		"wi-fi", "bt headset", "bt audio" };

	return holds(name, words, sizeof words / sizeof *words);
}

bool sound_monitor(const char *name)
{
	/* As the sound servers of Linux name them. */
	static const char *const words[] = { "monitor of ", ".monitor" };

	return holds(name, words, sizeof words / sizeof *words);
}
