/*
 * sound_keep.c - the keeper's process: makes children, reaps them, keeps quiet
 *
 *	socket   orders, and its end
 *	pipe     what the child prints
 *	SIGCHLD  taken only while waiting, so none is missed
 *
 * It is in a session of its own: a key that stops or ends evenhand does not
 * reach it, so sound never ends with a click.
 */
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/select.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include "evenhand/world/clock.h"
#include "sound_link.h"
#include "sound_log.h"

enum {
	LOG_PAUSE_MS = 50, /* between two drains */
	END_MS = 1000,	   /* a child may take so long to end by itself */
	STUCK_MS = 2000,   /* a killed child that does not die */
};

/* A child, the one that sounds or lists, or the one that hears. */
struct kept {
	int pipe; /* -1: it does not print */
	pid_t child;
	int32_t number;	 /* the child's */
	bool owed;	 /* an order waits for the child to be gone */
	int64_t kill_ms; /* when the child is killed or given up; 0 never */
	bool killed;
	struct sound_request next;
};

enum { SOUNDING, HEARING, KINDS };

struct keep {
	int socket;
	bool ending; /* evenhand is gone */
	struct kept kept[KINDS];
	size_t had; /* bytes of a request that came in part */
	struct sound_request request;
	struct sound_shared *shared;
	const char *program;
	char layout[SOUND_LAYOUT_BYTES];
	struct sound_log log;
	int64_t log_ms; /* the next drain */
};

/* --- The child ------------------------------------------------------- */

static void report(struct keep *k, int32_t number, int status)
{
	struct sound_report r = { number, status };

	if (!k->ending)
		send(k->socket, &r, sizeof r, 0);
}

static struct kept *kept_for(struct keep *k, int32_t task)
{
	return &k->kept[task == SOUND_HEAR ? HEARING : SOUNDING];
}

/* At first memory is clear, and pages that nobody touches cost nothing. */
static void give_order(
    struct keep *k, const struct kept *c, const struct sound_order *o)
{
	struct sound_hearing *h = sound_hearing(k->shared);

	if (o->task == SOUND_HEAR) {
		if (c->number > 0)
			sound_hearing_clear(h);
		h->order = *o;
		hearing_phase_set(h, SOUND_BEGINS);
	} else {
		if (c->number > 0)
			sound_shared_clear(k->shared);
		k->shared->order = *o;
		sound_phase_set(k->shared, SOUND_BEGINS);
	}
	k->shared->keeper = (int32_t)getpid();
}

/* What a child said last is read before its pipe is closed. */
static void let_go(struct keep *k, struct kept *c)
{
	if (c->pipe < 0)
		return;
	sound_log_drain(&k->log, c->pipe);
	close(c->pipe);
	c->pipe = -1;
}

static void make(struct keep *k, struct kept *c, const struct sound_order *o)
{
	struct sound_started started = { k->program, k->layout, o->task, -1,
		getpid() };
	int out[2];

	c->owed = false;
	c->killed = false;
	c->kill_ms = 0;
	give_order(k, c, o);
	c->number = o->number;
	let_go(k, c);
	if (pipe(out) != 0) {
		report(k, o->number, SOUND_UNMADE);
		return;
	}
	fcntl(out[0], F_SETFL, O_NONBLOCK);
	fcntl(out[1], F_SETFL, O_NONBLOCK);
	started.out = out[1];
	c->child = fork();
	if (c->child == 0)
		sound_start(&started);
	close(out[1]);
	c->pipe = out[0];
	if (c->child < 0)
		report(k, o->number, SOUND_UNMADE);
}

static void kill_child(struct kept *c)
{
	if (c->child <= 0 || c->killed)
		return;
	kill(c->child, SIGKILL);
	c->killed = true;
	c->kill_ms = clock_steady_ms() + STUCK_MS;
}

/* The child is gone, or as good as. */
static void child_over(struct keep *k, struct kept *c, int status)
{
	c->child = 0;
	c->kill_ms = 0;
	report(k, c->number, status);
	if (c->owed && !k->ending)
		make(k, c, &c->next.order);
}

static void reap(struct keep *k)
{
	int status;
	pid_t pid;

	while ((pid = waitpid(-1, &status, WNOHANG)) > 0)
		for (int i = 0; i < KINDS; i++)
			if (pid == k->kept[i].child) {
				child_over(k, &k->kept[i], status);
				break;
			}
}

static void on_time(struct keep *k)
{
	for (int i = 0; i < KINDS; i++) {
		struct kept *c = &k->kept[i];

		if (c->kill_ms == 0 || clock_steady_ms() < c->kill_ms)
			continue;
		if (c->killed)
			child_over(k, c, SOUND_GIVEN_UP);
		else
			kill_child(c);
	}
}

/* --- evenhand --------------------------------------------------------- */

