/*
 * record_file.c - records on the disk
 *
 * Reading goes entry by entry, so that ten years take no more memory than the
 * record itself.  Writing makes the whole text first, in a buffer that grows
 * until it fits, and then the file at once.
 */
#include "evenhand/world/record_file.h"

#include <stdlib.h>

#include "evenhand/record/read.h"
#include "evenhand/record/write.h"
#include "evenhand/world/file.h"
#include "evenhand/world/yaml.h"

enum { FIRST_BYTES = 64 * 1024 };

static bool take(void *context, const struct node *root,
    const struct node *list, const struct node *entry)
{
	return record_entry(context, root, list, entry);
}

bool record_parse(const char *path, const char *bytes, size_t length,
    struct record *r, struct faults *faults)
{
	struct record_reader rd;
	const struct yaml_parts parts = { take, &rd, RECORD_PART_BYTES };
	struct arena arena = { 0 };
	const struct node *root;
	bool good = false;

	*r = (struct record) { 0 };
	if (!record_scan(path, bytes, length, faults))
		return false;
	record_reader_begin(&rd, r, path, faults);
	root = yaml_parse_parts(path, bytes, length, &parts, &arena, faults);
	good = root != NULL && record_end(&rd, root);
	record_reader_done(&rd);
	arena_done(&arena);
	return good;
}

bool record_load(
    const char *path, struct record *r, struct faults *faults, bool *unreadable)
{
	struct fault f;
	char *bytes;
	size_t length;
	bool good;

	*r = (struct record) { 0 };
	*unreadable = !file_read(path, RECORD_BYTES_MAX, &bytes, &length, &f);
	if (*unreadable)
		return faults_add(faults, f.message, f.path, f.line, f.column);
	good = record_parse(path, bytes, length, r, faults);
	free(bytes);
	return good;
}

bool record_save(
    const char *path, const struct record *r, bool force, struct fault *f)
{
	size_t size = FIRST_BYTES;
	char *bytes = NULL;
	struct text t = { .cut = true };
	bool good;

	for (; t.cut && size <= 2 * (size_t)RECORD_BYTES_MAX; size *= 2) {
		free(bytes);
		bytes = malloc(size);
		if (bytes == NULL)
			return fault_set(f, message_of(M_RECORD_NO_MEMORY));
		t = text_in(bytes, size);
		record_write(&t, r);
	}
	if (t.length > RECORD_BYTES_MAX)
		good = fault_set(f, message_of(M_RECORD_TOO_LONG));
	else
		good = file_write_own(path, bytes, t.length, force, f);
	free(bytes);
	return good;
}
