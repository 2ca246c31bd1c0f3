/*
 * cairo.c - a list of strokes and words, drawn by cairo
 *
 * A PDF is drawn line by line as the list comes.  A picture must know first how
 * high all its pages are, so its list is kept and read once more.
 */
#include <errno.h>
#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include <cairo-pdf.h>
#include <cairo-svg.h>

#include "cairo_letters.h"
#include "evenhand/paper/list.h"
#include "evenhand/world/paper_draw.h"
#include "evenhand/world/program.h"
#include "list_in.h"

#define POINTS (72 / 25.4) /* to the millimetre */
#define DOTS 8.0
#define HALF_TURN 180.0

enum { PICTURE_DOTS_MAX = 32000, OUT_BYTES = 65536 };

struct drawing {
	enum paper_format format;
	struct list_in in;
	struct list_look look;
	struct letters letters;
	cairo_surface_t *surface;
	cairo_t *cairo;
	double page_high; /* mm, of the page begun last; 0: none was */
	int out;	  /* -1: what comes now is no document */
	int error;	  /* why it could not be written */
	size_t filled;
	unsigned char bytes[OUT_BYTES]; /* on their way out */
};

/* --- what is drawn goes out ------------------------------------------------ */

static bool send_out(struct drawing *d)
{
	if (d->out >= 0 && program_write(d->out, d->bytes, d->filled)) {
		d->filled = 0;
		return true;
	}
	if (d->out >= 0)
		d->error = errno;
	d->out = -1;
	return false;
}

static cairo_status_t take(
    void *closure, const unsigned char *bytes, unsigned length)
{
	struct drawing *d = closure;

	while (length > 0) {
		size_t room = OUT_BYTES - d->filled;
		size_t part = length < room ? length : room;

		memcpy(d->bytes + d->filled, bytes, part);
		d->filled += part;
		bytes += part;
		length -= (unsigned)part;
		if (d->filled == OUT_BYTES && !send_out(d))
			return CAIRO_STATUS_WRITE_ERROR;
	}
	return d->out < 0 ? CAIRO_STATUS_WRITE_ERROR : CAIRO_STATUS_SUCCESS;
}

static double unit(const struct drawing *d)
{
	return d->format == PAPER_PNG ? DOTS : POINTS;
}

static bool open_surface(struct drawing *d)
{
	/* A PDF takes the size of each page when it begins. */
	double wide = fmax(d->look.wide, 1) * unit(d);
	double high = fmax(d->look.high, 1) * unit(d);

	switch (d->format) {
	case PAPER_PDF:
		d->surface = cairo_pdf_surface_create_for_stream(
		    take, d, wide, high);
		break;
	case PAPER_SVG:
		d->surface = cairo_svg_surface_create_for_stream(
		    take, d, wide, high);
		break;
	default:
		d->surface = cairo_image_surface_create(
		    CAIRO_FORMAT_RGB24, (int)ceil(wide), (int)ceil(high));
		break;
	}
	d->cairo = cairo_create(d->surface);
	cairo_scale(d->cairo, unit(d), unit(d));
	if (d->format != PAPER_PDF) {
		cairo_set_source_rgb(d->cairo, 1, 1, 1);
		cairo_paint(d->cairo);
	}
	return cairo_status(d->cairo) == CAIRO_STATUS_SUCCESS;
}

static void ink(struct drawing *d, const struct paper_item *i)
{
	double light = 1 - (double)i->ink / INK_FULL;

	cairo_set_source_rgb(d->cairo, light, light, light);
}

/* Draws the path that was made, with the pen or filled. */
static void put(struct drawing *d, const struct paper_item *i, double pen)
{
	ink(d, i);
	if (i->pen > 0) {
		cairo_set_line_width(d->cairo, pen);
		cairo_stroke(d->cairo);
	} else {
		cairo_fill(d->cairo);
	}
}

static void draw_oval(struct drawing *d, const struct paper_item *i)
{
	cairo_save(d->cairo);
	cairo_translate(d->cairo, i->x, i->y);
	cairo_rotate(d->cairo, i->turned * M_PI / HALF_TURN);
	cairo_scale(d->cairo, i->wide / 2, i->high / 2);
	cairo_new_sub_path(d->cairo);
	cairo_arc(d->cairo, 0, 0, 1, 0, 2 * M_PI);
	cairo_restore(d->cairo);
	put(d, i, i->pen);
}

static void draw_shape(struct drawing *d, const struct paper_item *i)
{
	const char *path = i->text;
	struct list_step s;

	cairo_save(d->cairo);
	cairo_translate(d->cairo, i->x, i->y);
	cairo_scale(d->cairo, i->size, i->size);
	while (list_step(&path, &s)) {
		if (s.kind == 'M')
			cairo_move_to(d->cairo, s.x[0], s.y[0]);
		else if (s.kind == 'L')
			cairo_line_to(d->cairo, s.x[0], s.y[0]);
		else if (s.kind == 'C')
			cairo_curve_to(d->cairo, s.x[0], s.y[0], s.x[1], s.y[1],
			    s.x[2], s.y[2]);
		else
			cairo_close_path(d->cairo);
	}
	cairo_restore(d->cairo);
	put(d, i, i->pen);
}

