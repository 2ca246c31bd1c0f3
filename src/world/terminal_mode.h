/*
 * terminal_mode.h - how the terminal takes keys, and giving it back
 *
 * One terminal a program.  Signal handlers installed here give it back before
 * the program stops, is suspended or breaks, and take it again afterwards.
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_TERMINAL_MODE_H
#define EVENHAND_WORLD_TERMINAL_MODE_H

#include <stdbool.h>

enum terminal_mode {
	TERMINAL_GIVEN_BACK, /* as it was found */
	TERMINAL_KEYS,	     /* single keys, no echo */
};

/*
 * Installs the handlers and takes the terminal when the descriptor is one;
 * -1 for none.
 */
void terminal_take(int descriptor);

void terminal_mode(enum terminal_mode mode);

/*
 * A full screen is up from now on (enter NULL: no more).  leave is what must
 * be written to give the terminal back, enter what takes it again after a
 * stop; both are copied.  The terminal's modes are taken as they are now, and
 * made fit for single keys.
 */
void terminal_screen(const char *enter, const char *leave);

/* Whether the window changed its size, or the program was stopped and has
 * gone on, since this was last asked: everything must be drawn anew. */
bool terminal_disturbed(void);

/* Readable when a signal has come in; emptied by terminal_woken. */
int terminal_wake(void);
void terminal_woken(void);

/* INT, TERM or HUP: the first that asked the program to stop, else 0. */
int terminal_signal(void);

/*
 * Gives the terminal back and takes the handlers out.  When it was asked to
 * stop, a hang-up is nothing from then on.
 */
void terminal_leave(void);

#endif
