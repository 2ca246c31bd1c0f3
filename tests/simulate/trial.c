/*
 * trial.c - one rule at a time, tried on students who never learn
 *
 * They practise at the same time each day, are clean as often as their skill
 * says and mark it as it was, so whatever changes comes from the rule.
 */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "simulate.h"

enum {
	GATE_DAYS = 12,
	REVISIT_DAYS = 80,
	BEFORE_DAYS = 14,
	BEFORE_SORE = 5,
	PATIENCE_DAYS = TRIAL_LONG - 1,
	PLAY_AT = 17 * 3600,
};

struct trial {
	struct student student;
	struct routine routine;
	struct past past;
	struct watch watch;
	struct result result;
	int day; /* since the beginning */
};

static struct trial *trial_new(const struct routine *r, int stage, double clean,
    uint64_t seed, uint64_t number)
{
	struct trial *t = calloc(1, sizeof(*t));

	if (!t)
		abort();
	t->routine = *r;
	t->routine.work_on = t->routine.no_further_than = stage;
	t->watch.routine = &t->routine;
	t->watch.result = &t->result;
	past_init(&t->past);
	student_init(&t->student, &t->routine, HABIT_EVEN, seed, number);
	student_fix(&t->student, &t->routine, clean);
	return t;
}

static void trial_free(struct trial *t)
{
	past_done(&t->past);
	free(t);
}

static struct moment now(const struct trial *t)
{
	return (struct moment) {
		(int64_t)(BEGIN_DAY + t->day) * DAY_SECONDS + PLAY_AT, 0
	};
}

/* One day; sore is a finger left out, 0 none. */
static void play(struct trial *t, int sore)
{
	t->watch.day = t->day;
	sitting_play(&t->student, &t->routine, &t->past, now(t), MARKING_ROUND,
	    sore, &t->watch);
	past_forget(&t->past, BEGIN_DAY + t->day);
	t->day++;
}

/* As it would be asked the next morning. */
static enum missing missing(const struct trial *t)
{
	struct standing s;

	standing_of(&s, &t->routine, &t->past.h, t->routine.work_on,
	    BEGIN_DAY + t->day, NULL);
	return s.missing;
}

/* The rule alone: one stage, one rung, one round a day. */
static struct trial *gate_alone(
    const struct routine *r, double clean, uint64_t seed, uint64_t number)
{
	struct routine g = *r;
	struct trial *t;

	g.stages = 1;
	g.stage[0] = r->stage[r->stages - 2];
	g.ladder[0] = top_pulses(r);
	g.ladder_count = 1;
	g.cap_ms = routine_lead_ms(r) + routine_round_ms(r);
	t = trial_new(&g, 0, clean, seed, number);
	t->student.flat = true;
	return t;
}

int gate_run(const struct routine *r, double clean, bool ladder, uint64_t seed,
    uint64_t number)
{
	struct trial *t = ladder
	    ? trial_new(r, r->stages - 2, clean, seed, number)
	    : gate_alone(r, clean, seed, number);
	int day;

	for (day = 1; day <= GATE_DAYS; day++) {
		play(t, 0);
		if (missing(t) == MISSING_NOTHING)
			break;
		/* The seventh day is a day of rest. */
		t->day += t->day % WEEK == WEEK - 1;
	}
	trial_free(t);
	return day;
}

void revisit_run(
    struct revisit *v, const struct routine *r, uint64_t seed, uint64_t number)
{
	struct routine g = *r;
	struct trial *t;

	for (int i = r->stages; i < v->stages; i++) {
		g.stage[i] = r->stage[r->stages - 1];
		snprintf(g.stage[i].id, ID_MAX, "more-%d", i);
	}
	g.stages = v->stages;
	g.cap_ms = v->cap_ms;
	t = trial_new(
	    &g, v->stages - 1, v->clean_percent / 100.0, seed, number);
	while (t->day < REVISIT_DAYS) {
		struct where w;

		if (t->day % WEEK == WEEK - 1) {
			t->day++;
			continue;
		}

		where_on(&w, &t->routine, &t->past.h, BEGIN_DAY + t->day);
		v->backs += w.why == WHERE_BACK;
		v->ons += w.why == WHERE_ON;
		play(t, 0);
	}
	for (int i = 0; i < v->stages; i++) {
		const struct stage_seen *s = &t->result.seen[i];

		if (s->gap_max > v->longest)
			v->longest = s->gap_max;
		if (s->waiting > v->longest)
			v->longest = s->waiting;
	}
	/* The air and the stage that is worked on do not come back. */
	v->allowed = 3 + v->stages - 2;
	trial_free(t);
}

int away_run(const struct routine *r, double clean, int away, uint64_t seed,
    uint64_t number)
{
	int stage = r->stages - 1, days = 0;
	struct trial *t = trial_new(r, stage, clean, seed, number);

	while (t->day < BEFORE_DAYS)
		play(t, 0);
	t->day += away;
	for (; days < PATIENCE_DAYS; days++) {
		struct where w;

		where_on(&w, &t->routine, &t->past.h, BEGIN_DAY + t->day);
		if (w.at == stage && !w.recap_only)
			break;
		play(t, 0);
	}
	trial_free(t);
	return days;
}

int healed_run(
    const struct routine *r, int sore_days, uint64_t seed, uint64_t number)
{
	int days = 0;
	struct trial *t = trial_new(r, r->stages - 1, 1, seed, number);

	while (t->day < BEFORE_SORE)
		play(t, 0);
	while (t->day < BEFORE_SORE + sore_days)
		play(t, FINGERS);
	for (; days < PATIENCE_DAYS && missing(t) != MISSING_NOTHING; days++)
		play(t, 0);
	trial_free(t);
	return days;
}
