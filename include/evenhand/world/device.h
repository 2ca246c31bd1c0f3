/*
 * device.h - what runs the engine: a sound card, or nothing but the clock
 *
 * One face for all devices.  The null device fills blocks and throws the
 * samples away: paced by the wall clock on a thread of its own, or unpaced,
 * only when it is asked to advance.
 *
 * Paced, the count of frames follows the clock and never drifts, but when more
 * than DEVICE_JUMP_MS is missed at once (the program was stopped, the computer
 * slept) that time is lost: the count goes on from where it stood and does not
 * race through what was missed.  Only the device judges that; device_lost_ms
 * tells everybody else, so that nobody can judge otherwise.
 */
#ifndef EVENHAND_WORLD_DEVICE_H
#define EVENHAND_WORLD_DEVICE_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/fault.h"
#include "evenhand/sound/engine.h"

struct device;

enum { DEVICE_BLOCK = 512, DEVICE_JUMP_MS = 250 };

/*
 * Opens the null device over an engine, which it borrows.  Paced: frames
 * begin to run at once.  NULL with a fault when no thread or memory is to be
 * had.
 */
struct device *device_null_open(struct engine *e, bool paced, struct fault *f);

/*
 * Lets the engine reach a frame.  Unpaced: fills blocks until it is there,
 * exactly.  Paced: does nothing, time does it.  Only the main thread.
 */
void device_advance(struct device *d, int64_t frame);

/* The frame that is reached now, whichever way time is made. */
int64_t device_frame(const struct device *d);

/*
 * ms of the clock that were lost so far, and are in no frame.  It grows only
 * in steps of more than DEVICE_JUMP_MS.  Always 0 unpaced.  Any thread.
 */
int64_t device_lost_ms(const struct device *d);

/* A name for people and for the journal: "none", "fast". */
const char *device_name(const struct device *d);

/* Whether wall time has to pass for frames to pass. */
bool device_paced(const struct device *d);

/* Stops the thread and frees the device; the engine stays.  NULL allowed. */
void device_close(struct device *d);

#endif
