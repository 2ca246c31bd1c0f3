/*
 * sound_link.h - what evenhand and the keeper say to each other
 *
 *	evenhand ─▶ keeper	make a child by this order; end the child
 *	keeper ─▶ evenhand	that child is gone, of itself or killed
 *
 * There may be two: one that sounds or lists, and one that hears.
 *
 * The end of the socket is the end of the other side.
 */
#ifndef EVENHAND_WORLD_SOUND_LINK_H
#define EVENHAND_WORLD_SOUND_LINK_H

#include <sys/types.h>

#include "evenhand/world/sound_keeper.h"
#include "sound_shared.h"

enum sound_ask { SOUND_MAKE, SOUND_KILL };

struct sound_request {
	int32_t ask;		  /* enum sound_ask */
	struct sound_order order; /* to kill only its number counts */
};

/* How a child's program ends that made no sound at all, as shells have it. */
enum {
	SOUND_EXIT_OTHER = 64,	  /* it is of another version */
	SOUND_EXIT_NO_ROOM = 71,  /* the system has no more for it */
	SOUND_EXIT_MISSING = 127, /* it does not start */
};

/* A child that is gone; status as of waitpid, or one of the two below. */
struct sound_report {
	int32_t number;
	int32_t status;
};

enum {
	SOUND_GIVEN_UP = -1, /* killed, but not dead, or not begun any more */
	SOUND_UNMADE = -2,   /* the system has no process or pipe for it */
};

/* --- evenhand's side: sound_keeper.c --- */

struct sound_shared *keeper_shared(struct sound_keeper *k);

/* Has a child made, in place of the one of its kind; returns its number. */
int32_t keeper_make(struct sound_keeper *k, const struct sound_order *o);

/* Kills a child, made or not made yet, if it is not gone. */
void keeper_kill(struct sound_keeper *k, int32_t number);

/* Asks a child to end by itself, which is done in a second or less. */
void keeper_end(struct sound_keeper *k, int32_t number);

/* The next child that is gone; false: none. */
bool keeper_report(struct sound_keeper *k, struct sound_report *r);

/* How a child ended: SOUND_EXIT_..., or 0 for any other way. */
int report_exit(const struct sound_report *r);

/* Whether the keeper itself is gone. */
bool keeper_gone(const struct sound_keeper *k);

/* --- The keeper's process --- */

struct sound_log;

/* What the keeper's process is given. */
struct sound_keep {
	int socket;
	int memory; /* the shared memory, as descriptor ... */
	struct sound_shared *shared;
	const char *program;	     /* path of evenhand-sound */
	const struct sound_log *log; /* begun, so that no later one is lost */
};

/* Keeps until the socket ends. */
_Noreturn void sound_keep(const struct sound_keep *given);

/* --- sound_start.c: only the keeper's process --- */

/* Puts descriptors where they belong and closes all others; its socket's. */
int sound_descriptors(const struct sound_keep *given);

/* Signals that are for evenhand pass it by; SIGCHLD interrupts. */
void sound_signals(void);

/* What a child is started for. */
struct sound_started {
	const char *program; /* path of evenhand-sound */
	const char *layout;  /* of the memory */
	int32_t task;	     /* enum sound_task */
	int out;	     /* where it prints */
	pid_t keeper;
};

/*
 * Only in a process that the keeper has just forked: becomes evenhand-sound.
 */
_Noreturn void sound_start(const struct sound_started *s);

#endif
