/*
 * record_turns.c - the lines of turns of a sitting, and what was heard of them
 *
 *	[turn, block, stage, unit, pulses, mark, round, bows, start_ms,
 *	    ended_s, slide_um, row, mark_row, mark_ms {first_go: yes, ...}]
 *
 * One line a turn, in columns; what is seldom said stands behind them by name.
 */
#include "reader.h"
#include "words.h"

enum {
	COLUMN_TURN,
	COLUMN_BLOCK,
	COLUMN_STAGE,
	COLUMN_UNIT,
	COLUMN_PULSES,
	COLUMN_MARK,
	COLUMN_ROUND,
	COLUMN_BOWS,
	COLUMN_START,
	COLUMN_ENDED,
	COLUMN_SLIDE,
	COLUMN_ROW,
	COLUMN_MARK_ROW,
	COLUMN_MARK_MS,
	COLUMNS,
	COLUMN_MORE = COLUMNS,
};

/* One line on its way, with what its sitting says. */
struct line {
	struct record_reader *rd;
	const struct record_sitting *of;
	const struct node *at[COLUMNS + 1]; /* the last one may be NULL */
	struct record_turn *t;
};

static bool split(struct line *l, const struct node *n)
{
	int length;

	if (!record_list(l->rd, n, "turns", COLUMNS + 1, &length))
		return false;
	if (length < COLUMNS)
		return record_fault(l->rd, n,
		    message_with(M_RECORD_COLUMNS, TEXT("turns"),
			WHOLE(COLUMNS), WHOLE(length)));
	n = n->first;
	for (int i = 0; i <= COLUMNS; i++) {
		l->at[i] = n;
		n = n != NULL ? n->next : NULL;
	}
	return true;
}

static bool whole(
    struct line *l, int column, const char *key, int least, int most, int *out)
{
	return record_int(
	    l->rd, l->at[column], (struct whole) { key, least, most }, out);
}

/* What a person wants to know of it. */
static bool read_said(struct line *l)
{
	struct record_turn *t = l->t;
	int block, mark;

	if (!whole(l, COLUMN_TURN, "turn", 0, NUMBER_MOST, &t->number) ||
	    !record_choice(
		l->rd, l->at[COLUMN_BLOCK], "block", record_blocks, &block) ||
	    !record_stage(l->rd, l->at[COLUMN_STAGE], false, &t->stage) ||
	    !record_unit(l->rd, l->at[COLUMN_UNIT], true, &t->unit) ||
	    !whole(l, COLUMN_PULSES, "pulses", 0, PULSES_MAX, &t->pulses) ||
	    !record_choice(
		l->rd, l->at[COLUMN_MARK], "mark", record_marks, &mark))
		return false;
	t->kind = (enum block_kind)block;
	t->mark = (enum mark)mark;
	return true;
}

/* And what its numbers are. */
static bool read_counted(struct line *l)
{
	struct record_turn *t = l->t;
	int ended;

	if (!whole(l, COLUMN_ROUND, "round", 0, NUMBER_MOST, &t->round) ||
	    !whole(
		l, COLUMN_BOWS, "bows", 0, RECORD_BOWS_MOST, &t->bows_done) ||
	    !whole(l, COLUMN_START, "start_ms", 0, MS_MOST, &t->start_ms) ||
	    !whole(l, COLUMN_ENDED, "ended_s", -SECONDS_MOST, SECONDS_MOST,
		&ended) ||
	    !record_whole(l->rd, l->at[COLUMN_SLIDE],
		(struct whole) { "slide_um", 0, SLIDE_MOST }, &t->slide_um) ||
	    !record_row(l->rd, l->at[COLUMN_ROW], &t->row))
		return false;
	t->bows_asked = t->bows_done;
	t->ended.utc = l->of->began.utc + ended;
	t->ended.offset = l->of->began.offset;
	return true;
}

