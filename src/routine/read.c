/*
 * read.c - a routine from its nodes, a homework file laid over it
 *
 * Parts are read in an order of their own: the instrument before the strings
 * that take turns, those before the stages, the stages before the homework
 * that names them.
 */
#include "evenhand/routine/read.h"

#include <stdlib.h>
#include <string.h>

#include "evenhand/base/fingerprint.h"
#include "evenhand/base/text.h"
#include "reader.h"

enum { NAME_COLUMNS = 60, EDITION_MOST = 9999 };

/* What counts where the file says nothing. */
static void set_defaults(struct routine *r)
{
	static const int ladder[] = { 4, 6, 8 };

	r->name = r->written_by = r->homework_for = r->note = "";
	r->edition = 1;
	r->setup = instrument_setup(INSTRUMENT_CELLO);
	r->bow_ms = 4000;
	r->ladder_count = 3;
	memcpy(r->ladder, ladder, sizeof(ladder));
	r->count_in_bows = 1;
	r->bows_each = 2;
	r->change_ms = 4000;
	r->cap_ms = 300000;
	r->per_day = 2;
	r->hours_apart = 3;
	r->days_a_week = 6;
	r->recap_num = 1;
	r->recap_den = 2;
	r->move_days = 5;
	r->move_clean = 2;
	r->move_of = 3;
}

static void read_names(struct reader *rd, const struct node *root)
{
	struct routine *r = rd->r;
	const struct node *name = node_get(root, "routine");

	if (!keys_meant(root, MAP_ROUTINE, "routine"))
		fault_here(rd, root, message_of(M_ROUTINE_NO_NAME));
	value_text(rd, name, "routine", NAME_COLUMNS, &r->name);
	number_whole(rd, node_get(root, "edition"),
	    (struct bounds) { "edition", 1, EDITION_MOST }, &r->edition);
	value_text(rd, node_get(root, "written_by"), "written_by", NAME_COLUMNS,
	    &r->written_by);
}

static void read_make_up(struct reader *rd, const struct node *n)
{
	static const char *const words[] = { "interrupted", "catch_up", "none",
		NULL };
	int found;

	if (value_choice(rd, n, words, &found))
		rd->r->make_up = (enum make_up)found;
}

static void read_routine(struct reader *rd, const struct node *root)
{
	if (root->kind == NODE_MAP && root->first == NULL) {
		fault_here(rd, root, message_of(M_ROUTINE_EMPTY));
		return;
	}
	if (node_get(root, "evenhand_record") != NULL) {
		fault_here(rd, root, message_of(M_ROUTINE_RECORD));
		return;
	}
	if (!keys_check(rd, root, MAP_ROUTINE))
		return;
	read_names(rd, root);
	read_player(rd, node_get(root, "player"), MAP_PLAYER);
	read_bowing(rd, node_get(root, "bowing"));
	read_turns(rd, node_get(root, "turns"));
	read_session(rd, node_get(root, "session"));
	read_recap(rd, node_get(root, "recap"));
	read_move_on(rd, node_get(root, "move_on"));
	read_make_up(rd, node_get(root, "make_up"));
	if (!keys_meant(root, MAP_ROUTINE, "stages"))
		fault_here(rd, root, message_of(M_ROUTINE_NO_STAGES));
	read_stages(rd, node_get(root, "stages"));
	read_homework(rd, node_get(root, "homework"));
	read_lesson_marks(rd, node_get(root, "lesson_marks"));
}

static bool ends_in(const char *s, const char *end)
{
	size_t length = strlen(s), tail = strlen(end);

	return length > tail && strcmp(s + length - tail, end) == 0;
}

/* It says so, or it has no stages and names a file. */
static bool is_homework(const struct node *root)
{
	const struct node *name = node_get(root, "routine");

	if (keys_meant(root, MAP_HOMEWORK_FILE, "homework_for"))
		return true;
	return name != NULL && name->kind == NODE_WORD &&
	    node_get(root, "stages") == NULL &&
	    (ends_in(name->word, ".yaml") || ends_in(name->word, ".yml"));
}

