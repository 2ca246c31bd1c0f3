/*
 * test_class_folder.c - the folder of a class: rows that stay true, files that
 * were gathered, ids that never become paths; a routine out of its kept text
 */
#include "histories.h"

#include "evenhand/base/date.h"
#include "evenhand/world/class_folder.h"
#include "evenhand/world/load.h"

#define ONE "00000000000000000000000000000001"
#define TWO "000000000000000000000000000000a2"

enum { TODAY = DAY_ONE + 7 };

static struct class_folder *open_class(const struct fixture *x)
{
	char folder[120];
	struct class_folder *c;
	struct fault f;

	snprintf(folder, sizeof(folder), "%s/class", x->folder);
	c = class_open(folder, &f);
	assert_non_null(c);
	return c;
}

/* Practises on a day in the journal of a student. */
static void practise(
    struct fixture *x, struct class_folder *c, const char *id, int day)
{
	struct journal *j;
	struct fault f;

	assert_true(class_journal(c, id, x->path, sizeof(x->path)));
	j = journal_open(x->path, &f);
	assert_non_null(j);
	sit(x, j, day, 12);
	journal_close(j);
}

static void list(struct class_folder *c, struct class_list *l, int count)
{
	struct fault f;

	assert_true(class_students(c, l, TODAY, NULL, NULL, &f));
	assert_int_equal(l->count, count);
}

/* Keeps a student as a record of a day and a second of it does. */
static void keep(struct class_folder *c, const char *id, const char *initials,
    int day, int second)
{
	struct record r = { .given = moment_on(day, second) };
	struct fault f;

	snprintf(r.initials, sizeof(r.initials), "%s", initials);
	assert_true(class_keep(c, id, &r, &f));
}

static void test_rows_stay_true(void **state)
{
	struct fixture *x = *state;
	struct class_folder *c = open_class(x);
	struct class_list l;

	list(c, &l, 0);
	class_list_done(&l);
	practise(x, c, TWO, DAY_ONE);
	keep(c, TWO, "W. P.", DAY_ONE + 1, 0);
	practise(x, c, ONE, DAY_ONE);
	list(c, &l, 2);
	assert_string_equal(l.student[0].id, ONE);
	assert_string_equal(l.student[0].initials, "");
	assert_int_equal(l.student[0].given, -1);
	assert_string_equal(l.student[1].initials, "W. P.");
	assert_int_equal(l.student[1].given, DAY_ONE + 1);
	assert_int_equal(l.student[1].last, DAY_ONE);
	assert_int_equal(l.student[1].days, 1);
	/* The routine of these journals is none that can be read. */
	assert_false(l.student[1].known);
	class_list_done(&l);
	/* Whatever changed a journal, its row follows. */
	practise(x, c, TWO, DAY_ONE + 3);
	list(c, &l, 2);
	assert_int_equal(l.student[1].last, DAY_ONE + 3);
	assert_string_equal(l.student[1].initials, "W. P.");
	class_list_done(&l);
	/* An older record names nobody anew, and a newer one does. */
	keep(c, TWO, "X. X.", DAY_ONE, 0);
	keep(c, ONE, "A.\x1b[2J B.", DAY_ONE, 0);
	keep(c, ONE, "", DAY_ONE + 2, 0);
	list(c, &l, 2);
	assert_string_equal(l.student[0].initials, "A.?[2J B.");
	assert_int_equal(l.student[0].given, DAY_ONE + 2);
	assert_string_equal(l.student[1].initials, "W. P.");
	assert_int_equal(l.student[1].given, DAY_ONE + 1);
	class_list_done(&l);
	class_close(c);
}

/* A clock that was wrong once is not believed for ever, in whatever order. */
static void test_a_record_of_a_day_to_come(void **state)
{
	/* Whatever day it is while this runs. */
	enum { FAR = 2932896 /* 9999-12-31 */, PAST = 10000 /* 1997 */ };
	struct fixture *x = *state;
	struct class_folder *c = open_class(x);
	struct class_list l;

	practise(x, c, ONE, DAY_ONE);
	practise(x, c, TWO, DAY_ONE);
	keep(c, ONE, "F. F.", FAR, 0);
	list(c, &l, 2);
	assert_int_equal(l.student[0].given, FAR);
	assert_string_equal(l.student[0].initials, "F. F.");
	class_list_done(&l);
	keep(c, ONE, "A. B.", PAST, 0);
	keep(c, TWO, "W. P.", PAST, 0);
	keep(c, TWO, "F. F.", FAR, 0);
	list(c, &l, 2);
	assert_int_equal(l.student[0].given, PAST);
	assert_string_equal(l.student[0].initials, "A. B.");
	assert_int_equal(l.student[1].given, PAST);
	assert_string_equal(l.student[1].initials, "W. P.");
	class_list_done(&l);
	class_close(c);
}

