/*
 * fuzz_routine.c - random bytes as routine files
 *
 * The bytes are one file.  A byte 1e, which no text may hold, cuts them in
 * two: a routine, and a homework file that is laid over it.  What must hold
 * for both is in tests/routine/any.h.
 */
#include <stdio.h>
#include <stdlib.h>

#include "../routine/any.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { CUT = 0x1e };

static struct any any;

static void hold(void)
{
	const char *wrong = any_wrong(&any);

	/* A slip that did not keep it from being read is a slip. */
	if (wrong == NULL && any.faults.count == 0)
		wrong = any_use_wrong(&any);
	if (wrong != NULL) {
		fprintf(stderr, "%s: %s\n", wrong, any.said);
		abort();
	}
	any_done(&any);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	/* A copy of its own, so that a byte read behind the end is seen. */
	char *bytes = malloc(size > 0 ? size : 1), *cut;
	size_t first;

	if (bytes == NULL)
		return 0;
	if (size > 0)
		memcpy(bytes, data, size);
	cut = size > 0 ? memchr(bytes, CUT, size) : NULL;
	if (cut == NULL) {
		any_read(&any, bytes, size);
	} else {
		first = (size_t)(cut - bytes);
		any_read_two(&any, bytes, first, cut + 1, size - first - 1);
	}
	hold();
	free(bytes);
	return 0;
}
