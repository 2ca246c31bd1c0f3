/*
 * bowing.c - the sound of a session of one round, made from what it asks
 *
 *	bowing ROUTINE FILE LEFT_OUT [LATER_MS]
 *
 * Writes a WAV file (48 kHz, 16 bits), or where its name ends in .raw only
 * floats in two channels, as long as the session of sound.sh's
 * minute(): its four turns at their times, each finger on its own lower note,
 * gliding up with every pulse.  Of the last turn so many pulses are left out.
 * With LATER_MS the whole comes so much later.  Tells for each turn what is
 * in it:
 *
 *	number finger lower_hz travel_cents tops_of_bow_1 tops_of_bow_2
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/listen/ask.h"
#include "evenhand/world/load.h"

#include "../listen/bowed.h"

enum {
	RATE = 48000,
	SECONDS = 58,
	FIRST_MS = 8000,
	EACH_MS = 12000,
	TURNS = 4,
	BOWS = 2,
	PULSES = 6,
};

static float sound[RATE * SECONDS];

/* One turn of a unit; tops that are left out are the last but one, ... */
static void bow(const struct routine *r, int turn, int left_out, int at_ms)
{
	const struct ask_time when = { 0, r->bow_ms, BOWS, PULSES };
	double bow_s = r->bow_ms / 1000.0, pulse_s = bow_s / PULSES;
	struct turn_asked asked;
	struct bowed b = { .rate = RATE,
		.seconds = bow_s * BOWS,
		.glide_s = 0.15,
		.jitter_cents = 2,
		.turn_s = bow_s,
		.noise_db = -40 };
	struct bowed_sound s = { 0 };
	int tops[BOWS] = { 0 };

	if (!ask_turn(r, r->work_on, turn, &when, &asked)) {
		fputs("bowing: nothing is asked\n", stderr);
		exit(1);
	}
	b.hz = asked.lower_hz;
	b.travel_cents = asked.travel_cents;
	s.n = (size_t)(b.seconds * RATE);
	s.x = calloc(s.n, sizeof(*s.x));
	for (int i = 0; i < BOWS * PULSES; i++) {
		/* Up to the pulse and down again; the first needs its way. */
		double at = (i + 0.3) * pulse_s;

		if (turn == TURNS - 1 && i >= BOWS * PULSES - 1 - left_out &&
		    i < BOWS * PULSES - 1)
			continue;
		s.begin[s.glides] = at;
		s.fall[s.glides++] = at + pulse_s / 2;
		tops[i / PULSES]++;
	}
	bowed_string(&b, &s);
	bowed_noise(&b, &s, bowed_rms(&s));
	for (size_t i = 0; i < s.n; i++) {
		size_t to = (size_t)at_ms * (RATE / 1000) + i;

		if (to < sizeof(sound) / sizeof(*sound))
			sound[to] += s.x[i];
	}
	free(s.x);
	printf("%d %d %.2f %.0f %d %d\n", turn, r->unit[turn].to,
	    asked.lower_hz, asked.travel_cents, tops[0], tops[1]);
}

/* A half of full scale at its loudest. */
static void scale(void)
{
	size_t n = sizeof(sound) / sizeof(*sound);
	float peak = 1e-9F;

	for (size_t i = 0; i < n; i++)
		peak = fmaxf(peak, fabsf(sound[i]));
	for (size_t i = 0; i < n; i++)
		sound[i] *= 0.5F / peak;
}

static void word(FILE *to, uint32_t value, int bytes)
{
	for (; bytes > 0; bytes--, value >>= 8)
		putc((int)(value & 0xff), to);
}

static bool write_raw(const char *path)
{
	FILE *to = fopen(path, "wb");
	size_t n = sizeof(sound) / sizeof(*sound), good = 0;

	if (to == NULL)
		return false;
	for (size_t i = 0; i < n; i++) {
		float both[2] = { sound[i], sound[i] };

		good += fwrite(both, sizeof(both), 1, to);
	}
	return fclose(to) == 0 && good == n;
}

static bool write_wav(const char *path)
{
	FILE *to = fopen(path, "wb");
	uint32_t n = sizeof(sound) / sizeof(*sound);

	if (to == NULL)
		return false;
	fputs("RIFF", to);
	word(to, 36 + 2 * n, 4);
	fputs("WAVEfmt ", to);
	word(to, 16, 4);
	word(to, 1, 2);
	word(to, 1, 2);
	word(to, RATE, 4);
	word(to, RATE * 2, 4);
	word(to, 2, 2);
	word(to, 16, 2);
	fputs("data", to);
	word(to, 2 * n, 4);
	for (uint32_t i = 0; i < n; i++)
		word(to, (uint32_t)(int32_t)(sound[i] * 32000), 2);
	return fclose(to) == 0;
}

static int number(const char *word)
{
	return (int)strtol(word, NULL, 10);
}

int main(int argc, char **argv)
{
	struct load_paths paths;
	struct faults faults = { 0 };
	bool unreadable;
	struct routine *r;
	int later;

	if (argc < 4)
		return 2;
	r = load_routine(argv[1], &paths, &faults, &unreadable);
	if (r == NULL)
		return 1;
	later = argc > 4 ? number(argv[4]) : 0;
	seeded_state = 7;
	for (int t = 0; t < TURNS; t++)
		bow(r, t, number(argv[3]), FIRST_MS + t * EACH_MS + later);
	routine_free(r);
	scale();
	if (strstr(argv[2], ".raw"))
		return write_raw(argv[2]) ? 0 : 1;
	return write_wav(argv[2]) ? 0 : 1;
}
