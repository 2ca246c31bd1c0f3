/*
 * test_forecast.c - the forecast of how many weeks are left (rule F6)
 *
 * What is drawn is held against what can be worked out without drawing:
 * published percentage points, the lognormal distribution's own percentiles,
 * a posterior integrated by small steps, and a plain sampler that tries until
 * it fits.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../../src/coach/forecast_parts.h"
#include "../score/seeded.h"
#include "fresh_past.h"

enum { TODAY = FIRST_DAY + 200, SAMPLES = 200000 };

static void assert_near(double value, double wanted, double off)
{
	if (fabs(value - wanted) <= off)
		return;
	print_error("%.12g is not %.12g within %g\n", value, wanted, off);
	fail();
}

/* --- chance --- */

/*
 * The first numbers of splitmix64 from seed 1234567, as implementations of
 * "Pseudo-random numbers/Splitmix64" on rosettacode.org agree on (from memory).
 */
static void test_bits(void **state)
{
	uint64_t s = 1234567;

	(void)state;
	assert_true(chance_bits(&s) == UINT64_C(6457827717110365317));
	assert_true(chance_bits(&s) == UINT64_C(3203168211198807973));
	assert_true(chance_bits(&s) == UINT64_C(9817491932198370423));
	assert_true(chance_bits(&s) == UINT64_C(4593380528125082431));
	assert_true(chance_bits(&s) == UINT64_C(16408922859458223821));
}

/*
 * Percentage points as tables print them (NIST/SEMATECH e-Handbook 1.3.6.7.1,
 * from memory), one with all its digits, as the 95 % interval uses it, and the
 * check values of Wichura's own paper (from memory).
 */
static void test_percentage_points(void **state)
{
	(void)state;
	assert_true(chance_quantile(0.5) == 0);
	assert_near(chance_quantile(0.90), 1.282, 5e-4);
	assert_near(chance_quantile(0.95), 1.645, 5e-4);
	assert_near(chance_quantile(0.99), 2.326, 5e-4);
	assert_near(chance_quantile(0.995), 2.576, 5e-4);
	assert_near(chance_quantile(0.999), 3.090, 5e-4);
	assert_near(chance_quantile(0.975), 1.959963984540054, 1e-14);
	assert_near(chance_quantile(0.25), -0.6744897501960817, 1e-15);
	assert_near(chance_quantile(0.001), -3.090232306167814, 1e-14);
	assert_near(chance_quantile(1e-20), -9.262340089798408, 1e-13);
}

/* It undoes the distribution function, and where its three parts meet too. */
static void test_quantile_undone(void **state)
{
	static const double meet[] = { 0.075, 1.3887943864964021e-11 };

	(void)state;
	for (double p = 1e-300; p < 0.5; p *= 1.7) {
		double x = chance_quantile(p);

		assert_near(0.5 * erfc(-x / sqrt(2)) / p, 1, 1e-11);
	}
	for (int i = 0; i < 2; i++)
		assert_near(chance_quantile(meet[i] * (1 - 1e-12)),
		    chance_quantile(meet[i] * (1 + 1e-12)), 1e-11);
}

static void test_even(void **state)
{
	uint64_t s = 7;
	double sum = 0;

	(void)state;
	for (int i = 0; i < SAMPLES; i++) {
		double x = chance_even(&s);

		assert_true(x > 0 && x < 1);
		sum += x;
	}
	/* Four deviations of a mean: 4 sqrt(1/12/200000). */
	assert_near(sum / SAMPLES, 0.5, 0.0026);
}

/*
 * Above a bound the mean is the density over the share above (inverse of
 * Mills' ratio: Johnson, Kotz and Balakrishnan, Continuous Univariate
 * Distributions 1, chapter 13, from memory).
 */
