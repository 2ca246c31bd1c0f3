/*
 * bench_listen_aubio.c - a general-purpose pitch library on the same sounds
 *
 * aubio's yinfft, 2048 samples every 480 at 48 kHz: what a program that knows
 * nothing of what was asked hears, beside the figures of bench_listen.  Built
 * only where libaubio is installed, and never part of evenhand.  Its instants
 * are moved by the delay that suits it best, so that only its errors count.
 */
#include <aubio/aubio.h>
#include <stdio.h>

#include "bench.h"
#include "tones.h"

enum { WINDOW = 2048, HOP = 480 };

static struct pitches pitches;

/* Gives seconds of this thread's time. */
static double hear(const struct bowed *b, const struct bowed_sound *s,
    double delay, bool count)
{
	aubio_pitch_t *pitch = new_aubio_pitch(
	    "yinfft", WINDOW, HOP, (uint_t)b->rate);
	fvec_t *in = new_fvec(HOP), *out = new_fvec(1);
	struct timespec from, to;

	clock_gettime(CLOCK_THREAD_CPUTIME_ID, &from);
	for (size_t at = 0; at + HOP <= s->n; at += HOP) {
		double t = (double)(at + HOP) / b->rate - delay;

		for (size_t i = 0; i < HOP; i++)
			in->data[i] = s->x[at + i];
		aubio_pitch_do(pitch, in, out);
		if (count)
			pitches_add(&pitches, b, s, t, (double)out->data[0]);
	}
	clock_gettime(CLOCK_THREAD_CPUTIME_ID, &to);
	del_aubio_pitch(pitch);
	del_fvec(in);
	del_fvec(out);
	return (double)(to.tv_sec - from.tv_sec) +
	    (double)(to.tv_nsec - from.tv_nsec) / 1e9;
}

static void clear(void)
{
	pitches.cents.n = pitches.instants = pitches.within = pitches.gross = 0;
}

/* The delay in steps of a ms at which a swing fits best. */
static double best_delay(void)
{
	struct bowed b = tone_swing(DRY, 195.9977, 5.5, 40);
	struct bowed_sound s = bowed_make(&b);
	double best = 0, least = INFINITY;

	for (int ms = 0; ms <= 60; ms++) {
		double middle;

		clear();
		hear(&b, &s, ms / 1000.0, true);
		middle = errors_share(&pitches.cents, 0.5);
		if (middle < least) {
			least = middle;
			best = ms / 1000.0;
		}
	}
	free(s.x);
	return best;
}

static void pitch(enum surrounding where, const char *name, double delay)
{
	char what[80];

	clear();
	for (int i = 0; i < TONE_NOTES + TONE_TRAVELS; i++) {
		struct bowed b = i < TONE_NOTES
		    ? tone_swing(where, tone_notes[i], 5.5, 20)
		    : tone_glide(where, tone_travels[i - TONE_NOTES], 6);
		struct bowed_sound s = bowed_make(&b);

		hear(&b, &s, delay, true);
		free(s.x);
	}
	snprintf(what, sizeof what, "%s: instants within 10 cents", name);
	beside(what, "aubio", 100.0 * pitches.within / pitches.instants);
	snprintf(what, sizeof what, "%s: gross errors", name);
	beside(what, "aubio", 100.0 * pitches.gross / pitches.instants);
	snprintf(what, sizeof what, "%s: error of the pitch, median", name);
	beside(what, "aubio", errors_share(&pitches.cents, 0.5));
	snprintf(what, sizeof what, "%s: 95 %% of them are under", name);
	beside(what, "aubio", errors_share(&pitches.cents, 0.95));
}

int main(void)
{
	struct bowed b = tone_in(DRY, 146.8324);
	struct bowed_sound s = bowed_make(&b);
	double delay = best_delay();

	seeded_state = 1;
	pitch(DRY, "dry", delay);
	pitch(NOISY, "noise 10 dB under", delay);
	beside("live pitch behind the newest sample, D string", "aubio",
	    1000 * delay);
	beside(
	    "live path, D string", "aubio", b.seconds / hear(&b, &s, 0, false));
	free(s.x);
	return 0;
}
