/*
 * student.c - what nobody sees: skill, learning, forgetting, habits
 *
 * Skill is the log odds that a turn at the top rung is clean when it is the
 * first of the day.  Each turn takes a part of the way that is left to the
 * best there is; each day without a turn takes a part of the gain back.  Lower
 * rungs and warm hands are easier.  All numbers are invented, so that somebody
 * who practises evenly needs about nine practice days for a stage.
 */
#include <math.h>
#include <string.h>

#include "simulate.h"

#define BEST 4.5    /* 99 of 100 */
#define WARM 0.4    /* easier after the first go */
#define RUNG 0.8    /* easier, each step down */
#define LEARN 0.035 /* of the way left, each turn */
#define LEARN_AIR 0.025
#define FORGET 0.015 /* of the gain, each day */
#define SLIP 0.02    /* marks that are wrong */
#define NO_MARK 0.02 /* marks that are forgotten */

const char *const habit_name[HABITS] = { "even", "first finger", "hurried",
	"weekend only", "ill ten days", "sore skin" };
const char *const teacher_name[TEACHERS] = { "strict", "trusting",
	"student decides" };

static int units_of(const struct routine *r, int stage)
{
	return r->stage[stage].in_the_air ? 1 : r->units;
}

void student_init(struct student *s, const struct routine *r, enum habit h,
    uint64_t seed, uint64_t number)
{
	/* The fourth finger is the weakest. */
	static const double finger[FINGERS] = { 0.1, 0.1, -0.2, -0.5 };
	struct chance *c = &s->chance;

	memset(s, 0, sizeof(*s));
	s->chance = chance_of(seed, number);
	s->habit = h;

	double pace = 0.35 * chance_bell(c), before = 0.4 * chance_bell(c);

	s->forget = FORGET * exp(0.3 * chance_bell(c));
	s->ill_from = chance_whole(c, 10, 60);
	for (int i = 0; i < r->stages; i++) {
		bool air = r->stage[i].in_the_air;

		s->learn[i] = (air ? LEARN_AIR : LEARN) *
		    exp(pace + 0.4 * chance_bell(c));
		for (int u = 0; u < units_of(r, i); u++) {
			s->start[i][u] = before - 0.5 + 0.3 * chance_bell(c) +
			    (air ? 0.5 : finger[u % FINGERS]);
			s->skill[i][u] = s->start[i][u];
		}
	}
}

void student_fix(struct student *s, const struct routine *r, double clean)
{
	s->fixed = true;
	for (int i = 0; i < r->stages; i++)
		for (int u = 0; u < units_of(r, i); u++)
			s->skill[i][u] = log(clean / (1 - clean));
}

int top_pulses(const struct routine *r)
{
	return r->ladder[r->ladder_count - 1];
}

static int rungs_below_top(const struct routine *r, int pulses)
{
	int rung = routine_rung(r, pulses);

	return rung < 0 ? 0 : r->ladder_count - 1 - rung;
}

double student_clean(const struct student *s, const struct routine *r,
    int stage, int unit, int pulses, bool cold)
{
	double x = s->skill[stage][unit < 0 ? 0 : unit];

	if (!cold && !s->flat)
		x += WARM;
	if (unit >= 0 && !s->flat)
		x += RUNG * rungs_below_top(r, pulses);
	return 1 / (1 + exp(-x));
}

void student_learn(struct student *s, int stage, int unit, int day)
{
	double *x = &s->skill[stage][unit < 0 ? 0 : unit];

	if (s->fixed)
		return;
	*x += s->learn[stage] * (BEST - *x);
	s->played[stage][unit < 0 ? 0 : unit] = day;
}

void student_sleep(struct student *s, const struct routine *r, int day)
{
	for (int i = 0; i < r->stages; i++)
		for (int u = 0; u < units_of(r, i); u++)
			if (s->played[i][u] < day)
				s->skill[i][u] -= s->forget *
				    (s->skill[i][u] - s->start[i][u]);
}

/* --- habits --- */

static bool practises(struct student *s, int day)
{
	struct chance *c = &s->chance;
	int weekday = day % WEEK, since = day - s->ill_from;

	switch (s->habit) {
	case HABIT_WEEKEND:
		return weekday >= 5 && chance_is(c, 0.97);
	case HABIT_HURRY:
		return chance_is(c, 0.95);
	case HABIT_FIRST:
		return weekday != 6 && chance_is(c, 0.8);
	case HABIT_ILL:
		/* Once more each fourteen weeks. */
		if (since >= 0 && since % (14 * WEEK) < 10)
			return false;
		break;
	default:
		break;
	}
	return weekday != 6 && chance_is(c, 0.92);
}

int student_sessions(struct student *s, int day, int *minute)
{
	struct chance *c = &s->chance;
	int count = 1;

	if (!practises(s, day))
		return 0;
	minute[0] = chance_whole(c, 14 * 60, 16 * 60);
	if (s->habit == HABIT_HURRY) {
		count = chance_whole(c, 1, 3);
		for (int i = 1; i < count; i++)
			minute[i] = minute[i - 1] + chance_whole(c, 10, 240);
		return count;
	}
	if (chance_is(c, s->habit == HABIT_WEEKEND ? 0.7 : 0.3))
		minute[count++] = minute[0] + chance_whole(c, 190, 300);
	return count;
}

enum mark student_marks(struct student *s, bool clean)
{
	struct chance *c = &s->chance;

	if (s->fixed)
		return clean ? MARK_CLEAN : MARK_SHAKY;
	if (chance_is(c, SLIP))
		clean = !clean;
	if (!clean && s->habit == HABIT_HURRY && chance_is(c, 0.6))
		clean = true;
	return clean ? MARK_CLEAN : MARK_SHAKY;
}

bool student_forgets(struct student *s)
{
	return !s->fixed && chance_is(&s->chance, NO_MARK);
}

bool student_stops(struct student *s)
{
	return !s->fixed &&
	    chance_is(&s->chance, s->habit == HABIT_HURRY ? 0.01 : 0.002);
}

bool student_hurts(struct student *s)
{
	return s->habit == HABIT_SORE && chance_is(&s->chance, 0.0002);
}

int student_leaves(struct student *s)
{
	struct chance *c = &s->chance;

	if (s->habit == HABIT_FIRST && chance_is(c, 0.5))
		return chance_whole(c, 1, 6);
	return INT32_MAX;
}

int student_sore(struct student *s, int day, const double *metres)
{
	struct chance *c = &s->chance;

	if (s->habit == HABIT_FIRST && chance_is(c, 0.08))
		return FINGERS; /* nothing is sore: it is the disliked one */
	if (s->habit != HABIT_SORE)
		return 0;
	if (day <= s->sore_until)
		return s->sore_finger;
	for (int f = 0; f < FINGERS; f++) {
		double much = metres[f] / 150;

		if (!chance_is(c, 0.005 + 0.02 * much * much))
			continue;
		s->sore_finger = f + 1;
		s->sore_until = day + chance_whole(c, 1, 3);
		return s->sore_finger;
	}
	return 0;
}
