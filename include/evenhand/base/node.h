/*
 * node.h - a YAML file as a tree of words, lists and maps with their places
 *
 * What the YAML reader of the world room hands to the pure rooms.  Nothing is
 * decided here: "yes", "4,5" and "010" are words as they were written.
 *
 *	turns: {order: [1, 2]}     map ── "turns" map ── "order" list ─ "1" ─ "2"
 *
 * Nodes live in the arena of the file they came from.  Any thread may read.
 */
#ifndef EVENHAND_BASE_NODE_H
#define EVENHAND_BASE_NODE_H

#include <stdbool.h>

enum node_kind { NODE_WORD, NODE_LIST, NODE_MAP };

struct node {
	enum node_kind kind;
	int line, column; /* of the value, 1-based */
	const char *key;  /* in a map: the word before the colon */
	int key_line, key_column;
	const char *word;   /* NODE_WORD: UTF-8, never NULL */
	bool quoted;	    /* NODE_WORD: stood in quotation marks */
	struct node *first; /* NODE_LIST, NODE_MAP: children, in order */
	struct node *next;  /* the following child of the same parent */
};

/* The child of a map with this key, or NULL.  map may be NULL. */
const struct node *node_get(const struct node *map, const char *key);

#endif
