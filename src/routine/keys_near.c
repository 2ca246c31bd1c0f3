/*
 * keys_near.c - a word before a colon that is not known there
 *
 * It may be a slip of the finger ("bows_eech"), written another way ("Bow
 * seconds", "bow-seconds"), or a key that belongs elsewhere ("minutes" at the
 * beginning of a line).  What was meant is said, and counts as there: the map
 * is not told as well that it lacks it.
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

enum { NEAR = 2, SHORT = 4, TIDY_MAX = 64, LIST_MAX = 200 };

void keys_tidy(char *to, size_t size, const char *word)
{
	small_letters(to, size, word);
	for (char *at = to; (at = strpbrk(at, " -")) != NULL; at++)
		*at = '_';
}

static const char *nearest(enum map_kind kind, const char *word)
{
	const char *found = NULL, *key;
	/* Two slips in a short word make another word of it. */
	int best = strlen(word) > SHORT ? NEAR + 1 : NEAR;

	for (int i = 0; (key = keys_at(kind, i)) != NULL; i++) {
		int far = text_distance(word, key, NEAR);

		if (far < best && (size_t)far < strlen(word)) {
			best = far;
			found = key;
		}
	}
	return found;
}

static bool in_homework_file(enum map_kind kind)
{
	return kind == MAP_HOMEWORK_FILE || kind == MAP_STUDENT;
}

/* Whether a key of a map may be spoken of in another map. */
static bool may_name(enum map_kind kind, enum map_kind other)
{
	if (kind == MAP_SETTINGS || other == MAP_SETTINGS)
		return false;
	if (other == MAP_HOMEWORK_FILE)
		return in_homework_file(kind) && kind != other;
	return other != MAP_STUDENT && other != kind;
}

/* Another map that has this key, or MAP_KINDS. */
static enum map_kind elsewhere(enum map_kind kind, const char *word)
{
	for (int i = 0; i < MAP_KINDS; i++)
		if (may_name(kind, (enum map_kind)i) &&
		    keys_has((enum map_kind)i, word))
			return (enum map_kind)i;
	return MAP_KINDS;
}

/* Another map with a key of nearly this name, or MAP_KINDS. */
static enum map_kind near_elsewhere(
    enum map_kind kind, const char *word, const char **near)
{
	for (int i = 0; i < MAP_KINDS; i++) {
		if (!may_name(kind, (enum map_kind)i) ||
		    *keys_name((enum map_kind)i) == '\0')
			continue;
		*near = nearest((enum map_kind)i, word);
		if (*near != NULL)
			return (enum map_kind)i;
	}
	return MAP_KINDS;
}

/* Every map that has this key: bowing" or "turns. */
static void all_names(
    enum map_kind kind, const char *word, char *names, size_t size)
{
	struct text t = text_in(names, size);

	for (int i = 0; i < MAP_KINDS; i++) {
		if (!may_name(kind, (enum map_kind)i) ||
		    !keys_has((enum map_kind)i, word))
			continue;
		text_add(&t, t.length > 0 ? "\" or \"" : "");
		text_add(&t, keys_name((enum map_kind)i));
	}
}

static bool kept_in_homework(enum map_kind belongs)
{
	return belongs == MAP_HOMEWORK || belongs == MAP_LESSON_MARK ||
	    belongs == MAP_STUDENT;
}

static struct message belongs(
    enum map_kind kind, enum map_kind other, const char *word)
{
	char names[LIST_MAX];

	if ((kind == MAP_HOMEWORK_FILE && !kept_in_homework(other)) ||
	    kind == MAP_STUDENT)
		return message_with(M_ROUTINE_KEY_ROUTINE_ONLY, TEXT(word));
	if (*keys_name(other) == '\0')
		return message_with(M_ROUTINE_KEY_TOP, TEXT(word));
	all_names(kind, word, names, sizeof(names));
	return message_with(M_ROUTINE_KEY_ELSEWHERE, TEXT(word), TEXT(names));
}

/* All words that may stand in the map. */
static struct message no_such(enum map_kind kind, const char *word)
{
	char list[LIST_MAX];
	struct text t = text_in(list, sizeof(list));
	const char *key;

	for (int i = 0; (key = keys_at(kind, i)) != NULL; i++) {
		text_add(&t, i > 0 ? ", " : "");
		text_add(&t, key);
	}
	return message_with(M_ROUTINE_KEY_UNKNOWN, TEXT(word), TEXT(list));
}

struct message keys_unknown(enum map_kind kind, const char *word)
{
	char plain[TIDY_MAX];
	const char *near;
	enum map_kind other = elsewhere(kind, word);

	if (other != MAP_KINDS)
		return belongs(kind, other, word);
	small_letters(plain, sizeof(plain), word);
	if (keys_has(kind, plain))
		return message_with(M_ROUTINE_SMALL, TEXT(word), TEXT(plain));
	keys_tidy(plain, sizeof(plain), word);
	near = nearest(kind, plain);
	if (near != NULL)
		return message_with(M_ROUTINE_KEY_NEAR, TEXT(word), TEXT(near));
	other = near_elsewhere(kind, plain, &near);
	if (other != MAP_KINDS)
		return message_with(M_ROUTINE_KEY_NEAR_ELSEWHERE, TEXT(word),
		    TEXT(near), TEXT(keys_name(other)));
	return no_such(kind, word);
}

bool keys_meant(const struct node *map, enum map_kind kind, const char *key)
{
	if (map->kind != NODE_MAP || node_get(map, key) != NULL)
		return map->kind == NODE_MAP;
	for (const struct node *n = map->first; n != NULL; n = n->next) {
		char plain[TIDY_MAX];
		const char *near;

		keys_tidy(plain, sizeof(plain), n->key);
		if (text_distance(plain, key, NEAR) > NEAR ||
		    keys_has(kind, n->key) ||
		    elsewhere(kind, n->key) != MAP_KINDS)
			continue;
		near = nearest(kind, plain);
		if (near != NULL && strcmp(near, key) == 0)
			return true;
	}
	return false;
}
