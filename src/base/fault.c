/*
 * fault.c - faults with their places
 */
#include "evenhand/base/fault.h"

#include <string.h>

#include "evenhand/base/text.h"

bool fault_set(struct fault *f, struct message m)
{
	*f = (struct fault) { .message = m };
	return false;
}

bool fault_at(struct fault *f, const char *path, int line, int column)
{
	f->path = path;
	f->line = line;
	f->column = column;
	return false;
}

bool faults_add(struct faults *list, struct message m, const char *path,
    int line, int column)
{
	struct fault *f = &list->at[list->count];

	if (list->count == FAULTS_MAX) {
		list->left_out++;
		return false;
	}
	list->count++;
	fault_set(f, m);
	return fault_at(f, path, line, column);
}

static bool same_file(const struct fault *a, const struct fault *b)
{
	if (a->path == NULL || b->path == NULL)
		return a->path == b->path;
	return strcmp(a->path, b->path) == 0;
}

static bool later(const struct fault *a, const struct fault *b)
{
	return a->line != b->line ? a->line > b->line : a->column > b->column;
}

/* Where a fault belongs among the sorted ones, which stand file by file. */
static int place_among(
    const struct fault *sorted, int count, const struct fault *f)
{
	int place = count;

	for (int i = 0; i < count; i++) {
		if (!same_file(&sorted[i], f))
			continue;
		if (later(&sorted[i], f))
			return i;
		place = i + 1;
	}
	return place;
}

void faults_sort(struct faults *list)
{
	for (int i = 1; i < list->count; i++) {
		struct fault f = list->at[i];
		int place = place_among(list->at, i, &f);

		memmove(&list->at[place + 1], &list->at[place],
		    sizeof(f) * (size_t)(i - place));
		list->at[place] = f;
	}
}

size_t fault_text(const struct fault *f, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	if (f->path != NULL) {
		text_add_clean(&t, *f->path ? f->path : "\"\"");
		text_add(&t, ":");
	}
	if (f->line > 0)
		text_format(&t, "%d:", f->line);
	if (f->line > 0 && f->column > 0)
		text_format(&t, "%d:", f->column);
	if (t.length > 0)
		text_add(&t, " ");
	if (!t.cut)
		t.length += message_text(
		    &f->message, buffer + t.length, size - t.length);
	return t.length;
}
