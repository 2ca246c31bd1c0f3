/*
 * slips_line.c - one line with nothing open before it
 *
 *	    - title: Week 2: thirds
 *	    │ │    │ └ value
 *	    │ │    └ colon that ends the key
 *	    │ └ key, in column 6
 *	    └ dash
 *
 * A line further in than a text above it goes on with that text; then a colon
 * in it is nearly always a key that stands too far in.
 */
#include <string.h>

#include "reader.h"
#include "slips.h"

enum { COPY_MAX = 160 };

/* Spaces that look like plain ones and are none. */
static bool odd_space(const struct slips *s, const char *at)
{
	static const char *const odd[] = { "\xc2\xa0", "\xe3\x80\x80",
		"\xe2\x80\x82", "\xe2\x80\x83", "\xe2\x80\x89",
		"\xe2\x80\xaf" };

	if (at == s->end || (unsigned char)*at < 0x80)
		return false;
	for (size_t i = 0; i < sizeof(odd) / sizeof(odd[0]); i++)
		if ((size_t)(s->end - at) >= strlen(odd[i]) &&
		    memcmp(at, odd[i], strlen(odd[i])) == 0)
			return true;
	return false;
}

static bool read_indent(struct slips *s, struct line *l)
{
	const char *at = s->here.line;

	if (s->here.at > at)
		at = s->here.at;
	while (at < s->end && *at == ' ')
		at++;
	l->words = at;
	l->indent = l->column = (int)(at - s->here.line);
	if (at < s->end && *at == '\t')
		return slip_break(s, message_of(M_ROUTINE_TAB), at);
	if (odd_space(s, at))
		return slip_break(s, message_of(M_ROUTINE_ODD_SPACE), at);
	return true;
}

/* "-Round hand": to a YAML reader that is one word. */
static bool no_dash_space(struct slips *s, const char *behind)
{
	char words[COPY_MAX];

	slip_copy(words, sizeof(words), slip_skip(s, behind), s->end);
	return slip_break(
	    s, message_with(M_ROUTINE_NO_DASH_SPACE, TEXT(words)), behind - 1);
}

static bool read_dashes(struct slips *s, struct line *l)
{
	while (l->words < s->end && *l->words == '-') {
		const char *behind = l->words + 1;

		if (behind < s->end && *behind != ' ')
			return no_dash_space(s, behind);
		l->dash = true;
		l->column = (int)(l->words - s->here.line);
		l->words = slip_skip(s, behind);
	}
	return true;
}

static const char *find_note(const struct slips *s, const char *at)
{
	while (at < s->end && !slip_note(s, at))
		at++;
	return at;
}

static bool no_space(struct slips *s, const struct line *l, size_t word)
{
	const char *colon = slip_skip(s, l->words + word);
	const char *value = colon + 1;
	char key[COPY_MAX], words[COPY_MAX];

	if (odd_space(s, value))
		value += (unsigned char)*value == 0xc2 ? 2 : 3;
	slip_copy(key, sizeof(key), l->words, l->words + word);
	slip_copy(words, sizeof(words), value, l->note);
	return slip_break(
	    s, message_with(M_ROUTINE_NO_SPACE, TEXT(key), TEXT(words)), colon);
}

/* "bow_seconds:4" in a place where only a key makes sense. */
static bool lacks_space(
    const struct slips *s, const struct line *l, size_t word)
{
	const char *colon = slip_skip(s, l->words + word);

	if (word == 0 || colon + 1 >= l->note || *colon != ':' ||
	    slip_blank(s, colon + 1))
		return false;
	return keys_know(l->words, word) ||
	    (l->colon == NULL && !l->dash && !l->inside);
}

/* "id : wide", "Id: wide" and "work on: wide" have a key all the same. */
static bool written_key(const struct line *l)
{
	char key[COPY_MAX], tidy[COPY_MAX];

	slip_copy(key, sizeof(key), l->words, l->colon);
	keys_tidy(tidy, sizeof(tidy), key);
	return keys_know(tidy, strlen(tidy));
}

/* "- Trunk still: mirror": words of a list, not a key. */
static bool item_colon(const struct slips *s, const struct line *l, size_t word)
{
	bool plain = l->words + word == l->colon || written_key(l);

	return (l->dash || (l->inside && s->below == BELOW_KEY)) && !plain &&
	    *l->words != '"' && *l->words != '\'';
}

static bool words_with_colon(struct slips *s, const struct line *l)
{
	char words[COPY_MAX];

	slip_quoted(words, sizeof(words), l->words, l->note);
	return slip_break(
	    s, message_with(M_ROUTINE_ITEM_COLON, TEXT(words)), l->colon);
}

/* Words under the beginning of a text may be meant to go on with it. */
static enum message_id no_colon(const struct slips *s, const struct line *l)
{
	bool below = s->below > BELOW_KEY && l->indent == s->column;

