/*
 * slips.c - what a YAML reader would misread or report in the wrong place
 *
 * A missing space after a colon is no error to such a reader, and an open
 * bracket is reported where the file ends.  So the raw text is looked through
 * first: the whole file for what is no plain text, then line by line.
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"
#include "slips.h"

enum { LETTER_BYTES_MAX = 4, COPY_MAX = 160, KB = 1024 };

/* A file that is something else, by its first bytes. */
struct magic {
	const char *bytes;
	size_t length;
	enum message_id id;
};

static const struct magic magics[] = {
	{ "PK\x03\x04", 4, M_ROUTINE_DOCUMENT },
	{ "\xd0\xcf\x11\xe0", 4, M_ROUTINE_DOCUMENT },
	{ "{\\rtf", 5, M_ROUTINE_DOCUMENT },
	{ "%PDF", 4, M_ROUTINE_DOCUMENT },
	{ "\x89PNG", 4, M_ROUTINE_PICTURE },
	{ "\xff\xd8\xff", 3, M_ROUTINE_PICTURE },
	{ "GIF8", 4, M_ROUTINE_PICTURE },
	{ "\xff\xfe", 2, M_ROUTINE_UTF16 },
	{ "\xfe\xff", 2, M_ROUTINE_UTF16 },
};

#define BOM "\xef\xbb\xbf"

bool slip_break_at(struct slips *s, struct message m, struct spot spot)
{
	int column = letters_count(spot.line, (size_t)(spot.at - spot.line)) +
	    1;

	s->broken = true;
	return faults_add(s->faults, m, s->source->path, spot.number, column);
}

bool slip_break(struct slips *s, struct message m, const char *at)
{
	struct spot spot = s->here;

	spot.at = at;
	return slip_break_at(s, m, spot);
}

bool slip_blank(const struct slips *s, const char *at)
{
	return at < s->end && (*at == ' ' || *at == '\t');
}

const char *slip_skip(const struct slips *s, const char *at)
{
	while (slip_blank(s, at))
		at++;
	return at;
}

bool slip_colon(const struct slips *s, const char *at)
{
	return at < s->end && *at == ':' &&
	    (at + 1 == s->end || slip_blank(s, at + 1));
}

bool slip_note(const struct slips *s, const char *at)
{
	return at < s->end && *at == '#' &&
	    (at == s->here.line || slip_blank(s, at - 1));
}

bool slip_letter(char c)
{
	return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
	    (unsigned char)c >= 0x80;
}

size_t slip_word(const struct slips *s, const char *at)
{
	const char *end = at;

	while (end < s->end && ((*end >= 'a' && *end <= 'z') || *end == '_'))
		end++;
	return (size_t)(end - at);
}

void slip_copy(char *buffer, size_t size, const char *from, const char *to)
{
	struct text t = text_in(buffer, size);

	while (to > from && (to[-1] == ' ' || to[-1] == '\t'))
		to--;
	text_add_bytes(&t, from, (size_t)(to - from));
}

/* In '' marks when there are " inside: both at once are rare enough. */
void slip_quoted(char *buffer, size_t size, const char *from, const char *to)
{
	char inside[COPY_MAX];
	struct text t = text_in(buffer, size);
	bool twice;

	slip_copy(inside, sizeof(inside), from, to);
	twice = strchr(inside, '"') != NULL;
	text_format(&t, twice ? "'%s'" : "\"%s\"", inside);
}

bool slip_sign(struct slips *s, const char *at)
{
	if (at < s->end && *at != '\0' && strchr("*&!%@`", *at) != NULL)
		return slip_break(s, message_of(M_ROUTINE_SIGN), at);
	return slip_curly(s, at);
}

void slip_swallow(
    struct slips *s, const char *from, const char *note, bool free_text)
{
	const char *behind = note + 1;
	char words[COPY_MAX];

	/* Notes stand apart: two spaces before, or one behind the #. */
	if (!free_text || note - from < 1 || note[-1] != ' ' ||
	    (note - from > 1 && (note[-2] == ' ' || note[-2] == '\t')))
		return;
	if (slip_blank(s, behind)) {
		behind++;
		if (behind == s->end || *behind < '0' || *behind > '9')
			return;
	}
	if (behind >= s->end || *behind == '#')
		return;
	slip_copy(words, sizeof(words), from, note);
	faults_add(s->faults, message_with(M_ROUTINE_NOTE, TEXT(words)),
	    s->source->path, s->here.number,
	    letters_count(s->here.line, (size_t)(note - s->here.line)) + 1);
}

