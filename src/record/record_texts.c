/*
 * record_texts.c - texts, dates and names, kept in the record
 *
 * Names of stages and units end up in lists that are read back letter by
 * letter, and words on screens: none of them may hold a sign that means
 * something there.
 */
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/text.h"
#include "evenhand/record/moment.h"
#include "reader.h"

enum { CHUNK = 256 };

static const char small[] = "abcdefghijklmnopqrstuvwxyz0123456789-";
static const char unit_signs[] = "ABCDEFGHabcdefgh#0123456789-";

static bool line_sign(char c)
{
	return c == '\n' || c == '\t' || c == '\r';
}

/* Whether nothing in it must not reach a terminal; lines may be in it. */
bool record_text_clean(const char *s, bool lines)
{
	char part[CHUNK], same[CHUNK];

	while (*s) {
		size_t length = strnlen(s, CHUNK - 1);

		/* A letter is not cut in two. */
		while (length > 1 && s[length] != '\0' &&
		    ((unsigned char)s[length] & 0xc0) == 0x80)
			length--;
		memcpy(part, s, length);
		part[length] = '\0';
		for (size_t i = 0; lines && i < length; i++)
			part[i] = line_sign(part[i]) ? ' ' : part[i];
		text_clean(same, sizeof(same), part);
		if (strcmp(part, same) != 0)
			return false;
		s += length;
	}
	return true;
}

static bool keep_text(struct record_reader *rd, const struct node *n,
    const char *key, int most, bool lines, const char **out)
{
	char *kept;

	if (n->kind != NODE_WORD)
		return record_fault(
		    rd, n, message_with(M_RECORD_WANT_WORD, TEXT(key)));
	if (strlen(n->word) >= (size_t)most)
		return record_fault(rd, n,
		    message_with(M_RECORD_LONG, TEXT(key), WHOLE(most - 1)));
	if (!record_text_clean(n->word, lines))
		return record_fault(rd, n, message_of(M_RECORD_CONTROL));
	kept = arena_text(&rd->r->arena, n->word, strlen(n->word));
	if (kept == NULL)
		return record_no_memory(rd);
	*out = kept;
	return true;
}

bool record_text(struct record_reader *rd, const struct node *n,
    const char *key, int most, const char **out)
{
	return keep_text(rd, n, key, most, false, out);
}

bool record_lines(struct record_reader *rd, const struct node *n,
    const char *key, int most, const char **out)
{
	return keep_text(rd, n, key, most, true, out);
}

static bool name_good(const char *s, const char *signs, size_t most, bool none)
{
	return strlen(s) < most && s[strspn(s, signs)] == '\0' &&
	    (none || *s != '\0');
}

bool record_stage_good(const char *s, bool none)
{
	return name_good(s, small, ID_MAX, none);
}

bool record_unit_good(const char *s, bool none)
{
	return name_good(s, unit_signs, UNIT_NAME_MAX, none);
}

/* A name of few signs; the one that was read last is often the same. */
static bool keep_name(struct record_reader *rd, const struct node *n, bool good,
    enum message_id wrong, const char **out)
{
	char *kept;

	if (!good)
		return record_fault(rd, n,
		    message_with(
			wrong, TEXT(n->kind == NODE_WORD ? n->word : "")));
	if (*out != NULL && strcmp(*out, n->word) == 0)
		return true;
	kept = arena_text(&rd->r->arena, n->word, strlen(n->word));
	if (kept == NULL)
		return record_no_memory(rd);
	*out = kept;
	return true;
}

bool record_stage(
    struct record_reader *rd, const struct node *n, bool none, const char **out)
{
	bool good = n->kind == NODE_WORD && record_stage_good(n->word, none);

	return keep_name(rd, n, good, M_RECORD_STAGE, out);
}

bool record_unit(
    struct record_reader *rd, const struct node *n, bool none, const char **out)
{
	bool good = n->kind == NODE_WORD && record_unit_good(n->word, none);

	return keep_name(rd, n, good, M_RECORD_UNIT, out);
}

bool record_day(
    struct record_reader *rd, const struct node *n, const char *key, int *out)
{
	const char *word = n->kind == NODE_WORD ? n->word : "";

	return date_parse(word, out) ||
	    record_fault(
		rd, n, message_with(M_RECORD_DAY, TEXT(key), TEXT(word)));
}

bool record_moment(struct record_reader *rd, const struct node *n,
    const char *key, struct moment *out)
{
	const char *word = n->kind == NODE_WORD ? n->word : "";

	return moment_told(word, out) ||
	    record_fault(
		rd, n, message_with(M_RECORD_MOMENT, TEXT(key), TEXT(word)));
}

bool record_day_of(
    struct record_reader *rd, const struct node *n, struct moment at, int *out)
{
	int day;

	if (!record_day(rd, n, "day", &day))
		return false;
	if (abs(day - moment_practice_day(at)) > DAYS_APART_MOST)
		return record_fault(
		    rd, n, message_with(M_RECORD_FAR, DAY(day)));
	*out = day;
	return true;
}
