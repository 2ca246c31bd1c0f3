/*
 * evidence.h - what rule F4 goes by, for the files that judge it
 */
#ifndef EVENHAND_COACH_EVIDENCE_H
#define EVENHAND_COACH_EVIDENCE_H

#include "evenhand/coach/standing.h"

/* The unit of a stage with this name, 0 in the air, -1 none. */
int standing_unit(const struct routine *r, int stage, const char *name);

/* A bit for each unit of a stage. */
uint32_t standing_everybody(const struct routine *r, int stage);

/* Lays over a first go what the teacher marked in lessons of a day. */
void first_go_lesson(
    struct first_go *g, const struct routine *r, int stage, int day);

/*
 * Adds the bows of a stage as the work of a practice day that were listened
 * to, and those of them in which every top was heard.
 */
void heard_on(const struct history *h, const struct routine *r, int stage,
    int day, int64_t *listened, int64_t *full);

#endif