static bool bare_name(const char *name)
{
	return *name != '\0' && strpbrk(name, "/\\") == NULL &&
	    strcmp(name, ".") != 0 && strcmp(name, "..") != 0 &&
	    letters_control(name, strlen(name)) == NULL;
}

const char *homework_routine_name(const struct node *root)
{
	const struct node *name = node_get(root, "routine");

	if (!is_homework(root))
		return NULL;
	if (name == NULL || name->kind != NODE_WORD || !bare_name(name->word))
		return "";
	return name->word;
}

static bool check_homework_file(struct reader *rd, const struct node *root)
{
	const struct node *name = node_get(root, "routine");
	const char *word;

	if (!keys_check(rd, root, MAP_HOMEWORK_FILE))
		return false;
	if (!keys_meant(root, MAP_HOMEWORK_FILE, "homework_for"))
		fault_here(rd, root, message_of(M_ROUTINE_NO_HOMEWORK_FOR));
	if (!keys_meant(root, MAP_HOMEWORK_FILE, "routine"))
		fault_here(rd, root, message_of(M_ROUTINE_NO_ROUTINE_NAME));
	else if (name != NULL && value_word(rd, name, "routine", &word) &&
	    !bare_name(word))
		fault_here(
		    rd, name, message_with(M_ROUTINE_NAME_PATH, TEXT(word)));
	return true;
}

void homework_check(const struct source *homework, struct faults *faults)
{
	struct reader rd = { .faults = faults, .path = homework->path };

	check_homework_file(&rd, homework->root);
}

static void read_homework_file(struct reader *rd, const struct node *root)
{
	if (!check_homework_file(rd, root))
		return;
	value_text(rd, node_get(root, "homework_for"), "homework_for",
	    NAME_COLUMNS, &rd->r->homework_for);
	read_player(rd, node_get(root, "player"), MAP_STUDENT);
	read_homework(rd, node_get(root, "homework"));
	read_lesson_marks(rd, node_get(root, "lesson_marks"));
}

/* The text of both files, for the journal, and its short name. */
static void keep_text(
    struct reader *rd, const struct source *a, const struct source *b)
{
	size_t more = b != NULL ? b->length + 1 : 0;
	char *text = arena_take(&rd->r->arena, a->length + more + 1);

	if (text == NULL) {
		rd->no_memory = true;
		return;
	}
	memcpy(text, a->bytes, a->length);
	if (b != NULL) {
		text[a->length] = '\n';
		memcpy(text + a->length + 1, b->bytes, b->length);
	}
	rd->r->text = text;
	rd->r->fingerprint = fingerprint_add(
	    FINGERPRINT_START, text, a->length + more);
}

struct routine *routine_read(const struct source *routine,
    const struct source *homework, struct faults *faults)
{
	struct routine *r = calloc(1, sizeof(*r));
	struct reader rd = { .r = r, .faults = faults, .path = routine->path };
	int before = faults_found(&rd);

	if (r == NULL) {
		faults_add(
		    faults, message_of(M_ROUTINE_NO_MEMORY), rd.path, 0, 0);
		return NULL;
	}
	set_defaults(r);
	read_routine(&rd, routine->root);
	if (homework != NULL) {
		rd.path = homework->path;
		read_homework_file(&rd, homework->root);
		rd.path = routine->path;
	}
	if (r->stages > 0)
		check_whole(&rd, routine->root);
	keep_text(&rd, routine, homework);
	if (rd.no_memory)
		faults_add(
		    faults, message_of(M_ROUTINE_NO_MEMORY), rd.path, 0, 0);
	if (faults_found(&rd) == before)
		return r;
	routine_free(r);
	return NULL;
}
