/*
 * words.c - how much room words take on paper
 *
 * Letters beyond ASCII are taken as wide as almost all of them are: those of
 * Latin, Greek and Cyrillic somewhat wider than they are on average, so that
 * words of them hold, others an em, and half as much again for those of double
 * width.
 */
#include "evenhand/paper/words.h"

#include "evenhand/base/text.h"

enum {
	FIRST = ' ',
	LAST = '~',
	EM = 1000,
	/* In DejaVu Sans 592 to 731 on average, by alphabet and case. */
	ALPHABET = 750,
	ALPHABET_STRONG = 850, /* and 658 to 824 */
	OTHER = 1000,
	OTHER_WIDE = 1500,
	/* First bytes of two, from U+00C0 to U+047F. */
	ALPHABET_FROM = 0xc3,
	ALPHABET_TO = 0xd1,
};

/* Advances of DejaVu Sans 2.37 in thousandths of an em, rounded. */
static const short plain[LAST - FIRST + 1] = { 318, 401, 460, 838, 636, 950,
	780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636,
	636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684,
	686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863, 748, 787,
	603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390,
	838, 500, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579,
	278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592,
	525, 636, 337, 636, 838 };

/* The same of its bold letters. */
static const short strong[LAST - FIRST + 1] = { 348, 456, 521, 838, 696, 1002,
	872, 306, 457, 457, 523, 838, 380, 415, 380, 365, 696, 696, 696, 696,
	696, 696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 580, 1000, 774,
	762, 734, 830, 683, 683, 821, 837, 372, 372, 775, 637, 995, 837, 850,
	733, 850, 770, 720, 682, 812, 774, 1103, 771, 724, 725, 457, 365, 457,
	838, 500, 500, 675, 716, 593, 716, 678, 435, 716, 712, 343, 343, 665,
	343, 1042, 712, 687, 716, 716, 493, 595, 478, 712, 652, 924, 645, 652,
	582, 712, 365, 712, 838 };

/* Thousandths of an em of the first letter; sets its bytes, 0 at the end. */
static int letter(const char *s, bool bold, size_t *bytes)
{
	int columns = text_letter(s, bytes), first = (unsigned char)*s;

	if (*bytes == 1 && first >= FIRST && first <= LAST)
		return bold ? strong[first - FIRST] : plain[first - FIRST];
	if (columns > 1)
		return OTHER_WIDE;
	/* Of its own, or one of ASCII under an accent. */
	if ((first >= ALPHABET_FROM && first <= ALPHABET_TO) ||
	    (first >= FIRST && first <= LAST))
		return bold ? ALPHABET_STRONG : ALPHABET;
	return OTHER;
}

double words_mm(const char *words, double size, bool bold)
{
	size_t bytes;
	long all = 0;

	for (int wide = letter(words, bold, &bytes); bytes > 0;
	     wide = letter(words, bold, &bytes)) {
		all += wide;
		words += bytes;
	}
	return (double)all * size / EM;
}

double words_fit(const char *words, double size, bool bold, double mm)
{
	double wide = words_mm(words, size, bold);

	/* A little less, because places are rounded. */
	return wide > mm ? size * (mm / wide * 0.99) : size;
}

size_t words_clip(const char *words, double size, bool bold, double mm)
{
	size_t at = 0, bytes;
	double used = 0;

	for (;;) {
		int wide = letter(words + at, bold, &bytes);

		used += wide * size / EM;
		if (bytes == 0 || used > mm)
			return at;
		at += bytes;
	}
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c & 0x80;
}

/* Whether a line may end before this: a space, or behind a hyphen in a word. */
static bool may_end(const char *words, size_t at)
{
	return words[at] == ' ' ||
	    (at >= 2 && words[at - 1] == '-' && is_letter(words[at - 2]) &&
		is_letter(words[at]));
}

size_t words_wrap(
    const char *words, double size, bool bold, double mm, size_t *next)
{
	size_t end = words_clip(words, size, bold, mm), bytes;

	if (words[end] != '\0') {
		size_t space = end;

		while (space > 0 && !may_end(words, space))
			space--;
		if (space > 0)
			end = space;
		else if (end == 0) {
			/* Not even a letter fits; one has to. */
			letter(words, bold, &bytes);
			end = bytes;
		}
	}
	*next = end;
	while (words[*next] == ' ')
		(*next)++;
	while (end > 0 && words[end - 1] == ' ')
		end--;
	return end;
}
