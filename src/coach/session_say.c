/*
 * session_say.c - what is said in the lead-ins and changes
 *
 * One event, one line, and none over a bow: who comes next is said as the
 * change begins, a stage and its cue as the stillness before it begins.  Said
 * aloud at 17 letters a second (about 180 words a minute) they are over before
 * the next pulse, so they are short; what needs more time is told on the pages.
 */
#include "session_parts.h"

#include "evenhand/base/text.h"

struct message session_unit(const struct session *s, int unit)
{
	const struct routine *r = s->wish.routine;

	if (unit < 0)
		return message_of(M_NONE);
	if (r->take == TAKE_PAIRS)
		return message_with(M_SESSION_PAIR, TEXT(r->unit[unit].name));
	if (r->take == TAKE_STRINGS)
		return message_with(
		    M_SESSION_STRINGS, TEXT(r->unit[unit].name));
	return message_with(M_SESSION_FINGER, TEXT(r->unit[unit].name));
}

void say_unit(const struct session *s, int unit, char *buffer)
{
	struct message m = session_unit(s, unit);

	buffer[0] = '\0';
	if (m.id != M_NONE)
		message_text(&m, buffer, UNIT_TEXT_MAX);
}

void say_place(const struct session *s, struct place at, char *buffer)
{
	struct message m = session_unit(s, pass_turn(&s->plan, at)->unit);

	if (m.id == M_NONE)
		m = message_of(M_SESSION_SWING);
	message_text(&m, buffer, UNIT_TEXT_MAX);
}

struct message session_digits(const struct session *s, enum message_id id)
{
	const struct routine *r = s->wish.routine;
	char list[MESSAGE_TEXT_MAX], one[UNIT_TEXT_MAX];
	struct text t = text_in(list, sizeof(list));

	if (r->take == TAKE_FINGERS)
		return message_of(M_NONE);
	for (int u = 0; u < r->units; u++) {
		struct message m = message_with(
		    M_SESSION_DIGIT, WHOLE(u + 1), TEXT(r->unit[u].name));

		message_text(&m, one, sizeof(one));
		text_add(&t, u > 0 ? ", " : "");
		text_add(&t, one);
	}
	return message_with(id, TEXT(list));
}

struct message session_staying(const struct session *s)
{
	char name[UNIT_TEXT_MAX];

	if (s->stay.block == s->plan.blocks)
		return message_of(M_PAGE_SILENT_END);
	say_place(s, s->stay, name);
	return message_with(
	    s->again ? M_PAGE_SILENT_AGAIN : M_PAGE_SILENT_ON, TEXT(name));
}

static struct message block_line(
    const struct stage *stage, enum block_kind kind, int pulses)
{
	if (kind == BLOCK_AIR || pulses == 0)
		return message_with(M_SESSION_LEAD_AIR, TEXT(stage->title));
	return message_with(
	    kind == BLOCK_RECAP ? M_SESSION_LEAD_RECAP : M_SESSION_LEAD_WORK,
	    TEXT(stage->title), WHOLE(pulses));
}

/* The cue and who is first; what was heard may need the room of the cue. */
static struct message cue_line(const struct session *s,
    const struct message *block, const char *cue, const char *first)
{
	struct message alone = message_with(M_SESSION_FIRST, TEXT(first));
	struct message both = message_with(
	    M_SESSION_CUE_FIRST, TEXT(cue), TEXT(first));
	int before = talk_letters(block);

	if (*first == '\0')
		return *cue ? message_with(M_SESSION_CUE, TEXT(cue))
			    : message_of(M_NONE);
	if (*cue == '\0' ||
	    heard_needs(
		s, before + talk_letters(&both), before + talk_letters(&alone)))
		return alone;
	return both;
}

