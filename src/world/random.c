/*
 * random.c - names that nobody else has
 *
 * A journal and what is written into it are told apart from those of other
 * computers by random numbers, made once; nothing about the computer or its
 * owner goes into them.
 */
#include "random.h"

#include <inttypes.h>
#include <stdio.h>
#include <time.h>
#include <unistd.h>

#include "evenhand/base/fingerprint.h"

enum { WORDS = 2 };

/*
 * Where the system has no random numbers (a kernel of long ago, a very bare
 * container) the clock and the process must do.
 */
static void make_do(uint64_t word[WORDS])
{
	struct timespec now = { 0 };
	pid_t self = getpid();

	clock_gettime(CLOCK_REALTIME, &now);
	word[0] = fingerprint_add(FINGERPRINT_START, &now, sizeof(now));
	word[0] = fingerprint_add(word[0], &self, sizeof(self));
	clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
	word[1] = fingerprint_add(word[0], &now, sizeof(now));
}

void random_id(char id[33])
{
	uint64_t word[WORDS];

	if (getentropy(word, sizeof(word)) != 0)
		make_do(word);
	snprintf(id, 33, "%016" PRIx64 "%016" PRIx64, word[0], word[1]);
}
