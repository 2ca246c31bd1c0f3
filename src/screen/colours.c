/*
 * colours.c - how the meanings of cells look, with many colours, few or none
 *
 * Dark and calm, one warm colour for what moves and one for care.  With eight
 * colours nothing black is ever bold: many terminals show that as grey.
 */
#include "evenhand/screen/colours.h"

#include <assert.h>
#include <stddef.h>

#include "evenhand/screen/canvas.h"

/* Foreground on background; the rest of a look may follow. */
#define ON(f, b) .foreground = (f), .background = (b)
#define OWN ON(-1, -1)

/* One meaning in each palette. */
struct look {
	unsigned attribute;
	struct style none, eight, many;
};

/* The most pressing one first. */
static const struct look looks[] = {
	/* Blocks in their own colour: reversed they would be holes. */
	{ ATTRIBUTE_HAND, { OWN, .bold = true }, { ON(6, 0), .bold = true },
	    { ON(220, 233) } },
	{ ATTRIBUTE_REVERSE, { OWN, .reverse = true }, { ON(0, 7) },
	    { ON(233, 253) } },
	{ ATTRIBUTE_CARE, { OWN, .underline = true },
	    { ON(3, 0), .bold = true }, { ON(216, 233) } },
	{ ATTRIBUTE_CLEAN, { OWN, .bold = true }, { ON(2, 0), .bold = true },
	    { ON(114, 233) } },
	/* A shaky mark is nothing bad: the look of care, not of alarm. */
	{ ATTRIBUTE_SHAKY, { OWN, .bold = true }, { ON(3, 0), .bold = true },
	    { ON(216, 233) } },
	{ ATTRIBUTE_BOW, { OWN }, { ON(7, 0) }, { ON(250, 233) } },
	{ ATTRIBUTE_STRONG, { OWN, .bold = true }, { ON(7, 0), .bold = true },
	    { ON(231, 233), .bold = true } },
	{ ATTRIBUTE_FAINT, { OWN }, { ON(6, 0) }, { ON(248, 233) } },
	{ ATTRIBUTE_PLAIN, { OWN }, { ON(7, 0) }, { ON(253, 233) } },
};

static const struct look *look_of(unsigned attributes)
{
	const struct look *l = looks;

	while (l->attribute != ATTRIBUTE_PLAIN && !(attributes & l->attribute))
		l++;
	return l;
}

/* What a lower meaning adds that colours cannot: strong stays bold. */
static bool also_bold(const struct style *s, unsigned attributes)
{
	return (attributes & ATTRIBUTE_STRONG) && s->foreground != 0;
}

struct style style_of(enum palette p, unsigned attributes)
{
	const struct look *l = look_of(attributes);
	struct style s = p == PALETTE_NONE ? l->none
	    : p == PALETTE_8		   ? l->eight
					   : l->many;

	s.bold |= also_bold(&s, attributes);
	if (p == PALETTE_NONE)
		s.underline |= (attributes & ATTRIBUTE_CARE) != 0;
	return s;
}

/*
 * The first 16 by xterm's own defaults, then a cube of 6 x 6 x 6 and 24 greys
 * (xterm's XTerm-col.ad and 256colres.pl).
 */
uint32_t colour_rgb(int colour)
{
	static const uint32_t first[] = { 0x000000, 0xcd0000, 0x00cd00,
		0xcdcd00, 0x0000ee, 0xcd00cd, 0x00cdcd, 0xe5e5e5, 0x7f7f7f,
		0xff0000, 0x00ff00, 0xffff00, 0x5c5cff, 0xff00ff, 0x00ffff,
		0xffffff };
	static const uint32_t step[] = { 0, 95, 135, 175, 215, 255 };
	uint32_t n;

	assert(colour >= 0 && colour < 256);
	if (colour < 16)
		return first[colour];
	if (colour >= 232) {
		n = 8 + 10 * (uint32_t)(colour - 232);
		return n << 16 | n << 8 | n;
	}
	n = (uint32_t)colour - 16;
	return step[n / 36] << 16 | step[n / 6 % 6] << 8 | step[n % 6];
}
