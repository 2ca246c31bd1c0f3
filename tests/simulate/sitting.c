/*
 * sitting.c - one sitting of the real session, played with its own keys
 *
 * The student hears nothing and sees nothing: what a turn was is drawn from
 * the hidden skill when the session says that it is over, and marked in the
 * change that is there for it.
 */
#include <string.h>

#include "evenhand/base/frames.h"
#include "simulate.h"

enum { RATE = 8000, STEPS_MAX = 100000, KEY_AFTER_MS = 300 };

struct sitting {
	struct student *student;
	const struct routine *routine;
	struct past *past;
	struct watch *watch;
	struct session session;
	struct effects effects;
	int sore;	 /* the finger that is left out, 0 none */
	int leave_after; /* work turns */
	int work_turns;
	int marked; /* turns up to here had their chance of a mark */
	int asked;  /* turns up to here had their chance of a stop */
	bool leaving;
	bool clean[SESSION_PLAYED_MAX];
};

static void turn_is_over(struct sitting *d, const struct turn_row *t)
{
	struct student *s = d->student;
	double p = student_clean(
	    s, d->routine, t->stage, t->unit, t->pulses, t->first_go);

	d->clean[t->number] = chance_is(&s->chance, p);
	past_turn(d->past, t, d->routine);
	watch_turn(d->watch, &d->session, t);
	d->work_turns += t->kind == BLOCK_WORK;
	student_learn(s, t->stage, t->unit, d->session.plan.day);
}

/* Whatever the plan says: not on a day on which something hurt. */
static void begin(struct sitting *d)
{
	const struct history *h = &d->past->h;

	for (int i = 0; i < h->notes; i++)
		if (h->note[i].kind == NOTE_PAIN &&
		    h->note[i].day == d->session.plan.day)
			watch_break(d->watch, BROKEN_REST, "pain", i);
	past_sit(d->past, &d->session.plan, d->routine);
	watch_plan(d->watch, &d->session.plan);
}

static void take(struct sitting *d)
{
	for (int i = 0; i < d->effects.count; i++) {
		const struct effect *e = &d->effects.at[i];

		switch (e->kind) {
		case EFFECT_BEGIN:
			begin(d);
			break;
		case EFFECT_TURN:
			turn_is_over(d, &e->turn);
			break;
		case EFFECT_MARK:
			past_mark(d->past, e->number, e->mark);
			break;
		case EFFECT_NOTE:
			past_note(d->past, d->session.plan.day, e->note.kind,
			    e->note.finger);
			break;
		case EFFECT_END:
			past_end(d->past, e->ended, e->length_ms);
			watch_end(d->watch, &d->session);
			break;
		default:
			break;
		}
	}
}

static void step(struct sitting *d, struct input in)
{
	session_step(&d->session, &in, &d->effects);
	take(d);
}

static void press(struct sitting *d, enum key key, int digit)
{
	int64_t frame = d->session.now + frames_of_ms(KEY_AFTER_MS, RATE), wake;

	while ((wake = session_wake(&d->session)) <= frame)
		step(d, (struct input) { .kind = INPUT_FRAME, .frame = wake });
	step(d,
	    (struct input) { .kind = INPUT_KEY,
		.frame = frame,
		.key = key,
		.digit = digit });
}

/* --- marks --- */

/* Where the turns begin that a mark now would be for. */
static int from_turn(const struct session *s)
{
	const struct played_turn *last = &s->turn_played[s->played - 1];
	int from = s->played - 1;

	while (s->plan.marking == MARKING_ROUND && from > 0 &&
	    s->turn_played[from - 1].block == last->block &&
	    s->turn_played[from - 1].round == last->round)
		from--;
	return from;
}

static void mark(struct sitting *d)
{
	const struct session *s = &d->session;
	int from = from_turn(s), to = s->played, shaky = 0, digits[UNITS_MAX];

	d->marked = s->played;
	if (student_forgets(d->student))
		return;
	for (int i = from; i < to; i++) {
		int unit = s->turn_played[i].unit;

		if (student_marks(d->student, d->clean[i]) != MARK_SHAKY)
			continue;
		/* In the air, and alone, there is nobody else to be clean. */
		digits[shaky % UNITS_MAX] = unit < 0
		    ? 0
		    : d->routine->unit[unit].to;
		shaky++;
	}
	if (shaky == 0) {
		press(d, KEY_CLEAN, 0);
	} else if (shaky == to - from) {
		press(d, KEY_SHAKY, 0);
	} else {
		for (int i = 0; i < shaky; i++)
			press(d, KEY_DIGIT, digits[i]);
	}
}

static bool may_mark(const struct sitting *d)
{
	const struct session *s = &d->session;

	return s->page == PAGE_PLAY && s->phase == PHASE_CHANGE &&
	    s->played > d->marked &&
	    (s->plan.marking == MARKING_TURN ||
		s->turn == s->at.passage.turns - 1);
}

/* --- pages --- */

static void play(struct sitting *d)
{
	struct session *s = &d->session;

	if (may_mark(d)) {
		mark(d);
	} else if (s->phase == PHASE_CHANGE &&
	    d->work_turns >= d->leave_after && !d->leaving) {
		d->leaving = true;
		press(d, KEY_LEAVE, 0);
	} else if (s->phase == PHASE_BOWS && s->played >= d->asked) {
		d->asked = s->played + 1;
		if (student_stops(d->student))
			press(d, KEY_SILENCE, 0);
		else if (student_hurts(d->student))
			press(d, KEY_HURT, 0);
	} else {
		step(d,
		    (struct input) {
			.kind = INPUT_FRAME, .frame = session_wake(s) });
	}
}

static void answer(struct sitting *d)
{
	switch (d->session.page) {
	case PAGE_SORE:
		press(d, d->sore ? KEY_BACK : KEY_FORWARD, 0);
		break;
	case PAGE_WHERE:
		press(d, KEY_DIGIT, d->sore);
		d->sore = 0;
		break;
	case PAGE_LEAVE:
		press(d, KEY_BACK, 0);
		break;
	case PAGE_PAIN_WHERE:
		press(d, KEY_LEAVE, 0);
		break;
	case PAGE_PLAY:
		play(d);
		break;
	default:
		press(d, KEY_FORWARD, 0);
		break;
	}
}

bool sitting_play(struct student *s, const struct routine *r, struct past *p,
    struct moment now, enum marking marking, int sore, struct watch *w)
{
	static struct sitting d; /* large; a worker plays one at a time */
	struct plan_wish wish = {
		.routine = r, .history = &p->h, .now = now, .marking = marking
	};

	d = (struct sitting) { .student = s,
		.routine = r,
		.past = p,
		.watch = w,
		.sore = sore,
		.leave_after = student_leaves(s) };
	session_begin(&d.session, &wish, RATE, &d.effects);
	watch_load(w, &d.session.plan);
	w->last_block = -1;
	for (int i = 0; d.session.page != PAGE_OVER; i++) {
		if (i == STEPS_MAX) {
			watch_break(w, BROKEN_REST, "a session had no end", i);
			break;
		}
		answer(&d);
	}
	return d.session.first_sound >= 0;
}
