/*
 * arena.c - memory that is taken piece by piece and given back at once
 *
 * Blocks hang in a chain, the newest first.  Pieces come from the newest
 * block; a piece too big for a block gets one of its own size.
 *
 *	newest -> [ used | free ] -> [ used ] -> NULL
 */
#include "evenhand/base/arena.h"

#include <stdalign.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum { BLOCK_BYTES = 16384, ALIGN = alignof(max_align_t) };

struct arena_block {
	struct arena_block *older;
	size_t used, size; /* of bytes */
	alignas(max_align_t) char bytes[];
};

static struct arena_block *block_new(struct arena *a, size_t size)
{
	size_t room = size > BLOCK_BYTES ? size : BLOCK_BYTES;
	struct arena_block *b = calloc(1, sizeof(*b) + room);

	if (b == NULL)
		return NULL;
	b->size = room;
	b->older = a->newest;
	a->newest = b;
	return b;
}

void *arena_take(struct arena *a, size_t size)
{
	struct arena_block *b = a->newest;
	char *piece;

	if (size > SIZE_MAX / 2)
		return NULL;
	/* Even nothing takes a place, so that every piece is another. */
	size = (size + (size == 0) + ALIGN - 1) / ALIGN * ALIGN;
	if (b == NULL || b->size - b->used < size)
		b = block_new(a, size);
	if (b == NULL)
		return NULL;
	piece = b->bytes + b->used;
	b->used += size;
	a->taken += size;
	return piece;
}

char *arena_text(struct arena *a, const char *text, size_t length)
{
	char *copy = length < SIZE_MAX ? arena_take(a, length + 1) : NULL;

	if (copy != NULL && length > 0)
		memcpy(copy, text, length);
	return copy;
}

void arena_done(struct arena *a)
{
	while (a->newest != NULL) {
		struct arena_block *b = a->newest;

		a->newest = b->older;
		free(b);
	}
	a->taken = 0;
}
