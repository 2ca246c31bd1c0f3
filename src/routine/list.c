/*
 * list.c - lists of a routine, and what people write in their place
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

/* "stages:" and its lines without dashes, or with names in their place. */
static bool want_dashes(struct reader *rd, const struct node *n)
{
	char example[TEXT_LISTED];
	struct text t = text_in(example, sizeof(example));
	const struct node *first = n->first;

	if (first != NULL && first->kind == NODE_WORD && *first->word != '\0')
		text_format(&t, "%s: %s", first->key, first->word);
	else
		text_add(&t, keys_example(n->key));
	return fault_here(rd, n,
	    message_with(M_ROUTINE_WANT_DASHES, TEXT(n->key), TEXT(example)));
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/*
 * "[1 2 3]" or "[1; 2; 3]": a list of which a YAML reader makes one word, put
 * right.  False when it is no such list; "4 bows" has a unit and is none.
 */
static bool parts_of(const char *word, struct text *right)
{
	static const char between[] = " ;";
	const char *at = word + strspn(word, between);
	bool digit = is_digit(*at);
	int count = 0;

	for (; *at != '\0'; count++) {
		size_t length = strcspn(at, between);

		if (is_digit(*at) != digit)
			return false;
		text_add(right, count > 0 ? ", " : "");
		text_add_bytes(right, at, length);
		at += length;
		at += strspn(at, between);
	}
	return count > 1;
}

/* The fault of a part of a list of single words that is several; or true. */
static bool one_part(
    struct reader *rd, const struct node *list, const struct node *item)
{
	static const char more[] = "...";
	char right[TEXT_LISTED + sizeof(more)];
	struct text t = text_in(right, TEXT_LISTED);

	if (!keys_take_words(list->key) || item->kind != NODE_WORD ||
	    item->quoted || !parts_of(item->word, &t))
		return true;
	if (t.cut)
		memcpy(right + t.length, more, sizeof(more));
	return fault_here(rd, item,
	    message_with(M_ROUTINE_ITEM_COMMAS, TEXT(list->key), TEXT(right)));
}

bool value_list(struct reader *rd, const struct node *n, int most)
{
	int count = 0;

	if (n == NULL)
		return false;
	if (n->kind != NODE_LIST && !keys_take_list(n->key))
		return want_dashes(rd, n);
	if (n->kind == NODE_WORD ? *n->word == '\0' : n->first == NULL)
		return fault_key(
		    rd, n, message_with(M_ROUTINE_NOTHING, TEXT(n->key)));
	if (n->kind != NODE_LIST)
		return fault_here(
		    rd, n, message_with(M_ROUTINE_WANT_LIST, TEXT(n->key)));
	for (const struct node *i = n->first; i != NULL; i = i->next) {
		if (!one_part(rd, n, i))
			return false;
		if (++count > most)
			return fault_here(rd, i,
			    message_with(M_ROUTINE_LIST_LONG, TEXT(n->key),
				WHOLE(most)));
	}
	return true;
}
