/*
 * settings_file.c - the settings on the disk
 *
 *	read ─▶ look for slips ─▶ tree ─▶ settings
 *	                            └──▶ one value changed ─▶ read again ─▶ write
 *
 * A changed text is read before it is written: only when every setting in it is
 * as it should be does it take the place of what the person wrote.
 */
#include "evenhand/world/settings_file.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <time.h>
#include <unistd.h>

#include "evenhand/world/file.h"
#include "evenhand/world/yaml.h"

enum {
	MORE_MAX = 1024, /* bytes that one setting may add */
	LOCK_TRIES = 50,
	LOCK_WAIT_MS = 10,
	LINKS_MAX = 16,
};

/* A text on its way to settings; the bytes are the caller's. */
struct reading {
	struct source source;
	struct arena arena;
	struct settings found;
};

/* Whether the text can be read at all; faults of values do not count. */
static bool reading_make(struct reading *r, const char *path, const char *bytes,
    size_t length, struct faults *faults)
{
	int before = faults->count;

	*r = (struct reading) { .source = { path, bytes, length, NULL } };
	settings_defaults(&r->found);
	if (slips_find(&r->source, faults))
		r->source.root = yaml_parse(
		    path, bytes, length, &r->arena, faults);
	settings_words(faults, before);
	if (r->source.root == NULL)
		return false;
	settings_read(&r->found, &r->source, faults);
	return true;
}

static void reading_done(struct reading *r)
{
	arena_done(&r->arena);
}

/* The bytes of the file, "" when there is none. */
static bool read_bytes(
    const char *path, char **bytes, size_t *length, struct fault *f)
{
	if (file_read(path, ROUTINE_BYTES_MAX, bytes, length, f))
		return true;
	if (f->message.id != M_WORLD_FILE_MISSING)
		return false;
	*length = 0;
	*bytes = calloc(1, 1);
	if (*bytes != NULL)
		return true;
	fault_set(f, message_of(M_WORLD_FILE_NO_MEMORY));
	return fault_at(f, path, 0, 0);
}

static void add_fault(struct faults *faults, const struct fault *f)
{
	faults_add(faults, f->message, f->path, f->line, f->column);
}

/* The folder's name: the path up to its last slash. */
static void folder_of(const char *path, char *folder, size_t size)
{
	struct text t = text_in(folder, size);
	const char *slash = strrchr(path, '/');

	text_add_bytes(&t, path, slash > path ? (size_t)(slash - path) : 1);
}

void settings_open(struct settings_file *f, struct faults *faults)
{
	struct reading r;
	struct fault fault;
	char *bytes;
	size_t length;

	*f = (struct settings_file) { .told = false };
	settings_defaults(&f->now);
	if (!path_settings(f->path, sizeof(f->path), &fault)) {
		f->path[0] = '\0';
		add_fault(faults, &fault);
		return;
	}
	folder_of(f->path, f->folder, sizeof(f->folder));
	if (!read_bytes(f->path, &bytes, &length, &fault)) {
		add_fault(faults, &fault);
		return;
	}
	reading_make(&r, f->path, bytes, length, faults);
	f->now = r.found;
	reading_done(&r);
	free(bytes);
	faults_sort(faults);
}

/* --- keeping --- */

static bool same_setting(
    const struct settings *a, const struct settings *b, enum setting what)
{
	char one[SETTINGS_VALUE_MAX], two[SETTINGS_VALUE_MAX];
	struct text s = text_in(one, sizeof(one)),
		    t = text_in(two, sizeof(two));

	settings_value(&s, a, what);
	settings_value(&t, b, what);
	return settings_given(a, what) == settings_given(b, what) &&
	    strcmp(one, two) == 0;
}

/* Whether a text says what it said before, and the one setting as in want. */
static bool reads_well(const char *path, const struct text *t,
    const struct settings *before, const struct settings *want,
    enum setting what, struct faults *faults)
{
	struct reading r;
	bool good = reading_make(&r, path, t->bytes, t->length, faults);

	for (int i = 0; i < SETTINGS && good; i++)
		good = same_setting(
		    i == (int)what ? want : before, &r.found, (enum setting)i);
	reading_done(&r);
	return good;
}

static bool left_alone(struct fault *f, const char *path,
    const struct reading *r, const struct settings *want, enum setting what)
{
	const struct node *n = node_get(r->source.root, settings_key(what));
	char value[SETTINGS_VALUE_MAX];
	struct text t = text_in(value, sizeof(value));

	settings_value(&t, want, what);
	fault_set(f,
	    message_with(
		M_SETTINGS_LEFT, TEXT(settings_key(what)), TEXT(value)));
	return fault_at(f, path, n ? n->key_line : 0, n ? n->key_column : 0);
}

