/*
 * test_beside.c - where the programs are that evenhand starts
 *
 * This program stands in for evenhand: started with a word of its own it says
 * where it finds a program of that name.
 */
#include <limits.h>
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

#include "evenhand/world/beside.h"
#include "evenhand/world/paths.h"

static char folder[PATH_MAX];
static const char *self;

/* Runs a line of the shell in the folder. */
static void shell(const char *line)
{
	char whole[5 * PATH_MAX];

	snprintf(whole, sizeof whole, "cd '%s' && %s", folder, line);
	assert_int_equal(system(whole), 0);
}

/* A program of the folder and what it says where "part" is. */
static void says(const char *program, const char *place)
{
	char line[3 * PATH_MAX], said[PATH_MAX] = "", due[3 * PATH_MAX] = "";

	snprintf(line, sizeof line, "'%s/%s' where", folder, program);
	FILE *f = popen(line, "r");
	assert_non_null(f);
	if (!fgets(said, sizeof said, f))
		said[0] = '\0';
	pclose(f);
	if (place)
		snprintf(due, sizeof due, "%s/%s", folder, place);
	assert_string_equal(said, due);
}

static int make_folder(void **state)
{
	char name[] = "/tmp/evenhand-beside-XXXXXX";

	(void)state;
	if (!mkdtemp(name) || !realpath(name, folder))
		return -1;
	return 0;
}

static int remove_folder(void **state)
{
	(void)state;
	shell("rm -rf ../\"$(basename \"$PWD\")\"");
	return 0;
}

static void test_find(void **state)
{
	char line[3 * PATH_MAX];

	(void)state;
	shell("mkdir -p 'a b/bin' 'a b/libexec/evenhand' links");
	snprintf(line, sizeof line, "cp '%s' 'a b/bin/evenhand'", self);
	shell(line);
	says("a b/bin/evenhand", NULL);

	/* What may not be run is no program. */
	shell(": > 'a b/libexec/evenhand/part'");
	if (geteuid() != 0)
		says("a b/bin/evenhand", NULL);
	shell("chmod +x 'a b/libexec/evenhand/part'");
	says("a b/bin/evenhand", "a b/bin/../libexec/evenhand/part");

	/* Whoever starts it through a link gets the same. */
	shell("ln -s '../a b/bin/evenhand' links/evenhand");
	says("links/evenhand", "a b/bin/../libexec/evenhand/part");

	/* What stands beside it comes first; beside a link it is nothing. */
	shell("cp -p 'a b/libexec/evenhand/part' links");
	says("links/evenhand", "a b/bin/../libexec/evenhand/part");
	shell("cp -p 'a b/libexec/evenhand/part' 'a b/bin'");
	says("a b/bin/evenhand", "a b/bin/part");
}

static void test_named(void **state)
{
	char path[PATH_MAX], due[3 * PATH_MAX], word[3 * PATH_MAX], tiny[4];
	char *before = strdup(getenv("PATH"));

	(void)state;
	shell("mkdir one two && cp /bin/sh two/played && ln -s two/played by");
	snprintf(due, sizeof due, "%s/two/played", folder);
	assert_false(beside_named("played", path, sizeof path));
	snprintf(word, sizeof word, "/nowhere:%s/one:%s/two", folder, folder);
	setenv("PATH", word, 1);
	assert_true(beside_named("played", path, sizeof path));
	assert_string_equal(path, due);
	assert_false(beside_named("played", tiny, sizeof tiny));
	assert_false(beside_named("", path, sizeof path));
	setenv("PATH", "", 1);
	assert_false(beside_named("played", path, sizeof path));
	snprintf(word, sizeof word, "%s/by", folder);
	assert_true(beside_named(word, path, sizeof path));
	assert_string_equal(path, due);
	setenv("PATH", before, 1);
	free(before);
}

int main(int argc, char **argv)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(
		    test_find, make_folder, remove_folder),
		cmocka_unit_test_setup_teardown(
		    test_named, make_folder, remove_folder),
	};
	static char own[PATH_MAX];

	beside_started_as(argv[0]);
	if (argc > 1) {
		char path[PATH_BYTES_MAX];

		return printf("%s",
			   beside_find("part", path, sizeof path) ? path : "") <
		    0;
	}
	if (!realpath(argv[0], own))
		return 1;
	self = own;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
