/*
 * axis.c - what stands beside the picture of a recording: notes and times
 */
#include "evenhand/listen/axis.h"

#include <math.h>

#include "evenhand/base/text.h"
#include "evenhand/music/pitch.h"

enum { SECONDS = 60, HOUR = 3600 };

#define LEAST_SEMITONES 1.0

bool axis_notes(const struct outline *o, double reference_hz, double air,
    double *low, double *high)
{
	double low_hz, high_hz, height;
	bool any = outline_range(o, &low_hz, &high_hz);

	*low = pitch_note(any ? low_hz : reference_hz, reference_hz);
	*high = pitch_note(any ? high_hz : reference_hz, reference_hz);
	height = *high - *low;
	air = fmax(air * height, (LEAST_SEMITONES - height) / 2);
	*low -= air;
	*high += air;
	return any;
}

double axis_step(double seconds, double most)
{
	static const int steps[] = { 1, 2, 5, 10, 20, 30, 60, 120, 300, 600,
		1200, 1800, 3600, 7200, 14400 };

	for (size_t i = 0; i < sizeof(steps) / sizeof(steps[0]); i++)
		if (seconds <= steps[i] * most)
			return steps[i];
	return ceil(seconds / most);
}

void axis_time(double s, char name[AXIS_TIME_BYTES])
{
	struct text t = text_in(name, AXIS_TIME_BYTES);
	int whole = (int)s;

	if (whole >= HOUR)
		text_format(&t, "%d:%02d:%02d", whole / HOUR,
		    whole / SECONDS % SECONDS, whole % SECONDS);
	else
		text_format(&t, "%d:%02d", whole / SECONDS, whole % SECONDS);
}
