/*
 * fuzz_list.c - random bytes as the list that evenhand-paper draws
 *
 * A list that is opened is drawn without another look, so all that is in it
 * must be within bounds: as many pages as were counted, numbers that are
 * numbers, paths that come to their end.
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/paper/list.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(bool good, const char *what)
{
	if (good)
		return;
	fprintf(stderr, "%s\n", what);
	abort();
}

static void in_bounds(double mm)
{
	must(isfinite(mm) && fabs(mm) <= LIST_MM_MAX, "a number out of bounds");
}

static void path_holds(const char *path)
{
	struct list_step step;
	const char *before = path;

	while (list_step(&path, &step)) {
		must(path > before, "a path that stands still");
		must(step.kind && strchr("MLCZ", step.kind), "an unknown step");
		for (int i = 0; i < 3 && step.kind != 'Z'; i++) {
			if (i > 0 && step.kind != 'C')
				break;
			in_bounds(step.x[i]);
			in_bounds(step.y[i]);
		}
		before = path;
	}
	must(*path == '\0', "a path that does not end");
}

static void item_holds(const struct paper_item *i)
{
	in_bounds(i->x);
	in_bounds(i->y);
	in_bounds(i->to_x);
	in_bounds(i->to_y);
	in_bounds(i->wide);
	in_bounds(i->high);
	in_bounds(i->pen);
	in_bounds(i->size);
	must(i->pen >= 0 && i->wide >= 0 && i->high >= 0, "less than nothing");
	must(i->ink >= 0 && i->ink <= INK_FULL, "ink");
	must(abs(i->turned) <= 360, "turned");
	if (i->kind == PAPER_SHAPE)
		path_holds(i->text);
}

/* The lines behind the first one, as they are drawn; how many pages. */
static int lines_hold(const char *list, const char *end)
{
	struct paper_item item;
	enum list_line what = LIST_ITEM;
	int pages = 0;

	for (const char *at = list + strlen(list) + 1; what != LIST_END;
	     at += strlen(at) + 1) {
		must(at < end, "a list without an end");
		what = list_read(at, &item);
		must(what != LIST_BAD, "a bad line in a good list");
		if (what != LIST_ITEM)
			continue;
		item_holds(&item);
		pages += item.kind == PAPER_PAGE;
		must(pages > 0, "something before the first page");
	}
	return pages;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	/* A copy of its own, so that a byte read behind the end is seen. */
	char *list = malloc(size > 0 ? size : 1);
	struct list_pages pages;

	if (!list)
		return 0;
	if (size > 0)
		memcpy(list, data, size);
	if (list_open(list, size, &pages))
		must(lines_hold(list, list + size) == pages.pages,
		    "another number of pages");
	free(list);
	return 0;
}
