/*
 * engine.c - commands in, samples out, one frame after the other
 *
 * A block is cut at every frame where something begins or ends: a sound, a
 * slot's fading.  At such a frame the list of what sounds is brought up to
 * date, and the stretch to the next one is mixed.  What happens at a frame
 * thus never depends on where a block began.
 *
 * Commands need no waiting list.  PLAY and SILENCE only write a frame into
 * the slots: PLAY when its passage starts, SILENCE when every slot given so
 * far fades.  A PLAY that comes after a SILENCE in the ring is not silenced
 * by it, whatever their frames.
 */
#include "evenhand/sound/engine.h"

#include <assert.h>

#include "engine_parts.h"
#include "evenhand/base/frames.h"

/* Frames a passage may start at: 45 thousand years, and no sum overflows. */
#define FRAME_MAX (INT64_C(1) << 58)

/*
 * A slot is played once until it is collected, and one play makes at most
 * two events: the event ring is never full.
 */
_Static_assert(2 * ENGINE_SLOTS <= RING_ITEMS, "events of all slots");

size_t engine_size(void)
{
	return sizeof(struct engine);
}

static int clamped_level(int level)
{
	return level < 0 ? 0 : level > 1000 ? 1000 : level;
}

void engine_init(struct engine *e, int rate, int level)
{
	assert(rate >= RATE_MIN && rate <= RATE_MAX);
	e->rate = rate;
	e->fade = (int32_t)frames_of_ms(ENGINE_FADE_MS, rate);
	e->ramp = (int32_t)frames_of_ms(ENGINE_RAMP_MS, rate);
	e->level.to = (float)clamped_level(level) / 1000;
	e->level.from = e->level.to;
}

/* --- The session's thread ------------------------------------------- */

struct score *engine_slot(struct engine *e, int *slot)
{
	for (int i = 0; i < ENGINE_SLOTS; i++)
		if (!e->given[i]) {
			*slot = i;
			return &e->score[i];
		}
	return NULL;
}

bool engine_play(struct engine *e, int slot, int64_t frame)
{
	assert(slot >= 0 && slot < ENGINE_SLOTS && !e->given[slot]);
	assert(frame > -FRAME_MAX && frame < FRAME_MAX);
	assert(e->score[slot].rate == e->rate);
	if (!ring_put(
		&e->commands, (struct ring_item) { ENGINE_PLAY, slot, frame }))
		return false;
	e->given[slot] = true;
	return true;
}

bool engine_silence(struct engine *e, int64_t frame)
{
	return ring_put(
	    &e->commands, (struct ring_item) { ENGINE_SILENCE, 0, frame });
}

bool engine_level(struct engine *e, int level)
{
	return ring_put(&e->commands,
	    (struct ring_item) { ENGINE_LEVEL, clamped_level(level), 0 });
}

void engine_collect(struct engine *e)
{
	struct ring_item item;

	while (ring_take(&e->events, &item)) {
		if (item.kind == ENGINE_FREE)
			e->given[item.slot] = false;
		else if (item.kind == ENGINE_LATE)
			atomic_fetch_add_explicit(
			    &e->late.value, 1, memory_order_relaxed);
	}
}

/* --- The audio callback: commands ------------------------------------ */

static void tell(struct engine *e, enum engine_event kind, int slot)
{
	ring_put(
	    &e->events, (struct ring_item) { (int32_t)kind, slot, e->now });
}

