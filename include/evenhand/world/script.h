/*
 * script.h - keys from a file, at session times
 *
 *	# nothing sore, then begin
 *	- forward
 *	- forward
 *	2:36.5 c
 *	2:48.5 clean
 *
 * A time is m:ss with up to three decimals, from the first sound; "-" is as
 * soon as a key is waited for.  Keys: forward back space c s h q ? 0-9, clean
 * shaky silence hurt leave help, and "words TEXT" for the question page.
 * Times never fall.  While there is no first sound yet, a key with a time lets
 * forward answer the pages.
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_SCRIPT_H
#define EVENHAND_WORLD_SCRIPT_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/fault.h"
#include "evenhand/coach/session.h"

struct script;

/* Reads a script; NULL with every fault found. */
struct script *script_open(const char *path, struct faults *faults);

/*
 * The frame at which the next key is due for a session as it stands, or
 * INT64_MAX when none is.  A waiting session gets its "-" key 300 ms after the
 * key before.
 */
int64_t script_due(const struct script *k, const struct session *s);

/* Takes the key that is due; INPUT_END when the script is over and awaited. */
struct input script_take(
    struct script *k, const struct session *s, int64_t frame);

void script_close(struct script *k);

#endif
