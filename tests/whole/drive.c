/*
 * drive.c - a sound device for some seconds, and how long it keeps one waiting
 *
 *	drive SECONDS [CARD [THROUGH]]
 *
 * Plays bows of a second end to end and does what a session does meanwhile:
 * looks after the device every 50 ms and asks it all there is to ask.  Says each
 * change of state with the ms since the start, and at the end:
 *
 *	longest call 40 us
 *	longest round 50.4 ms
 *	frames 960000 in 20000 ms, 0 ms lost, off by 3 ms
 *	dropouts 0, dropped 0
 *	spent 24 ms
 *
 * A round is from one look to the next, so it holds the 50 ms of waiting.  Tests
 * break the sound while it runs.
 *
 * With HEAR set it listens to the usual microphone too, and says of each change
 *
 *	1234 microphone hears
 *
 * and of each pulse that is heard how many ms after its frame that was, by the
 * times of both cards:
 *
 *	pulse 50.09
 *
 * With CORRECT set too, the delays that were measured are taken away.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <time.h>

#include "../world/sound_program.h"
#include "evenhand/base/frames.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/device.h"
#include "evenhand/world/latency.h"
#include "evenhand/world/sound_keeper.h"

enum {
	RATE = 48000,
	LOOK_MS = 50,
	LEVEL = 500,
	BOWS = 8,
	FIRST = RATE / 10, /* frame of the first pulse ... */
	APART = RATE / 4,  /* ... and from each to the next */
	QUIET = RATE / 10, /* frames of nothing before one */
	SOON = RATE / 2,   /* after a gap nobody counts */
};

static const char *const states[] = {
	[DEVICE_UNHEARD] = "unheard",
	[DEVICE_OPENING] = "opening",
	[DEVICE_SOUNDS] = "sounds",
	[DEVICE_LOST] = "lost",
	[DEVICE_MISSING] = "missing",
};

static int64_t begun, longest_call, longest_round, last_look;
static int64_t next_passage;

/* Ends a call that began at a time. */
static void took(int64_t since)
{
	int64_t ns = clock_steady_ns() - since;

	if (ns > longest_call)
		longest_call = ns;
}

static void say(struct device *d)
{
	char words[512];
	struct message m = device_sentence(d);

	message_text(&m, words, sizeof words);
	printf("%lld %s (%s) %s\n",
	    (long long)(clock_steady_ns() - begun) / 1000000,
	    states[device_state(d)], device_name(d), m.id ? words : "");
	fflush(stdout);
}

/* The next eight bows when those before are nearly over. */
static void play_on(struct device *d)
{
	static const struct passage bows = {
		.bow_ms = 1000,
		.pulses = 4,
		.bows_each = BOWS,
		.turns = 1,
	};
	int64_t since = clock_steady_ns();

	if (device_frame(d) + RATE < next_passage)
		return;
	if (!device_play(d, &bows, next_passage))
		printf("a passage could not be played\n");
	took(since);
	next_passage += frames_of_ms(passage_ms(&bows), RATE);
}

/* --- the microphone ------------------------------------------------------- */

static const char *const hearing[] = {
	[MICROPHONE_UNWISHED] = "unwished",
	[MICROPHONE_OPENING] = "opening",
	[MICROPHONE_HEARS] = "hears",
	[MICROPHONE_MISSING] = "missing",
	[MICROPHONE_NO_ROOM] = "no room",
	[MICROPHONE_LOST] = "lost",
};

/* Pulses in what was heard: the first sample of note after some quiet. */
static void find_pulses(const float *x, const struct heard_samples *h)
{
	static int64_t quiet;

	if (h->gap)
		quiet = -SOON;
	for (size_t i = 0; i < h->count; i++) {
		double at = h->frame + (double)i * h->frames_each - FIRST;

		if (fabsf(x[i]) < 0.01F) {
			quiet++;
			continue;
		}
		if (quiet > QUIET)
			printf(
			    "pulse %.2f\n", remainder(at, APART) * 1000 / RATE);
		quiet = quiet < 0 ? quiet : 0;
	}
}

