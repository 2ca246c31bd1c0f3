/*
 * number.c - numbers, read digit by digit
 *
 * A routine's numbers are plain: digits, perhaps a point and one or two more.
 * What other readers of YAML would turn into something else is a fault with a
 * hint: 4,5 (text), 010 (eight), 1:30 (ninety), 4s (text).
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

enum { DIGITS_MAX = 6, HUNDREDTHS = 100, HALF_WORDS = 12 };

/* A number taken apart. */
struct parts {
	const char *whole, *rest; /* digits before, what follows */
	int digits;		  /* before the point or comma */
	int decimals;		  /* behind it */
	char point;		  /* '.', ',', ':' or 0 */
	const char *end;	  /* behind the last digit */
};

static int digits_at(const char *s)
{
	return (int)strspn(s, "0123456789");
}

static struct parts take_apart(const char *s)
{
	struct parts p = { .whole = s, .digits = digits_at(s) };

	p.end = s + p.digits;
	if (*p.end != '\0' && strchr(".,:", *p.end) && digits_at(p.end + 1)) {
		p.point = *p.end;
		p.rest = p.end + 1;
		p.decimals = digits_at(p.rest);
		p.end = p.rest + p.decimals;
	}
	return p;
}

static int digits_value(const char *s, int digits)
{
	int value = 0;

	for (int i = 0; i < digits; i++)
		value = value * 10 + (s[i] - '0');
	return value;
}

/* 4,5 is four and a half: said in words where there are words for it. */
static bool comma(
    struct reader *rd, const struct node *n, const struct parts *p)
{
	char right[32];
	struct text t = text_in(right, sizeof(right));
	int whole = p->digits < 3 ? digits_value(p->whole, p->digits) : 0;

	text_add_bytes(&t, p->whole, (size_t)p->digits);
	text_add(&t, ".");
	text_add_bytes(&t, p->rest, (size_t)p->decimals);
	if (p->decimals == 1 && *p->rest == '5' && whole >= 1 &&
	    whole <= HALF_WORDS)
		return fault_here(rd, n,
		    message_with(M_ROUTINE_COMMA_HALF,
			WORD(M_ROUTINE_1 + whole - 1), TEXT(right)));
	return fault_here(
	    rd, n, message_with(M_ROUTINE_COMMA, TEXT(n->word), TEXT(right)));
}

/* 1:30 is one and a half; only what comes out short is offered. */
static bool clock_time(
    struct reader *rd, const struct node *n, const struct parts *p)
{
	char right[32];
	struct text t = text_in(right, sizeof(right));
	int sixtieths = p->decimals == 2 ? digits_value(p->rest, 2) : 0;
	int whole = p->digits < DIGITS_MAX ? digits_value(p->whole, p->digits)
					   : 0;
	int hundredths = whole * HUNDREDTHS + sixtieths * HUNDREDTHS / 60;

	text_number(&t, (double)hundredths / HUNDREDTHS);
	return fault_here(
	    rd, n, message_with(M_ROUTINE_CLOCK, TEXT(n->word), TEXT(right)));
}

static bool zero_first(
    struct reader *rd, const struct node *n, const struct parts *p)
{
	const char *right = p->whole + strspn(p->whole, "0");

	if (*right < '0' || *right > '9')
		right--;
	return fault_here(rd, n,
	    message_with(M_ROUTINE_ZERO_FIRST, TEXT(n->word), TEXT(right)));
}

/* "4 s" or "440Hz": the number without what it is a number of. */
static bool with_unit(struct reader *rd, const struct node *n, const char *key,
    const struct parts *p)
{
	char right[32];
	struct text t = text_in(right, sizeof(right));

	text_add_bytes(&t, p->whole, (size_t)(p->end - p->whole));
	return fault_here(
	    rd, n, message_with(M_ROUTINE_UNIT, TEXT(key), TEXT(right)));
}

/* What is wrong with the way it is written; true when nothing is. */
static bool well_written(
    struct reader *rd, const struct node *n, const char *key, struct parts *p)
{
	const char *s = n->word;
	bool minus = *s == '-';

	*p = take_apart(s + (minus || *s == '+'));
	if (p->digits == 0)
		return fault_here(rd, n,
		    message_with(M_ROUTINE_NOT_NUMBER, TEXT(key), TEXT(s)));
	if (p->point == ',' && *p->end == '\0')
		return comma(rd, n, p);
	if (p->point == ':' && *p->end == '\0')
		return clock_time(rd, n, p);
	if (*p->end == ' ' || (*p->end >= 'A' && *p->end <= 'z'))
		return with_unit(rd, n, key, p);
	if (*p->end != '\0' || *s == '+')
		return fault_here(rd, n,
		    message_with(M_ROUTINE_NOT_NUMBER, TEXT(key), TEXT(s)));
	if (!minus && p->digits > 1 && *p->whole == '0')
		return zero_first(rd, n, p);
	return true;
}

/* In hundredths, after the bounds were found to hold. */
static bool in_bounds(struct reader *rd, const struct node *n, struct bounds b,
    const struct parts *p, int *out)
{
	int whole, more = 0;

	if (p->digits <= DIGITS_MAX && *n->word != '-') {
		whole = digits_value(p->whole, p->digits);
		if (p->decimals == 1)
			more = 10 * digits_value(p->rest, 1);
		else if (p->decimals == 2)
			more = digits_value(p->rest, 2);
		*out = whole * HUNDREDTHS + more;
		if (*out >= b.least * HUNDREDTHS && *out <= b.most * HUNDREDTHS)
			return true;
	}
	return fault_here(rd, n,
	    message_with(M_ROUTINE_RANGE, TEXT(b.key), FIGURE(b.least),
		FIGURE(b.most), TEXT(n->word)));
}

static bool read_number(struct reader *rd, const struct node *n,
    struct bounds b, bool whole, int *out)
{
	const char *word;
	struct parts p;
	int found = 0;

	if (!value_word(rd, n, b.key, &word) || !well_written(rd, n, b.key, &p))
		return false;
	if (whole && p.point)
		return fault_here(rd, n,
		    message_with(M_ROUTINE_NOT_WHOLE, TEXT(b.key), TEXT(word)));
	if (p.decimals > 2)
		return fault_here(rd, n,
		    message_with(M_ROUTINE_DECIMALS, TEXT(b.key), TEXT(word)));
	if (!in_bounds(rd, n, b, &p, &found))
		return false;
	*out = whole ? found / HUNDREDTHS : found;
	return true;
}

bool number_whole(
    struct reader *rd, const struct node *n, struct bounds b, int *out)
{
	return n != NULL && read_number(rd, n, b, true, out);
}

bool number_hundredths(
    struct reader *rd, const struct node *n, struct bounds b, int *out)
{
	return n != NULL && read_number(rd, n, b, false, out);
}
