/*
 * Every fault of a routine file: its sentence and its place, letter by letter.
 *
 * tests/routine/bad holds a file for each, and beside it what must be said
 * (NAME.faults).  A file with nothing beside it must be good.
 */
#include <dirent.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

#include <cmocka.h>

#include "evenhand/world/load.h"
#include "sheet.h"

#define FOLDER "tests/routine/bad/"

enum { FILES_MAX = 400, SAID_MAX = 16384 };

static struct faults faults;
static struct load_paths paths;

/* Which messages were met in any test of this file, words inside others too. */
static bool met[M_COUNT];

static void meet(const struct message *m)
{
	met[m->id] = true;
	for (int i = 0; i < m->count; i++)
		if (m->value[i].kind == ARGUMENT_WORD)
			met[m->value[i].whole] = true;
}

/* While above 0, counted down; the call that comes to 0 finds no memory. */
static int calls_left;

/* Arenas and routines come from calloc; the linker brings its calls here. */
void *__real_calloc(size_t count, size_t size);
void *__wrap_calloc(size_t count, size_t size);

void *__wrap_calloc(size_t count, size_t size)
{
	if (calls_left > 0 && --calls_left == 0)
		return NULL;
	return __real_calloc(count, size);
}

/* The faults as they are shown, without the name of the file. */
static void say(char *said, size_t size)
{
	size_t used = 0;

	said[0] = '\0';
	for (int i = 0; i < faults.count; i++) {
		struct fault f = faults.at[i];

		meet(&f.message);
		f.path = NULL;
		used += fault_text(&f, said + used, size - used - 1);
		said[used++] = '\n';
		said[used] = '\0';
	}
}

static void read_file(const char *path, char *buffer, size_t size)
{
	FILE *f = fopen(path, "rb");
	size_t got = 0;

	if (f != NULL) {
		got = fread(buffer, 1, size - 1, f);
		fclose(f);
	}
	buffer[got] = '\0';
}

static bool check_file(const char *name)
{
	static char path[300], wanted[SAID_MAX], said[SAID_MAX];
	struct routine *r;
	bool unreadable, good;

	snprintf(path, sizeof(path), FOLDER "%.*s.faults",
	    (int)(strlen(name) - strlen(".yaml")), name);
	read_file(path, wanted, sizeof(wanted));
	snprintf(path, sizeof(path), FOLDER "%s", name);
	faults = (struct faults) { .count = 0 };
	r = load_routine(path, &paths, &faults, &unreadable);
	say(said, sizeof(said));
	good = strcmp(said, wanted) == 0 && (r != NULL) == (*wanted == '\0');
	/* Every place is in the file that was named or the one it names. */
	for (int i = 0; i < faults.count; i++)
		good = good &&
		    strncmp(faults.at[i].path, FOLDER, strlen(FOLDER)) == 0;
	if (!good)
		print_error("%s\nwanted:\n%ssaid:\n%s\n", path, wanted, said);
	routine_free(r);
	return good;
}

static void test_files(void **state)
{
	DIR *folder = opendir(FOLDER);
	struct dirent *entry;
	int files = 0, wrong = 0;

	(void)state;
	assert_non_null(folder);
	while ((entry = readdir(folder)) != NULL) {
		const char *end = strrchr(entry->d_name, '.');

		if (end == NULL || strcmp(end, ".yaml") != 0)
			continue;
		files++;
		wrong += !check_file(entry->d_name);
	}
	closedir(folder);
	print_message("%d files\n", files);
	assert_int_equal(wrong, 0);
	assert_true(files > 150);
}

/* Bytes that are no text, and what is said of them. */
struct bytes {
	const char *bytes;
	size_t length;
	const char *said;
};

#define BYTES(s) s, sizeof(s) - 1
#define DOCUMENT \
	"1:1: this is a word-processor document. Save it as plain text, " \
	"UTF-8\n"
#define PICTURE "1:1: this is a picture. A routine is a text file\n"
#define UTF16 \
	"1:1: this text is saved as UTF-16. Save it as plain text, UTF-8\n"
#define NOT_UTF8 \
	"the letter here is not written in UTF-8. Save the file as plain " \
	"text, UTF-8\n"
#define CONTROL "an invisible control character stands here. Remove it\n"

static const struct bytes no_text[] = {
	{ BYTES("PK\x03\x04\x14\0\x06\0\x08\0\0\0!\0"), DOCUMENT },
	{ BYTES("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"), DOCUMENT },
	{ BYTES("{\\rtf1\\ansi routine: Short}"), DOCUMENT },
	{ BYTES("%PDF-1.7\n"), DOCUMENT },
	{ BYTES("\x89PNG\r\n\x1a\n\0"), PICTURE },
	{ BYTES("\xff\xd8\xff\xe0\0"), PICTURE },
	{ BYTES("GIF89a\x01"), PICTURE },
	{ BYTES("\xff\xfer\0o\0"), UTF16 },
	{ BYTES("\xfe\xff\0r\0o"), UTF16 },
	{ BYTES("r\0o\0u\0t\0"), UTF16 },
	{ BYTES("\0r\0o\0u"), UTF16 },
	{ BYTES("routine: Caf\xe9\n"), "1:13: " NOT_UTF8 },
	{ BYTES("routine: Short\r\nedition: 1\r\n# \xc0\x80\r\n"),
	    "3:3: " NOT_UTF8 },
	{ BYTES("# \xed\xa0\x80\n"), "1:3: " NOT_UTF8 },
	{ BYTES("routine: \xc3\xa4 \xf0\x9f\x8e"), "1:12: " NOT_UTF8 },
	{ BYTES("routine: a\0b\n"), "1:11: " CONTROL },
	{ BYTES("routine: \xc3\xa4\x1b[31m\n"), "1:11: " CONTROL },
	{ BYTES("# one\r# \x7f\n"), "2:3: " CONTROL },
	{ BYTES("# \xc2\x85\n"), "1:3: " CONTROL },
	{ BYTES("# a\xe2\x80\xae\n"), "1:4: " CONTROL },
	{ BYTES("# \xe2\x80\xa8\n"), "1:3: " CONTROL },
	{ BYTES("# a\xef\xbb\xbf\n"), "1:4: " CONTROL },
	{ BYTES("# \xef\xbf\xbe\n"), "1:3: " CONTROL },
	{ BYTES("\xef\xbb\xbfroutine: \x07\n"), "1:10: " CONTROL },
};