static bool read_mark(struct line *l)
{
	struct record_turn *t = l->t;

	if (!record_whole(l->rd, l->at[COLUMN_MARK_ROW],
		(struct whole) { "mark_row", 0, RECORD_ROW_MOST },
		&t->mark_row) ||
	    !whole(l, COLUMN_MARK_MS, "mark_ms", 0, MS_MOST, &t->mark_ms))
		return false;
	/* A mark comes after its turn; before it was none at all. */
	if (t->mark_row != 0 && t->mark_row <= t->row)
		return record_fault(l->rd, l->at[COLUMN_MARK_ROW],
		    message_with(
			M_RECORD_BEFORE, WHOLE(t->mark_row), WHOLE(t->row)));
	return t->mark_row != 0 || (t->mark == MARK_NONE && t->mark_ms == 0) ||
	    record_fault(
		l->rd, l->at[COLUMN_MARK_ROW], message_of(M_RECORD_MARKLESS));
}

/* One of those that are seldom said; nothing when it is not. */
static bool seldom(
    struct line *l, const char *key, int least, int most, int *out)
{
	const struct node *n = node_get(l->at[COLUMN_MORE], key);

	return n == NULL ||
	    record_int(l->rd, n, (struct whole) { key, least, most }, out);
}

static bool read_seldom(struct line *l)
{
	static const char *const keys[] = { "first_go", "bows_asked", "resets",
		"dropouts", "offset_s", NULL };
	static const struct map_keys map = { "turns", 0, keys };
	const struct node *n = l->at[COLUMN_MORE], *first_go;
	struct record_turn *t = l->t;

	if (n == NULL)
		return true;
	if (!record_map(l->rd, n, &map))
		return false;
	first_go = node_get(n, "first_go");
	return (first_go == NULL ||
		   record_yes(l->rd, first_go, "first_go", &t->first_go)) &&
	    seldom(l, "bows_asked", 0, RECORD_BOWS_MOST, &t->bows_asked) &&
	    seldom(l, "resets", 0, NUMBER_MOST, &t->resets) &&
	    seldom(l, "dropouts", 0, MS_MOST, &t->dropouts) &&
	    seldom(l, "offset_s", -OFFSET_MOST, OFFSET_MOST, &t->ended.offset);
}

/* Numbers rise; a name that is the one before's needs no memory of its own. */
static bool read_turn(
    struct record_reader *rd, const struct node *n, struct record_sitting *s)
{
	struct record_turn *t = &s->turn[s->turns];
	struct line l = { .rd = rd, .of = s, .t = t };

	if (s->turns > 0) {
		t->stage = t[-1].stage;
		t->unit = t[-1].unit;
	}
	if (!split(&l, n) || !read_said(&l) || !read_counted(&l) ||
	    !read_mark(&l) || !read_seldom(&l))
		return false;
	if (s->turns > 0 && t->number <= t[-1].number)
		return record_fault(rd, n,
		    message_with(
			M_RECORD_ORDER, WHOLE(t->number), WHOLE(t[-1].number)));
	s->turns++;
	return record_count_row(rd, n, ROWS_OF_TURNS, s->computer, t->row) &&
	    (t->mark_row == 0 ||
		record_row_within(rd, n, s->computer, t->mark_row));
}

bool record_read_turns(
    struct record_reader *rd, const struct node *list, struct record_sitting *s)
{
	int length;

	if (!record_list(rd, list, "turns", RECORD_SITTING_TURNS_MAX, &length))
		return false;
	if (length == 0)
		return true;
	s->turn = arena_take(&rd->r->arena, (size_t)length * sizeof(*s->turn));
	if (s->turn == NULL)
		return record_no_memory(rd);
	for (const struct node *n = list->first; n != NULL; n = n->next)
		if (!read_turn(rd, n, s))
			return false;
	rd->r->turns += s->turns;
	return rd->r->turns <= RECORD_TURNS_MAX ||
	    record_fault(rd, list,
		message_with(
		    M_RECORD_TOO_MANY, TEXT("turns"), WHOLE(RECORD_TURNS_MAX)));
}