static void test_normal_above(void **state)
{
	static const double bounds[] = { -30, -2, 0, 1, 4, 10, 20 };
	uint64_t s = 11;

	(void)state;
	for (int b = 0; b < 7; b++) {
		double t = bounds[b], sum = 0;
		double mean = exp(-t * t / 2) / sqrt(2 * M_PI) /
		    (0.5 * erfc(t / sqrt(2)));

		for (int i = 0; i < SAMPLES; i++) {
			double x = chance_normal_above(&s, chance_above(t));

			assert_true(x >= t - 1e-12 && x < t + 45);
			sum += x;
		}
		assert_near(sum / SAMPLES, mean, 4 / sqrt(SAMPLES));
	}
}

/* --- the pace --- */

/* Mean and deviation of the pace by small steps over all of them. */
static void integrate(const double *y, int count, double *mean, double *sd)
{
	double all = 0, first = 0, second = 0;

	for (double a = -4; a < 4; a += 1e-4) {
		double p = exp(-a * a / 2 / 0.1225);

		for (int i = 0; i < count; i++)
			p *= exp(-(y[i] - a) * (y[i] - a) / 2 / 0.16);
		all += p;
		first += p * a;
		second += p * a * a;
	}
	*mean = first / all;
	*sd = sqrt(second / all - *mean * *mean);
}

static void test_pace(void **state)
{
	static const double y[] = { 0.9, 0.2, -0.1, 0.4, 0.7 };
	double sum = 0, mean, sd;

	(void)state;
	for (int n = 0; n <= 5; n++) {
		struct forecast f = { .stages = 6 };

		forecast_pace(&f, n, sum);
		integrate(y, n, &mean, &sd);
		assert_near(f.pace, mean, 1e-9);
		assert_near(f.pace_sd, sd, 1e-9);
		sum += n < 5 ? y[n] : 0;
	}
}

/*
 * By hand: 12 days where 6 are usual, once.  ln 2 = 0.6931; the weights are
 * 1/0.1225 = 8.1633 and 1/0.16 = 6.25, so 0.6931 x 6.25 / 14.4133 = 0.3006.
 */
static void test_pace_by_hand(void **state)
{
	struct forecast f = { .stages = 6 };

	(void)state;
	forecast_pace(&f, 1, log(2));
	assert_near(f.pace, 0.3006, 5e-5);
	assert_near(f.pace_sd, 0.2634, 5e-5);
	forecast_pace(&f, 0, 0);
	assert_near(f.pace, 0, 0);
	assert_near(f.pace_sd, 0.35, 1e-15);
}

/* --- the draws --- */

/* A forecast whose one stage takes m days, in weeks of 1/40 of a day. */
static struct forecast one_stage(int usual, int least)
{
	struct forecast f = { .stages = 1,
		.usual_days = { usual },
		.least_days = least,
		.practised = 1,
		.practised_of = 280 };

	forecast_pace(&f, 0, 0);
	return f;
}

/*
 * One stage is lognormal: its percentiles are m exp(z s), s^2 = 0.1225 + 0.16
 * (any textbook), z = -+1.28155.
 */
static void test_one_stage_is_lognormal(void **state)
{
	double s = sqrt(0.1225 + 0.16);
	struct forecast f = one_stage(9, 1);

	(void)state;
	forecast_draw(&f);
	assert_near(f.low_weeks / (40 * 9 * exp(-1.28155 * s)), 1, 0.02);
	assert_near(f.high_weeks / (40 * 9 * exp(1.28155 * s)), 1, 0.02);

	/* The least that is asked for stands for all below it. */
	f = one_stage(9, 7);
	forecast_draw(&f);
	assert_int_equal(f.low_weeks, 7 * 40);
	assert_near(f.high_weeks / (40 * 9 * exp(1.28155 * s)), 1, 0.02);
}

/*
 * Days that were already had: at least t, so a share u of what is above is
 * left.  P(D > x | D > t) = Q(ln(x/m)/s) / Q(ln(t/m)/s), solved for x.
 */
