/*
 * bench_sound.c - from a key to silence at the loudspeaker, and what sound costs
 *
 *	key ─▶ evenhand ─▶ sound child ─▶ server ─▶ loudspeaker ─▶ pw-cat ─▶ here
 *	 t0                                                                t1
 *
 * Starts the virtual sound server of the tests, lets the real binary (EVENHAND)
 * practise on it and listens behind the server.  In the middle of a finger's
 * note, which lasts 225 ms, it presses Space and waits for the note to end.  What
 * it reads is stamped as it comes, so the way from the loudspeaker to here (two
 * cycles of the server at most) counts too: the true figure is a little better.
 */
#include <fcntl.h>
#include <poll.h>
#include <portaudio.h>
#include <signal.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../listen/bowed.h"
#include "../world/sound_program.h"
#include "bench.h"
#include "evenhand/world/device.h"
#include "wav.h"

enum {
	RATE = 48000,
	PRESSES = 20,
	PRESS_AFTER = RATE / 10, /* frames of a note; a knock has 70 ms */
	QUIET = RATE / 100,	 /* frames of nothing end a sound */
	PATIENCE_MS = 20000,	 /* for a note to come, and to end */
	APART_MS = 400,
	WATCH_S = 5,
	LEAD_S = 10,	/* until the first of the usual turns sounds */
	TURNS_S = 22,	/* two of them with their changes */
	OPEN_MS = 8000, /* for a microphone to open */
	FAMILY_MAX = 8,
};

static const char tool[] = "tests/tools/virtual-sound.sh";

/* Turns of a bow of one second, so that notes come often. */
static const char routine[] =
    "routine: Often\n"
    "player: {instrument: cello}\n"
    "bowing: {bow_seconds: 1, pulses: [2, 4], count_in_bows: 0,\n"
    "  because: a short one}\n"
    "turns: {order: [4, 3, 2, 1], bows_each: 1, change_seconds: 2}\n"
    "session: {minutes: 5}\n"
    "stages:\n"
    "  - {id: small, title: Small, place: string D, travel: semitone}\n";

/* Turns as usual: two bows of four seconds, and three for the change. */
static const char usual[] =
    "routine: Usual\n"
    "player: {instrument: cello}\n"
    "bowing: {count_in_bows: 1}\n"
    "stages:\n"
    "  - {id: small, title: Small, place: string D, travel: semitone}\n";

static char folder[] = "/tmp/evenhand-bench-XXXXXX";
static pid_t started[4]; /* and not yet ended */
static bool serving;

struct child {
	pid_t pid;
	int in, out; /* our ends */
};

static void say_and_exit(const char *what)
{
	fprintf(stderr, "bench_sound: %s\n", what);
	exit(1);
}

static void command(const char *verb)
{
	char line[256];

	snprintf(line, sizeof line, "%s %s", tool, verb);
	if (system(line) != 0)
		say_and_exit(line);
}

/* Runs a program of the server's. */
static struct child start(const char *const *words)
{
	const char *argv[20] = { "sh", tool, "run" };
	int in[2], out[2];
	struct child c;

	for (int i = 0; i < 16 && words[i]; i++)
		argv[3 + i] = words[i];
	if (pipe(in) || pipe(out))
		say_and_exit("no pipe");
	c.pid = fork();
	if (c.pid < 0)
		say_and_exit("no process");
	if (c.pid == 0) {
		dup2(in[0], 0);
		dup2(out[1], 1);
		dup2(open("/dev/null", O_WRONLY), 2);
		for (int fd = 3; fd < 64; fd++)
			close(fd);
		execv("/bin/sh", (char *const *)(uintptr_t)argv);
		_exit(127);
	}
	close(in[0]);
	close(out[1]);
	c.in = in[1];
	c.out = out[0];
	for (int i = 0; i < 4; i++)
		if (started[i] == 0) {
			started[i] = c.pid;
			break;
		}
	return c;
}

static void end(struct child *c)
{
	close(c->in);
	close(c->out);
	kill(c->pid, SIGTERM);
	waitpid(c->pid, NULL, 0);
	for (int i = 0; i < 4; i++)
		if (started[i] == c->pid)
			started[i] = 0;
}

/* Whatever went wrong, nobody and nothing stays behind. */
static void forget(void)
{
	char line[256];

	for (int i = 0; i < 4; i++)
		if (started[i] > 0)
			kill(started[i], SIGTERM);
	if (!serving)
		return;
	snprintf(line, sizeof line, "%s stop; rm -rf %s", tool, folder);
	if (system(line) != 0)
		fprintf(stderr, "bench_sound: left behind: %s\n", folder);
}

/* --- what is heard ----------------------------------------------------------- */

