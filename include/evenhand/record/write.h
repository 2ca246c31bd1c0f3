/*
 * write.h - a record as the words of a file
 *
 * What record_read reads: every record that keeps its bounds is written and
 * read back as the same value.  Pure.  Any thread.
 */
#ifndef EVENHAND_RECORD_WRITE_H
#define EVENHAND_RECORD_WRITE_H

#include "evenhand/base/text.h"
#include "evenhand/record/record.h"

/* Adds the whole file; text.cut when it does not fit. */
void record_write(struct text *t, const struct record *r);

/*
 * Adds a number as the fewest decimals that read_real makes the same one of,
 * or, where 12 places behind the point do not, the nearest that they do.
 */
void record_write_real(struct text *t, double value);

#endif
