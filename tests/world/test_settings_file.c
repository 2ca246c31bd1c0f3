/*
 * The settings file on a real disk: what is kept, what is left as it was
 * written, and what is said when nothing can be kept.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

#include <cmocka.h>

#include <fcntl.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "evenhand/world/settings_file.h"

enum { BYTES_MAX = 4096, PATH_ROOM = 300 };

static char home[100], path[PATH_ROOM];
static struct faults faults;
static struct settings_file f;
static struct fault fault;

static int new_home(void **state)
{
	(void)state;
	snprintf(home, sizeof(home), "/tmp/evenhand-settings-XXXXXX");
	assert_non_null(mkdtemp(home));
	setenv("HOME", home, 1);
	unsetenv("XDG_CONFIG_HOME");
	snprintf(path, sizeof(path), "%s/.config/evenhand/settings.yaml", home);
	return 0;
}

static int old_home(void **state)
{
	char command[200];

	(void)state;
	snprintf(command, sizeof(command), "rm -rf '%s'", home);
	return system(command);
}

static void open_settings(void)
{
	faults = (struct faults) { .count = 0 };
	settings_open(&f, &faults);
}

static void put(const char *text)
{
	char folder[PATH_ROOM];
	FILE *file;

	snprintf(
	    folder, sizeof(folder), "mkdir -p '%s/.config/evenhand'", home);
	assert_int_equal(system(folder), 0);
	file = fopen(path, "w");
	assert_non_null(file);
	fputs(text, file);
	fclose(file);
}

static const char *text(void)
{
	static char bytes[BYTES_MAX];
	FILE *file = fopen(path, "r");
	size_t got;

	assert_non_null(file);
	got = fread(bytes, 1, sizeof(bytes) - 1, file);
	bytes[got] = '\0';
	fclose(file);
	return bytes;
}

static mode_t mode(const char *of)
{
	struct stat s;

	assert_int_equal(stat(of, &s), 0);
	return s.st_mode & 07777;
}

/* Files in the folder. */
static int files(void)
{
	char command[PATH_ROOM], line[20] = "";
	FILE *p;

	snprintf(command, sizeof(command),
	    "find '%s/.config/evenhand' -type f | wc -l", home);
	p = popen(command, "r");
	assert_non_null(p);
	assert_non_null(fgets(line, sizeof(line), p));
	pclose(p);
	return atoi(line);
}

static void assert_said(const char *want)
{
	char line[1000];

	fault_text(&fault, line, sizeof(line));
	if (strstr(line, want) == NULL)
		fail_msg("said: %s", line);
}

/* --- a new file --- */

static void test_first(void **state)
{
	char folder[PATH_ROOM];

	(void)state;
	open_settings();
	assert_int_equal(faults.count, 0);
	assert_string_equal(f.path, path);
	assert_int_equal(access(path, F_OK), -1);
	f.now.first_seen = true;
	assert_true(settings_keep(&f, SETTING_FIRST_SEEN, &fault));
	assert_non_null(strstr(text(), "\nfirst_minutes_seen: yes\n"));
	assert_int_equal(text()[0], '#');
	assert_int_equal(mode(path), 0600);
	snprintf(folder, sizeof(folder), "%s/.config/evenhand", home);
	assert_int_equal(mode(folder), 0700);
	assert_int_equal(files(), 1);

	f.now.loudness = 35;
	assert_true(settings_keep(&f, SETTING_LOUDNESS, &fault));
	f.now.loudness = 40;
	assert_true(settings_keep(&f, SETTING_LOUDNESS, &fault));
	open_settings();
	assert_int_equal(faults.count, 0);
	assert_true(f.now.first_seen);
	assert_int_equal(f.now.loudness, 40);
	assert_int_equal(
	    f.now.given, 1 << SETTING_FIRST_SEEN | 1 << SETTING_LOUDNESS);
	assert_int_equal(files(), 1);
}

