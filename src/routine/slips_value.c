/*
 * slips_value.c - what stands behind a colon or a dash
 *
 * Quotation marks and brackets go to slips_flow.c; a | or > begins a text that
 * reaches as far down as its lines stand further in.  All else is plain words,
 * and in plain words a colon with a space ends the patience of YAML.
 */
#include "reader.h"
#include "slips.h"

enum { COPY_MAX = 160 };

const char *slip_find_colon(
    const struct slips *s, const char *at, const char *end)
{
	for (; at < end; at++)
		if (slip_colon(s, at))
			return at;
	return NULL;
}

void slip_remember(
    struct slips *s, enum below below, int column, bool free_text)
{
	s->below = below;
	s->column = column;
	s->free_text = free_text;
}

/* A mark, bracket or | at the place of a value: true when it was one. */
bool slip_special(struct slips *s, const char *at, int column, bool *good)
{
	bool quote = *at == '"' || *at == '\'';
	bool bracket = *at == '[' || *at == '{';

	if (*at == '|' || *at == '>') {
		s->block = column;
		slip_remember(s, BELOW_VALUE, column, true);
		*good = true;
		return true;
	}
	if (!quote && !bracket)
		return false;
	s->limit = column;
	s->here.at = at;
	slip_remember(s, BELOW_VALUE, column, false);
	*good = quote ? slip_open_quote(s) : slip_open_bracket(s);
	if (*good && !s->quote && s->depth == 0)
		*good = slip_behind(s);
	return true;
}

bool slip_stray(struct slips *s, const char *at)
{
	return slip_break(s,
	    message_with(M_ROUTINE_STRAY_BRACKET, TEXT(*at == ']' ? "]" : "}"),
		TEXT(*at == ']' ? "[" : "{")),
	    at);
}

/* What no value may begin with. */
bool slip_good_start(struct slips *s, const char *at)
{
	if (!slip_sign(s, at))
		return false;
	if (slip_colon(s, at))
		return slip_break(s, message_of(M_ROUTINE_NO_KEY), at);
	return (*at != ']' && *at != '}') || slip_stray(s, at);
}

static bool second_colon(struct slips *s, const struct line *l,
    const char *value, const char *colon, bool free_text)
{
	char key[COPY_MAX], words[COPY_MAX];
	const char *last = colon;

	while (last > value && last[-1] != ' ' && last[-1] != '\t')
		last--;
	slip_copy(key, sizeof(key), last, colon);
	if (!free_text && keys_know(last, (size_t)(colon - last)))
		return slip_break(
		    s, message_with(M_ROUTINE_TWO_KEYS, TEXT(key)), last);
	slip_copy(key, sizeof(key), l->words, l->colon);
	slip_quoted(words, sizeof(words), value, l->note);
	return slip_break(s,
	    message_with(M_ROUTINE_SECOND_COLON, TEXT(key), TEXT(words)),
	    colon);
}

static bool dash_here(struct slips *s, const struct line *l, const char *at)
{
	char key[COPY_MAX];

	slip_copy(key, sizeof(key), l->words, l->colon);
	return slip_break(s, message_with(M_ROUTINE_DASH_HERE, TEXT(key)), at);
}

/* The value behind the colon of a key. */
bool slip_value(struct slips *s, const struct line *l)
{
	const char *value = slip_skip(s, l->colon + 1);
	bool free_text = keys_free_text(
	    l->words, (size_t)(l->colon - l->words));
	int column = (int)(l->words - s->here.line);
	const char *colon;
	bool good;

	if (value >= l->note) {
		if (l->note < s->end)
			slip_swallow(s, l->colon + 1, l->note, free_text);
		slip_remember(s, BELOW_KEY, column, free_text);
		return true;
	}
	if (slip_special(s, value, column, &good))
		return good;
	if (!slip_good_start(s, value))
		return false;
	if (*value == '-' && (value + 1 == s->end || slip_blank(s, value + 1)))
		return dash_here(s, l, value);
	colon = slip_find_colon(s, value, l->note);
	if (colon != NULL)
		return second_colon(s, l, value, colon, free_text);
	if (l->note < s->end)
		slip_swallow(s, value, l->note, free_text);
	slip_remember(s, BELOW_TEXT, column, free_text);
	return true;
}
