/*
 * sound_measure.c - `evenhand sound --measure`: how late a microphone hears
 *
 *	quiet: 2 chirps ─▶ not both heard: twice as loud, up to the loudness
 *	both heard: 12 chirps ─▶ judged ─▶ kept, or why not
 *
 * The loudness grows so that nobody is startled, and no ear is hurt.
 */
#include <math.h>
#include <stdlib.h>

#include "evenhand/world/clock.h"
#include "evenhand/world/latency.h"
#include "options.h"
#include "sound_chirp.h"
#include "sound_verb.h"

enum {
	OPEN_MS = 8000,	  /* for the microphone to open */
	STEADY_MS = 1000, /* for the clocks of both to be known */
	TRIES = 2,	  /* at each loudness */
	AGAIN = 12,	  /* so many that were interrupted are played again */
	QUIETEST = 5,
	QUIETER = 8, /* it begins at this part of the loudness */
	PIECE = 4096,
};

struct measuring {
	struct sound_verb *verb;
	struct device *device;
	struct chirp chirp;
	int percent; /* loudness */
	enum sweep_way way[SWEEPS];
	double us[SWEEPS];
};

static bool goes_on(const struct measuring *m)
{
	return !sound_stopped() && chirp_both_there(m->device);
}

/* Whether it wants to be louder: some of a few chirps were not heard. */
static bool too_quiet(struct measuring *m)
{
	double us;

	for (int i = 0; i < TRIES && goes_on(m); i++) {
		enum sweep_way way = chirp_play(&m->chirp, m->device, &us);

		if (way == SWEEP_QUIET || way == SWEEP_NOISE)
			return true;
	}
	return false;
}

/* As quiet as they are heard, or as loud as may be.  False: no more print. */
static bool find_loudness(struct measuring *m)
{
	int most = m->verb->chosen.now.loudness;

	m->percent = most / QUIETER > QUIETEST ? most / QUIETER : QUIETEST;
	for (;;) {
		m->percent = m->percent < most ? m->percent : most;
		device_level(m->device, choices_level(m->percent));
		if (!sound_print(m->verb,
			message_with(M_DELAY_TRIES, WHOLE(m->percent))))
			return false;
		if (!too_quiet(m) || m->percent == most)
			return true;
		m->percent *= 2;
	}
}

static bool play_all(struct measuring *m)
{
	int heard = 0, again = AGAIN;

	for (int i = 0; i < SWEEPS; i++) {
		do
			m->way[i] = goes_on(m)
			    ? chirp_play(&m->chirp, m->device, &m->us[i])
			    : SWEEP_BROKEN;
		while (m->way[i] == SWEEP_BROKEN && goes_on(m) && again-- > 0);
		heard += m->way[i] == SWEEP_HEARD;
		if ((i + 1) % 4 == 0 &&
		    !sound_print(m->verb,
			message_with(M_DELAY_GOES, WHOLE(i + 1), WHOLE(SWEEPS),
			    WHOLE(heard))))
			return false;
	}
	return true;
}

/* --- What came of it ----------------------------------------------------------- */

/* To a tenth, which is more than anybody hears. */
static double ms_of(int us)
{
	return round(us / 100.0) / 10;
}

static int refuse(const struct measuring *m, enum latency_trust trust,
    const struct latency_sum *sum)
{
	struct argument heard = WHOLE(sum->heard[SWEEP_HEARD]);
	struct argument all = WHOLE(SWEEPS);
	struct message why = message_of(M_NONE);

	switch (trust) {
	case LATENCY_GOOD:
		break;
	case LATENCY_QUIET:
		why = m->chirp.silent ? message_of(M_DELAY_SILENT)
				      : message_with(M_DELAY_QUIET, heard, all);
		break;
	case LATENCY_NOISE:
		why = message_with(M_DELAY_NOISE, heard, all);
		break;
	case LATENCY_BROKEN:
		why = message_with(
		    M_DELAY_BROKEN, WHOLE(sum->heard[SWEEP_BROKEN]), all);
		break;
	case LATENCY_CLIPPED:
		why = message_of(M_DELAY_CLIPPED);
		break;
	case LATENCY_ECHO:
		why = message_of(M_DELAY_ECHO);
		break;
	case LATENCY_SPREAD:
		why = message_with(
		    M_DELAY_SPREAD, NUMBER(ms_of(sum->spread_us)));
		break;
	case LATENCY_ODD:
		why = message_with(M_DELAY_ODD, NUMBER(ms_of(sum->us)));
		break;
	}
	command_say(&why);
	return EXIT_UNAVAILABLE;
}

