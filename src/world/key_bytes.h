/*
 * key_bytes.h - from the bytes a terminal sends to the keys of a session
 *
 *	ESC [ 6 ~    Page Down   forward       \r   Enter       forward
 *	ESC [ D      Left        back          DEL  Backspace   back
 *	ESC O C      Right       forward       3    a digit
 *
 * Modifiers of an arrow or Page key change nothing.  What means nothing here
 * is KEY_OTHER, once for each key: a sign of life; the session takes Escape,
 * too, for that.
 * Any thread.
 */
#ifndef EVENHAND_WORLD_KEY_BYTES_H
#define EVENHAND_WORLD_KEY_BYTES_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/coach/session.h"

/* Longer escape sequences are cut here and cannot eat what follows. */
enum { KEY_BYTES_MAX = 32 };

/*
 * The key at the start of bytes: how many of them it takes, or 0 when more
 * must come to tell.  over says that none will come in time: then the answer
 * is never 0 for length > 0.
 */
size_t key_decode(
    const char *bytes, size_t length, bool over, enum key *key, int *digit);

/* The very key that such bytes are, as keys_exact has it. */
int key_exact(const char *bytes, size_t taken);

#endif