/* Every word there is, kept and read again. */
static void test_every_word(void **state)
{
	struct settings_file want;

	(void)state;
	open_settings();
	f.now.sound = false;
	snprintf(f.now.sound_card, sizeof(f.now.sound_card), "%s",
	    "Box \"2\": a\\b # c\xc3\xa9");
	snprintf(f.now.sound_through, sizeof(f.now.sound_through), "'JACK'");
	f.now.loudness = 7;
	f.now.mark_turns = f.now.lines = f.now.ascii = f.now.mirrored = true;
	f.now.first_seen = true;
	f.now.colours = COLOURS_256;
	for (int i = 0; i < SETTINGS; i++)
		assert_true(settings_keep(&f, (enum setting)i, &fault));
	want = f;
	open_settings();
	assert_int_equal(faults.count, 0);
	assert_memory_equal(&f.now, &want.now, sizeof(f.now));
}

/* --- what the person wrote --- */

static void test_by_hand(void **state)
{
	(void)state;
	put("# Mine. Do not touch!\n"
	    "\n"
	    "mirrored:   yes      # I bow with the left\n"
	    "loudness: 30 # neighbours\n"
	    "violin: Amati\n"
	    "marking:\n"
	    "# the end");
	open_settings();
	assert_int_equal(faults.count, 2);
	assert_int_equal(faults.at[0].line, 5);
	assert_int_equal(faults.at[1].line, 6);
	assert_string_equal(faults.at[0].path, path);
	assert_true(f.now.mirrored);
	f.now.loudness = 100;
	assert_true(settings_keep(&f, SETTING_LOUDNESS, &fault));
	f.now.mark_turns = true;
	assert_true(settings_keep(&f, SETTING_MARKING, &fault));
	assert_true(settings_keep(&f, SETTING_MIRRORED, &fault));
	f.now.lines = true;
	assert_true(settings_keep(&f, SETTING_LINES, &fault));
	assert_string_equal(text(),
	    "# Mine. Do not touch!\n"
	    "\n"
	    "mirrored:   yes      # I bow with the left\n"
	    "loudness: 100 # neighbours\n"
	    "violin: Amati\n"
	    "marking: turn\n"
	    "# the end\n"
	    "lines: yes\n");
}

/* What is said already is not written again, not even for its time. */
static void test_no_news(void **state)
{
	struct stat before, after;

	(void)state;
	put("loudness:   30\n");
	assert_int_equal(stat(path, &before), 0);
	open_settings();
	assert_true(settings_keep(&f, SETTING_LOUDNESS, &fault));
	assert_int_equal(stat(path, &after), 0);
	assert_int_equal(before.st_ino, after.st_ino);
	assert_string_equal(text(), "loudness:   30\n");
	/* A default is news when nobody wrote it. */
	assert_true(settings_keep(&f, SETTING_SOUND, &fault));
	assert_string_equal(text(), "loudness:   30\nsound: yes\n");
}

static void test_link(void **state)
{
	char real[PATH_ROOM];
	struct stat s;

	(void)state;
	put("loudness: 30\n");
	snprintf(real, sizeof(real), "%s/mine.yaml", home);
	assert_int_equal(rename(path, real), 0);
	assert_int_equal(symlink(real, path), 0);
	open_settings();
	f.now.loudness = 20;
	assert_true(settings_keep(&f, SETTING_LOUDNESS, &fault));
	assert_int_equal(lstat(path, &s), 0);
	assert_true(S_ISLNK(s.st_mode));
	assert_int_equal(lstat(real, &s), 0);
	assert_true(S_ISREG(s.st_mode));
	assert_string_equal(text(), "loudness: 20\n");
}

/* A file beside the settings. */
static void beside(char *real, const char *name)
{
	size_t folder = (size_t)(strrchr(path, '/') + 1 - path);

	assert_true(folder + strlen(name) < PATH_ROOM);
	memcpy(real, path, folder);
	memcpy(real + folder, name, strlen(name) + 1);
}

