/*
 * clock.h - wall time, read once, or set by --at
 *
 * Any thread.
 */
#ifndef EVENHAND_WORLD_CLOCK_H
#define EVENHAND_WORLD_CLOCK_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/date.h"

/* Now, with the local offset in force now. */
struct moment clock_now(void);

/*
 * The moment of a local time ("2026-03-02T17:00") in the local zone; false
 * when it is no possible date and time.
 */
bool clock_at(const char *s, struct moment *out);

/* Nanoseconds of a clock that only goes forward and counts sleep. */
int64_t clock_steady_ns(void);

/* The same in ms. */
int64_t clock_steady_ms(void);

/* Sleeps, or less when a signal comes. */
void clock_sleep_us(int64_t us);

#endif
