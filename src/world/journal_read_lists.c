/*
 * journal_read_lists.c - the JSON lists that roll-ups are kept in
 *
 *	[["wide","1",1,2,4,16,4034112,2,0,1,4,0,"cello",4,3], ...]	one day
 *	[["air",0],["wide",1],["tone",0]]			one sitting
 *
 * SQLite writes them; this reads just that form, without spaces, and hundreds
 * of thousands of numbers in a few milliseconds.
 */
#include <limits.h>
#include <string.h>

#include "journal_read.h"

/* What is left to read; at is NULL once something was wrong. */
struct list {
	const char *at;
};

static bool take(struct list *l, char sign)
{
	if (l->at == NULL || *l->at != sign) {
		l->at = NULL;
		return false;
	}
	l->at++;
	return true;
}

/* Takes a sign when it is next; anything else is left. */
static bool next_is(struct list *l, char sign)
{
	if (l->at == NULL || *l->at != sign)
		return false;
	l->at++;
	return true;
}

/* Both read on from a pointer of their own, which stays in a register. */
static void read_text(struct list *l, char *to, size_t size)
{
	const char *at;
	size_t length = 0;

	if (!take(l, '"'))
		return;
	for (at = l->at; *at != '"' && *at != '\0'; at++) {
		/* Ids and names of units hold nothing that is escaped. */
		if (*at == '\\') {
			l->at = NULL;
			return;
		}
		if (length + 1 < size)
			to[length++] = *at;
	}
	to[length] = '\0';
	l->at = at;
	take(l, '"');
}

static int64_t read_number(struct list *l)
{
	bool below = next_is(l, '-');
	const char *at = l->at;
	int64_t number = 0;

	if (at == NULL || *at < '0' || *at > '9') {
		l->at = NULL;
		return 0;
	}
	for (; *at >= '0' && *at <= '9'; at++) {
		int digit = *at - '0';

		if (number > (INT64_MAX - digit) / 10) {
			l->at = NULL;
			return 0;
		}
		number = number * 10 + digit;
	}
	l->at = at;
	return below ? -number : number;
}

static int64_t next_number(struct list *l)
{
	take(l, ',');
	return read_number(l);
}

static int read_int(struct list *l)
{
	int64_t number = read_number(l);

	if (number < INT_MIN || number > INT_MAX)
		l->at = NULL;
	return (int)number;
}

static int next_int(struct list *l)
{
	take(l, ',');
	return read_int(l);
}

static void read_tally(struct list *l, struct tally *t)
{
	int kind, mark;

	take(l, '[');
	read_text(l, t->stage, sizeof(t->stage));
	take(l, ',');
	read_text(l, t->unit, sizeof(t->unit));
	kind = next_int(l);
	t->turns = next_int(l);
	t->bows = next_int(l);
	t->pulses = next_int(l);
	t->slide_um = next_number(l);
	t->clean = next_int(l);
	t->shaky = next_int(l);
	mark = next_int(l);
	t->first_go_pulses = next_int(l);
	t->resets = next_int(l);
	/* Older lists end before what their makers did not know of. */
	if (next_is(l, ','))
		read_text(l, t->instrument, sizeof(t->instrument));
	if (next_is(l, ',')) {
		t->bows_listened = read_int(l);
		t->bows_full = next_int(l);
	}
	take(l, ']');
	if (kind < BLOCK_AIR || kind > BLOCK_WORK || mark < MARK_NONE ||
	    mark > MARK_SHAKY)
		l->at = NULL;
	t->kind = (enum block_kind)kind;
	t->first_go = (enum mark)mark;
}

bool tallies_read(const char *list, int day, struct tally *to, int entries)
{
	struct list l = { .at = list };

	take(&l, '[');
	for (int i = 0; i < entries && l.at != NULL; i++) {
		if (i > 0)
			take(&l, ',');
		to[i].day = day;
		read_tally(&l, &to[i]);
	}
	return take(&l, ']') && *l.at == '\0';
}

bool seen_read(const char *list, struct past_sitting *s)
{
	struct list l = { .at = list };
	char spare[PAST_STAGE_MAX] = "";

	take(&l, '[');
	while (next_is(&l, '[')) {
		bool kept = s->blocks < SEEN_MAX;
		int64_t recap;

		read_text(&l, kept ? s->seen[s->blocks] : spare, ID_MAX);
		recap = next_number(&l);
		if (kept)
			s->recap[s->blocks++] = recap != 0;
		take(&l, ']');
		if (!next_is(&l, ','))
			break;
	}
	return take(&l, ']') && *l.at == '\0';
}