static void test_days_already_had(void **state)
{
	double s = sqrt(0.1225 + 0.16);

	(void)state;
	for (int t = 5; t <= 60; t += 11) {
		struct forecast f = one_stage(9, 5);
		double above = 0.5 * erfc(log(t / 9.0) / s / sqrt(2));
		double low = 9 * exp(-s * chance_quantile(0.9 * above)) - t;
		double high = 9 * exp(-s * chance_quantile(0.1 * above)) - t;

		f.days_so_far = t;
		forecast_draw(&f);
		assert_near(f.low_weeks / (40 * low), 1, 0.06);
		assert_near(f.high_weeks / (40 * high), 1, 0.06);
	}
}

struct sums {
	double pace, pace2, days, both;
};

static void sum_up(struct sums *s, double pace, double days)
{
	s->pace += pace / SAMPLES;
	s->pace2 += pace * pace / SAMPLES;
	s->days += log(days) / SAMPLES;
	s->both += pace * log(days) / SAMPLES;
}

/* The same by trying until it fits. */
static void try_until(const struct forecast *f, struct sums *s)
{
	uint64_t state = 3;

	for (int i = 0; i < SAMPLES; i++) {
		double pace, days;

		do {
			pace = f->pace + f->pace_sd * chance_normal(&state);
			days = f->usual_days[0] *
			    exp(pace + 0.4 * chance_normal(&state));
			days = days > f->least_days ? days : f->least_days;
		} while (days <= f->days_so_far);
		sum_up(s, pace, days);
	}
}

static void test_stage_under_way(void **state)
{
	static const int had[] = { 0, 4, 8, 14, 20 };

	(void)state;
	for (int h = 0; h < 5; h++) {
		struct forecast f = one_stage(9, 5);
		struct sums drawn = { 0 }, tried = { 0 };
		uint64_t s = 5;

		forecast_pace(&f, 2, 0.5);
		f.days_so_far = had[h];

		struct forecast_under_way w = forecast_under_way(&f);

		for (int i = 0; i < SAMPLES; i++) {
			struct forecast_course c = forecast_draw_stage(
			    &f, &w, &s);

			assert_true(c.days >= f.days_so_far);
			sum_up(&drawn, c.pace, c.days);
		}
		try_until(&f, &tried);
		assert_near(drawn.pace, tried.pace, 0.004);
		assert_near(drawn.pace2, tried.pace2, 0.004);
		assert_near(drawn.days, tried.days, 0.006);
		assert_near(drawn.both, tried.both, 0.015);
	}
}

/* --- whole forecasts --- */

/* Sits on so many days of each week in so many weeks before today. */
static void sit(int weeks, int days_a_week, const char *stage)
{
	for (int w = weeks; w > 0; w--)
		for (int d = 0; d < days_a_week; d++)
			past_see(
			    past_sit(past, made_moment(TODAY - w * 7 + d, 17),
				stage, ENDED_WHOLE),
			    stage, false);
}

/*
 * From the first stage on: 8 to 19 weeks at five days a week and 13 to 32 at
 * three, and with a lesson after each stage 10 to 22 and 15 to 35 (worked out
 * apart from this program with 40 000 courses of other random numbers).
 */
static void test_four_courses(void **state)
{
	static const struct {
		int days_a_week;
		bool lessons;
		int low, high;
	} known[] = { { 5, false, 8, 19 }, { 3, false, 13, 32 },
		{ 5, true, 10, 22 }, { 3, true, 15, 35 } };

	(void)state;
	for (int i = 0; i < 4; i++) {
		struct forecast f = { .stages = 6,
			.usual_days = { 6, 9, 9, 9, 9, 12 },
			.least_days = 5,
			.lessons = known[i].lessons,
			.practised = 4 * known[i].days_a_week,
			.practised_of = 28 };

		forecast_pace(&f, 0, 0);
		forecast_draw(&f);
		print_message("%d to %d weeks\n", f.low_weeks, f.high_weeks);
		assert_in_range(
		    f.low_weeks, known[i].low - 1, known[i].low + 1);
		assert_in_range(
		    f.high_weeks, known[i].high - 1, known[i].high + 1);
	}
}

