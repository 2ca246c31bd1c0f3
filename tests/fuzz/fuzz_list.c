/*
 * fuzz_list.c - random bytes as the list that evenhand-paper draws
 *
 * A line that is taken is drawn without another look, so all that is in it must
 * be within bounds and in its place: numbers that are numbers, paths that come
 * to their end, nothing before the first page or behind the end.
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

/* A line that was read, as it is drawn. */
static void line_holds(enum list_line what, const struct list_look *look,
    const struct paper_item *item)
{
	must(look->begun, "a line before the first");
	if (what != LIST_ITEM)
		return;
	item_holds(item);
	must(look->pages > 0, "something before the first page");
}

/* All lines of a list, as evenhand-paper takes them. */
static void lines_hold(char *list, size_t size)
{
	struct list_look look = { 0 };
	struct paper_item item;
	char *at = list, *end;

	while ((end = memchr(at, '\n', size - (size_t)(at - list)))) {
		bool ended = look.ended;
		enum list_line what;

		*end = '\0';
		what = list_next(&look, at, (size_t)(end - at), &item);
		if (what == LIST_BAD)
			return;
		must(!ended, "a line behind the end");
		line_holds(what, &look, &item);
		at = end + 1;
	}
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	/* A copy of its own, so that a byte read behind the end is seen. */
	char *list = malloc(size > 0 ? size : 1);

	if (!list)
		return 0;
	if (size > 0)
		memcpy(list, data, size);
	lines_hold(list, size);
	free(list);
	return 0;
}
