/*
 * apart.c - whether partials stray as they do in a room
 *
 * A room still sounds with the pitches of a moment ago.  Beside a partial that
 * was turned back it is a sum of turning pointers: those of t ago are as many
 * bins away as the pitch of t ago, times the partial's number, and as strong as
 * the room's decay leaves them.  One of d bins that is weaker than the partial
 * moves it by up to d bins; far outside the window it moves it no more.  So from
 * the pitch alone follows how far each partial would stray if the room were as
 * loud as the string; this is what the border depends on, whatever the note, the
 * swing or the glide.
 *
 * The room is not always weaker at every partial: where it is louder for a
 * moment the partial jumps.  The share of such jumps tells near from far better
 * than their middle.
 *
 * Partials that are much weaker than the strongest, or hardly stronger than the
 * weakest, are left out: noise moves them.
 *
 * The constants were found on 208 turns (seeds 1 to 8) in rooms of 0.35 s RT60
 * with direct sound 6 dB over them and of 0.5 s with 3 dB, and without a room;
 * WITHIN was looked at on seeds 101 to 106 as well.
 */
#include "apart.h"

#include <math.h>
#include <stdbool.h>

#include "evenhand/listen/heard.h"

#define BOTTOM_HZ 250.0
#define TOLD_HZ 500.0 /* lower ones only show how loud the string is */
#define TOP_HZ 4000.0
#define DECAY_S 0.025 /* to 1/e of the energy: RT60 0.35 s */
#define WITHIN 2.0    /* bins: what is much farther moves a partial no more */
#define MOVED 0.1     /* bins; less than this tells nothing */
#define FAR 1.2	      /* times what follows from the pitch: a jump */
#define WEAK 0.01F    /* of the strongest amplitude */
#define OUT 2.0F      /* times the weakest, which may be noise */

enum { LAGS = 15, LAG = 2 /* instants: 10 ms */ };

struct room {
	float weight[LAGS]; /* of the energy that came so long ago */
	float away[LAGS];   /* bins for a partial's number, squared */
};

static void room_begin(struct room *r)
{
	double lag = LAG * HEARD_STEP_S / DECAY_S;

	for (int j = 0; j < LAGS; j++)
		r->weight[j] = (float)(exp(-lag * (j + 0.5)) -
		    exp(-lag * (j + 1.5)));
}

static void room_at(
    struct room *r, const struct piece *piece, size_t k, int half)
{
	double window_s = half * HEARD_STEP_S;

	for (size_t j = 0; j < LAGS; j++) {
		size_t back = LAG * (j + 1);
		double hz = k >= back ? piece->hz[k - back] - piece->hz[k] : 0;

		r->away[j] = (float)(hz * window_s * hz * window_s);
	}
}

/* How far that partial would stray, in bins, squared. */
static float strays(const struct room *r, int number)
{
	const float within = (float)(WITHIN * WITHIN);
	float square = (float)number * (float)number, sum = 0;

	for (int j = 0; j < LAGS; j++) {
		float away = square * r->away[j];

		sum += r->weight[j] * away * within * within /
		    ((within + away) * (within + away));
	}
	return sum;
}

/* Whether each stands out of the noise, and is high enough to tell. */
static void find_strong(
    const struct looks *l, const struct piece *piece, bool *strong)
{
	double hz = piece->hz[piece->instants / 2];
	float sum[PARTIALS_MAX], most = 0, least;

	for (int i = 0; i < l->n; i++) {
		sum[i] = 0;
		for (size_t k = 0; k < piece->instants; k += LOOK_EVERY)
			sum[i] += l->amplitude[i][k];
		most = fmaxf(most, sum[i]);
	}
	least = most;
	for (int i = 0; i < l->n; i++)
		least = fminf(least, sum[i]);
	for (int i = 0; i < l->n; i++)
		strong[i] = sum[i] > fmaxf(WEAK * most, OUT * least) &&
		    (l->first + i) * hz > TOLD_HZ;
}

/* Bins for a partial's number that all together are off. */
static float common(const struct looks *l, size_t k)
{
	struct reading r[PARTIALS_MAX];

	for (int i = 0; i < l->n; i++)
		r[i] = (struct reading) { l->bins[i][k] / (float)(l->first + i),
			l->amplitude[i][k] };
	return (float)readings_median(r, l->n);
}

static float apart_at(
    const struct looks *l, const struct room *r, const bool *strong, size_t k)
{
	float off = common(l, k);
	int told = 0, far = 0;

	for (int i = 0; i < l->n; i++) {
		float number = (float)(l->first + i);
		float bins = l->bins[i][k] - off * number;
		float square = strays(r, l->first + i);

		if (!strong[i] || square < (float)(MOVED * MOVED))
			continue;
		told++;
		far += bins * bins > (float)(FAR * FAR) * square;
	}
	return told > 0 ? fmaxf((float)far / (float)told, APART_LEAST) : 0;
}

void apart_measure(struct partials *p, const struct piece *piece, float *apart)
{
	bool strong[PARTIALS_MAX];
	struct looks l;
	struct room r;

	partials_look(p, piece, BOTTOM_HZ, TOP_HZ, &l);
	find_strong(&l, piece, strong);
	room_begin(&r);
	for (size_t k = 0; k < piece->instants; k++) {
		apart[k] = 0;
		if (k % LOOK_EVERY != 0)
			continue;
		room_at(&r, piece, k, l.half[k]);
		apart[k] = apart_at(&l, &r, strong, k);
	}
}
