/*
 * record_good.c - whether what came out of a journal can go into a record
 *
 * The same bounds as those that reading holds a file to; a journal that was
 * damaged or whose clock was wrong may hold what is beyond them.
 */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/fingerprint.h"
#include "evenhand/base/text.h"
#include "evenhand/record/moment.h"
#include "reader.h"
#include "words.h"

static bool within(int64_t number, int64_t least, int64_t most)
{
	return number >= least && number <= most;
}

static bool row_good(const struct record *r, int computer, int64_t row)
{
	return within(computer, 0, r->computers - 1) &&
	    within(row, 1, r->computer[computer].rows) &&
	    row <= RECORD_ROW_MOST;
}

static bool day_good(int day, struct moment at)
{
	char date[DATE_TEXT_MAX];
	int again;

	if (!moment_can_be_told(at) || day < 0)
		return false;
	date_text(day, date);
	return date_parse(date, &again) && again == day &&
	    abs(day - moment_practice_day(at)) <= DAYS_APART_MOST;
}

static bool share_good(const struct record_share *s)
{
	return record_stage_good(s->stage, false) &&
	    record_unit_good(s->unit, false) &&
	    within(s->planned, 0, NUMBER_MOST) &&
	    within(s->dropped, 0, NUMBER_MOST);
}

bool record_share_before(const struct record_sitting *s, int at)
{
	for (int i = 0; i < at; i++)
		if (strcmp(s->share[i].stage, s->share[at].stage) == 0 &&
		    strcmp(s->share[i].unit, s->share[at].unit) == 0)
			return true;
	return false;
}

static bool turn_counts_good(const struct record_turn *t)
{
	return within(t->number, 0, NUMBER_MOST) &&
	    within(t->round, 0, NUMBER_MOST) &&
	    within(t->pulses, 0, PULSES_MAX) &&
	    within(t->bows_asked, 0, RECORD_BOWS_MOST) &&
	    within(t->bows_done, 0, RECORD_BOWS_MOST) &&
	    within(t->resets, 0, NUMBER_MOST) &&
	    within(t->dropouts, 0, MS_MOST) &&
	    within(t->start_ms, 0, MS_MOST) &&
	    within(t->slide_um, 0, SLIDE_MOST) &&
	    within(t->mark_ms, 0, MS_MOST);
}

/* A mark comes after its turn; before it was none at all. */
static bool mark_good(const struct record *r, const struct record_sitting *s,
    const struct record_turn *t)
{
	if (t->mark_row == 0)
		return t->mark == MARK_NONE && t->mark_ms == 0;
	return t->mark_row > t->row && row_good(r, s->computer, t->mark_row);
}

static bool turn_good(const struct record *r, const struct record_sitting *s,
    const struct record_turn *t)
{
	return turn_counts_good(t) && record_stage_good(t->stage, false) &&
	    record_unit_good(t->unit, true) &&
	    within(t->kind, BLOCK_AIR, BLOCK_WORK) &&
	    within(t->mark, MARK_NONE, MARK_SHAKY) &&
	    within(t->ended.utc, s->began.utc - SECONDS_MOST,
		s->began.utc + SECONDS_MOST) &&
	    within(t->ended.offset, -OFFSET_MOST, OFFSET_MOST) &&
	    row_good(r, s->computer, t->row) && mark_good(r, s, t) &&
	    (t == s->turn || t[-1].number < t->number);
}

const struct record_turn *record_turn_numbered(
    const struct record_sitting *s, int number)
{
	for (int i = 0; i < s->turns; i++)
		if (s->turn[i].number == number)
			return &s->turn[i];
	return NULL;
}

bool record_measure_behind(
    const struct record_sitting *s, const struct record_measure *m)
{
	return m == s->measure || m[-1].turn < m->turn ||
	    (m[-1].turn == m->turn && m[-1].method < m->method);
}

static bool measure_good(const struct record *r, const struct record_sitting *s,
    const struct record_measure *m)
{
	const struct record_turn *t = record_turn_numbered(s, m->turn);

	for (int i = 0; i < m->values; i++)
		if (!record_measure_name_good(m->value[i].name) ||
		    (i > 0 &&
			strcmp(m->value[i - 1].name, m->value[i].name) >= 0) ||
		    !(fabs(m->value[i].value) < RECORD_REAL_MOST))
			return false;
	/* The numbers of rows rise: what is told of a turn is told after it. */
	return t != NULL && t->row < m->row && record_measure_behind(s, m) &&
	    within(m->turn, 0, NUMBER_MOST) &&
	    within(m->method, 1, NUMBER_MOST) &&
	    row_good(r, s->computer, m->row);
}

static bool parts_good(const struct record *r, const struct record_sitting *s)
{
	if (s->shares > RECORD_SHARES_MAX ||
	    s->turns > RECORD_SITTING_TURNS_MAX ||
	    s->measures > RECORD_SITTING_TURNS_MAX)
		return false;
	for (int i = 0; i < s->shares; i++)
		if (!share_good(&s->share[i]) || record_share_before(s, i))
			return false;
	for (int i = 0; i < s->turns; i++)
		if (!turn_good(r, s, &s->turn[i]))
			return false;
	for (int i = 0; i < s->measures; i++)
		if (!measure_good(r, s, &s->measure[i]))
			return false;
	return true;
}

static bool end_good(const struct record *r, const struct record_sitting *s)
{
	if (s->how == ENDED_UNDER_WAY)
		return s->ended_row == 0;
	return within(s->how, ENDED_WHOLE, ENDED_NOT_TODAY) &&
	    moment_can_be_told(s->ended) &&
	    row_good(r, s->computer, s->ended_row);
}

bool record_sitting_good(const struct record *r, const struct record_sitting *s)
{
	return row_good(r, s->computer, s->row) && day_good(s->day, s->began) &&
	    s->routine != NULL && record_routine_good(s->routine) &&
	    record_stage_good(s->work_stage, true) &&
	    record_stage_good(s->asked_stage, true) &&
	    record_instrument_known(s->instrument) &&
	    within(s->marking, MARKING_TURN, MARKING_ROUND) &&
	    within(s->cap_ms, 0, MS_MOST) &&
	    within(s->planned_ms, 0, MS_MOST) &&
	    within(s->length_ms, 0, MS_MOST) && end_good(r, s) &&
	    parts_good(r, s);
}

bool record_note_good(const struct record *r, const struct record_note *n)
{
	return row_good(r, n->computer, n->row) && day_good(n->day, n->at) &&
	    within(n->kind, NOTE_PAIN, NOTE_LATER) &&
	    within(n->finger, 0, FINGERS_MAX) &&
	    strlen(n->words) < RECORD_WORDS_MAX &&
	    record_text_clean(n->words, false);
}

bool record_routine_good(const struct record_routine *m)
{
	size_t length = strlen(m->text);

	return length < RECORD_ROUTINE_MAX &&
	    strlen(m->name) < RECORD_TITLE_MAX &&
	    within(m->edition, 0, RECORD_EDITION_MOST) &&
	    record_text_clean(m->name, false) &&
	    record_text_clean(m->text, true) &&
	    fingerprint_add(FINGERPRINT_START, m->text, length) ==
	    m->fingerprint;
}
