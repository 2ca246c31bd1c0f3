/*
 * listener_parts.h - what the listener's thread attends to
 *
 *	listener.c		the queue, the answers, the thread itself
 *	listener_attend.c	samples and turns brought together, in the ear
 *
 * Everything but the queue is the thread's alone.
 */
#ifndef EVENHAND_WORLD_LISTENER_PARTS_H
#define EVENHAND_WORLD_LISTENER_PARTS_H

#include "evenhand/listen/ear.h"
#include "evenhand/world/listener.h"

enum order_kind {
	ORDER_SAMPLES,
	ORDER_BEGIN,
	ORDER_END,
	ORDER_DROP,
	ORDER_FINISH
};

struct order {
	struct order *next;
	enum order_kind kind;
	int64_t ms; /* of samples */
	struct heard_samples samples;
	struct listener_turn turn; /* ORDER_BEGIN */
	int number, bows;	   /* ORDER_END */
	float x[];
};

struct answer {
	struct answer *next;
	int number;
	struct turn_heard heard;
};

typedef void answer_taker(void *context, int number,
    const struct turn_heard *heard, struct judged judged);

/* The last second and a half, so that a turn has what came before it. */
enum { RECENT_MAX = 288000 };

/* What the thread is at. */
struct attention {
	answer_taker *answer;
	bool (*stopped)(void *context);
	void *context;

	struct ear *ear;
	struct judge judge;
	int rate; /* of the microphone; 0 before its first sample */

	/* Samples that came last, one after the other. */
	float *recent; /* NULL: no memory, and nothing before a turn */
	size_t recents;
	double recent_frame; /* of the first of them */
	double frames_each;

	bool wanted; /* a turn is to be heard, ... */
	bool begun;  /* ... its first sample is in the ear, ... */
	bool ended;  /* ... and it is over */
	struct listener_turn turn;
	double first_frame; /* of its first sample */
	int number;
};

void attention_begin(struct attention *a, answer_taker *answer,
    bool (*stopped)(void *context), void *context);
void attention_take(struct attention *a, const struct order *o);
void attention_end(struct attention *a);

#endif