struct ear {
	int fd;
	size_t had; /* bytes of a frame that came in part */
	char rest[2 * sizeof(float)];
	int64_t sounding; /* frames of the sound that is on, 0 none */
	int64_t quiet;	  /* frames of nothing since */
	double last_ms;	  /* when the last frame of a sound came */
};

static void hear(struct ear *e, float x, double came_ms)
{
	if (x != 0) {
		e->sounding += e->quiet + 1;
		e->quiet = 0;
		e->last_ms = came_ms;
	} else if (e->sounding && ++e->quiet >= QUIET) {
		e->sounding = e->quiet = 0;
	}
}

/* Takes what has come; false at the end or after the patience. */
static bool listen(struct ear *e, int patience_ms)
{
	char bytes[16384];
	struct pollfd p = { .fd = e->fd, .events = POLLIN };

	if (poll(&p, 1, patience_ms) <= 0)
		return false;
	memcpy(bytes, e->rest, e->had);
	ssize_t n = read(e->fd, bytes + e->had, sizeof bytes - e->had);
	if (n <= 0)
		return false;
	double came = now_ms();
	size_t all = e->had + (size_t)n, at = 0;
	for (; at + sizeof e->rest <= all; at += sizeof e->rest) {
		float x;

		memcpy(&x, bytes + at, sizeof x);
		hear(e, x, came);
	}
	e->had = all - at;
	memcpy(e->rest, bytes + at, e->had);
	return true;
}

/* --- a key, and silence -------------------------------------------------------- */

static void press(struct child *c, char key)
{
	if (write(c->in, &key, 1) != 1)
		say_and_exit("the program takes no keys");
}

/* Throws its lines away, so that it never waits for a reader. */
static void drain(struct child *c)
{
	char bytes[4096];

	while (read(c->out, bytes, sizeof bytes) > 0)
		;
}

/* Waits for a note and silences it: ms to silence, or below 0. */
static double press_in_a_note(struct child *c, struct ear *e)
{
	double until = now_ms() + PATIENCE_MS, pressed;

	while (e->sounding < PRESS_AFTER) {
		if (!listen(e, PATIENCE_MS) || now_ms() > until)
			return -1;
		drain(c);
	}
	pressed = now_ms();
	press(c, ' ');
	while (e->sounding)
		if (!listen(e, PATIENCE_MS))
			return -1;
	return e->last_ms - pressed;
}

static void key_to_silence(struct child *c, struct ear *e, const char *beside)
{
	double ms[PRESSES];
	char name[80];

	for (int i = 0; i < PRESSES; i++) {
		ms[i] = press_in_a_note(c, e);
		if (ms[i] < 0)
			say_and_exit("no note was heard");
		/* The turn again; a key sooner would count as a repeat. */
		double from = now_ms();
		while (now_ms() - from < APART_MS && listen(e, 1000))
			;
		press(c, '\n');
	}
	snprintf(name, sizeof name, "key to silence%s, median", beside);
	figure(name, "< 50", median(ms, PRESSES), "ms");
	snprintf(name, sizeof name, "key to silence%s, worst of 20", beside);
	figure(name, "< 50", ms[PRESSES - 1], "ms");
}

/* --- what it costs --------------------------------------------------------------- */

/* A process, its children and theirs. */
static int family(pid_t pid, pid_t *out, int count)
{
	char path[64];
	long child;

	if (count == FAMILY_MAX)
		return count;
	out[count++] = pid;
	snprintf(
	    path, sizeof path, "/proc/%d/task/%d/children", (int)pid, (int)pid);
	FILE *f = fopen(path, "r");
	if (!f)
		return count;
	while (fscanf(f, "%ld", &child) == 1)
		count = family((pid_t)child, out, count);
	fclose(f);
	return count;
}

static int nothing(const void *in, void *out, unsigned long frames,
    const PaStreamCallbackTimeInfo *times, PaStreamCallbackFlags flags,
    void *data)
{
	(void)in;
	(void)times;
	(void)flags;
	(void)data;
	memset(out, 0, frames * sizeof(float));
	return paContinue;
}

/* A program that does nothing but keep PortAudio's default card open. */
static int bare(void)
{
	PaStream *s;

	if (Pa_Initialize() != paNoError ||
	    Pa_OpenDefaultStream(&s, 0, 1, paFloat32, RATE, 0, nothing, NULL) !=
		paNoError ||
	    Pa_StartStream(s) != paNoError)
		return 1;
	puts("open");
	fflush(stdout);
	pause();
	return 0;
}

