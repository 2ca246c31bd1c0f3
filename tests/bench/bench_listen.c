/*
 * bench_listen.c - how exactly and how fast a string is heard
 *
 * Sounds of the tests' own making, with exact truth: dry (pink noise 20 dB
 * under the string), in noise (10 dB), in a small room (RT60 0.35 s, direct
 * sound 6 dB above it, hum) and in a larger one (0.5 s, 3 dB).
 */
#include <stdio.h>

#include "../listen/listening.h"
#include "bench.h"
#include "evenhand/listen/arrivals.h"
#include "evenhand/listen/bow.h"
#include "evenhand/listen/sway.h"
#include "evenhand/listen/turn.h"
#include "tones.h"

static struct listening refined(
    const struct bowed *b, const struct bowed_sound *s)
{
	struct asked asked = { b->hz, b->hz * exp2(b->travel_cents / 1200) };
	struct listening l = listening_live(s, b->rate, asked, 512);

	listening_refine(&l);
	return l;
}

static void one_pitch(struct pitches *p, const struct bowed *b)
{
	struct bowed_sound s = bowed_make(b);
	struct listening l = refined(b, &s);

	for (size_t k = 0; k < l.n; k++)
		pitches_add(p, b, &s, (double)k * HEARD_STEP_S,
		    l.m[k].what == HEARD_NOTE ? (double)l.m[k].hz : 0);
	listening_done(&l);
	free(s.x);
}

static struct pitches pitches;

static void pitch(enum surrounding where, const char *name, const char *within,
    const char *middle)
{
	char what[80];

	pitches.cents.n = pitches.instants = pitches.within = pitches.gross = 0;
	for (int i = 0; i < TONE_NOTES; i++) {
		struct bowed b = tone_swing(where, tone_notes[i], 5.5, 20);

		one_pitch(&pitches, &b);
	}
	for (int i = 0; i < TONE_TRAVELS; i++) {
		struct bowed b = tone_glide(where, tone_travels[i], 6);

		one_pitch(&pitches, &b);
	}
	snprintf(what, sizeof what, "%s: instants within 10 cents", name);
	figure(what, within, 100.0 * pitches.within / pitches.instants, "%");
	snprintf(what, sizeof what, "%s: gross errors", name);
	figure(what, "<= 0.02", 100.0 * pitches.gross / pitches.instants, "%");
	snprintf(what, sizeof what, "%s: error of the pitch, median", name);
	figure(what, middle, errors_share(&pitches.cents, 0.5), "cents");
	snprintf(what, sizeof what, "%s: 95 %% of them are under", name);
	figure(what, where == DRY ? "<= 3.5" : "",
	    errors_share(&pitches.cents, 0.95), "cents");
}

static struct errors half, nine, way, restless, spread;
static int missed;

static double tick_db = -20;

static void one_glide(enum surrounding where, double cents, int pulses)
{
	struct bowed b = tone_glide(where, cents, pulses);
	struct bowed_sound s;
	struct listening l;
	static struct arrival at[BOWED_GLIDES_MAX];
	double sum = 0, squares = 0;
	int n;

	b.tick_db = tick_db;
	s = bowed_make(&b);
	l = refined(&b, &s);
	n = arrivals_find(
	    &l.arena, l.m, l.n, b.hz, cents, at, BOWED_GLIDES_MAX);

	missed += abs(n - s.glides);
	for (int i = 0; i < n && n == s.glides; i++) {
		double late = at[i].half_s - s.half[i];

		sum += late;
		squares += late * late;
		errors_add(&half, late);
		errors_add(&nine, at[i].nine_s - s.nine[i]);
		errors_add(&way, at[i].upper_cents - at[i].lower_cents - cents);
	}
	if (n > 1 && n == s.glides)
		errors_add(&spread, sqrt((squares - sum * sum / n) / (n - 1)));
	for (int i = 0; i < 2; i++) {
		struct bow bow;

		bow_measure(
		    &l.arena, l.m, l.n, i * b.turn_s, (i + 1) * b.turn_s, &bow);
		if (bow.heard)
			errors_add(&restless, bow.unsteady_db);
	}
	listening_done(&l);
	free(s.x);
}

