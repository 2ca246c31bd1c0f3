/*
 * json.h - writing a JSON document (RFC 8259) into a text
 *
 *	struct json j = json_in(&text);
 *	json_open(&j, NULL, '{');
 *	json_whole(&j, "version", 1);
 *	json_open(&j, "blocks", '[');
 *	...
 *	json_close(&j, ']');
 *	json_close(&j, '}');
 *
 * A key is NULL in a list and at the top.  Every value of the outermost one
 * begins a line, and so does every object in a list; the rest goes on.  What
 * does not fit is cut as text.h has it: look at text.cut.
 *
 * Pure; any thread.
 */
#ifndef EVENHAND_BASE_JSON_H
#define EVENHAND_BASE_JSON_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/text.h"

struct json {
	struct text *out;
	int depth;
	bool first; /* nothing stands in the innermost yet */
};

struct json json_in(struct text *out);

/* Begins and ends an object ('{', '}') or a list ('[', ']'). */
void json_open(struct json *j, const char *key, char bracket);
void json_close(struct json *j, char bracket);

/* A string in quotation marks, with what JSON wants escaped. */
void json_text(struct json *j, const char *key, const char *value);
void json_whole(struct json *j, const char *key, int64_t value);
void json_truth(struct json *j, const char *key, bool value);

#endif
