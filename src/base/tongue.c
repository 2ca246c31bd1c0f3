/*
 * tongue.c - another language for the sentences, and how its pages write
 */
#include "evenhand/base/tongue.h"

#include <math.h>
#include <string.h>

#include "evenhand/base/date.h"

enum { NUMBER_BYTES = 40 };

static const struct tongue *tongue; /* NULL: English */

void tongue_set(const struct tongue *t)
{
	tongue = t;
}

const char *message_sentence(enum message_id id)
{
	const char *own = message_english(id);

	return tongue && tongue->sentence[id] ? tongue->sentence[id] : own;
}

/* What was written with a point, with the tongue's own sign. */
static void add_pointed(struct text *t, const char *bytes)
{
	const char *point = strchr(bytes, '.');

	if (!point || !tongue || !*tongue->point) {
		text_add(t, bytes);
		return;
	}
	text_add_bytes(t, bytes, (size_t)(point - bytes));
	text_add(t, tongue->point);
	text_add(t, point + 1);
}

void tongue_number(struct text *t, double number)
{
	char bytes[NUMBER_BYTES];
	struct text plain = text_in(bytes, sizeof(bytes));

	text_number(&plain, number);
	add_pointed(t, bytes);
}

void tongue_tenths(struct text *t, double number)
{
	char bytes[NUMBER_BYTES];
	struct text plain = text_in(bytes, sizeof(bytes));
	double tenth = round(number * 10) / 10;

	text_number(&plain, tenth);
	if (isfinite(tenth) && !strchr(bytes, '.'))
		text_add(&plain, ".0");
	add_pointed(t, bytes);
}

/* To the word behind this one. */
static const char *next_word(const char *words)
{
	words += strcspn(words, " ");
	return words + strspn(words, " ");
}

void tongue_note(char *name)
{
	const char *own = message_english(M_WORD_NOTES);
	const char *other = message_sentence(M_WORD_NOTES);
	size_t letters = *name ? 1 + strspn(name + 1, "#b") : 0, takes;

	while (*own &&
	    (strcspn(own, " ") != letters || memcmp(own, name, letters) != 0)) {
		own = next_word(own);
		other = next_word(other);
	}
	takes = strcspn(other, " ");
	if (!*own || takes == 0 || takes > TONGUE_NOTE_MAX)
		return;
	memmove(name + takes, name + letters, strlen(name + letters) + 1);
	memcpy(name, other, takes);
}

/* Writes a day as a pattern of d, m, y and other signs says. */
static void write_date(int day, const char *pattern, char *buffer)
{
	struct text t = text_in(buffer, DATE_TEXT_MAX);
	int year, month, dom;

	date_of(day, &year, &month, &dom);
	for (const char *p = pattern; *p; p++)
		if (*p == 'y')
			text_format(&t, "%04d", year);
		else if (*p == 'm' || *p == 'd')
			text_format(&t, "%02d", *p == 'm' ? month : dom);
		else
			text_add_bytes(&t, p, 1);
}

static const char *pattern_of(void)
{
	return tongue && *tongue->date ? tongue->date : "y-m-d";
}

void tongue_date(int day, char *buffer)
{
	write_date(day, pattern_of(), buffer);
}

void tongue_date_short(int day, char *buffer)
{
	/* From the first of day and month to the last. */
	const char *all = pattern_of(), *first = strpbrk(all, "dm");
	const char *last = first ? strpbrk(first + 1, "dm") : NULL;
	char pattern[TONGUE_DATE_MAX];
	struct text t = text_in(pattern, sizeof(pattern));

	if (last)
		text_add_bytes(&t, first, (size_t)(last - first) + 1);
	write_date(day, pattern, buffer);
}
