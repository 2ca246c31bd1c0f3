/*
 * slips_quote.c - quotation marks, over as many lines as they take
 *
 * Between " marks a \ takes the sign behind it along; between ' marks two of
 * them stand for one.
 */
#include "slips.h"

/* Behind the closing mark, or NULL when the line ends before it. */
static const char *quote_end(const struct slips *s, const char *at)
{
	for (; at < s->end; at++) {
		if (s->quote == '"' && *at == '\\' && at + 1 < s->end)
			at++;
		else if (*at == s->quote && s->quote == '\'' &&
		    at + 1 < s->end && at[1] == '\'')
			at++;
		else if (*at == s->quote)
			return at + 1;
	}
	return NULL;
}

bool slip_read_quote(struct slips *s, const char *at)
{
	const char *behind = quote_end(s, at);

	s->here.at = behind != NULL ? behind : s->end;
	if (behind != NULL)
		s->quote = '\0';
	return true;
}

bool slip_begin_quote(struct slips *s, const char *at)
{
	s->quote = *at;
	s->quote_spot = s->here;
	s->quote_spot.at = at;
	return slip_read_quote(s, at + 1);
}

bool slip_open_quote(struct slips *s)
{
	return slip_begin_quote(s, s->here.at);
}

bool slip_after_quote(const struct slips *s, const char *at)
{
	while (at > s->here.line && (at[-1] == ' ' || at[-1] == '\t'))
		at--;
	return at > s->here.line && (at[-1] == '"' || at[-1] == '\'');
}

struct span slip_quoted_key(const struct slips *s, const char *colon)
{
	const char *open = s->quote_spot.at, *close = colon - 1;

	if (!slip_after_quote(s, colon) || s->quote_spot.line != s->here.line)
		return (struct span) { 0 };
	while (slip_blank(s, close))
		close--;
	return (struct span) { open + 1, (size_t)(close - open - 1) };
}

bool slip_behind_quote(struct slips *s, const char *at)
{
	if (at[-1] == '\'' && slip_letter(*at))
		return slip_break(s, message_of(M_ROUTINE_APOSTROPHE), at - 1);
	if (*at == ',' || *at == ';' || *at == '.')
		return slip_break(s,
		    message_with(
			M_ROUTINE_AFTER_BRACKET, TEXT("quotation mark")),
		    at);
	return slip_break(s, message_of(M_ROUTINE_AFTER_QUOTE), at);
}
