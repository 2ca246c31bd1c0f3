/*
 * audio_head.h - what stands before the samples of a track on their way
 *
 *	evenhand-file 1
 *	rate 48000
 *	frames 14016000
 *	title A tone apart
 *	mark 6720000 A tone apart, 6 pulses, round 1
 *
 *	... samples
 *
 * Lines of text, an empty one, and behind it mono samples as the computer's own
 * 32-bit floats.
 */
#ifndef EVENHAND_WORLD_AUDIO_HEAD_H
#define EVENHAND_WORLD_AUDIO_HEAD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "evenhand/world/audio_track.h"

/* Bytes that come, with what was read ahead of the samples. */
struct audio_source {
	int fd;
	size_t at, end;
	char ahead[65536]; /* what a pipe holds */
};

/*
 * Reads a head to its empty line.  False when it is none of this version, says
 * what makes no sense, or ends too soon.
 */
bool audio_head_read(struct audio_source *from, struct audio_wish *wish);

/* Takes so many bytes; false when there are not so many. */
bool audio_source_take(struct audio_source *from, void *to, size_t length);

#endif