static double bare_mb(const char *self)
{
	const char *const words[] = { self, "bare", NULL };
	struct child c = start(words);
	char line[8];
	double mb = 0;

	if (read(c.out, line, sizeof line) > 0) {
		sleep(1);
		mb = private_mb(c.pid);
	}
	end(&c);
	if (mb <= 0)
		say_and_exit("PortAudio alone does not open");
	return mb;
}

/* Percent of a core that a session takes for so long, and its memory then. */
static double watch(struct child *c, struct ear *e, int seconds, double *mb)
{
	pid_t who[FAMILY_MAX];
	int count = family(c->pid, who, 0);
	double s = 0, from = now_ms();

	for (int i = 0; i < count; i++)
		s -= used_s(who[i]);
	while (now_ms() - from < seconds * 1000 && listen(e, 1000))
		drain(c);
	*mb = 0;
	for (int i = 0; i < count; i++) {
		s += used_s(who[i]);
		*mb += private_mb(who[i]);
	}
	return s * 1e5 / (now_ms() - from);
}

/* Half a minute of a session is under way already. */
static void costs(struct child *c, struct ear *e, const char *self)
{
	double mb, share = watch(c, e, WATCH_S, &mb), alone = bare_mb(self);

	figure(
	    "share of a core, all its processes in a turn", "< 2", share, "%");
	figure("private memory of them", "", mb, "MB");
	beside("private memory of them", "PortAudio alone", alone);
	figure("    beyond PortAudio alone", "< 10", mb - alone, "MB");
}

/* --- what a microphone costs ------------------------------------------------------ */

/* Looks after a device and takes what it hears; samples that came. */
static long look(struct device *d, int ms)
{
	static float out[RATE];
	double from = now_ms();
	long count = 0;

	while (now_ms() - from < ms) {
		size_t got;

		usleep(50000);
		device_look(d);
		while ((got = device_hear(d, out, RATE).count) > 0)
			count += (long)got;
	}
	return count;
}

/* What a family has used so far, in s of a core. */
static double family_s(void)
{
	pid_t who[FAMILY_MAX];
	double s = 0;

	for (int i = family(getpid(), who, 0) - 1; i >= 0; i--)
		s += used_s(who[i]);
	return s;
}

/* Private memory of all but this process, which is a bench and no evenhand. */
static double children_mb(void)
{
	pid_t who[FAMILY_MAX];
	double mb = 0;

	for (int i = family(getpid(), who, 0) - 1; i > 0; i--)
		mb += private_mb(who[i]);
	return mb;
}

/*
 * A device for some seconds, with a microphone or without: "SHARE MB SAMPLES
 * DROPOUTS".
 */
static int device_alone(bool hears)
{
	const struct sound_wish wish = { .level = 500 }, any = { .level = 0 };
	struct fault f;
	struct sound_keeper *k = sound_keeper_open(sound_program(), &f);
	struct device *d = k ? device_sound_open(k, &wish, RATE, true, &f)
			     : NULL;
	double s, from, opened = now_ms();
	int before;
	long samples;

	if (!d)
		return 1;
	if (hears)
		device_listen(d, &any);
	while (device_state(d) != DEVICE_SOUNDS ||
	    (hears && device_microphone(d) != MICROPHONE_HEARS)) {
		if (now_ms() - opened > OPEN_MS)
			return 1;
		look(d, 50);
	}
	look(d, 1000);
	before = device_dropouts(d);
	from = now_ms();
	s = -family_s();
	samples = look(d, WATCH_S * 1000);
	s += family_s();
	printf("%f %f %ld %d\n", s * 1e5 / (now_ms() - from), children_mb(),
	    samples, device_dropouts(d) - before);
	device_close(d);
	sound_keeper_close(k);
	return 0;
}

static void run_alone(const char *self, const char *how, double *share,
    double *mb, int *dropouts, long *samples)
{
	const char *const words[] = { self, how, NULL };
	struct child c = start(words);
	char line[128] = "";
	ssize_t got = read(c.out, line, sizeof line - 1);

	end(&c);
	if (got <= 0 ||
	    sscanf(line, "%lf %lf %ld %d", share, mb, samples, dropouts) != 4)
		say_and_exit("a device alone does not open");
}

static void microphone_costs(const char *self)
{
	double deaf, deaf_mb, share, mb;
	int without, with;
	long samples;

	run_alone(self, "deaf", &deaf, &deaf_mb, &without, &samples);
	run_alone(self, "hears", &share, &mb, &with, &samples);
	figure("share of a core that a microphone takes", "< 2", share - deaf,
	    "%");
	figure("private memory that it takes", "< 8", mb - deaf_mb, "MB");
	figure("samples heard of those that were due", "> 99.9",
	    100.0 * (double)samples / (WATCH_S * RATE), "%");
	figure("interruptions of the sound in 5 s beside it", "= 0", with, "");
	beside("interruptions of the sound in 5 s beside it", "without it",
	    without);
}