/* What each of them is, and its goal in a surrounding; "-": not told. */
enum told {
	MISSED,
	HALF,
	HALF_95,
	HALF_SPREAD,
	NINE,
	NINE_95,
	WAY,
	WAY_95,
	UNREST,
	TOLD
};

static void tell(const char *name, const char *const *goals, enum told which,
    const char *about, double value, const char *unit)
{
	char what[80];

	if (strcmp(goals[which], "-") == 0)
		return;
	snprintf(what, sizeof what, "%s: %s", name, about);
	figure(what, goals[which], value, unit);
}

static void glides(enum surrounding where, double least, double most,
    const char *name, const char *const *goals)
{
	half.n = nine.n = way.n = restless.n = spread.n = missed = 0;
	for (int i = 0; i < TONE_TRAVELS; i++)
		for (int pulses = 4; pulses <= 8; pulses += 2)
			if (tone_travels[i] >= least && tone_travels[i] <= most)
				one_glide(where, tone_travels[i], pulses);
	tell(name, goals, MISSED, "arrivals missed or made up", missed, "");
	tell(name, goals, HALF, "half way, error, median",
	    1000 * errors_share(&half, 0.5), "ms");
	tell(name, goals, HALF_95, "half way, 95 % are under",
	    1000 * errors_share(&half, 0.95), "ms");
	tell(name, goals, HALF_SPREAD, "half way, spread in a turn",
	    1000 * errors_share(&spread, 0.5), "ms");
	tell(name, goals, NINE, "nine tenths, error, median",
	    1000 * errors_share(&nine, 0.5), "ms");
	tell(name, goals, NINE_95, "nine tenths, 95 % are under",
	    1000 * errors_share(&nine, 0.95), "ms");
	tell(name, goals, WAY, "way, error, median", errors_share(&way, 0.5),
	    "cents");
	tell(name, goals, WAY_95, "way, 95 % are under",
	    errors_share(&way, 0.95), "cents");
	tell(name, goals, UNREST, "a calm bow read as unsteady, 95 %",
	    errors_share(&restless, 0.95), "dB");
}

/* SD of a bow's loudness in dB, where bow_measure looks. */
static double true_unrest(const struct bowed *b, double from_s, double to_s)
{
	double sum = 0, squares = 0;
	int n = 0;

	for (double t = from_s + 0.25; t < to_s - 0.25; t += HEARD_STEP_S) {
		double db = 20 * log10(bowed_loudness(b, t));

		sum += db;
		squares += db * db;
		n++;
	}
	return sqrt((squares - sum * sum / n) / n);
}

/* Bows that swell and sink by themselves, under a hand that shifts. */
static void one_bow_that_swells(double cents, int pulses, double db)
{
	struct bowed b = tone_glide(DRY, cents, pulses);
	struct bowed_sound s;
	struct listening l;

	b.ripple_db = db;
	b.ripple_hz = 0.8;
	s = bowed_make(&b);
	l = refined(&b, &s);
	for (int i = 0; i < 2; i++) {
		double from = i * b.turn_s, to = (i + 1) * b.turn_s;
		struct bow bow;

		bow_measure(&l.arena, l.m, l.n, from, to, &bow);
		if (bow.heard)
			errors_add(&restless,
			    bow.unsteady_db - true_unrest(&b, from, to));
	}
	listening_done(&l);
	free(s.x);
}

static void steadiness(void)
{
	restless.n = 0;
	for (int i = 0; i < TONE_TRAVELS; i++)
		for (int pulses = 4; pulses <= 8; pulses += 2)
			one_bow_that_swells(
			    tone_travels[i], pulses, 0.6 + 0.2 * i);
	figure("bows that swell, in shifts: unsteadiness, error", "<= 0.07",
	    errors_share(&restless, 0.5), "dB");
	figure("    95 % of them are under", "<= 0.4",
	    errors_share(&restless, 0.95), "dB");
}