/* A link to what is not there yet: it is made where the link leads to. */
static void test_link_ahead(void **state)
{
	char real[PATH_ROOM];
	struct stat s;

	(void)state;
	put("");
	assert_int_equal(unlink(path), 0);
	beside(real, "ahead.yaml");
	unlink(real);
	assert_int_equal(symlink("next.yaml", path), 0);
	beside(real, "next.yaml");
	assert_int_equal(symlink("ahead.yaml", real), 0);
	open_settings();
	f.now.loudness = 20;
	assert_true(settings_keep(&f, SETTING_LOUDNESS, &fault));
	assert_int_equal(lstat(path, &s), 0);
	assert_true(S_ISLNK(s.st_mode));
	assert_int_equal(lstat(real, &s), 0);
	assert_true(S_ISLNK(s.st_mode));
	beside(real, "ahead.yaml");
	assert_int_equal(lstat(real, &s), 0);
	assert_true(S_ISREG(s.st_mode));
	assert_non_null(strstr(text(), "loudness: 20\n"));
}

/* Links in a ring, or into a folder that is not there: told, and left. */
static void test_link_nowhere(void **state)
{
	static const char *const to[] = { "settings.yaml",
		"/nowhere/at/all.yaml" };
	struct stat s;

	(void)state;
	for (size_t i = 0; i < sizeof(to) / sizeof(*to); i++) {
		put("");
		assert_int_equal(unlink(path), 0);
		assert_int_equal(symlink(to[i], path), 0);
		open_settings();
		f.now.loudness = 20;
		assert_false(settings_keep(&f, SETTING_LOUDNESS, &fault));
		assert_int_equal(lstat(path, &s), 0);
		assert_true(S_ISLNK(s.st_mode));
		assert_int_equal(unlink(path), 0);
	}
}

/* --- what cannot be kept --- */

static void not_kept(const char *bytes, enum setting what, const char *said)
{
	put(bytes);
	open_settings();
	f.now.mark_turns = true;
	assert_false(settings_keep(&f, what, &fault));
	assert_said(said);
	assert_string_equal(fault.path, path);
	/* Said once; what is practised with is the new value. */
	assert_true(settings_keep(&f, what, &fault));
	assert_true(f.now.mark_turns);
	assert_string_equal(text(), bytes);
	assert_int_equal(files(), 1);
}

static void test_left_alone(void **state)
{
	(void)state;
	not_kept("lines: yes\nmarking: [turn\n", SETTING_MARKING,
	    "settings.yaml: this file has a slip, so \"marking\" is not "
	    "remembered. Mend it first");
	not_kept("lines: yes\nmarking: [turn]\n", SETTING_MARKING,
	    "settings.yaml:2:1: the way \"marking\" is written here is left as "
	    "it is, so what you chose is not remembered. Write it in one line: "
	    "marking: turn");
	not_kept("marking: >\n  round\n", SETTING_MARKING, ":1:1: the way");
	/* A line behind the end of the document would not be read. */
	not_kept("lines: yes\n...\n", SETTING_MARKING,
	    "settings.yaml: the way \"marking\"");
	not_kept("- a\n", SETTING_MARKING, "the way \"marking\"");
}

static void test_no_folder(void **state)
{
	char odd[PATH_ROOM];
	FILE *file;

	(void)state;
	snprintf(odd, sizeof(odd), "%s/file", home);
	file = fopen(odd, "w");
	assert_non_null(file);
	fclose(file);
	setenv("XDG_CONFIG_HOME", odd, 1);
	open_settings();
	assert_int_equal(faults.count, 0);
	assert_false(settings_keep(&f, SETTING_LINES, &fault));
	assert_said("/file/evenhand: this folder cannot be made");
	assert_true(settings_keep(&f, SETTING_ASCII, &fault));
}

