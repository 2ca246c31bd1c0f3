/*
 * slips.h - the state of a scan for slips, line by line
 *
 * Three things may be open when a line ends: a quotation mark, brackets, and
 * a text that goes on below its key.  Each remembers where it was opened and
 * how far in the line of its opening stood: a line that begins something new
 * no further in than that shows that the end was forgotten.
 *
 *	order: [1, 2, 3        opened here, key at column 2
 *	bows_each: 2           begins at column 2: the [ was not closed
 *
 * Only pointers are kept; a column is counted when there is a fault.
 */
#ifndef EVENHAND_ROUTINE_SLIPS_H
#define EVENHAND_ROUTINE_SLIPS_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/routine/read.h"

/* A place in the text. */
struct spot {
	const char *at;
	const char *line; /* where its line begins */
	int number;	  /* of the line, from 1 */
};

/* Some letters of a line. */
struct span {
	const char *at;
	size_t length;
};

/* What the line before was, when nothing is open. */
enum below {
	BELOW_NOTHING,
	BELOW_KEY,   /* a key or dash whose value is to come */
	BELOW_TEXT,  /* plain words that may go on */
	BELOW_VALUE, /* a value that is complete */
};

/* Where an item between brackets has got to. */
enum item { ITEM_START, ITEM_PLAIN, ITEM_DONE };

struct bracket {
	struct spot spot;
	char sign; /* [ or { */
	enum item item;
	bool in_value;	  /* behind the colon of a { item */
	struct span key;  /* of a { item */
	const char *text; /* where the plain words begin */
};

struct slips {
	const struct source *source;
	struct faults *faults;
	struct spot here; /* at: where the scan is */
	const char *end;  /* of the line, before its line end */
	const char *bytes_end;

	char quote; /* ' or " while one is open, else 0 */
	struct spot quote_spot;
	int depth;
	struct bracket bracket[ROUTINE_DEPTH_MAX];
	int limit; /* columns: the key that all this belongs to; -1 none */

	enum below below;
	int column;	/* of the key or dash of the line before */
	bool free_text; /* words of the line before are for people */
	int block;	/* columns of the key of a | or > text, -1 none */
	bool broken;	/* a fault of syntax was found */
};

/* --- faults --- */

/* A fault of syntax: the scan ends.  Always false. */
bool slip_break(struct slips *s, struct message m, const char *at);
bool slip_break_at(struct slips *s, struct message m, struct spot spot);

/* --- letters.  All stop at the end of the line. --- */

bool slip_blank(const struct slips *s, const char *at);
const char *slip_skip(const struct slips *s, const char *at);

/* A colon with a space or the end of the line behind it. */
bool slip_colon(const struct slips *s, const char *at);

/* A # with a space before it: a note begins. */
bool slip_note(const struct slips *s, const char *at);

/* A letter of any script, by its first byte. */
bool slip_letter(char c);

/* A word of small letters and _ at a place: its length. */
size_t slip_word(const struct slips *s, const char *at);

/* Copies letters without the blanks at their end. */
void slip_copy(char *buffer, size_t size, const char *from, const char *to);

/* Puts quotation marks round letters. */
void slip_quoted(char *buffer, size_t size, const char *from, const char *to);

/* --- the parts of a scan: false when the scan must end --- */

/* Words no one may begin with. */
bool slip_sign(struct slips *s, const char *at);

/* A note that swallows words of a text that begins at from. */
void slip_swallow(
    struct slips *s, const char *from, const char *note, bool free_text);

/*
 * slips_quote.c.  Begins with the mark at a place, or goes on from a place, to
 * behind the closing mark or the end of the line.  Always true.
 */
bool slip_begin_quote(struct slips *s, const char *at);
bool slip_read_quote(struct slips *s, const char *at);

/* Whether the last thing before a place is a quotation mark. */
bool slip_after_quote(const struct slips *s, const char *at);

/*
 * The fault of more words behind a closing quotation mark; an apostrophe among
 * words between ' marks looks like one.  Always false.
 */
bool slip_behind_quote(struct slips *s, const char *at);

/* The words of a key in quotation marks, when they stand on this line. */
struct span slip_quoted_key(const struct slips *s, const char *colon);

/*
 * slips_flow.c.  From an opening mark or bracket at the place of the scan, or
 * from the beginning of a line while one is open, to the end of the line or
 * behind what closes the last of them: then nothing is open and s->here.at
 * stands there.
 */
bool slip_open_quote(struct slips *s);
bool slip_open_bracket(struct slips *s);
bool slip_go_on(struct slips *s);

/* Nothing may follow on the line when all is closed. */
bool slip_behind(struct slips *s);

/* The faults of what is still open when the text ends. */
bool slip_still_open(struct slips *s);

/*
 * slips_paste.c: bullets and lines of back-ticks where a line begins, and curly
 * quotation marks where words do.
 */
bool slip_pasted(struct slips *s, const char *at);
bool slip_curly(struct slips *s, const char *at);

/* The first wide colon before end, or NULL. */
const char *slip_wide_colon(
    const struct slips *s, const char *at, const char *end);

/* slips_line.c: a line with nothing open. */
bool slip_line(struct slips *s);

/* --- slips_value.c --- */

/* One line taken apart. */
struct line {
	int indent;	   /* columns before the first letter */
	bool dash;	   /* begins with one dash or more */
	int column;	   /* columns before the key or words */
	const char *words; /* behind the dashes */
	const char *note;  /* where a private note begins, or the end */
	const char *colon; /* the colon that ends the key, or NULL */
	bool inside;	   /* belongs to the line above */
};

/* The first colon that ends a key, before end; or NULL. */
const char *slip_find_colon(
    const struct slips *s, const char *at, const char *end);

/* What the next line has to know of this one. */
void slip_remember(
    struct slips *s, enum below below, int column, bool free_text);

/* A mark, bracket or | where a value begins: true when it was one. */
bool slip_special(struct slips *s, const char *at, int column, bool *good);

/* A closing bracket where none is open.  Always false. */
bool slip_stray(struct slips *s, const char *at);

/* What no value may begin with. */
bool slip_good_start(struct slips *s, const char *at);

/* The value behind the colon of a key. */
bool slip_value(struct slips *s, const struct line *l);

#endif
