/*
 * recording.h - the samples of a recording, one after the other
 *
 *	struct recording *r = recording_open(path, 0, &f);
 *	while ((n = recording_read(r, x, &f)) > 0)
 *		...
 *	recording_close(r);
 *
 * Read by evenhand-file, so that nothing in a file can break more than that.
 * One that says nothing for half a minute is ended.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_RECORDING_H
#define EVENHAND_WORLD_RECORDING_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/fault.h"
#include "evenhand/world/audio_file.h"

struct recording;

/*
 * Opens a file and reads its head.  channel 0 is the mean of all channels.
 * NULL when it cannot be read; path is kept by pointer in the fault.
 */
struct recording *recording_open(
    const char *path, int channel, struct fault *f);

const struct audio_head *recording_head(const struct recording *r);

enum { RECORDING_READ_MAX = AUDIO_BLOCK_MAX };

/*
 * Up to RECORDING_READ_MAX samples: how many; 0 at the end, and -1 with a fault
 * when there were to be more.
 */
int recording_read(struct recording *r, float *x, struct fault *f);

/* What was odd about it: known once it has ended. */
const struct audio_tail *recording_tail(const struct recording *r);

void recording_close(struct recording *r); /* NULL is allowed */

#endif
