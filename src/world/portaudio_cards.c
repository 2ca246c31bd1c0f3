/*
 * portaudio_cards.c - which cards there are, and which is meant
 */
#include "cards.h"

#include <portaudio.h>
#include <string.h>

#include "evenhand/base/text.h"

enum { WHOLE_NAME = 2, PART_OF_NAME = 1 };

bool cards_begin(void)
{
	return Pa_Initialize() == paNoError;
}

static bool plays(int card)
{
	const PaDeviceInfo *info = Pa_GetDeviceInfo(card);

	return info && info->name && info->maxOutputChannels > 0;
}

static const char *api_of(int card)
{
	const PaDeviceInfo *info = Pa_GetDeviceInfo(card);
	const PaHostApiInfo *api = Pa_GetHostApiInfo(info->hostApi);

	return api && api->name ? api->name : "";
}

static int in_ms(double seconds)
{
	return seconds > 0 && seconds < 60 ? (int)(seconds * 1000 + 0.5) : 0;
}

void card_describe(int card, struct sound_card *out)
{
	const PaDeviceInfo *info = Pa_GetDeviceInfo(card);

	*out = (struct sound_card) {
		.is_default = card == Pa_GetDefaultOutputDevice(),
		.wireless = sound_wireless(info->name) ||
		    sound_wireless(api_of(card)),
		.rate = (int)(info->defaultSampleRate + 0.5),
		.low_ms = in_ms(info->defaultLowOutputLatency),
		.high_ms = in_ms(info->defaultHighOutputLatency),
		.channels = info->maxOutputChannels,
	};
	text_clean(out->name, sizeof out->name, info->name);
	text_clean(out->api, sizeof out->api, api_of(card));
}

void cards_list(struct sound_list *out)
{
	int count = Pa_GetDeviceCount();

	out->count = out->left_out = 0;
	for (int i = 0; i < count; i++) {
		if (!plays(i))
			continue;
		if (out->count == SOUND_CARDS_MAX)
			out->left_out++;
		else
			card_describe(i, &out->card[out->count++]);
	}
}

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

/* What a card's name is once it was shown: a wish is written like that. */
static int fits(int card, const struct sound_wish *w)
{
	struct sound_card c;

	card_describe(card, &c);
	return fit(c.api, w->api) ? fit(c.name, w->name) : 0;
}

/* The card an API plays on by default. */
static int default_of(const struct sound_wish *w)
{
	for (int i = 0; i < Pa_GetHostApiCount(); i++) {
		const PaHostApiInfo *api = Pa_GetHostApiInfo(i);

		if (api && api->name && fit(api->name, w->api) &&
		    api->defaultOutputDevice >= 0)
			return api->defaultOutputDevice;
	}
	return -1;
}

static int wished(const struct sound_wish *w)
{
	int best = -1, best_fit = 0;

	if (!*w->name)
		return *w->api ? default_of(w) : Pa_GetDefaultOutputDevice();
	for (int i = 0; i < Pa_GetDeviceCount(); i++) {
		int f = plays(i) ? fits(i, w) : 0;

		if (f > best_fit) {
			best_fit = f;
			best = i;
		}
	}
	return best;
}

int cards_choose(const struct sound_order *o, bool *other)
{
	int card = wished(&o->wish);

	*other = false;
	if (card >= 0 && plays(card))
		return card;
	if (o->no_other)
		return -1;
	*other = *o->wish.name || *o->wish.api;
	card = Pa_GetDefaultOutputDevice();
	return card >= 0 && plays(card) ? card : -1;
}
