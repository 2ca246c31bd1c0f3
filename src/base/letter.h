/*
 * letter.h - one letter at a time out of UTF-8
 *
 * A letter is a sign with the accents that stand on it: a code point and the
 * code points of no width that follow.  A control character or a broken byte
 * is a letter by itself and carries no accents.
 *
 *	"e" U+0301 "x"     2 letters, 3 + 1 bytes
 *
 * Pure.  Any thread.
 */
#ifndef LETTER_H
#define LETTER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* The length of text that ends in a zero, where nobody has counted. */
#define TO_THE_ZERO SIZE_MAX

/*
 * The code point at the start of length >= 1 bytes and how many bytes it
 * takes; -1 and 1 byte when they are not well-formed UTF-8.  Nothing behind a
 * zero is looked at; a zero itself is code point 0.
 */
int32_t letter_point(const char *s, size_t length, size_t *bytes);

/* Control characters, and the marks that end lines or turn direction. */
bool letter_is_control(int32_t point);

/*
 * Whether a byte is a letter by itself, of one column, whatever stands before
 * it: one that can be seen and is ASCII, with no accent behind it.  The byte
 * behind it is looked at, which may be the zero at the end.
 */
static inline bool letter_is_plain(const char *s)
{
	return (unsigned char)s[0] >= ' ' && (unsigned char)s[0] < 0x7f &&
	    (unsigned char)s[1] < 0x80;
}

/* Bytes of the first letter of length >= 1 bytes, at least 1. */
size_t letter_bytes(const char *s, size_t length);

/* Columns of the letter of so many bytes: 0, 1 or 2. */
int letter_columns(const char *s, size_t bytes);

/* Length without a code point that was cut short at the end. */
size_t letter_whole(const char *s, size_t length);

#endif
