/*
 * class_gather.c - records that simply lie in the folder of a class
 *
 *	DIR/NAME.yaml ─▶ known by name, size and time? ─▶ read, known by its bytes?
 *	           ─▶ merged into the student's journal ─▶ remembered
 *
 * To gather a record twice changes nothing, so what is remembered only saves
 * time.  A file that does not begin as a record does is none of ours: routines
 * may lie there, too.  One that does may have any name, as mail programs give
 * files endings of their own.
 */
#include <dirent.h>
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/stat.h>
#include <unistd.h>

#include "class.h"
#include "evenhand/base/fingerprint.h"
#include "evenhand/world/file.h"
#include "evenhand/world/record_file.h"
#include "options.h"
#include "so_far.h"

enum { NAME_BYTES = CLASS_FILE_BYTES, HEAD_BYTES = 512 };

struct found {
	char name[NAME_BYTES];
	int64_t size, time_ns;
};

struct gathering {
	const char *folder;
	struct class_folder *class; /* to write into */
	int found, room;
	struct found *at; /* those that are not known */
	int good;
	struct class_lies *lies;
	struct so_far so_far;
	struct faults faults;
};

/* --- which files --- */

/* Whether it may lie in a class: nothing hidden, and nothing of our own. */
static bool may_be(const char *name)
{
	static const char own[] = "class.sqlite";

	return name[0] != '.' && strlen(name) < NAME_BYTES &&
	    strncmp(name, own, sizeof(own) - 1) != 0;
}

/* Such files are looked up first, which is quicker than to look into them. */
static bool has_ending(const char *name)
{
	const char *end = strrchr(name, '.');

	return end &&
	    (strcasecmp(end, ".yaml") == 0 || strcasecmp(end, ".yml") == 0);
}

/* Whether it has the name of a student's journal. */
static bool is_journal(const char *name)
{
	char id[RECORD_ID_MAX];

	id_copy(id, name);
	return record_id_good(id) && strcmp(name + strlen(id), ".sqlite") == 0;
}

static bool path_of(
    const struct gathering *g, const char *name, char *path, size_t size)
{
	struct text t = text_in(path, size);

	text_format(&t, "%s/%s", g->folder, name);
	return !t.cut;
}

/* How a file begins.  False when nobody can tell: said. */
static bool read_head(const char *path, char head[HEAD_BYTES + 1])
{
	struct fault f;
	int file = file_open(path, &f);
	ssize_t got = file >= 0 ? read(file, head, HEAD_BYTES) : -1;

	if (file < 0) {
		command_fault(&f);
		return false;
	}
	close(file);
	head[got > 0 ? got : 0] = '\0';
	return true;
}

/* Whether it begins as a record does, after comments at most. */
static bool is_record(const char *head)
{
	static const char first[] = "evenhand_record:";
	const char *s = head;

	while (s && (*s == '#' || *s == '\n' || *s == '\r')) {
		s = strchr(s, '\n');
		s = s ? s + 1 : NULL;
	}
	return s && strncmp(s, first, sizeof(first) - 1) == 0;
}

static void say_no_memory(void)
{
	struct message m = message_of(M_CLASS_NO_MEMORY);

	command_say(&m);
}

static void add_found(struct gathering *g, const struct found *f)
{
	if (g->found == g->room) {
		int room = g->room > 0 ? 2 * g->room : 64;
		struct found *more = realloc(
		    g->at, (size_t)room * sizeof(*more));

		if (!more) {
			say_no_memory();
			return;
		}
		g->at = more;
		g->room = room;
	}
	g->at[g->found++] = *f;
}

static bool is_known(const struct class_folder *known, const struct found *f)
{
	return known &&
	    class_file_known(known,
		&(struct class_file) { f->name, f->size, f->time_ns, 0 });
}

/* Something that is no record; the first by name stands for all. */
static void add_other(struct class_lies *lies, const char *name)
{
	if (is_journal(name))
		lies->journals++;
	else if (lies->others++ == 0 || strcmp(name, lies->other) < 0)
		text_clean(lies->other, sizeof(lies->other), name);
}

static void look_at_file(
    struct gathering *g, const struct class_folder *known, const char *name)
{
	struct text t;
	struct found f;
	char path[CLASS_PATH_BYTES], head[HEAD_BYTES + 1];
	struct stat s;

