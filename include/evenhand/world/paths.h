/*
 * paths.h - where evenhand keeps things (XDG base directories 0.8)
 *
 * Data (journals): $XDG_DATA_HOME/evenhand, else ~/.local/share/evenhand.
 * Settings: $XDG_CONFIG_HOME/evenhand, else ~/.config/evenhand.  What sound
 * libraries print, and measured delays: $XDG_STATE_HOME/evenhand, else
 * ~/.local/state/evenhand.
 * An unset, empty or relative variable counts as unset, as the standard says.
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_PATHS_H
#define EVENHAND_WORLD_PATHS_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/fault.h"

enum { PATH_BYTES_MAX = 4096, PLAYER_NAME_MAX = 40 };

/*
 * The settings file, made or not; false with a fault when neither HOME nor the
 * variable for such files names a folder, or the path is too long.
 */
bool path_settings(char *buffer, size_t size, struct fault *f);

/* The log of the sound libraries; false with a fault as above. */
bool path_sound_log(char *buffer, size_t size, struct fault *f);

/* The measured delays of loudspeakers and microphones; as above. */
bool path_latency(char *buffer, size_t size, struct fault *f);

/*
 * The journal of a player (NULL: the only player).  A player's name is 1 to
 * 39 bytes of letters, digits, space, - _ and ., not beginning with a point;
 * other names are a fault.
 */
bool path_journal(
    const char *player, char *buffer, size_t size, struct fault *f);

#endif
