/*
 * script.c - keys from a file, at session times
 *
 * Read once into steps; then one step after another comes due.  A time is
 * turned into a frame only when the first sound has its own, so that a script
 * means the same at every rate:
 *
 *	2:36.5 c     156 500 ms     first sound + frames_of_ms(156500)
 */
#include "evenhand/world/script.h"

#include <stdlib.h>
#include <string.h>

#include "evenhand/base/frames.h"
#include "evenhand/base/text.h"
#include "evenhand/world/file.h"
#include "script_read.h"

enum {
	SOON_MS = 300,	  /* more than what counts as a bouncing key */
	ANSWERS_MAX = 20, /* pages before the first sound, and to spare */
};

struct script {
	struct script_step *step;
	int steps, next;
	int64_t last; /* frame of the key before */
	int answered; /* pages answered with forward by itself */
	char *bytes;  /* the file; words point into it */
};

struct script *script_open(const char *path, struct faults *faults)
{
	struct script *k = calloc(1, sizeof *k);
	struct fault f;
	size_t length;
	int before = faults->count + faults->left_out;

	if (!k) {
		faults_add(faults, message_of(M_COMMAND_NO_MEMORY), path, 0, 0);
		return NULL;
	}
	if (!file_read(path, SCRIPT_BYTES_MAX, &k->bytes, &length, &f)) {
		faults_add(faults, f.message, path, 0, 0);
		goto failed;
	}
	k->step = calloc(script_lines(k->bytes, length), sizeof *k->step);
	if (!k->step) {
		faults_add(faults, message_of(M_COMMAND_NO_MEMORY), path, 0, 0);
		goto failed;
	}
	k->steps = script_read(path, k->bytes, length, k->step, faults);
	if (faults->count + faults->left_out == before)
		return k;
failed:
	script_close(k);
	return NULL;
}

/* As soon as a key may come: not before the session stands there. */
static int64_t soon(const struct script *k, const struct session *s)
{
	int64_t frame = k->last + frames_of_ms(SOON_MS, s->rate);

	return frame > s->now ? frame : s->now;
}

int64_t script_due(const struct script *k, const struct session *s)
{
	const struct script_step *step = k->step + k->next;

	if (k->next == k->steps || step->soon || s->first_sound < 0)
		return session_waits(s) ? soon(k, s) : INT64_MAX;

	int64_t frame = s->first_sound + frames_of_ms(step->ms, s->rate);
	return frame > s->now ? frame : s->now;
}

struct input script_take(
    struct script *k, const struct session *s, int64_t frame)
{
	const struct script_step *step = k->step + k->next;
	struct input in = { .kind = INPUT_END, .frame = frame };

	k->last = frame;
	if (k->next == k->steps)
		return in;
	if (!step->soon && s->first_sound < 0) {
		if (k->answered++ < ANSWERS_MAX) {
			in.kind = INPUT_KEY;
			in.key = KEY_FORWARD;
		}
		return in;
	}
	k->next++;
	in.kind = step->words ? INPUT_WORDS : INPUT_KEY;
	in.key = step->key;
	in.digit = step->digit;
	in.words = step->words;
	return in;
}

void script_close(struct script *k)
{
	if (!k)
		return;
	free(k->step);
	free(k->bytes);
	free(k);
}
