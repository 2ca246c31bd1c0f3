/*
 * csv.c - rows of a table, field by field
 */
#include "csv.h"

#include <string.h>

#include "evenhand/base/date.h"

void csv_begin(struct csv_row *r)
{
	r->text = text_in(r->bytes, sizeof(r->bytes));
}

static void next_field(struct csv_row *r)
{
	if (r->text.length > 0)
		text_add(&r->text, ",");
}

void csv_text(struct csv_row *r, const char *s)
{
	char clean[CSV_FIELD_BYTES];

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
static void add_digits(struct csv_row *r, uint64_t number, int least)
{
	char digits[24];
	size_t at = sizeof(digits);

	for (; number > 0 || least > 0; number /= 10, least--)
		digits[--at] = (char)('0' + number % 10);
	text_add_bytes(&r->text, digits + at, sizeof(digits) - at);
}

/* The size of a number whose sign is written. */
static uint64_t add_sign(struct csv_row *r, int64_t number)
{
	if (number >= 0)
		return (uint64_t)number;
	text_add(&r->text, "-");
	return 0 - (uint64_t)number;
}

void csv_whole(struct csv_row *r, int64_t number)
{
	next_field(r);
	add_digits(r, add_sign(r, number), 1);
}

/* A number in thousandths, with as few decimals as it needs. */
void csv_thousandths(struct csv_row *r, int64_t thousandths)
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

void csv_day(struct csv_row *r, int day)
{
	char date[DATE_TEXT_MAX];

	date_text(day, date);
	csv_text(r, date);
}

void csv_end(struct csv_row *r, struct history_page *p)
{
	text_add(&r->text, "\r\n");
	page_line(p, r->bytes);
}
