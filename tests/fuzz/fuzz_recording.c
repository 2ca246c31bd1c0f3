/*
 * fuzz_recording.c - random bytes as recordings
 *
 * The bytes are a file without a name, read as evenhand-file reads one; what
 * comes out is looked at as evenhand does, and its first half second is heard.
 * libsndfile is not built with the checks here; what crosses over is.
 */
#define _GNU_SOURCE /* memfd_create */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <unistd.h>

#include "evenhand/listen/tape.h"
#include "evenhand/world/audio_file.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { HEARD_MOST = 24000, GIVEN_MOST = 1 << 22 };

/* What comes out, put together again as recording.c does. */
struct stream {
	struct audio_head head;
	struct audio_tail tail;
	bool headed, tailed;
	uint32_t left; /* floats of a block that were counted */
	int64_t frames;
	struct tape *tape;
};

static void must(bool good, const char *what)
{
	if (good)
		return;
	fprintf(stderr, "%s\n", what);
	abort();
}

static void hear(struct stream *s, const float *x, size_t n)
{
	static struct stretch stretch;

	for (size_t i = 0; i < n; i++)
		must(x[i] - x[i] == 0, "a sample is no number");
	s->frames += (int64_t)n;
	if (!s->tape || s->frames > HEARD_MOST)
		return;
	tape_samples(s->tape, x, n);
	while (tape_next(s->tape, &stretch))
		must(stretch.to_s > stretch.from_s, "a stretch of no length");
}

static void begin(struct stream *s, const void *bytes, size_t length)
{
	struct stretch_asked nothing = { .known = false };

	must(length == sizeof(s->head), "a head of another size");
	memcpy(&s->head, bytes, length);
	s->headed = true;
	must(s->head.layout == AUDIO_LAYOUT, "a head of another layout");
	must(memchr(s->head.format, 0, sizeof(s->head.format)) != NULL,
	    "a format without an end");
	if (s->head.rate >= TAPE_RATE_MIN && s->head.rate <= TAPE_RATE_MAX)
		s->tape = tape_new(s->head.rate, &nothing);
}

/* Bytes come in the pieces in which they are given. */
static bool take(void *to, const void *bytes, size_t length)
{
	struct stream *s = to;

	must(!s->tailed, "something behind the end");
	if (!s->headed) {
		begin(s, bytes, length);
	} else if (s->left > 0) {
		must(length == s->left * sizeof(float), "a block cut");
		hear(s, bytes, s->left);
		s->left = 0;
	} else if (length == sizeof(s->left)) {
		memcpy(&s->left, bytes, length);
		must(s->left <= AUDIO_BLOCK_MAX, "a block too large");
	} else {
		must(length == sizeof(s->tail), "no tail");
		memcpy(&s->tail, bytes, length);
		s->tailed = true;
		must(s->tail.frames == s->frames, "frames miscounted");
	}
	return s->frames < GIVEN_MOST;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static struct stretch stretch;
	struct stream s = { .headed = false };
	int file = memfd_create("recording", MFD_CLOEXEC);
	enum audio_how how;

	if (file < 0 || write(file, data, size) != (ssize_t)size)
		abort();
	how = audio_read(file, size > 0 ? data[size - 1] % 3 : 0, take, &s);
	must(how == AUDIO_GOOD ? s.tailed : true, "good, and not whole");
	must(how == AUDIO_GOOD || how == AUDIO_UNKNOWN ||
		how == AUDIO_DAMAGED || how == AUDIO_NO_CHANNEL ||
		how == AUDIO_LOST,
	    "an answer that is none");
	if (s.tape) {
		tape_end(s.tape);
		while (tape_next(s.tape, &stretch))
			must(stretch.n > 0, "an empty stretch");
	}
	tape_free(s.tape);
	close(file);
	return 0;
}
