/*
 * record_read.c - the root of a record, and its lists entry by entry
 *
 * An entry that is wrong ends nothing but itself; so one pass shows several
 * faults.  What is beyond all bounds ends the reading.
 */
#include "evenhand/record/read.h"

#include <stdlib.h>
#include <string.h>

#include "evenhand/base/fingerprint.h"
#include "evenhand/base/text.h"
#include "evenhand/record/join.h"
#include "reader.h"

void record_reader_begin(struct record_reader *rd, struct record *r,
    const char *path, struct faults *faults)
{
	*rd = (struct record_reader) { .r = r,
		.faults = faults,
		.path = path,
		.before = faults->count + faults->left_out,
		.routine_end = &r->routine,
		.sitting_end = &r->sitting,
		.note_end = &r->note };
	r->since = -1;
}

void record_reader_done(struct record_reader *rd)
{
	free(rd->rows);
	rd->rows = NULL;
}

/* Whether a word is a version of ours, or of the future. */
static bool check_version(struct record_reader *rd, const struct node *n)
{
	size_t digits = strspn(n->word, "0123456789");

	if (strcmp(n->word, "1") == 0 || strcmp(n->word, "2") == 0)
		return true;
	if (digits > 0 && digits < 7 && n->word[digits] == '\0' &&
	    *n->word != '0')
		return record_fault(rd, n,
		    message_with(
			M_RECORD_NEWER, TEXT(n->word), WHOLE(RECORD_VERSION)));
	return record_fault(rd, n, message_of(M_RECORD_NOT_RECORD));
}

/* The first key says what the file is: looked at before all else. */
static bool check_head(struct record_reader *rd, const struct node *root)
{
	const struct node *first = root->kind == NODE_MAP ? root->first : NULL;

	if (rd->headed)
		return true;
	rd->headed = true;
	if (first == NULL || strcmp(first->key, "evenhand_record") != 0 ||
	    first->kind != NODE_WORD)
		return record_fault(rd, root, message_of(M_RECORD_NOT_RECORD));
	return check_version(rd, first);
}

uint64_t record_fingerprint(const char *digits)
{
	static const char all[] = "0123456789abcdef";
	uint64_t value = 0;

	for (; *digits; digits++)
		value = value << 4 | (uint64_t)(strchr(all, *digits) - all);
	return value;
}

static bool read_computer(struct record_reader *rd, const struct node *n)
{
	static const char *const keys[] = { "id", "rows", NULL };
	static const struct map_keys map = { "computers", 2, keys };
	struct record *r = rd->r;
	struct record_computer *c;
	struct text t;
	const char *id;

	if (r->computer == NULL)
		r->computer = arena_take(
		    &r->arena, RECORD_COMPUTERS_MAX * sizeof(*r->computer));
	if (r->computer == NULL)
		return record_no_memory(rd);
	if (r->computers == RECORD_COMPUTERS_MAX)
		return record_fault(rd, n,
		    message_with(M_RECORD_TOO_MANY, TEXT("computers"),
			WHOLE(RECORD_COMPUTERS_MAX)));
	c = &r->computer[r->computers];
	if (!record_map(rd, n, &map) ||
	    !record_hex(rd, node_get(n, "id"), "id", RECORD_ID_MAX - 1, &id) ||
	    !record_whole(rd, node_get(n, "rows"),
		(struct whole) { "rows", 1, RECORD_ROW_MOST }, &c->rows))
		return false;
	if (record_has_computer(r, id))
		return record_fault(
		    rd, n, message_with(M_RECORD_AGAIN, TEXT(id)));
	t = text_in(c->id, sizeof(c->id));
	text_add(&t, id);
	r->computers++;
	return true;
}

/* The text must be the one the fingerprint was taken of. */
static bool read_text(
    struct record_reader *rd, const struct node *n, struct record_routine *m)
{
	const char *digits;

	if (!record_hex(rd, node_get(n, "fingerprint"), "fingerprint",
		RECORD_FINGERPRINT, &digits) ||
	    !record_lines(
		rd, node_get(n, "text"), "text", RECORD_ROUTINE_MAX, &m->text))
		return false;
	m->fingerprint = record_fingerprint(digits);
	return fingerprint_add(FINGERPRINT_START, m->text, strlen(m->text)) ==
	    m->fingerprint ||
	    record_fault(rd, node_get(n, "text"),
		message_with(M_RECORD_CHANGED, TEXT(digits)));
}