	return below && s->free_text ? M_ROUTINE_GO_ON : M_ROUTINE_NO_COLON;
}

/* Words without a key: a part of a list, or a text below its key. */
static bool read_words(struct slips *s, const struct line *l)
{
	bool free_text = l->dash ? slip_letter(*l->words) : s->free_text;
	size_t word = slip_word(s, l->words);
	const char *wide = slip_wide_colon(s, l->words, l->note);

	if (wide != NULL &&
	    (keys_know(l->words, word) || (!l->dash && !l->inside)))
		return slip_break(s, message_of(M_ROUTINE_WIDE_COLON), wide);
	if (!l->dash &&
	    (!l->inside || (!s->free_text && keys_know(l->words, word))))
		return slip_break(s, message_of(no_colon(s, l)), l->words);
	if (l->note < s->end)
		slip_swallow(s, l->words, l->note, free_text);
	slip_remember(
	    s, BELOW_TEXT, l->dash ? l->column : s->column, free_text);
	return true;
}

/* "title": in quotation marks; libyaml takes it as a key. */
static bool quoted_key(struct slips *s, struct line *l)
{
	const char quote = *l->words;
	const char *at = l->words + 1;

	while (at < s->end && *at != quote)
		at++;
	if (at == s->end)
		return false;
	at = slip_skip(s, at + 1);
	if (!slip_colon(s, at))
		return false;
	l->colon = at;
	l->note = find_note(s, l->colon);
	return true;
}

static bool starts_quote(const struct line *l)
{
	return *l->words == '"' || *l->words == '\'';
}

/* The line goes on with a text, or stands too far in below a value. */
static bool go_on(struct slips *s, const struct line *l)
{
	if (l->colon != NULL)
		return slip_break(
		    s, message_of(M_ROUTINE_TOO_FAR_IN), l->words);
	if (*l->words == '-' && slip_blank(s, l->words + 1))
		return slip_break(
		    s, message_of(M_ROUTINE_DASH_TOO_FAR), l->words);
	if (l->note < s->end)
		slip_swallow(s, l->words, l->note, s->free_text);
	return true;
}

/* The column of what a value without a key belongs to; -1: the file. */
static int owner(const struct slips *s, const struct line *l)
{
	if (l->dash)
		return l->column;
	return l->inside ? s->column : -1;
}

/* "turns {order: [1, 2]}": the words before a bracket are a key. */
static bool colon_there(struct slips *s, const struct line *l, size_t word)
{
	const char *at = slip_skip(s, l->words + word);
	char key[COPY_MAX];

	if (l->dash || (l->inside && s->free_text) || at == s->end ||
	    (*at != '[' && *at != '{') || !keys_know(l->words, word))
		return true;
	slip_copy(key, sizeof(key), l->words, l->words + word);
	return slip_break(s, message_with(M_ROUTINE_COLON_HERE, TEXT(key)), at);
}

static bool read_content(struct slips *s, struct line *l)
{
	size_t word = slip_word(s, l->words);
	bool good;

	if (!colon_there(s, l, word))
		return false;
	if (starts_quote(l) ? !quoted_key(s, l) : l->colon == NULL) {
		if (lacks_space(s, l, word))
			return no_space(s, l, word);
		if (slip_special(s, l->words, owner(s, l), &good))
			return good;
		return slip_good_start(s, l->words) && read_words(s, l);
	}
	if (lacks_space(s, l, word))
		return no_space(s, l, word);
	if (!slip_good_start(s, l->words))
		return false;
	if (item_colon(s, l, word))
		return words_with_colon(s, l);
	return slip_value(s, l);
}

/* "---" and "...", which begin and end a document. */
static bool document_line(const struct slips *s, const struct line *l)
{
	return l->indent == 0 && s->end - l->words >= 3 &&
	    (memcmp(l->words, "---", 3) == 0 ||
		memcmp(l->words, "...", 3) == 0) &&
	    (l->words + 3 == s->end || slip_blank(s, l->words + 3));
}

bool slip_line(struct slips *s)
{
	struct line l = { .indent = 0 };

	if (!read_indent(s, &l))
		return false;
	if (l.words == s->end || *l.words == '#' || document_line(s, &l))
		return true;
	l.inside = s->below != BELOW_NOTHING && l.indent > s->column;
	l.note = find_note(s, l.words);
	if (l.inside && s->below > BELOW_KEY) {
		l.colon = slip_find_colon(s, l.words, l.note);
		return go_on(s, &l);
	}
	if (!slip_pasted(s, l.words))
		return false;
	if (!read_dashes(s, &l))
		return false;
	if (l.words >= l.note) {
		slip_remember(s, BELOW_KEY, l.column, false);
		return true;
	}
	if (*l.words != '[' && *l.words != '{')
		l.colon = slip_find_colon(s, l.words, l.note);
	return read_content(s, &l);
}
