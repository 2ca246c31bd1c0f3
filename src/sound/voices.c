/*
 * voices.c - knocks, ticks and soft notes, a few multiplications each
 *
 * A partial's phase is a 32-bit part of a turn, step x frame, which wraps by
 * itself and is exact at any frame; its sine is a polynomial.  Struck sounds
 * die away as (1 - frame/length)^4: that looks like the exponential of a real
 * knock, but it ends at nothing.  High partials die away twice as fast, as they
 * do in wood.  A sweep's step grows from frame to frame, so its phase is a sum
 * of whole numbers, exact at any frame too.
 */
#include "voices.h"

#include <math.h>
#include <stddef.h>

/* What a voice is made of; hz 0 takes the sound's own pitch. */
struct material {
	bool struck;
	float hz;
	float attack_s, release_s;
	float ratio[PARTIALS]; /* of the partials to the first */
	float weight[PARTIALS];
	float to_hz; /* a sweep goes up to there; 0: it keeps its pitch */
};

/* A free bar sounds 2.76 times its lowest pitch next. */
static const struct material materials[VOICE_KINDS] = {
	[VOICE_DOWN] = { .struck = true,
	    .hz = 196,
	    .attack_s = 0.001F,
	    .ratio = { 1, 2.76F },
	    .weight = { 0.65F, 0.35F } },
	[VOICE_UP] = { .struck = true,
	    .hz = 392,
	    .attack_s = 0.001F,
	    .ratio = { 1, 2.76F },
	    .weight = { 0.65F, 0.35F } },
	[VOICE_TICK] = { .struck = true,
	    .hz = 1600,
	    .attack_s = 0.001F,
	    .ratio = { 1 },
	    .weight = { 1 } },
	[VOICE_COUNT] = { .struck = true,
	    .hz = 1200,
	    .attack_s = 0.001F,
	    .ratio = { 1 },
	    .weight = { 1 } },
	/* The upper partials let small loudspeakers carry a low note. */
	[VOICE_FINGER] = { .attack_s = 0.02F,
	    .release_s = 0.09F,
	    .ratio = { 1, 2, 3 },
	    .weight = { 0.7F, 0.2F, 0.1F } },
	[VOICE_TONE] = { .attack_s = 0.04F,
	    .release_s = 0.12F,
	    .ratio = { 1, 2 },
	    .weight = { 0.8F, 0.2F } },
	/* Small loudspeakers and speech microphones pass all of it. */
	[VOICE_SWEEP] = { .hz = 600,
	    .to_hz = 6000,
	    .attack_s = 0.01F,
	    .release_s = 0.01F,
	    .ratio = { 1 },
	    .weight = { 1 } },
};

/* One over a length of so many seconds, but at most half the sound. */
static float per_frame(float seconds, int rate, int32_t length)
{
	float frames = seconds * (float)rate;
	float half = 0.5F * (float)length;

	frames = frames < half ? frames : half;
	return frames > 1 ? 1 / frames : 1;
}

/*
 * How much a sweep's step grows a frame, in parts of 2^48 of a turn: it is added
 * so often that what is rounded off a step would be heard at high rates.
 */
static uint64_t bend(const struct material *m, int rate, int32_t length)
{
	double to = m->to_hz < 0.4F * (float)rate ? m->to_hz
						  : 0.4F * (float)rate;

	if (m->to_hz <= 0 || to <= m->hz)
		return 0;
	return (
	    uint64_t)((to - m->hz) / rate / length * 281474976710656.0 + 0.5);
}

void shape_make(struct shape *v, const struct sound *s, int rate)
{
	*v = (struct shape) { .length = s->length > 0 ? s->length : 1 };
	if (s->voice < 0 || s->voice >= VOICE_KINDS || s->length <= 0)
		return;
	const struct material *m = &materials[s->voice];
	double hz = m->hz > 0 ? m->hz : s->millihertz / 1000.0;

	v->struck = m->struck;
	v->level = (float)s->level / 1000;
	v->attack = per_frame(m->attack_s, rate, s->length);
	v->release = per_frame(m->release_s, rate, s->length);
	v->fall = 1 / (float)s->length;
	v->bend = bend(m, rate, s->length);
	for (size_t i = 0; i < PARTIALS; i++) {
		double turns = hz * m->ratio[i] / rate;

		/* Too high for the rate: it would fold back down. */
		if (turns <= 0 || turns > 0.45)
			continue;
		v->step[i] = (uint32_t)(turns * 4294967296.0 + 0.5);
		v->weight[i] = m->weight[i];
	}
}

/* Sine of a part of a turn, off by less than 1e-6. */
static float sine(uint32_t phase)
{
	float x = (float)(int32_t)phase * (1 / 2147483648.0F);
	float a = fabsf(x);
	float t = a > 0.5F ? 1 - a : a;
	float q = t * t;
	float y = t *
	    (3.14159265F +
		q *
		    (-5.16770664F +
			q *
			    (2.54999794F +
				q * (-0.59776335F + q * 0.07658752F))));

	return x < 0 ? -y : y;
}

static float smooth(float x)
{
	x = x < 1 ? x : 1;
	return x * x * (3 - 2 * x);
}

static float struck_at(const struct shape *v, int32_t i)
{
	float rise = (float)(i + 1) * v->attack;
	float left = 1 - (float)i * v->fall;
	float fall = left * left * left * left;
	float sum = v->weight[0] * sine(v->step[0] * (uint32_t)(i + 1));

	sum += fall * v->weight[1] * sine(v->step[1] * (uint32_t)(i + 1));
	return v->level * (rise < 1 ? rise : 1) * fall * sum;
}

static float held_at(const struct shape *v, int32_t i)
{
	float rise = smooth((float)(i + 1) * v->attack);
	float fall = smooth((float)(v->length - i) * v->release);
	float sum = 0;

	for (size_t k = 0; k < PARTIALS; k++)
		sum += v->weight[k] * sine(v->step[k] * (uint32_t)(i + 1));
	return v->level * rise * fall * sum;
}

/* The same with a step that grows: 0 + 1 + .. + i times the bend is added. */
static float swept_at(const struct shape *v, int32_t i)
{
	float rise = smooth((float)(i + 1) * v->attack);
	float fall = smooth((float)(v->length - i) * v->release);
	uint64_t grown = (uint64_t)i * (uint64_t)(i + 1) / 2;
	uint32_t phase = v->step[0] * (uint32_t)(i + 1) +
	    (uint32_t)(v->bend * grown >> 16);

	return v->level * rise * fall * v->weight[0] * sine(phase);
}

void shape_fill(const struct shape *v, int32_t from, int32_t count, float *out)
{
	if (v->struck)
		for (int32_t i = 0; i < count; i++)
			out[i] = struck_at(v, from + i);
	else if (v->bend > 0)
		for (int32_t i = 0; i < count; i++)
			out[i] = swept_at(v, from + i);
	else
		for (int32_t i = 0; i < count; i++)
			out[i] = held_at(v, from + i);
}