/* Root may write everywhere, so it becomes nobody for a while. */
static void test_no_right(void **state)
{
	enum { NOBODY = 65534 };
	bool root = geteuid() == 0;

	(void)state;
	put("lines: yes\n");
	open_settings();
	assert_int_equal(chmod(f.folder, root ? 0755 : 0500), 0);
	assert_int_equal(chmod(home, 0755), 0);
	if (root)
		assert_int_equal(seteuid(NOBODY), 0);
	open_settings();
	assert_int_equal(faults.count, 0);
	assert_false(settings_keep(&f, SETTING_ASCII, &fault));
	assert_said("you may not write in its folder");
	assert_true(settings_keep(&f, SETTING_ASCII, &fault));
	assert_string_equal(text(), "lines: yes\n");
	if (root)
		assert_int_equal(seteuid(0), 0);
	assert_int_equal(chmod(f.folder, 0700), 0);
}

static void test_no_home(void **state)
{
	(void)state;
	unsetenv("HOME");
	setenv("XDG_CONFIG_HOME", "not/whole", 1);
	open_settings();
	assert_int_equal(faults.count, 1);
	assert_int_equal(faults.at[0].message.id, M_SETTINGS_NO_HOME);
	assert_true(settings_keep(&f, SETTING_LINES, &fault));
	setenv("HOME", home, 1);
}

static void test_unread(void **state)
{
	(void)state;
	put("");
	assert_int_equal(unlink(path), 0);
	assert_int_equal(mkdir(path, 0700), 0);
	open_settings();
	assert_int_equal(faults.count, 1);
	assert_int_equal(faults.at[0].message.id, M_WORLD_FILE_FOLDER);
	assert_int_equal(f.now.loudness, 50);
	assert_false(settings_keep(&f, SETTING_LINES, &fault));
	assert_said(
	    "this is a folder, not a file. Name a file in it, or move it away");
}

/* --- two programs at once --- */

/* On a slow disk the others may take longer than is waited: once more then. */
static void keep_many(enum setting what)
{
	int tries = 0;

	for (int i = 0; i < 40; i++) {
		open_settings();
		f.now.loudness = i;
		f.now.mark_turns = i % 2 == 0;
		if (settings_keep(&f, what, &fault))
			continue;
		if (++tries == 200)
			_exit(1);
		i--;
	}
	_exit(0);
}

static void test_two_at_once(void **state)
{
	static const enum setting whats[] = { SETTING_LOUDNESS, SETTING_MARKING,
		SETTING_SOUND };
	int status;

	(void)state;
	put("# both of us\n");
	for (int i = 0; i < 3; i++)
		if (fork() == 0)
			keep_many(whats[i]);
	for (int i = 0; i < 3; i++) {
		assert_true(wait(&status) > 0);
		assert_int_equal(status, 0);
	}
	open_settings();
	assert_int_equal(faults.count, 0);
	assert_int_equal(f.now.loudness, 39);
	assert_int_equal(f.now.given,
	    1 << SETTING_LOUDNESS | 1 << SETTING_MARKING | 1 << SETTING_SOUND);
	assert_memory_equal(text(), "# both of us\n", 13);
	assert_int_equal(files(), 1);
}

/* Who does not let go is not waited for. */
static void test_busy(void **state)
{
	int lock;

	(void)state;
	put("lines: yes\n");
	open_settings();
	lock = open(f.folder, O_RDONLY);
	assert_true(lock >= 0);
	assert_int_equal(flock(lock, LOCK_EX), 0);
	assert_false(settings_keep(&f, SETTING_ASCII, &fault));
	assert_said("another program is busy with this file");
	close(lock);
	assert_string_equal(text(), "lines: yes\n");
	assert_true(settings_keep(&f, SETTING_ASCII, &fault));
	assert_string_equal(text(), "lines: yes\nascii: no\n");
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, new_home, old_home)

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(test_first),
		TEST(test_every_word),
		TEST(test_by_hand),
		TEST(test_no_news),
		TEST(test_link),
		TEST(test_link_ahead),
		TEST(test_link_nowhere),
		TEST(test_left_alone),
		TEST(test_no_folder),
		TEST(test_no_right),
		TEST(test_no_home),
		TEST(test_unread),
		TEST(test_two_at_once),
		TEST(test_busy),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
