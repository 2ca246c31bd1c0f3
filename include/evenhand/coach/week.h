/*
 * week.h - what the last seven practice days come to
 *
 * Facts for the teacher, counted from a history: today and the six days before
 * it.  Rows that a journal cannot mean count as nothing.
 *
 * Pure; any thread.
 */
#ifndef EVENHAND_COACH_WEEK_H
#define EVENHAND_COACH_WEEK_H

#include "evenhand/coach/history.h"
#include "evenhand/coach/standing.h"

enum { WEEK_DAYS = 7, RETURNS = 3, RETURNS_SHAKY = 2 };

struct week {
	int first; /* day number */
	int days;  /* with something played */
	int sessions;
	int64_t ms, ms_of[WEEK_DAYS], ms_most;
	int64_t bows[UNITS_MAX]; /* of all stages */
	int64_t resets, resets_of[UNITS_MAX];
	/* Bows a microphone listened to, and with every top. */
	int64_t bows_listened, bows_full;
	int whole, early, cut, pain; /* how sessions ended */
	int sore;		     /* notes of pain, skin, soreness */
	int sore_day;		     /* of the last one */
	const char *asks;	     /* the last question, NULL when none */

	/* First goes of the stage worked on. */
	int goes, goes_clean;
	bool gone[WEEK_DAYS];
	struct first_go go[WEEK_DAYS];
	int shaky[UNITS_MAX]; /* of how many of them */

	/* Bit s: an earlier stage, shaky in 2 of its last 3 returns. */
	uint32_t recap_shaky;
};

/* The week up to a practice day.  The question is borrowed of the history. */
void week_of(struct week *out, const struct routine *r, const struct history *h,
    int stage, int today);

#endif
