/*
 * room.h - how loud the room is beside the string
 *
 * Pure; scratch from an arena.  Any thread.
 */
#ifndef LISTEN_ROOM_H
#define LISTEN_ROOM_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/heard.h"

/*
 * Of refined instants, as turn.h has it; 0 where too little moved to tell.
 * False when memory is short.
 */
bool room_measure(
    struct arena *a, const struct instant *m, size_t n, double *room);

#endif