void say_lead(const struct session *s, struct effects *out)
{
	const struct plan_block *b = &s->plan.block[s->at.from.block];
	const struct stage *stage = &s->wish.routine->stage[b->stage];
	struct message block = block_line(stage, b->kind, s->at.pulses);
	char first[UNIT_TEXT_MAX];

	say_unit(s, pass_turn(&s->plan, s->at.from)->unit, first);
	effect_say(out, block);
	effect_say(out, cue_line(s, &block, stage->cue, first));
}

/*
 * Who comes after the turn that has just ended: empty when a lead-in will
 * tell, or nothing comes.
 */
static void next_unit(const struct session *s, char *buffer)
{
	struct place next = play_place(s);
	bool last = s->turn == s->at.passage.turns - 1;

	buffer[0] = '\0';
	if (last && s->at.passage.coming == 0)
		return;
	say_unit(s, pass_turn(&s->plan, next)->unit, buffer);
}

/* The rung of the next round, when it is not as it was last said. */
void say_next_pulses(struct session *s, struct effects *out)
{
	int pulses = rung_next(s);

	if (s->phase != PHASE_CHANGE || s->next_decided ||
	    s->at.passage.coming == 0 || s->turn < s->at.passage.turns - 1 ||
	    pulses == s->told_pulses)
		return;
	s->told_pulses = pulses;
	effect_say(out, message_with(M_SESSION_NEXT_PULSES, WHOLE(pulses)));
}

/* Whether this is a change in which the student marks. */
static bool for_marks(const struct session *s)
{
	return s->phase == PHASE_CHANGE &&
	    (s->plan.marking == MARKING_TURN ||
		s->turn == s->at.passage.turns - 1);
}

/*
 * What is said when nobody has pressed a key for long, once.  Where marks are
 * silences a digit is asked for, unless marks come before it ends by itself.
 */
static enum message_id still_there(const struct session *s)
{
	const struct passage *p = &s->at.passage;
	int64_t marks = s->at.frame +
	    session_frames(s, passage_bows_end_ms(p, p->turns - 1));

	if (s->asked || s->now - s->last_key < session_frames(s, STILL_MS))
		return M_NONE;
	if (for_marks(s))
		return M_SESSION_STILL_THERE;
	return marks < s->last_key + session_frames(s, NO_KEY_MS)
	    ? M_NONE
	    : M_SESSION_STILL_THERE_DIGIT;
}

/* In place of the question; and of who comes, for those who only listen. */
static void say_still_there(
    struct session *s, enum message_id words, struct effects *out)
{
	char next[UNIT_TEXT_MAX];

	s->asked = true;
	next_unit(s, next);
	effect_say(out, message_of(words));
	if (next[0])
		effect_say(out, message_with(M_SESSION_NEXT, TEXT(next)));
}

static void say_back(struct session *s, struct effects *out)
{
	if (s->back_owed)
		effect_say(out, message_of(M_SESSION_SOUND_AGAIN));
	s->back_owed = false;
}

void say_change(struct session *s, struct effects *out)
{
	bool last = s->turn == s->at.passage.turns - 1;
	/* A swing is a round of its own. */
	bool each = s->plan.marking == MARKING_TURN ||
	    s->turn_played[s->played - 1].unit < 0;
	enum message_id still = still_there(s);
	char next[UNIT_TEXT_MAX];

	if (still != M_NONE) {
		say_still_there(s, still, out);
		say_next_pulses(s, out);
		return;
	}
	next_unit(s, next);
	if (!each && !last)
		effect_say(out, message_with(M_SESSION_NEXT, TEXT(next)));
	else if (next[0])
		effect_say(out,
		    message_with(each ? M_SESSION_MARK_TURN_NEXT
				      : M_SESSION_MARK_ROUND_NEXT,
			TEXT(next)));
	else
		effect_say(out,
		    message_of(
			each ? M_SESSION_MARK_TURN : M_SESSION_MARK_ROUND));
	say_back(s, out);
	say_next_pulses(s, out);
}

/* --- help --- */

enum { HELP_MS = 3500 }; /* what saying the keys of a change may take */

