/*
 * track_file.c - a track played into a file
 *
 *	passages ─▶ engine ─▶ samples ── pipe ──▶ evenhand-file ─▶ new file
 *
 * It is the engine of a live session, with the same scores at the same frames;
 * only the card is missing.  The new file has no name before it is whole.
 */
#include <errno.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "evenhand/sound/engine.h"
#include "evenhand/world/audio_program.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/file.h"
#include "options.h"
#include "track.h"

enum {
	BLOCK = 16384, /* frames: what a pipe holds */
	ALIGNED = 64,
	PATIENCE_MS = 500, /* then it is told how far it has come */
	AGAIN_MS = 100,
	WORDS_BYTES = 80,
	PERCENT = 100,
};

/* A track on its way. */
struct making {
	const struct track *track;
	struct engine *engine;
	struct audio_program program;
	int given;	  /* passages, so far */
	bool no_memory;	  /* for the head of the file */
	int64_t told_ms;  /* steady clock: when next to tell */
	size_t told_wide; /* columns to take back */
	float samples[BLOCK];
};

static volatile sig_atomic_t stopped;

static void stop(int number)
{
	stopped = number;
}

/* --- how far it has come ---------------------------------------------------- */

/* Nobody is told when standard error is gone. */
static void tell_bytes(const struct text *t)
{
	if (write(STDERR_FILENO, t->bytes, t->length) < 0)
		return;
}

static void take_back(struct making *m)
{
	char bytes[WORDS_BYTES * 2];
	struct text t = text_in(bytes, sizeof(bytes));

	text_add(&t, "\r");
	for (size_t i = 0; i < m->told_wide; i++)
		text_add(&t, " ");
	text_add(&t, "\r");
	if (m->told_wide > 0)
		tell_bytes(&t);
	m->told_wide = 0;
}

static void tell(struct making *m, int64_t frame)
{
	char words[WORDS_BYTES], bytes[WORDS_BYTES * 2];
	struct text t = text_in(bytes, sizeof(bytes));
	struct message said = message_with(
	    M_TRACK_PROGRESS, WHOLE(frame * PERCENT / m->track->length));
	int64_t now = clock_steady_ms();

	if (now < m->told_ms)
		return;
	m->told_ms = now + AGAIN_MS;
	message_text(&said, words, sizeof(words));
	text_format(&t, "\r%s", words);
	m->told_wide = strlen(words);
	tell_bytes(&t);
}

/* --- the sound ---------------------------------------------------------------- */

/* Passages wait in the engine's slots, as many as it has. */
static void give(struct making *m)
{
	const struct track *t = m->track;
	struct score *s;
	int slot;

	engine_collect(m->engine);
	while (m->given < t->passages &&
	    (s = engine_slot(m->engine, &slot)) != NULL) {
		const struct track_passage *p = &t->at[m->given];

		if (!score_make(s, &p->passage, t->rate) ||
		    !engine_play(m->engine, slot, p->frame))
			return;
		m->given++;
	}
}

/* Sends bytes on; false: nobody takes them. */
static bool send_bytes(struct making *m, const void *from, size_t length)
{
	const char *bytes = from;

	while (length > 0 && !stopped) {
		ssize_t n = write(m->program.fd, bytes, length);

		if (n < 0 && errno != EINTR)
			return false;
		bytes += n > 0 ? n : 0;
		length -= n > 0 ? (size_t)n : 0;
	}
	return length == 0;
}

static bool send_head(struct making *m, const struct audio_wish *w)
{
	char *bytes = malloc(AUDIO_HEAD_MAX);
	struct text t;
	bool sent = false;

	m->no_memory = !bytes;
	if (!bytes)
		return false;
	t = text_in(bytes, AUDIO_HEAD_MAX);
	audio_head_say(&t, w);
	sent = send_bytes(m, t.bytes, t.length);
	free(bytes);
	return sent;
}

static void send_samples(struct making *m)
{
	int64_t left;
	bool seen = isatty(STDERR_FILENO) == 1;

	while ((left = m->track->length - engine_frame(m->engine)) > 0) {
		int count = left < BLOCK ? (int)left : BLOCK;

		give(m);
		engine_fill(m->engine, m->samples, count);
		/* Why nobody takes them is told by how it ended. */
		if (!send_bytes(m, m->samples, (size_t)count * sizeof(float)))
			break;
		if (seen)
			tell(m, engine_frame(m->engine));
	}
	take_back(m);
}

static bool engine_make(struct making *m, int level)
{
	size_t size = (engine_size() + ALIGNED - 1) / ALIGNED * ALIGNED;

	m->engine = aligned_alloc(ALIGNED, size);
	if (!m->engine)
		return false;
	memset(m->engine, 0, size);
	engine_init(m->engine, m->track->rate, level);
	return true;
}

/* --- the file ------------------------------------------------------------------ */

/* Ctrl-C ends it between two blocks, and takes the file back. */
static void stop_gently(void)
{
	struct sigaction gently = { .sa_handler = stop };

	sigemptyset(&gently.sa_mask);
	sigaction(SIGINT, &gently, NULL);
	sigaction(SIGTERM, &gently, NULL);
	sigaction(SIGHUP, &gently, NULL);
}

static bool told(enum audio_how how, const char *path, struct fault *f)
{
	if (audio_tell(how, f))
		return true;
	if (how == AUDIO_UNWRITTEN)
		return fault_at(f, path, 0, 0);
	if (f->message.id == M_AUDIO_BROKE)
		fault_set(f, message_of(M_TRACK_BROKE));
	return false;
}

static bool play(struct making *m, const struct audio_wish *w,
    const struct track_place *place, struct file_new *n, struct fault *f)
{
	const char *words[] = { "write", audio_format_word(place->format),
		NULL };

	fault_set(f, message_of(M_COMMAND_NO_MEMORY));
	if (!engine_make(m, place->level))
		return false;
	if (audio_start(&m->program, words, -1, n->fd) && send_head(m, w))
		send_samples(m);
	if (stopped)
		audio_kill(&m->program);
	if (told(audio_end(&m->program), place->path, f))
		return !stopped;
	/* Without a head the program can only say that it knows it not. */
	return m->no_memory ? fault_set(f, message_of(M_COMMAND_NO_MEMORY))
			    : false;
}

bool track_file(const struct track *t, const struct audio_wish *w,
    const struct track_place *place, int *signal, struct fault *f)
{
	struct making *m = calloc(1, sizeof(*m));
	struct file_new n;
	bool good = false;

	fault_set(f, message_of(M_COMMAND_NO_MEMORY));
	stop_gently();
	if (m && file_new_open(&n, place->path, FILE_RIGHTS, place->force, f)) {
		m->track = t;
		m->told_ms = clock_steady_ms() + PATIENCE_MS;
		if (play(m, w, place, &n, f))
			good = file_new_put(&n, f);
		else
			file_new_drop(&n);
		free(m->engine);
	}
	free(m);
	*signal = stopped;
	return good;
}
