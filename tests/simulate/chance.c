/*
 * chance.c - random numbers of one student (splitmix64)
 */
#include <math.h>

#include "simulate.h"

struct chance chance_of(uint64_t seed, uint64_t number)
{
	struct chance c = { seed };

	/* Students of one seed must not walk the same road. */
	c.state = chance_next(&c) + number * UINT64_C(0xd1b54a32d192ed03);
	c.state = chance_next(&c);
	return c;
}

uint64_t chance_next(struct chance *c)
{
	uint64_t z = c->state += UINT64_C(0x9e3779b97f4a7c15);

	z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
	z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
	return z ^ (z >> 31);
}

double chance_share(struct chance *c)
{
	return ldexp((double)(chance_next(c) >> 11), -53);
}

bool chance_is(struct chance *c, double probability)
{
	return chance_share(c) < probability;
}

int chance_whole(struct chance *c, int low, int high)
{
	return low + (int)(chance_share(c) * (high - low + 1));
}

double chance_bell(struct chance *c)
{
	double a = 1 - chance_share(c), b = chance_share(c);

	return sqrt(-2 * log(a)) * cos(6.283185307179586 * b);
}
