/*
 * cairo_letters.c - words of a sheet, drawn by pango
 *
 * For each size of letters pango looks through all fonts anew, in threads of
 * its own, which takes longer than everything else.  So it knows one size of
 * each weight, and cairo makes that larger or smaller.
 */
#include "cairo_letters.h"

#define EM 10.0 /* mm, the size that pango knows */

static PangoLayout *open_weight(PangoContext *context, PangoWeight weight)
{
	PangoFontDescription *font = pango_font_description_new();
	PangoLayout *layout = pango_layout_new(context);

	pango_font_description_set_family_static(font, "sans-serif");
	pango_font_description_set_weight(font, weight);
	pango_font_description_set_absolute_size(font, EM * PANGO_SCALE);
	pango_layout_set_font_description(layout, font);
	pango_font_description_free(font);
	pango_layout_set_single_paragraph_mode(layout, TRUE);
	return layout;
}

/* Without a font there is no letter, not even this one. */
static bool has_letters(PangoLayout *layout)
{
	pango_layout_set_text(layout, "a", -1);
	return pango_layout_get_unknown_glyphs_count(layout) == 0;
}

bool letters_open(struct letters *l)
{
	cairo_font_options_t *options = cairo_font_options_create();
	PangoContext *context = pango_font_map_create_context(
	    pango_cairo_font_map_get_default());

	/* The same letters in every size, whatever a screen would make. */
	cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
	cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
	cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
	pango_cairo_context_set_font_options(context, options);
	cairo_font_options_destroy(options);
	pango_context_set_round_glyph_positions(context, FALSE);
	l->weight[0] = open_weight(context, PANGO_WEIGHT_NORMAL);
	l->weight[1] = open_weight(context, PANGO_WEIGHT_BOLD);
	g_object_unref(context);
	return has_letters(l->weight[0]) && has_letters(l->weight[1]);
}

void letters_put(
    const struct letters *l, cairo_t *cairo, const struct paper_item *words)
{
	PangoLayout *layout = l->weight[words->bold];
	double scale = words->size / EM;
	double own, narrow, shift;
	int wide, high;

	pango_layout_set_text(layout, words->text, -1);
	pango_layout_get_size(layout, &wide, &high);
	own = (double)wide / PANGO_SCALE * scale;
	narrow = own > words->wide && own > 0 ? words->wide / own : 1;
	shift = words->side == SIDE_LEFT ? 0 : -own * narrow;
	if (words->side == SIDE_MIDDLE)
		shift /= 2;
	cairo_save(cairo);
	cairo_translate(cairo, words->x + shift, words->y);
	cairo_scale(cairo, narrow * scale, scale);
	cairo_move_to(
	    cairo, 0, -(double)pango_layout_get_baseline(layout) / PANGO_SCALE);
	pango_cairo_show_layout(cairo, layout);
	cairo_restore(cairo);
}

void letters_done(struct letters *l)
{
	for (int i = 0; i < 2; i++)
		if (l->weight[i])
			g_object_unref(l->weight[i]);
}
