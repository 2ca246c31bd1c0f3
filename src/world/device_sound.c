/*
 * device_sound.c - the face of a device that sounds through a child process
 *
 * Nothing here waits for the child; unpaced alone, device_advance waits until
 * the card has taken the frames, since nobody practises to that.
 */
#include "device_sound.h"

#include <sched.h>
#include <stdlib.h>

#include "evenhand/base/text.h"
#include "evenhand/world/clock.h"

enum {
	FIRST_PATIENCE_MS = 3000,
	UNPACED_MS = 5000, /* frames may stand so long, unpaced */
	SPINS = 200,
	PAUSE_US = 100,
};

/* The state behind a device is brought up to date also when only looked at. */
static struct sound_device *sound_of(const struct device *d)
{
	return (struct sound_device *)(uintptr_t)d;
}

static bool sound_play(struct device *d, const struct passage *p, int64_t frame)
{
	return passages_play(sound_of(d), p, frame);
}

static void sound_silence(struct device *d)
{
	passages_silence(sound_of(d));
}

static void sound_level(struct device *d, int level)
{
	struct sound_device *s = sound_of(d);

	s->level = level;
	s->level_owed = sounding_engine(s) != NULL;
	passages_look(s);
}

static void sound_look(struct device *d)
{
	struct sound_device *s = sound_of(d);

	sounding_look(s);
	passages_look(s);
	hearing_look(s);
}

/* --- Frames ------------------------------------------------------------- */

static int64_t sound_frame(const struct device *d)
{
	struct sound_device *s = sound_of(d);
	struct count_now now = sounding_now(s);

	if (count_look(&s->count, &now)) {
		s->hush = true;
		passages_again(s);
	}
	return s->count.frame;
}

static int64_t sound_heard(const struct device *d)
{
	struct sound_device *s = sound_of(d);
	int64_t reached = sound_frame(d), heard = reached;
	struct outlet_time t;

	if (d->paced && sounding_engine(s) &&
	    outlet_read(&s->shared->outlet, &t)) {
		int64_t since = clock_steady_ns() - t.time_ns - t.delay_ns;

		heard = count_from_card(&s->count,
		    t.frame + since / 1000 * s->shared->rate / 1000000);
	}
	heard = heard < reached ? heard : reached;
	if (heard > s->heard)
		s->heard = heard;
	return s->heard;
}

static int64_t sound_lost_ms(const struct device *d)
{
	return sound_of(d)->count.lost_ms;
}

static void pause_a_little(int tries)
{
	if (tries < SPINS)
		sched_yield();
	else
		clock_sleep_us(PAUSE_US);
}

/* Whether frames still pass, unpaced: since a moment of the steady clock. */
static bool still(int64_t since_ns)
{
	return clock_steady_ns() - since_ns > UNPACED_MS * INT64_C(1000000);
}

static void sound_advance(struct device *d, int64_t frame)
{
	struct sound_device *s = sound_of(d);
	int64_t since = clock_steady_ns();

	for (int i = 0; s->state == DEVICE_OPENING && !still(since); i++) {
		sound_look(d);
		pause_a_little(i);
	}
	hearing_permit(s, frame);
	since = clock_steady_ns();
	if (sounding_engine(s) && frame > s->count.frame)
		atomic_store_explicit(&s->shared->permit.value,
		    count_to_card(&s->count, frame), memory_order_release);
	for (int i = 0; sounding_engine(s) && sound_frame(d) < frame; i++) {
		if (i % SPINS == SPINS - 1)
			sound_look(d);
		if (still(since))
			break;
		pause_a_little(i);
	}
	/* Nothing takes them: they pass unheard. */
	if (!sounding_engine(s) && frame > s->count.frame)
		s->count.frame = s->count.stood = frame;
}

/* --- Words -------------------------------------------------------------- */

static int sound_dropouts(const struct device *d)
{
	const struct sound_device *s = sound_of(d);

	return s->dropouts +
	    (sounding_engine(s) ? outlet_dropouts(&s->shared->outlet) : 0);
}

static uint64_t sound_dropped(const struct device *d)
{
	const struct sound_device *s = sound_of(d);
	const struct engine *e = sounding_engine(s);

	return s->dropped + (e ? engine_dropped(e) : 0);
}

static enum device_state sound_state(const struct device *d)
{
	return sound_of(d)->state;
}

static const char *sound_name(const struct device *d)
{
	struct sound_device *s = sound_of(d);
	struct text t = text_in(s->name, sizeof s->name);

	if (!*s->card.name)
		return "none";
	text_format(&t, "%s, %s", s->card.name, s->card.api);
	return s->name;
}

