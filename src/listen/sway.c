/*
 * sway.c - how fast, how wide and how even a vibrato is
 */
#include "evenhand/listen/sway.h"

#include <math.h>
#include <string.h>

#include "evenhand/music/pitch.h"
#include "series.h"
#include "smooth.h"
#include "swing_fit.h"

#define CLEARLY 0.25	/* of the width, beyond the middle */
#define WIDTH_LEAST 3.0 /* cents; less is what a bow does by itself */
#define SHORTEST 0.55	/* of the usual period: no cycle */
#define LONGEST 1.6
#define NARROWEST 0.5	 /* of the usual width: no cycle */
#define NOT_YET 0.85	 /* of it: a vibrato that begins or ends */
#define JITTER_CENTS 1.0 /* what a bow does by itself, when smoothed */
#define NOISE_TIMES 1.6	 /* the noise at a crossing, against that left over */
#define RATE_LEAST 2.0	 /* swings a second; slower is no vibrato */
#define RATE_MOST 12.0

enum {
	TREND_REACH = 80, /* instants of the slow middle on each side */
	CYCLES_MAX = 1024,
	CYCLES_LEAST = 4,
	MANY = 8,  /* cycles, of which the first and last can be done without */
	EDGE = 20, /* instants after a beginning and before an end of notes */
};

struct swaying {
	const struct instant *m;
	double *cents, *off; /* of each instant, and from the slow middle */
	size_t n;
	double up[CYCLES_MAX + 1]; /* crossings, in instants */
	int ups;
	int begin[CYCLES_MAX]; /* the crossing at which a cycle begins */
	double period[CYCLES_MAX], width[CYCLES_MAX], noise[CYCLES_MAX];
	int cycles;
	double usual; /* period */
};

/* The pitch without what moves slowly: Hann's window over 0.8 s. */
static void take_trend(struct swaying *s)
{
	double window[TREND_REACH + 1];

	for (int i = 0; i <= TREND_REACH; i++)
		window[i] = 0.5 +
		    0.5 * cos(3.14159265358979 * i / (TREND_REACH + 1));
	for (size_t k = 0; k < s->n; k++) {
		size_t from = k > TREND_REACH ? k - TREND_REACH : 0;
		double sum = 0, weight = 0;

		for (size_t j = from; j < s->n && j <= k + TREND_REACH; j++) {
			double w = window[j > k ? j - k : k - j];

			if (!isfinite(s->cents[j]))
				continue;
			sum += w * s->cents[j];
			weight += w;
		}
		s->off[k] = weight > 0 ? s->cents[k] - sum / weight : NAN;
	}
}

static double usual_width(const struct swaying *s)
{
	double sum = 0;
	size_t n = 0;

	for (size_t k = 0; k < s->n; k++) {
		if (!isfinite(s->off[k]))
			continue;
		sum += s->off[k] * s->off[k];
		n++;
	}
	return n == 0 ? 0 : sqrt(2 * sum / (double)n);
}

/* Where notes begin and end their pitch is not sure. */
static bool at_edge(const struct swaying *s, size_t k)
{
	return k < EDGE || k + EDGE >= s->n || !isfinite(s->off[k - EDGE]) ||
	    !isfinite(s->off[k + EDGE]);
}

/* Crossings upwards, each after the pitch was clearly below. */
static void find_crossings(struct swaying *s, double clearly)
{
	bool below = false;
	double up = NAN;

	for (size_t k = 1; k < s->n; k++) {
		double a = s->off[k - 1], b = s->off[k];

		if (at_edge(s, k)) {
			below = false;
			up = NAN;
			continue;
		}
		if (b < -clearly) {
			below = true;
			up = NAN;
		}
		if (below && a < 0 && b >= 0)
			up = (double)(k - 1) + a / (a - b);
		if (below && b > clearly && isfinite(up) &&
		    s->ups <= CYCLES_MAX) {
			s->up[s->ups++] = up;
			below = false;
		}
	}
}

/* Usual cycles only: none that a gap made long or a slip short. */
static void fit_cycles(struct swaying *s)
{
	double sorted[CYCLES_MAX];

	for (int i = 0; i + 1 < s->ups; i++)
		sorted[i] = s->up[i + 1] - s->up[i];
	s->usual = series_median(sorted, (size_t)(s->ups - 1));
	for (int i = 0; i + 1 < s->ups; i++) {
		double period = s->up[i + 1] - s->up[i];
		struct swing_fit fit;

		if (period < SHORTEST * s->usual ||
		    period > LONGEST * s->usual ||
		    !swing_fit(s->cents, s->up[i], period, &fit))
			continue;
		s->begin[s->cycles] = i;
		s->period[s->cycles] = period;
		s->width[s->cycles] = fit.width;
		s->noise[s->cycles] = fit.noise;
		s->cycles++;
	}
}

