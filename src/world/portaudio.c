/*
 * portaudio.c - one card, opened, and the callback that feeds it
 *
 * The callback runs the engine and says what time it was; nothing else.  It
 * reads the steady clock once a block, which asks no system for anything.
 * Unpaced there is no callback: the card is given blocks as it takes them.
 */
#include "cards.h"

#include <portaudio.h>

#include "evenhand/base/frames.h"
#include "evenhand/world/clock.h"

enum {
	BLOCK = 256, /* frames asked for at a time */
	CHANNELS_MAX = 2,
	RATES = 3,
};

static PaStream *stream;
static int channels;

/* From being asked for to being played, in ns; PortAudio's own if it knows. */
static int64_t delay_ns(const PaStreamCallbackTimeInfo *t)
{
	double delay = t->outputBufferDacTime - t->currentTime;

	/* Some hosts give no times. */
	if (!(delay >= 0 && delay < 10))
		delay = card_delay_ms() / 1000.0;
	return (int64_t)(delay * 1e9);
}

static int feed(const void *in, void *out, unsigned long frames,
    const PaStreamCallbackTimeInfo *times, PaStreamCallbackFlags flags,
    void *data)
{
	struct sound_shared *s = data;
	struct engine *e = sound_engine(s);
	struct outlet_time t = {
		.frame = engine_frame(e),
		.time_ns = clock_steady_ns(),
		.delay_ns = delay_ns(times),
	};

	(void)in;
	outlet_fill(&s->outlet, e, out, (int)frames, channels);
	outlet_publish(
	    &s->outlet, &t, s->rate, (flags & paOutputUnderflow) != 0);
	return paContinue;
}

static bool open_at(int card, struct sound_shared *s, int rate)
{
	PaStreamParameters p = {
		.device = card,
		.channelCount = channels,
		.sampleFormat = paFloat32,
		.suggestedLatency = s->order.latency_ms / 1000.0,
	};

	return rate >= RATE_MIN && rate <= RATE_MAX &&
	    Pa_OpenStream(&stream, NULL, &p, rate, BLOCK, paNoFlag,
		s->order.paced ? feed : NULL, s) == paNoError;
}

bool card_open(int card, struct sound_shared *s)
{
	const PaDeviceInfo *info = Pa_GetDeviceInfo(card);
	int rates[RATES] = { s->order.rate,
		(int)(info->defaultSampleRate + 0.5), 44100 };

	channels = info->maxOutputChannels < CHANNELS_MAX
	    ? info->maxOutputChannels
	    : CHANNELS_MAX;
	for (int i = 0; i < RATES; i++) {
		if (!open_at(card, s, rates[i]))
			continue;
		s->rate = rates[i];
		engine_init(sound_engine(s), s->rate, s->order.wish.level);
		return Pa_StartStream(stream) == paNoError;
	}
	return false;
}

bool card_write(struct sound_shared *s, int frames)
{
	float block[BLOCK * CHANNELS_MAX];
	struct engine *e = sound_engine(s);

	outlet_beat(&s->outlet);
	while (frames > 0) {
		int count = frames < BLOCK ? frames : BLOCK;
		PaError error;

		outlet_fill(&s->outlet, e, block, count, channels);
		error = Pa_WriteStream(stream, block, (unsigned long)count);
		if (error != paNoError && error != paOutputUnderflowed)
			return false;
		frames -= count;
	}
	return true;
}

int card_delay_ms(void)
{
	const PaStreamInfo *info = stream ? Pa_GetStreamInfo(stream) : NULL;
	double delay = info ? info->outputLatency : 0;

	return delay > 0 && delay < 1 ? (int)(delay * 1000 + 0.5) : 0;
}

void card_close(bool drain)
{
	if (drain)
		Pa_StopStream(stream);
	else
		Pa_AbortStream(stream);
	Pa_CloseStream(stream);
}
