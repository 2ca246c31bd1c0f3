/*
 * builtin.c - the routines that ship inside the program
 *
 * The table is made from the files in routines/ when the program is built.
 */
#include <assert.h>

#include "evenhand/world/load.h"

struct builtin_file {
	const char *name;
	const unsigned char *text;
	size_t length;
};

extern const struct builtin_file builtin_files[];
extern const int builtin_files_count;

int builtin_count(void)
{
	return builtin_files_count;
}

const char *builtin_name(int i)
{
	assert(i >= 0 && i < builtin_files_count);
	return builtin_files[i].name;
}

const char *builtin_text(int i, size_t *length)
{
	assert(i >= 0 && i < builtin_files_count);
	*length = builtin_files[i].length;
	return (const char *)builtin_files[i].text;
}
