/*
 * first_play.c - one turn of one finger, played by the session
 *
 * The stage is the one that will be worked on first with an instrument, so that
 * what is seen here is what comes afterwards; its first finger plays two bows
 * at the lowest rung.  The session believes in a plan of this one turn.  What
 * it would keep is left out on the way, and where it would show its end page
 * the next part comes.
 */
#include <string.h>

#include "first_parts.h"
#include "session_parts.h"

enum {
	BOWS = 2,
	BOW_MS = 4000,
	BOW_MS_MOST = 6000, /* a longer one would keep a beginner waiting */
	PAUSE_MS = 8000,    /* to mark in, without haste */
	CAP_MS = 1800000,   /* for any number of silences */
	BY_ITSELF_MS = 1000 /* a key for what sounded may come late */
};

static const struct history nothing;

/* The first stage that is played on a string, from the work stage on; or -1. */
static int stage_to_hear(const struct routine *r)
{
	for (int i = 0; i < r->stages; i++) {
		int at = (r->work_on + i) % r->stages;

		if (!r->stage[at].in_the_air)
			return at;
	}
	return -1;
}

static const char *words_of(enum message_id id, char *buffer)
{
	struct message m = message_of(id);

	message_text(&m, buffer, FIRST_WORDS_MAX);
	return buffer;
}

/* The teacher's routine with one stage and one finger. */
static void make_routine(struct first *f, enum first_part part)
{
	const struct routine *real = f->wish.routine;
	struct routine *r = &f->routine;
	int stage = stage_to_hear(real);
	struct stage *s = &r->stage[0];

	*r = *real;
	r->arena = (struct arena) { NULL, 0 };
	if (r->bow_ms > BOW_MS_MOST)
		r->bow_ms = BOW_MS;
	r->count_in_bows = 1;
	r->bows_each = BOWS;
	r->change_ms = part == FIRST_TRY ? PAUSE_MS : 0;
	r->units = 1;
	r->stages = 1;
	r->work_on = r->no_further_than = 0;
	r->lesson_marks = 0;
	*s = real->stage[stage < 0 ? 0 : stage];
	s->title = words_of(M_FIRST_TITLE, f->title);
	s->cue = words_of(
	    part == FIRST_TRY ? M_FIRST_CUE_TRY : M_FIRST_CUE_HEAR, f->cue);
	s->say = "";
	s->checks = s->feels = s->fade_after = 0;
	/* A routine of nothing but the air still has a finger to hear. */
	if (stage < 0) {
		s->in_the_air = false;
		s->motion = MOTION_DROP;
		s->string = 0;
	}
}

static void make_plan(
    const struct first *f, enum first_part part, struct plan *p)
{
	const struct routine *r = &f->routine;
	int lead = routine_lead_ms(r);

	memset(p, 0, sizeof(*p));
	p->verdict = VERDICT_PRACTISE;
	p->marking = part == FIRST_TRY ? f->wish.marking : MARKING_TURN;
	p->now = f->wish.now;
	p->cap_ms = CAP_MS;
	p->length_ms = lead + BOWS * r->bow_ms + r->change_ms;
	p->blocks = p->turns = 1;
	p->bows = BOWS;
	p->share[0] = 1;
	p->turn[0].start_ms = lead;
	p->block[0] = (struct plan_block) {
		.kind = BLOCK_WORK,
		.pulses = r->ladder[0],
		.end_ms = p->length_ms,
		.rounds = 1,
		.turns = 1,
	};
}

void first_prepare(struct first *f, enum first_part part)
{
	struct session *s = f->session;
	struct plan_wish w = f->wish;
	struct plan p;

	make_routine(f, part);
	make_plan(f, part, &p);
	w.routine = &f->routine;
	w.history = &nothing;
	session_begin_on(s, &w, &p, f->rate, &f->inner);
	s->now = f->now;
	s->last_key = f->last_key;
	s->last_press = f->last_press;
	s->silent_device = f->silent_device;
}

/* What the session asked for, without what a journal would keep. */
static void hand_out(struct first *f, struct effects *out, bool words)
{
	for (int i = 0; i < f->inner.count; i++) {
		const struct effect *e = &f->inner.at[i];

		f->tried |= e->kind == EFFECT_TURN && f->part == FIRST_TRY;
		if (e->kind == EFFECT_MARK)
			f->mark = e->mark;
		if (e->kind == EFFECT_PASSAGE || e->kind == EFFECT_SILENCE ||
		    (e->kind == EFFECT_SAY && words))
			*effect_add(out, e->kind) = *e;
	}
	f->inner.count = 0;
}

void first_play(struct first *f, enum first_part part, struct effects *out)
{
	first_prepare(f, part);
	f->inner.count = 0;
	f->mark = MARK_NONE;
	f->tried = false;
	play_begin(f->session, &f->inner);
	/* The session's own words would speak of work. */
	hand_out(f, out, false);
	first_show(f, part, out);
	effect_say(out, message_of(M_FIRST_SETTLE));
}

/* Where the session stands now is where the first minutes go on. */
static void follow(struct first *f, struct effects *out)
{
	enum first_part played = f->part == FIRST_SILENT ? f->silenced
							 : f->part;

	switch (f->session->page) {
	case PAGE_PLAY:
		if (f->part == FIRST_SILENT)
			first_show(f, played, out);
		break;
	case PAGE_SILENT:
		f->silenced = played;
		first_show(f, FIRST_SILENT, out);
		break;
	default:
		if (first_plays(f))
			f->open_at = f->now +
			    session_frames(f->session, BY_ITSELF_MS);
		/* It is over and is looked at by nobody. */
		f->session->page = PAGE_SORE;
		first_show(
		    f, played == FIRST_TRY ? FIRST_LAST : FIRST_MARK, out);
		break;
	}
}

void first_pass(struct first *f, const struct input *in, struct effects *out)
{
	struct session *s = f->session;

	/* Whether a press counts was decided already. */
	s->last_press = f->now - session_frames(s, REPEAT_MS);
	session_step(s, in, &f->inner);
	f->silent_device = s->silent_device;
	/* At the end of what is only heard nobody is asked for a mark. */
	hand_out(f, out, s->page != PAGE_END || f->part != FIRST_HEAR);
	follow(f, out);
}

void first_hush(struct first *f, struct effects *out)
{
	if (!first_plays(f))
		return;
	f->inner.count = 0;
	stop_sound(f->session, &f->inner);
	hand_out(f, out, true);
}
