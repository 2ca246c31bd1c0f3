/*
 * session_stop.c - silence, going on, and the ends
 *
 * After a silence the same turn is played again from its first bow, after a
 * count-in.  The clock of the passages begins anew there; the clock of the cap
 * never does, so a silence uses the session's time.
 */
#include "session_parts.h"

#include "evenhand/base/frames.h"

void stop_sound(struct session *s, struct effects *out)
{
	effect_add(out, EFFECT_SILENCE);
	s->stay = play_place(s);
	s->again = s->phase == PHASE_BOWS;
	s->late_until = 0;
	s->help_owed = false;
	s->practised_to = s->now;
}

/* The rung to go on with. */
static int pulses_on(const struct session *s)
{
	if (s->stay.block != s->at.from.block)
		return s->plan.block[s->stay.block].pulses;
	if (s->stay.round != s->at.from.round)
		return rung_next(s);
	return s->at.pulses;
}

static void say_again(const struct session *s, struct effects *out)
{
	char name[UNIT_TEXT_MAX];

	/* One or two words: the count-in begins at once. */
	say_place(s, s->at.from, name);
	effect_say(out,
	    message_with(
		s->again ? M_SESSION_AGAIN : M_SESSION_GOES_ON, TEXT(name)));
}

void stop_go_on(struct session *s, struct effects *out)
{
	bool new_block = s->stay.block != s->at.from.block;
	struct passing p;

	if (s->stay.block == s->plan.blocks) {
		stop_finish(s, ENDED_WHOLE, out);
		return;
	}
	s->origin = s->now + session_frames(s, DECIDE_MS);
	if (!pass_make(s, s->stay, new_block ? LEAD_FULL : LEAD_COUNT, 0,
		pulses_on(s), &p)) {
		stop_finish(s, ENDED_CAP, out);
		return;
	}
	s->resets += s->again;
	play_enter(s, &p);
	play_issue(&p, out);
	session_show(s, PAGE_PLAY, out);
	if (new_block)
		say_lead(s, out);
	else
		say_again(s, out);
}

/* Whole bows of the turn under way. */
static int bows_so_far(const struct session *s)
{
	const struct passage *p = &s->at.passage;
	int64_t start = passage_turn_ms(p, s->turn);
	int bows = 0;

	while (bows < p->bows_each &&
	    s->at.frame +
		    session_frames(
			s, start + (int64_t)(bows + 1) * p->bow_ms) <=
		s->now)
		bows++;
	return bows;
}

void stop_gap(struct session *s, struct effects *out)
{
	if (s->page != PAGE_PLAY)
		return;
	int bows = s->phase == PHASE_BOWS ? bows_so_far(s) : 0;

	stop_sound(s, out);
	s->again = false;
	if (bows > 0)
		marks_keep(s, bows, out);
	effect_say(out, message_of(M_SESSION_GAP));
	session_show(s, PAGE_SILENT, out);
}

int64_t session_length(const struct session *s)
{
	return s->practised_to > s->first_sound
	    ? s->practised_to - s->first_sound
	    : 0;
}

void stop_finish(struct session *s, enum ended ended, struct effects *out)
{
	s->last_key = s->now;
	s->ended = ended;
	if (!s->end_kept) {
		struct effect *e = effect_add(out, EFFECT_END);

		e->ended = ended;
		e->length_ms = frames_to_ms(session_length(s), s->rate);
	}
	s->end_kept = true;
	session_show(s, PAGE_END, out);
}

void stop_over(struct session *s, struct effects *out)
{
	if (s->first_sound < 0)
		s->ended = ENDED_NOT_TODAY;
	s->page = PAGE_OVER;
	effect_add(out, EFFECT_OVER);
}
