/*
 * write_sitting.c - a sitting: words for people first, lines of turns after
 */
#include <inttypes.h>

#include "evenhand/record/moment.h"
#include "words.h"
#include "writer.h"

static void write_day(struct text *t, int day)
{
	char date[DATE_TEXT_MAX];

	date_text(day, date);
	text_add(t, date);
}

static void write_head(struct text *t, const struct record_sitting *s)
{
	text_add(t, "- began: ");
	moment_tell(t, s->began);
	text_add(t, "\n  day: ");
	write_day(t, s->day);
	text_format(t,
	    "\n  computer: %d\n  row: %" PRId64 "\n  routine: \"%016" PRIx64
	    "\"\n  work: {stage: ",
	    s->computer + 1, s->row, s->routine->fingerprint);
	write_name(t, s->work_stage);
	text_add(t, ", asked: ");
	write_name(t, s->asked_stage);
	text_add(t, ", instrument: ");
	write_name(t, s->instrument);
	text_format(t,
	    "}\n  plan: {marking: %s, cap_ms: %d, planned_ms: %d}\n"
	    "  length_ms: %d\n  end: {how: %s",
	    record_markings[s->marking], s->cap_ms, s->planned_ms, s->length_ms,
	    record_hows[s->how]);
	if (s->how != ENDED_UNDER_WAY) {
		text_add(t, ", at: ");
		moment_tell(t, s->ended);
		text_format(t, ", row: %" PRId64, s->ended_row);
	}
	text_add(t, "}\n");
}

static void write_shares(struct text *t, const struct record_sitting *s)
{
	if (s->shares == 0)
		return;
	text_add(t, "  shares: [");
	for (int i = 0; i < s->shares; i++) {
		const struct record_share *share = &s->share[i];

		text_add(t, i > 0 ? ", [" : "[");
		write_name(t, share->stage);
		text_add(t, ", ");
		write_name(t, share->unit);
		text_format(t, ", %d, %d]", share->planned, share->dropped);
	}
	text_add(t, "]\n");
}

/* One of what is seldom said; *before is what stands before the next. */
static void write_seldom(
    struct text *t, const char **before, const char *key, int value)
{
	text_format(t, "%s%s: %d", *before, key, value);
	*before = ", ";
}

static void write_more(
    struct text *t, const struct record_turn *turn, int offset)
{
	const char *before = ", {";

	if (turn->first_go) {
		text_format(t, "%sfirst_go: yes", before);
		before = ", ";
	}
	if (turn->bows_asked != turn->bows_done)
		write_seldom(t, &before, "bows_asked", turn->bows_asked);
	if (turn->resets != 0)
		write_seldom(t, &before, "resets", turn->resets);
	if (turn->dropouts != 0)
		write_seldom(t, &before, "dropouts", turn->dropouts);
	if (turn->ended.offset != offset)
		write_seldom(t, &before, "offset_s", turn->ended.offset);
	text_add(t, before[1] == ' ' && before[2] == '\0' ? "}]\n" : "]\n");
}

static void write_turn(struct text *t, const struct record_turn *turn,
    const struct record_sitting *s)
{
	text_format(
	    t, "  - [%d, %s, ", turn->number, record_blocks[turn->kind]);
	write_name(t, turn->stage);
	text_add(t, ", ");
	write_name(t, turn->unit);
	text_format(t,
	    ", %d, %s, %d, %d, %d, %" PRId64 ", %" PRId64 ", %" PRId64
	    ", %" PRId64 ", %d",
	    turn->pulses, record_marks[turn->mark], turn->round,
	    turn->bows_done, turn->start_ms, turn->ended.utc - s->began.utc,
	    turn->slide_um, turn->row, turn->mark_row, turn->mark_ms);
	write_more(t, turn, s->began.offset);
}

static void write_measure(struct text *t, const struct record_measure *m)
{
	text_format(t, "  - {turn: %d, method: %d, row: %" PRId64 ", heard: {",
	    m->turn, m->method, m->row);
	for (int i = 0; i < m->values; i++) {
		text_format(t, "%s%s: ", i > 0 ? ", " : "", m->value[i].name);
		record_write_real(t, m->value[i].value);
	}
	text_add(t, "}}\n");
}

void write_note(struct text *t, const struct record_note *n,
    const struct record_sitting *of)
{
	text_add(t, of != NULL ? "  - {at: " : "- {at: ");
	moment_tell(t, n->at);
	text_add(t, ", day: ");
	write_day(t, n->day);
	text_format(t, ", kind: %s, finger: %d, words: ",
	    record_kinds[n->kind - NOTE_PAIN], n->finger);
	write_quoted(t, n->words);
	text_format(t, ", row: %" PRId64, n->row);
	if (of == NULL || of->computer != n->computer)
		text_format(t, ", computer: %d", n->computer + 1);
	text_add(t, "}\n");
}

void write_sitting(struct text *t, const struct record_sitting *s)
{
	write_head(t, s);
	write_shares(t, s);
	if (s->turns > 0)
		text_add(t, "  turns:\n");
	for (int i = 0; i < s->turns; i++)
		write_turn(t, &s->turn[i], s);
	if (s->measures > 0)
		text_add(t, "  measures:\n");
	for (int i = 0; i < s->measures; i++)
		write_measure(t, &s->measure[i]);
	if (s->note != NULL)
		text_add(t, "  notes:\n");
	for (const struct record_note *n = s->note; n != NULL; n = n->next)
		write_note(t, n, s);
}
