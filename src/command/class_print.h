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
	const char *path;   /* of the file to write */
	enum paper_format format;
	enum sheet_size size;
	struct moment now;
	bool large, force;
};

/* Prints them; the exit status. */
int class_print(const struct class_print *ask);

#endif
