/*
 * device_parts.h - what every kind of device has in common
 *
 * A kind is a table of what it does; a device of that kind begins with a
 * struct device.  device.c is the face, each kind a file beside it.
 */
#ifndef EVENHAND_WORLD_DEVICE_PARTS_H
#define EVENHAND_WORLD_DEVICE_PARTS_H

#include "evenhand/world/device.h"

struct device_kind {
	bool (*play)(struct device *d, const struct passage *p, int64_t frame);
	void (*silence)(struct device *d);
	void (*level)(struct device *d, int level);
	void (*look)(struct device *d);
	void (*advance)(struct device *d, int64_t frame);
	int64_t (*frame)(const struct device *d);
	int64_t (*heard)(const struct device *d);
	int64_t (*lost_ms)(const struct device *d);
	int (*dropouts)(const struct device *d);
	uint64_t (*dropped)(const struct device *d);
	enum device_state (*state)(const struct device *d);
	const char *(*name)(const struct device *d);
	struct message (*sentence)(const struct device *d);
	void (*listen)(struct device *d, const struct sound_wish *microphone);
	enum microphone_state (*microphone)(const struct device *d);
	struct heard_samples (*hear)(struct device *d, float *out, size_t max);
	void (*correct)(struct device *d, const struct latencies *known);
	const struct latency *(*latency)(const struct device *d);
	int (*jumps)(const struct device *d);
	bool (*pair)(const struct device *d, struct latency_pair *pair);
	void (*close)(struct device *d);
};

struct device {
	const struct device_kind *kind;
	bool paced;
};

#endif