static void test_what_is_read(void **state)
{
	struct routine r = programme_cello(THIRDS);
	struct forecast f;

	(void)state;
	r.decided_by = DECIDED_BY_STUDENT;
	sit(2, 5, "air");
	for (int i = 0; i < past->h.sittings; i++)
		past->sitting[i].day -= 28;
	sit(4, 4, "thirds");
	forecast_make(&f, &r, &past->h, THIRDS, TODAY);
	assert_int_equal(f.silence, FORECAST_SPEAKS);
	assert_false(f.lessons);
	assert_int_equal(f.least_days, 5);
	assert_int_equal(f.practised, 16);
	assert_int_equal(f.practised_of, 28);
	assert_int_equal(f.days_so_far, 16);
	/* "wide" was never worked on and says nothing. */
	assert_int_equal(f.finished, 1);
	assert_int_equal(f.finished_days, 10);
	assert_int_equal(f.finished_usual, 6);
	assert_near(f.pace, log(10.0 / 6) * 6.25 / (1 / 0.1225 + 6.25), 1e-12);
	for (int i = 0; i < 6; i++)
		assert_int_equal(f.usual_days[i],
		    i == 0		  ? 6
			: i == LETTING_GO ? 12
					  : 9);
}

static void test_usual_days_elsewhere(void **state)
{
	struct routine r = programme_cello(WIDE);
	struct forecast f;

	(void)state;
	/* Begins on the string, with a swing in the air in the middle. */
	r.stage[0].in_the_air = false;
	r.stage[2].in_the_air = true;
	forecast_make(&f, &r, &past->h, WIDE, TODAY);
	assert_int_equal(f.usual_days[0], 6);
	assert_int_equal(f.usual_days[1], 9);
	assert_int_equal(f.usual_days[2], 6);
	assert_int_equal(f.usual_days[5], 12);
	/* The only stage there is. */
	r.stages = 1;
	forecast_make(&f, &r, &past->h, 0, TODAY);
	assert_int_equal(f.usual_days[0], 12);
}

static void test_habit(void **state)
{
	struct routine r = programme_cello(WIDE);
	struct forecast f;

	(void)state;
	sit(10, 4, "wide");
	/* Twice on a day, a sitting without a sound, and today: all the same. */
	past_see(past_sit(past, made_moment(TODAY - 7, 20), "wide", ENDED_CAP),
	    "wide", false);
	past_sit(past, made_moment(TODAY - 1, 17), "wide", ENDED_NOT_TODAY);
	past_see(past_sit(past, made_moment(TODAY, 9), "wide", ENDED_WHOLE),
	    "wide", false);
	forecast_make(&f, &r, &past->h, WIDE, TODAY);
	assert_int_equal(f.practised, 16);
	assert_int_equal(f.practised_of, 28);
}

static void test_silent_early(void **state)
{
	struct routine r = programme_cello(AIR);
	struct forecast f;

	(void)state;
	forecast_make(&f, &r, &past->h, AIR, TODAY);
	assert_int_equal(f.silence, FORECAST_EARLY);
	sit(2, 6, "air");
	forecast_make(&f, &r, &past->h, AIR, TODAY - 1);
	assert_int_equal(f.silence, FORECAST_EARLY);
	assert_int_equal(forecast_line(&f).id, M_NONE);
	forecast_make(&f, &r, &past->h, AIR, TODAY);
	assert_int_equal(f.silence, FORECAST_SPEAKS);
	assert_int_equal(f.practised_of, 14);
	forecast_make(&f, &r, &past->h, AIR, TODAY + 6);
	assert_int_equal(f.practised_of, 14);
	forecast_make(&f, &r, &past->h, AIR, TODAY + 7);
	assert_int_equal(f.practised_of, 21);
}

static void test_silent_when_seldom(void **state)
{
	struct routine r = programme_cello(AIR);
	struct forecast f;

	(void)state;
	sit(4, 3, "air");
	forecast_make(&f, &r, &past->h, AIR, TODAY);
	assert_int_equal(f.silence, FORECAST_SPEAKS);
	/* One day fewer. */
	past->sitting[5].blocks = 0;
	forecast_make(&f, &r, &past->h, AIR, TODAY);
	assert_int_equal(f.silence, FORECAST_SELDOM);
	assert_int_equal(f.low_weeks, 0);
	assert_int_equal(f.practised, 11);
}

