/*
 * device.c - one face for all devices
 */
#include "device_parts.h"

bool device_play(struct device *d, const struct passage *p, int64_t frame)
{
	return d->kind->play(d, p, frame);
}

void device_silence(struct device *d)
{
	d->kind->silence(d);
}

void device_level(struct device *d, int level)
{
	d->kind->level(d, level);
}

void device_look(struct device *d)
{
	d->kind->look(d);
}

void device_advance(struct device *d, int64_t frame)
{
	if (!d->paced)
		d->kind->advance(d, frame);
}

int64_t device_frame(const struct device *d)
{
	return d->kind->frame(d);
}

int64_t device_heard(const struct device *d)
{
	return d->kind->heard(d);
}

int64_t device_lost_ms(const struct device *d)
{
	return d->kind->lost_ms(d);
}

int device_dropouts(const struct device *d)
{
	return d->kind->dropouts(d);
}

uint64_t device_dropped(const struct device *d)
{
	return d->kind->dropped(d);
}

enum device_state device_state(const struct device *d)
{
	return d->kind->state(d);
}

const char *device_name(const struct device *d)
{
	return d->kind->name(d);
}

struct message device_sentence(const struct device *d)
{
	return d->kind->sentence(d);
}

void device_listen(struct device *d, const struct sound_wish *microphone)
{
	d->kind->listen(d, microphone);
}

enum microphone_state device_microphone(const struct device *d)
{
	return d->kind->microphone(d);
}

struct heard_samples device_hear(struct device *d, float *out, size_t max)
{
	return d->kind->hear(d, out, max);
}

void device_correct(struct device *d, const struct latencies *known)
{
	d->kind->correct(d, known);
}

const struct latency *device_latency(const struct device *d)
{
	return d->kind->latency(d);
}

int device_jumps(const struct device *d)
{
	return d->kind->jumps(d);
}

bool device_pair(const struct device *d, struct latency_pair *pair)
{
	return d->kind->pair(d, pair);
}

bool device_paced(const struct device *d)
{
	return d->paced;
}

void device_close(struct device *d)
{
	if (d)
		d->kind->close(d);
}
