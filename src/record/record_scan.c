/*
 * record_scan.c - the raw bytes of a record, before anybody reads them
 *
 * What is not even plain text is refused here, so that no later reader meets
 * it: bytes that are no UTF-8, control characters, lines without end.
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

enum { LETTER_BYTES = 8 };

/* In no other kind of file, such as a picture, are single bytes of interest. */
static bool named(const char *bytes, size_t length)
{
	static const char name[] = "evenhand_record";

	for (size_t i = 0; i + sizeof(name) - 1 <= length; i++)
		if (memcmp(bytes + i, name, sizeof(name) - 1) == 0)
			return true;
	return false;
}

/* Where a byte stands: its line, and the letters before it. */
static bool fault_at_byte(struct faults *faults, struct message m,
    const char *path, const char *bytes, size_t at)
{
	int line = 1, column = 1;

	for (size_t i = 0; i < at; i++) {
		column += ((unsigned char)bytes[i] & 0xc0) != 0x80;
		if (bytes[i] == '\n') {
			line++;
			column = 1;
		}
	}
	return faults_add(faults, m, path, line, column);
}

/* Bytes of the letter at s; 0 when it is none, or none that may be here. */
static size_t letter_at(const char *s, size_t left, bool *utf8)
{
	char letter[LETTER_BYTES] = "", clean[LETTER_BYTES];
	size_t bytes = 1;

	if ((unsigned char)*s < 0x80) {
		*utf8 = true;
		return (*s >= ' ' && *s < 0x7f) || *s == '\n' || *s == '\t' ||
		    *s == '\r';
	}
	while (bytes < left && bytes < 4 &&
	    ((unsigned char)s[bytes] & 0xc0) == 0x80)
		bytes++;
	memcpy(letter, s, bytes);
	*utf8 = text_is_utf8(letter, bytes);
	text_clean(clean, sizeof(clean), letter);
	return *utf8 && strcmp(letter, clean) == 0 ? bytes : 0;
}

bool record_scan(
    const char *path, const char *bytes, size_t length, struct faults *faults)
{
	size_t line = 0, letter;
	bool utf8;

	if (!named(bytes, length))
		return fault_at_byte(
		    faults, message_of(M_RECORD_NOT_RECORD), path, bytes, 0);
	for (size_t at = 0; at < length; at += letter) {
		letter = letter_at(bytes + at, length - at, &utf8);
		if (letter == 0)
			return fault_at_byte(faults,
			    message_of(
				utf8 ? M_RECORD_CONTROL : M_RECORD_NOT_UTF8),
			    path, bytes, at);
		if (bytes[at] == '\n')
			line = at + 1;
		if (at > line && at - line > RECORD_LINE_MAX)
			return fault_at_byte(faults,
			    message_with(
				M_RECORD_LONG_LINE, WHOLE(RECORD_LINE_MAX)),
			    path, bytes, line);
	}
	return true;
}
