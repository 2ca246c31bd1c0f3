/*
 * bench_track.c - tracks: how much faster than they sound they are written
 *
 * Runs the real binary (EVENHAND), which starts evenhand-file, and prints each
 * figure beside its goal: seconds of a track for a second of waiting.
 */
#include <sys/stat.h>

#include "bench.h"

enum { RUNS = 5 };

/* ms until a track is on the disk. */
static double track_once(
    const char *program, const char *file, const char *rate)
{
	const char *const words[] = { program, "track", "cello-homework",
		"--rate", rate, "--force", "-o", file, NULL };

	return run_ms(words);
}

/* Seconds of a WAV file of 16 bits and one channel, but for its head. */
static double seconds(const char *file, int rate)
{
	struct stat s;

	if (stat(file, &s) != 0)
		fail(file);
	return (double)s.st_size / 2 / rate;
}

static double times(
    const char *program, const char *file, const char *rate, double length)
{
	double ms[RUNS];

	for (int i = 0; i < RUNS; i++)
		ms[i] = track_once(program, file, rate);
	return length * 1e3 / median(ms, RUNS);
}

int main(void)
{
	const char *program = getenv("EVENHAND");
	char folder[40];
	double length;

	fresh_home(folder, sizeof folder);
	if (!program || chdir(folder) != 0)
		fail("EVENHAND and a folder");
	track_once(program, "a.wav", "48");
	length = seconds("a.wav", 48000);
	figure("a five-minute track as FLAC", "> 500",
	    times(program, "a.flac", "48", length), "times as fast");
	figure("the same as WAV", "> 500",
	    times(program, "a.wav", "48", length), "times as fast");
	figure("the same as Ogg", "> 100",
	    times(program, "a.ogg", "48", length), "times as fast");
	figure("FLAC at 96 kHz", "> 250",
	    times(program, "a.flac", "96", length), "times as fast");
	forget_home(folder);
	return 0;
}