static int keep_delay(struct measuring *m, const struct latency_sum *sum)
{
	struct latency one = { .us = sum->us,
		.spread_us = sum->spread_us,
		.day = moment_day(clock_now()) };
	struct latencies *all = calloc(1, sizeof *all);
	struct faults faults = { 0 };
	struct fault f;
	bool kept;

	if (!sound_print(m->verb,
		message_with(M_DELAY_DONE, NUMBER(ms_of(sum->us)),
		    NUMBER(fmax(ms_of(sum->spread_us), 0.1)))) ||
	    !all || !device_pair(m->device, &one.pair)) {
		free(all);
		return EXIT_OS;
	}
	/* One that is broken is written anew. */
	latency_read(all, &faults);
	kept = latency_keep(all, &one, &f);
	if (!kept)
		command_fault(&f);
	free(all);
	if (!kept)
		return EXIT_IO;
	return sound_print(m->verb, message_of(M_DELAY_KEPT)) ? EXIT_GOOD
							      : EXIT_IO;
}

static int measure(struct measuring *m)
{
	struct message lost = message_of(M_DELAY_LOST);
	struct latency_sum sum;
	enum latency_trust trust;

	if (!find_loudness(m) || !play_all(m))
		return EXIT_IO;
	if (sound_stopped())
		return EXIT_GOOD;
	if (!chirp_both_there(m->device)) {
		command_say(&lost);
		return EXIT_UNAVAILABLE;
	}
	trust = latency_judge(m->way, m->us, SWEEPS, &sum);
	return trust == LATENCY_GOOD ? keep_delay(m, &sum)
				     : refuse(m, trust, &sum);
}

/* Both are open, and their clocks had time to be known. */
static bool microphone_opened(struct device *d)
{
	int64_t until = clock_steady_ms() + OPEN_MS, settled = INT64_MAX;
	static float piece[PIECE];

	while (!sound_stopped() && clock_steady_ms() < until &&
	    clock_steady_ms() < settled &&
	    device_microphone(d) != MICROPHONE_MISSING &&
	    device_microphone(d) != MICROPHONE_NO_ROOM) {
		device_look(d);
		if (chirp_both_there(d) && settled == INT64_MAX)
			settled = clock_steady_ms() + STEADY_MS;
		while (device_hear(d, piece, PIECE).count > 0)
			;
		clock_sleep_us(SOUND_LOOK_US);
	}
	return chirp_both_there(d);
}

int sound_measure(struct sound_verb *t, struct device *d)
{
	struct measuring m = { .verb = t, .device = d };
	const char *name = t->microphone.name;
	struct message deaf = *name ? message_with(M_DELAY_NO_SUCH, TEXT(name))
				    : message_of(M_DELAY_DEAF);
	struct latency_pair pair;
	int status = EXIT_OS;

	device_listen(d, &t->microphone);
	if (!sound_opened(d))
		return sound_stopped() ? EXIT_GOOD : sound_say_missing(d);
	if (!microphone_opened(d) || !device_pair(d, &pair)) {
		if (device_microphone(d) == MICROPHONE_NO_ROOM)
			deaf = message_of(M_DEVICE_NO_KEEPER);
		if (!sound_stopped())
			command_say(&deaf);
		return EXIT_UNAVAILABLE;
	}
	if (!sound_print(t,
		message_with(
		    M_DELAY_BEGINS, TEXT(pair.card), TEXT(pair.microphone))) ||
	    !sound_print(t, message_of(M_DELAY_CAUTION)))
		return EXIT_IO;
	if (chirp_make(&m.chirp, pair.microphone_rate))
		status = measure(&m);
	chirp_done(&m.chirp);
	return status;
}
