/*
 * history_csv.c - what was practised, as tables (RFC 4180)
 *
 *	day,stage,block,unit,turns,bows,pulses,metres,clean,shaky,...
 *	2026-03-02,wide,work,1,5,10,40,24.7,4,1,clean,4,0
 *
 * Rows end with CR LF; a field with a comma or a quotation mark in it stands in
 * quotation marks, and those in it are doubled.  Names come from a journal and
 * may hold anything; control characters are shown as question marks.
 */
#include "history_csv.h"

#include <string.h>

#include "evenhand/base/date.h"
#include "history_page.h"

enum { ROW_BYTES = 1024, UM_MM = 1000, MINUTE = 60, OFFSET = 64800 };

/* One row being put together. */
struct row {
	struct text text;
	char bytes[ROW_BYTES];
};

static void row_begin(struct row *r)
{
	r->text = text_in(r->bytes, sizeof(r->bytes));
}

static void next_field(struct row *r)
{
	if (r->text.length > 0)
		text_add(&r->text, ",");
}

static void add_text(struct row *r, const char *s)
{
	char clean[ROW_BYTES / 8];

	/* A table may be looked at in a terminal, too. */
	text_clean(clean, sizeof(clean), s);
	next_field(r);
	if (clean[strcspn(clean, ",\"")] == '\0') {
		text_add(&r->text, clean);
		return;
	}
	text_add(&r->text, "\"");
	for (s = clean; *s; s++)
		text_add_bytes(
		    &r->text, *s == '"' ? "\"\"" : s, *s == '"' ? 2 : 1);
	text_add(&r->text, "\"");
}

/* At least so many digits: a table has very many numbers. */
static void add_digits(struct row *r, uint64_t number, int least)
{
	char digits[24];
	size_t at = sizeof(digits);

	for (; number > 0 || least > 0; number /= 10, least--)
		digits[--at] = (char)('0' + number % 10);
	text_add_bytes(&r->text, digits + at, sizeof(digits) - at);
}

/* The size of a number whose sign is written. */
static uint64_t add_sign(struct row *r, int64_t number)
{
	if (number >= 0)
		return (uint64_t)number;
	text_add(&r->text, "-");
	return 0 - (uint64_t)number;
}

static void add_whole(struct row *r, int64_t number)
{
	next_field(r);
	add_digits(r, add_sign(r, number), 1);
}

/* A number in thousandths, with as few decimals as it needs. */
static void add_thousandths(struct row *r, int64_t thousandths)
{
	uint64_t size, rest;
	int digits = 3;

	next_field(r);
	size = add_sign(r, thousandths);
	add_digits(r, size / 1000, 1);
	rest = size % 1000;
	if (rest == 0)
		return;
	for (; rest % 10 == 0; digits--)
		rest /= 10;
	text_add(&r->text, ".");
	add_digits(r, rest, digits);
}

static void add_day(struct row *r, int day)
{
	char date[DATE_TEXT_MAX];

	date_text(day, date);
	add_text(r, date);
}

static void row_end(struct row *r, struct history_page *p)
{
	text_add(&r->text, "\r\n");
	page_line(p, r->bytes);
}

/* --- day, stage, finger --- */

static const char *mark_of(const struct tally *t)
{
	if (t->first_go == MARK_CLEAN)
		return "clean";
	if (t->first_go == MARK_SHAKY)
		return "shaky";
	return t->first_go_pulses > 0 ? "none" : "";
}

static void print_tally(struct history_page *p, const struct tally *t)
{
	static const char *const kinds[] = { [BLOCK_AIR] = "air",
		[BLOCK_RECAP] = "recap",
		[BLOCK_WORK] = "work" };
	struct row r;

	row_begin(&r);
	add_day(&r, t->day);
	add_text(&r, t->stage);
	add_text(&r, kinds[t->kind]);
	add_text(&r, t->unit);
	add_whole(&r, t->turns);
	add_whole(&r, t->bows);
	add_whole(&r, t->pulses);
	add_thousandths(
	    &r, t->slide_um / UM_MM + (t->slide_um % UM_MM >= UM_MM / 2));
	add_whole(&r, t->clean);
	add_whole(&r, t->shaky);
	add_text(&r, mark_of(t));
	if (t->first_go_pulses > 0)
		add_whole(&r, t->first_go_pulses);
	else
		add_text(&r, "");
	add_whole(&r, t->resets);
	row_end(&r, p);
}

bool history_print_csv(const struct days *d)
{
	struct history_page page;

	page_begin(&page);
	page_line(&page,
	    "day,stage,block,unit,turns,bows,pulses,metres,clean,shaky,"
	    "first_go,first_go_pulses,resets\r\n");
	for (int i = 0; i < d->count && page.good; i++)
		for (int k = 0; k < d->day[i].tallies; k++)
			print_tally(&page, days_tally(d, &d->day[i], k));
	return page_end(&page);
}

/* --- sessions --- */

/* Local time with the offset that was in force, as ISO 8601 writes it. */
static void add_began(struct row *r, struct moment m)
{
	char bytes[DATE_TEXT_MAX + 32];
	struct text t = text_in(bytes, sizeof(bytes));
	char date[DATE_TEXT_MAX];
	int minutes = moment_minute(m);
	int offset = m.offset > OFFSET || m.offset < -OFFSET
	    ? 0
	    : m.offset / MINUTE;
	int away = offset < 0 ? -offset : offset;
	int second = (int)(m.utc % MINUTE + m.offset % MINUTE) % MINUTE;

	date_text(moment_day(m), date);
	text_format(&t, "%sT%02d:%02d:%02d%c%02d:%02d", date, minutes / MINUTE,
	    minutes % MINUTE, second < 0 ? second + MINUTE : second,
	    offset < 0 ? '-' : '+', away / MINUTE, away % MINUTE);
	add_text(r, bytes);
}

static const char *ended_of(enum ended ended)
{
	/* The words of the history as JSON. */
	static const char *const words[] = {
		[ENDED_UNDER_WAY] = "cut off",
		[ENDED_WHOLE] = "whole",
		[ENDED_CAP] = "cap",
		[ENDED_EARLY] = "early",
		[ENDED_PAIN] = "pain",
		[ENDED_NO_KEY] = "no key",
		[ENDED_INPUT] = "input",
		[ENDED_NOT_TODAY] = "not today",
	};

	return words[ended];
}

static void print_sitting(struct history_page *p, const struct past_sitting *s)
{
	struct row r;

	row_begin(&r);
	add_whole(&r, s->key);
	add_day(&r, s->day);
	add_began(&r, s->began);
	add_text(&r, s->work_stage);
	add_thousandths(&r, s->length_ms);
	add_thousandths(&r, s->cap_ms);
	add_text(&r, ended_of(s->ended));
	row_end(&r, p);
}

bool history_print_sessions(const struct days *d, const struct day_range *range)
{
	struct history_page page;

	page_begin(&page);
	page_line(
	    &page, "session,day,began,work_stage,length_s,cap_s,ended\r\n");
	for (int i = 0; i < d->h->sittings && page.good; i++)
		if (d->h->sitting[i].day >= range->from &&
		    d->h->sitting[i].day <= range->to)
			print_sitting(&page, &d->h->sitting[i]);
	return page_end(&page);
}
