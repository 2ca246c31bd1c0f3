/*
 * arena.h - memory that is taken piece by piece and given back at once
 *
 * A routine, a history or a tree of YAML nodes lives as long as its arena.
 * Pieces come zeroed and aligned for any type.  One thread at a time.
 */
#ifndef EVENHAND_BASE_ARENA_H
#define EVENHAND_BASE_ARENA_H

#include <stddef.h>

struct arena_block;

/* All zero is an empty arena, ready for use. */
struct arena {
	struct arena_block *newest;
	size_t taken; /* bytes handed out so far */
};

/* Zeroed memory of the given size, or NULL when there is none. */
void *arena_take(struct arena *a, size_t size);

/* A copy of length bytes of text with a zero behind them, or NULL. */
char *arena_text(struct arena *a, const char *text, size_t length);

/* Frees everything taken and leaves an empty arena. */
void arena_done(struct arena *a);

#endif
