/*
 * portaudio_cards.c - which cards there are, and which is meant
 */
#include "cards.h"

#include <portaudio.h>

#include "evenhand/base/text.h"

bool cards_begin(void)
{
	return Pa_Initialize() == paNoError;
}

void cards_end(void)
{
	Pa_Terminate();
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
	const PaHostApiInfo *api = Pa_GetHostApiInfo(info->hostApi);

	*out = (struct sound_card) {
		.number = card,
		.is_default_there = api && card == api->defaultOutputDevice,
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

int cards_choose(const struct sound_order *o, bool *other)
{
	static struct sound_list list;
	const struct sound_card *c;

	cards_list(&list);
	c = sound_choose(&list, &o->wish, other);
	if (!c || (o->no_other && *other))
		return -1;
	return c->number;
}
