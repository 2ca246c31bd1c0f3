/*
 * session_pages.c - keys on pages, before, between and after the playing
 *
 * Two keys answer every page: forward takes what is offered, back is the other
 * answer or the next choice.  Silence, and digits where no finger can be
 * chosen, do nothing here.
 */
#include "session_parts.h"

#include <string.h>

#include "evenhand/base/text.h"

static void plan_anew(struct session *s, struct effects *out)
{
	plan_make(&s->plan, &s->wish);
	if (s->plan.verdict == VERDICT_PRACTISE && s->plan.blocks > 0)
		session_show(s, PAGE_TODAY, out);
	else
		session_show(s, PAGE_REST, out);
}

static void not_today(struct session *s, struct effects *out)
{
	effect_say(out, message_of(M_SESSION_NOT_TODAY));
	stop_over(s, out);
}

static void note(
    struct effects *out, enum note_kind kind, int finger, enum message_id words)
{
	struct note_row *n = &effect_add(out, EFFECT_NOTE)->note;

	n->kind = kind;
	n->finger = finger;
	/* In English: a journal, and what is given of it, goes to others. */
	if (words != M_NONE)
		text_clean(n->words, sizeof(n->words), message_english(words));
}

/* --- before the playing --- */

static void leave_out(struct session *s, int finger, struct effects *out)
{
	s->wish.hurt |= UINT32_C(1) << finger;
	note(out, NOTE_SKIN, finger, M_NONE);
	plan_anew(s, out);
}

static bool is_finger(int digit)
{
	return digit >= 1 && digit <= FINGERS_MAX;
}

static void take_where(struct session *s, struct effects *out)
{
	if (s->choice < FINGERS_MAX) {
		leave_out(s, s->choice + 1, out);
	} else if (s->choice == SORE_SLIP) {
		s->choice = 0;
		session_show(s, PAGE_SORE, out);
	} else if (s->choice == SORE_ELSEWHERE) {
		s->wish.air_only = true;
		note(out, NOTE_SORE, 0, M_SESSION_WORD_ELSEWHERE);
		effect_say(out, message_of(M_COACH_CAUTION_PAIN));
		plan_anew(s, out);
	} else {
		note(out, NOTE_SORE, 0, M_NONE);
		not_today(s, out);
	}
}

static void next_choice(struct session *s, int choices, struct effects *out)
{
	s->choice = (s->choice + 1) % choices;
	effect_say(out, session_choice(s));
}

static void key_sore(
    struct session *s, const struct input *in, struct effects *out)
{
	if (in->key == KEY_FORWARD) {
		session_show(s, PAGE_TODAY, out);
	} else if (in->key == KEY_BACK) {
		s->choice = 0;
		session_show(s, PAGE_WHERE, out);
	}
}

static void key_where(
    struct session *s, const struct input *in, struct effects *out)
{
	if (in->key == KEY_BACK) {
		next_choice(s, SORE_CHOICES, out);
	} else if (in->key == KEY_DIGIT && is_finger(in->digit)) {
		s->choice = in->digit - 1;
		take_where(s, out);
	} else if (in->key == KEY_FORWARD) {
		take_where(s, out);
	}
}

static void key_today(
    struct session *s, const struct input *in, struct effects *out)
{
	if (in->key == KEY_FORWARD)
		play_begin(s, out);
	else if (in->key == KEY_BACK)
		not_today(s, out);
	else if (in->key == KEY_DIGIT && is_finger(in->digit))
		leave_out(s, in->digit, out);
}

/* --- it hurts --- */

void page_hurt(struct session *s, struct effects *out)
{
	if (s->page == PAGE_PAIN_WHERE)
		return;
	s->slip_to = s->page;
	if (s->page == PAGE_PLAY) {
		stop_sound(s, out);
		s->slip_to = PAGE_SILENT;
	}
	s->choice = 0;
	session_show(s, PAGE_PAIN_WHERE, out);
}

static enum message_id pain_caution(int choice)
{
	if (choice == PAIN_NUMB)
		return M_COACH_CAUTION_NUMB;
	return is_finger(choice + 1) ? M_COACH_CAUTION_SKIN
				     : M_COACH_CAUTION_PAIN;
}

/* Nothing more today.  choice is -1 when it was not said where. */
static void it_hurts(struct session *s, int choice, struct effects *out)
{
	bool skin = is_finger(choice + 1);

	s->pain = true;
	note(out, NOTE_PAIN, skin ? choice + 1 : 0, say_pain_place(choice));
	effect_say(out, message_of(M_SESSION_STOP_NOW));
	effect_say(out, message_of(pain_caution(choice)));
	if (s->first_sound < 0)
		session_show(s, PAGE_REST, out);
	else if (s->end_kept)
		session_show(s, PAGE_END, out);
	else
		stop_finish(s, ENDED_PAIN, out);
}

