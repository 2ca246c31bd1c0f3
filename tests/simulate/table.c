/*
 * table.c - what the rules did, in figures
 */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "simulate.h"

const int away_days[AWAYS] = { 5, 10, 20, 40 };
const int healed_days[HEALED] = { 2, 5, 10, 15 };

enum { ALL_TEACHERS = -1 };

static bool is_of(const struct result *r, int habit, int teacher)
{
	return (int)r->habit == habit &&
	    (teacher == ALL_TEACHERS || (int)r->teacher == teacher);
}

static int up(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;

	return (x > y) - (x < y);
}

/* A list of numbers, one of each student that is of a kind. */
struct list {
	double *at;
	int count;
};

static struct list list_new(int most)
{
	struct list l = { malloc((size_t)(most + 1) * sizeof(double)), 0 };

	if (!l.at)
		abort();
	return l;
}

/* The number below which so many percent are; 0 of an empty list. */
static double percent(struct list *l, int part)
{
	if (l->count == 0)
		return 0;
	qsort(l->at, (size_t)l->count, sizeof(double), up);
	return l->at[(l->count - 1) * part / 100];
}

/* --- the parts of the table --- */

static void line_of_habit(
    const struct result *r, int students, int habit, struct list *weeks)
{
	int count = 0, done = 0, days = 0, sessions = 0, practised = 0;
	int rests = 0, cut = 0, backs = 0, lower = 0, gap = 0;

	weeks->count = 0;
	for (int i = 0; i < students; i++) {
		if (!is_of(&r[i], habit, ALL_TEACHERS))
			continue;
		count++;
		done += r[i].done;
		days += r[i].days;
		practised += r[i].practised;
		sessions += r[i].sessions;
		rests += r[i].rests;
		cut += r[i].cut_off;
		backs += r[i].backs;
		lower += r[i].aways;
		gap += r[i].recap_only;
		weeks->at[weeks->count++] = (double)r[i].days / WEEK;
	}
	if (count == 0)
		return;
	printf("%-13s %5d %5d %6.0f %4.0f %4.0f %8.1f %8.1f %8.1f %6.2f "
	       "%6.2f %6.2f %6.2f\n",
	    habit_name[habit], count, done, percent(weeks, 10),
	    percent(weeks, 50), percent(weeks, 90),
	    (double)practised * WEEK / days, (double)sessions / count,
	    (double)cut / count, (double)rests / count, (double)backs / count,
	    (double)lower / count, (double)gap / count);
}

static void table_of_habits(const struct result *r, int students)
{
	struct list weeks = list_new(students);

	puts(
	    "\n                            weeks to the end     days           "
	    "         cut     no    one   one rung  only");
	puts("habit         count  done    10%  50%  90%   a week sessions"
	     "      off   play   back  lower  recap");
	for (int h = 0; h < HABITS; h++)
		line_of_habit(r, students, h, &weeks);
	puts("(from \"cut off\" on: how many times in a course)");
	free(weeks.at);
}

static void table_of_teachers(const struct result *r, int students)
{
	struct list weeks = list_new(students);

	puts("\nweeks to the end: median (90%), and who did not come to it");
	printf("%-13s", "habit");
	for (int t = 0; t < TEACHERS; t++)
		printf(" %18s", teacher_name[t]);
	putchar('\n');
	for (int h = 0; h < HABITS; h++) {
		printf("%-13s", habit_name[h]);
		for (int t = 0; t < TEACHERS; t++) {
			int not_done = 0;

			weeks.count = 0;
			for (int i = 0; i < students; i++) {
				if (!is_of(&r[i], h, t))
					continue;
				weeks.at[weeks.count++] = (double)r[i].days /
				    WEEK;
				not_done += !r[i].done;
			}
			printf("  %5.0f (%4.0f) %4d", percent(&weeks, 50),
			    percent(&weeks, 90), not_done);
		}
		putchar('\n');
	}
	free(weeks.at);
}

