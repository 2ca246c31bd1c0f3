/*
 * colours.c - how the meanings of cells look, with many colours, few or none
 */
#include "evenhand/screen/colours.h"

#include "evenhand/screen/canvas.h"

struct style style_of(enum palette p, unsigned attributes)
{
	(void)p;
	return (struct style) {
		.foreground = -1,
		.background = -1,
		.bold = attributes & (ATTRIBUTE_STRONG | ATTRIBUTE_CARE),
		.dim = attributes & ATTRIBUTE_FAINT,
		.reverse = attributes & (ATTRIBUTE_REVERSE | ATTRIBUTE_HAND),
	};
}
