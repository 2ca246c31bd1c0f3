/*
 * gather.h - a record merged into a journal
 *
 *	journal ∪ record ─▶ journal
 *
 * A sitting, turn or note is known by its computer's random name and its
 * number there, so merging is the union of sets: twice is once, and neither
 * order nor grouping matters.  Where two rows of one number are not the same
 * (a copied home folder, an edited record), sittings and notes are told apart
 * by their content and both are kept; of two turns, marks or ends of one number
 * the one that is greater by its content stays.  Both are counted in the news.
 *
 * The ids of a student are such a set, too, and once they came together they
 * are known.
 *
 * One transaction a record: whoever looks finds the journal as it was or with
 * all of it.  Afterwards keys rise with time over all computers, and the
 * roll-ups are those of the turns.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_GATHER_H
#define EVENHAND_WORLD_GATHER_H

#include <stdbool.h>

#include "evenhand/base/fault.h"
#include "evenhand/record/join.h"
#include "evenhand/record/record.h"

/* Whose journal it goes into. */
enum gather_who {
	GATHER_OWN,   /* the player's: another student's record is refused
			 (record/join.h), an empty journal becomes that of
			 the record */
	GATHER_CLASS, /* the same, for one of a class: no lock of a player */
};

/* What is merged. */
struct gather_what {
	const struct record *record;
	enum gather_who into;
	struct join_asked asked; /* what was said to be one student */
};

/* What it brought. */
struct gathered {
	int sittings_new, sittings_more, sittings_known;
	int turns_new;
	int notes_new, notes_known;
	int joined;    /* ids that are this student's from now on */
	int apart;     /* sittings and notes told apart by their content */
	int different; /* turns, marks, ends, measures: the greater one stays */
};

/*
 * Merges a record into the journal at a path, which is made when it is missing
 * (0600, its folder 0700).  False with a fault and an untouched journal: another
 * evenhand has it open, another student's, damaged, full, newer.
 */
bool gather_into(const char *journal, const struct gather_what *what,
    struct gathered *news, struct fault *f);

#endif