static void hear(struct device *d)
{
	static enum microphone_state said = MICROPHONE_UNWISHED;
	static float x[RATE];
	struct heard_samples h;
	int64_t since = clock_steady_ns();

	while ((h = device_hear(d, x, RATE)).count > 0) {
		took(since);
		find_pulses(x, &h);
		since = clock_steady_ns();
	}
	took(since);
	if (device_microphone(d) != said)
		printf("%lld microphone %s\n",
		    (long long)(clock_steady_ns() - begun) / 1000000,
		    hearing[device_microphone(d)]);
	said = device_microphone(d);
	fflush(stdout);
}

/* ---------------------------------------------------------------------------- */

static void look(struct device *d)
{
	static enum device_state said = DEVICE_UNHEARD;
	int64_t since = clock_steady_ns();

	if (last_look && since - last_look > longest_round)
		longest_round = since - last_look;
	last_look = since;
	device_look(d);
	took(since);
	since = clock_steady_ns();
	(void)device_heard(d);
	(void)device_lost_ms(d);
	(void)device_state(d);
	took(since);
	if (device_state(d) != said)
		say(d);
	said = device_state(d);
}

static void finish(struct device *d)
{
	int64_t ms = (clock_steady_ns() - begun) / 1000000;
	int64_t frames = device_frame(d), lost = device_lost_ms(d);
	struct rusage own;

	say(d);
	printf("longest call %lld us\n", (long long)longest_call / 1000);
	printf("longest round %.1f ms\n", (double)longest_round / 1e6);
	printf("frames %lld in %lld ms, %lld ms lost, off by %lld ms\n",
	    (long long)frames, (long long)ms, (long long)lost,
	    (long long)llabs(frames * 1000 / RATE + lost - ms));
	printf("dropouts %d, dropped %llu\n", device_dropouts(d),
	    (unsigned long long)device_dropped(d));
	getrusage(RUSAGE_SELF, &own);
	printf("spent %ld ms\n",
	    own.ru_utime.tv_sec * 1000 + own.ru_utime.tv_usec / 1000 +
		own.ru_stime.tv_sec * 1000 + own.ru_stime.tv_usec / 1000);
}

/* Takes away what was measured. */
static void correct(struct device *d)
{
	static struct latencies known;
	struct faults faults = { 0 };

	latency_read(&known, &faults);
	device_correct(d, &known);
	if (faults.count > 0)
		printf("the delays cannot be read\n");
}

int main(int argc, char **argv)
{
	struct sound_wish wish = { .level = LEVEL };
	int64_t seconds = argc > 1 ? atoi(argv[1]) : 5;
	struct fault f;

	if (argc > 2)
		snprintf(wish.name, sizeof wish.name, "%s", argv[2]);
	if (argc > 3)
		snprintf(wish.api, sizeof wish.api, "%s", argv[3]);

	struct sound_keeper *k = sound_keeper_open(sound_program(), &f);
	struct device *d = k ? device_sound_open(k, &wish, RATE, true, &f)
			     : NULL;
	if (!d)
		return 1;
	if (getenv("HEAR"))
		device_listen(d, &(struct sound_wish) { .level = 0 });
	if (getenv("CORRECT"))
		correct(d);
	begun = clock_steady_ns();
	next_passage = FIRST;
	while (clock_steady_ns() - begun < seconds * 1000000000) {
		look(d);
		play_on(d);
		hear(d);
		nanosleep(
		    &(struct timespec) { .tv_nsec = LOOK_MS * 1000000L }, NULL);
	}
	finish(d);
	int64_t since = clock_steady_ns();
	device_close(d);
	printf("closed in %lld us\n",
	    (long long)(clock_steady_ns() - since) / 1000);
	sound_keeper_close(k);
	return 0;
}
