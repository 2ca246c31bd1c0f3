/*
 * journal_queue.c - the queue, and the journal's thread behind it
 *
 * Whoever puts a row waits for nothing but another pointer being changed.
 * The thread takes all that is there at once and keeps it in one go; while it
 * does, new rows gather.
 */
#include "journal_parts.h"
#include "thread_signals.h"

/* Takes what is in the queue; NULL when it is empty.  Queue lock held. */
static struct row *take(struct journal *j)
{
	struct row *rows = j->first;

	j->first = NULL;
	j->last = &j->first;
	return rows;
}

/* Keeps rows behind those that could not be kept before. */
static void keep(struct journal *j, struct row *rows)
{
	struct row **end;
	int64_t count = 0;

	pthread_mutex_lock(&j->base_lock);
	for (end = &j->unsaved; *end != NULL; end = &(*end)->next)
		continue;
	*end = rows;
	journal_remember(j, rows);
	for (; rows != NULL; rows = rows->next)
		count++;
	journal_keep(j);
	pthread_mutex_unlock(&j->base_lock);

	pthread_mutex_lock(&j->queue_lock);
	j->taken += count;
	pthread_cond_broadcast(&j->handled);
	pthread_mutex_unlock(&j->queue_lock);
}

static void *work(void *context)
{
	struct journal *j = context;

	for (;;) {
		struct row *rows;

		pthread_mutex_lock(&j->queue_lock);
		while (j->first == NULL && !j->stop)
			pthread_cond_wait(&j->wake, &j->queue_lock);
		rows = take(j);
		pthread_mutex_unlock(&j->queue_lock);
		if (rows == NULL)
			return NULL;
		keep(j, rows);
	}
}

void journal_start(struct journal *j)
{
	sigset_t before;

	thread_signals_hold(&before);
	j->threaded = pthread_create(&j->thread, NULL, work, j) == 0;
	thread_signals_release(&before);
}

void journal_put(struct journal *j, struct row *rows)
{
	if (rows == NULL) {
		journal_tell(j, TROUBLE_NO_MEMORY, j->path);
		return;
	}
	pthread_mutex_lock(&j->queue_lock);
	*j->last = rows;
	for (; rows != NULL; rows = rows->next) {
		j->last = &rows->next;
		j->put++;
	}
	rows = j->threaded ? NULL : take(j);
	pthread_cond_signal(&j->wake);
	pthread_mutex_unlock(&j->queue_lock);
	/* A system that has no thread left for us keeps rows the slow way. */
	if (rows != NULL)
		keep(j, rows);
}

void journal_flush(struct journal *j)
{
	pthread_mutex_lock(&j->queue_lock);
	while (j->taken < j->put)
		pthread_cond_wait(&j->handled, &j->queue_lock);
	pthread_mutex_unlock(&j->queue_lock);
}

void journal_stop(struct journal *j)
{
	if (!j->threaded)
		return;
	pthread_mutex_lock(&j->queue_lock);
	j->stop = true;
	pthread_cond_signal(&j->wake);
	pthread_mutex_unlock(&j->queue_lock);
	pthread_join(j->thread, NULL);
	j->threaded = false;
}
