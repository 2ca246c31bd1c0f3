/*
 * text_distance.c - how many slips of the finger lie between two words
 *
 * Optimal string alignment: a slip is a letter put in, left out or changed,
 * or two neighbours swapped, and no place is touched twice.
 *
 *	bows_eah -> bows_each 1     bows_aech -> bows_each 1     ca -> abc 3
 *
 * Row by row over the table of all beginnings; the swap needs the row before
 * the last as well, hence three rows.
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "letter.h"

enum { WORD_MAX = 64 };

struct word {
	int length; /* code points, WORD_MAX + 1 when there are more */
	int32_t at[WORD_MAX + 1];
};

static struct word spell(const char *s)
{
	struct word w = { 0 };
	size_t left = strlen(s), bytes;

	while (left > 0 && w.length <= WORD_MAX) {
		w.at[w.length++] = letter_point(s, left, &bytes);
		s += bytes;
		left -= bytes;
	}
	return w;
}

static int least(int a, int b)
{
	return a < b ? a : b;
}

static int distance(const struct word *a, const struct word *b)
{
	int rows[3][WORD_MAX + 1];

	for (int j = 0; j <= b->length; j++)
		rows[0][j] = j;
	for (int i = 1; i <= a->length; i++) {
		int *now = rows[i % 3], *last = rows[(i + 2) % 3];
		const int *before = rows[(i + 1) % 3];

		now[0] = i;
		for (int j = 1; j <= b->length; j++) {
			int change = a->at[i - 1] != b->at[j - 1];

			now[j] = least(last[j - 1] + change,
			    least(last[j], now[j - 1]) + 1);
			if (i > 1 && j > 1 && a->at[i - 1] == b->at[j - 2] &&
			    a->at[i - 2] == b->at[j - 1])
				now[j] = least(now[j], before[j - 2] + 1);
		}
	}
	return rows[a->length % 3][b->length];
}

int text_distance(const char *a, const char *b, int limit)
{
	struct word x = spell(a), y = spell(b);

	if (strcmp(a, b) == 0)
		return 0;
	if (x.length > WORD_MAX || y.length > WORD_MAX)
		return limit + 1;
	return least(distance(&x, &y), limit + 1);
}
