/*
 * sound_fixture.h - PortAudio without a sound card
 *
 * ALSA's own plugins stand in for a card: `null` takes everything at once, and
 * `file` above it keeps what it took.  Nothing of this computer's sound is
 * touched.  Elsewhere than on Linux there is no ALSA, and the tests are left
 * out.
 */
#ifndef EVENHAND_TESTS_SOUND_FIXTURE_H
#define EVENHAND_TESTS_SOUND_FIXTURE_H

#include <dirent.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

#include "evenhand/world/device.h"
#include "evenhand/world/sound_keeper.h"
#include "evenhand/world/sound_list.h"
#include "sound_program.h"

struct fixture {
	char folder[64], config[96], tap[96], log[128];
};

static inline void pause_ms(int ms)
{
	nanosleep(&(struct timespec) { ms / 1000, ms % 1000 * 1000000L }, NULL);
}

/* What ALSA is to take for its whole configuration; %s becomes the tap. */
static inline void fixture_cards(struct fixture *x, const char *config)
{
	FILE *f = fopen(x->config, "w");

	assert_non_null(f);
	for (const char *s = config; *s; s++)
		if (s[0] == '%' && s[1] == 's') {
			fputs(x->tap, f);
			s++;
		} else {
			fputc(*s, f);
		}
	fclose(f);
}

#define CARD_TAPPED \
	"pcm.tap { type file slave.pcm { type null } file '%s' " \
	"format raw }\npcm.!default { type plug slave.pcm tap }\n"
#define CARD_NULL "pcm.!default { type null }\n"
/* PortAudio 19.6 aborts where there is no default. */
#define CARD_NO_DEFAULT "pcm.other { type null }\n"
/* There is no such card. */
#define CARD_NONE "pcm.!default { type hw card 31 }\n"

static inline int fixture_open(void **state)
{
	static struct fixture x;

#ifndef __linux__
	skip();
#endif
	snprintf(x.folder, sizeof x.folder, "/tmp/evenhand-sound-XXXXXX");
	if (!mkdtemp(x.folder))
		return -1;
	snprintf(x.config, sizeof x.config, "%s/cards", x.folder);
	snprintf(x.tap, sizeof x.tap, "%s/tap", x.folder);
	snprintf(x.log, sizeof x.log, "%s/evenhand/sound.log", x.folder);
	setenv("ALSA_CONFIG_PATH", x.config, 1);
	setenv("XDG_STATE_HOME", x.folder, 1);
	setenv("JACK_NO_START_SERVER", "1", 1);
	/* A server of this name does not exist. */
	setenv("JACK_DEFAULT_SERVER", "evenhand-none", 1);
	*state = &x;
	return 0;
}

static inline int fixture_close(void **state)
{
	struct fixture *x = *state;
	char command[128];

	snprintf(command, sizeof command, "rm -rf %s", x->folder);
	return system(command);
}

/*
 * Looks after a device until it is in a state; whether it came to it.  A busy
 * computer gets ten times as long, here and below.
 */
static inline bool state_reached(
    struct device *d, enum device_state wanted, int ms)
{
	for (ms *= 10; ms > 0 && device_state(d) != wanted; ms -= 10) {
		pause_ms(10);
		device_look(d);
	}
	return device_state(d) == wanted;
}

/* Bytes of a file, -1 without one. */
static inline long size_of(const char *path)
{
	struct stat s;

	return stat(path, &s) == 0 ? (long)s.st_size : -1;
}

/* Processes whose parent is a process; the first in *one. */
static inline int children_of(pid_t parent, pid_t *one)
{
	DIR *folder = opendir("/proc");
	struct dirent *entry;
	int found = 0;

	while (folder && (entry = readdir(folder))) {
		char path[300], state;
		int pid = atoi(entry->d_name), of;
		FILE *f;

		snprintf(path, sizeof path, "/proc/%d/stat", pid);
		f = pid > 0 ? fopen(path, "r") : NULL;
		if (!f)
			continue;
		/* A dead one that nobody waited for does not count. */
		if (fscanf(f, "%*d (%*[^)]) %c %d", &state, &of) == 2 &&
		    of == (int)parent && state != 'Z') {
			*one = pid;
			found++;
		}
		fclose(f);
	}
	if (folder)
		closedir(folder);
	return found;
}

/* The keeper's process, and the sound child's (0: none). */
static inline pid_t keeper_process(void)
{
	pid_t pid = 0;

	return children_of(getpid(), &pid) == 1 ? pid : 0;
}

static inline pid_t child_process(pid_t keeper)
{
	pid_t pid = 0;

	return children_of(keeper, &pid) >= 1 ? pid : 0;
}

static inline bool gone_within(pid_t pid, int ms)
{
	char path[64], state = 'Z';

	snprintf(path, sizeof path, "/proc/%d/stat", (int)pid);
	for (ms *= 10; ms > 0; ms -= 10) {
		FILE *f = fopen(path, "r");
		bool read = f && fscanf(f, "%*d (%*[^)]) %c", &state) == 1;

		if (f)
			fclose(f);
		if (!read || state == 'Z')
			return true;
		pause_ms(10);
	}
	return false;
}

#endif