/* No recordings: strings of our own whose fundamental is hardly there. */
static void low_strings(void)
{
	static const double notes[] = { 65.4064, 69.2957, 73.4162, 77.7817,
		82.4069, 87.3071 };

	pitches.cents.n = pitches.instants = pitches.within = pitches.gross = 0;
	for (size_t i = 0; i < sizeof(notes) / sizeof(*notes); i++) {
		struct bowed b = tone_swing(DRY, notes[i], 5.5, 20);

		b.fundamental = 0.01;
		one_pitch(&pitches, &b);
	}
	figure("C2 to F2, made with hardly a fundamental: octaves", "= 0",
	    pitches.gross, "");
}

static struct errors width, rate, even;

static void vibrato(enum surrounding where, const char *name,
    const char *share_goal, const char *rate_goal)
{
	static const double speeds[] = { 4.5, 5.5, 6.5 };
	static const double widths[] = { 15, 20, 30 };
	double read = 0, true_width = 0;
	char what[80];

	width.n = rate.n = even.n = 0;
	for (int i = 0; i < 9; i++) {
		struct bowed b = tone_swing(
		    where, tone_notes[2 + i % 3], speeds[i % 3], widths[i / 3]);
		struct bowed_sound s = bowed_make(&b);
		struct listening l = refined(&b, &s);
		struct sway w;

		sway_measure(&l.arena, l.m, l.n, b.hz, &w);
		if (!w.heard)
			printf("%g Hz, %g cents not heard\n", b.swing_hz,
			    b.swing_cents);
		read += w.width_cents;
		true_width += b.swing_cents;
		errors_add(&width, w.width_cents - b.swing_cents);
		errors_add(&rate, w.rate_hz - b.swing_hz);
		errors_add(&even, 100 * w.unevenness);
		listening_done(&l);
		free(s.x);
	}
	snprintf(what, sizeof what, "%s: width, share of the truth", name);
	figure(what, share_goal, read / true_width, "");
	snprintf(what, sizeof what, "%s: width, error, median", name);
	figure(what, where == DRY ? "<= 0.3" : "", errors_share(&width, 0.5),
	    "cents");
	snprintf(what, sizeof what, "%s: width, 95 %% are under", name);
	figure(what, where == DRY ? "<= 0.6" : "", errors_share(&width, 0.95),
	    "cents");
	snprintf(what, sizeof what, "%s: rate, error, median", name);
	figure(what, rate_goal, 1000 * errors_share(&rate, 0.5), "mHz");
	snprintf(what, sizeof what, "%s: rate, 95 %% are under", name);
	figure(what, where == DRY ? "<= 10" : "",
	    1000 * errors_share(&rate, 0.95), "mHz");
	snprintf(what, sizeof what, "%s: an even one read as uneven", name);
	figure(
	    what, where == DRY ? "<= 1.0" : "", errors_share(&even, 0.5), "%");
}

static struct turn_heard whole_turn(const struct bowed *b)
{
	struct bowed_sound s = bowed_make(b);
	struct listening l = refined(b, &s);
	struct turn_asked asked = { .asked = l.asked,
		.lower_hz = b->hz,
		.travel_cents = b->travel_cents,
		.bows = 2,
		.edge_s = { 0, 4, 8 } };
	struct turn_heard h;

	if (!turn_measure(&l.arena, &asked, l.m, l.n, &h))
		abort();
	listening_done(&l);
	free(s.x);
	return h;
}

/* What is said of how far the microphone is, turn by turn. */
static void distance(enum surrounding where, const char *name,
    enum turn_distance is, const char *word, const char *goal)
{
	int told[DISTANCE_FAR + 1] = { 0 }, turns = 0;
	char what[80];

	for (int i = 0; i < TONE_TRAVELS; i++)
		for (int pulses = 4; pulses <= 8; pulses += 2, turns++) {
			struct bowed b = tone_glide(
			    where, tone_travels[i], pulses);

			told[whole_turn(&b).distance]++;
		}
	for (int i = 0; i < 9; i++, turns++) {
		struct bowed b = tone_swing(where, tone_notes[2 + i % 3],
		    4.5 + i / 3, 15 + 5 * (i % 3));

		told[whole_turn(&b).distance]++;
	}
	snprintf(what, sizeof what, "%s: turns called %s", name, word);
	figure(what, goal, 100.0 * told[is] / turns, "%");
	snprintf(what, sizeof what, "%s: turns called neither", name);
	figure(what, "", 100.0 * told[DISTANCE_UNKNOWN] / turns, "%");
}

