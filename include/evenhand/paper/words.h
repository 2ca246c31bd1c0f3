/*
 * words.h - how much room words take on paper, whatever letters there will be
 *
 * Which letters a computer has is not known when a page is laid out, and the
 * same page must come out everywhere.  So widths come from a table of a wide
 * sans serif (that of DejaVu Sans), and what is drawn in other letters is made
 * narrower where it would take more: the layout always holds.
 *
 * Pure; any thread.
 */
#ifndef EVENHAND_PAPER_WORDS_H
#define EVENHAND_PAPER_WORDS_H

#include <stdbool.h>
#include <stddef.h>

/* mm that one line of words takes at most; size is the em in mm. */
double words_mm(const char *words, double size, bool bold);

/* The size in which they take at most so many mm: this one, or a smaller. */
double words_fit(const char *words, double size, bool bold, double mm);

/*
 * Bytes of the first line when words are wrapped to so many mm, at spaces and
 * hyphens;
 * *next is where the following line begins.  A word longer than a line is
 * cut.  *next is never 0 unless words is empty.
 */
size_t words_wrap(
    const char *words, double size, bool bold, double mm, size_t *next);

/* The longest start of the words that takes at most so many mm, in bytes. */
size_t words_clip(const char *words, double size, bool bold, double mm);

#endif
