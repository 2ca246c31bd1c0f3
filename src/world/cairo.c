/*
 * cairo.c - a list of strokes and words, drawn by cairo and pango
 *
 * The list is looked through once, because a picture must know how high all its
 * pages are, and then drawn line by line.
 */
#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <pango/pangocairo.h>

#include "evenhand/paper/list.h"
#include "evenhand/world/paper_draw.h"

#define POINTS (72 / 25.4) /* to the millimetre */
#define DOTS 8.0
#define HALF_TURN 180.0

enum { PICTURE_DOTS_MAX = 32000, GROW = 65536 };

struct drawing {
	enum paper_format format;
	struct paper_bytes *out;
	cairo_surface_t *surface;
	cairo_t *cairo;
	PangoLayout *layout;
	struct list_pages pages;
	double page_high; /* mm, of the page begun last; 0: none was */
};

static cairo_status_t take(
    void *closure, const unsigned char *bytes, unsigned length)
{
	struct paper_bytes *out = closure;

	if (out->length + length > out->size) {
		size_t size = out->length + length + GROW + out->size / 2;
		unsigned char *more = realloc(out->bytes, size);

		if (!more)
			return CAIRO_STATUS_NO_MEMORY;
		out->bytes = more;
		out->size = size;
	}
	memcpy(out->bytes + out->length, bytes, length);
	out->length += length;
	return CAIRO_STATUS_SUCCESS;
}

static double unit(const struct drawing *d)
{
	return d->format == PAPER_PNG ? DOTS : POINTS;
}

static bool open_surface(struct drawing *d)
{
	double wide = d->pages.wide * unit(d);
	double high = d->pages.high * unit(d);

	switch (d->format) {
	case PAPER_PDF:
		d->surface = cairo_pdf_surface_create_for_stream(
		    take, d->out, wide, high);
		break;
	case PAPER_SVG:
		d->surface = cairo_svg_surface_create_for_stream(
		    take, d->out, wide, high);
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

/* The same letters in every size, whatever a screen would make of them. */
static bool open_letters(struct drawing *d)
{
	cairo_font_options_t *options = cairo_font_options_create();
	PangoContext *context;

	d->layout = pango_cairo_create_layout(d->cairo);
	context = pango_layout_get_context(d->layout);
	cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
	cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
	cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
	pango_cairo_context_set_font_options(context, options);
	cairo_font_options_destroy(options);
	pango_context_set_round_glyph_positions(context, FALSE);
	pango_layout_set_single_paragraph_mode(d->layout, TRUE);
	/* Without a font there is no letter, not even this one. */
	pango_layout_set_text(d->layout, "a", -1);
	return pango_layout_get_unknown_glyphs_count(d->layout) == 0;
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

static void draw_words(struct drawing *d, const struct paper_item *i)
{
	PangoFontDescription *font = pango_font_description_new();
	int wide, high;
	double own, narrow, shift;

	pango_font_description_set_family_static(font, "sans-serif");
	pango_font_description_set_weight(
	    font, i->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
	pango_font_description_set_absolute_size(font, i->size * PANGO_SCALE);
	pango_layout_set_font_description(d->layout, font);
	pango_font_description_free(font);
	pango_layout_set_text(d->layout, i->text, -1);
	pango_layout_get_size(d->layout, &wide, &high);
	own = (double)wide / PANGO_SCALE;
	narrow = own > i->wide && own > 0 ? i->wide / own : 1;
	shift = i->side == SIDE_LEFT ? 0 : -own * narrow;
	if (i->side == SIDE_MIDDLE)
		shift /= 2;
	cairo_save(d->cairo);
	cairo_translate(d->cairo, i->x + shift, i->y);
	cairo_scale(d->cairo, narrow, 1);
	cairo_move_to(d->cairo, 0,
	    -(double)pango_layout_get_baseline(d->layout) / PANGO_SCALE);
	ink(d, i);
	pango_cairo_show_layout(d->cairo, d->layout);
	cairo_restore(d->cairo);
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
		draw_words(d, i);
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

/* Every line is a string by now. */
static void draw_all(struct drawing *d, const char *list, const char *end)
{
	struct paper_item item;

	for (const char *s = list + strlen(list) + 1; s < end;
	     s += strlen(s) + 1) {
		enum list_line what = list_read(s, &item);

		if (what == LIST_ITEM)
			draw_item(d, &item);
		else if (what != LIST_END)
			tell(d, what, item.text);
	}
	if (d->format != PAPER_PNG)
		cairo_show_page(d->cairo);
}

static enum paper_drawn draw(
    struct drawing *d, const char *list, const char *end)
{
	cairo_status_t status;

	if (d->format == PAPER_PNG &&
	    fmax(d->pages.high, d->pages.wide) * DOTS > PICTURE_DOTS_MAX)
		return DRAWN_LARGE;
	if (!open_surface(d))
		return DRAWN_NO_ROOM;
	if (!open_letters(d))
		return DRAWN_NO_LETTERS;
	draw_all(d, list, end);
	if (d->format == PAPER_PNG)
		cairo_surface_write_to_png_stream(d->surface, take, d->out);
	status = cairo_status(d->cairo);
	cairo_surface_finish(d->surface);
	if (status == CAIRO_STATUS_SUCCESS)
		status = cairo_surface_status(d->surface);
	return status == CAIRO_STATUS_SUCCESS ? DRAWN_GOOD : DRAWN_NO_ROOM;
}

enum paper_drawn paper_draw(char *list, size_t length, enum paper_format format,
    struct paper_bytes *out)
{
	struct drawing d = { .format = format, .out = out };
	enum paper_drawn how = DRAWN_BAD;

	*out = (struct paper_bytes) { 0 };
	if (list_open(list, length, &d.pages))
		how = draw(&d, list, list + length);
	if (d.layout)
		g_object_unref(d.layout);
	cairo_destroy(d.cairo);
	cairo_surface_destroy(d.surface);
	return how;
}
