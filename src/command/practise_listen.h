/*
 * practise_listen.h - a microphone beside the practice
 *
 *	device_hear ─▶ listener ─▶ turn_heard ─┬▶ INPUT_HEARD
 *	session: turns begin and end ─▶ listener └▶ journal_measures
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_PRACTISE_LISTEN_H
#define EVENHAND_COMMAND_PRACTISE_LISTEN_H

#include "evenhand/coach/session.h"
#include "evenhand/world/device.h"
#include "evenhand/world/latency.h"
#include "evenhand/world/listener.h"

struct practice;

enum { LISTEN_SAMPLES = 4096 };

/* Part of a practice; all zero: nobody listens. */
struct practice_listen {
	struct listener *listener;   /* NULL: nobody listens */
	bool first;		     /* it was chosen just now */
	bool told, told_lost;	     /* that it hears; that it is gone */
	bool told_judgement;	     /* that it cannot be trusted */
	enum microphone_state state; /* as last told, or passed over */
	struct message owed;	     /* of the beginning; M_NONE none */
	bool turn;		     /* one is being listened to */
	int64_t turn_frame;
	struct latencies delays; /* measured, borrowed by the device */
	float samples[LISTEN_SAMPLES];
};

/* Wishes for the microphone that is chosen; before the device is looked at. */
void listen_open(struct practice *p);

void listen_close(struct practice *p);

/* What the session's last step began, kept or broke off. */
void listen_follow(struct practice *p);
void listen_kept(struct practice *p, const struct turn_row *row);

/* Says what holds of the microphone by now, when nothing sounds. */
void listen_say(struct practice *p);

/*
 * Hands samples on and says what became of the microphone.  True: something
 * was heard of a turn, and is kept; the session is to be told.
 */
bool listen_look(struct practice *p, int *number, struct listened *heard);

/* All was played: waits a moment for what is still being measured. */
void listen_finish(struct practice *p);

#endif
