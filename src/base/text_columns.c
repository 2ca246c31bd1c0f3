/*
 * text_columns.c - how wide text is in a terminal, and where to break it
 */
#include "evenhand/base/text.h"

#include <string.h>

#include "letter.h"

int text_letter(const char *s, size_t *bytes)
{
	size_t length = strlen(s);

	*bytes = length > 0 ? letter_bytes(s, length) : 0;
	return length > 0 ? letter_columns(s, *bytes) : 0;
}

int text_columns(const char *s)
{
	size_t length = strlen(s);
	int columns = 0;

	for (size_t at = 0; at < length;) {
		size_t bytes = letter_bytes(s + at, length - at);

		columns += letter_columns(s + at, bytes);
		at += bytes;
	}
	return columns;
}

static size_t clip(const char *s, size_t length, int columns)
{
	size_t at = 0;

	while (at < length) {
		size_t bytes = letter_bytes(s + at, length - at);

		columns -= letter_columns(s + at, bytes);
		if (columns < 0)
			break;
		at += bytes;
	}
	return at;
}

size_t text_clip(const char *s, int columns)
{
	return clip(s, strlen(s), columns);
}

static size_t without_spaces(const char *s, size_t length)
{
	while (length > 0 && s[length - 1] == ' ')
		length--;
	return length;
}

/* Where the line of s ends that has fits bytes of room; not at its end. */
static size_t break_at(const char *s, size_t length, size_t fits)
{
	size_t end = fits;

	if (s[fits] == ' ')
		return fits;
	while (end > 0 && s[end - 1] != ' ')
		end--;
	if (without_spaces(s, end) > 0)
		return end;
	/* One word, too long: cut it, but always get on by a letter. */
	return fits > 0 ? fits : letter_bytes(s, length);
}

size_t text_wrap(const char *s, int columns, size_t *next)
{
	size_t length = strcspn(s, "\n");
	size_t end = clip(s, length, columns);

	if (end < length)
		end = break_at(s, length, end);
	*next = end + strspn(s + end, " ");
	if (s[*next] == '\n')
		++*next;
	return without_spaces(s, end);
}