/* A string that every finger's turn of the usual stage can hear. */
static void write_string(const char *path)
{
	const struct bowed b = { .rate = RATE,
		.seconds = LEAD_S + TURNS_S + 4,
		.hz = 174.6141, /* F3 */
		.travel_cents = 100,
		.pulses_a_second = 1.5,
		.glide_s = 0.1,
		.jitter_cents = 2,
		.turn_s = 4,
		.noise_db = -40 };
	struct bowed_sound s = bowed_make(&b);
	FILE *f = fopen(path, "wb");
	bool good = f && wav_head(f, RATE, (uint32_t)s.n);

	for (size_t i = 0; good && i < s.n; i++) {
		int16_t x = (int16_t)lrintf(s.x[i] * 32767);

		good = fwrite(&x, sizeof(x), 1, f) == 1;
	}
	free(s.x);
	if (!good || fclose(f) != 0)
		say_and_exit(path);
}

static void write_words(const char *path, const char *words)
{
	FILE *f = fopen(path, "w");

	if (!f || fputs(words, f) == EOF || fclose(f) == EOF)
		say_and_exit(path);
}

static void prepare(char *file, size_t size)
{
	if (!mkdtemp(folder))
		say_and_exit("no folder");
	home_is(folder);
	snprintf(file, size, "%s/server", folder);
	setenv("SOUND_FOLDER", file, 1);
	snprintf(file, size, "%s/often.yaml", folder);
	write_words(file, routine);
}

/* A session whose first turn has begun. */
static struct child practise(const char *const *words)
{
	struct child c = start(words);

	fcntl(c.out, F_SETFL, O_NONBLOCK);
	sleep(3);
	press(&c, '\n');
	usleep(500000);
	press(&c, '\n');
	return c;
}

/* Two turns of a session whose microphone hears a string all the while. */
static void listening_costs(const char *binary, struct ear *e)
{
	char file[128], wav[128], line[300];
	const char *const words[] = { binary, "--lines", "--listen", "--player",
		"Kite", file, NULL };
	struct child c;
	double mb, share;

	snprintf(file, sizeof file, "%s/usual.yaml", folder);
	write_words(file, usual);
	snprintf(wav, sizeof wav, "%s/string.wav", folder);
	write_string(wav);
	snprintf(line, sizeof line, "%s feed %s > /dev/null 2>&1 &", tool, wav);
	c = practise(words);
	if (system(line) != 0)
		say_and_exit(line);
	watch(&c, e, LEAD_S, &mb);
	share = watch(&c, e, TURNS_S, &mb);
	end(&c);
	snprintf(line, sizeof line,
	    "'%s' history --json --player Kite | grep -q tops_heard", binary);
	if (system(line) != 0)
		say_and_exit("the session that listens heard no string");
	figure("share of a core, all of a session that listens", "< 4", share,
	    "%");
	figure("private memory of it", "", mb, "MB");
}

static void all(const char *self, const char *binary, const char *file)
{
	const char *const plain[] = { binary, "--lines", "--marking", "turn",
		file, NULL };
	const char *const listening[] = { binary, "--lines", "--marking",
		"turn", "--listen", "--player", "Wren", file, NULL };
	static const char *const record[] = { "pw-cat", "-r", "--target",
		"loudspeaker", "--format", "f32", "--channels", "2",
		"--latency", "256", "-P", "{ stream.capture.sink = true }", "-",
		NULL };
	struct child ears = start(record);
	struct child c = practise(plain);
	struct ear e = { .fd = ears.out };

	key_to_silence(&c, &e, ", behind the server");
	costs(&c, &e, self);
	end(&c);
	c = practise(listening);
	key_to_silence(&c, &e, " beside a microphone");
	end(&c);
	listening_costs(binary, &e);
	end(&ears);
	microphone_costs(self);
}

int main(int argc, char **argv)
{
	char file[128];
	const char *binary = getenv("EVENHAND");

	if (argc > 1 && strcmp(argv[1], "bare") == 0)
		return bare();
	if (argc > 1)
		return device_alone(strcmp(argv[1], "hears") == 0);
	if (!binary)
		say_and_exit("EVENHAND must name the program");
	if (system("command -v pipewire wireplumber pw-cat > /dev/null") != 0) {
		puts("skipped: there is no pipewire here");
		return 0;
	}
	signal(SIGPIPE, SIG_IGN);
	prepare(file, sizeof file);
	serving = true;
	atexit(forget);
	command("start");
	all(argv[0], binary, file);
	return 0;
}