static struct message sounds(const struct sound_device *s)
{
	const struct sound_card *c = &s->card;

	if (s->other)
		return message_with(M_DEVICE_OTHER,
		    TEXT(*s->order.wish.name ? s->order.wish.name
					     : s->order.wish.api),
		    TEXT(c->name), TEXT(c->api));
	/* Names of cards are for those who chose among them. */
	if (!*s->order.wish.name && !*s->order.wish.api && !c->wireless)
		return message_of(M_DEVICE_SOUNDS_USUAL);
	return message_with(
	    c->wireless ? M_DEVICE_SOUNDS_LATE : M_DEVICE_SOUNDS, TEXT(c->name),
	    TEXT(c->api));
}

static enum message_id missing(const struct sound_device *s)
{
	if (s->unfit == SOUND_EXIT_MISSING)
		return M_DEVICE_NO_PROGRAM;
	if (s->unfit == SOUND_EXIT_OTHER)
		return M_DEVICE_OTHER_PROGRAM;
	if (s->unfit == SOUND_EXIT_NO_ROOM)
		return M_DEVICE_NO_ROOM;
	return s->mute ? M_DEVICE_MUTE : M_DEVICE_NONE;
}

static struct message sound_sentence(const struct device *d)
{
	const struct sound_device *s = sound_of(d);

	if (keeper_gone(s->keeper))
		return message_of(M_DEVICE_KEEPER_GONE);
	if (s->state == DEVICE_SOUNDS)
		return sounds(s);
	if (s->state == DEVICE_LOST)
		return message_of(M_DEVICE_LOST);
	if (s->state == DEVICE_MISSING)
		return message_of(missing(s));
	return message_of(M_NONE);
}

/* --- The microphone ------------------------------------------------------- */

static void sound_listen(struct device *d, const struct sound_wish *microphone)
{
	hearing_wish(sound_of(d), microphone);
}

static enum microphone_state sound_microphone(const struct device *d)
{
	return sound_of(d)->microphone.state;
}

static struct heard_samples sound_hear(struct device *d, float *out, size_t max)
{
	sound_frame(d);
	return times_take(sound_of(d), out, max);
}

static void sound_correct(struct device *d, const struct latencies *known)
{
	sound_of(d)->microphone.known = known;
}

static const struct latency *sound_latency(const struct device *d)
{
	return times_latency(sound_of(d));
}

static int sound_jumps(const struct device *d)
{
	return sound_of(d)->microphone.jumps;
}

static bool sound_pair(const struct device *d, struct latency_pair *pair)
{
	return times_pair(sound_of(d), pair);
}

/* --- Life ---------------------------------------------------------------- */

static void sound_close(struct device *d)
{
	struct sound_device *s = sound_of(d);

	sounding_end(s);
	hearing_end(s);
	wall_close(s->wall);
	free(s);
}

static const struct device_kind sound_kind = {
	.play = sound_play,
	.silence = sound_silence,
	.level = sound_level,
	.look = sound_look,
	.advance = sound_advance,
	.frame = sound_frame,
	.heard = sound_heard,
	.lost_ms = sound_lost_ms,
	.dropouts = sound_dropouts,
	.dropped = sound_dropped,
	.state = sound_state,
	.name = sound_name,
	.sentence = sound_sentence,
	.listen = sound_listen,
	.microphone = sound_microphone,
	.hear = sound_hear,
	.correct = sound_correct,
	.latency = sound_latency,
	.jumps = sound_jumps,
	.pair = sound_pair,
	.close = sound_close,
};

struct device *device_sound_open(struct sound_keeper *k,
    const struct sound_wish *w, int rate, bool paced, struct fault *f)
{
	struct sound_device *s = calloc(1, sizeof *s);

	fault_set(f, message_of(M_WORLD_NO_CLOCK));
	if (!s)
		return NULL;
	s->device = (struct device) { &sound_kind, paced };
	s->keeper = k;
	s->shared = keeper_shared(k);
	s->state = DEVICE_OPENING;
	s->level = w->level;
	s->patience = FIRST_PATIENCE_MS;
	s->order = (struct sound_order) { .task = SOUND_PLAY,
		.wish = *w,
		.paced = paced,
		.rate = rate,
		.latency_ms = SOUND_LATENCY_MS };
	count_begin(&s->count, rate, paced);
	if (paced && !(s->wall = wall_open(rate, f))) {
		free(s);
		return NULL;
	}
	return &s->device;
}
