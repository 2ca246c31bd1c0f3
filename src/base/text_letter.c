/*
 * text_letter.c - one letter at a time out of UTF-8
 */
#include <assert.h>
#include <string.h>
#include <utf8proc.h>

#include "evenhand/base/text.h"
#include "letter.h"

int32_t letter_point(const char *s, size_t length, size_t *bytes)
{
	utf8proc_int32_t point;
	utf8proc_ssize_t took;
	size_t most;

	assert(length > 0);
	*bytes = 1;
	/* Nearly all letters are ASCII, and are their own code point. */
	if ((unsigned char)*s < 0x80)
		return *s;
	/* The longest code point is 4 bytes; no need to look further. */
	most = strnlen(s, length < 4 ? length : 4);
	took = utf8proc_iterate(
	    (const utf8proc_uint8_t *)s, (utf8proc_ssize_t)most, &point);
	if (took <= 0)
		return -1;
	*bytes = (size_t)took;
	return point;
}

static bool turns_direction(int32_t point)
{
	return point == 0x061c || point == 0x200e || point == 0x200f ||
	    (point >= 0x202a && point <= 0x202e) ||
	    (point >= 0x2066 && point <= 0x2069);
}

bool letter_is_control(int32_t point)
{
	return (point >= 0 && point < 0x20) ||
	    (point >= 0x7f && point <= 0x9f) || point == 0x2028 ||
	    point == 0x2029 || turns_direction(point);
}

static bool is_accent(int32_t point)
{
	/* Nothing in ASCII is one, and nearly all letters are ASCII. */
	return point >= 0x80 && !letter_is_control(point) &&
	    utf8proc_charwidth(point) == 0;
}

size_t letter_bytes(const char *s, size_t length)
{
	size_t at, more;
	int32_t point = letter_point(s, length, &at);

	if (point < 0 || letter_is_control(point))
		return at;
	while (
	    at < length && is_accent(letter_point(s + at, length - at, &more)))
		at += more;
	return at;
}

int letter_columns(const char *s, size_t bytes)
{
	size_t first;
	int32_t point = letter_point(s, bytes, &first);

	if (point < 0x80 || letter_is_control(point))
		return 1;
	return utf8proc_charwidth(point);
}

size_t letter_whole(const char *s, size_t length)
{
	size_t start = length, bytes;

	/* Back over at most 2 bytes that carry on, to the one that starts. */
	while (start > 0 && length - start < 2 &&
	    ((unsigned char)s[start - 1] & 0xc0) == 0x80)
		start--;
	if (start == 0 || ((unsigned char)s[start - 1] & 0xc0) != 0xc0)
		return length;
	start--;
	return letter_point(s + start, length - start, &bytes) < 0 ? start
								   : length;
}

void text_add_capital(struct text *t, const char *s)
{
	utf8proc_uint8_t capital[4];
	size_t bytes = *s != '\0' ? letter_bytes(s, TO_THE_ZERO) : 0, first;
	int32_t point;

	if (bytes == 0)
		return;
	point = letter_point(s, bytes, &first);
	if (point >= 0) {
		utf8proc_ssize_t length = utf8proc_encode_char(
		    utf8proc_totitle(point), capital);

		text_add_bytes(t, (const char *)capital, (size_t)length);
	} else {
		text_add_bytes(t, s, first);
	}
	text_add_bytes(t, s + first, bytes - first);
}
