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

static bool goes(int card, enum card_way way)
{
	const PaDeviceInfo *info = Pa_GetDeviceInfo(card);

	if (!info || !info->name)
		return false;
	if (way == CARD_PLAYS)
		return info->maxOutputChannels > 0;
	return info->maxInputChannels > 0 && !sound_monitor(info->name);
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

/* What is told of both ways. */
static void describe(int card, struct sound_card *out)
{
	const PaDeviceInfo *info = Pa_GetDeviceInfo(card);

	*out = (struct sound_card) {
		.number = card,
		.wireless = sound_wireless(info->name) ||
		    sound_wireless(api_of(card)),
		.rate = (int)(info->defaultSampleRate + 0.5),
	};
	text_clean(out->name, sizeof out->name, info->name);
	text_clean(out->api, sizeof out->api, api_of(card));
}

void card_describe(int card, enum card_way way, struct sound_card *out)
{
	const PaDeviceInfo *info = Pa_GetDeviceInfo(card);
	const PaHostApiInfo *api = Pa_GetHostApiInfo(info->hostApi);

	describe(card, out);
	if (way == CARD_PLAYS) {
		out->is_default_there = api && card == api->defaultOutputDevice;
		out->is_default = card == Pa_GetDefaultOutputDevice();
		out->low_ms = in_ms(info->defaultLowOutputLatency);
		out->high_ms = in_ms(info->defaultHighOutputLatency);
		out->channels = info->maxOutputChannels;
	} else {
		out->is_default_there = api && card == api->defaultInputDevice;
		out->is_default = card == Pa_GetDefaultInputDevice();
		out->low_ms = in_ms(info->defaultLowInputLatency);
		out->high_ms = in_ms(info->defaultHighInputLatency);
		out->channels = info->maxInputChannels;
	}
}

void cards_list(struct sound_list *out, enum card_way way)
{
	int count = Pa_GetDeviceCount();

	out->count = out->left_out = 0;
	for (int i = 0; i < count; i++) {
		if (!goes(i, way))
			continue;
		if (out->count == SOUND_CARDS_MAX)
			out->left_out++;
		else
			card_describe(i, way, &out->card[out->count++]);
	}
}

int cards_choose(const struct sound_order *o, enum card_way way, bool *other)
{
	static struct sound_list list;
	const struct sound_card *c;

	cards_list(&list, way);
	c = sound_choose(&list, &o->wish, other);
	if (!c || (o->no_other && *other))
		return -1;
	return c->number;
}
