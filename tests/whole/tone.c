/*
 * tone.c - a recording of a bowed string whose truth is known, as a file
 *
 *	tone FILE [key=number...] [nan] [opposed]
 *
 * The end of the name says the format.  Keys: rate, channels, seconds, hz,
 * swing_hz, swing_cents, travel, pulses (a second), room (dB), pause (seconds of
 * silence, and the same again), gain.  "nan" keeps 32-bit floats and spoils some
 * of them.  Prints the truth.
 */
#include <sndfile.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../listen/bowed.h"

struct wish {
	struct bowed b;
	double pause, gain, channels;
	bool spoiled, opposed;
};

static bool read_word(struct wish *w, const char *word)
{
	const struct {
		const char *key;
		double *to;
	} keys[] = {
		{ "seconds=", &w->b.seconds },
		{ "hz=", &w->b.hz },
		{ "swing_hz=", &w->b.swing_hz },
		{ "swing_cents=", &w->b.swing_cents },
		{ "travel=", &w->b.travel_cents },
		{ "pulses=", &w->b.pulses_a_second },
		{ "room=", &w->b.room_db },
		{ "pause=", &w->pause },
		{ "gain=", &w->gain },
		{ "channels=", &w->channels },
	};

	for (size_t i = 0; i < sizeof(keys) / sizeof(*keys); i++) {
		size_t n = strlen(keys[i].key);

		if (strncmp(word, keys[i].key, n) != 0)
			continue;
		*keys[i].to = atof(word + n);
		return true;
	}
	if (strncmp(word, "rate=", 5) == 0)
		w->b.rate = atoi(word + 5);
	else if (strcmp(word, "nan") == 0)
		w->spoiled = true;
	else if (strcmp(word, "opposed") == 0)
		w->opposed = true;
	else
		return false;
	return true;
}

static int format_of(const char *path, bool floats)
{
	const char *end = strrchr(path, '.');
	int how = floats ? SF_FORMAT_FLOAT : SF_FORMAT_PCM_16;

	if (end && strcmp(end, ".flac") == 0)
		return SF_FORMAT_FLAC | SF_FORMAT_PCM_16;
	if (end && strcmp(end, ".ogg") == 0)
		return SF_FORMAT_OGG | SF_FORMAT_VORBIS;
	if (end && strcmp(end, ".aiff") == 0)
		return SF_FORMAT_AIFF | how;
	return SF_FORMAT_WAV | how;
}

/* Each frame to all channels; opposed: the second against the first. */
static void put(SNDFILE *f, const struct wish *w, const float *x, size_t n)
{
	int channels = (int)w->channels;
	float frame[1024] = { 0 };

	for (size_t i = 0; i < n; i++) {
		float y = x ? x[i] * (float)w->gain : 0;

		if (w->spoiled && i % 1000 == 500)
			y = i % 2000 == 500 ? NAN : INFINITY;
		for (int c = 0; c < channels; c++)
			frame[c] = w->opposed && c % 2 ? -y : y;
		sf_writef_float(f, frame, 1);
	}
}

static void tell(const struct bowed_sound *s)
{
	for (int i = 0; i < s->glides; i++)
		printf("%.6f %.6f\n", s->half[i], s->nine[i]);
}

int main(int argc, char **argv)
{
	struct wish w = { .b = { .rate = 48000,
			      .seconds = 8,
			      .hz = 195.9977,
			      .jitter_cents = 2,
			      .turn_s = 4,
			      .noise_db = -30,
			      .glide_s = 0.12 },
		.gain = 1,
		.channels = 1 };
	SF_INFO info = { 0 };
	struct bowed_sound s;
	SNDFILE *f;

	seeded_state = 1;
	for (int i = 2; i < argc; i++)
		if (!read_word(&w, argv[i]))
			return 64;
	if (argc < 2 || w.channels < 1 || w.channels > 1024)
		return 64;
	w.b.room_s = w.b.room_db != 0 ? 0.35 : 0;
	info.samplerate = w.b.rate;
	info.channels = (int)w.channels;
	info.format = format_of(argv[1], w.spoiled);
	f = sf_open(argv[1], SFM_WRITE, &info);
	if (!f)
		return 73;
	sf_command(f, SFC_SET_CLIPPING, NULL, SF_TRUE);
	s = bowed_make(&w.b);
	put(f, &w, s.x, s.n);
	if (w.pause > 0) {
		put(f, &w, NULL, (size_t)(w.pause * w.b.rate));
		put(f, &w, s.x, s.n);
	}
	sf_close(f);
	tell(&s);
	free(s.x);
	return 0;
}
