/*
 * session_marks.c - turns that were played, and their marks
 *
 * A turn is kept without a mark when its bows are over; a mark comes after it,
 * if one comes.  It is always for what was played last: the turn, or all turns
 * of the round.  No key means no mark, never clean.
 */
#include "session_parts.h"

#include <math.h>

#include "evenhand/base/frames.h"
#include "evenhand/base/text.h"

static void keep_row(
    const struct session *s, const struct played_turn *t, struct effects *out)
{
	struct place at = s->at.from;
	const struct plan_block *b = &s->plan.block[at.block];
	int64_t start = s->at.frame +
	    session_frames(s, passage_turn_ms(&s->at.passage, s->turn));

	effect_add(out, EFFECT_TURN)->turn = (struct turn_row) {
		.number = s->played,
		.kind = b->kind,
		.stage = b->stage,
		.unit = t->unit,
		.round = t->round,
		.pulses = t->pulses,
		.bows_asked = t->unit < 0 ? 0 : s->at.passage.bows_each,
		.bows_done = t->bows_done,
		.first_go = t->first_go,
		.resets = s->resets,
		.dropouts = s->dropouts,
		.start_ms = frames_to_ms(start - s->first_sound, s->rate),
		.slide_um = t->slide_um,
	};
}

void marks_keep(struct session *s, int bows_done, struct effects *out)
{
	const struct routine *r = s->wish.routine;
	struct place at = s->at.from;
	const struct plan_block *b = &s->plan.block[at.block];
	int asked = s->at.passage.bows_each;
	struct played_turn *t = &s->turn_played[s->played];

	at.turn += s->turn;
	int unit = pass_turn(&s->plan, at)->unit;

	/* Broken-off turns may use up their own room, never that of whole. */
	if (s->played == SESSION_PLAYED_MAX ||
	    (bows_done < asked && (unit < 0 || s->played >= PLAN_TURNS_MAX)))
		return;
	*t = (struct played_turn) {
		.block = at.block,
		.unit = unit,
		.round = at.round,
		.pulses = s->at.pulses,
		.bows_done = unit < 0 ? 0 : bows_done,
		.whole = bows_done == asked,
		.first_go = at.round == 0 && (s->plan.first_go >> b->stage & 1),
	};
	if (unit >= 0)
		t->slide_um = llround(1e6 *
		    routine_turn_m(r, b->stage, unit, t->pulses) * bows_done /
		    asked);
	keep_row(s, t, out);
	s->played++;
	s->resets = s->dropouts = 0;
}

/* Where the turns that a mark is for begin in turn_played; they go on to the
 * end. */
static int target(const struct session *s)
{
	const struct played_turn *last = &s->turn_played[s->played - 1];
	int from = s->played - 1;

	if (s->plan.marking == MARKING_TURN)
		return from;
	while (from > 0 && s->turn_played[from - 1].block == last->block &&
	    s->turn_played[from - 1].round == last->round)
		from--;
	return from;
}

static void mark(
    struct session *s, int number, enum mark mark, struct effects *out)
{
	struct played_turn *t = &s->turn_played[number];

	if (!t->whole || t->mark == mark)
		return;
	t->mark = mark;

	struct effect *e = effect_add(out, EFFECT_MARK);

	e->number = number;
	e->mark = mark;
	e->mark_ms = frames_to_ms(s->now - s->first_sound, s->rate);
}

/* How many turns from one on have this mark, of all whole ones. */
static bool all_are(const struct session *s, int from, enum mark mark)
{
	for (int i = from; i < s->played; i++)
		if (s->turn_played[i].whole && s->turn_played[i].mark != mark)
			return false;
	return true;
}

static void mark_all(struct session *s, const struct input *in,
    enum mark wanted, struct effects *out)
{
	int from = target(s);
	bool again = s->marked_by == in->key && all_are(s, from, wanted);

	for (int i = from; i < s->played; i++)
		mark(s, i, again ? MARK_NONE : wanted, out);
	s->marked_by = again ? KEY_OTHER : in->key;
}

