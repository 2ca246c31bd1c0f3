/*
 * letters_fold.c - which drawings a text is made of
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "letters_parts.h"

enum { BYTES = 16 };

/* Letters with something above them, great and small, and what is below. */
static const struct {
	char accent;
	const char *letters, *codes;
} accented[] = {
	{ '`', "ÀàÈèÌìÒòÙù", "AAEEIIOOUU" },
	{ '\'', "ÁáÉéÍíÓóÚúÝýĆćŃńŚśŹźĹĺŔŕ", "AAEEIIOOUUYYCCNNSSZZLLRR" },
	{ '^', "ÂâÊêÎîÔôÛûŴŵŶŷ", "AAEEIIOOUUWWYY" },
	{ '"', "ÄäËëÏïÖöÜüŸÿŐőŰű", "AAEEIIOOUUYYOOUU" },
	{ '~', "ÃãÑñÕõ", "AANNOO" },
	{ 'o', "ÅåŮů", "AAUU" },
	{ 'v', "ČčĎďĚěŇňŘřŠšŤťŽžĽľĞğŬŭ", "CCDDEENNRRSSTTZZLLGGUU" },
	/* What hangs below or crosses a letter is left out. */
	{ ' ', "ÇçĄąĘęĮįŲųŁłĐđØøŞşȘșŢţȚțıİŻż", "CCAAEEIIUULLDDOOSSSSTTTTIIZZ" },
	{ ' ', "‘’´“”„«»‐‑–—−×♯✓⊓", "'''\"\"\"\"\"-----X#vn" },
};

static const struct {
	const char *letters, *codes;
} twofold[] = { { "ßẞ", "SS" }, { "Ææ", "AE" }, { "Œœ", "OE" }, { "Þþ", "TH" },
	{ "…", "..." } };

/* Accents that follow their letter as signs of their own. */
static const struct {
	char accent;
	const char *sign;
} combining[] = {
	{ '`', "\u0300" },
	{ '\'', "\u0301" },
	{ '^', "\u0302" },
	{ '~', "\u0303" },
	{ '"', "\u0308" },
	{ 'o', "\u030a" },
	{ '"', "\u030b" },
	{ 'v', "\u030c" },
};

#define COUNT(a) (sizeof(a) / sizeof((a)[0]))

/* Bytes of the code point at s. */
static size_t point(const char *s)
{
	size_t bytes = 1;

	while (((unsigned char)s[bytes] & 0xc0) == 0x80)
		bytes++;
	return bytes;
}

/* Which of the code points of list it is, or -1. */
static int place_in(const char *list, const char *letter)
{
	for (int i = 0; *list; i++, list += point(list))
		if (point(list) == strlen(letter) &&
		    memcmp(list, letter, strlen(letter)) == 0)
			return i;
	return -1;
}

static bool drawn(char code)
{
	for (const struct band *b = letters_five; b->codes; b++)
		if (strchr(b->codes, code))
			return true;
	return false;
}

/* The letters of one code point; how many, 0 when it has none. */
static int fold_point(const char *letter, struct letter *out)
{
	char c = letter[0];

	if (letter[1] == '\0') {
		if (c >= 'a' && c <= 'z')
			c = (char)(c - 'a' + 'A');
		out[0] = (struct letter) { c, ' ' };
		return drawn(c);
	}
	for (size_t i = 0; i < COUNT(accented); i++) {
		int at = place_in(accented[i].letters, letter);

		if (at < 0)
			continue;
		out[0] = (struct letter) { accented[i].codes[at],
			accented[i].accent };
		return 1;
	}
	for (size_t i = 0; i < COUNT(twofold); i++) {
		const char *codes = twofold[i].codes;

		if (place_in(twofold[i].letters, letter) < 0)
			continue;
		for (int n = 0; codes[n]; n++)
			out[n] = (struct letter) { codes[n], ' ' };
		return (int)strlen(codes);
	}
	return 0;
}

/* Whether it is an accent for the letter before it. */
static bool fold_accent(const char *sign, struct letter *before)
{
	for (size_t i = 0; i < COUNT(combining); i++)
		if (strcmp(combining[i].sign, sign) == 0) {
			before->accent = combining[i].accent;
			return true;
		}
	return false;
}

int letters_fold(const char *s, struct letter *out, int most)
{
	struct letter some[3];
	char sign[BYTES];
	int count = 0;

	for (size_t bytes; *s; s += bytes) {
		struct text t = text_in(sign, sizeof(sign));

		bytes = point(s);
		text_add_bytes(&t, s, bytes);
		if (count > 0 && fold_accent(sign, &out[count - 1]))
			continue;

		int n = fold_point(sign, some);

		if (n == 0 || count + n > most)
			return -1;
		memcpy(out + count, some, (size_t)n * sizeof(some[0]));
		count += n;
	}
	return count;
}
