/*
 * slips_flow.c - brackets, over as many lines as they take
 *
 * Between brackets there are items with commas between; in { } an item is a
 * word, a colon and a value.  Each open bracket knows where its present item
 * has got to:
 *
 *	{order: [1, 2], bows_each: 2}
 *	 key    value   key        value
 */
#include <string.h>

#include "reader.h"
#include "slips.h"

enum { COPY_MAX = 160 };

static struct bracket *top(struct slips *s)
{
	return &s->bracket[s->depth - 1];
}

static bool bracket_fault(struct slips *s)
{
	const struct bracket *b = top(s);
	bool list = b->sign == '[';

	return slip_break_at(s,
	    message_with(M_ROUTINE_OPEN_BRACKET, TEXT(list ? "[" : "{"),
		TEXT(list ? "]" : "}")),
	    b->spot);
}

static bool push(struct slips *s, const char *at)
{
	struct bracket *b;

	if (s->depth == ROUTINE_DEPTH_MAX)
		return slip_break(s,
		    message_with(M_ROUTINE_DEEP, WHOLE(ROUTINE_DEPTH_MAX)), at);
	b = &s->bracket[s->depth++];
	*b = (struct bracket) { .sign = *at, .spot = s->here };
	b->spot.at = at;
	return true;
}

static char closing_sign(const struct bracket *b)
{
	return b->sign == '[' ? ']' : '}';
}

/* A closing bracket that closes none of those that are open. */
static bool stray(const struct slips *s, const char *at)
{
	for (int i = 0; i < s->depth; i++)
		if (*at == closing_sign(&s->bracket[i]))
			return false;
	return true;
}

static bool pop(struct slips *s, const char *at)
{
	if (stray(s, at))
		return slip_stray(s, at);
	if (*at != closing_sign(top(s)))
		return bracket_fault(s);
	s->depth--;
	if (s->depth > 0)
		top(s)->item = ITEM_DONE;
	return true;
}

/* Where plain words between brackets end on this line. */
static const char *plain_end(const struct slips *s, const char *at)
{
	while (at < s->end && strchr(",[]{}", *at) == NULL) {
		if (slip_note(s, at))
			break;
		if (*at == ':' &&
		    (at + 1 == s->end || strchr(" \t,[]{}", at[1]) != NULL))
			break;
		at++;
	}
	return at;
}

/* The last word before a place, when it is a key we know. */
static const char *key_before(const char *from, const char *at, size_t *length)
{
	const char *word = at;

	while (word > from && word[-1] != ' ' && word[-1] != '\t')
		word--;
	*length = (size_t)(at - word);
	return word > from && keys_know(word, *length) ? word : NULL;
}

static bool second_colon(struct slips *s, const char *colon)
{
	struct bracket *b = top(s);
	char key[COPY_MAX], words[COPY_MAX];
	size_t length;
	const char *next = key_before(b->text, colon, &length);

	if (next != NULL) {
		slip_copy(key, sizeof(key), next, next + length);
		return slip_break(
		    s, message_with(M_ROUTINE_NO_COMMA, TEXT(key)), next);
	}
	slip_quoted(words, sizeof(words), b->text, plain_end(s, colon + 1));
	if (b->key.length == 0)
		return slip_break(
		    s, message_with(M_ROUTINE_ITEM_COLON, TEXT(words)), colon);
	slip_copy(key, sizeof(key), b->key.at, b->key.at + b->key.length);
	return slip_break(s,
	    message_with(M_ROUTINE_SECOND_COLON, TEXT(key), TEXT(words)),
	    colon);
}

/* A colon behind plain words that begin at b->text. */
static bool plain_colon(struct slips *s, const char *colon)
{
	struct bracket *b = top(s);
	size_t length = (size_t)(colon - b->text);
	char words[COPY_MAX];

	if (length == 0)
		return slip_break(s, message_of(M_ROUTINE_NO_KEY), colon);
	if (b->sign == '[' && !keys_know(b->text, length)) {
		slip_quoted(
		    words, sizeof(words), b->text, plain_end(s, colon + 1));
		return slip_break(
		    s, message_with(M_ROUTINE_ITEM_COLON, TEXT(words)), colon);
	}
	if (b->in_value)
		return second_colon(s, colon);
	b->key = (struct span) { b->text, length };
	b->in_value = true;
	b->item = ITEM_START;
	return true;
}

/* Where the value behind a colon ends: its words or its brackets. */
static const char *value_end(
    const struct slips *s, const char *value, const char *end)
{
	if (*value != '[' && *value != '{')
		return end;
	for (end = value; end < s->end; end++)
		if (*end == (*value == '[' ? ']' : '}'))
			return end + 1;
	return end;
}

/* "{minutes:5" is one word to a YAML reader, "{order:[1]" is nothing. */
static bool no_space(struct slips *s, const char *at, const char *end)
{
	size_t word = slip_word(s, at);
	const char *behind = at + word + 1;
	char key[COPY_MAX], value[COPY_MAX];

	if (top(s)->sign != '{' || top(s)->in_value || word == 0 ||
	    behind >= s->end || at[word] != ':' || slip_blank(s, behind) ||
	    strchr(",]}", *behind) != NULL)
		return true;
	end = value_end(s, behind, end);
	slip_copy(key, sizeof(key), at, at + word);
	slip_copy(value, sizeof(value), behind, end);
	return slip_break(s,
	    message_with(M_ROUTINE_NO_SPACE, TEXT(key), TEXT(value)),
	    at + word);
}

