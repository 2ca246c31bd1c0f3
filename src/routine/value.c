/*
 * value.c - words and choices of a routine, read strictly
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

bool fault_here(struct reader *rd, const struct node *value, struct message m)
{
	return faults_add(rd->faults, m, rd->path, value->line, value->column);
}

bool fault_key(struct reader *rd, const struct node *value, struct message m)
{
	return faults_add(
	    rd->faults, m, rd->path, value->key_line, value->key_column);
}

int faults_found(const struct reader *rd)
{
	return rd->faults->count + rd->faults->left_out;
}

void small_letters(char *to, size_t size, const char *word)
{
	struct text t = text_in(to, size);

	for (const char *s = word; *s; s++) {
		char c = *s >= 'A' && *s <= 'Z' ? (char)(*s - 'A' + 'a') : *s;

		text_add_bytes(&t, &c, 1);
	}
}

bool fault_small(struct reader *rd, const struct node *n, const char *right)
{
	return fault_here(
	    rd, n, message_with(M_ROUTINE_SMALL, TEXT(n->word), TEXT(right)));
}

static bool has_control(const char *word)
{
	return letters_control(word, strlen(word)) != NULL;
}

bool value_word(
    struct reader *rd, const struct node *n, const char *key, const char **out)
{
	bool part = n->key == NULL;

	if (n->kind != NODE_WORD)
		return fault_here(rd, n,
		    message_with(
			part ? M_ROUTINE_ITEM_WORD : M_ROUTINE_WANT_WORD,
			TEXT(key)));
	if (*n->word == '\0' && part)
		return fault_here(
		    rd, n, message_with(M_ROUTINE_ITEM_NOTHING, TEXT(key)));
	if (*n->word == '\0')
		return fault_key(
		    rd, n, message_with(M_ROUTINE_NOTHING, TEXT(key)));
	if (has_control(n->word))
		return fault_here(rd, n, message_of(M_ROUTINE_CONTROL));
	*out = n->word;
	return true;
}

/* A copy on one line: Tabs and line ends become one space each. */
static const char *one_line(struct reader *rd, const char *word)
{
	char *copy = arena_text(&rd->r->arena, word, strlen(word));
	char *to = copy;

	if (copy == NULL) {
		rd->no_memory = true;
		return NULL;
	}
	for (const char *s = copy; *s; s++) {
		bool space = *s == ' ' || *s == '\t' || *s == '\n' ||
		    *s == '\r';

		if (!space)
			*to++ = *s;
		else if (to > copy && to[-1] != ' ')
			*to++ = ' ';
	}
	while (to > copy && to[-1] == ' ')
		to--;
	*to = '\0';
	return copy;
}

bool value_text(struct reader *rd, const struct node *n, const char *key,
    int columns, const char **out)
{
	const char *word = "", *text;
	int wide;

	if (n == NULL || !value_word(rd, n, key, &word))
		return false;
	text = one_line(rd, word);
	if (text == NULL)
		return false;
	if (*text == '\0')
		return fault_here(
		    rd, n, message_with(M_ROUTINE_NOTHING, TEXT(key)));
	wide = text_columns(text);
	if (wide > columns)
		return fault_here(rd, n,
		    message_with(M_ROUTINE_TEXT_LONG, TEXT(key), WHOLE(wide),
			WHOLE(columns)));
	*out = text;
	return true;
}

bool value_choice(
    struct reader *rd, const struct node *n, const char *const *words, int *out)
{
	char list[TEXT_LISTED], small[TEXT_LISTED];
	struct text t = text_in(list, sizeof(list));
	const char *word = "";

	if (n == NULL || !value_word(rd, n, n->key, &word))
		return false;
	small_letters(small, sizeof(small), word);
	for (int i = 0; words[i] != NULL; i++) {
		if (strcmp(words[i], word) == 0) {
			*out = i;
			return true;
		}
		if (strcmp(words[i], small) == 0)
			return fault_small(rd, n, words[i]);
		text_add(&t, i > 0 ? ", " : "");
		text_add(&t, words[i]);
	}
	return fault_here(rd, n,
	    message_with(
		M_ROUTINE_CHOICE, TEXT(n->key), TEXT(word), TEXT(list)));
}

bool value_yes_no(struct reader *rd, const struct node *n, bool *out)
{
	const char *word = "";

	if (n == NULL || !value_word(rd, n, n->key, &word))
		return false;
	if (strcmp(word, "yes") != 0 && strcmp(word, "no") != 0)
		return fault_here(rd, n,
		    message_with(M_ROUTINE_YES_NO, TEXT(n->key), TEXT(word)));
	*out = strcmp(word, "yes") == 0;
	return true;
}

bool value_because(struct reader *rd, const struct node *map)
{
	const struct node *n = node_get(map, "because");
	const char *word;

	if (n == NULL)
		return false;
	if (n->kind == NODE_WORD && n->word[strspn(n->word, " .\t\n")] == '\0')
		return fault_here(rd, n, message_of(M_ROUTINE_BECAUSE_EMPTY));
	return value_word(rd, n, n->key, &word);
}
