/*
 * sound_log.h - what sound libraries print, in a file of bounded size
 *
 * They may print hundreds of megabytes a second.  They print into a pipe that
 * takes no more than it holds; of that so much is kept as the log has room
 * for, and the rest is thrown away, now and then.
 */
#ifndef EVENHAND_WORLD_SOUND_LOG_H
#define EVENHAND_WORLD_SOUND_LOG_H

#include <stddef.h>

enum { SOUND_LOG_MAX = 65536 };

struct sound_log {
	const char *path; /* borrowed; "" keeps nothing */
	int file;	  /* -1: not made yet, or not to be had */
	size_t size;
};

/* Removes the log of the last run; the new one is made when it is needed. */
void sound_log_begin(struct sound_log *l, const char *path);

/* Empties a pipe that does not block into the log.  False: the pipe ended. */
int sound_log_drain(struct sound_log *l, int pipe);

#endif
