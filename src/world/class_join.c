/*
 * class_join.c - one line of a class under several ids
 *
 *	students/B.joined	"A": what is B's is in the journal of A
 *	students/B.sqlite	stays as it was, and nobody looks at it any more
 *
 * What a journal says of its own ids decides, and that comes in the transaction
 * of the merge: B.joined is written before it and means nothing until A's
 * journal knows B.  So a class that was killed in between is as it was before,
 * or joined.
 */
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

#include "class_parts.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/file.h"
#include "evenhand/world/record_file.h"
#include "record_query.h"
#include "shortage.h"

#define POINTER_ENDING ".joined"
#define ID_DIGITS (RECORD_ID_MAX - 1)

/* --- where an id is ------------------------------------------------------- */

static void pointer_path(
    const struct class_folder *c, const char *id, char *path, size_t size)
{
	struct text t = text_in(path, size);

	text_format(
	    &t, "%s/%s/%s%s", c->folder, CLASS_JOURNALS, id, POINTER_ENDING);
}

static bool read_pointer(
    const struct class_folder *c, const char *id, char to[RECORD_ID_MAX])
{
	char path[CLASS_PATH_BYTES], bytes[RECORD_ID_MAX] = "";
	ssize_t got;
	int file;

	pointer_path(c, id, path, sizeof(path));
	file = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
	if (file < 0) {
		shortage_note(errno);
		return false;
	}
	got = read(file, bytes, ID_DIGITS);
	close(file);
	id_copy(to, bytes);
	return got == ID_DIGITS && record_id_good(to);
}

static bool is_there(const struct class_folder *c, const char *id)
{
	char path[CLASS_PATH_BYTES];

	return class_journal(c, id, path, sizeof(path)) &&
	    access(path, F_OK) == 0;
}

/* The ids that the journal of one knows; none when it is not there. */
static void ids_of(
    const struct class_folder *c, const char *id, struct student_ids *ids)
{
	char path[CLASS_PATH_BYTES];
	struct database d;

	ids->count = 0;
	if (!is_there(c, id) || !class_journal(c, id, path, sizeof(path)))
		return;
	database_look(&d, path);
	if (d.handle != NULL)
		query_ids(&d, ids);
	database_close(&d);
}

void class_home(
    const struct class_folder *c, const char *id, char home[RECORD_ID_MAX])
{
	char next[RECORD_ID_MAX];
	struct student_ids ids;

	id_copy(home, id);
	for (int i = 0; i < STUDENT_IDS_MAX; i++) {
		if (!read_pointer(c, home, next))
			return;
		ids_of(c, next, &ids);
		if (!ids_have(&ids, home))
			return;
		id_copy(home, next);
	}
}

/* Ids that have a home of their own are to have this one. */
static bool point(const struct class_folder *c, const struct student_ids *ids,
    const char *to, struct fault *f)
{
	char path[CLASS_PATH_BYTES], home[RECORD_ID_MAX];
	bool any = false;

	for (int i = 0; i < ids->count; i++) {
		class_home(c, ids->id[i], home);
		if (!class_sure(c, f))
			return false;
		if (strcmp(ids->id[i], to) == 0 ||
		    strcmp(ids->id[i], home) != 0)
			continue;
		pointer_path(c, ids->id[i], path, sizeof(path));
		if (!file_replace(path, to, ID_DIGITS, f)) {
			f->path = NULL; /* it is ours, and gone */
			return false;
		}
		any = true;
	}
	if (any)
		folder_to_disk(path);
	return true;
}

/* --- whose ids were said -------------------------------------------------- */

/* The homes of ids that begin so. */
static void add_named(const struct class_folder *c,
    const struct join_asked *asked, struct student_ids *homes)
{
	char path[CLASS_PATH_BYTES], id[RECORD_ID_MAX], home[RECORD_ID_MAX];
	struct text t = text_in(path, sizeof(path));
	struct dirent *e;
	DIR *folder;

	text_format(&t, "%s/%s", c->folder, CLASS_JOURNALS);
	folder = opendir(path);
	if (!folder)
		shortage_note(errno);
	while (folder && (e = readdir(folder)) != NULL) {
		if (strlen(e->d_name) <= ID_DIGITS ||
		    e->d_name[ID_DIGITS] != '.')
			continue;
		id_copy(id, e->d_name);
		if (!record_id_good(id) || !join_names(asked, id))
			continue;
		class_home(c, id, home);
		if (is_there(c, home))
			ids_add(homes, home);
	}
	if (folder)
		closedir(folder);
}

