/*
 * sound_link.h - what evenhand and the keeper say to each other
 *
 *	evenhand ─▶ keeper	make a child by this order; end the child
 *	keeper ─▶ evenhand	that child is gone, of itself or killed
 *
 * The end of the socket is the end of the other side.
 */
#ifndef EVENHAND_WORLD_SOUND_LINK_H
#define EVENHAND_WORLD_SOUND_LINK_H

#include "evenhand/world/sound_keeper.h"
#include "sound_shared.h"

enum sound_ask { SOUND_MAKE, SOUND_KILL };

struct sound_request {
	int32_t ask; /* enum sound_ask */
	struct sound_order order;
};

/* A child that is gone; status as of waitpid. */
struct sound_report {
	int32_t number;
	int32_t status;
};

/* --- evenhand's side: sound_keeper.c --- */

struct sound_shared *keeper_shared(struct sound_keeper *k);

/* Has a child made; returns its number. */
int32_t keeper_make(struct sound_keeper *k, const struct sound_order *o);

/* Kills the child there is. */
void keeper_kill(struct sound_keeper *k);

/* Asks a child to end by itself, which is done in a second or less. */
void keeper_end(struct sound_keeper *k, int32_t number);

/* The next child that is gone; false: none. */
bool keeper_report(struct sound_keeper *k, struct sound_report *r);

/* Whether the keeper itself is gone. */
bool keeper_gone(const struct sound_keeper *k);

/* --- The keeper's process --- */

/* Keeps until the socket ends; never returns.  log: path, "" for none. */
_Noreturn void sound_keep(int socket, struct sound_shared *s, const char *log);

/* --- The child's process: sound_child.c --- */

_Noreturn void sound_child(struct sound_shared *s);

#endif
