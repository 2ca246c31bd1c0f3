/*
 * forecast_chance.c - random numbers, the same on every computer
 *
 * One random number of 64 bits becomes one number of the distribution, through
 * the inverse of its distribution function; so a number above a bound costs no
 * more than any other.
 */
#include <math.h>

#include "forecast_parts.h"

uint64_t chance_bits(uint64_t *state)
{
	uint64_t z = *state += UINT64_C(0x9e3779b97f4a7c15);

	z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
	z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
	return z ^ (z >> 31);
}

double chance_even(uint64_t *state)
{
	/* The middle of one of 2^52 equal parts. */
	return ((double)(chance_bits(state) >> 12) + 0.5) * 0x1p-52;
}

enum { TERMS = 8 };

/* c[0] x^7 + ... + c[7], over the same of d. */
static double ratio(const double *c, const double *d, double x)
{
	double over = c[0], under = d[0];

	for (int i = 1; i < TERMS; i++) {
		over = over * x + c[i];
		under = under * x + d[i];
	}
	return over / under;
}

/* sqrt(-ln p) of 5 and more: p below 1.4e-11. */
static double far_out(double r)
{
	static const double over[] = { 2.01033439929228813265e-7,
		2.71155556874348757815e-5, 1.24266094738807843860e-3,
		2.65321895265761230930e-2, 2.96560571828504891230e-1,
		1.78482653991729133580e+0, 5.46378491116411436990e+0,
		6.65790464350110377720e+0 };
	static const double under[] = { 2.04426310338993978564e-15,
		1.42151175831644588870e-7, 1.84631831751005468180e-5,
		7.86869131145613259100e-4, 1.48753612908506148525e-2,
		1.36929880922735805310e-1, 5.99832206555887937690e-1, 1.0 };

	return ratio(over, under, r - 5);
}

static double further_out(double r)
{
	static const double over[] = { 7.74545014278341407640e-4,
		2.27238449892691845833e-2, 2.41780725177450611770e-1,
		1.27045825245236838258e+0, 3.64784832476320460504e+0,
		5.76949722146069140550e+0, 4.63033784615654529590e+0,
		1.42343711074968357734e+0 };
	static const double under[] = { 1.05075007164441684324e-9,
		5.47593808499534494600e-4, 1.51986665636164571966e-2,
		1.48103976427480074590e-1, 6.89767334985100004550e-1,
		1.67638483018380384940e+0, 2.05319162663775882187e+0, 1.0 };

	return ratio(over, under, r - 1.6);
}

/*
 * M. J. Wichura, Algorithm AS 241: The Percentage Points of the Normal
 * Distribution, Applied Statistics 37 (3), 1988, 477-484: PPND16.
 */
double chance_quantile(double p)
{
	static const double over[] = { 2.509080928730122672700e+3,
		3.343057558358812810500e+4, 6.726577092700870085300e+4,
		4.592195393154987145700e+4, 1.373169376550946112500e+4,
		1.971590950306551442700e+3, 1.331416678917843774500e+2,
		3.387132872796366608000e+0 };
	static const double under[] = { 5.226495278852854561000e+3,
		2.872908573572194267400e+4, 3.930789580009271061000e+4,
		2.121379430158659586700e+4, 5.394196021424751107700e+3,
		6.871870074920579083000e+2, 4.231333070160091125200e+1, 1.0 };
	double q = p - 0.5;

	if (fabs(q) <= 0.425)
		return q * ratio(over, under, 0.180625 - q * q);

	double r = sqrt(-log(q < 0 ? p : 1 - p));
	double x = r <= 5 ? further_out(r) : far_out(r);

	return q < 0 ? -x : x;
}

double chance_normal(uint64_t *state)
{
	return chance_quantile(chance_even(state));
}

double chance_above(double bound)
{
	return 0.5 * erfc(bound / sqrt(2));
}

double chance_normal_above(uint64_t *state, double above)
{
	/* From the small end, so that no digits are lost. */
	return -chance_quantile(above * chance_even(state));
}
