/*
 * class_past.c - what a student practised, out of the journal of the class
 *
 * The routine is that of the newest session: its text lies in the journal.
 */
#include <errno.h>
#include <string.h>

#include "class_parts.h"
#include "evenhand/world/load.h"
#include "journal_parts.h"

static const char newest[] =
    "SELECT routines.text FROM routines"
    " JOIN sittings ON sittings.routine = routines.key"
    " ORDER BY sittings.day DESC, sittings.began_utc DESC LIMIT 1";

/* NULL when it cannot be read.  False: there was no memory to say. */
static bool routine_of(struct database *d, struct routine **r)
{
	sqlite3_stmt *st = NULL;
	const char *text;
	bool known = true;

	if (d->handle == NULL)
		return true;
	if (sqlite3_prepare_v2(d->handle, newest, -1, &st, NULL) != SQLITE_OK)
		return !database_starved(d);
	if (sqlite3_step(st) == SQLITE_ROW) {
		text = (const char *)sqlite3_column_text(st, 0);
		if (text) {
			*r = load_kept(text, strlen(text));
			known = *r || errno != ENOMEM;
		}
	}
	sqlite3_finalize(st);
	return known && !database_starved(d);
}

bool class_past(const struct class_folder *c, const char *id, int today,
    struct routine **r, struct history *h, struct fault *f)
{
	char path[CLASS_PATH_BYTES];
	struct journal *j;
	bool good;

	*r = NULL;
	*h = (struct history) { 0 };
	if (!class_journal(c, id, path, sizeof(path)))
		return fault_set(f, message_with(M_CLASS_NO_STUDENT, TEXT(id)));
	j = journal_look(path, f);
	if (!j)
		return false;
	/* Nobody else has this one: it was opened only to be read. */
	good = routine_of(&j->base, r)
	    ? journal_history(j, h, today, *r, f)
	    : fault_set(f, message_of(M_CLASS_NO_MEMORY));
	journal_close(j);
	if (!good) {
		routine_free(*r);
		*r = NULL;
	}
	return good;
}

bool class_take(const struct class_folder *c, const char *id, int today,
    struct student *s, struct fault *f)
{
	struct history h;
	struct routine *r;
	struct text name;

	if (class_past(c, id, today, &r, &h, f)) {
		student_of(s, r, &h, today);
		history_done(&h);
		routine_free(r);
	} else if (f->message.id == M_CLASS_NO_MEMORY || journal_lacked(f)) {
		return false;
	} else {
		student_of(s, NULL, &h, today);
		s->unread = true;
	}
	name = text_in(s->id, sizeof(s->id));
	text_add(&name, id);
	return true;
}
