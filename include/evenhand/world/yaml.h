/*
 * yaml.h - libyaml's events as a tree of nodes
 *
 * The only file that knows libyaml; marks are made 1-based here and nowhere
 * else.  Refuses aliases, anchors, tags, several documents, depth over 8,
 * keys that are not words.  Any bytes give a tree or faults.
 * Any thread.
 */
#ifndef EVENHAND_WORLD_YAML_H
#define EVENHAND_WORLD_YAML_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/base/fault.h"
#include "evenhand/base/node.h"

/*
 * The root node in the arena, or NULL with a fault added.  An empty file is
 * an empty map.  path is kept by pointer in the fault.
 */
struct node *yaml_parse(const char *path, const char *bytes, size_t length,
    struct arena *arena, struct faults *faults);

/*
 * For files too long for one tree: the entries of lists that stand right under
 * a key of the root go one by one to take, which may look at the root as far as
 * it was read and at the list, whose key says what the entry is.  The entry is
 * gone when take returns; false ends the reading (a fault was added).
 */
struct yaml_parts {
	bool (*take)(void *context, const struct node *root,
	    const struct node *list, const struct node *entry);
	void *context;
	size_t bytes_max; /* of an entry in memory, and of all the rest */
};

/* As yaml_parse, with the entries handed on; NULL parts: none are. */
struct node *yaml_parse_parts(const char *path, const char *bytes,
    size_t length, const struct yaml_parts *parts, struct arena *arena,
    struct faults *faults);

#endif
