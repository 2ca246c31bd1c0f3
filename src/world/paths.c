/*
 * paths.c - where evenhand keeps things
 *
 *	$XDG_DATA_HOME/evenhand/journal.db
 *	$XDG_DATA_HOME/evenhand/player-Wren.db
 *	$XDG_CONFIG_HOME/evenhand/settings.yaml
 *	$XDG_STATE_HOME/evenhand/sound.log
 *	$XDG_STATE_HOME/evenhand/delays.yaml
 */
#include "evenhand/world/paths.h"

#include <stdlib.h>
#include <string.h>

#include "evenhand/base/text.h"

static bool too_long(struct fault *f)
{
	return fault_set(f, message_of(M_WORLD_PATH_LONG));
}

/* The variable, or NULL when it counts as unset. */
static const char *whole_path(const char *variable)
{
	const char *value = getenv(variable);

	return value != NULL && *value == '/' ? value : NULL;
}

static bool path_data(char *buffer, size_t size, struct fault *f)
{
	struct text t = text_in(buffer, size);
	const char *data = whole_path("XDG_DATA_HOME");
	const char *home = whole_path("HOME");

	if (data == NULL && home == NULL)
		return fault_set(f, message_of(M_WORLD_NO_HOME));
	if (data != NULL)
		text_format(&t, "%s/evenhand", data);
	else
		text_format(&t, "%s/.local/share/evenhand", home);
	return !t.cut || too_long(f);
}

bool path_settings(char *buffer, size_t size, struct fault *f)
{
	struct text t = text_in(buffer, size);
	const char *config = whole_path("XDG_CONFIG_HOME");
	const char *home = whole_path("HOME");

	if (config == NULL && home == NULL)
		return fault_set(f, message_of(M_SETTINGS_NO_HOME));
	if (config != NULL)
		text_format(&t, "%s/evenhand/settings.yaml", config);
	else
		text_format(&t, "%s/.config/evenhand/settings.yaml", home);
	return !t.cut || too_long(f);
}

/* A file of what is kept between two starts and may be lost. */
static bool path_state(
    const char *name, char *buffer, size_t size, struct fault *f)
{
	struct text t = text_in(buffer, size);
	const char *state = whole_path("XDG_STATE_HOME");
	const char *home = whole_path("HOME");

	if (state == NULL && home == NULL)
		return fault_set(f, message_of(M_WORLD_NO_HOME));
	if (state != NULL)
		text_format(&t, "%s/evenhand/%s", state, name);
	else
		text_format(&t, "%s/.local/state/evenhand/%s", home, name);
	return !t.cut || too_long(f);
}

bool path_sound_log(char *buffer, size_t size, struct fault *f)
{
	return path_state("sound.log", buffer, size, f);
}

bool path_latency(char *buffer, size_t size, struct fault *f)
{
	return path_state("delays.yaml", buffer, size, f);
}

static bool letter(char c)
{
	/* Bytes of letters beyond ASCII count as letters. */
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
	    (c >= '0' && c <= '9') || (unsigned char)c >= 0x80;
}

static bool good_name(const char *player)
{
	size_t length = strlen(player);

	if (length == 0 || length >= PLAYER_NAME_MAX || !letter(*player) ||
	    !text_is_utf8(player, length))
		return false;
	for (const char *s = player; *s; s++)
		if (!letter(*s) && strchr(" -_.", *s) == NULL)
			return false;
	return true;
}

/* Signs nobody sees would make two names that look the same. */
static bool visible(const char *player)
{
	char clean[PLAYER_NAME_MAX];

	text_clean(clean, sizeof(clean), player);
	return strcmp(clean, player) == 0;
}

bool path_journal(
    const char *player, char *buffer, size_t size, struct fault *f)
{
	struct text t;

	if (player != NULL && (!good_name(player) || !visible(player)))
		return fault_set(f,
		    message_with(M_WORLD_PLAYER_NAME, TEXT(player),
			WHOLE(PLAYER_NAME_MAX - 1)));
	if (!path_data(buffer, size, f))
		return false;
	t = text_in(buffer + strlen(buffer), size - strlen(buffer));
	if (player == NULL)
		text_add(&t, "/journal.db");
	else
		text_format(&t, "/player-%s.db", player);
	return !t.cut || too_long(f);
}
