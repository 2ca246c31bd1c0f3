/*
 * entry.c - a name and its items, in lines
 */
#include "entry.h"

#include "evenhand/screen/lines.h"

enum { INDENT = 2, GAP = 2, ITEM_BYTES = 400 };

static void spaces(struct text *out, int count)
{
	for (int i = 0; i < count; i++)
		text_add(out, " ");
}

void entry_begin(struct entry *e, const char *name)
{
	spaces(e->out, INDENT);
	text_add(e->out, name);
	spaces(e->out, e->label - text_columns(name) + GAP);
	e->column = INDENT + e->label + GAP;
	e->first = true;
}

/* A comma, then a space or a new line. */
static void part(struct entry *e, int columns)
{
	text_add(e->out, ",");
	e->column++;
	/* The comma that may follow the item needs a column too. */
	if (e->column + 1 + columns + 1 > LINE_COLUMNS) {
		text_add(e->out, "\n");
		e->column = INDENT + e->label + GAP;
		spaces(e->out, e->column);
	} else {
		text_add(e->out, " ");
		e->column++;
	}
}

void entry_item(struct entry *e, const struct message *m)
{
	char item[ITEM_BYTES];

	message_text(m, item, sizeof(item));
	int columns = text_columns(item);

	if (!e->first)
		part(e, columns);
	text_add(e->out, item);
	e->column += columns;
	e->first = false;
}

void entry_end(struct entry *e)
{
	text_add(e->out, "\n");
}
