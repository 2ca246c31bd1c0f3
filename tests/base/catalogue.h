/*
 * catalogue.h - the sentences of a language, read from src/po as they are written
 *
 * Knows what our catalogues hold: msgctxt, msgid, msgstr in one or several
 * quoted lines, comments, and "fuzzy", which makes an entry count as not there.
 */
#ifndef TESTS_CATALOGUE_H
#define TESTS_CATALOGUE_H

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/tongue.h"

enum { CATALOGUE_BYTES = 1 << 20, CATALOGUE_LINE = 4096 };

struct catalogue {
	struct tongue tongue;
	struct text store; /* sentences lie here, each with its zero */
	char bytes[CATALOGUE_BYTES];
	int others;	 /* entries of an id that is not there */
	int old;	 /* of another English sentence, or fuzzy */
	int again;	 /* a second one of the same id */
	int unfit;	 /* sentences that do not agree with their signature */
	char first[200]; /* the context of the first that is wrong */
};

/* One entry on its way. */
struct catalogue_entry {
	char part[3][CATALOGUE_LINE]; /* context, English, the other */
	int now;		      /* the part that lines go on with */
	bool fuzzy;
};

static inline void catalogue_wrong(
    struct catalogue *c, int *count, const char *context)
{
	(*count)++;
	if (!*c->first)
		text_clean(c->first, sizeof(c->first), context);
}

static inline void catalogue_put(
    struct catalogue *c, const struct catalogue_entry *e)
{
	const char *name = e->part[0], *said = e->part[2];
	enum message_id id = M_NONE + 1;

	if (!*e->part[1] || !*said)
		return;
	while (id < M_COUNT && strcmp(message_name(id), name) != 0)
		id++;
	if (id == M_COUNT) {
		catalogue_wrong(c, &c->others, name);
	} else if (e->fuzzy || strcmp(message_english(id), e->part[1]) != 0) {
		catalogue_wrong(c, &c->old, name);
	} else if (c->tongue.sentence[id]) {
		catalogue_wrong(c, &c->again, name);
	} else if (!tongue_fits(message_signature(id), said)) {
		catalogue_wrong(c, &c->unfit, name);
	} else {
		c->tongue.sentence[id] = c->store.bytes + c->store.length;
		text_add_bytes(&c->store, said, strlen(said) + 1);
	}
}

/* Adds what stands between the quotes of a line to the part it goes on with. */
static inline void catalogue_words(struct catalogue_entry *e, const char *line)
{
	const char *s = strchr(line, '"');
	struct text t = { e->part[e->now], CATALOGUE_LINE,
		strlen(e->part[e->now]), false };

	for (s = s ? s + 1 : ""; *s && *s != '"'; s++) {
		if (*s == '\\' && s[1])
			s++;
		text_add_bytes(&t, s[-1] == '\\' && *s == 'n' ? "\n" : s, 1);
	}
}

/* Reads a catalogue; the caller frees it.  NULL when there is no such file. */
static inline struct catalogue *catalogue_read(const char *path)
{
	static const char *const keys[] = { "msgctxt ", "msgid ", "msgstr " };
	FILE *f = fopen(path, "r");
	struct catalogue *c = f ? calloc(1, sizeof(*c)) : NULL;
	struct catalogue_entry *e = f ? calloc(1, sizeof(*e)) : NULL;
	char line[CATALOGUE_LINE];

	if (c)
		c->store = text_in(c->bytes, sizeof(c->bytes));
	while (c && e && fgets(line, sizeof(line), f)) {
		if (*line == '\n') {
			catalogue_put(c, e);
			*e = (struct catalogue_entry) { 0 };
		}
		e->fuzzy |= strncmp(line, "#,", 2) == 0 &&
		    strstr(line, "fuzzy") != NULL;
		for (int i = 0; i < 3; i++)
			if (strncmp(line, keys[i], strlen(keys[i])) == 0)
				e->now = i;
		if (*line != '#' && *line != '\n')
			catalogue_words(e, line);
	}
	if (c && e)
		catalogue_put(c, e);
	free(e);
	if (f)
		fclose(f);
	return c;
}

#endif
