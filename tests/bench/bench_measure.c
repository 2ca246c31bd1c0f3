/*
 * bench_measure.c - an hour's recording, measured by the program itself
 *
 * Turns of two bows, glides and vibrato by turns, with a change between them:
 * an hour of 48000 samples a second in 16 bits, of which nothing is told.
 */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <unistd.h>

#include "../listen/bowed.h"
#include "bench.h"
#include "wav.h"

enum { RATE = 48000, SECONDS = 3600, CHANGE = 4 * RATE, LOOK_US = 100000 };

/* A turn as 16 bits, with the change behind it. */
static int16_t *make_turn(const struct bowed *b, size_t *n)
{
	struct bowed_sound s = bowed_make(b);
	int16_t *out = calloc(s.n + CHANGE, sizeof(*out));

	for (size_t i = 0; out && i < s.n; i++)
		out[i] = (int16_t)lrintf(s.x[i] * 32767);
	*n = s.n + CHANGE;
	free(s.x);
	return out;
}

static bool make_hour(const char *path)
{
	struct bowed glide = { .rate = RATE,
		.seconds = 8,
		.hz = 164.8138,
		.jitter_cents = 2,
		.turn_s = 4,
		.noise_db = -40,
		.travel_cents = 200,
		.pulses_a_second = 1.5,
		.glide_s = 0.12 };
	struct bowed swing = { .rate = RATE,
		.seconds = 8,
		.hz = 146.8324,
		.jitter_cents = 2,
		.turn_s = 4,
		.noise_db = -40,
		.swing_hz = 5.5,
		.swing_cents = 20 };
	size_t n[2], left = (size_t)RATE * SECONDS;
	int16_t *turn[2] = { make_turn(&glide, &n[0]),
		make_turn(&swing, &n[1]) };
	FILE *f = fopen(path, "wb");
	bool good = f && turn[0] && turn[1] &&
	    wav_head(f, RATE, (uint32_t)left);

	for (int i = 0; good && left > 0; i = !i) {
		size_t part = n[i] < left ? n[i] : left;

		good = fwrite(turn[i], sizeof(*turn[i]), part, f) == part;
		left -= part;
	}
	free(turn[0]);
	free(turn[1]);
	return f && fclose(f) == 0 && good;
}

/* Starts it, looks at its memory now and then, and tells the most of it. */
static double measure(const char *program, const char *path)
{
	const char *const words[] = { program, "measure", path, NULL };
	double most = 0, mb;
	pid_t child = start_quiet(words);
	int status;

	while (waitpid(child, &status, WNOHANG) == 0) {
		mb = private_mb(child);
		most = mb > most ? mb : most;
		usleep(LOOK_US);
	}
	if (status != 0)
		fail("measure");
	return most;
}

int main(void)
{
	const char *program = getenv("EVENHAND");
	char path[] = "/var/tmp/evenhand-hour-XXXXXX";
	int file = mkstemp(path);
	struct rusage used;
	double begun, mb;

	if (!program || file < 0)
		fail("EVENHAND");
	close(file);
	if (!make_hour(path)) {
		unlink(path);
		fail("an hour's recording");
	}
	begun = now_ms();
	mb = measure(program, path);
	figure("an hour's recording measured", "< 60",
	    (now_ms() - begun) / 1000, "s");
	getrusage(RUSAGE_CHILDREN, &used);
	figure("of a core, reading the file included", "",
	    (double)used.ru_utime.tv_sec + (double)used.ru_stime.tv_sec, "s");
	figure("memory it took at most", "< 64", mb, "MB");
	unlink(path);
	return 0;
}
