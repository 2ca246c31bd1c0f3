/*
 * main_paper.c - evenhand-paper, which evenhand starts to put sheets on paper
 *
 *	list ── standard input ──▶ evenhand-paper pdf ── standard output ──▶ PDF
 *
 * A program of its own, so that evenhand need not load what draws letters.  It
 * opens no file: evenhand puts the document in its place, whole or not at all.
 * Everything is read before anything is written.
 */
#include <errno.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "evenhand/base/message.h"
#include "evenhand/world/paper_draw.h"
#include "evenhand/world/program.h"

enum {
	READ_BYTES = 65536,
	LIST_MOST = 256 * 1024 * 1024 /* sheets of a large school */
};

/* Standard input to its end. */
static enum paper_drawn read_list(struct paper_bytes *list)
{
	for (;;) {
		ssize_t got;

		if (list->size - list->length < READ_BYTES) {
			size_t size = 2 * list->size + READ_BYTES;
			unsigned char *more = size <= LIST_MOST
			    ? realloc(list->bytes, size)
			    : NULL;

			if (!more)
				return DRAWN_NO_ROOM;
			list->bytes = more;
			list->size = size;
		}
		got = read(STDIN_FILENO, list->bytes + list->length,
		    list->size - list->length);
		if (got == 0)
			return DRAWN_GOOD;
		if (got < 0 && errno != EINTR)
			return DRAWN_BAD;
		list->length += got > 0 ? (size_t)got : 0;
	}
}

static enum paper_drawn draw(enum paper_format format)
{
	struct paper_bytes list = { 0 }, out = { 0 };
	enum paper_drawn how = read_list(&list);

	if (how == DRAWN_GOOD)
		how = paper_draw((char *)list.bytes, list.length, format, &out);
	if (how == DRAWN_GOOD &&
	    !program_write(STDOUT_FILENO, out.bytes, out.length))
		how = DRAWN_LOST;
	free(list.bytes);
	free(out.bytes);
	return how;
}

int main(int argc, char **argv)
{
	static const char *const formats[PAPER_FORMATS] = { "pdf", "svg",
		"png" };
	const char *about = message_sentence(M_PAPER_PROGRAM);

	for (int i = 0; argc == 2 && i < PAPER_FORMATS; i++)
		if (strcmp(argv[1], formats[i]) == 0)
			return (int)draw((enum paper_format)i);
	if (argc == 2 && strcmp(argv[1], "--version") == 0)
		return program_say(STDOUT_FILENO, "evenhand-paper ",
		    EVENHAND_VERSION, DRAWN_GOOD, DRAWN_LOST);
	if (argc == 2 && strcmp(argv[1], "--help") == 0)
		return program_say(
		    STDOUT_FILENO, "", about, DRAWN_GOOD, DRAWN_LOST);
	return program_say(STDERR_FILENO, "", about, DRAWN_USAGE, DRAWN_LOST);
}
