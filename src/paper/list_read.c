/*
 * list_read.c - lines of a list, read back
 *
 * What is read may come from anywhere, so every number is held within bounds
 * and nothing is taken for granted.
 */
#include <string.h>

#include "evenhand/paper/list.h"

enum { HUNDREDTHS = 100, NUMBERS_MAX = 6, DIGITS_MAX = 7 };

/* The word that begins a line, and what stands behind it. */
static bool begins(const char **line, const char *word)
{
	size_t length = strlen(word);

	if (strncmp(*line, word, length) != 0 ||
	    ((*line)[length] != ' ' && (*line)[length] != '\0'))
		return false;
	*line += length + ((*line)[length] == ' ');
	return true;
}

/* A whole number and the space behind it. */
static bool number(const char **line, long *out)
{
	const char *s = *line;
	bool below = *s == '-';
	int digits = 0;

	s += below;
	for (*out = 0; *s >= '0' && *s <= '9' && digits <= DIGITS_MAX; digits++)
		*out = *out * 10 + (*s++ - '0');
	if (digits == 0 || digits > DIGITS_MAX || (*s != ' ' && *s != '\0'))
		return false;
	*out = below ? -*out : *out;
	*line = s + (*s == ' ');
	return true;
}

static bool numbers(const char **line, int count, double *mm)
{
	const long most = LIST_MM_MAX * (long)HUNDREDTHS;
	long n;

	for (int i = 0; i < count; i++) {
		if (!number(line, &n) || n > most || n < -most)
			return false;
		mm[i] = (double)n / HUNDREDTHS;
	}
	return true;
}

static bool percent(const char **line, int *out)
{
	long n;

	if (!number(line, &n) || n < 0 || n > INK_FULL)
		return false;
	*out = (int)n;
	return true;
}

static bool read_page(const char *s, struct paper_item *i)
{
	double n[2];

	if (!numbers(&s, 2, n) || n[0] <= 0 || n[1] <= 0 || *s)
		return false;
	i->wide = n[0];
	i->high = n[1];
	return true;
}

static bool read_line(const char *s, struct paper_item *i)
{
	double n[5];

	if (!numbers(&s, 5, n) || n[4] < 0 || !percent(&s, &i->ink) || *s)
		return false;
	i->x = n[0];
	i->y = n[1];
	i->to_x = n[2];
	i->to_y = n[3];
	i->pen = n[4];
	return true;
}

static bool read_box(const char *s, struct paper_item *i)
{
	double n[5];

	if (!numbers(&s, 5, n) || n[2] < 0 || n[3] < 0 || n[4] < 0 ||
	    !percent(&s, &i->ink) || *s)
		return false;
	i->x = n[0];
	i->y = n[1];
	i->wide = n[2];
	i->high = n[3];
	i->pen = n[4];
	return true;
}

static bool read_oval(const char *s, struct paper_item *i)
{
	double n[4];
	long turned;

	if (!numbers(&s, 4, n) || n[2] <= 0 || n[3] <= 0 ||
	    !number(&s, &turned) || turned < -360 || turned > 360 ||
	    !numbers(&s, 1, &i->pen) || i->pen < 0 || *s)
		return false;
	i->x = n[0];
	i->y = n[1];
	i->wide = n[2];
	i->high = n[3];
	i->turned = (int)turned;
	i->ink = INK_FULL;
	return true;
}

static bool path_whole(const char *path)
{
	struct list_step step;

	while (list_step(&path, &step)) {
	}
	return *path == '\0';
}

static bool read_shape(const char *s, struct paper_item *i)
{
	double n[4];

	if (!numbers(&s, 4, n) || n[2] <= 0 || n[3] < 0 || *s != 'M' ||
	    !path_whole(s))
		return false;
	i->x = n[0];
	i->y = n[1];
	i->size = n[2];
	i->pen = n[3];
	i->ink = INK_FULL;
	i->text = s;
	return true;
}

static bool read_words(const char *s, struct paper_item *i)
{
	double n[3];

	if (!numbers(&s, 3, n) || n[2] <= 0)
		return false;
	i->x = n[0];
	i->y = n[1];
	i->size = n[2];
	i->bold = begins(&s, "bold");
	if (!i->bold && !begins(&s, "plain"))
		return false;
	i->side = begins(&s, "left") ? SIDE_LEFT
	    : begins(&s, "middle")   ? SIDE_MIDDLE
	    : begins(&s, "right")    ? SIDE_RIGHT
				     : (enum paper_side) - 1;
	if ((int)i->side < 0 || !numbers(&s, 1, &i->wide) || i->wide < 0 ||
	    !percent(&s, &i->ink) || *s == '\0')
		return false;
	i->text = s;
	return true;
}

static const struct {
	const char *word;
	enum paper_kind kind;
	bool (*read)(const char *s, struct paper_item *i);
} items[] = {
	{ "page", PAPER_PAGE, read_page },
	{ "line", PAPER_LINE, read_line },
	{ "box", PAPER_BOX, read_box },
	{ "oval", PAPER_OVAL, read_oval },
	{ "shape", PAPER_SHAPE, read_shape },
	{ "words", PAPER_WORDS, read_words },
};

enum list_line list_read(const char *line, struct paper_item *item)
{
	*item = (struct paper_item) { .text = "" };
	for (size_t i = 0; i < sizeof(items) / sizeof(items[0]); i++)
		if (begins(&line, items[i].word)) {
			item->kind = items[i].kind;
			return items[i].read(line, item) ? LIST_ITEM : LIST_BAD;
		}
	if (strcmp(line, "end") == 0)
		return LIST_END;
	item->text = line + strcspn(line, " ");
	item->text += *item->text == ' ';
	return begins(&line, "title") ? LIST_TITLE
	    : begins(&line, "author") ? LIST_AUTHOR
	    : begins(&line, "day")    ? LIST_DAY
				      : LIST_BAD;
}

bool list_step(const char **path, struct list_step *step)
{
	static const char kinds[] = "MLCZ";
	static const int points[] = { 1, 1, 3, 0 };
	const char *s = *path;
	const char *kind = *s ? strchr(kinds, *s) : NULL;
	double n[2];

	if (!kind || (s[1] != ' ' && s[1] != '\0'))
		return false;
	step->kind = *kind;
	s += 1 + (s[1] == ' ');
	for (int i = 0; i < points[kind - kinds]; i++) {
		if (!numbers(&s, 2, n))
			return false;
		step->x[i] = n[0];
		step->y[i] = n[1];
	}
	*path = s;
	return true;
}
