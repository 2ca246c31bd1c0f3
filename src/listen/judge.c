/*
 * judge.c - whether a microphone can be trusted, and if not, why
 *
 * Levels are those of pieces of 10 ms, counted by whole dB.  A string that is
 * let go dies away over a tenth of a second at least and a microphone always
 * hisses a little, so a sound that is gone from one piece to the next but one
 * was cut off by a gate.
 *
 * The two bands are cascades of the constant-peak band-pass of Bristow-Johnson's
 * "Cookbook formulae for audio EQ biquad filter coefficients".
 */
#include "evenhand/listen/judge.h"

#include <assert.h>
#include <math.h>

#define TWO_PI 6.283185307179586
#define ALIKE_S 2.0	   /* of equal samples: nothing is there */
#define FULL 0.99F	   /* a card's largest sample, nearly */
#define NOTHING_DB (-95.0) /* less than a 16-bit card's smallest step */
#define SOUND_DB (-55.0)
#define PLAYED_S 2.0 /* before levels are told */
#define RESTED_S 1.0
#define CUTS_S 0.1 /* times a second: a gate */
#define MIDDLE_HZ 2000.0
#define HIGH_HZ 6000.0
#define WIDE 4.0	  /* of a band: its middle over its width */
#define NARROW_DB (-45.0) /* bowed strings stay above -35 */
#define FADES_DB (-8.0)	  /* of a bow's level, first to last third */
#define FADES_SHARE 0.9	  /* of all bows */
#define LOUD_SHARE 0.1	  /* of the pieces lie above what is loud */

enum { BOWS_LEAST = 6, CUTS_LEAST = 3, PIECES_A_SECOND = 100 };

static struct judge_band band(int rate, double hz)
{
	double turn = TWO_PI * hz / rate, alpha = sin(turn) / (2 * WIDE);

	return (struct judge_band) { .b = alpha / (1 + alpha),
		.a1 = -2 * cos(turn) / (1 + alpha),
		.a2 = (1 - alpha) / (1 + alpha) };
}

void judge_begin(struct judge *j, int rate)
{
	assert(rate >= HEARD_RATE_MIN && rate <= HEARD_RATE_MAX);
	*j = (struct judge) { .rate = rate,
		.piece = rate / PIECES_A_SECOND,
		.before_db = { NOTHING_DB, NOTHING_DB },
		.middle = band(rate, MIDDLE_HZ),
		.high = band(rate, HIGH_HZ) };
}

static double filtered(struct judge_band *band, double x)
{
	for (int i = 0; i < JUDGE_FILTERS; i++) {
		double *past = band->past[i];
		double y = band->b * x + past[0];

		past[0] = past[1] - band->a1 * y;
		past[1] = -band->b * x - band->a2 * y;
		x = y;
	}
	return x;
}

static void end_piece(struct judge *j, bool playing)
{
	double db = 10 * log10(j->sum / j->piece + 1e-20);
	int at = (int)fmin(fmax(-db, 0), JUDGE_DB - 1);

	j->pieces[playing]++;
	j->at_db[playing][at]++;
	j->clips += playing && j->clipped;
	j->cuts += j->before_db[1] > SOUND_DB && db < NOTHING_DB;
	j->before_db[1] = j->before_db[0];
	j->before_db[0] = db;
	j->sum = 0;
	j->in_piece = 0;
	j->clipped = false;
}

void judge_take(struct judge *j, const float *x, size_t n, bool playing)
{
	for (size_t i = 0; i < n; i++) {
		float v = x[i] >= -1 && x[i] <= 1 ? x[i]
		    : x[i] > 1			  ? 1
		    : x[i] < -1			  ? -1
						  : 0;
		double middle = filtered(&j->middle, (double)v);
		double high = filtered(&j->high, (double)v);

		if (playing) {
			j->middle.energy += middle * middle;
			j->high.energy += high * high;
		}
		j->samples++;
		j->others += v != j->last;
		j->last = v;
		j->sum += (double)v * (double)v;
		j->clipped |= v >= FULL || v <= -FULL;
		if (++j->in_piece == (size_t)j->piece)
			end_piece(j, playing);
	}
}

void judge_turn(struct judge *j, const struct turn_heard *t)
{
	if (t->answer != TURN_HEARD)
		return;
	j->heard++;
	j->rooms += t->room > 0;
	j->room += t->room;
	for (int i = 0; i < t->bows; i++) {
		const struct bow *b = &t->bow[i].bow;

		if (!b->heard)
			continue;
		j->bows++;
		j->fade_db += b->drift_db;
		j->fading += b->drift_db < FADES_DB;
	}
}

/* The level above which that share of the pieces lies. */
static double level(const struct judge *j, bool playing, double share)
{
	double left = share * (double)j->pieces[playing];
	int i = 0;

	for (; i < JUDGE_DB - 1; i++) {
		left -= (double)j->at_db[playing][i];
		if (left < 0)
			break;
	}
	return -i;
}

static double seconds(const struct judge *j, bool playing)
{
	return (double)j->pieces[playing] / PIECES_A_SECOND;
}

/* What speech programs do to a sound. */
static struct judged filter_found(const struct judge *j)
{
	double all_s = seconds(j, false) + seconds(j, true);
	double high_db = 10 *
	    log10((j->high.energy + 1e-30) / (j->middle.energy + 1e-30));

	if (j->cuts >= CUTS_LEAST && (double)j->cuts > CUTS_S * all_s)
		return (struct judged) { JUDGE_GATED, (double)j->cuts / all_s };
	if (high_db < NARROW_DB)
		return (struct judged) { JUDGE_NARROW, -high_db };
	if (j->bows >= BOWS_LEAST && j->fading >= FADES_SHARE * j->bows)
		return (struct judged) { JUDGE_PUMPED, -j->fade_db / j->bows };
	return (struct judged) { JUDGE_FINE, 0 };
}

enum turn_distance judge_distance(const struct judge *j)
{
	return turn_distance_of(j->rooms > 0 ? j->room / j->rooms : 0);
}

struct judged judge_tell(const struct judge *j)
{
	double loud = level(j, true, LOUD_SHARE), rest, clips;
	struct judged filter;

	if (j->others <= 1 && (double)j->samples > ALIKE_S * j->rate)
		return (struct judged) { JUDGE_DEAD, 0 };
	if (seconds(j, true) < PLAYED_S)
		return (struct judged) { JUDGE_UNKNOWN, 0 };
	if (loud < JUDGE_QUIET_DB)
		return (struct judged) { JUDGE_QUIET, loud };
	clips = (double)j->clips / (double)j->pieces[true];
	if (clips > JUDGE_CLIPS)
		return (struct judged) { JUDGE_CLIPS_IT, clips };
	filter = filter_found(j);
	if (filter.what != JUDGE_FINE)
		return filter;
	rest = level(j, false, 0.5);
	if (seconds(j, false) > RESTED_S && loud - rest < JUDGE_NOISY_DB)
		return (struct judged) { JUDGE_NOISY, loud - rest };
	if (judge_distance(j) == DISTANCE_FAR)
		return (struct judged) { JUDGE_FAR, j->room / j->rooms };
	return (struct judged) { j->heard > 0 ? JUDGE_FINE : JUDGE_UNKNOWN, 0 };
}
