/*
 * keys.c - which words may stand before a colon, and where
 *
 * One table of maps and their keys.  What is said of a word that is not in the
 * map at hand is in keys_near.c.
 */
#include <string.h>

#include "reader.h"

enum { KEYS_MAX = 20 };

struct map_keys {
	const char *name;    /* the key the map stands under, "" for a file */
	const char *example; /* of what may stand in it */
	const char *key[KEYS_MAX];
};

static const struct map_keys maps[MAP_KINDS] = {
	[MAP_ROUTINE] = { "", "routine: From wide to still",
	    { "routine", "edition", "written_by", "player", "bowing", "turns",
		"session", "recap", "move_on", "make_up", "homework",
		"lesson_marks", "stages" } },
	[MAP_HOMEWORK_FILE] = { "", "homework_for: W.",
	    { "homework_for", "routine", "player", "homework",
		"lesson_marks" } },
	[MAP_PLAYER] = { "player", "instrument: cello",
	    { "instrument", "size", "string_length_cm", "bow_hand", "tuning",
		"reference_hz" } },
	[MAP_STUDENT] = { "player", "size: 3/4",
	    { "size", "string_length_cm", "bow_hand", "reference_hz" } },
	[MAP_BOWING] = { "bowing", "bow_seconds: 4",
	    { "bow_seconds", "pulses", "count_in_bows", "because" } },
	[MAP_TURNS] = { "turns", "order: [1, 2, 3, 4]",
	    { "take", "order", "bows_each", "change_seconds", "because" } },
	[MAP_SESSION] = { "session", "minutes: 5",
	    { "minutes", "per_day", "hours_apart", "days_a_week", "because" } },
	[MAP_RECAP] = { "recap", "most: half", { "most" } },
	[MAP_MOVE_ON] = { "move_on", "days: 5",
	    { "days", "all_clean", "decided_by" } },
	[MAP_HOMEWORK] = { "homework", "work_on: tone",
	    { "work_on", "no_further_than", "note", "seen", "turns_so_far" } },
	[MAP_STAGE] = { "stages", "id: wide",
	    { "id", "was", "title", "place", "shift", "travel", "motion",
		"start_pulses", "minutes", "upper_note", "patience",
		"pulses_fade_after", "cue", "say", "check", "feel",
		"because" } },
	[MAP_LESSON_MARK] = { "lesson_marks", "date: 2026-03-02",
	    { "date", "stage", "clean", "shaky" } },
	/* In the order of enum setting. */
	[MAP_SETTINGS] = { "", "loudness: 50",
	    { "sound", "sound_card", "sound_through", "loudness", "listen",
		"microphone", "marking", "colours", "lines", "ascii",
		"mirrored", "first_minutes_seen" } },
};

static const char *const free_text[] = { "routine", "written_by", "note",
	"title", "cue", "say", "because", "homework_for", "sound_card",
	"microphone" };

/* The first two are lists of sentences, the others of single words. */
enum { LISTS_OF_TEXTS = 2 };

static const char *const lists[] = { "check", "feel", "pulses", "order",
	"tuning", "turns_so_far", "clean", "shaky" };

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
	for (int kind = 0; kind < MAP_SETTINGS; kind++)
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

static bool among(const char *word, size_t first, size_t end)
{
	for (size_t i = first; i < end; i++)
		if (strcmp(lists[i], word) == 0)
			return true;
	return false;
}

bool keys_take_list(const char *word)
{
	return among(word, 0, sizeof(lists) / sizeof(lists[0]));
}

bool keys_take_words(const char *word)
{
	return among(word, LISTS_OF_TEXTS, sizeof(lists) / sizeof(lists[0]));
}

bool keys_has(enum map_kind kind, const char *word)
{
	return find(kind, word, strlen(word)) >= 0;
}

const char *keys_at(enum map_kind kind, int i)
{
	return i < KEYS_MAX ? maps[kind].key[i] : NULL;
}

const char *keys_name(enum map_kind kind)
{
	return maps[kind].name;
}

const char *keys_example(const char *name)
{
	for (int kind = 0; kind < MAP_KINDS; kind++)
		if (strcmp(maps[kind].name, name) == 0)
			return maps[kind].example;
	return "";
}

static void not_a_map(
    struct reader *rd, const struct node *n, enum map_kind kind)
{
	if (n->key != NULL)
		fault_here(rd, n,
		    message_with(M_ROUTINE_WANT_MAP, TEXT(n->key),
			TEXT(maps[kind].example)));
	else if (kind == MAP_ROUTINE || kind == MAP_HOMEWORK_FILE)
		fault_here(rd, n, message_of(M_ROUTINE_FILE_NOT_A_MAP));
	else
		fault_here(rd, n,
		    message_with(
			M_ROUTINE_NOT_A_MAP, TEXT(maps[kind].example)));
}

/* A word that is no key of the map; owner: the value before it, or NULL. */
static void unknown(struct reader *rd, enum map_kind kind, const struct node *n,
    const struct node *owner)
{
	if (rd->faults->count == FAULTS_MAX)
		rd->faults->left_out++;
	else if (!comma_slip(rd, owner, n))
		fault_key(rd, n, keys_unknown(kind, n->key));
}

bool keys_check(struct reader *rd, const struct node *map, enum map_kind kind)
{
	int line[KEYS_MAX] = { 0 };
	const struct node *owner = NULL;

	if (map->kind != NODE_MAP) {
		not_a_map(rd, map, kind);
		return false;
	}
	for (const struct node *n = map->first; n != NULL; n = n->next) {
		int i = find(kind, n->key, strlen(n->key));

		if (i < 0)
			unknown(rd, kind, n, owner);
		else if (line[i] > 0)
			fault_key(rd, n,
			    message_with(
				M_ROUTINE_TWICE, TEXT(n->key), WHOLE(line[i])));
		else
			line[i] = n->key_line;
		if (i >= 0)
			owner = n;
	}
	return true;
}
