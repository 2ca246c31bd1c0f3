/*
 * settings_edit.c - one value of a file changed, and not a letter more
 *
 *	marking: round   # since the new pedals
 *	         ─────
 *	         turn
 *
 * The nodes know where a value begins; where it ends is looked up here.  What
 * goes over several lines is left alone.
 */
#include <string.h>

#include "evenhand/routine/settings.h"

#define BOM "\xef\xbb\xbf"

enum { INDENT_MAX = 40 };

/* Bytes from..to of the file. */
struct part {
	size_t from, to;
};

static const char *line_end(const struct source *f, const char *at)
{
	const char *end = f->bytes + f->length;

	while (at < end && *at != '\n' && *at != '\r')
		at++;
	return at;
}

/* The byte at a line and column, from 1; columns are letters. */
static size_t byte_at(const struct source *f, int line, int column)
{
	const char *at = f->bytes, *end = f->bytes + f->length;

	if (f->length >= strlen(BOM) && memcmp(at, BOM, strlen(BOM)) == 0)
		at += strlen(BOM);
	for (; line > 1 && at < end; line--) {
		at = line_end(f, at);
		if (end - at > 1 && memcmp(at, "\r\n", 2) == 0)
			at++;
		at += at < end;
	}
	for (; column > 1 && at < end; column--)
		do
			at++;
		while (at < end && ((unsigned char)*at & 0xc0) == 0x80);
	return (size_t)(at - f->bytes);
}

/* Behind the mark that closes the one at from, on its line; 0 for none. */
static size_t behind_quote(const struct source *f, size_t from)
{
	const char *end = line_end(f, f->bytes + from);
	char mark = f->bytes[from];

	for (const char *s = f->bytes + from + 1; s < end; s++) {
		if (mark == '"' && *s == '\\')
			s++;
		else if (*s == mark && mark == '\'' && s + 1 < end &&
		    s[1] == mark)
			s++;
		else if (*s == mark)
			return (size_t)(s + 1 - f->bytes);
	}
	return 0;
}

/* Where a value stands; false when that is better left alone. */
static bool value_part(
    const struct source *f, const struct node *n, struct part *p)
{
	size_t length = strlen(n->word);

	p->from = byte_at(f, n->line, n->column);
	if (n->quoted && p->from < f->length &&
	    (f->bytes[p->from] == '"' || f->bytes[p->from] == '\'')) {
		p->to = behind_quote(f, p->from);
		return p->to > 0;
	}
	p->to = p->from + length;
	return !n->quoted && length > 0 && p->to <= f->length &&
	    memcmp(f->bytes + p->from, n->word, length) == 0;
}

/* Behind the colon of a key that has no value. */
static bool colon_part(
    const struct source *f, const struct node *n, struct part *p)
{
	const char *key = f->bytes + byte_at(f, n->key_line, n->key_column);
	const char *colon = memchr(key, ':', (size_t)(line_end(f, key) - key));

	if (colon == NULL)
		return false;
	p->from = p->to = (size_t)(colon + 1 - f->bytes);
	return true;
}

static void add_pair(
    struct text *out, const struct settings *s, enum setting what)
{
	text_format(out, "%s: ", settings_key(what));
	settings_value(out, s, what);
}

/* The line end that the file uses. */
static const char *line_break(const struct source *f)
{
	const char *end = line_end(f, f->bytes);

	return f->bytes + f->length - end > 1 && memcmp(end, "\r\n", 2) == 0
	    ? "\r\n"
	    : "\n";
}

static void add_indent(struct text *out, const struct node *root)
{
	for (int i = 1; root->first && i < root->column && i < INDENT_MAX; i++)
		text_add(out, " ");
}

/* A line behind the last one, as far in as the others. */
static void append(struct text *out, const struct source *f,
    const struct settings *s, enum setting what)
{
	const char *newline = line_break(f);

	text_add_bytes(out, f->bytes, f->length);
	if (f->length > 0 && f->bytes[f->length - 1] != '\n' &&
	    f->bytes[f->length - 1] != '\r')
		text_add(out, newline);
	add_indent(out, f->root);
	add_pair(out, s, what);
	text_add(out, newline);
}

/* {lines: yes} gets a new first pair. */
static void insert(struct text *out, const struct source *f, size_t brace,
    const struct settings *s, enum setting what)
{
	text_add_bytes(out, f->bytes, brace + 1);
	add_pair(out, s, what);
	if (f->root->first != NULL)
		text_add(out, ", ");
	text_add_bytes(out, f->bytes + brace + 1, f->length - brace - 1);
}

static void replace(struct text *out, const struct source *f, struct part p,
    const struct settings *s, enum setting what)
{
	text_add_bytes(out, f->bytes, p.from);
	if (p.from == p.to)
		text_add(out, " ");
	settings_value(out, s, what);
	text_add_bytes(out, f->bytes + p.to, f->length - p.to);
}

static void add(struct text *out, const struct source *f,
    const struct settings *s, enum setting what)
{
	size_t root = byte_at(f, f->root->line, f->root->column);

	if (root < f->length && f->bytes[root] == '{')
		insert(out, f, root, s, what);
	else
		append(out, f, s, what);
}

bool settings_edit(struct text *out, const struct source *f,
    const struct settings *s, enum setting what)
{
	const struct node *n = node_get(f->root, settings_key(what));
	struct part p;

	if (f->root->kind != NODE_MAP)
		return false;
	if (n == NULL) {
		add(out, f, s, what);
		return !out->cut;
	}
	if (n->kind != NODE_WORD ||
	    !(*n->word == '\0' && !n->quoted ? colon_part(f, n, &p)
					     : value_part(f, n, &p)))
		return false;
	replace(out, f, p, s, what);
	return !out->cut;
}

void settings_head(struct text *out)
{
	text_format(out, "# %s\n", message_english(M_SETTINGS_HEAD));
}
