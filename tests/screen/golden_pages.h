/*
 * golden_pages.h - pages compared with the ones that were looked at
 *
 * GOLDEN=rewrite in the environment writes them anew; then look at the
 * difference before you keep it.
 */
#ifndef EVENHAND_TESTS_GOLDEN_PAGES_H
#define EVENHAND_TESTS_GOLDEN_PAGES_H

#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum { GOLDEN_BYTES = 1 << 18 };

/* The first line that differs, for whoever has to find it. */
static inline void golden_differs(
    const char *path, const char *is, const char *was)
{
	int line = 1;

	while (*is && *is == *was) {
		line += *is == '\n';
		is++;
		was++;
	}
	fail_msg("%s, line %d: now \"%.60s\", was \"%.60s\". Look at it; "
		 "GOLDEN=rewrite keeps it",
	    path, line, is, was);
}

/* Compares with tests/screen/golden/NAME.txt, or writes it. */
static inline void golden_check(const char *name, const char *text)
{
	static char kept[GOLDEN_BYTES];
	const char *wish = getenv("GOLDEN");
	bool write = wish && strcmp(wish, "rewrite") == 0;
	char path[200];
	size_t bytes;
	FILE *f;

	snprintf(path, sizeof(path), "tests/screen/golden/%s.txt", name);
	f = fopen(path, write ? "w" : "r");
	if (!f)
		fail_msg("%s cannot be opened; GOLDEN=rewrite makes it", path);
	if (write) {
		fputs(text, f);
		assert_int_equal(fclose(f), 0);
		return;
	}
	bytes = fread(kept, 1, sizeof(kept) - 1, f);
	kept[bytes] = '\0';
	fclose(f);
	if (strcmp(text, kept) != 0)
		golden_differs(path, text, kept);
}

#endif
