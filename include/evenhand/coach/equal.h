/*
 * equal.h - equal work for all fingers from a biased past (rule F1)
 *
 * n_f starts at ceil(0.5 N/F); each spare turn goes to the smallest ledger +
 * n_f (tie: the lower finger), never above floor(1.5 N/F).  Play order: the
 * first F turns take each finger once, neediest first; then at step t the
 * finger, not the last one, with the largest t n_f/N - c_f (ties: larger n_f,
 * smaller ledger, lower finger).  With two units they alternate.
 *
 *	ledger 58 27 10 5, 12 turns:  2 2 4 4 in order 4 3 2 1 4 3 4 3 2 1 4 3
 *
 * Whole numbers only.  Pure.  Any thread.
 */
#ifndef EVENHAND_COACH_EQUAL_H
#define EVENHAND_COACH_EQUAL_H

#include "evenhand/routine/routine.h"

enum { EQUAL_TURNS_MAX = 256 };

/*
 * How many of so many turns each unit gets.  turns is a multiple of units,
 * at most EQUAL_TURNS_MAX; ledger and share hold one entry per unit.
 */
void equal_share(int turns, int units, const int *ledger, int *share);

/* The order of play, turns entries of unit indices, for shares as above. */
void equal_order(
    int turns, int units, const int *ledger, const int *share, int *order);

#endif
