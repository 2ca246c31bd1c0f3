/*
 * engine_mix.c - the sum of what sounds, below -3 dB of full scale
 *
 * The engine cuts time where a sound begins or a slot fades, so between two
 * cuts each slot is in one of three states: it sounds, it fades or it is
 * silent.  Sounds are added in the order they began, whatever the block, for
 * the sum of floats depends on it.
 *
 * The limit bends the sum instead of cutting it: up to a half nothing changes,
 * above it the curve nears the ceiling and never meets it.
 */
#include <math.h>
#include <string.h>

#include "engine_parts.h"

/* -3 dB of full scale is 0.7079. */
#define KNEE 0.5F
#define CEILING 0.7F

float engine_level_at(const struct engine *e, int64_t frame)
{
	const struct engine_ramp *r = &e->level;
	int64_t passed = frame - r->start;

	if (passed >= e->ramp)
		return r->to;
	return r->from + (r->to - r->from) * (float)passed / (float)e->ramp;
}

static float limited(float x)
{
	float over = fabsf(x) - KNEE;

	if (!(over > 0))
		return x;
	over /= CEILING - KNEE;
	return copysignf(KNEE + (CEILING - KNEE) * over / (1 + over), x);
}

/*
 * Adds frames of one sound; fading begins at a frame or never.  engine_fill
 * cuts where a fade ends, so no count goes beyond it.
 */
static void add_voice(const struct engine *e, const struct engine_voice *v,
    int64_t frame, int count, float *sum)
{
	float sample[ENGINE_CHUNK];
	int64_t silence = e->playing[v->slot].silence;
	int64_t left = v->start + v->shape.length - frame;

	if (left <= 0)
		return;
	if (count > left)
		count = (int)left;
	shape_fill(&v->shape, (int32_t)(frame - v->start), count, sample);
	if (frame >= silence)
		for (int i = 0; i < count; i++)
			sample[i] *= 1 -
			    (float)(frame + i - silence) / (float)e->fade;
	for (int i = 0; i < count; i++)
		sum[i] += sample[i];
}

void engine_mix(struct engine *e, float *out, int64_t end)
{
	memset(out, 0, (size_t)(end - e->now) * sizeof *out);
	if (e->voices == 0)
		return;
	for (int64_t f = e->now; f < end; f += ENGINE_CHUNK) {
		int64_t left = end - f;
		int count = left < ENGINE_CHUNK ? (int)left : ENGINE_CHUNK;
		float *sum = out + (f - e->now);

		for (int v = 0; v < e->voices; v++)
			add_voice(e, &e->voice[v], f, count, sum);
		for (int i = 0; i < count; i++)
			sum[i] = limited(sum[i] * engine_level_at(e, f + i));
	}
}
