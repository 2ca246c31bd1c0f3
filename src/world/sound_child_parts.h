/*
 * sound_child_parts.h - what a child that sounds and one that hears share
 */
#ifndef EVENHAND_WORLD_SOUND_CHILD_PARTS_H
#define EVENHAND_WORLD_SOUND_CHILD_PARTS_H

#include "sound_shared.h"

/* The memory that was given; NULL: there is none of this layout. */
struct sound_shared *child_begin(const char *layout);

/*
 * From now on a thread of its own ends the process when evenhand has stood still
 * for too long (paced only), or the keeper is gone where the system does not
 * tell.
 */
void child_watch(struct sound_shared *s, bool paced);

#endif