/* Another program with the same class, while this one is at work on it. */
static void look_beside(void *context, int done, int all)
{
	const char *folder = context;
	struct class_list l;
	struct class_folder *c;
	struct fault f;

	(void)done;
	assert_int_equal(all, 2);
	c = class_open(folder, &f);
	assert_non_null(c);
	keep(c, ONE, "A. B.", DAY_ONE, 0);
	list(c, &l, 2);
	class_list_done(&l);
	class_close(c);
}

static void test_nobody_waits(void **state)
{
	struct fixture *x = *state;
	struct class_folder *c = open_class(x);
	char folder[120];
	struct class_list l;
	struct fault f;

	snprintf(folder, sizeof(folder), "%s/class", x->folder);
	practise(x, c, ONE, DAY_ONE);
	practise(x, c, TWO, DAY_ONE);
	assert_true(class_students(c, &l, TODAY, look_beside, folder, &f));
	assert_int_equal(l.count, 2);
	assert_string_equal(l.student[0].initials, "A. B.");
	class_list_done(&l);
	class_close(c);
}

static void test_facts_come_back(void **state)
{
	struct fixture *x = *state;
	struct class_folder *c = open_class(x);
	struct journal *j;
	struct class_list l;
	struct fault f;

	practise(x, c, ONE, DAY_ONE);
	j = journal_open(x->path, &f);
	assert_non_null(j);
	journal_note(j,
	    &(struct note_row) { .kind = NOTE_SORE, .words = "wrist \"left\"" },
	    moment_on(DAY_ONE + 1, 0));
	journal_note(j,
	    &(struct note_row) { .kind = NOTE_QUESTION, .words = "Why?" },
	    moment_on(DAY_ONE + 2, 0));
	journal_close(j);
	/* Made, kept and read again in another run. */
	list(c, &l, 1);
	class_list_done(&l);
	class_close(c);
	c = open_class(x);
	list(c, &l, 1);
	assert_int_equal(l.student[0].notes, 1);
	assert_int_equal(l.student[0].note[0].kind, NOTE_SORE);
	assert_int_equal(l.student[0].note[0].day, DAY_ONE + 1);
	assert_string_equal(l.student[0].note[0].words, "wrist \"left\"");
	assert_string_equal(l.student[0].question, "Why?");
	assert_int_equal(l.student[0].asked, DAY_ONE + 2);
	assert_int_equal(l.student[0].guard_day, DAY_ONE + 2);
	assert_int_equal(l.student[0].day[0].day, DAY_ONE);
	assert_int_equal(l.student[0].day[0].ms, 152000);
	class_list_done(&l);
	class_close(c);
}

/* A row that is not what was kept is made anew, whatever it says now. */
static void test_rows_damaged(void **state)
{
	static const char *const damages[] = {
		"UPDATE facts SET day = '-1 -1 9 9 x', signs = 'a b c'",
		"UPDATE facts SET title = 'gone', stage = 99, known = 1",
		"UPDATE facts SET missing = 77, take = -3, held_since = -1",
		"UPDATE facts SET last = 99999999999, held_days = 7",
		"UPDATE facts SET journal_time_ns = 0, seal = 0",
		"UPDATE notes SET day = 99999999, finger = -4",
		"UPDATE notes SET words = 'other' || char(27) || '[2J'",
		"UPDATE facts SET question = zeroblob(3) || 'x'",
		"DELETE FROM notes",
		"DELETE FROM facts",
	};
	struct fixture *x = *state;
	struct class_folder *c = open_class(x);
	char path[200];
	struct class_list l, again;
	struct journal *j;
	struct fault f;

	snprintf(path, sizeof(path), "%s/class/class.sqlite", x->folder);
	practise(x, c, ONE, DAY_ONE);
	j = journal_open(x->path, &f);
	assert_non_null(j);
	journal_note(j,
	    &(struct note_row) { .kind = NOTE_SORE, .words = "wrist" },
	    moment_on(DAY_ONE + 1, 0));
	journal_close(j);
	list(c, &l, 1);
	for (size_t i = 0; i < sizeof(damages) / sizeof(damages[0]); i++) {
		const struct student *is = &l.student[0], *was;

		sql(path, damages[i]);
		list(c, &again, 1);
		was = &again.student[0];
		assert_int_equal(is->days, was->days);
		assert_memory_equal(is->day, was->day, sizeof(is->day));
		assert_memory_equal(is->signs, was->signs, sizeof(is->signs));
		assert_string_equal(is->title, was->title);
		assert_string_equal(is->question, was->question);
		assert_int_equal(is->stage, was->stage);
		assert_int_equal(is->missing, was->missing);
		assert_int_equal(is->take, was->take);
		assert_int_equal(is->last, was->last);
		assert_int_equal(is->made, was->made);
		assert_int_equal(is->notes, was->notes);
		assert_int_equal(is->note[0].day, was->note[0].day);
		assert_int_equal(is->note[0].finger, was->note[0].finger);
		assert_string_equal(is->note[0].words, was->note[0].words);
		class_list_done(&again);
	}
	class_list_done(&l);
	class_close(c);
}

