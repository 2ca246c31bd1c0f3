/*
 * device_sound_times.c - what the microphone heard, and when in the session
 *
 *	sample ─▶ time ─▶ frame of the card that sounds ─▶ frame of the session
 *	    a line     a line of its own                count
 *
 * Both lines are fitted to stamps of the steady clock, so that two cards which do
 * not run alike stay together for hours.  Where no card sounds, frames of the
 * session go by the steady clock themselves.
 */
#include "device_sound.h"

#include <math.h>
#include <sched.h>

#include "evenhand/base/text.h"
#include "evenhand/world/clock.h"

#define GAP_S 0.010 /* a jump of the stamps in which samples were lost */

enum { UNPACED_MS = 5000 }; /* samples may stand so long, unpaced */

void times_begin(struct sound_device *d)
{
	struct sound_microphone *m = &d->microphone;

	line_begin(&m->in, sound_hearing(d->shared)->rate);
	m->due = 0;
	m->stamped = -1;
	m->gap = true;
	m->lost_ms = d->count.lost_ms;
}

void times_look(struct sound_device *d)
{
	struct sound_microphone *m = &d->microphone;
	struct outlet_time t;

	if (!sounding_engine(d) || !outlet_read(&d->shared->outlet, &t))
		return;
	if (m->sounding != d->number) {
		m->sounding = d->number;
		line_begin(&m->out, d->shared->rate);
	}
	if (m->out.stamps == 0 || t.frame > m->out.newest)
		m->jumps += line_add(
				&m->out, t.frame, t.time_ns + t.delay_ns) != 0;
}

/* --- What the cards do not say ------------------------------------------------ */

static void take_name(char *to, const char *from)
{
	struct text t = text_in(to, DEVICE_NAME_MAX);

	text_add(&t, from);
}

bool times_pair(const struct sound_device *d, struct latency_pair *pair)
{
	const struct sound_microphone *m = &d->microphone;

	if (!sounding_engine(d) || !hearing_hears(d))
		return false;
	*pair = (struct latency_pair) { .rate = d->count.card_rate,
		.microphone_rate = m->in.rate };
	take_name(pair->card, d->card.name);
	take_name(pair->through, d->card.api);
	take_name(pair->microphone, m->card.name);
	take_name(pair->microphone_through, m->card.api);
	return true;
}

const struct latency *times_latency(const struct sound_device *d)
{
	struct latency_pair pair;

	if (!d->microphone.known || !d->device.paced || !times_pair(d, &pair))
		return NULL;
	return latency_of(d->microphone.known, &pair);
}

/* --- Where samples belong ------------------------------------------------- */

static bool by_card(const struct sound_device *d)
{
	return sounding_engine(d) && d->microphone.sounding == d->number &&
	    d->microphone.out.stamps > 0;
}

static void place(
    const struct sound_device *d, struct heard_samples *r, int64_t number)
{
	const struct sound_microphone *m = &d->microphone;
	double rate = d->count.rate, heard_rate = line_rate(&m->in);
	int64_t time = line_time(&m->in, (double)number);

	if (!d->device.paced) {
		r->frames_each = rate / r->rate;
		r->frame = (double)number * r->frames_each;
	} else if (by_card(d)) {
		double each = rate / d->count.card_rate;

		r->frames_each = line_rate(&m->out) / heard_rate * each;
		r->frame = (double)d->count.origin +
		    line_number(&m->out, time) * each;
	} else {
		double ago = (double)(clock_steady_ns() - time) * 1e-9;

		r->frames_each = rate / heard_rate;
		r->frame = (double)d->count.frame - ago * rate;
	}
}

/* --- Taking them ------------------------------------------------------------ */

/* A block is looked at; whether it goes on where the last one ended. */
static bool follows(struct sound_microphone *m, const struct inlet_block *b)
{
	double by = 0;

	if (b->time_ns != 0 && b->number != m->stamped) {
		by = line_add(&m->in, b->number, b->time_ns);
		m->stamped = b->number;
		m->jumps += by != 0;
	}
	if (b->number != m->due || b->broken || fabs(by) > GAP_S)
		m->gap = true;
	return !m->gap;
}

/* Samples one after the other, as many as there are. */
static void take(
    struct sound_device *d, struct heard_samples *r, float *out, size_t max)
{
	struct sound_microphone *m = &d->microphone;
	struct inlet *in = &sound_hearing(d->shared)->inlet;
	struct inlet_block b;
	int64_t first = 0;

	while (r->count < max && inlet_peek(in, &b)) {
		bool more = follows(m, &b);

		if (!more && r->count > 0)
			break;
		if (r->count == 0) {
			r->gap = m->gap;
			first = b.number;
		}
		m->gap = false;
		r->count += inlet_take(in, out + r->count, max - r->count, &b);
		m->due = b.number + b.count;
	}
	if (r->count > 0)
		place(d, r, first);
}

/* Earlier by what the cards do not know of. */
static void correct(const struct sound_device *d, struct heard_samples *r)
{
	const struct latency *l = times_latency(d);

	if (l)
		r->frame -= l->us * 1e-6 * d->count.rate;
}

/* Unpaced: until it has heard what the session has, or what is asked for. */
static void wait_for_samples(const struct sound_device *d, size_t max)
{
	const struct sound_hearing *h = sound_hearing(d->shared);
	int64_t until = clock_steady_ns() + UNPACED_MS * INT64_C(1000000);
	int64_t due = d->count.frame * h->rate / h->order.rate;

	if (due - d->microphone.due > (int64_t)max)
		due = d->microphone.due + (int64_t)max;
	while (inlet_heard(&h->inlet) < due && clock_steady_ns() < until)
		sched_yield();
}

/* What came while the session stood still belongs nowhere. */
static bool stood(struct sound_device *d)
{
	struct sound_microphone *m = &d->microphone;

	if (m->lost_ms == d->count.lost_ms)
		return false;
	m->lost_ms = d->count.lost_ms;
	inlet_drop(&sound_hearing(d->shared)->inlet);
	m->gap = true;
	return true;
}

struct heard_samples times_take(struct sound_device *d, float *out, size_t max)
{
	struct sound_microphone *m = &d->microphone;
	struct heard_samples r = { .rate = m->in.rate };

	if (!hearing_hears(d) || stood(d))
		return r;
	if (!d->device.paced)
		wait_for_samples(
		    d, max < INLET_SAMPLES / 2 ? max : INLET_SAMPLES / 2);
	times_look(d);
	if (m->by_card != by_card(d)) {
		m->by_card = !m->by_card;
		m->gap = true;
	}
	take(d, &r, out, max);
	correct(d, &r);
	return r;
}
