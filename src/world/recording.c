/*
 * recording.c - the samples of a recording, one after the other
 */
#include "evenhand/world/recording.h"

#include <errno.h>
#include <poll.h>
#include <stdlib.h>
#include <unistd.h>

#include "evenhand/base/text.h"
#include "evenhand/world/audio_program.h"
#include "evenhand/world/file.h"

enum { PATIENCE_MS = 30000, NUMBER_BYTES = 16 };

struct recording {
	const char *path;
	struct audio_program program;
	struct audio_head head;
	struct audio_tail tail;
	bool over;
};

/* How it ended, with its place; false. */
static bool fail(struct recording *r, struct fault *f)
{
	enum audio_how how = audio_end(&r->program);

	/* It ended well, and yet all of it did not come. */
	audio_tell(how == AUDIO_GOOD ? AUDIO_BROKE : how, f);
	return fault_at(f, r->path, 0, 0);
}

/* All of it, or false: no more comes. */
static bool take(struct recording *r, void *bytes, size_t length)
{
	char *at = bytes;

	while (length > 0) {
		struct pollfd p = { r->program.fd, POLLIN, 0 };
		ssize_t got;

		if (poll(&p, 1, PATIENCE_MS) == 0) {
			audio_kill(&r->program);
			return false;
		}
		got = read(r->program.fd, at, length);
		if (got == 0 || (got < 0 && errno != EINTR))
			return false;
		at += got > 0 ? got : 0;
		length -= got > 0 ? (size_t)got : 0;
	}
	return true;
}

static bool begin(struct recording *r, int file, int channel, struct fault *f)
{
	char number[NUMBER_BYTES];
	struct text t = text_in(number, sizeof(number));
	const char *words[] = { "read", number, NULL };

	text_format(&t, "%d", channel);
	if (!audio_start(&r->program, words, file, -1) ||
	    !take(r, &r->head, sizeof(r->head)))
		return fail(r, f);
	if (r->head.layout == AUDIO_LAYOUT)
		return true;
	audio_end(&r->program);
	fault_set(f, message_of(M_AUDIO_OTHER_PROGRAM));
	return fault_at(f, r->path, 0, 0);
}

struct recording *recording_open(const char *path, int channel, struct fault *f)
{
	int file = file_open(path, f);
	struct recording *r = NULL;

	if (file < 0)
		return NULL;
	r = calloc(1, sizeof(*r));
	if (!r) {
		fault_set(f, message_of(M_WORLD_FILE_NO_MEMORY));
		fault_at(f, path, 0, 0);
	} else {
		r->path = path;
		r->program.fd = -1;
		if (!begin(r, file, channel, f)) {
			recording_close(r);
			r = NULL;
		}
	}
	close(file);
	return r;
}

const struct audio_head *recording_head(const struct recording *r)
{
	return &r->head;
}

const struct audio_tail *recording_tail(const struct recording *r)
{
	return &r->tail;
}

int recording_read(struct recording *r, float *x, struct fault *f)
{
	uint32_t count;

	if (r->over)
		return 0;
	if (!take(r, &count, sizeof(count)) || count > RECORDING_READ_MAX ||
	    !take(r, x, count * sizeof(*x)) ||
	    (count == 0 && !take(r, &r->tail, sizeof(r->tail)))) {
		fail(r, f);
		return -1;
	}
	r->over = count == 0;
	return (int)count;
}

void recording_close(struct recording *r)
{
	if (!r)
		return;
	audio_end(&r->program);
	free(r);
}
