/*
 * fuzz_record.c - random bytes as records
 *
 * What must hold: any bytes give a record or faults with places; and a record
 * that was read is written and read again as the same one, byte for byte.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/record/write.h"
#include "evenhand/world/record_file.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { ROOM = 256 * 1024 };

static void hold(bool good, const char *what)
{
	if (good)
		return;
	fprintf(stderr, "%s\n", what);
	abort();
}

/* The words of a record that was read; NULL when there was a fault. */
static char *words_of(const char *bytes, size_t size, bool must, size_t *length)
{
	char *words = malloc(ROOM);
	struct text t = text_in(words, ROOM);
	struct faults faults = { 0 };
	struct record r;
	bool good = record_parse("record.yaml", bytes, size, &r, &faults);
	char said[600];

	hold(good == (faults.count == 0), "a fault, or a record");
	for (int i = 0; i < faults.count; i++) {
		fault_text(&faults.at[i], said, sizeof(said));
		hold(strchr(said, '\033') == NULL, "an escape in a fault");
	}
	if (must && !good)
		fprintf(stderr, "%s\n", said);
	hold(good || !must, "what was written cannot be read");
	if (good) {
		for (const struct record_sitting *s = r.sitting; s; s = s->next)
			hold(record_sitting_good(&r, s), "beyond its bounds");
		record_write(&t, &r);
	}
	record_done(&r);
	*length = t.length;
	if (good && !t.cut)
		return words;
	free(words);
	return NULL;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	/* A copy of its own, so that a byte read behind the end is seen. */
	char *bytes = malloc(size > 0 ? size : 1), *once, *twice = NULL;
	size_t first = 0, second = 0;

	if (bytes == NULL)
		return 0;
	if (size > 0)
		memcpy(bytes, data, size);
	once = words_of(bytes, size, false, &first);
	if (once != NULL)
		twice = words_of(once, first, true, &second);
	if (once != NULL)
		hold(twice != NULL && first == second &&
			memcmp(once, twice, first) == 0,
		    "another one when it is read again");
	free(once);
	free(twice);
	free(bytes);
	return 0;
}
