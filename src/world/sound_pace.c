/*
 * sound_pace.c - whether a card takes frames as fast as time gives them
 *
 * Blocks may be asked for in bursts; when they are played tells the pace.
 */
#include "sound_pace.h"

#include "evenhand/base/frames.h"

#define SECOND_NS INT64_C(1000000000)

/* Whether a span, frames of those that were due, makes the card a slow one. */
static bool judge(struct pace *p, int64_t frames, int64_t due)
{
	bool tardy = frames * 100 < due * PACE_TARDY_PERCENT;

	p->tardy = tardy ? p->tardy + 1 : 0;
	return p->tardy >= PACE_TARDY_SPANS ||
	    frames * 100 < due * PACE_LAME_PERCENT;
}

bool pace_slow(
    struct pace *p, const struct outlet_time *last, int rate, int since_ms)
{
	int64_t frames, gone, due;
	bool paused, slow = false;

	p->waited_ms += since_ms;
	if (!last)
		return p->waited_ms > PACE_FIRST_MS;
	paused = last->time_ns - p->asked_ns > PACE_PAUSE_MS * INT64_C(1000000);
	p->asked_ns = last->time_ns;
	frames = last->frame - p->frame;
	gone = last->time_ns + last->delay_ns - p->plays_ns;
	/* Seconds apart: the first is all the time that the computer runs. */
	due = gone / SECOND_NS * rate + gone % SECOND_NS * rate / SECOND_NS;
	if (!paused && due < frames_of_ms(PACE_SPAN_MS, rate))
		return false;
	p->frame = last->frame;
	p->plays_ns = last->time_ns + last->delay_ns;
	if (paused)
		p->tardy = 0;
	else
		slow = judge(p, frames, due);
	return slow;
}
