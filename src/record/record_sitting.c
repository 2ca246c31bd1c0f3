/*
 * record_sitting.c - a sitting with all that belongs to it
 */
#include "evenhand/music/instrument.h"
#include "reader.h"
#include "words.h"

bool record_computer_index(
    struct record_reader *rd, const struct node *n, int *out)
{
	int number;

	if (!record_int(rd, n,
		(struct whole) { "computer", 1, RECORD_COMPUTERS_MAX },
		&number))
		return false;
	if (number > rd->r->computers)
		return record_fault(
		    rd, n, message_with(M_RECORD_NO_COMPUTER, WHOLE(number)));
	*out = number - 1;
	return true;
}

static bool read_routine_of(
    struct record_reader *rd, const struct node *n, struct record_sitting *s)
{
	const char *word;
	uint64_t fingerprint;

	if (!record_hex(rd, n, "routine", RECORD_FINGERPRINT, &word))
		return false;
	fingerprint = record_fingerprint(word);
	s->routine = record_routine_of(rd->r, fingerprint);
	return s->routine != NULL ||
	    record_fault(rd, n, message_with(M_RECORD_NO_ROUTINE, TEXT(word)));
}

/* "" where it was not known, or one that is. */
static bool read_instrument(
    struct record_reader *rd, const struct node *n, const char **out)
{
	const char *names[INSTRUMENT_COUNT + 1] = { NULL };
	int found;

	for (int i = 0; i < INSTRUMENT_COUNT; i++)
		names[i] = instrument_name((enum instrument)i);
	return record_text(rd, n, "instrument", PAST_INSTRUMENT_MAX, out) &&
	    (**out == '\0' ||
		record_choice(rd, n, "instrument", names, &found));
}

/* What it was about: {stage: tone, asked: tone, instrument: cello}. */
static bool read_work(
    struct record_reader *rd, const struct node *n, struct record_sitting *s)
{
	static const char *const keys[] = { "stage", "asked", "instrument",
		NULL };
	static const struct map_keys map = { "work", 3, keys };

	return record_map(rd, n, &map) &&
	    record_stage(rd, node_get(n, "stage"), true, &s->work_stage) &&
	    record_stage(rd, node_get(n, "asked"), true, &s->asked_stage) &&
	    read_instrument(rd, node_get(n, "instrument"), &s->instrument);
}

static bool read_plan(
    struct record_reader *rd, const struct node *n, struct record_sitting *s)
{
	static const char *const keys[] = { "marking", "cap_ms", "planned_ms",
		NULL };
	static const struct map_keys map = { "plan", 3, keys };

	return record_map(rd, n, &map) &&
	    record_choice(rd, node_get(n, "marking"), "marking",
		record_markings, &s->marking) &&
	    record_int(rd, node_get(n, "cap_ms"),
		(struct whole) { "cap_ms", 0, MS_MOST }, &s->cap_ms) &&
	    record_int(rd, node_get(n, "planned_ms"),
		(struct whole) { "planned_ms", 0, MS_MOST }, &s->planned_ms);
}

/* {how: whole, at: ..., row: 52}, or {how: cut off} alone. */
static bool read_end(
    struct record_reader *rd, const struct node *n, struct record_sitting *s)
{
	static const char *const keys[] = { "how", "at", "row", NULL };
	static const struct map_keys map = { "end", 1, keys };
	const struct node *at, *row;
	int how;

	if (!record_map(rd, n, &map) ||
	    !record_choice(rd, node_get(n, "how"), "how", record_hows, &how))
		return false;
	s->how = (enum ended)how;
	at = node_get(n, "at");
	row = node_get(n, "row");
	if ((at == NULL) != (how == ENDED_UNDER_WAY) ||
	    (row == NULL) != (how == ENDED_UNDER_WAY))
		return record_fault(rd, n, message_of(M_RECORD_ENDLESS));
	return at == NULL ||
	    (record_moment(rd, at, "at", &s->ended) &&
		record_row(rd, row, &s->ended_row) &&
		record_row_within(rd, row, s->computer, s->ended_row));
}

/* [stage, unit, planned, dropped] */
static bool read_share(
    struct record_reader *rd, const struct node *n, struct record_sitting *s)
{
	struct record_share *share = &s->share[s->shares];
	const struct node *at[4];
	int length;

