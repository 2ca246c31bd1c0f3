/*
 * listener.c - the queue to the listener's thread, and its answers
 */
#include "evenhand/world/listener.h"

#include <pthread.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>

#include "listener_parts.h"
#include "thread_signals.h"

enum { NICER = 5 };

struct listener {
	pthread_t thread;

	/* Under the lock. */
	pthread_mutex_t lock;
	pthread_cond_t wake;
	struct order *first, **last;
	int64_t waiting; /* ms of samples in the queue */
	struct answer *answer, **answer_last;
	int ended, answered;
	struct judged judged;
	bool works; /* the thread, on an order */
	bool stop;
};

/* --- the thread --- */

/* Waits for the next order; NULL when it is to stop. */
static struct order *next(struct listener *l)
{
	struct order *o;

	pthread_mutex_lock(&l->lock);
	l->works = false;
	while (l->first == NULL && !l->stop)
		pthread_cond_wait(&l->wake, &l->lock);
	o = l->stop ? NULL : l->first;
	l->works = o != NULL;
	if (o != NULL) {
		l->first = o->next;
		if (l->first == NULL)
			l->last = &l->first;
		l->waiting -= o->ms;
	}
	pthread_mutex_unlock(&l->lock);
	return o;
}

/* Whether the thread is wanted for nothing any more. */
static bool stopped(void *context)
{
	struct listener *l = context;
	bool stop;

	pthread_mutex_lock(&l->lock);
	stop = l->stop;
	pthread_mutex_unlock(&l->lock);
	return stop;
}

/* An answer of the thread; without heard there is none for that turn. */
static void answer(void *context, int number, const struct turn_heard *heard,
    struct judged judged)
{
	struct listener *l = context;
	struct answer *a = heard ? calloc(1, sizeof(*a)) : NULL;

	if (a != NULL) {
		a->number = number;
		a->heard = *heard;
	}
	pthread_mutex_lock(&l->lock);
	if (a != NULL) {
		*l->answer_last = a;
		l->answer_last = &a->next;
	}
	l->answered++;
	l->judged = judged;
	pthread_mutex_unlock(&l->lock);
}

static void *work(void *context)
{
	struct listener *l = context;
	struct attention a;
	struct order *o;

#ifdef __linux__
	/* There a thread has a priority of its own. */
	setpriority(PRIO_PROCESS, 0, NICER);
#endif
	attention_begin(&a, answer, stopped, l);
	while ((o = next(l)) != NULL) {
		attention_take(&a, o);
		free(o);
	}
	attention_end(&a);
	return NULL;
}

/* --- the main thread --- */

struct listener *listener_open(void)
{
	struct listener *l = calloc(1, sizeof(*l));
	sigset_t before;
	bool threaded;

	if (l == NULL)
		return NULL;
	l->last = &l->first;
	l->answer_last = &l->answer;
	pthread_mutex_init(&l->lock, NULL);
	pthread_cond_init(&l->wake, NULL);
	thread_signals_hold(&before);
	threaded = pthread_create(&l->thread, NULL, work, l) == 0;
	thread_signals_release(&before);
	if (threaded)
		return l;
	pthread_cond_destroy(&l->wake);
	pthread_mutex_destroy(&l->lock);
	free(l);
	return NULL;
}

void listener_close(struct listener *l)
{
	struct turn_heard heard;
	int number;

	if (l == NULL)
		return;
	pthread_mutex_lock(&l->lock);
	l->stop = true;
	pthread_cond_signal(&l->wake);
	pthread_mutex_unlock(&l->lock);
	pthread_join(l->thread, NULL);
	while (l->first != NULL) {
		struct order *o = l->first;

		l->first = o->next;
		free(o);
	}
	while (listener_next(l, &number, &heard))
		continue;
	pthread_cond_destroy(&l->wake);
	pthread_mutex_destroy(&l->lock);
	free(l);
}

/* An order with room behind it for so many samples; NULL without memory. */
static struct order *order_new(enum order_kind kind, size_t samples)
{
	struct order *o = calloc(1, sizeof(*o) + samples * sizeof(float));

	if (o != NULL)
		o->kind = kind;
	return o;
}

static void put(struct listener *l, struct order *o)
{
	pthread_mutex_lock(&l->lock);
	if (o->kind == ORDER_SAMPLES &&
	    l->waiting + o->ms > LISTENER_QUEUE_S * INT64_C(1000)) {
		pthread_mutex_unlock(&l->lock);
		free(o);
		return;
	}
	*l->last = o;
	l->last = &o->next;
	l->waiting += o->ms;
	l->ended += o->kind == ORDER_END;
	pthread_cond_signal(&l->wake);
	pthread_mutex_unlock(&l->lock);
}

void listener_take(
    struct listener *l, const struct heard_samples *h, const float *x)
{
	struct order *o = order_new(ORDER_SAMPLES, h->count);

	if (o == NULL)
		return;
	o->samples = *h;
	o->ms = h->rate > 0 ? (int64_t)h->count * 1000 / h->rate : 0;
	memcpy(o->x, x, h->count * sizeof(*x));
	put(l, o);
}

void listener_begin(struct listener *l, const struct listener_turn *t)
{
	struct order *o = order_new(ORDER_BEGIN, 0);

	if (o == NULL)
		return;
	o->turn = *t;
	put(l, o);
}

void listener_end(struct listener *l, int number, int bows)
{
	struct order *o = order_new(ORDER_END, 0);

	if (o == NULL)
		return;
	o->number = number;
	o->bows = bows;
	put(l, o);
}

static void put_bare(struct listener *l, enum order_kind kind)
{
	struct order *o = order_new(kind, 0);

	if (o != NULL)
		put(l, o);
}

void listener_drop(struct listener *l)
{
	put_bare(l, ORDER_DROP);
}

void listener_finish(struct listener *l)
{
	put_bare(l, ORDER_FINISH);
}

bool listener_next(struct listener *l, int *number, struct turn_heard *out)
{
	struct answer *a;

	pthread_mutex_lock(&l->lock);
	a = l->answer;
	if (a != NULL) {
		l->answer = a->next;
		if (l->answer == NULL)
			l->answer_last = &l->answer;
	}
	pthread_mutex_unlock(&l->lock);
	if (a == NULL)
		return false;
	*number = a->number;
	*out = a->heard;
	free(a);
	return true;
}

int listener_waits(struct listener *l)
{
	int waits;

	pthread_mutex_lock(&l->lock);
	waits = l->ended - l->answered;
	pthread_mutex_unlock(&l->lock);
	return waits;
}

bool listener_idle(struct listener *l)
{
	bool idle;

	pthread_mutex_lock(&l->lock);
	idle = l->first == NULL && !l->works;
	pthread_mutex_unlock(&l->lock);
	return idle;
}

struct judged listener_judged(struct listener *l)
{
	struct judged judged;

	pthread_mutex_lock(&l->lock);
	judged = l->judged;
	pthread_mutex_unlock(&l->lock);
	return judged;
}
