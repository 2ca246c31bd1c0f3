/*
 * sound_keeper.h - the process that keeps the process that makes sound
 *
 *	evenhand ──socket──▶ keeper ──starts──▶ evenhand-sound: PortAudio
 *	    └─────────── shared memory ───────────┘
 *
 * Sound libraries abort, spin and hang when a card or server goes, so they run
 * in a program of their own, which can be killed and started anew.  The keeper
 * starts it: a process that was forked when evenhand began, before any thread,
 * lock or screen, and so may fork whenever it likes.  What the libraries
 * print goes into a log of bounded size.  When evenhand ends, however it ends,
 * the keeper ends the child and itself.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_SOUND_KEEPER_H
#define EVENHAND_WORLD_SOUND_KEEPER_H

#include "evenhand/base/fault.h"

struct sound_keeper;

/* The program that makes sound; beside_find knows where it is. */
#define SOUND_PROGRAM "evenhand-sound"

/*
 * Forks the keeper.  Call it before threads are made and files are locked.
 * program: the path of evenhand-sound; where that is none, devices say so.
 * NULL with a fault: no process or memory; there is no sound then.
 */
struct sound_keeper *sound_keeper_open(const char *program, struct fault *f);

/* Lets the keeper go: it ends by itself.  Waits for nothing.  NULL allowed. */
void sound_keeper_close(struct sound_keeper *k);

#endif
