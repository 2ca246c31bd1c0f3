/*
 * sound_keeper.c - evenhand's end of the socket to the keeper
 *
 * Nothing here waits: the socket does not block, and a keeper that does not
 * take a request any more counts as gone.
 */
#include "evenhand/world/sound_keeper.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include "evenhand/world/paths.h"
#include "sound_link.h"
#include "sound_log.h"

/* Where a write to nobody would be a signal, and there is no flag for it. */
#ifndef MSG_NOSIGNAL
#define MSG_NOSIGNAL 0
#endif

struct sound_keeper {
	struct sound_shared *shared;
	int socket;
	pid_t pid;
	bool gone;
	int32_t number; /* of the last child */
	size_t had;	/* bytes of a report that came in part */
	char report[sizeof(struct sound_report)];
};

static bool prepare(int fd)
{
#ifdef SO_NOSIGPIPE
	int on = 1;

	setsockopt(fd, SOL_SOCKET, SO_NOSIGPIPE, &on, sizeof on);
#endif
	return fcntl(fd, F_SETFD, FD_CLOEXEC) == 0 &&
	    fcntl(fd, F_SETFL, O_NONBLOCK) == 0;
}

/* The keeper's process begins here. */
static bool fork_keeper(struct sound_keeper *k, int memory, const char *program)
{
	char path[PATH_BYTES_MAX];
	struct sound_log log;
	int pair[2];
	struct fault f;

	if (!path_sound_log(path, sizeof path, &f))
		path[0] = '\0';
	/* Not by the keeper, who may wake when the next one has written. */
	sound_log_begin(&log, path);
	if (socketpair(AF_UNIX, SOCK_STREAM, 0, pair) != 0)
		return false;
	k->socket = pair[0];
	k->pid = prepare(pair[0]) && prepare(pair[1]) ? fork() : -1;
	if (k->pid == 0) {
		sound_keep(&(struct sound_keep) {
		    pair[1], memory, k->shared, program, &log });
	}
	close(pair[1]);
	if (k->pid < 0)
		close(pair[0]);
	return k->pid > 0;
}

struct sound_keeper *sound_keeper_open(const char *program, struct fault *f)
{
	struct sound_keeper *k = calloc(1, sizeof *k);
	bool kept = false;
	int memory;

	if (k && (k->shared = sound_shared_make(&memory))) {
		kept = fork_keeper(k, memory, program);
		close(memory);
		if (!kept)
			sound_shared_leave(k->shared);
	}
	if (kept)
		return k;
	free(k);
	fault_set(f, message_of(M_DEVICE_NO_KEEPER));
	return NULL;
}

void sound_keeper_close(struct sound_keeper *k)
{
	if (!k)
		return;
	close(k->socket);
	sound_shared_leave(k->shared);
	/* It ends in a moment, after this process or before. */
	waitpid(k->pid, NULL, WNOHANG);
	free(k);
}

struct sound_shared *keeper_shared(struct sound_keeper *k)
{
	return k->shared;
}

static void request(struct sound_keeper *k, const struct sound_request *r)
{
	if (!k->gone &&
	    send(k->socket, r, sizeof *r, MSG_NOSIGNAL) != sizeof *r)
		k->gone = true;
}

int32_t keeper_make(struct sound_keeper *k, const struct sound_order *o)
{
	struct sound_request r = { .ask = SOUND_MAKE, .order = *o };

	r.order.number = ++k->number;
	request(k, &r);
	return k->number;
}

void keeper_kill(struct sound_keeper *k, int32_t number)
{
	struct sound_request r = { .ask = SOUND_KILL, .order.number = number };

	request(k, &r);
}

void keeper_end(struct sound_keeper *k, int32_t number)
{
	atomic_store_explicit(
	    &k->shared->quit.value, number, memory_order_release);
}

bool keeper_report(struct sound_keeper *k, struct sound_report *r)
{
	ssize_t got;

	while (!k->gone && k->had < sizeof *r) {
		got = recv(
		    k->socket, k->report + k->had, sizeof *r - k->had, 0);
		if (got > 0)
			k->had += (size_t)got;
		else if (got < 0 && errno == EINTR)
			continue;
		else if (got < 0 && (errno == EAGAIN || errno == EWOULDBLOCK))
			return false;
		else
			k->gone = true;
	}
	if (k->had < sizeof *r)
		return false;
	memcpy(r, k->report, sizeof *r);
	k->had = 0;
	return true;
}

int report_exit(const struct sound_report *r)
{
	int status = WIFEXITED(r->status) ? WEXITSTATUS(r->status) : 0;

	if (r->status == SOUND_UNMADE)
		return SOUND_EXIT_NO_ROOM;
	return status == SOUND_EXIT_OTHER || status == SOUND_EXIT_NO_ROOM ||
		status == SOUND_EXIT_MISSING
	    ? status
	    : 0;
}

bool keeper_gone(const struct sound_keeper *k)
{
	return k->gone;
}
