/* sheet.h - routine files made in a test, and what becomes of them */
#ifndef SHEET_H
#define SHEET_H

#include <string.h>

#include "evenhand/routine/read.h"
#include "evenhand/world/yaml.h"

/* The smallest good routine: the beginning and the end of many tests. */
#define NAME "routine: Short\n"
#define AIR "  - id: air\n    place: in the air\n"
#define WIDE "  - id: wide\n    place: string D\n    shift: first to fourth\n"
#define STAGES "stages:\n" AIR WIDE

struct sheet {
	struct source source;
	struct arena arena;
};

/* False when the text has slips or is no tree. */
static inline bool sheet_parse(struct sheet *s, const char *path,
    const char *bytes, size_t length, struct faults *faults)
{
	*s = (struct sheet) { .source = { path, bytes, length, NULL } };
	if (!slips_find(&s->source, faults))
		return false;
	s->source.root = yaml_parse(path, bytes, length, &s->arena, faults);
	return s->source.root != NULL;
}

/* The routine of two texts, homework NULL when there is none. */
static inline struct routine *sheet_routine_bytes(const char *text,
    size_t length, const char *homework, struct faults *faults)
{
	struct sheet a, b = { .arena = { NULL, 0 } };
	struct routine *r = NULL;

	faults->count = faults->left_out = 0;
	if (sheet_parse(&a, "routine.yaml", text, length, faults) &&
	    (homework == NULL ||
		sheet_parse(
		    &b, "wren.yaml", homework, strlen(homework), faults)))
		r = routine_read(
		    &a.source, homework ? &b.source : NULL, faults);
	arena_done(&a.arena);
	arena_done(&b.arena);
	return r;
}

static inline struct routine *sheet_routine(
    const char *text, const char *homework, struct faults *faults)
{
	return sheet_routine_bytes(text, strlen(text), homework, faults);
}

#endif
