/*
 * history_days.c - one practice day in a few lines
 */
#include "history_days.h"

#include <string.h>

#include "evenhand/screen/lines.h"

enum { LIST_BYTES = 220, UNITS_SEEN_MAX = 64 };

/* The rows of one practice day, each a run of the history's. */
struct day {
	const struct history *h;
	int day;
	int tally, tallies; /* the first one, and how many */
};

/* Where the next thing of a list goes: behind a comma, but for the first. */
static void add_item(struct text *list, const struct message *m)
{
	char item[LIST_BYTES];

	message_text(m, item, sizeof(item));
	text_add(list, list->length > 0 ? ", " : "");
	text_add(list, item);
}

static bool is_finger(const char *unit)
{
	return unit[0] >= '1' && unit[0] <= '4' && unit[1] == '\0';
}

static void add_day(struct text *page, const struct day *d)
{
	int64_t ms = 0;
	int sittings = 0;
	struct message m;

	for (int i = 0; i < d->h->sittings; i++)
		if (d->h->sitting[i].day == d->day) {
			ms += d->h->sitting[i].length_ms;
			sittings++;
		}
	m = sittings > 0 ? message_with(M_HISTORY_DAY, DATE(d->day), CLOCK(ms),
			       WHOLE(sittings))
			 : message_with(M_HISTORY_DAY_NOT_PLAYED, DATE(d->day));
	lines_say(page, &m);
}

static const struct tally *tally_at(const struct day *d, int i)
{
	return &d->h->tally[d->tally + i];
}

/* Whether an earlier row of the day has the same stage and kind. */
static bool stage_came(const struct day *d, int i)
{
	const struct tally *t = tally_at(d, i);

	for (int k = 0; k < i; k++)
		if (tally_at(d, k)->kind == t->kind &&
		    strcmp(tally_at(d, k)->stage, t->stage) == 0)
			return true;
	return false;
}

static bool unit_came(const struct day *d, int i)
{
	for (int k = 0; k < i; k++)
		if (strcmp(tally_at(d, k)->unit, tally_at(d, i)->unit) == 0)
			return true;
	return false;
}

static void add_stages(struct text *page, const struct day *d)
{
	char bytes[LIST_BYTES];
	struct text list = text_in(bytes, sizeof(bytes));
	struct message m;

	for (int i = 0; i < d->tallies; i++) {
		const struct tally *t = tally_at(d, i);

		if (stage_came(d, i))
			continue;
		m = message_with(t->kind == BLOCK_RECAP ? M_HISTORY_STAGE_RECAP
							: M_HISTORY_STAGE,
		    TEXT(t->stage));
		add_item(&list, &m);
	}
	m = message_with(M_HISTORY_STAGES, TEXT(bytes));
	if (list.length > 0)
		lines_say(page, &m);
}

static int bows_of(const struct day *d, const char *unit)
{
	int bows = 0;

	for (int i = 0; i < d->tallies; i++)
		if (strcmp(tally_at(d, i)->unit, unit) == 0)
			bows += tally_at(d, i)->bows;
	return bows;
}

/* Units in the order of their names; the air has none. */
static int units_of(const struct day *d, const char **unit)
{
	int units = 0;

	for (int i = 0; i < d->tallies && units < UNITS_SEEN_MAX; i++) {
		const char *name = tally_at(d, i)->unit;
		int at = units;

		if (*name == '\0' || unit_came(d, i))
			continue;
		for (; at > 0 && strcmp(unit[at - 1], name) > 0; at--)
			unit[at] = unit[at - 1];
		unit[at] = name;
		units++;
	}
	return units;
}

static void add_bows(struct text *page, const struct day *d)
{
	char bytes[LIST_BYTES];
	const char *unit[UNITS_SEEN_MAX];
	struct text list = text_in(bytes, sizeof(bytes));
	int units = units_of(d, unit);
	struct message m;

	for (int u = 0; u < units; u++) {
		m = message_with(is_finger(unit[u]) ? M_HISTORY_BOWS_FINGER
						    : M_HISTORY_BOWS_UNIT,
		    TEXT(unit[u]), WHOLE(bows_of(d, unit[u])));
		add_item(&list, &m);
	}
	m = message_with(M_HISTORY_BOWS, TEXT(bytes));
	if (list.length > 0)
		lines_say(page, &m);
}