static void obey_kill(struct keep *k, int32_t number)
{
	for (int i = 0; i < KINDS; i++) {
		struct kept *c = &k->kept[i];

		if (c->owed && number == c->next.order.number) {
			c->owed = false;
			report(k, number, SOUND_GIVEN_UP);
		} else if (number == c->number) {
			kill_child(c);
		}
	}
}

static void obey(struct keep *k)
{
	struct kept *c = kept_for(k, k->request.order.task);

	if (k->request.ask == SOUND_KILL) {
		obey_kill(k, k->request.order.number);
		return;
	}
	if (c->child <= 0) {
		make(k, c, &k->request.order);
		return;
	}
	c->next = k->request;
	c->owed = true;
	if (c->kill_ms == 0)
		c->kill_ms = clock_steady_ms() + END_MS;
}

/*
 * evenhand is gone, and did perhaps not say so: what sounds fades out, and what
 * hears has nothing to end.
 */
static void end(struct keep *k)
{
	struct kept *c = &k->kept[SOUNDING];

	k->ending = true;
	atomic_store_explicit(
	    &k->shared->quit.value, c->number, memory_order_release);
	if (c->kill_ms == 0)
		c->kill_ms = clock_steady_ms() + END_MS;
	kill_child(&k->kept[HEARING]);
}

static void hear(struct keep *k)
{
	ssize_t got;

	for (;;) {
		got = recv(k->socket, (char *)&k->request + k->had,
		    sizeof k->request - k->had, 0);
		if (got < 0 && errno == EINTR)
			continue;
		if (got < 0 && (errno == EAGAIN || errno == EWOULDBLOCK))
			return;
		if (got <= 0) {
			end(k);
			return;
		}
		k->had += (size_t)got;
		if (k->had < sizeof k->request)
			continue;
		k->had = 0;
		obey(k);
	}
}

/* --- Waiting ----------------------------------------------------------- */

static bool any_child(const struct keep *k)
{
	return k->kept[SOUNDING].child > 0 || k->kept[HEARING].child > 0;
}

static bool any_pipe(const struct keep *k)
{
	return k->kept[SOUNDING].pipe >= 0 || k->kept[HEARING].pipe >= 0;
}

/* How long to wait at most; NULL for as long as it takes. */
static struct timespec *patience(
    const struct keep *k, bool log_waits, struct timespec *t)
{
	int64_t now = clock_steady_ms(),
		until = log_waits ? k->log_ms : INT64_MAX;

	for (int i = 0; i < KINDS; i++) {
		int64_t kill_ms = k->kept[i].kill_ms;

		if (kill_ms > 0 && kill_ms < until)
			until = kill_ms;
	}
	if (until == INT64_MAX)
		return NULL;
	until = until > now ? until - now : 0;
	*t = (struct timespec) { .tv_sec = (time_t)(until / 1000),
		.tv_nsec = (long)(until % 1000 * 1000000) };
	return t;
}

static void drain(struct keep *k, struct kept *c)
{
	k->log_ms = clock_steady_ms() + LOG_PAUSE_MS;
	if (sound_log_drain(&k->log, c->pipe))
		return;
	close(c->pipe);
	c->pipe = -1;
}

static void wait_for_something(struct keep *k, const sigset_t *mask)
{
	bool log_waits = any_pipe(k) && clock_steady_ms() < k->log_ms;
	struct timespec t;
	fd_set set;
	int high = -1;

	FD_ZERO(&set);
	if (!k->ending) {
		FD_SET(k->socket, &set);
		high = k->socket;
	}
	for (int i = 0; i < KINDS && !log_waits; i++)
		if (k->kept[i].pipe >= 0) {
			FD_SET(k->kept[i].pipe, &set);
			high = k->kept[i].pipe > high ? k->kept[i].pipe : high;
		}
	if (pselect(high + 1, &set, NULL, NULL, patience(k, log_waits, &t),
		mask) <= 0)
		return;
	for (int i = 0; i < KINDS; i++)
		if (k->kept[i].pipe >= 0 && FD_ISSET(k->kept[i].pipe, &set))
			drain(k, &k->kept[i]);
	if (!k->ending && FD_ISSET(k->socket, &set))
		hear(k);
}

_Noreturn void sound_keep(const struct sound_keep *given)
{
	struct keep k = {
		.kept = { { .pipe = -1 }, { .pipe = -1 } },
		.shared = given->shared,
		.program = given->program,
		.log = *given->log,
	};
	sigset_t held, mask;

	setsid();
	sound_signals();
	k.socket = sound_descriptors(given);
	sound_shared_layout(k.layout, sizeof k.layout);
	sigemptyset(&mask);
	sigemptyset(&held);
	sigaddset(&held, SIGCHLD);
	sigprocmask(SIG_SETMASK, &held, NULL);
	while (!k.ending || any_child(&k)) {
		wait_for_something(&k, &mask);
		reap(&k);
		on_time(&k);
	}
	for (int i = 0; i < KINDS; i++)
		let_go(&k, &k.kept[i]);
	_exit(EXIT_SUCCESS);
}