	if (!may_be(name) || !path_of(g, name, path, sizeof(path)) ||
	    stat(path, &s) != 0 || !S_ISREG(s.st_mode))
		return;
	f.size = s.st_size;
	f.time_ns = file_time_ns(&s);
	t = text_in(f.name, sizeof(f.name));
	text_add(&t, name);
	if (has_ending(name) && is_known(known, &f))
		return;
	if (!read_head(path, head))
		return;
	if (!is_record(head))
		add_other(g->lies, name);
	else if (!is_known(known, &f))
		add_found(g, &f);
}

static int by_name(const void *a, const void *b)
{
	return strcmp(
	    ((const struct found *)a)->name, ((const struct found *)b)->name);
}

/* A folder that is out of reach is told of by who reads the class. */
static void say_unopened(int error)
{
	struct message m = message_of(M_WORLD_FILE_NO_MORE);

	if (error == ENOMEM)
		say_no_memory();
	else if (error == EMFILE || error == ENFILE)
		command_say(&m);
}

static void find(struct gathering *g)
{
	struct class_folder *known = NULL;
	struct dirent *e;
	struct fault f;
	DIR *folder = opendir(g->folder);

	if (!folder) {
		say_unopened(errno);
		return;
	}
	while ((e = readdir(folder)) != NULL) {
		/* A folder without a file that may be one opens nothing. */
		if (!known && may_be(e->d_name))
			known = class_look(g->folder, &f);
		look_at_file(g, known, e->d_name);
	}
	closedir(folder);
	class_close(known);
	if (g->found > 0)
		qsort(g->at, (size_t)g->found, sizeof(*g->at), by_name);
}

/* --- gathering them --- */

static bool take_bytes(
    struct gathering *g, const char *path, const char *bytes, size_t length)
{
	static const struct join_asked nothing = { 0 };
	struct record r = { 0 };
	struct gathered news;
	struct fault f;
	bool good;

	g->faults.count = g->faults.left_out = 0;
	good = record_parse(path, bytes, length, &r, &g->faults);
	if (!good) {
		so_far_end(&g->so_far);
		command_faults(&g->faults);
	} else if (!class_merge(g->class, &r, &nothing, &news, &f)) {
		so_far_end(&g->so_far);
		command_fault(&f);
		good = false;
	}
	record_done(&r);
	return good;
}

static void take_file(struct gathering *g, const struct found *found)
{
	struct class_file file = { found->name, found->size, found->time_ns,
		0 };
	char path[CLASS_PATH_BYTES], *bytes;
	struct fault f;
	size_t length;

	if (!path_of(g, found->name, path, sizeof(path)))
		return;
	if (!file_read(path, RECORD_BYTES_MAX, &bytes, &length, &f)) {
		so_far_end(&g->so_far);
		command_fault(&f);
		return;
	}
	file.size = (int64_t)length;
	file.hash = fingerprint_add(FINGERPRINT_START, bytes, length);
	if (class_file_known(g->class, &file)) {
		class_file_keep(g->class, &file);
	} else if (take_bytes(g, path, bytes, length)) {
		class_file_keep(g->class, &file);
		g->good++;
	}
	free(bytes);
}

static void gather(struct gathering *g)
{
	struct message m = message_with(
	    M_CLASS_NOT_GATHERED, WHOLE(g->found), TEXT(g->folder));
	struct fault f;

	g->lies->records = g->found;
	if (access(g->folder, W_OK) != 0) {
		command_say(&m);
		return;
	}
	g->class = class_open(g->folder, &f);
	if (!g->class) {
		command_fault(&f);
		return;
	}
	for (int i = 0; i < g->found; i++) {
		take_file(g, &g->at[i]);
		so_far_tell(&g->so_far, i + 1, g->found);
	}
	class_close(g->class);
	m = message_with(M_CLASS_GATHERED, WHOLE(g->good));
	if (g->good > 0)
		command_say(&m);
}

void class_gather(const char *folder, struct class_lies *lies)
{
	struct gathering *g = calloc(1, sizeof(*g));

	*lies = (struct class_lies) { 0 };
	if (!g) {
		say_no_memory();
		return;
	}
	g->folder = folder;
	g->lies = lies;
	g->so_far = (struct so_far) { M_CLASS_GATHERING, 20, 10, false };
	find(g);
	if (g->found > 0)
		gather(g);
	free(g->at);
	free(g);
}
