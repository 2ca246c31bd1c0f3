/*
 * sound_line.h - what time a card's samples belong to
 *
 *	time      ╱ samples of a card, each block with a stamp that is
 *	  ·     ╱·     off by some ms: the line through them is not
 *	   ╲  ╱·
 *	    ╱·
 *
 * No card runs at exactly its rate, and no two alike.  Stamps of blocks tell how
 * fast it truly runs: the line is fitted to them by least squares in which the
 * last LINE_SPAN_S count most, with the nominal rate as what is believed before
 * there is evidence, and far stamps weighed less (Huber, 1964).  The last few
 * stamps wait before they count: when all of them lie beside the line by the
 * same, the line is moved there, since samples were lost, or the card's own
 * buffers changed.
 *
 * Plain values, no process: it is told what time it is.
 */
#ifndef EVENHAND_WORLD_SOUND_LINE_H
#define EVENHAND_WORLD_SOUND_LINE_H

#include <stdint.h>

enum {
	LINE_SPAN_S = 30,    /* how far back stamps count */
	LINE_PPM_MAX = 500,  /* a card runs no further from its rate */
	LINE_JUMP_US = 1500, /* a jump that is seen, ... */
	LINE_LAST = 9,	     /* ... when as many stamps say so */
};

struct line {
	int rate;
	int64_t number, time_ns; /* of the first stamp */
	int64_t stamps;		 /* 0: nothing is known */
	int64_t newest;		 /* the number of the last one */
	/* Those that wait: seconds by the samples, and what time is off them. */
	double x[LINE_LAST], y[LINE_LAST];
	int waiting;
	/* Sums over the others, seen from the last of these. */
	double last, s, sx, sy, sxx, sxy;
	double level, slope; /* the line: y at `last`, its slope */
	double spread;	     /* how far stamps are off it, s */
};

/* Nothing is known yet. */
void line_begin(struct line *l, int rate);

/*
 * A stamp: sample `number` at a time.  Numbers grow.  What it jumped by, in s,
 * later positive; 0: it did not.
 */
double line_add(struct line *l, int64_t number, int64_t time_ns);

/* Only with a stamp or more: when a sample is, in ns; which one is at a time. */
int64_t line_time(const struct line *l, double number);
double line_number(const struct line *l, int64_t time_ns);

/* Samples in a second of the steady clock. */
double line_rate(const struct line *l);

#endif
