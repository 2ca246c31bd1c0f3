/*
 * slips_paste.c - signs that look like plain ones and are none
 *
 * Word processors and telephones put them in by themselves, and a text copied
 * from a page brings them along: bullets and long dashes where a list begins,
 * curly quotation marks, wide colons, and lines of back-ticks round the whole.
 */
#include <string.h>

#include "reader.h"
#include "slips.h"

enum { COPY_MAX = 160 };

static const char *const bullets[] = { "\xe2\x80\x93", "\xe2\x80\x94",
	"\xe2\x88\x92", "\xe2\x80\xa2", "\xe2\x80\xa3", "\xe2\x97\xa6",
	"\xe2\x96\xaa", "\xe2\x97\x8f", "\xc2\xb7", NULL };

static const char *const curly_marks[] = { "\xe2\x80\x9c", "\xe2\x80\x9d",
	"\xe2\x80\x9e", "\xe2\x80\x98", "\xe2\x80\x99", "\xe2\x80\x9a",
	"\xc2\xab", "\xc2\xbb", NULL };

static const char wide_colon[] = "\xef\xbc\x9a";

/* Bytes of the sign of a list that stands at a place, 0 when none does. */
static size_t sign_at(
    const struct slips *s, const char *at, const char *const *signs)
{
	/* All of them are beyond the first 128 letters. */
	if (at == s->end || (unsigned char)*at < 0x80)
		return 0;
	for (; *signs != NULL; signs++) {
		size_t length = strlen(*signs);

		if ((size_t)(s->end - at) >= length &&
		    memcmp(at, *signs, length) == 0)
			return length;
	}
	return 0;
}

bool slip_curly(struct slips *s, const char *at)
{
	if (sign_at(s, at, curly_marks) == 0)
		return true;
	return slip_break(s, message_of(M_ROUTINE_CURLY), at);
}

/* "* " would be a sign too, but never with a space behind it. */
static size_t bullet_at(const struct slips *s, const char *at)
{
	if (at < s->end && *at == '*' && slip_blank(s, at + 1))
		return 1;
	return sign_at(s, at, bullets);
}

bool slip_pasted(struct slips *s, const char *at)
{
	size_t bullet = bullet_at(s, at);
	char words[COPY_MAX];

	if (s->end - at >= 3 && memcmp(at, "```", 3) == 0)
		return slip_break(s, message_of(M_ROUTINE_FENCE), at);
	if (bullet == 0)
		return true;
	slip_copy(words, sizeof(words), slip_skip(s, at + bullet), s->end);
	return slip_break(s, message_with(M_ROUTINE_BULLET, TEXT(words)), at);
}

const char *slip_wide_colon(
    const struct slips *s, const char *at, const char *end)
{
	static const char *const wide[] = { wide_colon, NULL };

	for (; at < end; at++)
		if (sign_at(s, at, wide) > 0)
			return at;
	return NULL;
}
