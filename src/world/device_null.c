/*
 * device_null.c - no sound card: frames pass and nothing sounds
 *
 * Paced, frames go by the wall clock; unpaced, where they are asked to go.
 * Passages are looked at by nobody.
 */
#include <stdlib.h>

#include "device_parts.h"
#include "wall.h"

struct null_device {
	struct device device;
	struct wall *wall; /* NULL: unpaced */
	int64_t frame;	   /* unpaced */
	bool listens;	   /* and hears nothing: it has no card */
};

static const struct null_device *null_of(const struct device *d)
{
	return (const struct null_device *)d;
}

static bool null_play(struct device *d, const struct passage *p, int64_t frame)
{
	(void)d;
	(void)p;
	(void)frame;
	return true;
}

static void null_nothing(struct device *d)
{
	(void)d;
}

static void null_level(struct device *d, int level)
{
	(void)d;
	(void)level;
}

static void null_advance(struct device *d, int64_t frame)
{
	struct null_device *n = (struct null_device *)d;

	if (frame > n->frame)
		n->frame = frame;
}

static int64_t null_frame(const struct device *d)
{
	const struct null_device *n = null_of(d);

	return n->wall ? wall_frame(n->wall) : n->frame;
}

static int64_t null_lost_ms(const struct device *d)
{
	const struct null_device *n = null_of(d);

	return n->wall ? wall_lost_ms(n->wall) : 0;
}

static int null_dropouts(const struct device *d)
{
	(void)d;
	return 0;
}

static uint64_t null_dropped(const struct device *d)
{
	(void)d;
	return 0;
}

static enum device_state null_state(const struct device *d)
{
	(void)d;
	return DEVICE_UNHEARD;
}

static const char *null_name(const struct device *d)
{
	return d->paced ? "none" : "fast";
}

static struct message null_sentence(const struct device *d)
{
	(void)d;
	return message_of(M_DEVICE_UNHEARD);
}

static void null_listen(struct device *d, const struct sound_wish *microphone)
{
	(void)microphone;
	((struct null_device *)d)->listens = true;
}

static enum microphone_state null_microphone(const struct device *d)
{
	return null_of(d)->listens ? MICROPHONE_MISSING : MICROPHONE_UNWISHED;
}

static struct heard_samples null_hear(struct device *d, float *out, size_t max)
{
	(void)d;
	(void)out;
	(void)max;
	return (struct heard_samples) { 0 };
}

static void null_correct(struct device *d, const struct latencies *known)
{
	(void)d;
	(void)known;
}

static const struct latency *null_latency(const struct device *d)
{
	(void)d;
	return NULL;
}

static bool null_pair(const struct device *d, struct latency_pair *pair)
{
	(void)d;
	(void)pair;
	return false;
}

static void null_close(struct device *d)
{
	struct null_device *n = (struct null_device *)d;

	wall_close(n->wall);
	free(n);
}

static const struct device_kind null_kind = {
	.play = null_play,
	.silence = null_nothing,
	.level = null_level,
	.look = null_nothing,
	.advance = null_advance,
	.frame = null_frame,
	.heard = null_frame,
	.lost_ms = null_lost_ms,
	.dropouts = null_dropouts,
	.dropped = null_dropped,
	.state = null_state,
	.name = null_name,
	.sentence = null_sentence,
	.listen = null_listen,
	.microphone = null_microphone,
	.hear = null_hear,
	.correct = null_correct,
	.latency = null_latency,
	.jumps = null_dropouts,
	.pair = null_pair,
	.close = null_close,
};

struct device *device_null_open(int rate, bool paced, struct fault *f)
{
	struct null_device *n = calloc(1, sizeof *n);

	fault_set(f, message_of(M_WORLD_NO_CLOCK));
	if (!n)
		return NULL;
	n->device = (struct device) { &null_kind, paced };
	if (paced && !(n->wall = wall_open(rate, f))) {
		free(n);
		return NULL;
	}
	return &n->device;
}
