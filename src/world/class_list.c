/*
 * class_list.c - all students of a class
 *
 *	students/ID.sqlite ─┐
 *	                    ├─ a row is missing or no longer true? make it anew
 *	class.sqlite ───────┘
 *
 * The folder says who is in the class: a journal that was moved away takes its
 * student along, and one that was joined with another's is no line of its own.
 * While a journal has a helper file of WAL somebody may be writing it, or was
 * cut off; then its row is made anew each time.  No lock is held while journals
 * are read, so who lists a class keeps nobody waiting.
 */
#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "class_parts.h"
#include "evenhand/base/text.h"
#include "evenhand/record/record.h"
#include "evenhand/world/file.h"
#include "shortage.h"

#define HELPER "-wal"

enum { BATCH = 32 };

/* A journal that lies in the folder. */
struct found {
	char id[STUDENT_ID_BYTES];
	struct class_stamp stamp;
	bool stale; /* its row is missing, or no longer true */
};

/* What is being listed. */
struct listing {
	struct class_folder *folder;
	int today;
	int found, room;
	struct found *at; /* by id */
	int next;	  /* while rows go by */
	struct class_list *out;
	int space; /* students there is memory for */
	bool no_memory;
	bool failed; /* at a journal, with the fault */
	struct fault fault;
	int stale, done;
	void (*progress)(void *context, int done, int all);
	void *context;
};

/* Rows that are made before they are all kept at once. */
struct batch {
	const struct found *of[BATCH];
	struct student student[BATCH];
};

bool class_stamp_of(const char *path, struct class_stamp *stamp)
{
	char helper[CLASS_PATH_BYTES + sizeof(HELPER)];
	struct stat s, h;

	*stamp = (struct class_stamp) { -1, -1 };
	snprintf(helper, sizeof(helper), "%s%s", path, HELPER);
	if (stat(path, &s) != 0 || stat(helper, &h) == 0)
		return false;
	*stamp = (struct class_stamp) { s.st_size, file_time_ns(&s) };
	return true;
}

/* --- the folder --- */

/* The id in the name of a journal; false when it is no such name. */
static bool id_of(const char *name, char *id)
{
	struct text t = text_in(id, STUDENT_ID_BYTES);

	if (strlen(name) != STUDENT_ID_BYTES - 1 + sizeof(CLASS_ENDING) - 1 ||
	    strcmp(name + STUDENT_ID_BYTES - 1, CLASS_ENDING) != 0)
		return false;
	text_add_bytes(&t, name, STUDENT_ID_BYTES - 1);
	return record_id_good(id);
}

static void add_found(struct listing *l, const char *id)
{
	char path[CLASS_PATH_BYTES], home[RECORD_ID_MAX];

	class_home(l->folder, id, home);
	if (strcmp(home, id) != 0) {
		/* Joined, and perhaps killed before its row was. */
		rows_fold(&l->folder->base, id, home, l->today);
		return;
	}
	if (l->found == CLASS_STUDENTS_MAX) {
		l->out->left_out++;
		return;
	}
	if (l->found == l->room) {
		int room = l->room > 0 ? 2 * l->room : 64;
		struct found *more = realloc(
		    l->at, (size_t)room * sizeof(*more));

		l->no_memory |= !more;
		if (!more)
			return;
		l->at = more;
		l->room = room;
	}
	if (!class_journal(l->folder, id, path, sizeof(path)))
		return;
	l->at[l->found] = (struct found) { .stale = true };
	memcpy(l->at[l->found].id, id, STUDENT_ID_BYTES);
	class_stamp_of(path, &l->at[l->found].stamp);
	l->found++;
}

static int by_id(const void *a, const void *b)
{
	return strcmp(
	    ((const struct found *)a)->id, ((const struct found *)b)->id);
}

/* False: it is there and cannot be read. */
static bool find(struct listing *l)
{
	char path[CLASS_PATH_BYTES], id[STUDENT_ID_BYTES];
	struct text t = text_in(path, sizeof(path));
	struct dirent *e;
	DIR *folder;

	text_format(&t, "%s/%s", l->folder->folder, CLASS_JOURNALS);
	folder = opendir(path);
	if (!folder) {
		shortage_note(errno);
		return errno == ENOENT;
	}
	while ((e = readdir(folder)) != NULL)
		if (id_of(e->d_name, id))
			add_found(l, id);
	closedir(folder);
	if (l->found > 0)
		qsort(l->at, (size_t)l->found, sizeof(*l->at), by_id);
	return true;
}