/* A class.sqlite of the first layout keeps its initials. */
static void test_first_layout(void **state)
{
	struct fixture *x = *state;
	struct class_folder *c = open_class(x);
	char path[200];
	struct class_list l;

	snprintf(path, sizeof(path), "%s/class/class.sqlite", x->folder);
	practise(x, c, ONE, DAY_ONE);
	class_close(c);
	sql(path,
	    "ALTER TABLE students DROP COLUMN named;"
	    "INSERT INTO students VALUES ('" ONE "', 'W. P.', 10000);"
	    "PRAGMA user_version = 2001");
	c = open_class(x);
	list(c, &l, 1);
	assert_string_equal(l.student[0].initials, "W. P.");
	assert_int_equal(l.student[0].given, 10000);
	class_list_done(&l);
	keep(c, ONE, "X. X.", 9999, 0);
	list(c, &l, 1);
	assert_string_equal(l.student[0].initials, "W. P.");
	class_list_done(&l);
	keep(c, ONE, "Y. Y.", 10001, 0);
	list(c, &l, 1);
	assert_string_equal(l.student[0].initials, "Y. Y.");
	class_list_done(&l);
	class_close(c);
}

static void test_ids(void **state)
{
	static const char *const bad[] = { "", "1", "../../../etc/passwd",
		"0000000000000000000000000000000g",
		"0000000000000000000000000000000A", ONE "0",
		"../00000000000000000000000000001" };
	struct fixture *x = *state;
	struct class_folder *c = open_class(x);
	char path[200];
	struct fault f;

	for (size_t i = 0; i < sizeof(bad) / sizeof(bad[0]); i++) {
		assert_false(class_journal(c, bad[i], path, sizeof(path)));
		assert_false(class_keep(c, bad[i], NULL, &f));
		assert_int_equal(f.message.id, M_CLASS_NO_STUDENT);
	}
	assert_true(class_journal(c, ONE, path, sizeof(path)));
	assert_false(class_journal(c, ONE, path, 40));
	class_close(c);
}

static void test_files(void **state)
{
	struct fixture *x = *state;
	struct class_folder *c = open_class(x);
	struct class_file file = { "wren.yaml", 100, 7, 99 };
	struct class_file other = { "wren.yaml", 100, 8, 0 };
	struct class_file copy = { "copy.yaml", 100, 9, 99 };

	assert_false(class_file_known(c, &file));
	class_file_keep(c, &file);
	assert_true(class_file_known(c, &file));
	/* Touched: its bytes tell. */
	assert_false(class_file_known(c, &other));
	other.hash = 99;
	assert_true(class_file_known(c, &other));
	assert_true(class_file_known(c, &copy));
	copy.size = 101;
	assert_false(class_file_known(c, &copy));
	class_close(c);
}

static void test_for_its_owner(void **state)
{
	struct fixture *x = *state;
	struct class_folder *c = open_class(x);
	char path[200];
	struct stat s;

	snprintf(path, sizeof(path), "%s/class/class.sqlite", x->folder);
	assert_int_equal(stat(path, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0600);
	snprintf(path, sizeof(path), "%s/class/students", x->folder);
	assert_int_equal(stat(path, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0700);
	class_close(c);
}

/* Every routine that ships, alone or under its homework, out of its text. */
static void test_kept_routines(void **state)
{
	static struct load_paths paths;
	static struct faults faults;
	bool unreadable;

	(void)state;
	for (int i = 0; i < builtin_count(); i++) {
		struct routine *r = load_routine(
		    builtin_name(i), &paths, &faults, &unreadable);
		struct routine *again;

		assert_non_null(r);
		again = load_kept(r->text, strlen(r->text));
		assert_non_null(again);
		assert_true(again->fingerprint == r->fingerprint);
		assert_string_equal(again->homework_for, r->homework_for);
		assert_int_equal(again->work_on, r->work_on);
		assert_int_equal(again->no_further_than, r->no_further_than);
		assert_string_equal(again->note, r->note);
		routine_free(again);
		routine_free(r);
	}
	assert_null(load_kept("", 0));
	assert_null(load_kept("no routine", 10));
	assert_null(load_kept("a: 1\nroutine: x\nroutine: y\n", 27));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
#define CASE(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
		CASE(test_rows_stay_true),
		CASE(test_a_record_of_a_day_to_come),
		CASE(test_nobody_waits),
		CASE(test_facts_come_back),
		CASE(test_rows_damaged),
		CASE(test_first_layout),
		CASE(test_ids),
		CASE(test_files),
		CASE(test_for_its_owner),
		CASE(test_kept_routines),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
