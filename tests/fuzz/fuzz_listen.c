/*
 * fuzz_listen.c - random sounds in random pieces, listened to for random wishes
 *
 * The first bytes are a rate, the notes, the pulses and bows that are asked;
 * each six after them are a piece of sound: raw bits of a float, a tone, noise,
 * silence, or samples that were lost.  Whatever comes, the ear ends, tells
 * nothing that is no number, and keeps no more than a turn; and so does the
 * judge of the microphone.
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/listen/ear.h"
#include "evenhand/listen/judge.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { HEAD = 10, PIECE = 6, LONGEST = 6000, ALL_MAX = 40000 };

static const int rates[] = { 16000, 22050, 44100, 48000, 96000, 192000 };

static void hold(bool good, const char *what)
{
	if (good)
		return;
	fprintf(stderr, "%s\n", what);
	abort();
}

static struct turn_asked wish(const uint8_t *head)
{
	struct turn_asked asked = {
		.pulses = head[3] % (TURN_PULSES_MAX + 1),
		.bows = 1 + head[4] % TURN_BOWS_MAX,
		.sways = head[5] & 1,
		.latency_known = head[5] & 2,
		.distance = (enum turn_distance)(head[5] / 8 % 3),
	};
	double bow_s = 0.1 + head[6] / 32.0;

	asked.asked.low_hz = HEARD_LOW_HZ * exp2(head[1] / 37.0);
	asked.asked.high_hz = fmin(
	    asked.asked.low_hz * exp2(head[2] / 100.0), HEARD_HIGH_HZ);
	asked.lower_hz = asked.asked.low_hz;
	asked.travel_cents = head[7] * 10;
	for (int i = 0; i <= asked.bows; i++)
		asked.edge_s[i] = (head[8] - 64) / 64.0 + i * bow_s;
	return asked;
}

static size_t fill(const uint8_t *piece, int rate, float *x)
{
	size_t n = 1 + (size_t)piece[1] * (LONGEST - 1) / 255;
	float raw, amount = (float)piece[2] / 200;
	uint32_t noise = piece[3];

	memcpy(&raw, piece + 2, sizeof(raw));
	for (size_t i = 0; i < n; i++) {
		double turns = fmod(
		    (piece[3] * 16.0 + piece[4]) * (double)i / rate, 1);

		noise = noise * 1664525U + 1013904223U;
		switch (piece[0] % 5) {
		case 0:
			x[i] = raw;
			break;
		case 1:
			x[i] = amount * (float)(2 * turns - 1);
			break;
		case 2:
			x[i] = amount * (float)sin(6.2831853 * turns);
			break;
		case 3:
			x[i] = amount * ((float)(noise >> 8) / 8388608.0F - 1);
			break;
		default:
			x[i] = 0;
		}
	}
	return n;
}

static void good_instants(const struct ear *e, double seconds)
{
	size_t n;
	const struct instant *m = ear_instants(e, &n);

	/* A turn may be over before it began: then nothing of it is kept. */
	seconds = fmin(fmax(seconds, 0), EAR_S_MAX);
	hold((double)n * HEARD_STEP_S <= seconds + 1e-6,
	    "more instants than a turn has");
	for (size_t k = 0; k < n; k++) {
		hold(isfinite(m[k].hz) && isfinite(m[k].sure) &&
			isfinite(m[k].level_db) && isfinite(m[k].apart),
		    "an instant is no number");
		hold(m[k].hz >= 0 && m[k].sure >= 0 && m[k].sure <= 1,
		    "an instant out of range");
		hold(m[k].what != HEARD_NOTE || m[k].hz > 0,
		    "a note without a pitch");
	}
}

static void good_turn(const struct turn_heard *h)
{
	struct turn_value v[TURN_VALUES_MAX];
	int n = turn_values(h, v);

	for (int i = 0; i < n; i++)
		hold(isfinite(v[i].value), v[i].name);
	hold(h->share >= 0 && h->share <= 1, "share");
	hold(h->bows_full <= h->bows_listened, "more full than listened to");
	hold(h->bows_listened <= h->bows, "more bows than there are");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static float x[LONGEST];
	struct turn_asked asked;
	struct turn_heard heard;
	struct judge judge;
	struct ear *e;
	size_t all = 0;
	int rate;

	if (size < HEAD + PIECE)
		return 0;
	rate = rates[data[0] % 6];
	asked = wish(data);
	e = ear_new(rate);
	judge_begin(&judge, rate);
	if (e == NULL || !ear_begin(e, &asked)) {
		ear_free(e);
		return 0;
	}
	for (size_t i = HEAD; i + PIECE <= size && all < ALL_MAX; i += PIECE) {
		size_t n = fill(data + i, rate, x);

		if (data[i] % 7 == 6)
			ear_lost(e, n);
		else
			ear_take(e, x, n);
		judge_take(&judge, x, n, data[i] & 128);
		all += n;
	}
	while (data[9] & 1 && ear_work(e))
		;
	good_instants(e, asked.edge_s[asked.bows] + EAR_AFTER_S);
	hold(ear_end(e, &asked, &heard), "memory");
	good_turn(&heard);
	judge_turn(&judge, &heard);
	hold(isfinite(judge_tell(&judge).evidence), "evidence");
	ear_free(e);
	return 0;
}
