/*
 * letters.c - letters of UTF-8 text that must not reach a terminal
 *
 * Beyond the plain control characters there are signs that nobody sees and
 * that turn text round or end lines: they have no place in a routine.
 */
#include <string.h>

#include "reader.h"

enum {
	C0_END = 0x20,
	DEL = 0x7f,
	CONTINUES = 0x80, /* 10xxxxxx: not the first byte of a letter */
	CONTINUES_MASK = 0xc0,
};

/* The signs, as UTF-8; \xc2 C1 and the Arabic mark are told by range. */
static const char *const hidden[] = {
	"\xd8\x9c",					/* Arabic mark */
	"\xe2\x80\x8e", "\xe2\x80\x8f",			/* left, right marks */
	"\xe2\x80\xa8", "\xe2\x80\xa9",			/* line, paragraph */
	"\xe2\x80\xaa", "\xe2\x80\xab", "\xe2\x80\xac", /* embeddings */
	"\xe2\x80\xad", "\xe2\x80\xae",			/* overrides */
	"\xe2\x81\xa6", "\xe2\x81\xa7", "\xe2\x81\xa8", /* isolates */
	"\xe2\x81\xa9", "\xef\xbb\xbf",			/* byte order mark */
	"\xef\xbf\xbe", "\xef\xbf\xbf",			/* no characters */
};

static bool is_hidden(const char *s, size_t left)
{
	for (size_t i = 0; i < sizeof(hidden) / sizeof(hidden[0]); i++)
		if (left >= strlen(hidden[i]) &&
		    memcmp(s, hidden[i], strlen(hidden[i])) == 0)
			return true;
	return false;
}

static bool is_control(const char *s, size_t left)
{
	unsigned char c = (unsigned char)*s;

	if (c < C0_END)
		return c != '\t' && c != '\n' && c != '\r';
	if (c < DEL)
		return false;
	if (c == DEL)
		return true;
	if (c == 0xc2)
		return left > 1 && (unsigned char)s[1] < 0xa0;
	return (c == 0xd8 || c == 0xe2 || c == 0xef) && is_hidden(s, left);
}

const char *letters_control(const char *s, size_t length)
{
	for (size_t i = 0; i < length; i++)
		if (is_control(s + i, length - i))
			return s + i;
	return NULL;
}

int letters_count(const char *s, size_t length)
{
	int count = 0;

	for (size_t i = 0; i < length; i++)
		count += ((unsigned char)s[i] & CONTINUES_MASK) != CONTINUES;
	return count;
}
