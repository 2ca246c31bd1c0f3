/*
 * load.c - a routine from the disk, with its homework file
 *
 * One struct sheet is one file on its way: its bytes, where they came from and
 * the tree read from them.  The routine keeps its own copies, so the sheets
 * go when it is made.
 */
#include "evenhand/world/load.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "evenhand/base/text.h"
#include "evenhand/routine/read.h"
#include "evenhand/world/file.h"
#include "evenhand/world/yaml.h"

enum { READ_MAX = 16 * 1024 * 1024, NAMES_MAX = 200, BARE_MAX = 256 };

/* What is practised when no routine is named. */
static const char usual[] = "cello";

struct sheet {
	struct source source;
	char *owned; /* bytes to free, NULL when they are built in */
	struct arena arena;
};

static void sheet_done(struct sheet *s)
{
	free(s->owned);
	arena_done(&s->arena);
}

/* The tree of the bytes at hand; slips come first. */
static bool sheet_parse(struct sheet *s, struct faults *faults)
{
	struct source *from = &s->source;

	if (!slips_find(from, faults))
		return false;
	from->root = yaml_parse(
	    from->path, from->bytes, from->length, &s->arena, faults);
	return from->root != NULL;
}

static int find_builtin(const char *name)
{
	for (int i = 0; i < builtin_count(); i++)
		if (strcmp(builtin_name(i), name) == 0)
			return i;
	return -1;
}

static void sheet_builtin(struct sheet *s, int i, const char *path)
{
	s->source.path = path;
	s->source.bytes = builtin_text(i, &s->source.length);
}

static bool sheet_read(struct sheet *s, const char *path, struct fault *f)
{
	s->source.path = path;
	if (!file_read(path, READ_MAX, &s->owned, &s->source.length, f))
		return false;
	s->source.bytes = s->owned;
	return true;
}

static void add_fault(struct faults *faults, const struct fault *f)
{
	faults_add(faults, f->message, f->path, f->line, f->column);
}

static bool no_such_routine(struct faults *faults, const char *name)
{
	char names[NAMES_MAX];
	struct text t = text_in(names, sizeof(names));

	for (int i = 0; i < builtin_count(); i++) {
		if (strstr(builtin_name(i), "-homework") != NULL)
			continue;
		text_add(&t, t.length > 0 ? ", " : "");
		text_add(&t, builtin_name(i));
	}
	return faults_add(faults,
	    message_with(M_WORLD_FILE_NO_ROUTINE, TEXT(name), TEXT(names)),
	    NULL, 0, 0);
}

/* Whether a name can only be that of a file. */
static bool names_file(const char *name)
{
	return strchr(name, '/') != NULL || strstr(name, ".y") != NULL;
}

/* The bytes of the file named, or of the routine that ships by that name. */
static bool sheet_open(
    struct sheet *s, const char *path, struct faults *faults, bool *unreadable)
{
	int builtin = names_file(path) ? -1 : find_builtin(path);
	bool there = access(path, F_OK) == 0;
	struct fault f;

	if (!there && builtin >= 0) {
		sheet_builtin(s, builtin, path);
		return true;
	}
	if (!there && !names_file(path)) {
		*unreadable = true;
		return no_such_routine(faults, path);
	}
	if (sheet_read(s, path, &f))
		return true;
	*unreadable = true;
	add_fault(faults, &f);
	return false;
}

/* The path of a name in the folder of another file. */
static bool beside(
    const char *file, const char *name, char *buffer, size_t size)
{
	const char *slash = strrchr(file, '/');
	struct text t = text_in(buffer, size);

	if (slash != NULL)
		text_add_bytes(&t, file, (size_t)(slash - file) + 1);
	text_add(&t, name);
	return !t.cut;
}

static bool has_end(const char *name, const char *end)
{
	size_t a = strlen(name), b = strlen(end);

	return a > b && strcmp(name + a - b, end) == 0;
}

/*
 * The routine of a homework file that ships in the program ships with it, by
 * its name without the ending.
 */
static bool open_builtin_beside(
    struct sheet *s, const char *name, const char *path)
{
	char bare[BARE_MAX];
	struct text t = text_in(bare, sizeof(bare));
	int i;

