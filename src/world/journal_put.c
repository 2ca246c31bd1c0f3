/*
 * journal_put.c - what the session says, made into rows
 */
#include <assert.h>
#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/text.h"
#include "journal_parts.h"

enum { MEASURES_BYTES = 64 * TURN_VALUES_MAX };

/* Memory for a row: what is practised goes before what was laid by. */
static struct row *row_somehow(
    struct journal *j, enum row_kind kind, const char *const *texts)
{
	struct row *row = row_new(kind, texts);

	if (row == NULL && j->reserve != NULL) {
		free(j->reserve);
		j->reserve = NULL;
		row = row_new(kind, texts);
	}
	return row;
}

/* A row that belongs to the sitting begun last; NULL without memory. */
static struct row *row_make(struct journal *j, enum row_kind kind,
    struct moment at, const char *const *texts)
{
	/* Only a note may stand without its sitting. */
	bool useless = j->lost && kind != ROW_NOTE;
	struct row *row = useless ? NULL : row_somehow(j, kind, texts);

	assert(!j->looking);
	if (row == NULL)
		return NULL;
	memcpy(row->origin, j->origin, ORIGIN_BYTES);
	row->number[ROW_SEQUENCE] = ++j->sequence;
	row->number[ROW_SITTING_OF] = j->sitting;
	row->number[ROW_UTC] = at.utc;
	row->number[ROW_OFFSET] = at.offset;
	row->number[ROW_DAY] = j->sitting != 0 ? j->day
					       : moment_practice_day(at);
	return row;
}

static const char *stage_id(const struct routine *r, int stage)
{
	return stage >= 0 && stage < r->stages ? r->stage[stage].id : "";
}

static const char *unit_name(const struct routine *r, int unit)
{
	return unit >= 0 && unit < r->units ? r->unit[unit].name : "";
}

/* The row a sitting begins with; the rows after it refer to it. */
static struct row *sitting_row(struct journal *j, const struct sitting_row *s)
{
	const struct routine *r = s->routine;
	char fingerprint[ORIGIN_BYTES];
	const char *texts[SITTING_TEXTS] = {
		[SITTING_FINGERPRINT] = fingerprint,
		[SITTING_NAME] = r->name ? r->name : "",
		[SITTING_TEXT] = r->text ? r->text : "",
		[SITTING_STAGE] = stage_id(r, s->plan->work_stage),
		[SITTING_DEVICE] = s->device,
		[SITTING_INSTRUMENT] = instrument_name(r->setup.instrument),
		[SITTING_ASKED] = stage_id(r, s->plan->where.asked),
	};
	struct row *row;

	snprintf(
	    fingerprint, sizeof(fingerprint), "%016" PRIx64, r->fingerprint);
	row = row_make(j, ROW_SITTING, s->began, texts);
	if (row == NULL)
		return NULL;
	row->number[SITTING_EDITION] = r->edition;
	row->number[SITTING_MARKING] = s->plan->marking;
	row->number[SITTING_CAP] = s->plan->cap_ms;
	row->number[SITTING_PLANNED] = s->plan->length_ms;
	row->number[SITTING_RATE] = s->rate;
	return row;
}

static struct row *share_row(
    struct journal *j, const struct sitting_row *s, int unit)
{
	const char *texts[SHARE_TEXTS] = {
		[SHARE_STAGE] = stage_id(s->routine, s->plan->work_stage),
		[SHARE_UNIT] = unit_name(s->routine, unit),
	};
	struct row *row = row_make(j, ROW_SHARE, s->began, texts);

	if (row == NULL)
		return NULL;
	row->number[SHARE_PLANNED] = s->plan->share[unit];
	row->number[SHARE_DROPPED] = s->plan->dropped[unit];
	return row;
}

