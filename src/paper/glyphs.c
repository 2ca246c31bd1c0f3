/*
 * glyphs.c - the signs of a staff as paths of our own
 *
 * Thin and thick strokes of an even pen, and filled outlines where a stroke has
 * to swell.  Letters of computers often lack these signs, so none are used.
 */
#include "glyphs.h"

#include <stddef.h>

enum { PARTS_MAX = 4 };

/* A path and its pen in hundredths of a space; 0 fills. */
struct part {
	const char *path;
	int pen;
};

/* The curl round the G line, the loop above, the stem and its hook. */
static const struct part treble[PARTS_MAX] = {
	{ "M 133 44 C 96 38 82 8 96 -22 C 112 -56 160 -66 196 -42 "
	  "C 236 -14 240 44 200 78 C 154 116 80 108 42 64 "
	  "C 0 14 10 -62 52 -120 C 92 -176 158 -222 176 -296 "
	  "C 188 -348 172 -412 146 -420 C 116 -414 100 -360 104 -296 "
	  "C 110 -210 146 60 154 166 C 158 220 138 254 100 256 "
	  "C 74 256 58 242 56 224",
	    17 },
	{ "M 214 -24 C 240 18 232 62 196 84 C 150 112 84 104 44 62 "
	  "C 84 92 146 96 184 70 C 214 48 222 8 214 -24 Z",
	    10 },
	{ "M 54 216 C 54 192 92 192 92 218 C 92 246 54 246 54 216 Z", 6 },
	{ "M 54 216 C 54 192 92 192 92 218 C 92 246 54 246 54 216 Z", 0 },
};

static const struct part bass[PARTS_MAX] = {
	{ "M 4 2 C 2 -66 46 -104 106 -104 C 176 -104 220 -62 220 8 "
	  "C 220 110 128 198 6 246 C 106 184 164 110 164 8 "
	  "C 164 -52 144 -90 100 -90 C 62 -90 34 -66 30 -30 Z",
	    0 },
	{ "M 6 0 C 6 -46 82 -46 82 0 C 82 46 6 46 6 0 Z", 0 },
	{ "M 248 -50 C 248 -76 288 -76 288 -50 C 288 -24 248 -24 248 -50 Z "
	  "M 248 50 C 248 24 288 24 288 50 C 288 76 248 76 248 50 Z",
	    0 },
};

static const struct part alto[PARTS_MAX] = {
	{ "M 0 -200 L 46 -200 L 46 200 L 0 200 Z "
	  "M 66 -200 L 80 -200 L 80 200 L 66 200 Z",
	    0 },
	{ "M 80 0 C 112 -24 126 -56 130 -92 C 138 -50 156 -30 184 -30 "
	  "C 214 -30 222 -60 222 -112 C 222 -164 208 -190 178 -190 "
	  "C 156 -190 140 -180 136 -164 C 160 -168 168 -124 134 -122 "
	  "C 108 -122 100 -150 112 -172 C 124 -194 150 -204 180 -204 "
	  "C 240 -204 282 -168 282 -114 C 282 -54 236 -14 178 -14 "
	  "C 150 -14 140 -26 134 -38 C 126 -20 116 -8 104 0 Z",
	    0 },
	{ "M 80 0 C 112 24 126 56 130 92 C 138 50 156 30 184 30 "
	  "C 214 30 222 60 222 112 C 222 164 208 190 178 190 "
	  "C 156 190 140 180 136 164 C 160 168 168 124 134 122 "
	  "C 108 122 100 150 112 172 C 124 194 150 204 180 204 "
	  "C 240 204 282 168 282 114 C 282 54 236 14 178 14 "
	  "C 150 14 140 26 134 38 C 126 20 116 8 104 0 Z",
	    0 },
};

static const struct {
	const struct part *part;
	int line;	  /* the place of the line it names */
	int above, below; /* places */
} clefs[CLEFS] = {
	[CLEF_TREBLE] = { treble, 2, 3, 4 },
	[CLEF_ALTO] = { alto, 4, 0, 0 },
	[CLEF_TENOR] = { alto, 6, 2, 0 },
	[CLEF_BASS] = { bass, 6, 0, 0 },
};

static const struct part before[BEFORE_COUNT][PARTS_MAX] = {
	[BEFORE_SHARP] = {
		{ "M -17 -128 L -17 146 M 17 -146 L 17 128", 11 },
		{ "M -46 -30 L 46 -62 M -46 62 L 46 30", 28 },
	},
	[BEFORE_FLAT] = {
		{ "M -34 -190 L -34 66", 11 },
		{ "M -38 76 C 6 46 52 12 52 -26 C 52 -66 2 -70 -34 -34 "
		  "L -34 -16 C -10 -42 20 -42 20 -16 C 20 12 -10 38 -34 50 Z",
		    0 },
	},
	[BEFORE_NATURAL] = {
		{ "M -26 -150 L -26 68 M 26 -68 L 26 150", 11 },
		{ "M -26 -42 L 26 -58 M -26 58 L 26 42", 28 },
	},
	[BEFORE_HALF_SHARP] = {
		{ "M 0 -140 L 0 140", 11 },
		{ "M -34 -30 L 34 -56 M -34 56 L 34 30", 28 },
	},
	[BEFORE_HALF_FLAT] = {
		{ "M 34 -190 L 34 66", 11 },
		{ "M 38 76 C -6 46 -52 12 -52 -26 C -52 -66 -2 -70 34 -34 "
		  "L 34 -16 C 10 -42 -20 -42 -20 -16 C -20 12 10 38 34 50 Z",
		    0 },
	},
};

static void draw(
    struct paper *p, const struct part *parts, double x, double y, double unit)
{
	for (int i = 0; i < PARTS_MAX && parts[i].path != NULL; i++)
		paper_shape(
		    p, x, y, unit, parts[i].pen * unit / 100, parts[i].path);
}

void glyph_clef(
    struct paper *p, enum clef c, double x, double bottom_y, double unit)
{
	draw(p, clefs[c].part, x, bottom_y - clefs[c].line * unit / 2, unit);
}

int glyph_clef_above(enum clef c)
{
	return clefs[c].above;
}

int glyph_clef_below(enum clef c)
{
	return clefs[c].below;
}

void glyph_before(
    struct paper *p, enum sign_before b, double x, double y, double unit)
{
	draw(p, before[b], x, y, unit);
}
