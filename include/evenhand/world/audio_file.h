/*
 * audio_file.h - recordings and tracks, as evenhand-file reads and writes them
 *
 *	evenhand-file read [CHANNEL]     0: the recording    1: a pipe, see below
 *	evenhand-file write FORMAT       0: a pipe           1: the new file
 *
 * Only evenhand-file is linked with libsndfile, which brings the libraries of
 * all its formats along; evenhand loads none of them, and a recording that
 * breaks one breaks a program that has nothing to lose.  It opens no file:
 * evenhand does, and puts what was written in its place.
 *
 * What comes out of `read` is an audio_head, blocks of a 32-bit count and so
 * many floats, a count of 0, and an audio_tail.  A stream that ends without a
 * tail is the end of the program, not of the recording.
 */
#ifndef EVENHAND_WORLD_AUDIO_FILE_H
#define EVENHAND_WORLD_AUDIO_FILE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define AUDIO_PROGRAM "evenhand-file"

enum {
	AUDIO_LAYOUT =
	    0x45480001,		/* raised when the stream means another thing */
	AUDIO_BLOCK_MAX = 4096, /* floats */
	AUDIO_CHANNELS_MAX = 1024,
};

/* How it went: exit statuses of evenhand-file. */
enum audio_how {
	AUDIO_GOOD = 0,
	AUDIO_USAGE = 64,	 /* not called as it is by evenhand */
	AUDIO_UNKNOWN = 65,	 /* in no format that it knows */
	AUDIO_DAMAGED = 66,	 /* its head makes no sense */
	AUDIO_NO_CHANNEL = 67,	 /* it has no channel of that number */
	AUDIO_NO_ROOM = 71,	 /* no memory left */
	AUDIO_UNWRITTEN = 73,	 /* the disk takes no more */
	AUDIO_LOST = 74,	 /* nobody takes what was read */
	AUDIO_NOT_STARTED = 127, /* PROGRAM_MISSING */
	AUDIO_BROKE = 255,	 /* it was ended from outside */
};

struct audio_head {
	uint32_t layout; /* AUDIO_LAYOUT */
	int32_t rate;	 /* as the file has it: anything */
	int32_t channels;
	int32_t channel; /* 1..channels, or 0: the mean of all */
	int64_t frames;	 /* as the file has it; -1: it does not say */
	char format[64]; /* "WAV (Microsoft)", ended with a zero */
};

struct audio_tail {
	int64_t frames;	     /* given */
	int64_t no_numbers;  /* samples that were none, given as 0 */
	int64_t overdriven;  /* samples at the top of the scale or over it */
	double given_square; /* sum of squares of what was given */
	double square;	     /* mean over the channels of their sums */
	int32_t cut;	     /* 1: the file ends before its head says so */
	int32_t unused;
};

/* Takes bytes; false: no more are wanted. */
typedef bool audio_take(void *to, const void *bytes, size_t length);

/*
 * Reads a recording from a descriptor that can be sought in, and gives the
 * stream above to `take`.  channel 0 is the mean of all.
 */
enum audio_how audio_read(int in, int channel, audio_take *take, void *to);

#endif
