/*
 * beside.c - where the programs are that evenhand starts
 */
#include "evenhand/world/beside.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "evenhand/base/text.h"
#include "evenhand/world/paths.h"

static const char *started_as = "";

void beside_started_as(const char *word)
{
	started_as = word ? word : "";
}

/* A file that may be run, by its path without links. */
static bool whole(const char *file, char *path, size_t size)
{
	char *found = access(file, X_OK) == 0 ? realpath(file, NULL) : NULL;
	struct text t = text_in(path, size);

	if (!found)
		return false;
	text_add(&t, found);
	free(found);
	return !t.cut;
}

bool beside_named(const char *word, char *path, size_t size)
{
	const char *folders = getenv("PATH");
	char file[PATH_BYTES_MAX];

	if (strchr(word, '/'))
		return whole(word, path, size);
	while (*word && folders && *folders) {
		size_t length = strcspn(folders, ":");
		struct text t = text_in(file, sizeof file);

		text_add_bytes(&t, folders, length);
		text_format(&t, "/%s", word);
		if (!t.cut && whole(file, path, size))
			return true;
		folders += length + (folders[length] == ':');
	}
	return false;
}

/* The file that runs. */
static bool own_file(char *path, size_t size)
{
	ssize_t length = readlink("/proc/self/exe", path, size - 1);

	if (length > 0 && (size_t)length < size - 1) {
		path[length] = '\0';
		return true;
	}
	return beside_named(started_as, path, size);
}

/* What may be run, or entered, in one of two places. */
static bool find(
    const char *const folders[2], const char *name, char *path, size_t size)
{
	char own[PATH_BYTES_MAX];
	bool found = false;

	if (own_file(own, sizeof own)) {
		strrchr(own, '/')[1] = '\0';
		for (size_t i = 0; i < 2 && !found; i++) {
			struct text t = text_in(path, size);

			text_format(&t, "%s%s%s", own, folders[i], name);
			found = !t.cut && access(path, X_OK) == 0;
		}
	}
	if (!found)
		path[0] = '\0';
	return found;
}

bool beside_find(const char *name, char *path, size_t size)
{
	static const char *const folders[] = { "", "../libexec/evenhand/" };

	return find(folders, name, path, size);
}

bool beside_locale(char *path, size_t size)
{
	static const char *const folders[] = { "", "../share/" };

	/* The dot, so that a program of that name is none. */
	return find(folders, "locale/.", path, size);
}