/* A page of its own in a PDF, a place below the last in a picture. */
static void begin_page(struct drawing *d, const struct paper_item *i)
{
	if (d->format == PAPER_PDF) {
		if (d->page_high > 0)
			cairo_show_page(d->cairo);
		cairo_pdf_surface_set_size(
		    d->surface, i->wide * POINTS, i->high * POINTS);
	} else if (d->page_high > 0) {
		cairo_translate(d->cairo, 0, d->page_high);
	}
	d->page_high = i->high;
}

static void draw_item(struct drawing *d, const struct paper_item *i)
{
	switch (i->kind) {
	case PAPER_PAGE:
		begin_page(d, i);
		break;
	case PAPER_LINE:
		cairo_move_to(d->cairo, i->x, i->y);
		cairo_line_to(d->cairo, i->to_x, i->to_y);
		put(d, i, i->pen);
		break;
	case PAPER_BOX:
		cairo_rectangle(d->cairo, i->x, i->y, i->wide, i->high);
		put(d, i, i->pen);
		break;
	case PAPER_OVAL:
		draw_oval(d, i);
		break;
	case PAPER_SHAPE:
		draw_shape(d, i);
		break;
	case PAPER_WORDS:
		ink(d, i);
		letters_put(&d->letters, d->cairo, i);
		break;
	case PAPER_KINDS:
		break;
	}
}

/* What a PDF tells of itself. */
static void tell(struct drawing *d, enum list_line what, const char *words)
{
	static const cairo_pdf_metadata_t fields[] = {
		[LIST_TITLE] = CAIRO_PDF_METADATA_TITLE,
		[LIST_AUTHOR] = CAIRO_PDF_METADATA_AUTHOR,
		[LIST_DAY] = CAIRO_PDF_METADATA_CREATE_DATE,
	};

	if (d->format == PAPER_PDF && *words)
		cairo_pdf_surface_set_metadata(d->surface, fields[what], words);
}

/* --- the list --------------------------------------------------------------- */

static void draw_line(
    struct drawing *d, enum list_line what, const struct paper_item *item)
{
	if (what == LIST_ITEM)
		draw_item(d, item);
	else if (what != LIST_HEAD && what != LIST_END)
		tell(d, what, item->text);
}

static enum paper_drawn lost(const struct drawing *d)
{
	return d->error == ENOSPC || d->error == EDQUOT ? DRAWN_FULL
							: DRAWN_LOST;
}

/* All lines of a list, drawn or only looked at. */
static enum paper_drawn go_through(struct drawing *d, bool drawn)
{
	struct paper_item item;
	const char *line;
	size_t length;
	enum list_came came;

	d->look = (struct list_look) { 0 };
	while ((came = list_in_next(&d->in, &line, &length)) == CAME_LINE) {
		enum list_line what = list_next(&d->look, line, length, &item);

		if (what == LIST_BAD)
			return DRAWN_BAD;
		if (drawn)
			draw_line(d, what, &item);
		if (d->error)
			return lost(d);
	}
	if (came == CAME_NO_ROOM)
		return DRAWN_NO_ROOM;
	return came == CAME_END && d->look.ended ? DRAWN_GOOD : DRAWN_BAD;
}

/* A picture's list, looked through. */
static enum paper_drawn look_through(struct drawing *d)
{
	enum paper_drawn how = go_through(d, false);

	list_in_again(&d->in);
	if (how == DRAWN_GOOD && d->format == PAPER_PNG &&
	    fmax(d->look.high, d->look.wide) * DOTS > PICTURE_DOTS_MAX)
		return DRAWN_LARGE;
	return how;
}

/* Ends the document; from here on nothing is drawn. */
static enum paper_drawn finish(struct drawing *d)
{
	cairo_status_t status;

	if (d->format != PAPER_PNG)
		cairo_show_page(d->cairo);
	status = cairo_status(d->cairo);
	if (d->format == PAPER_PNG && status == CAIRO_STATUS_SUCCESS)
		status = cairo_surface_write_to_png_stream(d->surface, take, d);
	cairo_surface_finish(d->surface);
	if (status == CAIRO_STATUS_SUCCESS)
		status = cairo_surface_status(d->surface);
	if (d->error)
		return lost(d);
	if (status != CAIRO_STATUS_SUCCESS)
		return DRAWN_NO_ROOM;
	return send_out(d) ? DRAWN_GOOD : lost(d);
}

static enum paper_drawn draw(struct drawing *d)
{
	enum paper_drawn how = DRAWN_GOOD;

	/* Looking for letters takes longest; the list is on its way then. */
	if (!letters_open(&d->letters))
		return DRAWN_NO_LETTERS;
	if (d->in.keep)
		how = look_through(d);
	if (how != DRAWN_GOOD)
		return how;
	if (!open_surface(d))
		return DRAWN_NO_ROOM;
	how = go_through(d, true);
	return how == DRAWN_GOOD ? finish(d) : how;
}

enum paper_drawn paper_draw(int list, int out, enum paper_format format)
{
	struct drawing *d = calloc(1, sizeof(*d));
	enum paper_drawn how;

	if (!d)
		return DRAWN_NO_ROOM;
	d->format = format;
	d->in = (struct list_in) { .fd = list, .keep = format != PAPER_PDF };
	d->out = out;
	how = draw(d);
	/* What cairo writes when it closes goes nowhere. */
	d->out = -1;
	cairo_destroy(d->cairo);
	cairo_surface_destroy(d->surface);
	letters_done(&d->letters);
	list_in_done(&d->in);
	free(d);
	return how;
}