/* The new text, in a buffer that is large enough. */
static bool change(struct text *t, const char *path, const struct reading *r,
    const struct settings *want, enum setting what, struct faults *faults,
    struct fault *f)
{
	if (r->source.length == 0)
		settings_head(t);
	if (settings_edit(t, &r->source, want, what) &&
	    reads_well(path, t, &r->found, want, what, faults))
		return true;
	return left_alone(f, path, r, want, what);
}

/* Changes the text of the file and writes it. */
static bool rewrite(const char *path, const struct reading *r,
    const struct settings *want, enum setting what, struct faults *faults,
    struct fault *f)
{
	size_t size = r->source.length + MORE_MAX;
	char *buffer = malloc(size);
	struct text t;
	bool good;

	if (buffer == NULL) {
		fault_set(f, message_of(M_WORLD_FILE_NO_MEMORY));
		return fault_at(f, path, 0, 0);
	}
	t = text_in(buffer, size);
	good = change(&t, path, r, want, what, faults, f) &&
	    file_replace(path, buffer, t.length, f);
	free(buffer);
	return good;
}

static bool keep_bytes(const char *path, const char *bytes, size_t length,
    const struct settings *now, enum setting what, struct fault *f)
{
	struct faults *faults = calloc(1, sizeof(*faults));
	struct settings want = *now;
	struct reading r = { .arena = { NULL, 0 } };
	bool good;

	want.given |= UINT32_C(1) << what;
	if (faults == NULL) {
		fault_set(f, message_of(M_WORLD_FILE_NO_MEMORY));
		return fault_at(f, path, 0, 0);
	}
	if (!reading_make(&r, path, bytes, length, faults)) {
		fault_set(f,
		    message_with(M_SETTINGS_BROKEN, TEXT(settings_key(what))));
		good = fault_at(f, path, 0, 0);
	} else {
		good = same_setting(&r.found, &want, what) ||
		    rewrite(path, &r, &want, what, faults, f);
	}
	reading_done(&r);
	free(faults);
	return good;
}

/*
 * Holds the folder against others who keep something.  *lock is -1 where that
 * cannot be done; false when somebody else does not let go.
 */
static bool lock_folder(const char *folder, int *lock)
{
	const struct timespec wait = { 0, LOCK_WAIT_MS * 1000000L };

	*lock = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
	for (int i = 0; *lock >= 0 && i < LOCK_TRIES; i++) {
		if (flock(*lock, LOCK_EX | LOCK_NB) == 0)
			return true;
		if (errno != EWOULDBLOCK && errno != EINTR)
			break;
		if (i == LOCK_TRIES - 1) {
			close(*lock);
			return false;
		}
		nanosleep(&wait, NULL);
	}
	return true;
}

/* Where a link leads to, seen from the folder it lies in; false: no link. */
static bool follow(char *path)
{
	char to[PATH_BYTES_MAX], next[PATH_BYTES_MAX];
	ssize_t length = readlink(path, to, sizeof(to) - 1);
	struct text t = text_in(next, sizeof(next));

	if (length <= 0)
		return false;
	to[length] = '\0';
	if (to[0] != '/')
		text_add_bytes(
		    &t, path, (size_t)(strrchr(path, '/') + 1 - path));
	text_add(&t, to);
	if (t.cut)
		return false;
	memcpy(path, next, t.length + 1);
	return true;
}

/* The file itself behind all links, whether it is there already or not. */
static void behind_links(const char *path, char *real)
{
	struct text t = text_in(real, PATH_BYTES_MAX);
	char whole[PATH_BYTES_MAX];

	text_add(&t, path);
	for (int i = 0; i < LINKS_MAX && follow(real); i++)
		;
	if (realpath(real, whole) != NULL)
		memcpy(real, whole, strlen(whole) + 1);
}

static bool keep(
    struct settings_file *f, enum setting what, struct fault *fault)
{
	char real[PATH_BYTES_MAX];
	char *bytes = NULL;
	size_t length;
	int lock;
	bool good;

	if (!folder_make(f->folder, fault))
		return false;
	if (!lock_folder(f->folder, &lock)) {
		fault_set(fault,
		    message_with(M_SETTINGS_BUSY, TEXT(settings_key(what))));
		return fault_at(fault, f->path, 0, 0);
	}
	/* What a link leads to is changed, not the link. */
	behind_links(f->path, real);
	good = read_bytes(real, &bytes, &length, fault) &&
	    keep_bytes(real, bytes, length, &f->now, what, fault);
	/* The name that stays is the one the settings are known by. */
	fault->path = f->path;
	free(bytes);
	if (lock >= 0)
		close(lock);
	return good;
}

bool settings_keep(
    struct settings_file *f, enum setting what, struct fault *fault)
{
	f->now.given |= UINT32_C(1) << what;
	if (f->path[0] == '\0' || keep(f, what, fault) || f->told)
		return true;
	f->told = true;
	return false;
}
