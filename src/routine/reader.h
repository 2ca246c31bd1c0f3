/*
 * reader.h - what the parts of routine_read share
 *
 * A reader walks one tree of nodes and fills one routine; every fault goes to
 * the list with its place, and reading goes on.  A value that is wrong leaves
 * its default in place, so that one slip does not bring others with it.
 *
 * Values are read strictly and by us alone: "4,5", "1:30", "010" and "Yes" are
 * faults with a hint, never something else.
 */
#ifndef EVENHAND_ROUTINE_READER_H
#define EVENHAND_ROUTINE_READER_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/fault.h"
#include "evenhand/base/node.h"
#include "evenhand/routine/read.h"
#include "evenhand/routine/routine.h"

struct reader {
	struct routine *r;
	struct faults *faults;
	const char *path; /* of the file that is being read */
	bool no_memory;
	bool units_known; /* the order was read without a fault */
};

/* --- faults: at a value, at a key --- */

bool fault_here(struct reader *rd, const struct node *value, struct message m);
bool fault_key(struct reader *rd, const struct node *value, struct message m);

/* How many faults there are, those left out counted. */
int faults_found(const struct reader *rd);

/* --- keys.c: which words may stand before a colon --- */

enum map_kind {
	MAP_ROUTINE,
	MAP_HOMEWORK_FILE,
	MAP_PLAYER,
	MAP_STUDENT, /* player in a homework file */
	MAP_BOWING,
	MAP_TURNS,
	MAP_SESSION,
	MAP_RECAP,
	MAP_MOVE_ON,
	MAP_HOMEWORK,
	MAP_STAGE,
	MAP_LESSON_MARK,
	MAP_SETTINGS, /* a file of its own, with which a routine shares none */
	MAP_KINDS
};

/*
 * Adds a fault for each key that does not belong into a map of this kind or
 * stands in it twice.  False when the node is no map (added too).
 */
bool keys_check(struct reader *rd, const struct node *map, enum map_kind kind);

/*
 * Whether a word is a key of any map of routines, whether its value is free
 * text, whether it is a list, and whether that is one of single words.
 */
bool keys_know(const char *word, size_t length);
bool keys_free_text(const char *word, size_t length);
bool keys_take_list(const char *word);
bool keys_take_words(const char *word);

/* Whether a map has a key; its keys one by one, NULL behind the last. */
bool keys_has(enum map_kind kind, const char *word);
const char *keys_at(enum map_kind kind, int i);

/* The key a map stands under, "" for a whole file. */
const char *keys_name(enum map_kind kind);

/* What may stand in a map that belongs to this key, as an example. */
const char *keys_example(const char *name);

/* keys_near.c: small letters, and _ for what people put between words. */
void keys_tidy(char *to, size_t size, const char *word);

/* What is said of a word that is no key of a map. */
struct message keys_unknown(enum map_kind kind, const char *word);

/* Whether a map has a key, or a word that is said to be nearly that key. */
bool keys_meant(const struct node *map, enum map_kind kind, const char *key);

/*
 * comma.c: a key without a value behind a comma that was not meant to part
 * anything from the value of owner (or NULL).  True when that was the slip: a
 * fault is added, or will be when the owner is read.
 */
bool comma_slip(
    struct reader *rd, const struct node *owner, const struct node *n);

/* --- value.c: one value each; false with a fault, *out unchanged --- */

/*
 * The word of a node that must hold one and not be empty.  key is what the
 * value, or the list it is a part of, stands under.
 */
bool value_word(
    struct reader *rd, const struct node *n, const char *key, const char **out);

/* Words for people: no control characters, line ends made spaces. */
bool value_text(struct reader *rd, const struct node *n, const char *key,
    int columns, const char **out);

/* A copy with small letters for A to Z. */
void small_letters(char *to, size_t size, const char *word);

/* The fault of a value that is right but for its capital letters. */
bool fault_small(struct reader *rd, const struct node *n, const char *right);

/* One of the words of a list, ended by NULL: its index. */
bool value_choice(struct reader *rd, const struct node *n,
    const char *const *words, int *out);
bool value_yes_no(struct reader *rd, const struct node *n, bool *out);

/* Whether because: gives a reason; a fault when it is there and empty. */
bool value_because(struct reader *rd, const struct node *map);

/* A list (list.c); an error when it is none or longer than most. */
bool value_list(struct reader *rd, const struct node *n, int most);

/* --- number.c: numbers, read digit by digit --- */

/* One number's name for messages, and its bounds. */
struct bounds {
	const char *key;
	int least, most;
};

bool number_whole(
    struct reader *rd, const struct node *n, struct bounds b, int *out);

/* With at most two decimals, in hundredths; the bounds are whole. */
bool number_hundredths(
    struct reader *rd, const struct node *n, struct bounds b, int *out);

/* --- the parts, each with the map it reads or NULL --- */

/* kind is MAP_PLAYER, or MAP_STUDENT in a homework file. */
void read_player(struct reader *rd, const struct node *map, enum map_kind kind);
void read_bowing(struct reader *rd, const struct node *map);
void read_turns(struct reader *rd, const struct node *map);
void read_minutes(
    struct reader *rd, const struct node *n, bool because, int *ms);
void read_session(struct reader *rd, const struct node *map);
void read_recap(struct reader *rd, const struct node *map);
void read_move_on(struct reader *rd, const struct node *map);
void read_stages(struct reader *rd, const struct node *list);
void read_homework(struct reader *rd, const struct node *map);
void read_lesson_marks(struct reader *rd, const struct node *list);

/* Travel and shift of a stage that slides (stage_travel.c). */
void read_travel(struct reader *rd, const struct node *map, struct stage *s);

/* The strings from the highest, "A, D, G, C", into a buffer. */
void list_strings(const struct routine *r, char *buffer, size_t size);

/* Those who take turns, "1, 2, 3, 4". */
void list_units(const struct routine *r, char *buffer, size_t size);

/* What only the whole shows: times against the cap, speed (whole.c). */
void check_whole(struct reader *rd, const struct node *root);

/* --- letters.c: bytes of text --- */

enum { TEXT_LISTED = 160 };

/*
 * The first control character (C0, DEL, C1, line and direction marks, a byte
 * order mark, no character at all) in length bytes of UTF-8, or NULL.  Tab and
 * line ends count as plain.
 */
const char *letters_control(const char *s, size_t length);

/* Letters in length bytes of UTF-8. */
int letters_count(const char *s, size_t length);

#endif
