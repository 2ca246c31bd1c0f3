/*
 * message_table.c - the one table of sentences, in English
 *
 * Sentences of other languages come with a tongue and are kept apart.
 */
#include <assert.h>

#include "evenhand/base/message.h"

struct entry {
	const char *name, *signature, *sentence;
};

#define MESSAGE(id, signature, sentence) [id] = { #id, signature, sentence },
static const struct entry table[M_COUNT] = {
	[M_NONE] = { "M_NONE", "", "" },
#include "evenhand/base/message_list.h"
};
#undef MESSAGE

static const struct entry *entry(enum message_id id)
{
	assert((int)id >= 0 && id < M_COUNT);
	return &table[id];
}

const char *message_name(enum message_id id)
{
	return entry(id)->name;
}

const char *message_signature(enum message_id id)
{
	return entry(id)->signature;
}

const char *message_english(enum message_id id)
{
	return entry(id)->sentence;
}