static void table_of_shares(const struct result *r, int students)
{
	puts(
	    "\npart of a week's work in percent: each finger, the weakest, and "
	    "the least of any week");
	printf("%-13s %6d %6d %6d %6d %9s %6s\n", "habit", 1, 2, 3, 4,
	    "weakest", "least");
	for (int h = 0; h < HABITS; h++) {
		double share[FINGERS] = { 0 }, weakest = 0, least = 1;
		int weeks = 0;

		for (int i = 0; i < students; i++) {
			if (!is_of(&r[i], h, ALL_TEACHERS) || !r[i].weeks)
				continue;
			for (int f = 0; f < FINGERS; f++)
				share[f] += r[i].share_sum[f];
			weakest += r[i].least_sum;
			least = fmin(least, r[i].least);
			weeks += r[i].weeks;
		}
		if (weeks == 0)
			continue;
		printf("%-13s", habit_name[h]);
		for (int f = 0; f < FINGERS; f++)
			printf(" %6.1f", 100 * share[f] / weeks);
		printf(" %9.1f %6.1f\n", 100 * weakest / weeks, 100 * least);
	}
}

static void table_of_stages(
    const struct routine *r, const struct result *result, int students)
{
	struct list days = list_new(students);

	puts("\nstages: practice days of work, and coming back (counted in "
	     "sessions that held a recap)");
	printf("%-13s %6s %6s %6s %10s %8s %8s\n", "stage", "10%", "50%", "90%",
	    "came back", "mean gap", "longest");
	for (int i = 0; i < r->stages; i++) {
		int sightings = 0, sum = 0, longest = 0;

		days.count = 0;
		for (int k = 0; k < students; k++) {
			const struct stage_seen *s = &result[k].seen[i];

			if (s->days_on > 0)
				days.at[days.count++] = s->days_on;
			sightings += s->sightings;
			sum += s->gap_sum;
			if (s->gap_max > longest)
				longest = s->gap_max;
		}
		printf("%-13s %6.0f %6.0f %6.0f %10.1f %8.2f %8d\n",
		    r->stage[i].id, percent(&days, 10), percent(&days, 50),
		    percent(&days, 90), (double)sightings / students,
		    sightings ? (double)sum / sightings : 0, longest);
	}
	free(days.at);
}

double base_metres(const struct routine *r, int finger)
{
	enum { DAYS = 6, TURNS = 5 };
	double most = 0;

	for (int i = 0; i < r->stages; i++)
		most = fmax(most,
		    routine_turn_m(
			r, i, finger, r->ladder[r->ladder_count - 1]));
	return DAYS * TURNS * most;
}

static double metres_percent(
    const struct result *r, int students, int habit, int finger, int part)
{
	int64_t all = 0, seen = 0;

	for (int i = 0; i < students; i++)
		for (int b = 0;
		     is_of(&r[i], habit, ALL_TEACHERS) && b < METRES_BINS; b++)
			all += r[i].metres[finger][b];
	for (int b = 0; b < METRES_BINS; b++) {
		for (int i = 0; i < students; i++)
			if (is_of(&r[i], habit, ALL_TEACHERS))
				seen += r[i].metres[finger][b];
		if (seen * 100 >= all * part)
			return (b + 1) * METRES_BIN;
	}
	return 0;
}

