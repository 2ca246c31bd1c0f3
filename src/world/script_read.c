/*
 * script_read.c - the lines of a script as steps, with every fault
 *
 *	2:36.5 c            time, key
 *	- words Is it so?   as soon as a key is waited for, text
 *	# a note            nothing
 */
#include "script_read.h"

#include <string.h>

#include "evenhand/base/text.h"

enum { MINUTES_MAX = 999, NEAR = 2, WORD_BYTES = 48 };

/* One line being read. */
struct line {
	const char *path;
	char *start; /* of the line, ended by a zero */
	char *at;    /* what comes next */
	int number;
	struct faults *faults;
	int64_t last_ms; /* the time read last, and as it was written */
	const char *last_time;
};

static const struct {
	const char *name;
	enum key key;
} key_names[] = {
	{ "forward", KEY_FORWARD },
	{ "back", KEY_BACK },
	{ "space", KEY_SILENCE },
	{ "silence", KEY_SILENCE },
	{ "c", KEY_CLEAN },
	{ "clean", KEY_CLEAN },
	{ "s", KEY_SHAKY },
	{ "shaky", KEY_SHAKY },
	{ "h", KEY_HURT },
	{ "hurt", KEY_HURT },
	{ "q", KEY_LEAVE },
	{ "leave", KEY_LEAVE },
	{ "?", KEY_HELP },
	{ "help", KEY_HELP },
};

enum { KEY_NAMES = sizeof key_names / sizeof *key_names };

size_t script_lines(const char *bytes, size_t length)
{
	size_t lines = 1;

	for (size_t i = 0; i < length; i++)
		lines += bytes[i] == '\n';
	return lines;
}

/* Adds a fault at a place in the line.  Always false. */
static bool wrong(const struct line *l, const char *where, struct message m)
{
	return faults_add(
	    l->faults, m, l->path, l->number, (int)(where - l->start) + 1);
}

/* The next word of the line, ended by a zero; "" at its end. */
static char *word_next(struct line *l)
{
	char *word = l->at += strspn(l->at, " \t");

	l->at += strcspn(word, " \t");
	if (*l->at)
		*l->at++ = '\0';
	l->at += strspn(l->at, " \t");
	return word;
}

static bool digit(char c)
{
	return c >= '0' && c <= '9';
}

/* Reads m:ss with up to three decimals. */
static bool time_read(const char *s, int64_t *ms)
{
	int64_t minutes = 0;
	int thousandths = 0, unit = 100;

	if (!digit(*s))
		return false;
	for (; digit(*s) && minutes <= MINUTES_MAX; s++)
		minutes = minutes * 10 + (*s - '0');
	if (minutes > MINUTES_MAX || s[0] != ':' || s[1] < '0' || s[1] > '5' ||
	    !digit(s[2]))
		return false;
	thousandths = (s[1] - '0') * 10000 + (s[2] - '0') * 1000;
	s += 3;
	if (*s == '.') {
		if (!digit(*++s))
			return false;
		for (; digit(*s) && unit > 0; s++, unit /= 10)
			thousandths += (*s - '0') * unit;
	}
	*ms = minutes * 60000 + thousandths;
	return *s == '\0';
}

static bool key_unknown(const struct line *l, const char *word)
{
	char clean[WORD_BYTES];
	const char *near = NULL;
	int best = NEAR + 1;

	text_clean(clean, sizeof clean, word);
	for (int i = 0; i < KEY_NAMES; i++) {
		int far = text_distance(word, key_names[i].name, NEAR);

		/* A single letter is near to everything. */
		if (far < best && key_names[i].name[1]) {
			best = far;
			near = key_names[i].name;
		}
	}
	if (near)
		return wrong(l, word,
		    message_with(
			M_SCRIPT_BAD_KEY_NEAR, TEXT(clean), TEXT(near)));
	return wrong(l, word, message_with(M_SCRIPT_BAD_KEY, TEXT(clean)));
}

static bool words_read(struct line *l, struct script_step *step)
{
	if (!*l->at)
		return wrong(l, l->at, message_of(M_SCRIPT_NO_WORDS));
	if (strlen(l->at) >= SESSION_WORDS_MAX)
		return wrong(l, l->at,
		    message_with(
			M_SCRIPT_LONG_WORDS, WHOLE(SESSION_WORDS_MAX - 1)));
	step->words = l->at;
	return true;
}

static bool key_read(struct line *l, const char *time, struct script_step *step)
{
	const char *word = word_next(l);
	bool known = false;

	if (!*word)
		return wrong(
		    l, word, message_with(M_SCRIPT_NO_KEY, TEXT(time)));
	if (strcmp(word, "words") == 0)
		return words_read(l, step);
	if (digit(word[0]) && !word[1]) {
		step->key = KEY_DIGIT;
		step->digit = word[0] - '0';
		known = true;
	}
	for (int i = 0; i < KEY_NAMES && !known; i++) {
		known = strcmp(word, key_names[i].name) == 0;
		step->key = key_names[i].key;
	}
	if (!known)
		return key_unknown(l, word);
	if (*l->at) {
		char clean[WORD_BYTES];

		text_clean(clean, sizeof clean, l->at);
		return wrong(
		    l, l->at, message_with(M_SCRIPT_TOO_MUCH, TEXT(clean)));
	}
	return true;
}

static bool when_read(
    struct line *l, const char *word, struct script_step *step)
{
	char clean[WORD_BYTES];

	if (strcmp(word, "-") == 0) {
		step->soon = true;
		return true;
	}
	text_clean(clean, sizeof clean, word);
	if (!time_read(word, &step->ms))
		return wrong(
		    l, word, message_with(M_SCRIPT_BAD_TIME, TEXT(clean)));
	if (step->ms < l->last_ms)
		return wrong(l, word,
		    message_with(M_SCRIPT_FALLING_TIME, TEXT(l->last_time),
			TEXT(clean)));
	l->last_ms = step->ms;
	l->last_time = word;
	return true;
}

/* Reads one line; whether it gave a step. */
static bool line_read(struct line *l, struct script_step *step)
{
	l->at = l->start + strspn(l->start, " \t");
	if (!*l->at || *l->at == '#')
		return false;

	const char *time = word_next(l);
	bool good = when_read(l, time, step);

	return key_read(l, time, step) && good;
}

int script_read(const char *path, char *bytes, size_t length,
    struct script_step *step, struct faults *faults)
{
	struct line l = { path, bytes, bytes, 0, faults, 0, "0:00" };
	int steps = 0;

	if (!text_is_utf8(bytes, length) || memchr(bytes, '\0', length)) {
		faults_add(faults, message_of(M_SCRIPT_NOT_TEXT), path, 0, 0);
		return 0;
	}
	for (char *end = bytes; end < bytes + length; l.start = end + 1) {
		l.number++;
		end = l.start + strcspn(l.start, "\n");
		*end = '\0';
		if (end > l.start && end[-1] == '\r')
			end[-1] = '\0';
		steps += line_read(&l, step + steps);
	}
	return steps;
}
