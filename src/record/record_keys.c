/*
 * record_keys.c - maps with the keys they may have, lists of a bounded length
 */
#include <string.h>

#include "reader.h"

bool record_fault(
    struct record_reader *rd, const struct node *n, struct message m)
{
	return faults_add(rd->faults, m, rd->path, n->line, n->column);
}

bool record_no_memory(struct record_reader *rd)
{
	return faults_add(
	    rd->faults, message_of(M_RECORD_NO_MEMORY), rd->path, 0, 0);
}

int record_faults(const struct record_reader *rd)
{
	return rd->faults->count + rd->faults->left_out - rd->before;
}

static bool fault_key(
    struct record_reader *rd, const struct node *n, struct message m)
{
	return faults_add(rd->faults, m, rd->path, n->key_line, n->key_column);
}

static bool known(const struct map_keys *keys, const char *word)
{
	for (const char *const *k = keys->key; *k; k++)
		if (strcmp(*k, word) == 0)
			return true;
	return false;
}

/* The keys that are there: each known, none twice. */
static bool check_keys(struct record_reader *rd, const struct node *map,
    const struct map_keys *keys)
{
	for (const struct node *n = map->first; n != NULL; n = n->next) {
		const struct node *first = node_get(map, n->key);

		if (!known(keys, n->key))
			return fault_key(
			    rd, n, message_with(M_RECORD_KEY, TEXT(n->key)));
		if (first != n)
			return fault_key(rd, n,
			    message_with(M_RECORD_TWICE, TEXT(n->key),
				WHOLE(first->key_line)));
	}
	return true;
}

bool record_map(
    struct record_reader *rd, const struct node *n, const struct map_keys *keys)
{
	if (n->kind != NODE_MAP)
		return record_fault(
		    rd, n, message_with(M_RECORD_WANT_MAP, TEXT(keys->name)));
	if (!check_keys(rd, n, keys))
		return false;
	for (int i = 0; i < keys->needed; i++)
		if (node_get(n, keys->key[i]) == NULL)
			return record_fault(rd, n,
			    message_with(M_RECORD_MISSING, TEXT(keys->key[i])));
	return true;
}

bool record_list(struct record_reader *rd, const struct node *n,
    const char *name, int most, int *length)
{
	*length = 0;
	if (n == NULL)
		return true;
	if (n->kind != NODE_LIST)
		return record_fault(
		    rd, n, message_with(M_RECORD_WANT_LIST, TEXT(name)));
	for (const struct node *e = n->first; e != NULL; e = e->next)
		if (++*length > most)
			return record_fault(rd, e,
			    message_with(
				M_RECORD_TOO_MANY, TEXT(name), WHOLE(most)));
	return true;
}
