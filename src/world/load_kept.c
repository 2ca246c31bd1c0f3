/*
 * load_kept.c - a routine from its text as a journal keeps it
 *
 *	routine: From wide to still
 *	...
 *	# homework			tried here, too
 *	routine: from-wide-to-still.yaml	the homework begins here or above
 *	homework_for: Wren
 *
 * A journal keeps the bytes of both files one behind the other.  Each has a
 * line of its own that begins with "routine:", so where there are two of them
 * the second is the homework's; what stands above it in its file are comments
 * and other keys, which belong to the first line at which both parts are
 * without a fault.
 */
#include "evenhand/world/load.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/routine/read.h"
#include "evenhand/world/yaml.h"

enum { TRIES_MAX = 200 };

static const char key[] = "\nroutine:";

/* What is needed to read one or both parts, too large for the stack. */
struct kept {
	struct faults faults;
	struct source part[2];
	struct arena arena;
	bool no_memory; /* to read it once */
};

static bool parse(struct kept *k, int part, const char *bytes, size_t length)
{
	struct source *s = &k->part[part];

	*s = (struct source) { "", bytes, length, NULL };
	if (!slips_find(s, &k->faults))
		return false;
	s->root = yaml_parse("", bytes, length, &k->arena, &k->faults);
	return s->root != NULL && k->faults.count == 0;
}

/* Both parts, the second one behind the end of a line; 0: all is one file. */
static struct routine *try_at(
    struct kept *k, const char *text, size_t split, size_t length)
{
	struct routine *r = NULL;
	const char *name;

	k->faults.count = k->faults.left_out = 0;
	errno = 0;
	if (split == 0) {
		if (parse(k, 0, text, length))
			r = routine_read(&k->part[0], NULL, &k->faults);
	} else if (parse(k, 1, text + split, length - split)) {
		name = homework_routine_name(k->part[1].root);
		if (name && *name && parse(k, 0, text, split - 1))
			r = routine_read(&k->part[0], &k->part[1], &k->faults);
	}
	arena_done(&k->arena);
	if (r && k->faults.count > 0) {
		routine_free(r);
		r = NULL;
	}
	k->no_memory = !r && errno == ENOMEM;
	return r;
}

/* Where the line before the one at a place begins; 0 at the first one. */
static size_t line_before(const char *text, size_t at)
{
	size_t start = at > 0 ? at - 1 : 0;

	while (start > 0 && text[start - 1] != '\n')
		start--;
	return start;
}

/* Where the last line that begins with the key does, 0 when there is one. */
static size_t second_key(const char *text)
{
	size_t at = 0;

	for (const char *s = strstr(text, key); s; s = strstr(s + 1, key))
		at = (size_t)(s - text) + 1;
	return at;
}

struct routine *load_kept(const char *text, size_t length)
{
	struct kept *k = calloc(1, sizeof(*k));
	size_t split = second_key(text);
	struct routine *r;

	if (!k)
		return NULL;
	r = try_at(k, text, 0, length);
	for (int i = 0; !r && !k->no_memory && split > 0 && i < TRIES_MAX;
	     i++) {
		r = try_at(k, text, split, length);
		split = line_before(text, split);
	}
	errno = k->no_memory ? ENOMEM : 0;
	free(k);
	return r;
}
