/*
 * paper_draw.h - a list of strokes and words, drawn by cairo and pango
 *
 * Only for evenhand-paper: evenhand itself loads neither.
 *
 *	PDF   a page of its own for each page; words can be searched and copied
 *	SVG   pages one below the other
 *	PNG   the same, 8 dots to the millimetre
 *
 * The letters are those that fontconfig gives for "sans-serif"; words that would
 * be wider than the list allows are made narrower.
 *
 * One thread.
 */
#ifndef EVENHAND_WORLD_PAPER_DRAW_H
#define EVENHAND_WORLD_PAPER_DRAW_H

enum paper_format { PAPER_PDF, PAPER_SVG, PAPER_PNG, PAPER_FORMATS };

/* How it went: exit statuses of evenhand-paper. */
enum paper_drawn {
	DRAWN_GOOD = 0,
	DRAWN_USAGE = 64,      /* not called as it is by evenhand */
	DRAWN_BAD = 65,	       /* not a whole list of this version */
	DRAWN_NO_LETTERS = 69, /* no font on this computer */
	DRAWN_NO_ROOM = 71,    /* no memory left */
	DRAWN_LARGE = 73,      /* too many pages for one picture */
	DRAWN_LOST = 74,       /* nobody takes what was drawn */
	DRAWN_FULL = 75,       /* no room on the disk */
};

/*
 * Reads a list from one descriptor and draws it to another.  A PDF is drawn
 * page by page while the list comes, in memory that does not grow with it.
 * Unless DRAWN_GOOD is returned, what was written is no document: it has no
 * end.
 */
enum paper_drawn paper_draw(int list, int out, enum paper_format format);

#endif
