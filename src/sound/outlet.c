/*
 * outlet.c - the last step to the card: a gate, channels, and what time it is
 *
 * What is published is more than one word, so it is written between two steps
 * of a count that is odd meanwhile; who reads it reads the count before and
 * after.  Words are stored with release and loaded with acquire: whoever sees a
 * new word sees the odd count too.  A writer that dies half way leaves the
 * count odd, so a reader gives up after a while.
 */
#include "evenhand/sound/outlet.h"

#include "evenhand/base/frames.h"

enum {
	OUTLET_CHUNK = 256, /* frames filled at a time */
	OUTLET_TRIES = 100,
};

void outlet_beat(struct outlet *o)
{
	atomic_fetch_add_explicit(&o->beat.value, 1, memory_order_relaxed);
}

void outlet_end(struct outlet *o)
{
	atomic_store_explicit(&o->closing.value, 1, memory_order_relaxed);
}

/* Whether the gate is to be open at a frame. */
static bool watched(struct outlet *o, int64_t frame, int rate)
{
	uint32_t beat = atomic_load_explicit(
	    &o->beat.value, memory_order_relaxed);

	if (atomic_load_explicit(&o->closing.value, memory_order_relaxed))
		return false;
	if (beat != o->seen) {
		o->seen = beat;
		o->seen_at = frame;
	}
	return frame - o->seen_at < frames_of_ms(OUTLET_PATIENCE_MS, rate);
}

/* The gate shuts: an interruption, unless it is the end. */
static void count_shut(struct outlet *o)
{
	atomic_fetch_add_explicit(&o->shuts.value, 1, memory_order_release);
	if (!atomic_load_explicit(&o->closing.value, memory_order_relaxed))
		atomic_fetch_add_explicit(
		    &o->dropouts.value, 1, memory_order_relaxed);
}

/* One frame of the gate: how much it lets through; all of it when open. */
static float gate(struct outlet *o, int32_t fade)
{
	if (o->shut && o->closed < fade)
		o->closed++;
	else if (!o->shut && o->closed > 0)
		o->closed--;
	return (float)(fade - o->closed) / (float)fade;
}

static void spread(struct outlet *o, const float *mono, float *out, int frames,
    int channels, int32_t fade)
{
	for (int i = 0; i < frames; i++) {
		float x = mono[i] * gate(o, fade);

		for (int c = 0; c < channels; c++)
			*out++ = x;
	}
}

void outlet_fill(
    struct outlet *o, struct engine *e, float *out, int frames, int channels)
{
	float mono[OUTLET_CHUNK];
	int rate = engine_rate(e);
	int32_t fade = (int32_t)frames_of_ms(ENGINE_FADE_MS, rate);
	bool shut = !watched(o, engine_frame(e), rate);

	if (shut && !o->shut)
		count_shut(o);
	o->shut = shut;
	while (frames > 0) {
		int count = frames < OUTLET_CHUNK ? frames : OUTLET_CHUNK;

		engine_fill(e, mono, count);
		spread(o, mono, out, count, channels, fade);
		out += (size_t)count * (size_t)channels;
		frames -= count;
	}
}

/* Whether the card plays this block much later than the frames say. */
static bool jumped(struct outlet *o, const struct outlet_time *t, int rate)
{
	int64_t plays = t->time_ns + t->delay_ns;
	int64_t due = o->heard_ns +
	    (t->frame - o->heard_at) * INT64_C(1000000000) / rate;
	bool ahead = o->heard &&
	    plays - due > OUTLET_SLACK_MS * INT64_C(1000000);
	bool settled = t->frame >= frames_of_ms(OUTLET_SETTLE_MS, rate);

	/* A jump is counted once; slow drifts are followed. */
	if (!o->heard || ahead || !settled) {
		o->heard_at = t->frame;
		o->heard_ns = plays;
	} else if (plays != due) {
		o->heard_ns = due + (plays - due) / 64;
		o->heard_at = t->frame;
	}
	o->heard = true;
	return ahead && settled;
}

void outlet_publish(
    struct outlet *o, const struct outlet_time *t, int rate, bool interrupted)
{
	uint32_t turn = atomic_load_explicit(
	    &o->turn.value, memory_order_relaxed);

	if (jumped(o, t, rate) || interrupted)
		atomic_fetch_add_explicit(
		    &o->dropouts.value, 1, memory_order_relaxed);
	atomic_store_explicit(&o->turn.value, turn + 1, memory_order_relaxed);
	atomic_store_explicit(&o->frame.value, t->frame, memory_order_release);
	atomic_store_explicit(
	    &o->time_ns.value, t->time_ns, memory_order_release);
	atomic_store_explicit(
	    &o->delay_ns.value, t->delay_ns, memory_order_release);
	atomic_store_explicit(&o->turn.value, turn + 2, memory_order_release);
}

bool outlet_read(const struct outlet *o, struct outlet_time *t)
{
	for (int i = 0; i < OUTLET_TRIES; i++) {
		uint32_t turn = atomic_load_explicit(
		    &o->turn.value, memory_order_acquire);

		if (turn == 0)
			return false;
		t->frame = atomic_load_explicit(
		    &o->frame.value, memory_order_acquire);
		t->time_ns = atomic_load_explicit(
		    &o->time_ns.value, memory_order_acquire);
		t->delay_ns = atomic_load_explicit(
		    &o->delay_ns.value, memory_order_acquire);
		if (turn % 2 == 0 &&
		    turn ==
			atomic_load_explicit(
			    &o->turn.value, memory_order_acquire))
			return true;
	}
	return false;
}

int outlet_dropouts(const struct outlet *o)
{
	return (int)atomic_load_explicit(
	    &o->dropouts.value, memory_order_relaxed);
}

uint32_t outlet_shuts(const struct outlet *o)
{
	return atomic_load_explicit(&o->shuts.value, memory_order_acquire);
}
