/*
 * device_sound_child.c - the child: made, watched, ended, made anew
 *
 *	        made          card        frames stand still
 *	none ─────────▶ opening ───▶ sounding ─────────▶ killed
 *	  ▲                │ no card, no answer, gone      │
 *	  └────────────────┴───────────── a while ◀────────┘
 *
 * A card that was there is looked for every half second, since a server that
 * was started anew is back in no time; after a minute less often.  Where there
 * never was one, seldom: to look costs the computer some work.
 *
 * Frames that stand still are judged by the time that this program ran itself:
 * after a standstill of the whole computer the card is given its time.
 */
#include "device_sound.h"

#include "evenhand/base/frames.h"
#include "evenhand/world/clock.h"

enum {
	AGAIN_MS = 500,	   /* from one child to the next, ... */
	LATER_MS = 5000,   /* ... after a minute, ... */
	SELDOM_MS = 10000, /* ... and where there never was a card */
	LATER_AFTER_MS = 60000,
	FAITHFUL_MS = 2000,	 /* the wished card is waited for so long */
	PATIENCE_MS = 1000,	 /* with a child that opens, at least ... */
	PATIENCE_TIMES = 5,	 /* ... and of what it took before ... */
	PATIENCE_MAX_MS = 12000, /* ... and at most */
	STUMBLE_MS = 200,	 /* a card that stands so soon never began */
};

struct engine *sounding_engine(const struct sound_device *d)
{
	return d->count.carried ? sound_engine(d->shared) : NULL;
}

struct count_now sounding_now(const struct sound_device *d)
{
	struct count_now now = { 0 };

	if (d->wall) {
		now.wall = wall_frame(d->wall);
		now.wall_lost_ms = wall_lost_ms(d->wall);
	}
	if (d->number && sound_phase(d->shared, d->number) == SOUND_SOUNDS) {
		now.card = engine_frame(sound_engine(d->shared));
		now.shuts = outlet_shuts(&d->shared->outlet);
	}
	return now;
}

/* When the next child is made, after one that is no good any more. */
static void plan_next(struct sound_device *d, int64_t now)
{
	int64_t pause = AGAIN_MS;

	if (d->opened == 0 || d->count.raced || d->unfit)
		pause = SELDOM_MS;
	else if (now - d->lost_at_ms > LATER_AFTER_MS)
		pause = LATER_MS;
	d->next_ms = d->made_ms + pause;
}

static void make(struct sound_device *d, int64_t now)
{
	d->order.no_other = d->opened > 0 && !d->other &&
	    now - d->lost_at_ms < FAITHFUL_MS;
	d->order.wish.level = d->level;
	d->number = keeper_make(d->keeper, &d->order);
	d->killed = false;
	d->made_ms = now;
}

/* The card carries the count no more. */
static void lose(struct sound_device *d, int64_t now)
{
	const struct engine *e = sounding_engine(d);

	if (e) {
		/* Its end is an interruption too. */
		d->dropouts += outlet_dropouts(&d->shared->outlet) + 1;
		d->dropped += engine_dropped(e);
		d->lost_at_ms = now;
	}
	count_leave(&d->count);
	for (int i = 0; i < d->passages; i++)
		d->passage[i].given = false;
	d->hush = d->level_owed = false;
	if (d->count.raced || d->unfit)
		d->state = DEVICE_MISSING;
	else if (d->state == DEVICE_SOUNDS)
		d->state = DEVICE_LOST;
	else if (d->state == DEVICE_OPENING &&
	    sound_phase(d->shared, d->number) != SOUND_SLOW)
		d->state = DEVICE_MISSING;
}

static void end_child(struct sound_device *d, int64_t now)
{
	lose(d, now);
	keeper_kill(d->keeper, d->number);
	d->killed = true;
	plan_next(d, now);
}

/*
 * The card is there and wants more room, or the server stands still: so it is
 * when a card that has played before does not begin, or none does with all the
 * room there is.
 */
static void give_room(struct sound_device *d, int64_t now)
{
	struct outlet_time t;
	bool began = outlet_read(&d->shared->outlet, &t);

	d->next_ms = now;
	d->mute = !began &&
	    (d->opened > 0 || d->order.latency_ms >= SOUND_LATENCY_MAX_MS);
	if (!d->mute && d->order.latency_ms < SOUND_LATENCY_MAX_MS)
		d->order.latency_ms *= 2;
	if (!d->mute || d->opened > 0)
		return;
	d->order.latency_ms = SOUND_LATENCY_MS;
	d->state = DEVICE_MISSING;
}