	if (!record_list(rd, n, "shares", 4, &length))
		return false;
	if (length < 4)
		return record_fault(rd, n,
		    message_with(M_RECORD_COLUMNS, TEXT("shares"), WHOLE(4),
			WHOLE(length)));
	n = n->first;
	for (int i = 0; i < 4; i++, n = n->next)
		at[i] = n;
	if (!record_stage(rd, at[0], false, &share->stage) ||
	    !record_unit(rd, at[1], false, &share->unit) ||
	    !record_int(rd, at[2], (struct whole) { "planned", 0, NUMBER_MOST },
		&share->planned) ||
	    !record_int(rd, at[3], (struct whole) { "dropped", 0, NUMBER_MOST },
		&share->dropped))
		return false;
	if (record_share_before(s, s->shares))
		return record_fault(
		    rd, at[1], message_with(M_RECORD_AGAIN, TEXT(share->unit)));
	s->shares++;
	return true;
}

static bool read_shares(
    struct record_reader *rd, const struct node *list, struct record_sitting *s)
{
	int length;

	if (!record_list(rd, list, "shares", RECORD_SHARES_MAX, &length))
		return false;
	if (length == 0)
		return true;
	s->share = arena_take(
	    &rd->r->arena, (size_t)length * sizeof(*s->share));
	if (s->share == NULL)
		return record_no_memory(rd);
	for (const struct node *n = list->first; n != NULL; n = n->next)
		if (!read_share(rd, n, s))
			return false;
	return true;
}

static bool read_notes(
    struct record_reader *rd, const struct node *list, struct record_sitting *s)
{
	struct record_note **end = &s->note;
	int length;

	if (!record_list(rd, list, "notes", RECORD_SITTING_TURNS_MAX, &length))
		return false;
	for (const struct node *n = length ? list->first : NULL; n != NULL;
	     n = n->next) {
		*end = record_read_note(rd, n, s);
		if (*end == NULL)
			return false;
		end = &(*end)->next;
	}
	return true;
}

static bool read_head(
    struct record_reader *rd, const struct node *n, struct record_sitting *s)
{
	return record_computer_index(
		   rd, node_get(n, "computer"), &s->computer) &&
	    record_row(rd, node_get(n, "row"), &s->row) &&
	    record_moment(rd, node_get(n, "began"), "began", &s->began) &&
	    record_day_of(rd, node_get(n, "day"), s->began, &s->day) &&
	    read_routine_of(rd, node_get(n, "routine"), s) &&
	    read_work(rd, node_get(n, "work"), s) &&
	    read_plan(rd, node_get(n, "plan"), s) &&
	    record_int(rd, node_get(n, "length_ms"),
		(struct whole) { "length_ms", 0, MS_MOST }, &s->length_ms) &&
	    read_end(rd, node_get(n, "end"), s);
}

bool record_read_sitting(struct record_reader *rd, const struct node *n)
{
	static const char *const keys[] = { "began", "day", "computer", "row",
		"routine", "work", "plan", "length_ms", "end", "shares",
		"turns", "measures", "notes", NULL };
	static const struct map_keys map = { "sittings", 9, keys };
	struct record_sitting *s;

	if (!record_map(rd, n, &map))
		return false;
	if (rd->r->sittings == RECORD_SITTINGS_MAX)
		return record_fault(rd, n,
		    message_with(M_RECORD_TOO_MANY, TEXT("sittings"),
			WHOLE(RECORD_SITTINGS_MAX)));
	s = arena_take(&rd->r->arena, sizeof(*s));
	if (s == NULL)
		return record_no_memory(rd);
	if (!read_head(rd, n, s) ||
	    !read_shares(rd, node_get(n, "shares"), s) ||
	    !record_read_turns(rd, node_get(n, "turns"), s) ||
	    !record_read_measures(rd, node_get(n, "measures"), s) ||
	    !read_notes(rd, node_get(n, "notes"), s))
		return false;
	*rd->sitting_end = s;
	rd->sitting_end = &s->next;
	rd->r->sittings++;
	return record_count_row(rd, n, ROWS_OF_SITTINGS, s->computer, s->row);
}
