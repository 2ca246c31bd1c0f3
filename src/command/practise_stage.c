/*
 * practise_stage.c - another stage for today (--stage)
 *
 * Any stage that the teacher's file has opened may be worked on instead.  One
 * that is not opened yet is refused, and kept as a sign of hurry: see guard.h.
 */
#include "practise_stage.h"

#include "options.h"

enum { LIST_BYTES = 400 };

/* The ids up to the one the file lets. */
static void list_ids(const struct routine *r, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	for (int i = 0; i <= r->no_further_than; i++)
		text_format(&t, i > 0 ? ", %s" : "%s", r->stage[i].id);
}

static bool refuse_unknown(const struct routine *r, const char *id)
{
	char list[LIST_BYTES];
	struct message m;

	list_ids(r, list, sizeof(list));
	m = message_with(M_COMMAND_STAGE_UNKNOWN, TEXT(id), TEXT(list));
	command_say(&m);
	return false;
}

static bool refuse_later(const struct routine *r, int stage)
{
	struct message m = message_with(M_COMMAND_STAGE_LATER,
	    TEXT(r->stage[stage].title),
	    TEXT(r->stage[r->no_further_than].title));

	command_say(&m);
	return false;
}

bool stage_opened(
    const struct routine *r, const char *id, int *stage, int *status)
{
	*stage = routine_stage(r, id);
	*status = EXIT_USAGE;
	if (*stage < 0)
		return refuse_unknown(r, id);
	*status = EXIT_NO_PERMISSION;
	if (*stage > r->no_further_than)
		return refuse_later(r, *stage);
	*status = EXIT_GOOD;
	return true;
}

static void keep_later(struct practice *p, const struct call *c, int stage)
{
	struct note_row note = { .kind = NOTE_LATER };
	struct text words = text_in(note.words, sizeof(note.words));

	text_add(&words, p->routine->stage[stage].id);
	journal_note(p->journal, &note, c->now);
}

bool practice_stage(struct practice *p, const struct call *c,
    struct plan_wish *wish, int *status)
{
	int stage;

	if (!c->stage)
		return true;
	if (!stage_opened(p->routine, c->stage, &stage, status)) {
		if (*status == EXIT_NO_PERMISSION)
			keep_later(p, c, stage);
		return false;
	}
	wish->stage = stage + 1;
	*status = EXIT_OS;
	return true;
}