/* A child that is gone, whatever became of it; how it ended. */
static void child_gone(struct sound_device *d, int64_t now, int ended)
{
	bool slow = sound_phase(d->shared, d->number) == SOUND_SLOW;

	d->unfit = ended;
	if (!d->killed) {
		lose(d, now);
		plan_next(d, now);
	}
	d->mute = d->killed && !slow && d->mute;
	d->number = 0;
	if (slow)
		give_room(d, now);
}

static void take_reports(struct sound_device *d, int64_t now)
{
	struct sound_report r;

	while (keeper_report(d->keeper, &r))
		if (r.number == d->number)
			child_gone(d, now, report_exit(&r));
		else if (r.number == d->microphone.number)
			hearing_gone(d, report_exit(&r));
	if (!keeper_gone(d->keeper))
		return;
	lose(d, now);
	d->number = 0;
	d->state = DEVICE_MISSING;
	d->next_ms = INT64_MAX;
}

/* A child that takes much longer than the last one took will not come. */
static void learn_patience(struct sound_device *d, int64_t now)
{
	int64_t ms = (now - d->made_ms) * PATIENCE_TIMES;

	ms = ms > PATIENCE_MS ? ms : PATIENCE_MS;
	d->patience = (int)(ms < PATIENCE_MAX_MS ? ms : PATIENCE_MAX_MS);
}

static void join(struct sound_device *d, int64_t ms)
{
	struct count_now now = sounding_now(d);

	count_join(&d->count, d->shared->rate, &now);
	d->card = d->shared->card;
	d->other = d->shared->other;
	d->state = DEVICE_SOUNDS;
	d->opened++;
	d->mute = false;
	learn_patience(d, ms);
	d->level_owed = d->level != d->shared->order.wish.level;
	passages_again(d);
}

static void watch_opening(struct sound_device *d, int64_t now)
{
	struct outlet_time t;

	if (sound_phase(d->shared, d->number) == SOUND_SOUNDS &&
	    (!d->device.paced || outlet_read(&d->shared->outlet, &t))) {
		join(d, now);
		return;
	}
	if (now - d->made_ms < d->patience)
		return;
	d->mute = true;
	if (d->opened == 0 && 2 * d->patience <= PATIENCE_MAX_MS)
		d->patience *= 2;
	end_child(d, now);
	d->next_ms = now;
}

/*
 * A buffer much shorter than the server's cycle takes its first blocks and then
 * stands: that card wants more room, too.
 */
static void stumbled(struct sound_device *d, int64_t card)
{
	if (card < frames_of_ms(STUMBLE_MS, d->shared->rate) &&
	    d->order.latency_ms < SOUND_LATENCY_MAX_MS)
		d->order.latency_ms *= 2;
}

static void watch_sounding(struct sound_device *d, int64_t now)
{
	struct count_now moment = sounding_now(d);

	if (count_look(&d->count, &moment)) {
		d->hush = true;
		passages_again(d);
	}
	if (d->count.raced)
		end_child(d, now);
	else if (d->device.paced &&
	    count_still_ms(&d->count, &moment) > DEVICE_LOST_MS) {
		stumbled(d, moment.card);
		end_child(d, now);
	}
}

void sounding_look(struct sound_device *d)
{
	int64_t now = clock_steady_ms();

	outlet_beat(&d->shared->outlet);
	take_reports(d, now);
	if (d->number == 0) {
		if (now >= d->next_ms)
			make(d, now);
	} else if (d->count.carried) {
		watch_sounding(d, now);
	} else if (!d->killed) {
		watch_opening(d, now);
	} else if (now >= d->next_ms) {
		/* The keeper makes it as soon as the other is gone. */
		make(d, now);
	}
	if (!d->count.carried) {
		struct count_now moment = sounding_now(d);

		count_look(&d->count, &moment);
	}
}

void sounding_end(struct sound_device *d)
{
	if (d->number)
		keeper_end(d->keeper, d->number);
}
