/*
 * write_words.c - texts and numbers as YAML has them
 *
 * Words of people stand in quotation marks, so that no reader of YAML takes
 * them for anything else.  A routine's text stands as it is, further in by two
 * spaces; only where such a block would not keep every letter (YAML 1.1,
 * 5.4 and 8.1: other line ends, no or several empty lines at the end) it stands
 * in quotation marks, too.
 */
#include <math.h>
#include <string.h>

#include "writer.h"

enum { DECIMALS_MOST = 15, DECIMALS_NEAREST = 12 };

/* Above this a double may not hold every whole number. */
#define WHOLE_MOST 9007199254740992.0

void record_write_real(struct text *t, double value)
{
	double size = fabs(value), tenths = 1;
	int decimals = 0;

	if (!(size < 1e12)) /* no number of ours, and what is none */
		size = 0;
	while (decimals < DECIMALS_MOST && size * tenths < WHOLE_MOST / 10 &&
	    (double)llround(size * tenths) / tenths != size) {
		tenths *= 10;
		decimals++;
	}
	if ((double)llround(size * tenths) / tenths != size)
		for (; decimals > DECIMALS_NEAREST; decimals--)
			tenths /= 10;
	long long all = llround(size * tenths);
	long long whole = all / (long long)tenths;

	text_format(t, "%s%lld", value < 0 && all > 0 ? "-" : "", whole);
	if (decimals > 0)
		text_format(
		    t, ".%0*lld", decimals, all - whole * (long long)tenths);
}

void write_quoted(struct text *t, const char *s)
{
	text_add(t, "\"");
	for (; *s && !t->cut; s++) {
		if (*s == '"' || *s == '\\')
			text_format(t, "\\%c", *s);
		else if (*s == '\n')
			text_add(t, "\\n");
		else if (*s == '\r')
			text_add(t, "\\r");
		else if (*s == '\t')
			text_add(t, "\\t");
		else if (strncmp(s, "\xef\xbb\xbf", 3) == 0) {
			text_add(t, "\\uFEFF");
			s += 2;
		} else
			text_add_bytes(t, s, 1);
	}
	text_add(t, "\"");
}

/* Words that readers of YAML 1.1 or 1.2 take for something else. */
static bool means_more(const char *s)
{
	static const char *const words[] = { "y", "n", "yes", "no", "on", "off",
		"true", "false", "null", NULL };

	for (int i = 0; words[i]; i++)
		if (strcmp(words[i], s) == 0)
			return true;
	return false;
}

void write_name(struct text *t, const char *s)
{
	bool letter = (*s >= 'a' && *s <= 'z') || (*s >= 'A' && *s <= 'Z');
	bool finger = *s >= '0' && *s <= '9' && s[1] == '\0';

	if (finger || (letter && !means_more(s) && strchr(s, '#') == NULL))
		text_add(t, s);
	else
		write_quoted(t, s);
}

/* Whether a block keeps every letter of a text. */
static bool keeps_in_block(const char *s)
{
	size_t length = strlen(s);

	return length > 1 && s[length - 1] == '\n' && s[length - 2] != '\n' &&
	    *s != '\n' && strchr(s, '\r') == NULL &&
	    strstr(s, "\xef\xbb\xbf") == NULL;
}

void write_block(struct text *t, const char *indent, const char *s)
{
	if (!keeps_in_block(s)) {
		write_quoted(t, s);
		text_add(t, "\n");
		return;
	}
	text_add(t, "|2\n");
	while (*s && !t->cut) {
		size_t line = strcspn(s, "\n");

		if (line > 0)
			text_add(t, indent);
		text_add_bytes(t, s, line + 1);
		s += line + 1;
	}
}