/* --- rows that are no longer true --- */

/* The journal of a row; rows come in the order of ids. */
static struct found *journal_of(struct listing *l, const char *id)
{
	while (l->next < l->found && strcmp(l->at[l->next].id, id) < 0)
		l->next++;
	return l->next < l->found && strcmp(l->at[l->next].id, id) == 0
	    ? &l->at[l->next]
	    : NULL;
}

static void look_at_row(
    void *context, const struct student *s, const struct class_stamp *stamp)
{
	struct listing *l = context;
	struct found *f = journal_of(l, s->id);

	/* What could not be read may be mended, and what lay ahead be here. */
	if (f)
		f->stale = f->stamp.size < 0 || s->unread ||
		    stamp->size != f->stamp.size ||
		    stamp->time_ns != f->stamp.time_ns ||
		    (s->ahead && l->today > s->made);
}

/* The next rows that are not true, made without keeping anybody waiting. */
static int take_batch(struct listing *l, int *from, struct batch *b)
{
	int count = 0;

	for (; *from < l->found && count < BATCH; ++*from) {
		if (!l->at[*from].stale)
			continue;
		b->of[count] = &l->at[*from];
		b->student[count] = (struct student) { 0 };
		if (!class_take(l->folder, l->at[*from].id, l->today,
			&b->student[count++], &l->fault)) {
			l->failed = true;
			return 0;
		}
		if (l->progress)
			l->progress(l->context, ++l->done, l->stale);
	}
	return count;
}

static bool keep_batch(struct listing *l, const struct batch *b, int count)
{
	bool good = true;

	class_begin(l->folder);
	for (int i = 0; good && i < count; i++)
		good = rows_keep(
		    &l->folder->base, &b->student[i], &b->of[i]->stamp);
	class_end(l->folder);
	return good;
}

static bool make_rows(struct listing *l)
{
	struct batch *b;
	bool good = true;
	int from = 0, count;

	for (int i = 0; i < l->found; i++)
		l->stale += l->at[i].stale;
	b = l->stale > 0 ? calloc(1, sizeof(*b)) : NULL;
	l->no_memory |= l->stale > 0 && !b;
	while (b && good && (count = take_batch(l, &from, b)) > 0)
		good = keep_batch(l, b, count);
	free(b);
	return good && !l->no_memory && !l->failed;
}

/* --- the list --- */

static void add_student(
    void *context, const struct student *s, const struct class_stamp *stamp)
{
	struct listing *l = context;
	struct class_list *out = l->out;

	(void)stamp;
	if (!journal_of(l, s->id) || out->count == l->space)
		return;
	out->broken += s->unread;
	out->student[out->count++] = *s;
}

static bool add_students(struct listing *l)
{
	l->out->student = calloc(
	    (size_t)l->found + 1, sizeof(*l->out->student));
	l->no_memory |= !l->out->student;
	l->space = l->found;
	l->next = 0;
	return l->no_memory || rows_each(&l->folder->base, add_student, l);
}

bool class_students(struct class_folder *c, struct class_list *list, int today,
    void (*progress)(void *context, int done, int all), void *context,
    struct fault *f)
{
	struct listing l = { .folder = c,
		.today = today,
		.out = list,
		.progress = progress,
		.context = context };
	bool good;

	*list = (struct class_list) { 0 };
	database_fed(&c->base);
	if (!find(&l)) {
		free(l.at);
		return class_sure(c, f) &&
		    fault_set(
			f, message_with(M_CLASS_UNREACHED, TEXT(c->folder)));
	}
	good = rows_each(&c->base, look_at_row, &l) && make_rows(&l) &&
	    add_students(&l);
	free(l.at);
	if (l.failed)
		*f = l.fault;
	else if (l.no_memory)
		fault_set(f, message_of(M_CLASS_NO_MEMORY));
	if (l.failed || l.no_memory)
		return false;
	return good ? class_sure(c, f) : class_failed(c, f);
}

void class_list_done(struct class_list *list)
{
	free(list->student);
	*list = (struct class_list) { 0 };
}
