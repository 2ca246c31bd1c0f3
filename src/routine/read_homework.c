/*
 * read_homework.c - what to work on, and what the teacher saw
 */
#include <string.h>

#include "evenhand/base/date.h"
#include "evenhand/base/text.h"
#include "reader.h"

enum { NOTE_COLUMNS = 200, NEAR = 2, SO_FAR_MOST = 99999 };

/* Whether every stage has an id: if not, it may be the one that is meant. */
static bool ids_known(const struct routine *r)
{
	for (int i = 0; i < r->stages; i++)
		if (*r->stage[i].id == '\0')
			return false;
	return true;
}

/* A stage that had this id, or one whose id is nearly it. */
static void stage_unknown(
    struct reader *rd, const struct node *n, const char *word)
{
	const struct routine *r = rd->r;
	const char *near = NULL;
	int best = NEAR + 1;

	for (int i = 0; i < r->stages; i++) {
		int far = text_distance(word, r->stage[i].id, NEAR);

		if (strcmp(r->stage[i].was, word) == 0) {
			fault_here(rd, n,
			    message_with(M_ROUTINE_STAGE_WAS, TEXT(word),
				TEXT(r->stage[i].id)));
			return;
		}
		if (far < best && (size_t)far < strlen(word)) {
			best = far;
			near = r->stage[i].id;
		}
	}
	fault_here(rd, n,
	    near != NULL
		? message_with(M_ROUTINE_STAGE_NEAR, TEXT(word), TEXT(near))
		: message_with(M_ROUTINE_STAGE_UNKNOWN, TEXT(word)));
}

static bool read_stage_id(struct reader *rd, const struct node *n, int *stage)
{
	const char *word;
	int found;

	if (n == NULL || rd->r->stages == 0 ||
	    !value_word(rd, n, n->key, &word))
		return false;
	found = routine_stage(rd->r, word);
	if (found < 0) {
		if (ids_known(rd->r))
			stage_unknown(rd, n, word);
		return false;
	}
	*stage = found;
	return true;
}

static void read_so_far(struct reader *rd, const struct node *list)
{
	struct routine *r = rd->r;
	struct bounds b = { "turns_so_far", 0, SO_FAR_MOST };
	int count = 0, so_far[UNITS_MAX];
	int faults = faults_found(rd);

	if (!value_list(rd, list, UNITS_MAX))
		return;
	for (const struct node *n = list->first; n != NULL; n = n->next)
		if (number_whole(rd, n, b, &so_far[count]))
			count++;
	if (faults_found(rd) > faults || !rd->units_known)
		return;
	if (r->make_up != MAKE_UP_CATCH_UP)
		fault_key(rd, list, message_of(M_ROUTINE_SO_FAR_WHY));
	else if (count != r->units)
		fault_here(rd, list,
		    message_with(
			M_ROUTINE_SO_FAR_COUNT, WHOLE(count), WHOLE(r->units)));
	else {
		memcpy(r->so_far, so_far, sizeof(int) * (size_t)count);
		r->so_far_given = true;
	}
}

void read_homework(struct reader *rd, const struct node *map)
{
	struct routine *r = rd->r;
	const struct node *work = node_get(map, "work_on");
	const struct node *limit = node_get(map, "no_further_than");
	bool good;

	if (map == NULL || !keys_check(rd, map, MAP_HOMEWORK))
		return;
	r->work_on = 0;
	r->note = "";
	r->seen = r->so_far_given = false;
	good = read_stage_id(rd, work, &r->work_on) || work == NULL;
	r->no_further_than = r->work_on;
	if (read_stage_id(rd, limit, &r->no_further_than) && good &&
	    r->work_on > r->no_further_than)
		fault_here(rd, work != NULL ? work : limit,
		    message_with(M_ROUTINE_BEYOND,
			TEXT(r->stage[r->work_on].id),
			TEXT(r->stage[r->no_further_than].id)));
	value_text(rd, node_get(map, "note"), "note", NOTE_COLUMNS, &r->note);
	value_yes_no(rd, node_get(map, "seen"), &r->seen);
	read_so_far(rd, node_get(map, "turns_so_far"));
}