static void test_no_text(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof(no_text) / sizeof(no_text[0]); i++) {
		char said[SAID_MAX];
		struct routine *r = sheet_routine_bytes(
		    no_text[i].bytes, no_text[i].length, NULL, &faults);

		assert_null(r);
		say(said, sizeof(said));
		assert_string_equal(said, no_text[i].said);
	}
}

/* One byte more than may be; as many as may be are read. */
static void test_size(void **state)
{
	char *text = malloc(ROUTINE_BYTES_MAX + 1), said[SAID_MAX];
	const size_t length = strlen(NAME STAGES);
	struct routine *r;

	(void)state;
	assert_non_null(text);
	memset(text, '#', ROUTINE_BYTES_MAX + 1);
	memcpy(text, NAME STAGES, length);
	assert_null(
	    sheet_routine_bytes(text, ROUTINE_BYTES_MAX + 1, NULL, &faults));
	say(said, sizeof(said));
	assert_string_equal(said,
	    "1:1: this file is larger than 256 KB. A routine is a small text "
	    "file; this is something else\n");
	r = sheet_routine_bytes(text, ROUTINE_BYTES_MAX, NULL, &faults);
	assert_int_equal(faults.count, 0);
	assert_non_null(r);
	routine_free(r);
	free(text);
}

/* Forty are kept, the others counted; nothing is lost or slow. */
static void test_many_faults(void **state)
{
	static char text[32 * 4000 + 100], said[SAID_MAX];
	size_t used = (size_t)sprintf(text, NAME);

	(void)state;
	for (int i = 0; i < 4000; i++)
		used += (size_t)sprintf(text + used, "key%d: %d\n", i, i);
	sprintf(text + used, STAGES);
	assert_null(sheet_routine(text, NULL, &faults));
	assert_int_equal(faults.count, FAULTS_MAX);
	assert_int_equal(faults.left_out, 4000 - FAULTS_MAX);
	say(said, sizeof(said));
}

static void assert_said(const char *text, const char *wanted)
{
	static char said[SAID_MAX];

	assert_null(sheet_routine(text, NULL, &faults));
	say(said, sizeof(said));
	assert_string_equal(said, wanted);
}

static const char *const number_words[] = { "one", "two", "three", "four",
	"five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve" };

static void test_number_words(void **state)
{
	char text[400], wanted[400];

	(void)state;
	for (int i = 1; i <= 12; i++) {
		sprintf(text, NAME "bowing:\n  bow_seconds: %d,5\n" STAGES, i);
		sprintf(wanted,
		    "3:16: write %s and a half as %d.5, with a point\n",
		    number_words[i - 1], i);
		assert_said(text, wanted);
	}
	for (int i = 3; i <= 12; i++) {
		sprintf(text, NAME "session: {minutes: %d}\n" STAGES, 5 * i);
		sprintf(wanted,
		    "2:20: %d minutes is %s times the usual five and is where "
		    "blisters and tired hands begin. If it is meant, add "
		    "because: \"...\"; the first two weeks of a stage stay at "
		    "5\n",
		    5 * i, number_words[i - 1]);
		assert_said(text, wanted);
	}
}

/* Wherever memory ends there is one sentence, and nothing is left behind. */
static void test_no_memory(void **state)
{
	static const char wanted[] =
	    "the computer has no memory left to read this file. Close other "
	    "programs and start again\n";
	static char said[SAID_MAX];
	struct routine *r = NULL;
	bool unreadable;
	int calls = 0;

	(void)state;
	do {
		faults = (struct faults) { .count = 0 };
		calls_left = ++calls;
		r = load_routine(
		    "cello-homework", &paths, &faults, &unreadable);
		if (calls_left > 0)
			break;
		assert_null(r);
		say(said, sizeof(said));
		assert_string_equal(said, wanted);
	} while (calls < 1000);
	calls_left = 0;
	assert_non_null(r);
	assert_int_equal(faults.count, 0);
	assert_true(calls > 3);
	routine_free(r);
}

/* Runs last: no sentence of a routine is without a test. */
static void test_all_met(void **state)
{
	int missing = 0;

	(void)state;
	for (int i = 1; i < M_COUNT; i++) {
		const char *name = message_name((enum message_id)i);

		if (strncmp(name, "M_ROUTINE_", 10) != 0 || met[i])
			continue;
		print_error("%s is never said\n", name);
		missing++;
	}
	assert_int_equal(missing, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_files),
		cmocka_unit_test(test_no_text),
		cmocka_unit_test(test_size),
		cmocka_unit_test(test_many_faults),
		cmocka_unit_test(test_number_words),
		cmocka_unit_test(test_no_memory),
		cmocka_unit_test(test_all_met),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
