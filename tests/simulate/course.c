/*
 * course.c - one student's whole programme, day by day
 *
 * Wednesday is the day of the lesson.  The teacher believes the coach, or
 * listens first; where the student decides, nobody does and the planner itself
 * goes on.
 */
#include <stdlib.h>
#include <string.h>

#include "evenhand/coach/forecast.h"
#include "evenhand/coach/standing.h"
#include "simulate.h"

enum {
	LESSON_WEEKDAY = 2,
	MINUTE_S = 60,
	HEARD_ROUNDS = 2,
};

#define GOOD 0.95 /* each finger, cold, at the top rung */

struct course {
	struct student student;
	struct routine routine;
	struct past past;
	struct watch watch;
	struct result *out;
	enum teacher teacher;
	enum marking marking;
	int day; /* since the beginning */
	int good_days;
	int forecasts;
	struct {
		int day, low, high;
	} forecast[WEEKS_MAX];
};

static int today(const struct course *c)
{
	return BEGIN_DAY + c->day;
}

/* The stage that is to be reached next, however far back today is. */
static int asked(const struct course *c)
{
	struct where w;

	where_on(&w, &c->routine, &c->past.h, today(c));
	return w.asked;
}

static enum missing missing(const struct course *c, int stage)
{
	struct standing s;

	standing_of(&s, &c->routine, &c->past.h, stage, today(c), NULL);
	return s.missing;
}

static bool ready(const struct course *c, int stage)
{
	return missing(c, stage) == MISSING_NOTHING;
}

static int units_of(const struct routine *r, int stage)
{
	return r->stage[stage].in_the_air ? 1 : r->units;
}

/* How often the weakest finger is truly clean, cold, at the top rung. */
static double weakest(const struct course *c, int stage)
{
	const struct routine *r = &c->routine;
	bool air = r->stage[stage].in_the_air;
	double least = 1;

	for (int u = 0; u < units_of(r, stage); u++) {
		double clean = student_clean(
		    &c->student, r, stage, air ? -1 : u, top_pulses(r), true);

		least = clean < least ? clean : least;
	}
	return least;
}

/* --- the lesson --- */

/* What a teacher hears in two rounds, warm: who was shaky. */
static uint32_t listen(struct course *c, int stage)
{
	const struct routine *r = &c->routine;
	bool air = r->stage[stage].in_the_air;
	uint32_t shaky = 0;

	for (int i = 0; i < HEARD_ROUNDS; i++)
		for (int u = 0; u < units_of(r, stage); u++)
			if (!chance_is(&c->student.chance,
				student_clean(&c->student, r, stage,
				    air ? -1 : u, top_pulses(r), false)))
				shaky |= UINT32_C(1) << u;
	return shaky;
}

/* The teacher's own marks go into the file; the oldest make room. */
static void keep_marks(struct course *c, int stage, uint32_t shaky)
{
	struct routine *r = &c->routine;

	if (r->lesson_marks == LESSON_MARKS_MAX)
		memmove(r->lesson_mark, r->lesson_mark + 1,
		    sizeof(r->lesson_mark[0]) * (size_t)--r->lesson_marks);
	r->lesson_mark[r->lesson_marks++] = (struct lesson_mark) { .day = today(
								       c),
		.stage = stage,
		.shaky = shaky,
		.clean = ~shaky & ((UINT32_C(1) << units_of(r, stage)) - 1) };
}

static bool teacher_agrees(struct course *c, int stage)
{
	uint32_t shaky;

	if (c->teacher != TEACHER_STRICT)
		return true;
	shaky = listen(c, stage);
	keep_marks(c, stage, shaky);
	return shaky == 0;
}

static void expect(struct course *c, int stage)
{
	struct forecast f;
	int n = c->forecasts;

	forecast_make(&f, &c->routine, &c->past.h, stage, today(c));
	if (f.silence != FORECAST_SPEAKS || n == WEEKS_MAX)
		return;
	c->forecast[n].day = c->day;
	c->forecast[n].low = f.low_weeks;
	c->forecast[n].high = f.high_weeks;
	c->forecasts++;
}

static void lesson(struct course *c)
{
	struct routine *r = &c->routine;
	int stage = asked(c);

	if (ready(c, stage) && teacher_agrees(c, stage)) {
		if (stage == r->stages - 1)
			c->out->done = true;
		else if (c->teacher != TEACHER_NONE)
			r->work_on = r->no_further_than = stage + 1;
	}
	if (!c->out->done)
		expect(c, asked(c));
}

