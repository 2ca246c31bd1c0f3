/*
 * writer.h - what the parts of writing a record share
 */
#ifndef EVENHAND_RECORD_WRITER_H
#define EVENHAND_RECORD_WRITER_H

#include <stdbool.h>

#include "evenhand/record/write.h"

/* In quotation marks, with escapes where they are needed. */
void write_quoted(struct text *t, const char *s);

/* A name of a stage or unit, in quotation marks where it needs them. */
void write_name(struct text *t, const char *s);

/* A text of lines as a block, each line behind the indent; ends a line. */
void write_block(struct text *t, const char *indent, const char *s);

/* A sitting with all that belongs to it. */
void write_sitting(struct text *t, const struct record_sitting *s);

/* A note, of a sitting or (NULL) of none. */
void write_note(struct text *t, const struct record_note *n,
    const struct record_sitting *of);

#endif
