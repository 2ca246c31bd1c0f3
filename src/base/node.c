/*
 * node.c - finding one's way in a tree of YAML nodes
 */
#include "evenhand/base/node.h"

#include <stddef.h>
#include <string.h>

const struct node *node_get(const struct node *map, const char *key)
{
	if (map == NULL || map->kind != NODE_MAP)
		return NULL;
	for (const struct node *n = map->first; n != NULL; n = n->next)
		if (n->key != NULL && strcmp(n->key, key) == 0)
			return n;
	return NULL;
}
