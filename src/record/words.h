/*
 * words.h - the words of the file for numbers of ours
 *
 * Lists in the order of the numbers, ended by NULL; those of notes begin with
 * NOTE_PAIN.
 */
#ifndef EVENHAND_RECORD_WORDS_H
#define EVENHAND_RECORD_WORDS_H

#include <stdbool.h>
#include <string.h>

#include "evenhand/coach/history.h"
#include "evenhand/coach/plan.h"

extern const char *const record_blocks[],
    *const record_marks[], *const record_hows[], *const record_kinds[],
						     *const record_markings[];

/* Whether it is an instrument we know, or "". */
bool record_instrument_known(const char *name);

#endif
