/*
 * record_values.c - numbers and choices, read sign by sign
 *
 * A number is digits, with a minus before it where it may be less than 0 and,
 * of a measure alone, a point within.  Nothing is guessed.
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

enum {
	DIGITS_MAX = 16,
	REAL_DIGITS_MAX = 17,
	REAL_WHOLE_MAX = 12, /* less than RECORD_REAL_MOST */
	LISTED = 120
};

/* The word of a node that must be one, or NULL with a fault. */
static const char *word_of(
    struct record_reader *rd, const struct node *n, const char *key)
{
	if (n->kind == NODE_WORD)
		return n->word;
	record_fault(rd, n, message_with(M_RECORD_WANT_WORD, TEXT(key)));
	return NULL;
}

static int64_t digits_value(const char *s, size_t digits)
{
	int64_t value = 0;

	for (size_t i = 0; i < digits; i++)
		value = value * 10 + (s[i] - '0');
	return value;
}

bool record_whole(struct record_reader *rd, const struct node *n,
    struct whole w, int64_t *out)
{
	const char *word = word_of(rd, n, w.key);
	size_t minus, digits;
	int64_t value;

	if (word == NULL)
		return false;
	minus = *word == '-';
	digits = strspn(word + minus, "0123456789");
	if (digits > 0 && digits <= DIGITS_MAX &&
	    word[minus + digits] == '\0' &&
	    (digits == 1 || word[minus] != '0')) {
		value = digits_value(word + minus, digits);
		value = minus ? -value : value;
		if (value >= w.least && value <= w.most) {
			*out = value;
			return true;
		}
	}
	return record_fault(rd, n,
	    message_with(M_RECORD_WHOLE, TEXT(w.key), WHOLE(w.least),
		WHOLE(w.most), TEXT(word)));
}

bool record_int(
    struct record_reader *rd, const struct node *n, struct whole w, int *out)
{
	int64_t value = 0;

	if (!record_whole(rd, n, w, &value))
		return false;
	*out = (int)value;
	return true;
}

bool record_row(struct record_reader *rd, const struct node *n, int64_t *out)
{
	return record_whole(
	    rd, n, (struct whole) { "row", 1, RECORD_ROW_MOST }, out);
}

/*
 * Both the digits as a whole number and a power of ten up to 22 are exact in
 * a double, so one division rounds once (D. M. Gay, Correctly Rounded
 * Binary-Decimal Conversions, 1990, section 3).
 */
bool record_real(struct record_reader *rd, const struct node *n, double *out)
{
	const char *word = word_of(rd, n, "measures"), *whole, *rest = "";
	size_t digits, decimals = 0;
	double tenths = 1, value;

	if (word == NULL)
		return false;
	whole = word + (*word == '-');
	digits = strspn(whole, "0123456789");
	if (whole[digits] == '.') {
		rest = whole + digits + 1;
		decimals = strspn(rest, "0123456789");
	}
	if (digits == 0 || digits > REAL_WHOLE_MAX ||
	    digits + decimals > REAL_DIGITS_MAX ||
	    (whole[digits] == '.' ? decimals == 0 || rest[decimals] != '\0'
				  : whole[digits] != '\0'))
		return record_fault(
		    rd, n, message_with(M_RECORD_REAL, TEXT(word)));
	for (size_t i = 0; i < decimals; i++)
		tenths *= 10;
	value = (double)(digits_value(whole, digits) * (int64_t)tenths +
		    digits_value(rest, decimals)) /
	    tenths;
	*out = *word == '-' ? -value : value;
	return true;
}

bool record_choice(struct record_reader *rd, const struct node *n,
    const char *key, const char *const *words, int *out)
{
	char listed[LISTED];
	struct text t = text_in(listed, sizeof(listed));
	const char *word = word_of(rd, n, key);

	if (word == NULL)
		return false;
	for (int i = 0; words[i]; i++)
		if (strcmp(words[i], word) == 0) {
			*out = i;
			return true;
		}
	for (int i = 0; words[i]; i++) {
		text_add(&t, i > 0 ? ", " : "");
		text_add(&t, words[i]);
	}
	return record_fault(rd, n,
	    message_with(M_RECORD_CHOICE, TEXT(key), TEXT(listed), TEXT(word)));
}

bool record_yes(
    struct record_reader *rd, const struct node *n, const char *key, bool *out)
{
	static const char *const words[] = { "no", "yes", NULL };
	int i = 0;

	if (!record_choice(rd, n, key, words, &i))
		return false;
	*out = i == 1;
	return true;
}

bool record_hex(struct record_reader *rd, const struct node *n, const char *key,
    int digits, const char **out)
{
	char number[8];
	struct text t = text_in(number, sizeof(number));
	const char *word = word_of(rd, n, key);

	if (word == NULL)
		return false;
	if (strlen(word) == (size_t)digits &&
	    word[strspn(word, "0123456789abcdef")] == '\0') {
		*out = word;
		return true;
	}
	text_format(&t, "%d", digits);
	return record_fault(
	    rd, n, message_with(M_RECORD_ID, TEXT(key), TEXT(number)));
}
