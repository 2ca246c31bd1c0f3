/*
 * terminal.c - a canvas on a full-screen terminal, by ncursesw
 *
 * The only file that knows curses.  It is used for what it does best: which
 * bytes move a terminal from one picture to the next.  Keys, signals and
 * sizes are ours (keys.c, terminal_mode.c), so curses never reads, never
 * waits and installs no handler: those places are taken when it starts.  What it
 * writes goes to the terminal as that takes it (terminal_out.h).
 *
 * A sign whose width the terminal's own library sees otherwise than the canvas
 * would push the rest of its row aside.  It is shown as a question mark, and
 * every cell is placed by itself.
 */
#include "evenhand/world/terminal.h"

#include <curses.h>
#include <langinfo.h>
#include <locale.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <term.h>
#include <unistd.h>
#include <wchar.h>

/* term.h takes plain words for its capabilities. */
#undef columns
#undef lines

#include "evenhand/base/text.h"
#include "evenhand/screen/colours.h"
#include "terminal_mode.h"
#include "terminal_out.h"

enum { SEQUENCE_BYTES = 256, STYLES = 256 };

struct terminal {
	SCREEN *screen;
	struct terminal_out out;
	bool utf8;
	bool whole; /* everything is to be written */
	enum palette palette;
	attr_t style[STYLES]; /* of curses, by the attributes of a cell */
	short pair[STYLES];
	struct canvas shown;
};

bool terminal_able(void)
{
	const char *name = getenv("TERM");

	return name && name[0] && strcmp(name, "dumb") != 0 &&
	    isatty(STDIN_FILENO) && isatty(STDOUT_FILENO);
}

/* --- taking and giving back --- */

/* tputs hands out one byte at a time and takes no other argument. */
static struct text sequence;

static int collect(int byte)
{
	char c = (char)byte;

	text_add_bytes(&sequence, &c, 1);
	return byte;
}

/* What a terminal wants to be sent for some of its capabilities. */
static void sequence_of(char *buffer, const char *const *names)
{
	sequence = text_in(buffer, SEQUENCE_BYTES);
	for (; *names; names++) {
		char *s = tigetstr(*names);

		if (s && s != (char *)-1)
			tputs(s, 1, collect);
	}
}

static void prepare_handlers(void)
{
	static const char *const in[] = { "smcup", "civis", NULL };
	static const char *const out[] = { "sgr0", "op", "rmcup", "cnorm",
		NULL };
	char enter[SEQUENCE_BYTES], leave[SEQUENCE_BYTES];

	sequence_of(enter, in);
	sequence_of(leave, out);
	terminal_screen(enter, leave);
}

static enum palette palette_of(enum terminal_colours wanted)
{
	const char *none = getenv("NO_COLOR");
	int has = has_colors() ? COLORS : 0;

	/* The convention: set to anything but the empty word. */
	if (wanted == TERMINAL_AUTO && none && none[0])
		return PALETTE_NONE;
	if (wanted == TERMINAL_COLOURLESS || has < 8)
		return PALETTE_NONE;
	return has >= 256 && wanted != TERMINAL_8 ? PALETTE_256 : PALETTE_8;
}

static attr_t attributes_of(const struct style *s)
{
	return (s->bold ? A_BOLD : A_NORMAL) |
	    (s->reverse ? A_REVERSE : A_NORMAL) |
	    (s->underline ? A_UNDERLINE : A_NORMAL);
}

/* Each pair of colours once; those of the terminal itself are pair 0. */
static void styles_prepare(struct terminal *t)
{
	struct style pairs[STYLES] = { { 0 } };
	short count = 1;

	for (int a = 0; a < STYLES; a++) {
		struct style s = style_of(t->palette, (unsigned)a);
		short p = 1;

		t->style[a] = attributes_of(&s);
		t->pair[a] = 0;
		if (t->palette == PALETTE_NONE ||
		    (s.foreground < 0 && s.background < 0))
			continue;
		while (p < count &&
		    (pairs[p].foreground != s.foreground ||
			pairs[p].background != s.background))
			p++;
		if (p == count && count < COLOR_PAIRS && count < STYLES) {
			pairs[count++] = s;
			init_pair(p, (short)s.foreground, (short)s.background);
		}
		if (p < count)
			t->pair[a] = p;
	}
}