/* Who a mark of the stage may name; the air stage has one swing only. */
static int marked_unit(
    struct reader *rd, const struct node *n, const char *key, int stage)
{
	const struct routine *r = rd->r;
	char list[TEXT_LISTED];
	const char *word;
	int unit;

	if (!value_word(rd, n, key, &word))
		return -1;
	if (stage >= 0 && r->stage[stage].in_the_air) {
		if (strcmp(word, "1") == 0)
			return 0;
		fault_here(rd, n, message_of(M_ROUTINE_MARK_AIR));
		return -1;
	}
	unit = routine_unit(r, word);
	list_units(r, list, sizeof(list));
	if (unit < 0 && rd->units_known)
		fault_here(rd, n,
		    message_with(M_ROUTINE_MARK_UNIT, TEXT(word), TEXT(list)));
	return unit;
}

/* The bits of those named; none may be in the list of the other mark. */
static uint32_t read_marks(
    struct reader *rd, const struct node *list, int stage, uint32_t other)
{
	uint32_t bits = 0;

	/* An empty list says that nobody was: that is no slip here. */
	if (list == NULL || (list->kind == NODE_LIST && list->first == NULL) ||
	    !value_list(rd, list, UNITS_MAX))
		return 0;
	for (const struct node *n = list->first; n != NULL; n = n->next) {
		int unit = marked_unit(rd, n, list->key, stage);
		uint32_t bit = unit < 0 ? 0 : UINT32_C(1) << unit;

		if (bit & other)
			fault_here(rd, n,
			    message_with(M_ROUTINE_MARK_BOTH, TEXT(n->word)));
		else if (bit & bits)
			fault_here(rd, n,
			    message_with(M_ROUTINE_MARK_TWICE, TEXT(n->word)));
		bits |= bit;
	}
	return bits;
}

static void read_date(struct reader *rd, const struct node *map, int *day)
{
	const struct node *n = node_get(map, "date");
	const char *word;

	if (!keys_meant(map, MAP_LESSON_MARK, "date"))
		fault_here(rd, map, message_of(M_ROUTINE_NO_DATE));
	else if (n != NULL && value_word(rd, n, "date", &word) &&
	    !date_parse(word, day))
		fault_here(rd, n, message_with(M_ROUTINE_DATE, TEXT(word)));
}

static void read_lesson_mark(struct reader *rd, const struct node *map)
{
	struct lesson_mark *m = &rd->r->lesson_mark[rd->r->lesson_marks];
	const struct node *stage = node_get(map, "stage");
	const struct node *clean = node_get(map, "clean");
	const struct node *shaky = node_get(map, "shaky");
	int faults = faults_found(rd);

	if (!keys_check(rd, map, MAP_LESSON_MARK))
		return;
	*m = (struct lesson_mark) { .stage = -1 };
	read_date(rd, map, &m->day);
	if (!keys_meant(map, MAP_LESSON_MARK, "stage"))
		fault_here(rd, map, message_of(M_ROUTINE_MARK_NO_STAGE));
	read_stage_id(rd, stage, &m->stage);
	m->clean = read_marks(rd, clean, m->stage, 0);
	m->shaky = read_marks(rd, shaky, m->stage, m->clean);
	if (faults_found(rd) > faults)
		return;
	if (m->clean == 0 && m->shaky == 0)
		fault_here(rd, map, message_of(M_ROUTINE_MARK_EMPTY));
	else
		rd->r->lesson_marks++;
}

void read_lesson_marks(struct reader *rd, const struct node *list)
{
	if (list == NULL)
		return;
	rd->r->lesson_marks = 0;
	/* "lesson_marks: []" is a teacher who has not seen anything yet. */
	if (list->kind == NODE_LIST && list->first == NULL)
		return;
	if (!value_list(rd, list, LESSON_MARKS_MAX))
		return;
	for (const struct node *n = list->first; n != NULL; n = n->next)
		read_lesson_mark(rd, n);
}