/* What is no cycle goes, and at both ends what is not yet, or no more, one. */
static void leave_narrow(struct swaying *s)
{
	double sorted[CYCLES_MAX], usual;
	int kept = 0, first = 0, last = s->cycles - 1;

	if (s->cycles == 0)
		return;
	memcpy(sorted, s->width, (size_t)s->cycles * sizeof(*sorted));
	usual = series_median(sorted, (size_t)s->cycles);
	while (first < last && s->width[first] < NOT_YET * usual)
		first++;
	while (last > first && s->width[last] < NOT_YET * usual)
		last--;
	if (last - first > MANY) {
		first++;
		last--;
	}
	for (int i = first; i <= last; i++) {
		if (s->width[i] < NARROWEST * usual)
			continue;
		s->begin[kept] = s->begin[i];
		s->period[kept] = s->period[i];
		s->width[kept] = s->width[i];
		s->noise[kept] = s->noise[i];
		kept++;
	}
	s->cycles = kept;
}

/*
 * A crossing is uncertain by the noise over the slope there, 2 pi rate width; a
 * period has two of them.
 */
static double unevenness(const struct swaying *s, double width)
{
	size_t n = (size_t)s->cycles;
	double noise = fmax(
	    NOISE_TIMES * series_mean(s->noise, n), JITTER_CENTS);
	double mean = series_mean(s->period, n);
	double found = series_sd(s->period, n) / mean;
	double by_noise = sqrt(2) * noise / (2 * 3.14159265358979 * width);

	return sqrt(fmax(found * found - by_noise * by_noise, 0));
}

/* From here to there, with fractions; the first and the last cycle's ends. */
static double from(const struct swaying *s)
{
	return s->up[s->begin[0]];
}

static double to(const struct swaying *s)
{
	return s->up[s->begin[s->cycles - 1] + 1];
}

/*
 * Of all cycles between, those that were not measured too, in an instant.  Where
 * a bow turns the pitch may cross twice: that is no cycle.
 */
static double rate(const struct swaying *s)
{
	double cycles = 0;

	for (int i = s->begin[0]; i <= s->begin[s->cycles - 1]; i++)
		cycles += floor((s->up[i + 1] - s->up[i]) / s->usual + 0.5);
	return cycles / (to(s) - from(s));
}

static double middle(const struct swaying *s)
{
	size_t end = (size_t)to(s), n = 0;
	double sum = 0;

	for (size_t k = (size_t)ceil(from(s)); k <= end; k++) {
		if (!isfinite(s->cents[k]))
			continue;
		sum += s->cents[k];
		n++;
	}
	return sum / (double)n;
}

static void tell(const struct swaying *s, struct sway *out)
{
	size_t n = (size_t)s->cycles;
	double measured = series_mean(s->period, n) * (double)n;

	*out = (struct sway) {
		.heard = true,
		.cycles = s->cycles,
		.rate_hz = rate(s) / HEARD_STEP_S,
		.width_cents = series_mean(s->width, n),
		.width_spread = series_sd(s->width, n),
		.middle_cents = middle(s),
		.from_s = from(s) * HEARD_STEP_S,
		.to_s = to(s) * HEARD_STEP_S,
		.sure = fmin(measured / (to(s) - from(s)), 1),
	};
	out->unevenness = unevenness(s, out->width_cents);
}

static bool is_vibrato(const struct sway *w)
{
	return w->rate_hz >= RATE_LEAST && w->rate_hz <= RATE_MOST &&
	    w->width_cents >= WIDTH_LEAST;
}

bool sway_measure(struct arena *a, const struct instant *m, size_t n, double hz,
    struct sway *out)
{
	struct swaying *s = arena_take(a, sizeof(*s));

	*out = (struct sway) { .heard = false };
	if (s == NULL)
		return false;
	s->m = m;
	s->n = n;
	s->cents = series_cents(a, m, n, hz);
	s->off = arena_take(a, n * sizeof(*s->off));
	if (s->cents == NULL || s->off == NULL)
		return false;
	take_trend(s);
	find_crossings(s, CLEARLY * usual_width(s));
	if (s->ups <= CYCLES_LEAST)
		return true;
	fit_cycles(s);
	leave_narrow(s);
	if (s->cycles < CYCLES_LEAST)
		return true;
	tell(s, out);
	if (!is_vibrato(out))
		*out = (struct sway) { .heard = false };
	return true;
}
