/*
 * write.c - a record as the words of a file
 *
 * It begins with what a person must know who opens it; then come the key that
 * says what it is, and the parts in the order they refer to each other.
 */
#include "evenhand/record/write.h"

#include <inttypes.h>

#include "evenhand/base/message.h"
#include "evenhand/record/moment.h"
#include "writer.h"

static void write_comment(struct text *t)
{
	static const enum message_id lines[] = { M_RECORD_COMMENT_1,
		M_RECORD_COMMENT_2, M_RECORD_COMMENT_3, M_RECORD_COMMENT_4,
		M_RECORD_COMMENT_5 };

	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		text_format(t, "# %s\n", message_english(lines[i]));
}

static void write_about(struct text *t, const struct record *r)
{
	char date[DATE_TEXT_MAX];

	/* Who has one id alone is understood by the first evenhand, too. */
	text_format(t, "evenhand_record: %d\nstudent: {initials: ",
	    r->also.count > 0 ? RECORD_VERSION : 1);
	write_quoted(t, r->initials);
	text_format(t, ", id: \"%s\"", r->student);
	for (int i = 0; i < r->also.count; i++)
		text_format(
		    t, "%s\"%s\"", i > 0 ? ", " : ", also: [", r->also.id[i]);
	text_format(t, "%s}\ngiven: ", r->also.count > 0 ? "]" : "");
	moment_tell(t, r->given);
	text_add(t, "\n");
	if (r->since >= 0) {
		date_text(r->since, date);
		text_format(t, "since: %s\n", date);
	}
}

/* A list begins; an empty one ends there, too. */
static void write_list(struct text *t, const char *key, int entries)
{
	text_format(t, "%s:%s\n", key, entries > 0 ? "" : " []");
}

static void write_routine(struct text *t, const struct record_routine *m)
{
	text_format(
	    t, "- fingerprint: \"%016" PRIx64 "\"\n  name: ", m->fingerprint);
	write_quoted(t, m->name);
	text_format(t, "\n  edition: %d\n  text: ", m->edition);
	write_block(t, "    ", m->text);
}

void record_write(struct text *t, const struct record *r)
{
	write_comment(t);
	write_about(t, r);
	write_list(t, "computers", r->computers);
	for (int i = 0; i < r->computers; i++)
		text_format(t, "- {id: \"%s\", rows: %" PRId64 "}\n",
		    r->computer[i].id, r->computer[i].rows);
	write_list(t, "routines", r->routines);
	for (const struct record_routine *m = r->routine; m; m = m->next)
		write_routine(t, m);
	write_list(t, "sittings", r->sittings);
	for (const struct record_sitting *s = r->sitting; s && !t->cut;
	     s = s->next)
		write_sitting(t, s);
	write_list(t, "notes", r->note != NULL);
	for (const struct record_note *n = r->note; n != NULL; n = n->next)
		write_note(t, n, NULL);
}
