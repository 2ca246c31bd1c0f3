/*
 * terms.h - some months of made-up practice, for tests of days and charts
 *
 * From Monday 2 March 2026 on: a stage every two weeks, six days a week, two
 * sessions on Mondays, one day with pain, and ten days away in May.
 */
#ifndef EVENHAND_TESTS_TERMS_H
#define EVENHAND_TESTS_TERMS_H

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>

#include "evenhand/coach/history.h"

enum {
	TERM_DAY = 20514, /* 2026-03-02, a Monday */
	TERM_WEEKS = 12,
	TERM_SITTINGS = 4000,
	TERM_TALLIES = 40000,
	TERM_NOTES = 20,
};

static const char *const term_stages[] = { "air", "wide", "thirds", "tone",
	"semitone", "letting-go" };

struct term {
	struct history h;
	struct past_sitting sitting[TERM_SITTINGS];
	struct tally tally[TERM_TALLIES];
	struct past_note note[TERM_NOTES];
};

static inline struct term *term_new(void)
{
	struct term *t = calloc(1, sizeof(*t));

	assert(t);
	t->h.sitting = t->sitting;
	t->h.tally = t->tally;
	t->h.note = t->note;
	return t;
}

static inline void term_sit(struct term *t, int day, int ms)
{
	assert(t->h.sittings < TERM_SITTINGS);
	t->sitting[t->h.sittings] = (struct past_sitting) {
		.key = t->h.sittings + 1,
		.day = day,
		.length_ms = ms,
		.blocks = 1
	};
	t->h.sittings++;
}

static inline struct tally *term_tally(struct term *t, int day,
    const char *stage, const char *unit, enum block_kind kind, int bows)
{
	struct tally *y = &t->tally[t->h.tallies++];

	assert(t->h.tallies <= TERM_TALLIES);
	y->day = day;
	y->kind = kind;
	snprintf(y->stage, sizeof(y->stage), "%s", stage);
	snprintf(y->unit, sizeof(y->unit), "%s", unit);
	y->turns = bows / 2;
	y->bows = bows;
	return y;
}

static inline void term_note(
    struct term *t, int day, enum note_kind kind, const char *words)
{
	assert(t->h.notes < TERM_NOTES);
	t->note[t->h.notes++] = (struct past_note) {
		.day = day, .kind = kind, .words = words
	};
}

/* A stage with its four fingers; the marks go through all there are. */
static inline void term_stage(
    struct term *t, int day, int stage, enum block_kind kind, int bows)
{
	static const char *const units[] = { "1", "2", "3", "4" };

	for (int u = 0; u < 4; u++) {
		struct tally *y = term_tally(
		    t, day, term_stages[stage], units[u], kind, bows);

		y->pulses = bows * 6;
		y->slide_um = (int64_t)bows * (300000 - 40000 * stage) *
		    (100 - 6 * u) / 100;
		y->first_go_pulses = 4 + day % 3 * 2;
		y->first_go = (day + stage * 2 + u * 3) % 7 == 0 ? MARK_NONE
		    : (day * 3 + u) % 5 == 0			 ? MARK_SHAKY
								 : MARK_CLEAN;
		y->clean = bows / 2 - 1;
		y->shaky = 1;
	}
}

static inline void term_day(struct term *t, int day, int week)
{
	int work = week / 2;
	struct tally *air = term_tally(t, day, "air", "", BLOCK_AIR, 0);

	air->turns = 1;
	air->first_go = MARK_CLEAN;
	term_sit(t, day, 292000 - week * 1000 - day % 7 * 9000);
	if (day % 7 == TERM_DAY % 7)
		term_sit(t, day, 276000);
	for (int stage = work - 2; stage < work; stage++)
		if (stage > 0)
			term_stage(t, day, stage, BLOCK_RECAP, 2);
	if (work > 0)
		term_stage(t, day, work, BLOCK_WORK, 6);
}

/* Twelve weeks, Sundays free, without the days of 4 to 13 May. */
static inline struct term *term_made(void)
{
	struct term *t = term_new();

	for (int n = 0; n < TERM_WEEKS * 7; n++)
		if (n % 7 != 6 && (n < 63 || n > 72))
			term_day(t, TERM_DAY + n, n / 7);
	term_note(t, TERM_DAY + 31, NOTE_PAIN, "the wrist");
	term_note(t, TERM_DAY + 40, NOTE_QUESTION, "Why does it shake?");
	return t;
}

#endif
