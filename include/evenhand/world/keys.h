/*
 * keys.h - keys: a terminal or a pipe, one press at a time
 *
 * On a terminal single keys arrive without Enter and are not echoed; on a pipe
 * bytes are keys as they come.  Escape sequences of arrows and Page keys
 * become KEY_FORWARD and KEY_BACK, what two pedals send.  The terminal is given
 * back by keys_close and by the signal handlers installed here.
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_KEYS_H
#define EVENHAND_WORLD_KEYS_H

#include <stdbool.h>

#include "evenhand/coach/session.h"

struct keys;

enum keys_got { KEYS_NONE, KEYS_PRESS, KEYS_WORDS, KEYS_END };

/* What keys_exact gives beside ASCII. */
enum {
	KEYS_SEQUENCE = 256, /* and the byte that tells an escape sequence */
	KEYS_UP = KEYS_SEQUENCE + 'A',
	KEYS_DOWN = KEYS_SEQUENCE + 'B',
	KEYS_RIGHT = KEYS_SEQUENCE + 'C',
	KEYS_LEFT = KEYS_SEQUENCE + 'D',
	KEYS_PAGE_UP = KEYS_SEQUENCE + '5',
	KEYS_PAGE_DOWN = KEYS_SEQUENCE + '6',
};

/*
 * Takes a descriptor over (0); -1 for no keys at all, only the signals.  NULL
 * when there is no memory.
 */
struct keys *keys_open(int descriptor);

/*
 * The same for a program that takes its keys from elsewhere: the terminal is
 * taken, so that nothing is echoed and it is given back, but no key is read.
 */
struct keys *keys_open_deaf(int descriptor);

/* Whether words being typed are echoed; when not, ask keys_typed. */
void keys_echo(struct keys *k, bool echo);

/* The words typed so far, fit to be shown; until the next call. */
const char *keys_typed(struct keys *k);

/*
 * While words is true, a whole line is awaited and comes as KEYS_WORDS.  On a
 * terminal it is echoed and can be rubbed out, and the two pedals still work:
 * while nothing is typed they come as KEYS_PRESS, later forward ends the line.
 */
void keys_want_words(struct keys *k, bool words);

/*
 * Waits at most wait_ms for a key, -1 until there is one.  KEYS_PRESS fills
 * *key and *digit, KEYS_WORDS points *words at text that lives until the next
 * call, KEYS_END says that no more will come (end of input, Ctrl-D, or a
 * signal asked to stop).  KEYS_NONE may come early, after a signal.
 */
enum keys_got keys_next(
    struct keys *k, int wait_ms, enum key *key, int *digit, const char **words);

/*
 * The very key of the last KEYS_PRESS, for pages on which forward and back are
 * not enough: the ASCII code of a plain one (Enter is 13 or 10, Escape 27), one
 * of those above, or 0 for any other.
 */
int keys_exact(const struct keys *k);

/* The signal that asked the program to stop (INT, TERM, HUP), or 0. */
int keys_signal(void);

void keys_close(struct keys *k);

#endif
