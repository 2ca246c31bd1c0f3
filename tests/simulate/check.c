/*
 * check.c - what must hold of all courses, whatever the students do
 */
#include <math.h>

#include "simulate.h"

/*
 * True shares of clean turns, and who is let through by day 6 and 12 as the
 * program tells: two clean first goes of the last three, the latest included,
 * from the fifth day on.
 */
const double gate_clean[GATES] = { 0.70, 0.80, 0.90, 0.95, 0.98 };
const double gate_6[GATES] = { 0.18, 0.42, 0.78, 0.93, 0.99 };
const double gate_12[GATES] = { 0.49, 0.83, 0.99, 1.00, 1.00 };

static int say(bool good, const char *what)
{
	printf("%s %s\n", good ? "ok" : "BAD", what);
	return !good;
}

static int check_broken(const struct result *r, int students)
{
	int bad = 0;

	for (int b = 0; b < BROKENS; b++) {
		int broken = 0, first = -1;

		for (int i = 0; i < students; i++) {
			if (r[i].broken[b] > 0 && first < 0)
				first = i;
			broken += r[i].broken[b];
		}
		bad += say(broken == 0, broken_name[b]);
		if (first >= 0)
			printf("    %d times; student %d (%s, %s): %s\n",
			    broken, first, habit_name[r[first].habit],
			    teacher_name[r[first].teacher], r[first].tell);
	}
	return bad;
}

/*
 * The rule by itself: all days are clean or not, each as likely as the four
 * fingers together; every course of so many days is looked at.
 */
static double let_through(double clean, int days)
{
	double day = pow(clean, FINGERS), all = 0;

	for (uint32_t course = 0; course < UINT32_C(1) << days; course++) {
		double likely = 1;
		bool ready = false;

		for (int d = 0; d < days; d++) {
			likely *= course >> d & 1 ? day : 1 - day;
			/* From the fifth on: clean, and one of two before. */
			ready = ready ||
			    (d >= 4 && (course >> d & 1) &&
				(course >> (d - 2) & 3) != 0);
		}
		all += ready ? likely : 0;
	}
	return all;
}

/* Five deviations of a count: a seed in a million is that unlucky. */
static bool near(int count, int of, double wanted)
{
	double off = 5 * sqrt(wanted * (1 - wanted) / of) + 0.01;

	return fabs((double)count / of - wanted) < off;
}

static int check_gates(const struct gate *gate)
{
	bool good = true;

	for (int g = 0; g < GATES; g++) {
		const struct gate *t = &gate[g];
		double by_6 = let_through(gate_clean[g], 6);
		double by_12 = let_through(gate_clean[g], 12);

		good = good && fabs(by_6 - gate_6[g]) < 0.005 &&
		    fabs(by_12 - gate_12[g]) < 0.005 &&
		    near(t->by_6[0], t->students, by_6) &&
		    near(t->by_12[0], t->students, by_12);
		/* The ladder lets nobody through sooner. */
		good = good && t->by_12[1] <= t->by_12[0] + t->students / 10;
	}
	return say(good, "as many weak students are let through as is told");
}

/* Who comes and plays what is planned shares evenly. */
static int check_even(const struct result *r, int students)
{
	bool even = true;

	for (int i = 0; i < students; i++)
		even = even && (r[i].habit != HABIT_EVEN || r[i].least >= 0.2);
	return say(even, "even students share evenly in each week");
}

/* Nobody is held for ever but who never slows down or shuns a finger. */
static int check_ends(const struct result *r, int students)
{
	bool ends = true;

	for (int i = 0; i < students; i++)
		ends = ends &&
		    (r[i].done || r[i].habit == HABIT_HURRY ||
			r[i].habit == HABIT_FIRST);
	return say(ends, "whoever plays what is planned comes to the end");
}

static int check_revisits(const struct revisit *revisit)
{
	bool good = true;

	for (int i = 0; i < REVISITS; i++)
		good = good && revisit[i].longest <= revisit[i].allowed;
	return say(good,
	    "no stage is forgotten in longer routines, or shorter "
	    "sessions");
}

/* No week may ever hold more than twice the base. */
static int check_metres(
    const struct routine *r, const struct result *result, int students)
{
	bool good = true;

	for (int i = 0; i < students; i++)
		for (int f = 0; f < FINGERS; f++)
			good = good &&
			    result[i].metres_max[f] <
				2 * base_metres(r, f) + 0.01;
	return say(good, "no finger slides more than twice the base week");
}

int check_all(const struct routine *r, const struct result *result,
    int students, const struct trials *trials)
{
	putchar('\n');
	return check_broken(result, students) +
	    check_metres(r, result, students) + check_gates(trials->gate) +
	    check_even(result, students) + check_ends(result, students) +
	    check_revisits(trials->revisit);
}
