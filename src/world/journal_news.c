/*
 * journal_news.c - what is wrong with the journal, said once
 */
#include "journal_parts.h"

static enum journal_state state_of(enum trouble t)
{
	switch (t) {
	case TROUBLE_NONE:
	case TROUBLE_SLOW:
		return JOURNAL_GOOD;
	case TROUBLE_READ_ONLY:
	case TROUBLE_NEWER:
		return JOURNAL_READ_ONLY;
	default:
		return JOURNAL_SPOOL;
	}
}

/* What only adds to another trouble leaves the state as it is. */
static bool adds(enum trouble t)
{
	return t == TROUBLE_NOT_KEPT || t == TROUBLE_ELSEWHERE ||
	    t == TROUBLE_SPOOL || t == TROUBLE_SPOOL_UNREAD ||
	    t == TROUBLE_NO_MEMORY;
}

static enum message_id sentence_of(enum trouble t)
{
	static const enum message_id sentences[TROUBLES] = {
		[TROUBLE_BUSY] = M_WORLD_JOURNAL_BUSY,
		[TROUBLE_FULL] = M_WORLD_JOURNAL_FULL,
		[TROUBLE_READ_ONLY] = M_WORLD_JOURNAL_READ_ONLY,
		[TROUBLE_NEWER] = M_WORLD_JOURNAL_NEWER,
		[TROUBLE_BROKEN] = M_WORLD_JOURNAL_BROKEN,
		[TROUBLE_OTHER_FILE] = M_WORLD_JOURNAL_OTHER_FILE,
		[TROUBLE_MOVED] = M_WORLD_JOURNAL_MOVED,
		[TROUBLE_UNREACHABLE] = M_WORLD_JOURNAL_UNREACHABLE,
		[TROUBLE_SLOW] = M_WORLD_JOURNAL_SLOW,
		[TROUBLE_NOT_KEPT] = M_WORLD_JOURNAL_NOT_KEPT,
		[TROUBLE_ELSEWHERE] = M_WORLD_JOURNAL_ELSEWHERE,
		[TROUBLE_SPOOL] = M_WORLD_JOURNAL_SPOOL_DAMAGED,
		[TROUBLE_SPOOL_UNREAD] = M_WORLD_JOURNAL_SPOOL_UNREAD,
		[TROUBLE_NO_MEMORY] = M_WORLD_JOURNAL_LOST,
		[TROUBLE_STARVED] = M_WORLD_JOURNAL_STARVED,
		[TROUBLE_NO_FILES] = M_WORLD_JOURNAL_UNREACHABLE,
	};

	return sentences[t];
}

void journal_tell(struct journal *j, enum trouble trouble, const char *place)
{
	uint32_t bit = UINT32_C(1) << trouble;

	pthread_mutex_lock(&j->queue_lock);
	if (!adds(trouble))
		j->state = state_of(trouble);
	if (trouble != TROUBLE_NONE && !(j->said & bit) &&
	    j->news_count < NEWS_MAX)
		j->news[j->news_count++] = message_with(
		    sentence_of(trouble), TEXT(place));
	j->said |= bit;
	pthread_mutex_unlock(&j->queue_lock);
}

bool journal_trouble(struct journal *j, struct message *m)
{
	bool any;

	pthread_mutex_lock(&j->queue_lock);
	any = j->news_count > 0;
	if (any) {
		*m = j->news[0];
		j->news_count--;
		for (int i = 0; i < j->news_count; i++)
			j->news[i] = j->news[i + 1];
	}
	pthread_mutex_unlock(&j->queue_lock);
	return any;
}

enum journal_state journal_state(const struct journal *j)
{
	struct journal *open = (struct journal *)(uintptr_t)j;
	enum journal_state state;

	pthread_mutex_lock(&open->queue_lock);
	state = open->state;
	pthread_mutex_unlock(&open->queue_lock);
	return state;
}
