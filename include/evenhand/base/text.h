/*
 * text.h - text in columns of a terminal, and text being put together
 *
 * All text is UTF-8.  Widths come from utf8proc, so they do not depend on the
 * locale: an accent takes 0 columns, a wide sign 2.
 *
 * Pure values.  Any thread.
 */
#ifndef EVENHAND_BASE_TEXT_H
#define EVENHAND_BASE_TEXT_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

/*
 * Text being put together in the caller's buffer; always ends in a zero.  Once
 * something was cut nothing more is added.
 */
struct text {
	char *bytes;   /* the caller's buffer */
	size_t size;   /* its size, at least 1 */
	size_t length; /* bytes written, without the zero */
	bool cut;      /* something did not fit and was left out */
};

/* Starts an empty text in a buffer of size >= 1 bytes. */
struct text text_in(char *buffer, size_t size);

/* Adds text or formatted text; cut at a letter when the buffer is full. */
void text_add(struct text *t, const char *more);
void text_add_bytes(struct text *t, const char *more, size_t length);
void text_format(struct text *t, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* Adds a number with up to 3 decimals, as few as it needs, and a point. */
void text_number(struct text *t, double number);

/* Adds text as text_clean makes it. */
void text_add_clean(struct text *t, const char *more);

/*
 * Adds the first letter of s, with its accents, as it begins a name (Unicode's
 * title case, so that letters of scripts without capitals stay); nothing at the
 * end of s.
 */
void text_add_capital(struct text *t, const char *s);

/*
 * Columns of the first letter of s, with the accents that stand on it: 0, 1
 * or 2; sets its bytes, 0 at the end of s.
 */
int text_letter(const char *s, size_t *bytes);

/* Columns the text takes in a terminal; control characters count as 1. */
int text_columns(const char *s);

/* Bytes of the longest start of s that takes at most so many columns. */
size_t text_clip(const char *s, int columns);

/*
 * Bytes of the first line when s is wrapped at spaces to at most so many
 * columns; *next is set to where the following line begins (the end of s
 * when none does).  A word longer than a line is cut.  A '\n' ends a line.
 * The spaces at a break belong to neither line.  *next is never 0 unless s is
 * empty, so that a loop gets on even when nothing fits.
 */
size_t text_wrap(const char *s, int columns, size_t *next);

/* Whether the bytes are well-formed UTF-8 (no overlong, no surrogates). */
bool text_is_utf8(const char *s, size_t length);

/*
 * Copies s into a buffer of size >= 1 with every control character (C0, DEL,
 * C1, line and direction marks) and every broken byte made '?', so that it
 * can be shown on a terminal.  Cut at a letter.
 */
void text_clean(char *buffer, size_t size, const char *s);

/*
 * Edits between two words, at most limit + 1 (insert, drop, change, swap).
 * Different words of more than 64 letters are limit + 1 apart.
 */
int text_distance(const char *a, const char *b, int limit);

#endif