	if (!has_end(name, ".yaml"))
		return false;
	text_add_bytes(&t, name, strlen(name) - strlen(".yaml"));
	i = find_builtin(bare);
	if (i < 0)
		return false;
	sheet_builtin(s, i, path);
	return true;
}

static bool open_routine_of(const struct sheet *homework, const char *name,
    struct sheet *s, struct load_paths *paths, struct faults *faults)
{
	const struct node *n = node_get(homework->source.root, "routine");
	enum message_id why = M_ROUTINE_GONE;
	struct fault f;

	if (homework->owned == NULL) {
		snprintf(paths->routine, sizeof(paths->routine), "%s", name);
		if (open_builtin_beside(s, name, paths->routine))
			return true;
	} else if (beside(paths->homework, name, paths->routine,
		       sizeof(paths->routine))) {
		if (sheet_read(s, paths->routine, &f))
			return true;
		if (f.message.id != M_WORLD_FILE_MISSING)
			why = M_ROUTINE_UNREAD;
	}
	return faults_add(faults, message_with(why, TEXT(name)),
	    homework->source.path, n->line, n->column);
}

/* Faults that point at the first place point at the second from now on. */
static void move_path(
    struct sheet *s, struct faults *faults, const char *from, const char *to)
{
	for (int i = 0; i < faults->count; i++)
		if (faults->at[i].path == from)
			faults->at[i].path = to;
	s->source.path = to;
}

/* The homework file is read; its routine and both together. */
static struct routine *with_homework(struct sheet *homework, const char *name,
    struct load_paths *paths, struct faults *faults, bool *unreadable)
{
	struct sheet s = { .owned = NULL };
	struct routine *r = NULL;

	memcpy(paths->homework, paths->routine, sizeof(paths->homework));
	paths->routine[0] = '\0';
	move_path(homework, faults, paths->routine, paths->homework);
	if (*name == '\0' ||
	    !open_routine_of(homework, name, &s, paths, faults)) {
		*unreadable = *name != '\0';
		homework_check(&homework->source, faults);
		goto done;
	}
	if (!sheet_parse(&s, faults)) {
		homework_check(&homework->source, faults);
		goto done;
	}
	if (homework_routine_name(s.source.root) != NULL) {
		const struct node *n = node_get(
		    homework->source.root, "routine");

		faults_add(faults,
		    message_with(M_ROUTINE_HOMEWORK_OF, TEXT(name)),
		    homework->source.path, n->line, n->column);
		goto done;
	}
	r = routine_read(&s.source, &homework->source, faults);
done:
	sheet_done(&s);
	return r;
}

/* The sheet is open; what it comes to. */
static struct routine *load_sheet(struct sheet *s, struct load_paths *paths,
    struct faults *faults, bool *unreadable)
{
	const char *name;

	if (!sheet_parse(s, faults))
		return NULL;
	name = homework_routine_name(s->source.root);
	if (name != NULL)
		return with_homework(s, name, paths, faults, unreadable);
	return routine_read(&s->source, NULL, faults);
}

struct routine *load_routine(const char *path, struct load_paths *paths,
    struct faults *faults, bool *unreadable)
{
	struct sheet s = { .owned = NULL };
	struct text t = text_in(paths->routine, sizeof(paths->routine));
	int before = faults->count + faults->left_out;
	struct routine *r = NULL;

	*unreadable = false;
	paths->homework[0] = '\0';
	text_add(&t, path != NULL ? path : usual);
	if (t.cut) {
		*unreadable = true;
		faults_add(faults, message_of(M_WORLD_PATH_LONG), NULL, 0, 0);
		return NULL;
	}
	if (path == NULL)
		sheet_builtin(&s, find_builtin(usual), paths->routine);
	if (path == NULL || sheet_open(&s, paths->routine, faults, unreadable))
		r = load_sheet(&s, paths, faults, unreadable);
	sheet_done(&s);
	faults_sort(faults);
	if (faults->count + faults->left_out == before)
		return r;
	/* A slip that did not keep it from being read is a slip. */
	routine_free(r);
	return NULL;
}
