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

static bool refuse_later(struct practice *p, const struct call *c, int stage)
{
	const struct routine *r = p->routine;
	struct note_row note = { .kind = NOTE_LATER };
	struct text words = text_in(note.words, sizeof(note.words));
	struct message m = message_with(M_COMMAND_STAGE_LATER,
	    TEXT(r->stage[stage].title),
	    TEXT(r->stage[r->no_further_than].title));

	text_add(&words, r->stage[stage].id);
	journal_note(p->journal, &note, c->now);
	command_say(&m);
	return false;
}

bool practice_stage(struct practice *p, const struct call *c,
    struct plan_wish *wish, int *status)
{
	int stage;

	if (!c->stage)
		return true;
	stage = routine_stage(p->routine, c->stage);
	*status = EXIT_USAGE;
	if (stage < 0)
		return refuse_unknown(p->routine, c->stage);
	*status = EXIT_NO_PERMISSION;
	if (stage > p->routine->no_further_than)
		return refuse_later(p, c, stage);
	wish->stage = stage + 1;
	*status = EXIT_OS;
	return true;
}
