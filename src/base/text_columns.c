/*
 * text_columns.c - how wide text is in a terminal, and where to break it
 */
#include "evenhand/base/text.h"

#include <string.h>

#include "letter.h"

int text_letter(const char *s, size_t *bytes)
{
	*bytes = *s != '\0' ? letter_bytes(s, TO_THE_ZERO) : 0;
	return *s != '\0' ? letter_columns(s, *bytes) : 0;
}

int text_columns(const char *s)
{
	int columns = 0;
	size_t bytes;

	for (; *s != '\0'; s += bytes)
		columns += text_letter(s, &bytes);
	return columns;
}

/* Bytes of s before stop that take at most so many columns. */
static size_t clip(const char *s, char stop, int columns)
{
	size_t at = 0, bytes;

	while (s[at] != '\0' && s[at] != stop) {
		if (letter_is_plain(s + at)) {
			columns--;
			bytes = 1;
		} else {
			columns -= text_letter(s + at, &bytes);
		}
		if (columns < 0)
			break;
		at += bytes;
	}
	return at;
}

size_t text_clip(const char *s, int columns)
{
	return clip(s, '\0', columns);
}

static size_t without_spaces(const char *s, size_t length)
{
	while (length > 0 && s[length - 1] == ' ')
		length--;
	return length;
}

/* Where a line ends when s goes on behind the fits bytes it has room for. */
static size_t break_at(const char *s, size_t fits)
{
	size_t end = fits;

	if (s[fits] == ' ')
		return fits;
	while (end > 0 && s[end - 1] != ' ')
		end--;
	if (without_spaces(s, end) > 0)
		return end;
	/* One word, too long: cut it, but always get on by a letter. */
	return fits > 0 ? fits : letter_bytes(s, TO_THE_ZERO);
}

size_t text_wrap(const char *s, int columns, size_t *next)
{
	size_t end = clip(s, '\n', columns);

	if (s[end] != '\0' && s[end] != '\n')
		end = break_at(s, end);
	*next = end + strspn(s + end, " ");
	if (s[*next] == '\n')
		++*next;
	return without_spaces(s, end);
}
