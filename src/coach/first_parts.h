/*
 * first_parts.h - what the files of the first minutes share
 *
 *	first.c		from part to part, by keys
 *	first_play.c	one turn of one finger, played by the session
 */
#ifndef EVENHAND_COACH_FIRST_PARTS_H
#define EVENHAND_COACH_FIRST_PARTS_H

#include "evenhand/coach/first.h"

/* --- first.c --- */
void first_show(struct first *f, enum first_part part, struct effects *out);

/* --- first_play.c --- */

/* A session on the small plan that has not begun, with its clock right. */
void first_prepare(struct first *f, enum first_part part);

/* Begins HEAR or TRY. */
void first_play(struct first *f, enum first_part part, struct effects *out);

/* Gives the session an input; what came of it, and where that leads. */
void first_pass(struct first *f, const struct input *in, struct effects *out);

/* Silences what sounds, if it does. */
void first_hush(struct first *f, struct effects *out);

#endif
