/*
 * pages.c - pages on a full screen that stand still until a key comes
 */
#include "pages.h"

#include <signal.h>
#include <unistd.h>

#include "evenhand/command/command.h"

bool pages_open(struct pages *p, enum terminal_colours colours)
{
	p->keys = keys_open(STDIN_FILENO);
	if (p->keys)
		p->terminal = terminal_open(colours);
	p->stale = true;
	return p->terminal != NULL;
}

bool pages_due(struct pages *p)
{
	int columns, rows;

	/* A picture that is still on its way comes first. */
	if (!terminal_ready(p->terminal))
		return false;
	if (!terminal_size(p->terminal, &columns, &rows) && !p->stale)
		return false;
	canvas_init(&p->canvas, columns, rows);
	return true;
}

void pages_show(struct pages *p)
{
	terminal_show(p->terminal, &p->canvas);
	p->stale = false;
}

int pages_ended(void)
{
	int number = keys_signal();

	return number == 0 || number == SIGINT ? EXIT_GOOD : 128 + number;
}

void pages_close(struct pages *p)
{
	terminal_close(p->terminal);
	keys_close(p->keys);
}
