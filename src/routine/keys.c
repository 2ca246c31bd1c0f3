/*
 * keys.c - which words may stand before a colon, and where
 *
 * One table of maps and their keys.  A word that is not in the map at hand may
 * be a slip of the finger ("bows_eech"), or a key that belongs elsewhere
 * ("minutes" at the beginning of a line): both are said.
 */
#include <assert.h>
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

enum { KEYS_MAX = 20, NEAR = 2 };

struct map_keys {
	const char *name; /* the key the map stands under, "" for a file */
	const char *key[KEYS_MAX];
};

static const struct map_keys maps[MAP_KINDS] = {
	[MAP_ROUTINE] = { "",
	    { "routine", "edition", "written_by", "player", "bowing", "turns",
		"session", "recap", "move_on", "make_up", "homework",
		"lesson_marks", "stages" } },
	[MAP_HOMEWORK_FILE] = { "",
	    { "homework_for", "routine", "player", "homework",
		"lesson_marks" } },
	[MAP_PLAYER] = { "player",
	    { "instrument", "size", "string_length_cm", "bow_hand", "tuning",
		"reference_hz" } },
	[MAP_STUDENT] = { "player",
	    { "size", "string_length_cm", "bow_hand", "reference_hz" } },
	[MAP_BOWING] = { "bowing",
	    { "bow_seconds", "pulses", "count_in_bows", "because" } },
	[MAP_TURNS] = { "turns",
	    { "take", "order", "bows_each", "change_seconds", "because" } },
	[MAP_SESSION] = { "session",
	    { "minutes", "per_day", "hours_apart", "days_a_week", "because" } },
	[MAP_RECAP] = { "recap", { "most" } },
	[MAP_MOVE_ON] = { "move_on", { "days", "all_clean", "decided_by" } },
	[MAP_HOMEWORK] = { "homework",
	    { "work_on", "no_further_than", "note", "seen", "turns_so_far" } },
	[MAP_STAGE] = { "stages",
	    { "id", "was", "title", "place", "shift", "travel", "motion",
		"start_pulses", "minutes", "upper_note", "patience",
		"pulses_fade_after", "cue", "say", "check", "feel",
		"because" } },
	[MAP_LESSON_MARK] = { "lesson_marks",
	    { "date", "stage", "clean", "shaky" } },
};

static const char *const free_text[] = { "routine", "written_by", "note",
	"title", "cue", "say", "because", "homework_for" };

static bool same(const char *key, const char *word, size_t length)
{
	return strlen(key) == length && memcmp(key, word, length) == 0;
}

/* Index of a key in a map, or -1. */
static int find(enum map_kind kind, const char *word, size_t length)
{
	for (int i = 0; i < KEYS_MAX && maps[kind].key[i] != NULL; i++)
		if (same(maps[kind].key[i], word, length))
			return i;
	return -1;
}

bool keys_know(const char *word, size_t length)
{
	for (int kind = 0; kind < MAP_KINDS; kind++)
		if (find((enum map_kind)kind, word, length) >= 0)
			return true;
	return false;
}

bool keys_free_text(const char *word, size_t length)
{
	for (size_t i = 0; i < sizeof(free_text) / sizeof(free_text[0]); i++)
		if (same(free_text[i], word, length))
			return true;
	return false;
}

static const char *nearest(enum map_kind kind, const char *word)
{
	const char *found = NULL;
	int best = NEAR + 1;

	for (int i = 0; i < KEYS_MAX && maps[kind].key[i] != NULL; i++) {
		int far = text_distance(word, maps[kind].key[i], NEAR);

		if (far < best && (size_t)far < strlen(word)) {
			best = far;
			found = maps[kind].key[i];
		}
	}
	return found;
}

/* Another map that has this key, or MAP_KINDS. */
static enum map_kind elsewhere(enum map_kind kind, const char *word)
{
	bool in_homework = kind == MAP_HOMEWORK_FILE || kind == MAP_STUDENT;

	for (int i = 0; i < MAP_KINDS; i++) {
		if (i == MAP_HOMEWORK_FILE ? !in_homework : i == MAP_STUDENT)
			continue;
		if (i != (int)kind &&
		    find((enum map_kind)i, word, strlen(word)) >= 0)
			return (enum map_kind)i;
	}
	return MAP_KINDS;
}

static bool in_homework_file(enum map_kind belongs)
{
	return belongs == MAP_HOMEWORK || belongs == MAP_LESSON_MARK ||
	    belongs == MAP_STUDENT;
}

static struct message unknown(enum map_kind kind, const char *word)
{
	const char *near = nearest(kind, word);
	enum map_kind other = elsewhere(kind, word);

	if (other == MAP_KINDS && near == NULL)
		return message_with(M_ROUTINE_KEY_UNKNOWN, TEXT(word));
	if (other == MAP_KINDS)
		return message_with(M_ROUTINE_KEY_NEAR, TEXT(word), TEXT(near));
	if ((kind == MAP_HOMEWORK_FILE && !in_homework_file(other)) ||
	    kind == MAP_STUDENT)
		return message_with(M_ROUTINE_KEY_ROUTINE_ONLY, TEXT(word));
	if (*maps[other].name == '\0')
		return message_with(M_ROUTINE_KEY_TOP, TEXT(word));
	return message_with(
	    M_ROUTINE_KEY_ELSEWHERE, TEXT(word), TEXT(maps[other].name));
}

static void not_a_map(
    struct reader *rd, const struct node *n, enum map_kind kind)
{
	if (n->key != NULL)
		fault_here(
		    rd, n, message_with(M_ROUTINE_WANT_MAP, TEXT(n->key)));
	else if (kind == MAP_ROUTINE || kind == MAP_HOMEWORK_FILE)
		fault_here(rd, n, message_of(M_ROUTINE_FILE_NOT_A_MAP));
	else
		fault_here(rd, n, message_of(M_ROUTINE_NOT_A_MAP));
}

bool keys_check(struct reader *rd, const struct node *map, enum map_kind kind)
{
	int line[KEYS_MAX] = { 0 };

	if (map->kind != NODE_MAP) {
		not_a_map(rd, map, kind);
		return false;
	}
	for (const struct node *n = map->first; n != NULL; n = n->next) {
		int i = find(kind, n->key, strlen(n->key));

		if (i >= 0 && line[i] > 0)
			fault_key(rd, n,
			    message_with(
				M_ROUTINE_TWICE, TEXT(n->key), WHOLE(line[i])));
		else if (i >= 0)
			line[i] = n->key_line;
		else if (rd->faults->count < FAULTS_MAX)
			fault_key(rd, n, unknown(kind, n->key));
		else
			rd->faults->left_out++;
	}
	return true;
}
