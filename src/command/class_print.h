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

/* sheet.c: puts a list of so many pages into its file and says so. */
int sheet_put(
    const struct paper_target *to, const char *list, size_t length, int pages);

#endif
