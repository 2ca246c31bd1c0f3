/*
 * csv.h - rows of a table (RFC 4180)
 *
 * Rows end with CR LF; a field with a comma or a quotation mark in it stands in
 * quotation marks, and those in it are doubled.  Texts may hold anything;
 * control characters are shown as question marks.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_CSV_H
#define EVENHAND_COMMAND_CSV_H

#include <stdint.h>

#include "evenhand/base/text.h"
#include "history_page.h"

enum { CSV_ROW_BYTES = 2048, CSV_FIELD_BYTES = 1024 };

/* One row being put together. */
struct csv_row {
	struct text text;
	char bytes[CSV_ROW_BYTES];
};

void csv_begin(struct csv_row *r);
void csv_text(struct csv_row *r, const char *s);
void csv_whole(struct csv_row *r, int64_t number);

/* A number in thousandths, with as few decimals as it needs. */
void csv_thousandths(struct csv_row *r, int64_t thousandths);

/* "2026-03-02" of a day number. */
void csv_day(struct csv_row *r, int day);

/* Ends the row and hands it to a page. */
void csv_end(struct csv_row *r, struct history_page *p);

#endif
