/*
 * audio_program.h - evenhand-file at work
 *
 * What its libraries print is nobody's business and goes nowhere.
 *
 * Only the main thread; SIGPIPE is ignored.
 */
#ifndef EVENHAND_WORLD_AUDIO_PROGRAM_H
#define EVENHAND_WORLD_AUDIO_PROGRAM_H

#include <stdbool.h>
#include <sys/types.h>

#include "evenhand/base/fault.h"
#include "evenhand/world/audio_file.h"

struct audio_program {
	pid_t pid; /* 0: it is not there; -1: the system has no room */
	int fd;	   /* our end of the pipe; -1 */
};

/*
 * Starts it with these words (NULL behind the last).  in and out, borrowed,
 * become its 0 and 1; one of them is -1 for a pipe, whose other end is then
 * p->fd.  False: it is not there, or the system has no room; end it in any case.
 */
bool audio_start(
    struct audio_program *p, const char *const *words, int in, int out);

/* Closes our end, waits until it has ended, and tells how. */
enum audio_how audio_end(struct audio_program *p);

/* Ends it at once, because it stands still. */
void audio_kill(struct audio_program *p);

/* The sentence that goes with how it ended; true for AUDIO_GOOD. */
bool audio_tell(enum audio_how how, struct fault *f);

#endif
