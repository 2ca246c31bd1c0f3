/*
 * main_paper.c - evenhand-paper, which evenhand starts to put sheets on paper
 *
 *	list ── standard input ──▶ evenhand-paper pdf ── standard output ──▶ PDF
 *
 * A program of its own, so that evenhand need not load what draws letters.  It
 * opens no file: evenhand puts the document in its place, whole or not at all.
 * It is started before there is a list, and looks for letters meanwhile.
 */
#include <string.h>
#include <unistd.h>

#include "evenhand/base/message.h"
#include "evenhand/world/paper_draw.h"
#include "evenhand/world/program.h"

int main(int argc, char **argv)
{
	static const char *const formats[PAPER_FORMATS] = { "pdf", "svg",
		"png" };
	const char *about = message_sentence(M_PAPER_PROGRAM);

	for (int i = 0; argc == 2 && i < PAPER_FORMATS; i++)
		if (strcmp(argv[1], formats[i]) == 0)
			return (int)paper_draw(
			    STDIN_FILENO, STDOUT_FILENO, (enum paper_format)i);
	if (argc == 2 && strcmp(argv[1], "--version") == 0)
		return program_say(STDOUT_FILENO, "evenhand-paper ",
		    EVENHAND_VERSION, DRAWN_GOOD, DRAWN_LOST);
	if (argc == 2 && strcmp(argv[1], "--help") == 0)
		return program_say(
		    STDOUT_FILENO, "", about, DRAWN_GOOD, DRAWN_LOST);
	return program_say(STDERR_FILENO, "", about, DRAWN_USAGE, DRAWN_LOST);
}