/* --- the whole file --- */

static bool file_fault(struct slips *s, struct message m)
{
	return faults_add(s->faults, m, s->source->path, 1, 1);
}

static bool text_at_all(struct slips *s)
{
	const char *bytes = s->source->bytes;
	size_t length = s->source->length;

	if (length > ROUTINE_BYTES_MAX)
		return file_fault(s,
		    message_with(
			M_ROUTINE_TOO_BIG, WHOLE(ROUTINE_BYTES_MAX / KB)));
	for (size_t i = 0; i < sizeof(magics) / sizeof(magics[0]); i++) {
		const struct magic *m = &magics[i];

		if (length >= m->length &&
		    memcmp(bytes, m->bytes, m->length) == 0)
			return file_fault(s, message_of(m->id));
	}
	/* Plain letters in two bytes each, without a mark in front. */
	if (length >= 2 && (bytes[0] == '\0') != (bytes[1] == '\0'))
		return file_fault(s, message_of(M_ROUTINE_UTF16));
	return true;
}

/* Bytes of the well-formed letter at a place, 0 when there is none. */
static size_t letter_at(const char *at, size_t left)
{
	/* Nearly all letters are of one byte: no need to ask. */
	if ((unsigned char)*at < 0x80)
		return 1;
	for (size_t n = 1; n <= LETTER_BYTES_MAX && n <= left; n++)
		if (text_is_utf8(at, n))
			return n;
	return 0;
}

static const char *broken_letter(const char *bytes, size_t length)
{
	size_t at = 0;

	while (at < length) {
		size_t n = letter_at(bytes + at, length - at);

		if (n == 0)
			return bytes + at;
		at += n;
	}
	return NULL;
}

/* --- lines --- */

static void next_line(struct slips *s)
{
	const char *end = s->here.line;

	while (end < s->bytes_end && *end != '\n' && *end != '\r')
		end++;
	s->end = end;
	s->here.at = s->here.line;
}

static bool more_lines(struct slips *s)
{
	size_t left = (size_t)(s->bytes_end - s->end);

	if (left == 0)
		return false;
	s->here.line = s->end +
	    (left > 1 && memcmp(s->end, "\r\n", 2) == 0 ? 2 : 1);
	s->here.number++;
	return true;
}

/* The fault of a byte anywhere in the text, with its line and column. */
static bool byte_fault(struct slips *s, enum message_id id, const char *at)
{
	next_line(s);
	while (at >= s->end && more_lines(s) && at >= s->here.line)
		next_line(s);
	return slip_break(s, message_of(id), at);
}

static bool plain_letters(struct slips *s)
{
	const char *bytes = s->here.line;
	size_t length = (size_t)(s->bytes_end - bytes);
	const char *at = broken_letter(bytes, length);

	if (at != NULL)
		return byte_fault(s, M_ROUTINE_NOT_UTF8, at);
	at = letters_control(bytes, length);
	return at == NULL || byte_fault(s, M_ROUTINE_CONTROL, at);
}

static int spaces(const struct slips *s)
{
	const char *at = s->here.line;

	while (at < s->end && *at == ' ')
		at++;
	return (int)(at - s->here.line);
}

/* A line of a | or > text: anything further in than its key. */
static bool in_block(struct slips *s)
{
	const char *at = s->here.line + spaces(s);

	if (s->block < 0)
		return false;
	if (at == s->end || spaces(s) > s->block)
		return true;
	s->block = -1;
	return false;
}

static bool scan(struct slips *s)
{
	do {
		next_line(s);
		if (in_block(s))
			continue;
		if (s->quote || s->depth > 0 ? !slip_go_on(s) : !slip_line(s))
			return false;
	} while (more_lines(s));
	return slip_still_open(s);
}

bool slips_find(const struct source *source, struct faults *faults)
{
	struct slips s = {
		.source = source,
		.faults = faults,
		.here = { source->bytes, source->bytes, 1 },
		.end = source->bytes,
		.bytes_end = source->bytes + source->length,
		.block = -1,
	};

	if (!text_at_all(&s))
		return false;
	if (source->length >= strlen(BOM) &&
	    memcmp(source->bytes, BOM, strlen(BOM)) == 0)
		s.here.line += strlen(BOM);
	return plain_letters(&s) && (scan(&s) || !s.broken);
}
