/*
 * journal_new.c - a journal of memory becomes a file, whole or not at all
 *
 * What is made at once need not be brought to the disk step by step: it is
 * written where nobody sees it, brought there once, and then gets its name.
 */
#include <libgen.h>
#include <stdio.h>

#include "evenhand/world/file.h"
#include "journal_database.h"

/*
 * Two bytes of an SQLite file say that it is to be written and read in WAL mode
 * (its format, 1.3.3); with no helper file beside it, it is whole as it stands.
 */
enum { WRITE_VERSION = 18, READ_VERSION = 19, IN_WAL_MODE = 2 };

static enum trouble trouble_of_fault(const struct fault *f)
{
	switch (f->message.id) {
	case M_WORLD_FILE_FULL:
		return TROUBLE_FULL;
	case M_WORLD_FILE_NO_RIGHT:
		return TROUBLE_READ_ONLY;
	default:
		return TROUBLE_UNREACHABLE;
	}
}

static bool shared_folder(const char *path)
{
	char copy[FILE_PATH_MAX];

	snprintf(copy, sizeof(copy), "%s", path);
	return database_on_network(dirname(copy));
}

enum trouble database_put_new(struct database *d, const char *path)
{
	sqlite3_int64 length = 0;
	unsigned char *bytes = sqlite3_serialize(d->handle, "main", &length, 0);
	struct fault f;
	bool good;

	if (bytes == NULL || length <= READ_VERSION) {
		sqlite3_free(bytes);
		return TROUBLE_UNREACHABLE;
	}
	if (!shared_folder(path))
		bytes[WRITE_VERSION] = bytes[READ_VERSION] = IN_WAL_MODE;
	good = file_write_own(path, (char *)bytes, (size_t)length, false, &f);
	sqlite3_free(bytes);
	return good ? TROUBLE_NONE : trouble_of_fault(&f);
}
