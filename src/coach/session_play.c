/*
 * session_play.c - from passage to passage, frame by frame
 *
 *	lead-in │ bows │ change │ bows │ ... │ last change │ next passage
 *	                                        ▲
 *	                        decided 250 ms before it begins
 *
 * A passage's start is worked out in whole ms from the origin, which is the
 * first sound or the frame of a restart, so nothing is ever summed in frames.
 */
#include "session_parts.h"

static int64_t frame_at(const struct session *s, int64_t passage_time)
{
	return s->at.frame + session_frames(s, passage_time);
}

static bool last_turn(const struct session *s)
{
	return s->turn == s->at.passage.turns - 1;
}

struct place play_place(const struct session *s)
{
	struct place p = s->at.from;

	if (s->phase != PHASE_LEAD)
		p.turn += s->turn + (s->phase == PHASE_CHANGE);
	return pass_settle(&s->plan, p);
}

void play_issue(const struct passing *p, struct effects *out)
{
	struct effect *e = effect_add(out, EFFECT_PASSAGE);

	e->passage = p->passage;
	e->frame = p->frame;
}

void play_enter(struct session *s, const struct passing *p)
{
	if (p->from.block == s->at.from.block &&
	    p->from.round > s->at.from.round && p->pulses > s->at.pulses)
		s->climbed = true;
	s->at = *p;
	s->phase = PHASE_LEAD;
	s->turn = -1;
	s->next_decided = s->next_none = false;
	s->told_pulses = p->pulses;
}

bool session_turn_now(const struct session *s, struct turn_now *out)
{
	const struct passage *p = &s->at.passage;
	struct place at = s->at.from;

	if (s->page != PAGE_PLAY || s->phase != PHASE_BOWS)
		return false;
	at.turn += s->turn;
	*out = (struct turn_now) {
		.frame = frame_at(s, passage_turn_ms(p, s->turn)),
		.stage = s->plan.block[at.block].stage,
		.unit = pass_turn(&s->plan, at)->unit,
		.bow_ms = p->bow_ms,
		.bows = p->bows_each,
		.pulses = s->at.pulses,
	};
	return true;
}

void play_begin(struct session *s, struct effects *out)
{
	struct place from = pass_settle(&s->plan, (struct place) { 0 });
	struct passing p;

	s->origin = s->now + session_frames(s, DECIDE_MS);
	s->first_sound = s->origin;
	if (from.block == s->plan.blocks ||
	    !pass_make(
		s, from, LEAD_FULL, 0, s->plan.block[from.block].pulses, &p)) {
		s->first_sound = -1;
		session_show(s, PAGE_REST, out);
		return;
	}
	s->climbed = s->plan.climbed;
	s->practised_to = s->first_sound;
	effect_add(out, EFFECT_BEGIN)->frame = s->first_sound;
	play_issue(&p, out);
	play_enter(s, &p);
	session_show(s, PAGE_PLAY, out);
	say_lead(s, out);
}

/* Whether there is a frame of this lead-in at which what was heard is told. */
static bool telling(const struct session *s)
{
	return s->tell_block >= 0 && s->now < s->tell_at;
}

int64_t play_due(const struct session *s)
{
	const struct passage *p = &s->at.passage;
	int64_t end, decide, bows_end;

	if (s->phase == PHASE_LEAD && telling(s))
		return s->tell_at;
	if (s->phase == PHASE_LEAD)
		return frame_at(s, passage_turn_ms(p, 0));
	bows_end = frame_at(s, passage_bows_end_ms(p, s->turn));
	if (s->phase == PHASE_BOWS)
		return bows_end;
	if (!last_turn(s))
		return frame_at(s, passage_turn_ms(p, s->turn + 1));
	end = frame_at(s, passage_ms(p));
	if (s->next_decided)
		return end;
	decide = end - session_frames(s, DECIDE_MS);
	return decide > bows_end ? decide : bows_end;
}

static void decide(struct session *s, struct effects *out)
{
	struct place next = play_place(s);
	int64_t start = s->at.start_ms + passage_ms(&s->at.passage);
	bool same = next.block == s->at.from.block;

	s->next_decided = true;
	s->next_none = true;
	if (s->at.cut_turns > 0 || next.block == s->plan.blocks)
		return;
	if (!pass_make(s, next, same ? LEAD_NONE : LEAD_FULL, start,
		same ? rung_next(s) : s->plan.block[next.block].pulses,
		&s->next))
		return;
	s->next_none = false;
	play_issue(&s->next, out);
}

static void begin_bows(struct session *s)
{
	s->tell_block = s->told_block = -1;
	s->turn++;
	s->phase = PHASE_BOWS;
	/* Bowed by sight from its first bow on: not heard whole either. */
	s->dropouts = s->silent_device;
}

static void end_bows(struct session *s, struct effects *out)
{
	marks_keep(s, s->at.passage.bows_each, out);
	s->phase = PHASE_CHANGE;
	s->practised_to = s->now;
	s->marked_by = KEY_OTHER;
	if (s->now - s->last_key >= session_frames(s, NO_KEY_MS)) {
		page_alone(s, out);
		return;
	}
	say_change(s, out);
	say_owed(s, out);
}

/* A mark may come a little late, unless this was no time for marks. */
static void end_change(struct session *s)
{
	bool marks = s->plan.marking == MARKING_TURN || last_turn(s);

	s->practised_to = s->now;
	s->late_until = marks ? s->now + session_frames(s, LATE_MARK_MS) : 0;
}

static void end_passage(struct session *s, struct effects *out)
{
	bool left = s->at.cut_turns > 0 || play_place(s).block < s->plan.blocks;
	int before = s->at.from.block;

	end_change(s);
	if (s->next_none) {
		stop_finish(s, left ? ENDED_CAP : ENDED_WHOLE, out);
		return;
	}
	play_enter(s, &s->next);
	if (s->at.passage.settle_ms <= 0)
		return;
	s->tell_block = before;
	s->tell_at = s->late_until > s->now ? s->late_until : s->now + 1;
	say_lead(s, out);
}

void play_event(struct session *s, struct effects *out)
{
	if (s->phase == PHASE_BOWS) {
		end_bows(s, out);
	} else if (s->phase == PHASE_LEAD && s->now <= s->tell_at &&
	    s->tell_block >= 0) {
		heard_say(s, out);
	} else if (s->phase == PHASE_LEAD) {
		begin_bows(s);
	} else if (!last_turn(s)) {
		end_change(s);
		begin_bows(s);
	} else if (!s->next_decided) {
		decide(s, out);
	} else {
		end_passage(s, out);
	}
}

void play_key(struct session *s, const struct input *in, struct effects *out)
{
	if (marks_key(s, in, out))
		return;
	switch (in->key) {
	case KEY_FORWARD:
	case KEY_BACK:
	case KEY_SILENCE:
		stop_sound(s, out);
		session_show(s, PAGE_SILENT, out);
		break;
	case KEY_LEAVE:
		stop_sound(s, out);
		session_show(s, PAGE_LEAVE, out);
		break;
	default:
		break;
	}
}
