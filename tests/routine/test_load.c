/*
 * test_load.c - files that cannot be opened, and the routines that ship
 *
 * Each sentence with its path, letter by letter; the faults of what stands in
 * a file are in test_faults.c.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>

#include "evenhand/world/load.h"

enum { NAME_BYTES = 5000, BIG = 16 * 1024 * 1024 };

static struct faults faults;
static struct load_paths paths;
static char folder[] = "/tmp/evenhand-load-XXXXXX";

static int make_folder(void **state)
{
	(void)state;
	return mkdtemp(folder) == NULL ? -1 : 0;
}

/* Leaves nothing behind: every file a test makes goes by its name. */
static int remove_folder(void **state)
{
	(void)state;
	return rmdir(folder);
}

/* A path in the folder of this test. */
static const char *at(const char *name)
{
	static char path[NAME_BYTES];

	snprintf(path, sizeof(path), "%s/%s", folder, name);
	return path;
}

/* Nothing can be read at this path, and that is what is said of it. */
static void assert_unread(const char *path, const char *sentence)
{
	char said[2000], wanted[NAME_BYTES];
	bool unreadable = false;

	faults = (struct faults) { .count = 0 };
	assert_null(load_routine(path, &paths, &faults, &unreadable));
	assert_true(unreadable);
	assert_int_equal(faults.count, 1);
	fault_text(&faults.at[0], said, sizeof(said));
	snprintf(wanted, sizeof(wanted), "%s: %s", path, sentence);
	assert_string_equal(
	    said, faults.at[0].path != NULL ? wanted : sentence);
}

static void test_missing(void **state)
{
	static const char missing[] =
	    "there is no such file. Look at its name and folder";

	(void)state;
	assert_unread("nowhere.yaml", missing);
	assert_unread("nowhere/cello.yaml", missing);
	/* A file where a folder should be. */
	assert_unread("routines/cello.yaml/wren.yaml", missing);
	assert_unread("harpsichord",
	    "there is no file called \"harpsichord\", and no routine of that "
	    "name comes with evenhand. There are: bass, "
	    "cello-deutsch, cello, crossings, trills, viola, violin");
}

static void test_long_names(void **state)
{
	static const char too_long[] =
	    "this name of a file or folder is too long";
	char name[NAME_BYTES];

	(void)state;
	memset(name, 'n', sizeof(name));
	strcpy(name + 300, ".yaml");
	assert_unread(name, too_long);
	/* Longer than any path: it is not even looked for. */
	memset(name, 'n', sizeof(name));
	strcpy(name + 4200, ".yaml");
	assert_unread(name, too_long);
	assert_null(faults.at[0].path);
}

static void test_no_files(void **state)
{
	const char *pipe = at("pipe.yaml");

	(void)state;
	assert_unread("routines/",
	    "this is a folder, not a file. Name a file in it, or move it away");
	assert_int_equal(mkfifo(pipe, 0600), 0);
	assert_unread(pipe, "this is no ordinary file");
	unlink(pipe);
	assert_unread("/dev/null", "this is no ordinary file");
	/* A file that opens and gives nothing but an error. */
	assert_unread(
	    "/proc/self/mem", "this file cannot be read from the disk");
}

static FILE *new_file(const char *path)
{
	FILE *f = fopen(path, "wb");

	assert_non_null(f);
	return f;
}

static void test_big(void **state)
{
	const char *path = at("big.yaml");
	FILE *f = new_file(path);

	(void)state;
	assert_int_equal(ftruncate(fileno(f), BIG + 1), 0);
	fclose(f);
	assert_unread(path, "this file is larger than 16384 KB");
	unlink(path);
}

static void test_denied(void **state)
{
	const char *path = at("secret.yaml");
	FILE *f = new_file(path);
	bool may = geteuid() == 0;

	(void)state;
	fputs("routine: Short\n", f);
	fclose(f);
	assert_int_equal(chmod(path, 0), 0);
	if (!may)
		assert_unread(path, "this file may not be read by you");
	unlink(path);
	if (may)
		skip(); /* the superuser may read all */
}

/* By name from anywhere, and the homework finds its routine by itself. */
static void test_shipped(void **state)
{
	(void)state;
	for (int i = 0; i < builtin_count(); i++) {
		const char *name = builtin_name(i);
		bool homework = strstr(name, "-homework") != NULL;
		bool unreadable = true;
		struct routine *r;

		faults.count = 0;
		r = load_routine(name, &paths, &faults, &unreadable);
		assert_non_null(r);
		assert_int_equal(faults.count, 0);
		assert_false(unreadable);
		assert_int_equal(*r->homework_for != '\0', homework);
		assert_int_equal(*paths.homework != '\0', homework);
		routine_free(r);
	}
}

/* No name at all is the cello's routine; a file of that name comes first. */
static void test_usual(void **state)
{
	const char *path = at("cello");
	bool unreadable;
	struct routine *r = load_routine(NULL, &paths, &faults, &unreadable);
	FILE *f = new_file(path);
	char here[NAME_BYTES];

	(void)state;
	assert_non_null(r);
	assert_string_equal(r->name, "From wide to still");
	routine_free(r);
	fputs("routine: Mine\nstages: [{id: a, place: in the air}]\n", f);
	fclose(f);
	assert_non_null(getcwd(here, sizeof(here)));
	assert_int_equal(chdir(folder), 0);
	r = load_routine("cello", &paths, &faults, &unreadable);
	assert_int_equal(chdir(here), 0);
	unlink(path);
	assert_non_null(r);
	assert_string_equal(r->name, "Mine");
	routine_free(r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_missing),
		cmocka_unit_test(test_long_names),
		cmocka_unit_test(test_no_files),
		cmocka_unit_test(test_big),
		cmocka_unit_test(test_denied),
		cmocka_unit_test(test_shipped),
		cmocka_unit_test(test_usual),
	};

	return cmocka_run_group_tests(tests, make_folder, remove_folder);
}