/* ms of this thread. */
static double own_ms(void)
{
	struct timespec t;

	clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
	return (double)t.tv_sec * 1e3 + (double)t.tv_nsec / 1e6;
}

static void speed(double hz, const char *string)
{
	struct bowed b = tone_in(DRY, hz);
	struct bowed_sound s = bowed_make(&b);
	double start = own_ms(), live, fine;
	struct listening l = listening_live(
	    &s, b.rate, (struct asked) { hz, hz * 1.335 }, 512);
	char what[80];

	live = own_ms() - start;
	start = own_ms();
	listening_refine(&l);
	fine = own_ms() - start;
	snprintf(what, sizeof what, "live path, %s string", string);
	figure(what, ">= 1500", b.seconds * 1000 / live, "times as fast");
	snprintf(
	    what, sizeof what, "refinement after a bow, %s string", string);
	figure(what, ">= 60", b.seconds * 1000 / fine, "times as fast");
	listening_done(&l);
	free(s.x);
}

/* From the newest sample that was needed to the instant it told about. */
static void latency(void)
{
	struct arena a = { NULL, 0 };
	struct asked asked = { 146.8324, 220 };
	struct thin *thin = thin_new(&a, 48000, asked.high_hz);
	struct live *live = live_new(&a, &asked, thin_rate(thin));
	double latest = 0;
	int instants = 0;

	for (int i = 0; i < 48000; i++) {
		float in = 0.1F * (float)sin(0.02 * i), x;
		struct instant m;

		if (thin_take(thin, &in, 1, &x) == 0)
			continue;
		live_take(live, &x, 1);
		for (; live_next(live, &m); instants++)
			latest = fmax(
			    latest, i / 48.0 - instants * HEARD_STEP_S * 1000);
	}
	figure("live pitch behind the newest sample, D string", "<= 15", latest,
	    "ms");
	arena_done(&a);
}

int main(void)
{
	static const char *const wide[TOLD] = { "= 0", "<= 1.0", "<= 3", "-",
		"-", "-", "<= 1.0", "<= 3.5", "" };
	static const char *const narrow[TOLD] = { "= 0", "<= 1.6", "<= 6", "-",
		"<= 2.5", "<= 8", "<= 1.0", "<= 3.5", "" };
	static const char *const ticks[TOLD] = { "= 0", "-", "-", "-", "-",
		"<= 5", "-", "-", "-" };
	static const char *const small[TOLD] = { "= 0", "<= 4", "-", "<= 2.8",
		"<= 2", "<= 12", "", "-", "" };

	seeded_state = 1;
	pitch(DRY, "dry", ">= 99.8", "<= 1.1");
	pitch(NOISY, "noise 10 dB under", ">= 99.6", "");
	glides(DRY, 100, 500, "dry, 100 to 500 cents", wide);
	glides(DRY, 50, 50, "dry, 50 cents", narrow);
	tick_db = -6;
	glides(DRY, 100, 500, "ticks at -6 dB", ticks);
	tick_db = -20;
	glides(SMALL_ROOM, 50, 500, "small room", small);
	steadiness();
	low_strings();
	vibrato(DRY, "dry", "", "<= 3");
	vibrato(SMALL_ROOM, "small room", ">= 0.96", "");
	vibrato(LARGE_ROOM, "larger room", ">= 0.92", "<= 3");
	distance(DRY, "dry", DISTANCE_NEAR, "near", ">= 100");
	distance(SMALL_ROOM, "small room", DISTANCE_NEAR, "near", ">= 90");
	distance(LARGE_ROOM, "larger room", DISTANCE_NEAR, "near", "<= 3");
	speed(146.8324, "D");
	speed(65.4064, "C");
	latency();
	return 0;
}