static enum message_id word_of(enum mark mark)
{
	if (mark == MARK_CLEAN)
		return M_WORD_CLEAN;
	return mark == MARK_SHAKY ? M_WORD_SHAKY : M_WORD_NO_MARK;
}

/* The first-go marks of one stage, that of row i and those like it. */
static void add_first_go(struct text *page, const struct day *d, int i)
{
	char bytes[LIST_BYTES];
	struct text list = text_in(bytes, sizeof(bytes));
	const struct tally *first = tally_at(d, i);
	struct message m;

	for (int k = i; k < d->tallies; k++) {
		const struct tally *t = tally_at(d, k);

		if (t->kind != first->kind ||
		    strcmp(t->stage, first->stage) != 0 ||
		    (t->first_go_pulses == 0 && t->first_go == MARK_NONE))
			continue;
		m = *t->unit
		    ? message_with(is_finger(t->unit) ? M_HISTORY_MARK_FINGER
						      : M_HISTORY_MARK_UNIT,
			  TEXT(t->unit), WORD(word_of(t->first_go)))
		    : message_of(word_of(t->first_go));
		add_item(&list, &m);
	}
	if (list.length == 0)
		return;
	m = first->first_go_pulses > 0
	    ? message_with(M_HISTORY_FIRST_GO, TEXT(first->stage),
		  WHOLE(first->first_go_pulses), TEXT(bytes))
	    : message_with(
		  M_HISTORY_FIRST_GO_AIR, TEXT(first->stage), TEXT(bytes));
	lines_say(page, &m);
}

/* A sentence that can name the place, when one was told. */
static struct message at_place(
    const struct past_note *n, enum message_id with, enum message_id without)
{
	return *n->words ? message_with(with, TEXT(n->words))
			 : message_of(without);
}

static struct message note_message(const struct past_note *n)
{
	switch (n->kind) {
	case NOTE_PAIN:
		if (n->finger > 0)
			return message_with(
			    M_HISTORY_NOTE_PAIN_SKIN, WHOLE(n->finger));
		return at_place(n, M_HISTORY_NOTE_PAIN_AT, M_HISTORY_NOTE_PAIN);
	case NOTE_SKIN:
		if (n->finger > 0)
			return message_with(
			    M_HISTORY_NOTE_SKIN, WHOLE(n->finger));
		break;
	case NOTE_QUESTION:
		return message_with(M_HISTORY_NOTE_QUESTION, TEXT(n->words));
	case NOTE_SORE:
	case NOTE_LATER:
		break;
	}
	return at_place(n, M_HISTORY_NOTE_SORE_AT, M_HISTORY_NOTE_SORE);
}

static void add_notes(struct text *page, const struct day *d)
{
	for (int i = 0; i < d->h->notes; i++) {
		const struct past_note *n = &d->h->note[i];
		struct message m = note_message(n);

		/* To have asked for more is nothing to be told. */
		if (n->day == d->day && n->kind != NOTE_LATER)
			lines_say(page, &m);
	}
}

/* The first row of a day or later; rows are in the order of their days. */
static int first_row(const struct history *h, int day)
{
	int low = 0, high = h->tallies;

	while (low < high) {
		int middle = low + (high - low) / 2;

		if (h->tally[middle].day < day)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

void history_add_day(struct text *page, const struct history *h, int number)
{
	int first = first_row(h, number);
	struct day d = { h, number, first, first_row(h, number + 1) - first };

	add_day(page, &d);
	add_stages(page, &d);
	add_bows(page, &d);
	for (int i = 0; i < d.tallies; i++)
		if (!stage_came(&d, i))
			add_first_go(page, &d, i);
	add_notes(page, &d);
	text_add(page, "\n");
}
