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

#endif
