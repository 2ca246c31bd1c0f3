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

struct keep {
	int socket;
	int pipe; /* -1: no child prints */
	pid_t child;
	int32_t number;	 /* the child's */
	bool owed;	 /* an order waits for the child to be gone */
	bool ending;	 /* evenhand is gone */
	int64_t kill_ms; /* when the child is killed or given up; 0 never */
	bool killed;
	struct sound_request next;
	size_t had; /* bytes of a request that came in part */
	struct sound_request request;
	struct sound_shared *shared;
	const char *program;
	char layout[SOUND_LAYOUT_BYTES];
	struct sound_log log;
	int64_t log_ms; /* the next drain */
};

static int64_t now_ms(void)
{
	return clock_steady_ns() / 1000000;
}

static void nothing(int number)
{
	(void)number;
}

static void ignore_all(void)
{
	static const int numbers[] = { SIGINT, SIGHUP, SIGTERM, SIGQUIT,
		SIGTSTP, SIGTTIN, SIGTTOU, SIGPIPE, SIGWINCH, SIGUSR1, SIGUSR2,
		SIGALRM, SIGXFSZ }; /* a log larger than files may be here */
	struct sigaction a = { .sa_handler = SIG_IGN };

	sigemptyset(&a.sa_mask);
	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++)
		sigaction(numbers[i], &a, NULL);
	a.sa_handler = SIG_DFL;
	sigaction(SIGSEGV, &a, NULL);
	sigaction(SIGBUS, &a, NULL);
	sigaction(SIGABRT, &a, NULL);
	a.sa_handler = nothing;
	sigaction(SIGCHLD, &a, NULL);
}

/* --- The child ------------------------------------------------------- */

static void report(struct keep *k, int32_t number, int status)
{
	struct sound_report r = { number, status };

	if (!k->ending)
		send(k->socket, &r, sizeof r, 0);
}

static void make(struct keep *k, const struct sound_order *o)
{
	pid_t keeper = getpid();
	int out[2];

	k->owed = false;
	k->killed = false;
	k->kill_ms = 0;
	/* At first it is clear, and pages that nobody touches cost nothing. */
	if (k->number > 0)
		sound_shared_clear(k->shared);
	k->number = o->number;
	k->shared->order = *o;
	k->shared->keeper = (int32_t)keeper;
	sound_phase_set(k->shared, SOUND_BEGINS);
	if (k->pipe >= 0)
		close(k->pipe);
	k->pipe = -1;
	if (pipe(out) != 0) {
		report(k, o->number, -1);
		return;
	}
	fcntl(out[0], F_SETFL, O_NONBLOCK);
	fcntl(out[1], F_SETFL, O_NONBLOCK);
	k->child = fork();
	if (k->child == 0)
		sound_start(k->program, k->layout, out[1], keeper);
	close(out[1]);
	k->pipe = out[0];
	if (k->child < 0)
		report(k, o->number, -1);
}

static void kill_child(struct keep *k)
{
	if (k->child <= 0 || k->killed)
		return;
	kill(k->child, SIGKILL);
	k->killed = true;
	k->kill_ms = now_ms() + STUCK_MS;
}

/* The child is gone, or as good as. */
static void child_over(struct keep *k, int status)
{
	k->child = 0;
	k->kill_ms = 0;
	report(k, k->number, status);
	if (k->owed && !k->ending)
		make(k, &k->next.order);
}

static void reap(struct keep *k)
{
	int status;
	pid_t pid;

	while ((pid = waitpid(-1, &status, WNOHANG)) > 0)
		if (pid == k->child)
			child_over(k, status);
}

static void on_time(struct keep *k)
{
	if (k->kill_ms == 0 || now_ms() < k->kill_ms)
		return;
	if (k->killed)
		child_over(k, -1);
	else
		kill_child(k);
}

/* --- evenhand --------------------------------------------------------- */

static void obey_kill(struct keep *k, int32_t number)
{
	if (k->owed && number == k->next.order.number) {
		k->owed = false;
		report(k, number, -1);
	} else if (number == k->number) {
		kill_child(k);
	}
}

static void obey(struct keep *k)
{
	if (k->request.ask == SOUND_KILL) {
		obey_kill(k, k->request.order.number);
		return;
	}
	if (k->child <= 0) {
		make(k, &k->request.order);
		return;
	}
	k->next = k->request;
	k->owed = true;
	if (k->kill_ms == 0)
		k->kill_ms = now_ms() + END_MS;
}

/* evenhand is gone, and did perhaps not say so: the child fades out. */
static void end(struct keep *k)
{
	k->ending = true;
	atomic_store_explicit(
	    &k->shared->quit.value, k->number, memory_order_release);
	if (k->kill_ms == 0)
		k->kill_ms = now_ms() + END_MS;
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

/* How long to wait at most; NULL for as long as it takes. */
static struct timespec *patience(
    const struct keep *k, bool log_waits, struct timespec *t)
{
	int64_t now = now_ms(), until = INT64_MAX;

	if (k->kill_ms > 0)
		until = k->kill_ms;
	if (log_waits && k->log_ms < until)
		until = k->log_ms;
	if (until == INT64_MAX)
		return NULL;
	until = until > now ? until - now : 0;
	*t = (struct timespec) { .tv_sec = (time_t)(until / 1000),
		.tv_nsec = (long)(until % 1000 * 1000000) };
	return t;
}

static void drain(struct keep *k)
{
	k->log_ms = now_ms() + LOG_PAUSE_MS;
	if (sound_log_drain(&k->log, k->pipe))
		return;
	close(k->pipe);
	k->pipe = -1;
}

static void wait_for_something(struct keep *k, const sigset_t *mask)
{
	bool log_waits = k->pipe >= 0 && now_ms() < k->log_ms;
	struct timespec t;
	fd_set set;
	int high = -1;

	FD_ZERO(&set);
	if (!k->ending) {
		FD_SET(k->socket, &set);
		high = k->socket;
	}
	if (k->pipe >= 0 && !log_waits) {
		FD_SET(k->pipe, &set);
		high = k->pipe > high ? k->pipe : high;
	}
	if (pselect(high + 1, &set, NULL, NULL, patience(k, log_waits, &t),
		mask) <= 0)
		return;
	if (k->pipe >= 0 && FD_ISSET(k->pipe, &set))
		drain(k);
	if (!k->ending && FD_ISSET(k->socket, &set))
		hear(k);
}

_Noreturn void sound_keep(const struct sound_keep *given)
{
	struct keep k = {
		.pipe = -1, .shared = given->shared, .program = given->program
	};
	sigset_t held, mask;

	setsid();
	ignore_all();
	k.socket = sound_descriptors(given);
	sound_shared_layout(k.layout, sizeof k.layout);
	sigemptyset(&mask);
	sigemptyset(&held);
	sigaddset(&held, SIGCHLD);
	sigprocmask(SIG_SETMASK, &held, NULL);
	sound_log_begin(&k.log, given->log);
	while (!k.ending || k.child > 0) {
		wait_for_something(&k, &mask);
		reap(&k);
		on_time(&k);
	}
	_exit(EXIT_SUCCESS);
}