/* Each beginning is that of one student, or, unless all must be, of none. */
static bool homes_of(const struct class_folder *c,
    const struct join_asked *asked, bool all, struct student_ids *homes,
    struct fault *f)
{
	for (int i = 0; i < asked->count; i++) {
		struct join_asked one = { .count = 1 };
		struct student_ids found = { 0 };

		id_copy(one.start[0], asked->start[i]);
		add_named(c, &one, &found);
		if (!class_sure(c, f))
			return false;
		if (found.count > 1 || (all && found.count == 0))
			return fault_set(f,
			    message_with(found.count > 1 ? M_GATHER_SEVERAL
							 : M_GATHER_NOBODY,
				TEXT(asked->start[i])));
		if (found.count == 1)
			ids_add(homes, found.id[0]);
	}
	return true;
}

/* --- joining -------------------------------------------------------------- */

/* Two students of the class are in one record. */
static bool refuse(
    const struct record *r, const struct student_ids *homes, struct fault *f)
{
	struct student_ids one = { .count = 1 }, other = { .count = 1 };

	id_copy(one.id[0], homes->id[0]);
	id_copy(other.id[0], homes->id[1]);
	return fault_set(f, join_refusal(JOIN_MORE, r, &one, &other));
}

bool class_place(const struct class_folder *c, const struct record *r,
    const struct join_asked *asked, char home[RECORD_ID_MAX], struct fault *f)
{
	struct student_ids theirs, known, both, homes = { 0 };
	bool named = false;

	ids_of_record(&theirs, r);
	for (int i = 0; i < theirs.count; i++) {
		class_home(c, theirs.id[i], home);
		named |= join_names(asked, theirs.id[i]);
		if (is_there(c, home))
			ids_add(&homes, home);
	}
	if (!class_sure(c, f))
		return false;
	if (homes.count == 0 && named && !homes_of(c, asked, false, &homes, f))
		return false;
	if (homes.count > 1)
		return refuse(r, &homes, f);
	id_copy(home, homes.count > 0 ? homes.id[0] : theirs.id[0]);
	ids_of(c, home, &known);
	if (!class_sure(c, f))
		return false;
	if (join_answer(&known, &theirs, asked, &both) != JOIN_TOGETHER)
		return true; /* nothing new, or gather_into refuses it */
	return point(c, &theirs, home, f);
}

/* All of one student's journal into that of another. */
static bool take_over(struct class_folder *c, const char *to, const char *from,
    const struct join_asked *asked, struct gathered *news, struct fault *f)
{
	char from_path[CLASS_PATH_BYTES], path[CLASS_PATH_BYTES];
	struct student_ids ids;
	struct record_left left;
	struct record r;
	int today = moment_practice_day(clock_now());
	bool good;

	if (!class_journal(c, from, from_path, sizeof(from_path)) ||
	    !class_journal(c, to, path, sizeof(path)))
		return fault_set(f, message_of(M_WORLD_PATH_LONG));
	good = record_take(from_path, -1, &r, &left, f);
	if (good && left.sittings + left.notes > 0)
		good = fault_set(
		    f, message_with(M_GATHER_JOIN_LEFT, TEXT(from_path)));
	if (good) {
		ids.count = 0;
		ids_add(&ids, from);
		good = point(c, &ids, to, f) &&
		    gather_into(path,
			&(struct gather_what) { &r, GATHER_CLASS, *asked },
			news, f) &&
		    (rows_fold(&c->base, from, to, today) ||
			class_failed(c, f)) &&
		    class_keep(c, to, NULL, f);
	}
	record_done(&r);
	return good;
}

bool class_join(struct class_folder *c, const struct join_asked *asked,
    bool all, int *joined, struct fault *f)
{
	struct student_ids homes = { 0 };
	struct gathered news = { 0 };

	*joined = 0;
	database_fed(&c->base);
	if (!homes_of(c, asked, all, &homes, f))
		return false;
	for (int i = 1; i < homes.count; i++) {
		if (!take_over(c, homes.id[0], homes.id[i], asked, &news, f))
			return false;
		*joined += news.joined;
	}
	return true;
}