/* Words for people: those of a list, or behind a key that takes them. */
static bool free_item(const struct bracket *b)
{
	if (b->sign == '[')
		return slip_letter(*b->text);
	return b->in_value && keys_free_text(b->key.at, b->key.length);
}

static bool read_plain(struct slips *s, const char *at)
{
	struct bracket *b = top(s);
	const char *end = plain_end(s, at);

	b->item = ITEM_PLAIN;
	b->text = at;
	if (!slip_sign(s, at) || !no_space(s, at, end))
		return false;
	s->here.at = end;
	if (end == s->end)
		return true;
	if (*end == ':') {
		s->here.at = end + 1;
		return plain_colon(s, end);
	}
	if (slip_note(s, end)) {
		slip_swallow(s, at, end, free_item(b));
		s->here.at = s->end;
	}
	return true;
}

/* Behind a comma. */
static bool next_item(struct slips *s, const char *at)
{
	if (top(s)->item == ITEM_START && !top(s)->in_value)
		return slip_break(s, message_of(M_ROUTINE_COMMA_TOO_MANY), at);
	top(s)->item = ITEM_START;
	top(s)->in_value = false;
	top(s)->key = (struct span) { 0 };
	return true;
}

bool slip_behind(struct slips *s)
{
	const char *at = slip_skip(s, s->here.at);
	char closing[2] = { s->here.at > s->here.line ? s->here.at[-1] : ' ' };

	if (at == s->end || slip_note(s, at))
		return true;
	if (slip_after_quote(s, at))
		return slip_behind_quote(s, at);
	return slip_break(
	    s, message_with(M_ROUTINE_AFTER_BRACKET, TEXT(closing)), at);
}

/* Behind a quotation mark or bracket that ended an item. */
static bool after_done(struct slips *s, const char *at)
{
	s->here.at = at + 1;
	if (*at == ':' && top(s)->sign == '{' && !top(s)->in_value) {
		top(s)->key = slip_quoted_key(s, at);
		top(s)->in_value = true;
		top(s)->item = ITEM_START;
		return true;
	}
	if (*at == ':')
		return true; /* for the YAML reader to refuse */
	if (*at == '"' || *at == '\'' || !slip_after_quote(s, at))
		return slip_break(s, message_of(M_ROUTINE_COMMA_HERE), at);
	return slip_behind_quote(s, at);
}

/* "{order [1, 2]": the words before a bracket are a key. */
static bool colon_there(struct slips *s, const char *at)
{
	const struct bracket *b = top(s);
	char key[COPY_MAX];

	if (b->sign != '{' || b->in_value || b->item != ITEM_PLAIN ||
	    b->text < s->here.line)
		return true;
	slip_copy(key, sizeof(key), b->text, at);
	return slip_break(s, message_with(M_ROUTINE_COLON_HERE, TEXT(key)), at);
}

/* One step at a letter that is no blank. */
static bool step(struct slips *s, const char *at)
{
	s->here.at = at + 1;
	if (*at == ',')
		return next_item(s, at);
	if (*at == ']' || *at == '}')
		return pop(s, at);
	if (*at == '[' || *at == '{')
		return colon_there(s, at) && push(s, at);
	if (top(s)->item == ITEM_DONE)
		return after_done(s, at);
	if (top(s)->item == ITEM_START && (*at == '"' || *at == '\'')) {
		top(s)->item = ITEM_DONE;
		return slip_begin_quote(s, at);
	}
	return read_plain(s, at);
}

/* From the place of the scan until all is closed or the line ends. */
static bool run(struct slips *s)
{
	while (s->depth > 0 && !s->quote) {
		const char *at = slip_skip(s, s->here.at);

		if (at == s->end || slip_note(s, at)) {
			s->here.at = s->end;
			return true;
		}
		if (!step(s, at))
			return false;
	}
	return true;
}

bool slip_open_bracket(struct slips *s)
{
	const char *at = s->here.at;

	s->here.at = at + 1;
	return push(s, at) && run(s);
}

/* A line that begins something new, no further in than s->limit. */
static bool begins_new(const struct slips *s)
{
	const char *at = s->here.line;
	size_t word;

	while (at < s->end && *at == ' ')
		at++;
	if (at - s->here.line > s->limit || at == s->end)
		return false;
	if (*at == '-' && slip_blank(s, at + 1))
		return true;
	word = slip_word(s, at);
	return word > 0 && slip_colon(s, at + word);
}

bool slip_go_on(struct slips *s)
{
	if (begins_new(s))
		return slip_still_open(s);
	if (s->quote)
		slip_read_quote(s, s->here.line);
	if (s->quote)
		return true;
	if (!run(s))
		return false;
	return s->depth > 0 || s->quote || slip_behind(s);
}

bool slip_still_open(struct slips *s)
{
	if (s->quote)
		return slip_break_at(
		    s, message_of(M_ROUTINE_OPEN_QUOTE), s->quote_spot);
	return s->depth == 0 || bracket_fault(s);
}
