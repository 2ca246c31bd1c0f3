/*
 * audio_parts.h - the names of a track's parts, in the file
 */
#ifndef EVENHAND_WORLD_AUDIO_PARTS_H
#define EVENHAND_WORLD_AUDIO_PARTS_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/world/audio_track.h"

/*
 * Bytes a tag "license=..." must have as its words to keep room for the parts
 * in a FLAC or Ogg file; 0 when there are none, or too many for a page of Ogg.
 */
size_t audio_parts_room(const struct audio_wish *w);

/* Those words, and a zero behind them. */
void audio_parts_keep_room(char *words, size_t length);

/*
 * Names the parts of a file that is whole otherwise: in the room that was kept,
 * or behind the samples of a WAV file.  False: it cannot be written.
 */
bool audio_parts_name(
    enum audio_format format, int file, const struct audio_wish *w);

#endif
