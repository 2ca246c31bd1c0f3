/*
 * class_print.h - `evenhand print class`: the lesson sheets of all students
 */
#ifndef EVENHAND_COMMAND_CLASS_PRINT_H
#define EVENHAND_COMMAND_CLASS_PRINT_H

#include <stdbool.h>

#include "evenhand/base/date.h"
#include "evenhand/paper/sheet.h"
#include "evenhand/world/paper_maker.h"

struct class_print {
	const char *folder; /* NULL: none was named */
	struct paper_target to;
	enum sheet_size size;
	struct moment now;
	bool large;
};

/* Prints them; the exit status. */
int class_print(const struct class_print *ask);

/* --- sheet.c: a document on its way; what goes wrong is said --- */

/* False: it cannot be made, *status is set. */
bool sheet_begin(
    struct paper_maker *m, const struct paper_target *to, int *status);

/* Puts so many pages in their place and says so; the exit status. */
int sheet_end(struct paper_maker *m, int pages);

#endif