/* Whether a digit means this unit: its finger, or its place in the order. */
static bool means(const struct session *s, int digit, int unit)
{
	const struct routine *r = s->wish.routine;

	if (unit < 0)
		return false;
	if (r->take == TAKE_FINGERS)
		return r->unit[unit].to == digit;
	return unit + 1 == digit;
}

/* Toggles one unit among the shaky ones; whether the round has it at all. */
static bool mark_digit(struct session *s, int digit, struct effects *out)
{
	bool shaky[SESSION_PLAYED_MAX];
	bool fresh = s->marked_by != KEY_DIGIT, found = false, any = false;
	int from = target(s);

	for (int i = from; i < s->played; i++) {
		const struct played_turn *t = &s->turn_played[i];
		bool meant = t->whole && means(s, digit, t->unit);

		shaky[i] = !fresh && t->mark == MARK_SHAKY;
		if (meant)
			shaky[i] = !shaky[i];
		found |= meant;
		any |= shaky[i];
	}
	if (!found)
		return false;
	for (int i = from; i < s->played; i++)
		mark(s, i,
		    !any	   ? MARK_NONE
			: shaky[i] ? MARK_SHAKY
				   : MARK_CLEAN,
		    out);
	s->marked_by = any ? KEY_DIGIT : KEY_OTHER;
	return true;
}

static void say_turn_mark(const struct session *s, struct effects *out)
{
	const struct played_turn *t = &s->turn_played[s->played - 1];

	/* Short, because the next bow is near. */
	effect_say(out,
	    message_of(t->mark == MARK_CLEAN ? M_SESSION_MARKED_CLEAN
		    : t->mark == MARK_SHAKY  ? M_SESSION_MARKED_SHAKY
					     : M_SESSION_UNMARKED));
}

static void say_round_mark(const struct session *s, struct effects *out)
{
	char names[MESSAGE_TEXT_MAX / 2], name[UNIT_TEXT_MAX];
	struct text list = text_in(names, sizeof(names));
	int from = target(s);

	if (all_are(s, from, MARK_NONE)) {
		effect_say(out, message_of(M_SESSION_ROUND_UNMARKED));
		return;
	}
	if (all_are(s, from, MARK_CLEAN) || all_are(s, from, MARK_SHAKY)) {
		effect_say(out,
		    message_of(all_are(s, from, MARK_CLEAN)
			    ? M_SESSION_ROUND_CLEAN
			    : M_SESSION_ROUND_SHAKY));
		return;
	}
	for (int i = from; i < s->played; i++) {
		if (s->turn_played[i].mark != MARK_SHAKY)
			continue;
		say_unit(s, s->turn_played[i].unit, name);
		text_add(&list, list.length ? ", " : "");
		text_add(&list, name);
	}
	effect_say(out, message_with(M_SESSION_ROUND_SOME, TEXT(names)));
}

static bool open_for_marks(const struct session *s)
{
	if (s->played == 0)
		return false;
	if (s->now < s->late_until)
		return true;
	return s->phase == PHASE_CHANGE &&
	    (s->plan.marking == MARKING_TURN ||
		s->turn == s->at.passage.turns - 1);
}

bool marks_key(struct session *s, const struct input *in, struct effects *out)
{
	bool known = true;

	if (!open_for_marks(s))
		return false;
	if (in->key == KEY_FORWARD || in->key == KEY_BACK)
		mark_all(s, in,
		    in->key == KEY_FORWARD ? MARK_CLEAN : MARK_SHAKY, out);
	else if (in->key == KEY_DIGIT && s->plan.marking == MARKING_ROUND)
		known = mark_digit(s, in->digit, out);
	else
		return false;
	/* Over a bow nothing is said; the sound going on is the answer. */
	if (s->phase == PHASE_BOWS)
		return true;
	if (!known)
		effect_say(
		    out, message_with(M_SESSION_NO_SUCH, WHOLE(in->digit)));
	else if (s->plan.marking == MARKING_TURN ||
	    s->turn_played[s->played - 1].unit < 0)
		say_turn_mark(s, out);
	else
		say_round_mark(s, out);
	say_next_pulses(s, out);
	return true;
}
