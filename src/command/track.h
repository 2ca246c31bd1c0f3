/*
 * track.h - what `evenhand track` is made of
 *
 *	track.c        the command line, what there is to play, what is said
 *	track_words.c  what stands in the file beside the sound
 *	track_file.c   the sound itself, into a file
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_TRACK_H
#define EVENHAND_COMMAND_TRACK_H

#include "evenhand/base/fault.h"
#include "evenhand/coach/track.h"
#include "evenhand/world/audio_track.h"

/* Where a track goes, and how loud it is. */
struct track_place {
	const char *path;
	enum audio_format format;
	bool force;
	int level; /* thousandths of full scale */
};

/*
 * What a track is called, who wrote it, what must be known of it, and where its
 * parts begin.  alone: one stage was asked for, not today's plan.
 */
void track_words(struct audio_wish *w, const struct track *t,
    const struct routine *r, bool alone);

/*
 * Plays a track into a file, which is there whole or not at all.  False with a
 * fault, or with *signal, the number of what stopped it.
 */
bool track_file(const struct track *t, const struct audio_wish *w,
    const struct track_place *place, int *signal, struct fault *f);

#endif
