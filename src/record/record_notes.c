/*
 * record_notes.c - what hurt, was sore or was asked
 *
 *	{at: 2026-03-02T17:05:10+01:00, day: 2026-03-02, kind: question,
 *	    finger: 0, words: "Which way?", row: 53}
 *
 * One that stands in its sitting was written on the same computer, unless it
 * says otherwise; one outside of any must say.
 */
#include "reader.h"
#include "words.h"

static bool read_words(
    struct record_reader *rd, const struct node *n, struct record_note *note)
{
	int kind;

	if (!record_choice(
		rd, node_get(n, "kind"), "kind", record_kinds, &kind) ||
	    !record_int(rd, node_get(n, "finger"),
		(struct whole) { "finger", 0, FINGERS_MAX }, &note->finger) ||
	    !record_text(rd, node_get(n, "words"), "words", RECORD_WORDS_MAX,
		&note->words))
		return false;
	note->kind = (enum note_kind)(kind + NOTE_PAIN);
	return true;
}

static bool read_place(struct record_reader *rd, const struct node *n,
    const struct record_sitting *of, struct record_note *note)
{
	const struct node *computer = node_get(n, "computer");

	if (of != NULL && computer == NULL)
		note->computer = of->computer;
	else if (computer == NULL)
		return record_fault(
		    rd, n, message_with(M_RECORD_MISSING, TEXT("computer")));
	else if (!record_computer_index(rd, computer, &note->computer))
		return false;
	return record_row(rd, node_get(n, "row"), &note->row) &&
	    record_moment(rd, node_get(n, "at"), "at", &note->at) &&
	    record_day_of(rd, node_get(n, "day"), note->at, &note->day);
}

struct record_note *record_read_note(struct record_reader *rd,
    const struct node *n, const struct record_sitting *of)
{
	static const char *const keys[] = { "at", "day", "kind", "finger",
		"words", "row", "computer", NULL };
	static const struct map_keys map = { "notes", 6, keys };
	struct record_note *note;

	if (!record_map(rd, n, &map))
		return NULL;
	if (rd->r->notes == RECORD_NOTES_MAX) {
		record_fault(rd, n,
		    message_with(M_RECORD_TOO_MANY, TEXT("notes"),
			WHOLE(RECORD_NOTES_MAX)));
		return NULL;
	}
	note = arena_take(&rd->r->arena, sizeof(*note));
	if (note == NULL) {
		record_no_memory(rd);
		return NULL;
	}
	if (!read_words(rd, n, note) || !read_place(rd, n, of, note) ||
	    !record_count_row(rd, n, ROWS_OF_NOTES, note->computer, note->row))
		return NULL;
	rd->r->notes++;
	return note;
}
