/*
 * json.c - JSON, value by value
 */
#include "evenhand/base/json.h"

#include <assert.h>

struct json json_in(struct text *out)
{
	return (struct json) { .out = out, .first = true };
}

static void escaped(struct text *out, const char *s)
{
	text_add(out, "\"");
	for (; *s; s++) {
		unsigned char c = (unsigned char)*s;

		if (c == '"' || c == '\\')
			text_format(out, "\\%c", c);
		else if (c < ' ')
			text_format(out, "\\u%04x", c);
		else
			text_add_bytes(out, s, 1);
	}
	text_add(out, "\"");
}

/* What stands between a value and the one before it, and its key. */
static void begin(struct json *j, const char *key, bool own_line)
{
	if (!j->first)
		text_add(j->out, ",");
	if (own_line && j->depth > 0)
		text_format(j->out, "\n%*s", 2 * j->depth, "");
	else if (!j->first)
		text_add(j->out, " ");
	j->first = false;
	if (!key)
		return;
	escaped(j->out, key);
	text_add(j->out, ": ");
}

void json_open(struct json *j, const char *key, char bracket)
{
	begin(j, key, j->depth == 1 || !key);
	text_add_bytes(j->out, &bracket, 1);
	j->depth++;
	j->first = true;
}

void json_close(struct json *j, char bracket)
{
	assert(j->depth > 0);
	j->depth--;
	j->first = false;
	text_add_bytes(j->out, &bracket, 1);
	if (j->depth == 0)
		text_add(j->out, "\n");
}

void json_text(struct json *j, const char *key, const char *value)
{
	begin(j, key, j->depth == 1);
	escaped(j->out, value);
}

void json_whole(struct json *j, const char *key, int64_t value)
{
	begin(j, key, j->depth == 1);
	text_format(j->out, "%lld", (long long)value);
}

void json_truth(struct json *j, const char *key, bool value)
{
	begin(j, key, j->depth == 1);
	text_add(j->out, value ? "true" : "false");
}