/* The first sound of a score at or after a frame of its own. */
static int32_t sound_from(const struct score *s, int64_t frame)
{
	int32_t low = 0, high = s->sounds;

	while (low < high) {
		int32_t middle = low + (high - low) / 2;

		if (s->sound[middle].frame < frame)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

/*
 * A late passage is joined where it would be by now.  What should have begun
 * already is left out: a knock at the wrong time is worse than none.
 */
static void begin_playing(struct engine *e, int slot, int64_t frame)
{
	bool late = frame < e->now;

	e->playing[slot] = (struct engine_playing) {
		.on = true,
		.cursor = late ? sound_from(&e->score[slot], e->now - frame)
			       : 0,
		.start = frame,
		.silence = ENGINE_NEVER,
	};
	if (late)
		tell(e, ENGINE_LATE, slot);
}

static void begin_silence(struct engine *e, int64_t frame)
{
	int64_t at = frame > e->now ? frame : e->now;

	for (int i = 0; i < ENGINE_SLOTS; i++)
		if (e->playing[i].silence > at)
			e->playing[i].silence = at;
}

static void obey(struct engine *e, struct ring_item c)
{
	if (c.kind == ENGINE_PLAY)
		begin_playing(e, c.slot, c.frame);
	else if (c.kind == ENGINE_SILENCE)
		begin_silence(e, c.frame);
	else if (c.kind == ENGINE_LEVEL)
		e->level = (struct engine_ramp) {
			.from = engine_level_at(e, e->now),
			.to = (float)c.slot / 1000,
			.start = e->now,
		};
}

/* At most a ring full, so that a fast writer cannot hold the callback up. */
static void drain(struct engine *e)
{
	struct ring_item c;

	for (int i = 0; i < RING_ITEMS && ring_take(&e->commands, &c); i++)
		obey(e, c);
}

/* --- The audio callback: sounds --------------------------------------- */

static bool voice_over(const struct engine *e, const struct engine_voice *v)
{
	return v->start + v->shape.length <= e->now ||
	    e->playing[v->slot].silence <= e->now - e->fade;
}

/* Drops what has died away; the rest keeps its order. */
static void retire(struct engine *e)
{
	int32_t kept = 0;

	for (int32_t i = 0; i < e->voices; i++)
		if (!voice_over(e, &e->voice[i])) {
			if (kept != i)
				e->voice[kept] = e->voice[i];
			kept++;
		}
	e->voices = kept;
}

static bool slot_sounds(const struct engine *e, int slot)
{
	for (int32_t i = 0; i < e->voices; i++)
		if (e->voice[i].slot == slot)
			return true;
	return false;
}

/* Hands back the slots that have nothing more to sound. */
static void hand_back(struct engine *e)
{
	for (int i = 0; i < ENGINE_SLOTS; i++) {
		struct engine_playing *p = &e->playing[i];
		bool last = p->cursor >= e->score[i].sounds;

		if (!p->on || !(last || p->silence <= e->now) ||
		    slot_sounds(e, i))
			continue;
		p->on = false;
		tell(e, ENGINE_FREE, i);
	}
}

/* The frame at which a slot's next sound begins. */
static int64_t next_sound(const struct engine *e, int slot)
{
	const struct engine_playing *p = &e->playing[slot];

	if (!p->on || p->cursor >= e->score[slot].sounds)
		return ENGINE_NEVER;
	int64_t frame = p->start + e->score[slot].sound[p->cursor].frame;
	return frame < p->silence ? frame : ENGINE_NEVER;
}

static void add(struct engine *e, int slot, const struct sound *s)
{
	if (e->voices == ENGINE_VOICES_MAX) {
		atomic_fetch_add_explicit(
		    &e->lost.value, 1, memory_order_relaxed);
		return;
	}
	struct engine_voice *v = &e->voice[e->voices++];
	v->slot = slot;
	v->start = e->now;
	shape_make(&v->shape, s, e->rate);
}

/* Adds the sounds that begin at this very frame. */
static void begin_sounds(struct engine *e)
{
	for (int i = 0; i < ENGINE_SLOTS; i++)
		while (next_sound(e, i) <= e->now)
			add(e, i, &e->score[i].sound[e->playing[i].cursor++]);
}

/* The next frame at which something begins or a slot's fading turns. */
static int64_t next_cut(const struct engine *e, int64_t end)
{
	int64_t cut = end;

	for (int i = 0; i < ENGINE_SLOTS; i++) {
		int64_t sound = next_sound(e, i);
		int64_t silence = e->playing[i].silence;

		if (sound < cut)
			cut = sound;
		if (!e->playing[i].on || silence == ENGINE_NEVER)
			continue;
		if (silence > e->now && silence < cut)
			cut = silence;
		silence += e->fade;
		if (silence > e->now && silence < cut)
			cut = silence;
	}
	return cut;
}

void engine_fill(struct engine *e, float *out, int frames)
{
	int64_t end = e->now + frames;

	drain(e);
	while (e->now < end) {
		retire(e);
		begin_sounds(e);
		int64_t cut = next_cut(e, end);

		engine_mix(e, out, cut);
		out += cut - e->now;
		e->now = cut;
	}
	retire(e);
	hand_back(e);
	atomic_store_explicit(
	    &e->frame.value, (uint64_t)end, memory_order_release);
}

/* --- Any thread ------------------------------------------------------- */

int64_t engine_frame(const struct engine *e)
{
	return (int64_t)atomic_load_explicit(
	    &e->frame.value, memory_order_acquire);
}

int engine_rate(const struct engine *e)
{
	return e->rate;
}

uint64_t engine_late(const struct engine *e)
{
	return atomic_load_explicit(&e->late.value, memory_order_relaxed);
}

uint64_t engine_dropped(const struct engine *e)
{
	return ring_dropped(&e->commands) + ring_dropped(&e->events) +
	    atomic_load_explicit(&e->lost.value, memory_order_relaxed);
}