/* --- a day --- */

static void count_where(struct course *c)
{
	struct result *out = c->out;
	struct where w;

	where_on(&w, &c->routine, &c->past.h, today(c));
	out->backs += w.why == WHERE_BACK;
	out->on_again += w.why == WHERE_ON;
	out->aways += w.lower;
	out->recap_only += w.recap_only;
}

/* A stage that is reached was left behind with the skill of that day. */
static void count_let_on(struct course *c, int stage)
{
	struct result *out = c->out;

	for (; out->let_on < stage; out->let_on++)
		out->let_on_weakest[out->let_on] = weakest(c, out->let_on);
}

static void count_waiting(struct course *c, int stage)
{
	struct result *out = c->out;
	int days = history_days_on(&c->past.h, &c->routine, stage);
	bool good = weakest(c, stage) >= GOOD;
	enum missing what = missing(c, stage);

	count_let_on(c, stage);
	out->missing[what]++;
	out->missing_good[what] += good;

	out->seen[stage].days_on = days;
	if (days > out->held_days)
		out->held_days = days;
	c->good_days = good && what != MISSING_NOTHING ? c->good_days + 1 : 0;
	if (c->good_days > out->good_waits)
		out->good_waits = c->good_days;
}

static struct moment at(const struct course *c, int minute)
{
	return (struct moment) {
		(int64_t)today(c) * DAY_SECONDS + (int64_t)minute * MINUTE_S, 0
	};
}

static void practise(struct course *c)
{
	int minute[4], sessions, sat = 0, sore;
	double metres[FINGERS];

	sessions = student_sessions(&c->student, c->day, minute);
	if (sessions == 0)
		return;
	watch_metres(&c->watch, metres);
	sore = student_sore(&c->student, c->day, metres);
	count_where(c);
	for (int i = 0; i < sessions; i++) {
		if (sitting_play(&c->student, &c->routine, &c->past,
			at(c, minute[i]), c->marking, sore, &c->watch))
			sat++;
		else
			c->out->rests++;
	}
	c->out->practised += sat > 0;
	if (sat > 0)
		count_waiting(c, asked(c));
}

static void one_day(struct course *c)
{
	c->watch.day = c->day;
	if (c->day % WEEK == LESSON_WEEKDAY && c->day > WEEK - 1)
		lesson(c);
	if (!c->out->done)
		practise(c);
	student_sleep(&c->student, &c->routine, c->day);
	watch_day(&c->watch);
	if (c->day % WEEK == WEEK - 1 || c->out->done)
		watch_week(&c->watch);
	past_forget(&c->past, today(c));
}

/* How many forecasts held the day on which it was over. */
static void look_back_on_forecasts(struct course *c)
{
	struct result *out = c->out;

	for (int i = 0; i < c->forecasts && out->done; i++) {
		double weeks = (double)(out->days - c->forecast[i].day) / WEEK;

		out->forecasts++;
		out->forecasts_held += weeks > c->forecast[i].low - 0.5 &&
		    weeks < c->forecast[i].high + 0.5;
	}
}

static struct course *course_new(const struct routine *r, struct result *out)
{
	struct course *c = calloc(1, sizeof(*c));

	if (!c)
		abort();
	memset(out, 0, sizeof(*out));
	c->routine = *r;
	c->out = out;
	c->watch.routine = &c->routine;
	c->watch.result = out;
	past_init(&c->past);
	return c;
}

static void course_free(struct course *c)
{
	past_done(&c->past);
	free(c);
}

void course_run(struct result *out, const struct routine *r, enum habit h,
    enum teacher t, uint64_t seed, uint64_t number)
{
	struct course *c = course_new(r, out);

	out->habit = h;
	out->teacher = c->teacher = t;
	c->routine.work_on = 0;
	c->routine.no_further_than = t == TEACHER_NONE ? r->stages - 1 : 0;
	c->routine.decided_by = t == TEACHER_NONE ? DECIDED_BY_STUDENT
						  : DECIDED_BY_TEACHER;
	/* Two pain days are asked about at once. */
	c->routine.seen = true;
	student_init(&c->student, &c->routine, h, seed, number);
	c->marking = chance_is(&c->student.chance, 0.3) ? MARKING_TURN
							: MARKING_ROUND;
	for (; c->day < DAYS_MAX && !out->done; c->day++) {
		one_day(c);
		out->days = c->day;
	}
	if (out->done)
		count_let_on(c, r->stages);
	look_back_on_forecasts(c);
	course_free(c);
}