static void test_silent_after_pain(void **state)
{
	struct routine r = programme_cello(AIR);
	struct forecast f;

	(void)state;
	sit(8, 5, "air");
	past_note(past, TODAY - 28, NOTE_PAIN, 0);
	past_note(past, TODAY - 3, NOTE_SKIN, 2);
	forecast_make(&f, &r, &past->h, AIR, TODAY);
	assert_int_equal(f.silence, FORECAST_SPEAKS);
	forecast_make(&f, &r, &past->h, AIR, TODAY - 1);
	assert_int_equal(f.silence, FORECAST_PAIN);
	assert_int_equal(f.pain_day, TODAY - 28);
	/* Tomorrow's note is today's, in a zone further east. */
	past_note(past, TODAY + 1, NOTE_PAIN, 0);
	forecast_make(&f, &r, &past->h, AIR, TODAY);
	assert_int_equal(f.silence, FORECAST_PAIN);
}

static void test_silent_when_over(void **state)
{
	struct routine r = programme_cello(LETTING_GO);
	struct forecast f;

	(void)state;
	sit(8, 5, "letting-go");
	forecast_make(&f, &r, &past->h, LETTING_GO + 1, TODAY);
	assert_int_equal(f.silence, FORECAST_OVER);
	forecast_make(&f, &r, &past->h, 99, TODAY);
	assert_int_equal(f.silence, FORECAST_OVER);
	forecast_make(&f, &r, &past->h, LETTING_GO, TODAY);
	assert_int_equal(f.silence, FORECAST_SPEAKS);
}

static void test_same_bytes(void **state)
{
	struct routine r = programme_cello(WIDE);
	struct forecast a, b;

	(void)state;
	sit(6, 5, "wide");
	memset(&a, 0x55, sizeof(a));
	memset(&b, 0xaa, sizeof(b));
	forecast_make(&a, &r, &past->h, WIDE, TODAY);
	forecast_make(&b, &r, &past->h, WIDE, TODAY);
	assert_memory_equal(&a, &b, sizeof(a));
}

/* Whatever the past: in order, and slower never means sooner. */
static void test_any_numbers(void **state)
{
	(void)state;
	seeded_begin("any numbers");
	for (int i = 0; i < 60; i++) {
		struct forecast f = { .stages = seeded(1, STAGES_MAX) }, g;
		int finished = seeded(0, 5);

		f.stage = seeded(0, f.stages - 1);
		for (int s = 0; s < f.stages; s++)
			f.usual_days[s] = seeded(0, 1) ? 9 : 12;
		f.least_days = seeded(1, 20);
		f.lessons = seeded(0, 1);
		f.practised_of = 7 * seeded(2, 4);
		f.practised = seeded(f.practised_of / 3, f.practised_of);
		f.days_so_far = seeded(0, 1) ? 0 : seeded(0, 100000);
		forecast_pace(&f, finished, seeded(-20, 20) * 0.1 * finished);
		forecast_draw(&f);
		assert_in_range(f.low_weeks, 1, f.high_weeks);
		assert_in_range(f.high_weeks, 1, FORECAST_WEEKS_MAX);
		g = f;
		g.pace += 0.3;
		forecast_draw(&g);
		assert_true(g.low_weeks >= f.low_weeks);
		assert_true(g.high_weeks >= f.high_weeks);
		g = f;
		g.lessons = true;
		forecast_draw(&g);
		assert_true(g.low_weeks >= f.low_weeks);
		assert_true(g.high_weeks >= f.high_weeks);
	}
}

/* --- sentences --- */

static void assert_says(const struct message *m, const char *wanted)
{
	char text[1024];

	message_text(m, text, sizeof(text));
	assert_string_equal(text, wanted);
}

