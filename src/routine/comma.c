/*
 * comma.c - a comma between { } that was not meant to part anything
 *
 *	{order: 1, 2}            a list without its brackets
 *	{bow_seconds: 4,5}       a number with a comma for a point
 *	{title: Wide, loose}     words that hold a comma
 *
 * A YAML reader takes what stands behind the comma as a key without a value.
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

enum { JOINED_MAX = 160 };

static bool all_digits(const char *s)
{
	return *s != '\0' && s[strspn(s, "0123456789")] == '\0';
}

/* "4,5": the comma is all that stands between the two. */
static bool touching(const struct node *owner, const struct node *n)
{
	return owner->line == n->key_line &&
	    n->key_column - owner->column == (int)strlen(owner->word) + 1;
}

/* "4,5" is read as one number, and that says what is wrong with it. */
static bool number_slip(
    struct reader *rd, const struct node *owner, const struct node *n)
{
	char joined[JOINED_MAX];
	struct text t = text_in(joined, sizeof(joined));
	struct node both = *owner;
	struct bounds any = { owner->key, 0, 0 };
	int value;

	text_format(&t, "%s,%s", owner->word, n->key);
	both.word = joined;
	return !number_hundredths(rd, &both, any, &value);
}

bool comma_slip(
    struct reader *rd, const struct node *owner, const struct node *n)
{
	char joined[JOINED_MAX];
	struct text t = text_in(joined, sizeof(joined));

	if (owner == NULL || owner->kind != NODE_WORD || owner->quoted ||
	    *owner->word == '\0' || n->kind != NODE_WORD || n->quoted ||
	    *n->word != '\0')
		return false;
	if (keys_take_list(owner->key))
		return true; /* it is said of the list as a whole */
	if (all_digits(owner->word) && all_digits(n->key) &&
	    strcmp(owner->key, "size") != 0 && touching(owner, n))
		return number_slip(rd, owner, n);
	if (!keys_free_text(owner->key, strlen(owner->key)))
		return false;
	text_format(&t, "%s, %s", owner->word, n->key);
	fault_key(rd, n,
	    message_with(
		M_ROUTINE_COMMA_WORDS, TEXT(owner->key), TEXT(joined)));
	return true;
}
