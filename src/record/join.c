/*
 * join.c - one student under several ids
 */
#include "evenhand/record/join.h"

#include <string.h>

/* --- sets of ids --- */

void id_copy(char to[RECORD_ID_MAX], const char *words)
{
	struct text t = text_in(to, RECORD_ID_MAX);

	text_add(&t, words);
}

bool ids_have(const struct student_ids *ids, const char *id)
{
	for (int i = 0; i < ids->count; i++)
		if (strcmp(ids->id[i], id) == 0)
			return true;
	return false;
}

bool ids_add(struct student_ids *ids, const char *id)
{
	int at = ids->count;

	if (ids_have(ids, id))
		return true;
	if (at == STUDENT_IDS_MAX)
		return false;
	for (; at > 0 && strcmp(ids->id[at - 1], id) > 0; at--)
		id_copy(ids->id[at], ids->id[at - 1]);
	id_copy(ids->id[at], id);
	ids->count++;
	return true;
}

void ids_of_record(struct student_ids *ids, const struct record *r)
{
	*ids = r->also;
	ids_add(ids, r->student);
}

void ids_tell(struct text *t, const struct student_ids *ids)
{
	for (int i = 0; i < ids->count; i++) {
		text_add(t, i > 0 ? "+" : "");
		text_add(t, ids->id[i]);
	}
}

/* The next word before a + or the end; false when it is none of an id. */
static bool next_word(const char **words, size_t least, char id[RECORD_ID_MAX])
{
	size_t length = strcspn(*words, "+");
	struct text t = text_in(id, RECORD_ID_MAX);

	if (length < least || length >= RECORD_ID_MAX)
		return false;
	text_add_bytes(&t, *words, length);
	*words += length;
	return id[strspn(id, "0123456789abcdef")] == '\0';
}

bool ids_told(const char *words, struct student_ids *ids)
{
	struct student_ids all = { 0 };
	char id[RECORD_ID_MAX];
	bool good = true;

	for (;; words++) {
		good = good && next_word(&words, RECORD_ID_MAX - 1, id) &&
		    ids_add(&all, id);
		if (!good || *words == '\0')
			break;
	}
	if (!good)
		all.count = 0;
	*ids = all;
	return good;
}

/* --- what was said --- */

bool join_read(const char *words, struct join_asked *a)
{
	*a = (struct join_asked) { 0 };
	for (;; words++) {
		if (a->count == STUDENT_IDS_MAX ||
		    !next_word(&words, JOIN_DIGITS_LEAST, a->start[a->count]))
			return false;
		a->count++;
		if (*words == '\0')
			return a->count >= 2;
	}
}

bool join_names(const struct join_asked *a, const char *id)
{
	for (int i = 0; i < a->count; i++)
		if (strncmp(id, a->start[i], strlen(a->start[i])) == 0)
			return true;
	return false;
}

/* Whether any of these ids was said that is not among the others. */
static bool named(const struct join_asked *a, const struct student_ids *ids,
    const struct student_ids *but)
{
	for (int i = 0; i < ids->count; i++)
		if (join_names(a, ids->id[i]) && !ids_have(but, ids->id[i]))
			return true;
	return false;
}

/* --- the answer --- */

enum join_answer join_answer(const struct student_ids *known,
    const struct student_ids *theirs, const struct join_asked *asked,
    struct student_ids *both)
{
	static const struct student_ids none = { 0 };
	int shared = 0;

	*both = *known;
	for (int i = 0; i < theirs->count; i++) {
		shared += ids_have(known, theirs->id[i]);
		if (!ids_add(both, theirs->id[i]))
			return JOIN_MANY;
	}
	if (shared == theirs->count)
		return JOIN_KNOWN;
	if (known->count == 0 ||
	    (named(asked, known, &none) && named(asked, theirs, known)))
		return JOIN_TOGETHER;
	return shared > 0 ? JOIN_MORE : JOIN_STRANGER;
}

static void show(char to[JOIN_DIGITS_SHOWN + 1], const char *id)
{
	struct text t = text_in(to, JOIN_DIGITS_SHOWN + 1);

	text_add_bytes(&t, id, JOIN_DIGITS_SHOWN);
}

struct message join_refusal(enum join_answer why, const struct record *r,
    const struct student_ids *known, const struct student_ids *theirs)
{
	char here[JOIN_DIGITS_SHOWN + 1] = "",
				      there[JOIN_DIGITS_SHOWN + 1] = "";

	if (why == JOIN_MANY)
		return message_with(M_GATHER_MANY_IDS, WHOLE(STUDENT_IDS_MAX));
	/* One that is known here, and one of the record's that is not. */
	for (int i = known->count - 1; i >= 0; i--)
		if (ids_have(theirs, known->id[i]) || here[0] == '\0')
			show(here, known->id[i]);
	for (int i = theirs->count - 1; i >= 0; i--)
		if (!ids_have(known, theirs->id[i]))
			show(there, theirs->id[i]);
	return message_with(
	    why == JOIN_MORE ? M_GATHER_MORE_IDS : M_GATHER_OTHER_STUDENT,
	    TEXT(*r->initials ? r->initials : "-"), TEXT(there), TEXT(here));
}