static bool read_routine(struct record_reader *rd, const struct node *n)
{
	static const char *const keys[] = { "fingerprint", "name", "edition",
		"text", NULL };
	static const struct map_keys map = { "routines", 4, keys };
	struct record_routine *m;

	if (!record_map(rd, n, &map))
		return false;
	if (rd->r->routines == RECORD_ROUTINES_MAX)
		return record_fault(rd, n,
		    message_with(M_RECORD_TOO_MANY, TEXT("routines"),
			WHOLE(RECORD_ROUTINES_MAX)));
	m = arena_take(&rd->r->arena, sizeof(*m));
	if (m == NULL)
		return record_no_memory(rd);
	if (!read_text(rd, n, m) ||
	    !record_text(
		rd, node_get(n, "name"), "name", RECORD_TITLE_MAX, &m->name) ||
	    !record_int(rd, node_get(n, "edition"),
		(struct whole) { "edition", 0, RECORD_EDITION_MOST },
		&m->edition))
		return false;
	if (record_routine_of(rd->r, m->fingerprint) != NULL)
		return record_fault(rd, n,
		    message_with(M_RECORD_AGAIN,
			TEXT(node_get(n, "fingerprint")->word)));
	*rd->routine_end = m;
	rd->routine_end = &m->next;
	rd->r->routines++;
	return true;
}

static bool read_outside(struct record_reader *rd, const struct node *n)
{
	struct record_note *note = record_read_note(rd, n, NULL);

	if (note == NULL)
		return false;
	*rd->note_end = note;
	rd->note_end = &note->next;
	return true;
}

bool record_entry(struct record_reader *rd, const struct node *root,
    const struct node *list, const struct node *entry)
{
	static const struct {
		const char *key;
		bool (*read)(struct record_reader *rd, const struct node *n);
	} lists[] = {
		{ "computers", read_computer },
		{ "routines", read_routine },
		{ "sittings", record_read_sitting },
		{ "notes", read_outside },
	};

	if (!check_head(rd, root))
		return false;
	for (size_t i = 0; i < sizeof(lists) / sizeof(lists[0]); i++)
		if (strcmp(list->key, lists[i].key) == 0) {
			lists[i].read(rd, entry);
			return record_faults(rd) < RECORD_FAULTS_MAX;
		}
	/* Its key is looked at in the end. */
	return true;
}

/* The other ids of the student, which a record of version 2 has. */
static bool read_also(struct record_reader *rd, const struct node *n)
{
	struct student_ids *also = &rd->r->also;
	const char *id;
	int length;

	if (!record_list(rd, n, "also", STUDENT_IDS_MAX - 1, &length))
		return false;
	for (const struct node *e = n->first; e != NULL; e = e->next) {
		if (!record_hex(rd, e, "also", RECORD_ID_MAX - 1, &id))
			return false;
		if (strcmp(id, rd->r->student) == 0 || ids_have(also, id))
			return record_fault(
			    rd, e, message_with(M_RECORD_AGAIN, TEXT(id)));
		ids_add(also, id);
	}
	return length > 0 ||
	    record_fault(rd, n, message_with(M_RECORD_MISSING, TEXT("also")));
}

static bool read_student(
    struct record_reader *rd, const struct node *n, bool several)
{
	static const char *const keys[] = { "id", "initials", "also", NULL };
	static const char *const first_keys[] = { "id", "initials", NULL };
	const struct map_keys map = several
	    ? (struct map_keys) { "student", 3, keys }
	    : (struct map_keys) { "student", 2, first_keys };
	struct record *r = rd->r;
	const char *id, *initials;
	struct text t;

	if (!record_map(rd, n, &map) ||
	    !record_hex(rd, node_get(n, "id"), "id", RECORD_ID_MAX - 1, &id) ||
	    !record_text(rd, node_get(n, "initials"), "initials",
		RECORD_INITIALS_MAX, &initials))
		return false;
	t = text_in(r->student, sizeof(r->student));
	text_add(&t, id);
	t = text_in(r->initials, sizeof(r->initials));
	text_add(&t, initials);
	return !several || read_also(rd, node_get(n, "also"));
}

bool record_end(struct record_reader *rd, const struct node *root)
{
	static const char *const keys[] = { "evenhand_record", "student",
		"given", "computers", "routines", "sittings", "notes", "since",
		NULL };
	static const struct map_keys map = { "record", 7, keys };
	const struct node *since = node_get(root, "since");
	int length;

	if (!check_head(rd, root) || !record_map(rd, root, &map))
		return false;
	read_student(
	    rd, node_get(root, "student"), strcmp(root->first->word, "2") == 0);
	record_moment(rd, node_get(root, "given"), "given", &rd->r->given);
	if (since != NULL)
		record_day(rd, since, "since", &rd->r->since);
	for (int i = 3; i < map.needed; i++)
		record_list(rd, node_get(root, keys[i]), keys[i], 0, &length);
	record_rows_apart(rd);
	return record_faults(rd) == 0;
}
