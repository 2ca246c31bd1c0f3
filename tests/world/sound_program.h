/*
 * sound_program.h - the program that makes sound, for tests that start it
 */
#ifndef EVENHAND_TESTS_SOUND_PROGRAM_H
#define EVENHAND_TESTS_SOUND_PROGRAM_H

#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "evenhand/world/sound_keeper.h"

/* evenhand-sound of the same build; this is BUILD/tests/FOLDER/PROGRAM. */
static inline const char *sound_program(void)
{
	static char path[4096];
	char own[4000];
	ssize_t n = readlink("/proc/self/exe", own, sizeof own - 1);

	own[n > 0 ? n : 0] = '\0';
	for (int i = 0; i < 3 && strrchr(own, '/'); i++)
		*strrchr(own, '/') = '\0';
	snprintf(path, sizeof path, "%s/" SOUND_PROGRAM, own);
	return path;
}

#endif
