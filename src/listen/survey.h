/*
 * survey.h - a first look at a recording: which notes, roughly, and when
 *
 * Every 20 ms the periods at which the sound is alike are noted; a path through
 * them is chosen when a stretch is whole.  A sound that has a period has twice
 * and three times that period as well, and nearly half of it when its odd
 * partials are weak.  Over a stretch the shortest that explains it wins, and a
 * leap costs more than any single instant can gain by it (Viterbi, "Error
 * bounds for convolutional codes", IEEE Trans. Inf. Theory 13, 1967).
 *
 * Pure; memory from an arena once.  One thread at a time.
 */
#ifndef LISTEN_SURVEY_H
#define LISTEN_SURVEY_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/heard.h"

enum {
	SURVEY_STEP = 4, /* instants from look to look */
	SURVEY_FOUND = 6,
	SURVEY_TAKE_MAX = 8192,
	SURVEY_LOOKS_MAX = 32, /* of one take: a rate of 16000 or more */
};

#define SURVEY_STEP_S (SURVEY_STEP * HEARD_STEP_S)

struct look {
	float level_db;
	int found;
	float hz[SURVEY_FOUND], likeness[SURVEY_FOUND];
	float note_hz; /* what survey_path chose; 0: no note */
};

struct survey;

/* For notes from low to high; NULL when memory is short. */
struct survey *survey_new(
    struct arena *a, double rate, double low_hz, double high_hz);

/* Takes n samples, SURVEY_TAKE_MAX at most; the number of looks written. */
size_t survey_take(
    struct survey *s, const float *x, size_t n, struct look *out);

/*
 * Silence behind the end: the looks that were still missing, up to `count` of
 * the whole recording and SURVEY_LOOKS_MAX now.
 */
size_t survey_end(struct survey *s, struct look *out, size_t count);

/* Chooses the notes of looks 0..n-1.  False when memory is short. */
bool survey_path(struct arena *a, struct look *look, size_t n);

/* Whether anything clear sounded, against the loudest of its stretch. */
bool survey_sounds(const struct look *l, double loudest_db);

#endif