static void table_of_metres(
    const struct routine *r, const struct result *result, int students)
{
	puts("\nslide metres of a finger in seven days: 90% of days, most, and "
	     "days in 100 above the base");
	printf("%-13s", "base");
	for (int f = 0; f < FINGERS; f++)
		printf(" %7.1f            ", base_metres(r, f));
	putchar('\n');
	for (int h = 0; h < HABITS; h++) {
		printf("%-13s", habit_name[h]);
		for (int f = 0; f < FINGERS; f++) {
			double most = 0, all = 0, above = 0;
			int base = (int)(base_metres(r, f) / METRES_BIN) + 1;

			for (int i = 0; i < students; i++) {
				if (!is_of(&result[i], h, ALL_TEACHERS))
					continue;
				most = fmax(most, result[i].metres_max[f]);
				for (int b = 0; b < METRES_BINS; b++) {
					all += result[i].metres[f][b];
					if (b >= base)
						above += result[i].metres[f][b];
				}
			}
			printf(" %6.0f %6.0f %5.1f",
			    metres_percent(result, students, h, f, 90), most,
			    all > 0 ? 100 * above / all : 0);
		}
		putchar('\n');
	}
}

static void table_of_loads(const struct result *r, int students)
{
	puts("\nof 100 plans, eased because the week would be too much for a "
	     "finger");
	printf("%-13s", "habit");
	for (int k = 0; k < LOADS; k++)
		printf(" %8s", load_name[k]);
	putchar('\n');
	for (int h = 0; h < HABITS; h++) {
		int load[LOADS] = { 0 }, plans = 0;

		for (int i = 0; i < students; i++) {
			if (!is_of(&r[i], h, ALL_TEACHERS))
				continue;
			plans += r[i].plans;
			for (int k = 0; k < LOADS; k++)
				load[k] += r[i].load[k];
		}
		printf("%-13s", habit_name[h]);
		for (int k = 0; k < LOADS; k++)
			printf(" %8.1f", plans ? 100.0 * load[k] / plans : 0);
		putchar('\n');
	}
}

static void table_of_waits(const struct result *r, int students)
{
	puts("\nlongest stay on a stage in practice days; longest wait though "
	     "truly good; forecasts that held, of 100");
	for (int h = 0; h < HABITS; h++) {
		int held = 0, good = 0, forecasts = 0, right = 0;

		for (int i = 0; i < students; i++) {
			if (!is_of(&r[i], h, ALL_TEACHERS))
				continue;
			held = r[i].held_days > held ? r[i].held_days : held;
			good = r[i].good_waits > good ? r[i].good_waits : good;
			forecasts += r[i].forecasts;
			right += r[i].forecasts_held;
		}
		printf("%-13s %6d %6d %8.1f of %d\n", habit_name[h], held, good,
		    forecasts ? 100.0 * right / forecasts : 0, forecasts);
	}
}

/* In the order of enum missing. */
static const char *const missing_name[MISSING_KINDS] = { "ready", "well",
	"days", "rung", "clean", "mark", "2 of 3", "share", "heard" };

static void line_of_missing(const int *days, const char *name)
{
	int all = 0;

	for (int m = 0; m < MISSING_KINDS; m++)
		all += days[m];
	printf("%-20s", name);
	for (int m = 0; m < MISSING_KINDS; m++)
		printf(" %6.1f", all ? 100.0 * days[m] / all : 0);
	printf(" of %d\n", all);
}

static void table_of_missing(const struct result *r, int students)
{
	puts("\nwhat was missing, of 100 practice days; below: though truly "
	     "good");
	printf("%-20s", "habit");
	for (int m = 0; m < MISSING_KINDS; m++)
		printf(" %6s", missing_name[m]);
	putchar('\n');
	for (int h = 0; h < HABITS; h++) {
		int days[MISSING_KINDS] = { 0 }, good[MISSING_KINDS] = { 0 };

		for (int i = 0; i < students; i++)
			for (int m = 0; m < MISSING_KINDS; m++) {
				if (!is_of(&r[i], h, ALL_TEACHERS))
					continue;
				days[m] += r[i].missing[m];
				good[m] += r[i].missing_good[m];
			}
		line_of_missing(days, habit_name[h]);
		line_of_missing(good, "");
	}
}

