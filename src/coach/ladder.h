/*
 * ladder.h - steps of a routine's ladder of pulses
 */
#ifndef EVENHAND_COACH_LADDER_H
#define EVENHAND_COACH_LADDER_H

#include "evenhand/routine/routine.h"

/* The highest rung that is no higher than pulses, else the lowest. */
int rung_fit(const struct routine *r, int pulses);

/* The rung below pulses, or the lowest. */
int rung_lower(const struct routine *r, int pulses);

/* The rung above pulses, or the highest. */
int rung_higher(const struct routine *r, int pulses);

#endif