void journal_begin(struct journal *j, const struct sitting_row *s)
{
	struct row *first, **next;

	j->day = s->plan->day;
	j->bow_ms = s->routine->bow_ms;
	j->under_way = true;
	j->sitting = j->sequence + 1;
	j->lost = false;
	first = sitting_row(j, s);
	if (first == NULL) {
		/* Without it the database refuses all that would follow. */
		j->lost = true;
		journal_put(j, NULL);
		return;
	}
	next = &first->next;
	for (int u = 0; u < s->routine->units; u++) {
		if (s->plan->share[u] == 0 && s->plan->dropped[u] == 0)
			continue;
		*next = share_row(j, s, u);
		if (*next != NULL)
			next = &(*next)->next;
	}
	journal_put(j, first);
}

void journal_turn(struct journal *j, const struct turn_row *t,
    const struct routine *r, struct moment at)
{
	const char *texts[TURN_TEXTS] = {
		[TURN_STAGE] = stage_id(r, t->stage),
		[TURN_UNIT] = unit_name(r, t->unit),
	};
	struct row *row = row_make(j, ROW_TURN, at, texts);

	if (row != NULL) {
		row->number[TURN_NUMBER] = t->number;
		row->number[TURN_KIND] = t->kind;
		row->number[TURN_ROUND] = t->round;
		row->number[TURN_PULSES] = t->pulses;
		row->number[TURN_ASKED] = t->bows_asked;
		row->number[TURN_DONE] = t->bows_done;
		row->number[TURN_FIRST_GO] = t->first_go;
		row->number[TURN_RESETS] = t->resets;
		row->number[TURN_DROPOUTS] = t->dropouts;
		row->number[TURN_START] = t->start_ms;
		row->number[TURN_ENDED] = t->start_ms +
		    (int64_t)t->bows_done * j->bow_ms;
		row->number[TURN_SLIDE] = t->slide_um;
	}
	journal_put(j, row);
}

void journal_mark(
    struct journal *j, int number, enum mark mark, int64_t mark_ms)
{
	struct row *row = row_make(j, ROW_MARK, (struct moment) { 0 }, NULL);

	if (row != NULL) {
		row->number[MARK_NUMBER] = number;
		row->number[MARK_MARK] = mark;
		row->number[MARK_MS] = mark_ms;
	}
	journal_put(j, row);
}

/*
 * The values as a JSON object.  Names are ours and need no escapes; what is no
 * number cannot be kept and is left out.
 */
static bool values_text(
    struct text *t, const struct turn_value *value, int count)
{
	char number[40];

	text_add(t, "{");
	for (int i = 0; i < count; i++) {
		if (!isfinite(value[i].value))
			continue;
		snprintf(number, sizeof(number), "%.12g", value[i].value);
		text_format(t, "%s\"%s\":%s", t->length > 1 ? "," : "",
		    value[i].name, number);
	}
	text_add(t, "}");
	return !t->cut;
}

void journal_measures(struct journal *j, int number,
    const struct turn_value *value, int count, int method)
{
	char bytes[MEASURES_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));
	const char *texts[MEASURE_TEXTS] = { [MEASURE_VALUES] = bytes };
	struct row *row = NULL;

	if (values_text(&t, value, count))
		row = row_make(j, ROW_MEASURE, (struct moment) { 0 }, texts);
	if (row != NULL) {
		row->number[MEASURE_NUMBER] = number;
		row->number[MEASURE_METHOD] = method;
	}
	journal_put(j, row);
}

void journal_note(struct journal *j, const struct note_row *n, struct moment at)
{
	const char *texts[NOTE_TEXTS] = { [NOTE_WORDS] = n->words };
	struct row *row = row_make(j, ROW_NOTE, at, texts);

	if (row != NULL) {
		int day = moment_practice_day(at);

		/* What hurts after 04:00 hurts today, whenever it was begun. */
		if (day > row->number[ROW_DAY])
			row->number[ROW_DAY] = day;
		row->number[NOTE_KIND] = n->kind;
		row->number[NOTE_FINGER] = n->finger;
	}
	journal_put(j, row);
}

void journal_end(
    struct journal *j, enum ended ended, int64_t length_ms, struct moment at)
{
	struct row *row;

	if (!j->under_way)
		return;
	j->under_way = false;
	row = row_make(j, ROW_END, at, NULL);
	if (row != NULL) {
		row->number[END_ENDED] = ended;
		row->number[END_LENGTH] = length_ms;
	}
	journal_put(j, row);
}
