/*
 * signs.c - the table of signs
 *
 * All but the check mark and the round place are also in the fonts of text
 * consoles.  Nothing here may be shown as a picture by a terminal, so there
 * are no triangles or other signs that have a coloured form.
 */
#include "signs.h"

static const struct {
	const char *sign, *twin;
} table[SIGN_COUNT] = {
	[SIGN_FULL] = { "█", "#" },
	[SIGN_UPPER] = { "▀", "\"" },
	[SIGN_LOWER] = { "▄", "_" },
	[SIGN_LEFT] = { "▌", "#" },
	[SIGN_RIGHT] = { "▐", "#" },
	[SIGN_SHADE] = { "░", "." },
	[SIGN_THICK] = { "━", "=" },
	[SIGN_ACROSS] = { "─", "-" },
	[SIGN_DOWN] = { "│", "|" },
	[SIGN_TOP_LEFT] = { "┌", "+" },
	[SIGN_TOP_RIGHT] = { "┐", "+" },
	[SIGN_BOTTOM_LEFT] = { "└", "+" },
	[SIGN_BOTTOM_RIGHT] = { "┘", "+" },
	[SIGN_NOTCH] = { "╋", "+" },
	[SIGN_NUT] = { "║", "|" },
	[SIGN_PLACE] = { "●", "o" },
	[SIGN_CLEAN] = { "✓", "+" },
	[SIGN_SHAKY] = { "~", "~" },
	[SIGN_BACK] = { "←", "<" },
	[SIGN_FORWARD] = { "→", ">" },
	[SIGN_CHOSEN] = { "►", ">" },
	[SIGN_ITEM] = { "•", "*" },
	[SIGN_BETWEEN] = { "·", "-" },
};

const char *sign_of(enum sign s, bool ascii)
{
	return ascii ? table[s].twin : table[s].sign;
}