/* Frames of stillness that are left before a bow or a count-in. */
static int64_t stillness(const struct session *s)
{
	const struct passage *p = &s->at.passage;
	int64_t end = passage_ms(p);

	if (s->phase == PHASE_BOWS)
		return 0;
	if (s->phase == PHASE_LEAD)
		end = p->settle_ms;
	else if (s->turn < p->turns - 1)
		end = passage_turn_ms(p, s->turn + 1);
	return s->at.frame + session_frames(s, end) - s->now;
}

void say_help(struct session *s, struct effects *out)
{
	bool still = s->page != PAGE_PLAY ||
	    ((for_marks(s) || s->phase == PHASE_LEAD) &&
		stillness(s) >= session_frames(s, HELP_MS));

	if (still)
		effect_say(out, session_help(s));
	else
		s->help_owed = true;
}

void say_owed(struct session *s, struct effects *out)
{
	if (!s->help_owed || !for_marks(s))
		return;
	effect_say(out, session_help(s));
	s->help_owed = false;
}

static enum message_id page_help(const struct session *s)
{
	switch (s->page) {
	case PAGE_SORE:
		return M_SESSION_HELP_SORE;
	case PAGE_WHERE:
	case PAGE_PAIN_WHERE:
		return M_SESSION_HELP_WHERE;
	case PAGE_TODAY:
		return M_SESSION_HELP_TODAY;
	case PAGE_PLAY:
		return s->plan.marking == MARKING_TURN
		    ? M_SESSION_HELP_PLAY_TURN
		    : M_SESSION_HELP_PLAY_ROUND;
	case PAGE_SILENT:
		return M_SESSION_HELP_SILENT;
	case PAGE_PAIN:
		return M_SESSION_HELP_PAIN;
	case PAGE_LEAVE:
		return M_SESSION_HELP_LEAVE;
	case PAGE_END:
		return M_SESSION_HELP_END;
	case PAGE_QUESTION:
		return M_SESSION_HELP_QUESTION;
	case PAGE_REST:
		return M_SESSION_HELP_REST;
	case PAGE_OVER:
		break;
	}
	return M_NONE;
}

struct message session_help(const struct session *s)
{
	struct message digits = session_digits(s, M_SESSION_HELP_PLAY_DIGITS);

	if (s->page == PAGE_PLAY && s->plan.marking == MARKING_ROUND &&
	    digits.id != M_NONE)
		return digits;
	return message_of(page_help(s));
}

enum message_id say_pain_place(int choice)
{
	static const enum message_id place[PAIN_CHOICES] = {
		[PAIN_THUMB] = M_SESSION_WORD_THUMB,
		[PAIN_HAND] = M_SESSION_WORD_HAND,
		[PAIN_WRIST] = M_SESSION_WORD_WRIST,
		[PAIN_ARM] = M_SESSION_WORD_ARM,
		[PAIN_SHOULDER] = M_SESSION_WORD_SHOULDER,
		[PAIN_NECK] = M_SESSION_WORD_NECK,
		[PAIN_NUMB] = M_SESSION_WORD_NUMB,
		[PAIN_ELSEWHERE] = M_SESSION_WORD_ELSEWHERE,
	};

	return choice < 0 ? M_NONE : place[choice];
}

static enum message_id sore_choice(int choice)
{
	if (choice == SORE_SLIP)
		return M_SESSION_CHOICE_NOT_SORE;
	return choice == SORE_ELSEWHERE ? M_SESSION_CHOICE_AIR
					: M_SESSION_CHOICE_NOT_TODAY;
}

struct message session_choice(const struct session *s)
{
	if (s->choice < FINGERS_MAX)
		return message_with(
		    M_SESSION_CHOICE_SKIN, WHOLE(s->choice + 1));
	if (s->page == PAGE_WHERE)
		return message_of(sore_choice(s->choice));
	if (s->choice == PAIN_SLIP)
		return message_of(M_SESSION_CHOICE_SLIP);
	return message_with(
	    M_SESSION_CHOICE_PLACE, WORD(say_pain_place(s->choice)));
}
