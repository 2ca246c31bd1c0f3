/*
 * so_far.c - how many of many are done, on one line that is written over
 */
#include "so_far.h"

#include <unistd.h>

#include "evenhand/base/text.h"

enum { WORDS_BYTES = 200 };

/* Nobody is told when standard error is gone. */
static void put(const struct text *t)
{
	if (write(STDERR_FILENO, t->bytes, t->length) < 0)
		return;
}

void so_far_tell(struct so_far *s, int done, int all)
{
	struct message m = message_with(s->sentence, WHOLE(done), WHOLE(all));
	char words[WORDS_BYTES], bytes[WORDS_BYTES + 1];
	struct text t = text_in(bytes, sizeof(bytes));

	if (all < s->many || (done % s->each != 0 && done < all) ||
	    isatty(STDERR_FILENO) != 1)
		return;
	message_text(&m, words, sizeof(words));
	text_format(&t, "\r%s", words);
	put(&t);
	s->told = true;
	if (done == all)
		so_far_end(s);
}

void so_far_end(struct so_far *s)
{
	char bytes[] = "\n";

	if (s->told)
		put(&(struct text) { .bytes = bytes, .length = 1 });
	s->told = false;
}
