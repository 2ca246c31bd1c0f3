/*
 * sound_child.h - the process that makes sound: the program evenhand-sound
 *
 *	evenhand-sound --for 0.1.0/1/34304       and the shared memory, opened
 *	evenhand-sound --hear 0.1.0/1/34304      the same, for a microphone
 *
 * The keeper starts it, see sound_keeper.h.  The words after --for say how the
 * memory is laid out; programs of two versions do not take each other's.
 */
#ifndef EVENHAND_WORLD_SOUND_CHILD_H
#define EVENHAND_WORLD_SOUND_CHILD_H

enum { SOUND_CHILD_MEMORY = 3 }; /* the descriptor of the memory */

/*
 * Makes the sound that the memory asks for, and ends the process.  Returns only
 * when there is no such memory, or it is laid out otherwise.
 */
void sound_child(const char *layout);

/* The same for the microphone that the memory asks for. */
void sound_child_hear(const char *layout);

#endif