/* Takes the screen; curses finds the terminal itself at the stream's end. */
static bool start(struct terminal *t)
{
	if (!out_open(&t->out))
		return false;
	t->screen = newterm(NULL, t->out.stream, stdin);
	if (!t->screen)
		out_close(&t->out);
	return t->screen != NULL;
}

struct terminal *terminal_open(enum terminal_colours colours)
{
	struct terminal *t = calloc(1, sizeof *t);

	if (!t)
		return NULL;
	/* Letters only: numbers keep their point. */
	setlocale(LC_CTYPE, "");
	t->utf8 = strcmp(nl_langinfo(CODESET), "UTF-8") == 0;
	if (!start(t)) {
		free(t);
		return NULL;
	}
	nonl();
	/* Keys that wait must not hold a page back; it goes out in one go. */
	typeahead(-1);
	curs_set(0);
	if (has_colors()) {
		start_color();
		use_default_colors();
	}
	t->palette = palette_of(colours);
	styles_prepare(t);
	prepare_handlers();
	out_aside(&t->out);
	terminal_forget(t);
	return t;
}

void terminal_close(struct terminal *t)
{
	if (!t)
		return;
	out_back(&t->out);
	endwin();
	terminal_screen(NULL, NULL);
	delscreen(t->screen);
	out_close(&t->out);
	free(t);
}

/* --- sizes --- */

bool terminal_signs(const struct terminal *t)
{
	return t->utf8;
}

bool terminal_size(struct terminal *t, int *columns, int *rows)
{
	struct winsize w = { 0 };

	if (terminal_disturbed())
		t->whole = true;
	if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &w) == 0 && w.ws_row > 0 &&
	    w.ws_col > 0 && (w.ws_row != LINES || w.ws_col != COLS)) {
		resize_term(w.ws_row, w.ws_col);
		t->whole = true;
	}
	*columns = COLS;
	*rows = LINES;
	return t->whole;
}

void terminal_forget(struct terminal *t)
{
	t->whole = true;
}

/* --- drawing --- */

/* The letter of a cell as the terminal's library can place it. */
static void letter_of(
    const struct terminal *t, const struct cell *c, int wide, wchar_t *out)
{
	size_t count = 0;
	int columns;

	if (t->utf8)
		count = mbstowcs(out, c->text, CCHARW_MAX);
	else if ((unsigned char)c->text[0] < 0x80 && c->text[1] == '\0')
		count = mbstowcs(out, c->text, 1);
	if (count >= CCHARW_MAX)
		count = 0;
	out[count] = L'\0';
	columns = count > 0 ? wcswidth(out, count) : -1;
	if (columns != wide)
		wmemcpy(out, wide == 2 ? L"??" : L"?", (size_t)wide + 1);
}

static void put_cell(
    const struct terminal *t, int y, int x, const struct cell *c, int wide)
{
	wchar_t letter[CCHARW_MAX + 1];

	letter_of(t, c, wide, letter);
	attr_set(t->style[c->attributes], t->pair[c->attributes], NULL);
	/* The last cell of all cannot move the cursor on; it is written. */
	mvaddwstr(y, x, letter);
}

static bool same(const struct cell *a, const struct cell *b)
{
	return a->attributes == b->attributes && strcmp(a->text, b->text) == 0;
}

static void put_row(struct terminal *t, const struct canvas *c, int y)
{
	for (int x = 0; x < c->columns; x++) {
		const struct cell *new = &c->cell[y][x];
		bool tail = x + 1 < c->columns && new[1].text[0] == '\0';

		if (new->text[0] != '\0' &&
		    (t->whole || !same(new, &t->shown.cell[y][x]) ||
			(tail && t->shown.cell[y][x + 1].text[0] != '\0')))
			put_cell(t, y, x, new, tail ? 2 : 1);
	}
}

void terminal_show(struct terminal *t, const struct canvas *c)
{
	if (c->columns != t->shown.columns || c->rows != t->shown.rows)
		t->whole = true;
	if (t->whole) {
		attr_set(A_NORMAL, 0, NULL);
		erase();
		clearok(curscr, TRUE);
	}
	for (int y = 0; y < c->rows; y++)
		put_row(t, c, y);
	for (int y = 0; y < c->rows; y++)
		memcpy(t->shown.cell[y], c->cell[y],
		    (size_t)c->columns * sizeof c->cell[y][0]);
	t->shown.columns = c->columns;
	t->shown.rows = c->rows;
	t->whole = false;
	refresh();
	out_send(&t->out);
}

bool terminal_ready(struct terminal *t)
{
	return out_send(&t->out);
}
