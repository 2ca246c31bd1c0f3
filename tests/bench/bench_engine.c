/*
 * bench_engine.c - are the ticks in place, and what does the callback cost?
 *
 * A day of practice is rendered at each usual rate and every onset is looked
 * up in its samples, against floor(k T fs / (1000 n) + 1/2) in 128 bits.  Then
 * single blocks of 64 frames are timed as a sound card would ask for them, in
 * the densest passages a routine may hold.
 */
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bench.h"
#include "evenhand/score/pulse.h"
#include "evenhand/sound/engine.h"

enum {
	DAY_S = 86400,
	BLOCK = 512,
	SMALL_BLOCK = 64,
	BLOCKS = 400000,
	BOW_MS = 3300,
	PULSES = 8,
	BOWS = 8,
	TURNS = 8,
	PASSAGE_BOWS = BOWS * TURNS,
};

__extension__ typedef __int128 wide;

static struct engine *new_engine(int rate)
{
	size_t size = (engine_size() + 63) / 64 * 64;
	struct engine *e = aligned_alloc(64, size);

	if (!e)
		exit(1);
	memset(e, 0, size);
	engine_init(e, rate, 700);
	return e;
}

static void play(struct engine *e, const struct passage *p, int64_t frame)
{
	int slot;
	struct score *s = engine_slot(e, &slot);

	if (!s || !score_make(s, p, engine_rate(e)) ||
	    !engine_play(e, slot, frame)) {
		fprintf(stderr, "a passage could not be played\n");
		exit(1);
	}
}

/* --- a day of ticks --------------------------------------------------- */

/* Pulse k of the day: its exact place, rounded once. */
static int64_t exact(int64_t k, int rate)
{
	wide num = (wide)k * BOW_MS * rate, den = (wide)1000 * PULSES;

	return (int64_t)((2 * num + den) / (2 * den));
}

/* Where the samples of a day begin to sound, one after the other. */
struct search {
	int rate;
	int quiet;	 /* zeros seen in a row */
	int64_t found;	 /* onsets so far */
	int64_t wrong;	 /* frames of error, summed */
	int64_t largest; /* the largest error */
};

static void found_at(struct search *s, int64_t frame)
{
	int64_t error = frame - exact(s->found, s->rate);

	error = error < 0 ? -error : error;
	s->wrong += error;
	if (error > s->largest)
		s->largest = error;
	s->found++;
}

static void search(struct search *s, const float *x, int n, int64_t first)
{
	for (int i = 0; i < n; i++) {
		if (x[i] == 0) {
			s->quiet++;
			continue;
		}
		/* A sound crosses zero, but does not stay there. */
		if (s->quiet > 8 || first + i == 0)
			found_at(s, first + i);
		s->quiet = 0;
	}
}

static bool all_zero(const float *x, int n)
{
	uint32_t bits = 0, one;

	for (int i = 0; i < n; i++) {
		memcpy(&one, &x[i], sizeof one);
		bits |= one;
	}
	return bits == 0;
}

/* 64 bows in a row without a change between them, and then the next 64. */
static struct passage day_passage(void)
{
	return (struct passage) {
		.bow_ms = BOW_MS,
		.pulses = PULSES,
		.bows_each = BOWS,
		.turns = TURNS,
	};
}

static void day(int rate)
{
	static float block[BLOCK];
	struct engine *e = new_engine(rate);
	struct passage p = day_passage();
	struct search s = { .rate = rate };
	int64_t end = (int64_t)DAY_S * rate, next = 0;
	char what[64];

	for (int64_t now = 0; now < end; now += BLOCK) {
		/* Decided ahead, exactly where the last one ends. */
		int64_t start = exact(next * PASSAGE_BOWS * PULSES, rate);
		if (start <= now + rate) {
			engine_collect(e);
			play(e, &p, start);
			next++;
		}
		engine_fill(e, block, BLOCK);
		if (all_zero(block, BLOCK))
			s.quiet += BLOCK;
		else
			search(&s, block, BLOCK, now);
	}
	int64_t asked = 0;
	while (exact(asked, rate) < (end + BLOCK - 1) / BLOCK * BLOCK)
		asked++;
	snprintf(
	    what, sizeof what, "tick position error, a day at %d Hz", rate);
	figure(what, "= 0", (double)s.largest, "frames");
	printf("(%lld sounds found of %lld asked)\n", (long long)s.found,
	    (long long)asked);
	if (s.largest != 0 || s.found != asked)
		exit(1);
	free(e);
}

/* --- what a block costs ----------------------------------------------- */

/* The most a routine may ask for in a second: 16 pulses, and all notes. */
static struct passage dense_passage(void)
{
	return (struct passage) {
		.settle_ms = 3000,
		.count_in_bows = 1,
		.bow_ms = 1000,
		.pulses = 16,
		.bows_each = 8,
		.turns = 8,
		.unit = { 8, 8, 8, 8, 8, 8, 8, 8 },
		.coming = 8,
		.change_ms = 1000,
		.last_change_ms = 1000,
		.tone = { 164814, 184997 },
	};
}

static void time_blocks(struct passage p, const char *name)
{
	static double us[BLOCKS];
	static float block[SMALL_BLOCK];
	struct engine *e = new_engine(48000);
	double whole = SMALL_BLOCK / 48000.0 * 1e6;
	int64_t next = 0;
	char what[80];

	for (int i = 0; i < BLOCKS; i++) {
		if (engine_frame(e) + 48000 > next) {
			engine_collect(e);
			play(e, &p, next);
			next += passage_ms(&p) * 48;
		}
		double t = now_ms();
		engine_fill(e, block, SMALL_BLOCK);
		us[i] = (now_ms() - t) * 1e3;
	}
	qsort(us, BLOCKS, sizeof *us, by_size);
	snprintf(what, sizeof what, "%s: 99.9th percentile of a block", name);
	figure(what, "< 0.25", 100 * us[BLOCKS / 1000 * 999] / whole, "%");
	snprintf(what, sizeof what, "%s: median of a block", name);
	figure(what, "", 100 * us[BLOCKS / 2] / whole, "%");
	/* The kernel may take the processor away: it is in here too. */
	snprintf(what, sizeof what, "%s: the longest block", name);
	figure(what, "< 100", 100 * us[BLOCKS - 1] / whole, "%");
	free(e);
}

int main(void)
{
	struct passage usual = dense_passage();

	usual.bow_ms = 4000;
	usual.pulses = 8;
	usual.bows_each = 2;
	usual.turns = 4;
	usual.change_ms = 4000;
	usual.last_change_ms = 4000;
	day(44100);
	day(48000);
	day(88200);
	day(96000);
	printf("(blocks of %d frames at 48000 Hz)\n", SMALL_BLOCK);
	time_blocks(usual, "a usual round");
	time_blocks(dense_passage(), "the densest round");
	return 0;
}
