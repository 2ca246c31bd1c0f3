/*
 * tongue_fits.c - whether a sentence agrees with its signature
 */
#include <string.h>

#include "evenhand/base/tongue.h"

enum { SENTENCE_MAX = 1024 }; /* longer than any screen */

/* Whether a place, "0}" or "0|bow|bows}", is sound; sets what it uses and ends. */
static bool place_fits(
    const char *place, const char *signature, bool *used, const char **end)
{
	size_t index = (size_t)(*place - '0'), length;
	const char *bar;

	*end = strchr(place, '}');
	if (!*end || index >= strlen(signature))
		return false;
	used[index] = true;
	if (place[1] != '|')
		return place + 1 == *end;
	length = (size_t)(*end - place);
	bar = memchr(place + 2, '|', length - 2);
	return signature[index] == 'w' && bar &&
	    !memchr(bar + 1, '|', (size_t)(*end - bar - 1)) &&
	    !memchr(place, '{', length);
}

static bool is_clean(const char *sentence)
{
	char clean[SENTENCE_MAX];

	text_clean(clean, sizeof(clean), sentence);
	return strcmp(clean, sentence) == 0;
}

bool tongue_fits(const char *signature, const char *sentence)
{
	bool used[MESSAGE_ARGS_MAX] = { false };

	if (strlen(signature) > MESSAGE_ARGS_MAX ||
	    strlen(sentence) >= SENTENCE_MAX || !is_clean(sentence))
		return false;
	for (const char *s = sentence, *end; *s; s++) {
		if (*s != '{' || s[1] < '0' || s[1] > '9')
			continue;
		if (!place_fits(s + 1, signature, used, &end))
			return false;
		s = end;
	}
	for (size_t i = 0; signature[i]; i++)
		if (!used[i])
			return false;
	return true;
}