static void key_pain_where(
    struct session *s, const struct input *in, struct effects *out)
{
	if (in->key == KEY_BACK) {
		next_choice(s, PAIN_CHOICES, out);
		return;
	}
	if (in->key == KEY_LEAVE) {
		it_hurts(s, -1, out);
		return;
	}
	if (in->key == KEY_DIGIT && is_finger(in->digit))
		s->choice = in->digit - 1;
	else if (in->key != KEY_FORWARD)
		return;
	if (s->choice != PAIN_SLIP) {
		it_hurts(s, s->choice, out);
		return;
	}
	s->choice = 0;
	session_show(s, s->slip_to, out);
}

/* --- between the playing --- */

static void key_silent(
    struct session *s, const struct input *in, struct effects *out)
{
	if (in->key == KEY_FORWARD)
		stop_go_on(s, out);
	else if (in->key == KEY_BACK)
		session_show(s, PAGE_PAIN, out);
}

static void key_pain(
    struct session *s, const struct input *in, struct effects *out)
{
	if (in->key == KEY_FORWARD)
		session_show(s, PAGE_LEAVE, out);
	else if (in->key == KEY_BACK)
		page_hurt(s, out);
}

static void key_leave(
    struct session *s, const struct input *in, struct effects *out)
{
	if (in->key == KEY_FORWARD)
		stop_go_on(s, out);
	else if (in->key == KEY_BACK || in->key == KEY_LEAVE)
		stop_finish(s, ENDED_EARLY, out);
}

/* --- after the playing --- */

static void key_end(
    struct session *s, const struct input *in, struct effects *out)
{
	if (in->key == KEY_FORWARD)
		session_show(s, PAGE_QUESTION, out);
	else if (in->key == KEY_BACK)
		session_show(s, PAGE_END, out);
}

static void key_question(
    struct session *s, const struct input *in, struct effects *out)
{
	if (in->key == KEY_FORWARD)
		stop_over(s, out);
	else if (in->key == KEY_BACK)
		session_show(s, PAGE_END, out);
}

static void key_rest(
    struct session *s, const struct input *in, struct effects *out)
{
	if (in->key == KEY_FORWARD || in->key == KEY_BACK)
		stop_over(s, out);
}

/* --- all pages --- */

/* q: to the page that asks, or away when nothing is left to lose. */
static void leave(struct session *s, struct effects *out)
{
	switch (s->page) {
	case PAGE_SORE:
	case PAGE_WHERE:
	case PAGE_TODAY:
		not_today(s, out);
		break;
	case PAGE_SILENT:
	case PAGE_PAIN:
		session_show(s, PAGE_LEAVE, out);
		break;
	default:
		stop_over(s, out);
		break;
	}
}

void page_key(struct session *s, const struct input *in, struct effects *out)
{
	static void (*const keys[])(
	    struct session *, const struct input *, struct effects *) = {
		[PAGE_SORE] = key_sore,
		[PAGE_WHERE] = key_where,
		[PAGE_REST] = key_rest,
		[PAGE_TODAY] = key_today,
		[PAGE_SILENT] = key_silent,
		[PAGE_PAIN] = key_pain,
		[PAGE_PAIN_WHERE] = key_pain_where,
		[PAGE_LEAVE] = key_leave,
		[PAGE_END] = key_end,
		[PAGE_QUESTION] = key_question,
	};

	if (in->key == KEY_LEAVE && s->page != PAGE_LEAVE &&
	    s->page != PAGE_PAIN_WHERE)
		leave(s, out);
	else
		keys[s->page](s, in, out);
}

void page_words(struct session *s, const char *words, struct effects *out)
{
	char raw[SESSION_WORDS_MAX];
	struct text line = text_in(raw, sizeof(raw));

	if (s->page != PAGE_QUESTION)
		return;
	words += strspn(words, " \t\r\n");
	/* A line's own end is no part of the question. */
	text_add_bytes(&line, words, strcspn(words, "\r\n"));
	if (line.length > 0) {
		struct note_row *n = &effect_add(out, EFFECT_NOTE)->note;

		n->kind = NOTE_QUESTION;
		text_clean(n->words, sizeof(n->words), raw);
		effect_say(out, message_of(M_SESSION_QUESTION_KEPT));
	}
	stop_over(s, out);
}

void page_alone(struct session *s, struct effects *out)
{
	switch (s->page) {
	case PAGE_PLAY:
		stop_sound(s, out);
		stop_finish(s, ENDED_NO_KEY, out);
		break;
	case PAGE_SILENT:
	case PAGE_PAIN:
	case PAGE_LEAVE:
		stop_finish(s, ENDED_NO_KEY, out);
		break;
	case PAGE_PAIN_WHERE:
		s->last_key = s->now;
		it_hurts(s, -1, out);
		break;
	default:
		if (s->first_sound < 0)
			effect_say(out, message_of(M_SESSION_ALONE));
		stop_over(s, out);
		break;
	}
}

void page_input_over(struct session *s, struct effects *out)
{
	switch (s->page) {
	case PAGE_PLAY:
		stop_sound(s, out);
		stop_finish(s, ENDED_INPUT, out);
		break;
	case PAGE_SILENT:
	case PAGE_PAIN:
	case PAGE_LEAVE:
		stop_finish(s, ENDED_INPUT, out);
		break;
	case PAGE_PAIN_WHERE:
		it_hurts(s, -1, out);
		break;
	default:
		break;
	}
	stop_over(s, out);
}