static void table_of_let_on(
    const struct routine *r, const struct result *result, int students)
{
	struct list l = list_new(students * STAGES_MAX);

	puts(
	    "\ntrue share of clean turns of the weakest finger, cold, when let "
	    "on: 10% below, median");
	printf("%-13s", "habit");
	for (int t = 0; t < TEACHERS; t++)
		printf(" %18s", teacher_name[t]);
	putchar('\n');
	for (int h = 0; h < HABITS; h++) {
		printf("%-13s", habit_name[h]);
		for (int t = 0; t < TEACHERS; t++) {
			l.count = 0;
			for (int i = 0; i < students; i++)
				for (int s = 0; is_of(&result[i], h, t) &&
				     s < result[i].let_on && s < r->stages;
				     s++)
					l.at[l.count++] = 100 *
					    result[i].let_on_weakest[s];
			printf("         %4.0f %4.0f", percent(&l, 10),
			    percent(&l, 50));
		}
		putchar('\n');
	}
	free(l.at);
}

static void table_of_revisits(const struct revisit *revisit)
{
	puts(
	    "\nlongest wait of an earlier stage in 80 sessions, and moves, for "
	    "students who never learn");
	puts("stages  minutes  clean   longest  at most   back  on again");
	for (int i = 0; i < REVISITS; i++) {
		const struct revisit *v = &revisit[i];

		printf("%6d %8d %5d %% %9d %8d %6d %9d\n", v->stages,
		    v->cap_ms / 60000, v->clean_percent, v->longest, v->allowed,
		    v->backs, v->ons);
	}
}

static void table_of_aways(const struct trials *trials)
{
	struct list l = list_new(AWAY_STUDENTS);

	printf("\npractice days after days away until the last stage is worked "
	       "on again: median (90%%), %d: never\n  clean",
	    TRIAL_LONG - 1);
	for (int a = 0; a < AWAYS; a++)
		printf("     %2d days", away_days[a]);
	putchar('\n');
	for (int g = 0; g < GATES; g++) {
		printf("%5.0f %%", 100 * gate_clean[g]);
		for (int a = 0; a < AWAYS; a++) {
			l.count = 0;
			for (int i = 0; i < AWAY_STUDENTS; i++)
				l.at[l.count++] = trials->away[g][a][i];
			printf("  %4.0f (%3.0f)", percent(&l, 50),
			    percent(&l, 90));
		}
		putchar('\n');
	}
	free(l.at);
}

static void table_of_healed(const struct trials *trials)
{
	puts(
	    "\npractice days, all clean, until a stage is ready after a finger "
	    "was left out from the sixth day on");
	for (int i = 0; i < HEALED; i++)
		printf("left out %2d days: %3d\n", healed_days[i],
		    trials->healed[i]);
}

static void table_of_gates(const struct gate *gate)
{
	puts("\nready by day 6 and day 12, in percent, of students who are "
	     "clean "
	     "so often and never learn");
	puts("  clean    rule alone      told      as it is lived");
	for (int g = 0; g < GATES; g++)
		printf("%6.0f %%   %4.0f %5.0f   %4.0f %5.0f     %5.0f %5.0f\n",
		    100 * gate_clean[g],
		    100.0 * gate[g].by_6[0] / gate[g].students,
		    100.0 * gate[g].by_12[0] / gate[g].students,
		    100 * gate_6[g], 100 * gate_12[g],
		    100.0 * gate[g].by_6[1] / gate[g].students,
		    100.0 * gate[g].by_12[1] / gate[g].students);
}

void table_print(const struct routine *r, const struct result *result,
    int students, const struct trials *trials)
{
	table_of_habits(result, students);
	table_of_teachers(result, students);
	table_of_shares(result, students);
	table_of_stages(r, result, students);
	table_of_metres(r, result, students);
	table_of_loads(result, students);
	table_of_waits(result, students);
	table_of_missing(result, students);
	table_of_let_on(r, result, students);
	table_of_gates(trials->gate);
	table_of_revisits(trials->revisit);
	table_of_aways(trials);
	table_of_healed(trials);
}