static void test_sentences(void **state)
{
	struct routine r = programme_cello(SEMITONE);
	struct message why[FORECAST_MESSAGES_MAX];
	struct forecast f;

	(void)state;
	sit(2, 5, "air");
	for (int i = 0; i < past->h.sittings; i++)
		past->sitting[i].day -= 28;
	sit(4, 5, "semitone");
	forecast_make(&f, &r, &past->h, SEMITONE, TODAY);
	f.low_weeks = 4;
	f.high_weeks = 11;

	struct message line = forecast_line(&f);

	assert_says(&line,
	    "At this pace the rest of the programme may take 4 to 11 weeks. "
	    "Only an estimate.");
	assert_int_equal(forecast_why(&f, &r, why), 6);
	assert_says(
	    &why[0], "You practised on 20 of the last 28 days: 5 days a week.");
	assert_says(&why[1],
	    "Practice days that are usual for what is left: "
	    "\"A semitone apart\" 9, \"Inside the semitone\" 12. No stage "
	    "counts for fewer than 5.");
	assert_says(&why[2], "\"A semitone apart\" has had 20 practice days.");
	assert_says(&why[3],
	    "1 stage behind you took 10 practice days where 6 are usual. So "
	    "what is left is counted at 1.25 times what is usual.");
	assert_says(&why[4],
	    "Your teacher lets you on, so each stage waits for the next weekly "
	    "lesson.");
	assert_says(&why[5],
	    "Of 20000 courses drawn by chance from these numbers, eight of ten "
	    "end after 4 to 11 weeks.");
	f.high_weeks = 4;
	line = forecast_line(&f);
	assert_says(&line,
	    "At this pace the rest of the programme may take about 4 weeks. "
	    "Only an estimate.");
}

static void test_sentences_of_silence(void **state)
{
	struct routine r = programme_cello(WIDE);
	struct message why[FORECAST_MESSAGES_MAX];
	struct forecast f = { .silence = FORECAST_PAIN,
		.pain_day = FIRST_DAY,
		.practised = 7,
		.practised_of = 28 };

	(void)state;
	assert_int_equal(forecast_line(&f).id, M_NONE);
	assert_int_equal(forecast_why(&f, &r, why), 1);
	assert_says(why,
	    "Pain was noted on 2026-03-02. For 28 days after it nothing is "
	    "estimated: there is no hurry.");
	f.silence = FORECAST_SELDOM;
	assert_int_equal(forecast_why(&f, &r, why), 1);
	assert_says(why,
	    "You practised on 7 of the last 28 days. With fewer than 3 days a "
	    "week nothing is estimated.");
	f.silence = FORECAST_EARLY;
	assert_int_equal(forecast_why(&f, &r, why), 1);
	assert_says(why,
	    "In the first 2 weeks nothing is estimated: your habit is not "
	    "known yet.");
	f.silence = FORECAST_OVER;
	assert_int_equal(forecast_why(&f, &r, why), 1);
	assert_int_equal(why[0].id, M_FORECAST_OVER);
}

#define WITH_PAST(test) \
	cmocka_unit_test_setup_teardown(test, past_begin, past_end)

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_bits),
		cmocka_unit_test(test_percentage_points),
		cmocka_unit_test(test_quantile_undone),
		cmocka_unit_test(test_even),
		cmocka_unit_test(test_normal_above),
		cmocka_unit_test(test_pace),
		cmocka_unit_test(test_pace_by_hand),
		cmocka_unit_test(test_one_stage_is_lognormal),
		cmocka_unit_test(test_days_already_had),
		cmocka_unit_test(test_stage_under_way),
		cmocka_unit_test(test_four_courses),
		WITH_PAST(test_what_is_read),
		WITH_PAST(test_usual_days_elsewhere),
		WITH_PAST(test_habit),
		WITH_PAST(test_silent_early),
		WITH_PAST(test_silent_when_seldom),
		WITH_PAST(test_silent_after_pain),
		WITH_PAST(test_silent_when_over),
		WITH_PAST(test_same_bytes),
		cmocka_unit_test(test_any_numbers),
		WITH_PAST(test_sentences),
		WITH_PAST(test_sentences_of_silence),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
