/*
 * portaudio_hear.c - one microphone, opened, and the callback that takes from it
 *
 * The callback keeps what came and says when it was in the air; nothing else.
 * It reads the steady clock once a block.  Only how long ago a sample was taken
 * is asked of PortAudio, since its clock begins elsewhere with every server.
 */
#include "cards.h"

#include <portaudio.h>

#include "evenhand/listen/heard.h"
#include "evenhand/world/clock.h"

enum {
	BLOCK = 256,
	CHANNELS_MAX = 2,
	LATENCY_MS = 40, /* what is heard is wanted whole, not soon */
	RATES = 3,
};

static PaStream *stream;
static int channels;
static int64_t usual_ns; /* from the air to us, where nothing better is known */

/* From the air to now, of the first sample of a block. */
static int64_t age_ns(const PaStreamCallbackTimeInfo *t)
{
	double age = t->currentTime - t->inputBufferAdcTime;

	/* Some hosts give no times. */
	if (!(age >= 0 && age < 10) || t->inputBufferAdcTime <= 0)
		return usual_ns;
	return (int64_t)(age * 1e9);
}

static int take(const void *in, void *out, unsigned long frames,
    const PaStreamCallbackTimeInfo *times, PaStreamCallbackFlags flags,
    void *data)
{
	struct sound_hearing *h = data;

	(void)out;
	if (in)
		inlet_put(&h->inlet, in, (int)frames, channels,
		    clock_steady_ns() - age_ns(times),
		    (flags & paInputOverflow) != 0);
	else
		inlet_miss(&h->inlet, (int)frames);
	return paContinue;
}

static bool open_at(int card, struct sound_hearing *h, int rate)
{
	PaStreamParameters p = {
		.device = card,
		.channelCount = channels,
		.sampleFormat = paFloat32,
		.suggestedLatency = LATENCY_MS / 1000.0,
	};

	return rate >= HEARD_RATE_MIN && rate <= HEARD_RATE_MAX &&
	    Pa_OpenStream(&stream, &p, NULL, rate, BLOCK, paNoFlag,
		h->order.paced ? take : NULL, h) == paNoError;
}

/* What PortAudio thinks it takes, and what a block holds back. */
static int64_t nominal_ns(int rate)
{
	const PaStreamInfo *info = Pa_GetStreamInfo(stream);
	double seconds = info ? info->inputLatency : 0;

	if (!(seconds > 0 && seconds < 1))
		seconds = (double)BLOCK / rate;
	return (int64_t)(seconds * 1e9);
}

bool microphone_open(int card, struct sound_hearing *h)
{
	const PaDeviceInfo *info = Pa_GetDeviceInfo(card);
	int rates[RATES] = { h->order.rate,
		(int)(info->defaultSampleRate + 0.5), 44100 };

	channels = info->maxInputChannels < CHANNELS_MAX
	    ? info->maxInputChannels
	    : CHANNELS_MAX;
	for (int i = 0; i < RATES; i++) {
		if (!open_at(card, h, rates[i]))
			continue;
		h->rate = rates[i];
		usual_ns = nominal_ns(h->rate);
		return Pa_StartStream(stream) == paNoError;
	}
	return false;
}

bool microphone_hears(void)
{
	return Pa_IsStreamActive(stream) == 1;
}

bool microphone_read(struct sound_hearing *h, int count)
{
	float block[BLOCK * CHANNELS_MAX];
	PaError error;

	if (count > BLOCK)
		return false;
	error = Pa_ReadStream(stream, block, (unsigned long)count);
	if (error != paNoError && error != paInputOverflowed)
		return false;
	return inlet_put(
	    &h->inlet, block, count, channels, 0, error != paNoError);
}
