/*
 * test_gather.c - records given and gathered over random histories
 *
 * Real journals are practised on, given and gathered, and compared by all that
 * they tell: merging is the union of sets, whatever the order, the grouping and
 * the overlap, and twice is once.
 */
#include "histories.h"

enum { RUNS = 6, RECORDS = 6 };

static int runs(void)
{
	return getenv("EVENHAND_QUICK") ? 2 : RUNS;
}

/* A new journal is in the mode it will be written in, with nothing beside it. */
static void made_whole(const struct fixture *x, const char *name)
{
	char path[PATH_ROOM], helper[PATH_ROOM + 8];
	unsigned char head[20] = { 0 };
	struct stat s;
	FILE *file;

	path_of(x, name, path);
	assert_int_equal(stat(path, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0600);
	snprintf(helper, sizeof(helper), "%s-wal", path);
	assert_int_not_equal(stat(helper, &s), 0);
	file = fopen(path, "rb");
	assert_non_null(file);
	assert_int_equal(fread(head, 1, sizeof(head), file), sizeof(head));
	fclose(file);
	/* The format of SQLite's files, 1.3.3: 1 rollback, 2 WAL. */
	assert_in_range(head[18], 1, 2);
	assert_int_equal(head[18], head[19]);
}

/* A record gathered where nothing was practised tells what the first told. */
static void test_same_as_before(void **state)
{
	struct fixture *x = *state;

	seeded_begin("same as before");
	for (int i = 0; i < runs(); i++) {
		char a[40], b[40];
		struct gathered news;

		snprintf(a, sizeof(a), "data/first-%d.db", i);
		snprintf(b, sizeof(b), "data/second-%d.db", i);
		practise_on_computer(x, a, DAY_ONE, seeded(1, 12));
		give_from(x, a, -1, "whole.yaml");
		news = gather_to(x, "whole.yaml", b);
		assert_int_equal(news.sittings_known + news.notes_known, 0);
		assert_int_equal(news.apart + news.different, 0);
		made_whole(x, b);
		same_told(x, a, b);
		is_whole(x, b);
		/* And it may go on being practised on. */
		practise_on_computer(x, b, DAY_ONE + 40, 2);
		is_whole(x, b);
	}
}

static void test_twice_is_once(void **state)
{
	struct fixture *x = *state;
	struct gathered first, again;
	char *once, *twice;

	seeded_begin("twice is once");
	practise_on_computer(x, "data/a.db", DAY_ONE, 8);
	give_from(x, "data/a.db", -1, "a.yaml");
	first = gather_to(x, "a.yaml", "data/b.db");
	once = told(x, "data/b.db");
	again = gather_to(x, "a.yaml", "data/b.db");
	twice = told(x, "data/b.db");
	assert_string_equal(once, twice);
	assert_int_equal(again.sittings_new + again.sittings_more, 0);
	assert_int_equal(again.turns_new + again.notes_new, 0);
	assert_int_equal(again.apart + again.different, 0);
	assert_int_equal(again.sittings_known, first.sittings_new);
	assert_int_equal(again.notes_known, first.notes_new);
	free(once);
	free(twice);
	/* Also into the computer it came from. */
	again = gather_to(x, "a.yaml", "data/a.db");
	assert_int_equal(again.sittings_new + again.sittings_more, 0);
	assert_int_equal(again.apart + again.different + again.notes_new, 0);
	same_told(x, "data/a.db", "data/b.db");
}

/* Two computers practise by turns and give now and then, of some days. */
static void make_records(struct fixture *x, const char *run)
{
	char name[60];
	int day = DAY_ONE;

	for (int i = 0; i < RECORDS; i++) {
		const char *computer = i % 2 ? "right" : "left";
		char path[60];

		snprintf(path, sizeof(path), "data/%s-%s.db", computer, run);
		practise_on_computer(x, path, day, seeded(1, 4));
		snprintf(name, sizeof(name), "%s-%d.yaml", run, i);
		give_from(x, path,
		    i < 2 || seeded(0, 1) ? -1 : day - seeded(0, 3), name);
		day += seeded(0, 4);
	}
}

/* All records in a random order, some of them more than once. */
static void gather_all(struct fixture *x, const char *run, const char *to)
{
	int order[RECORDS];
	char name[60];

	for (int i = 0; i < RECORDS; i++) {
		int at = seeded(0, i);

		order[i] = order[at];
		order[at] = i;
	}
	for (int i = 0; i < RECORDS; i++) {
		snprintf(name, sizeof(name), "%s-%d.yaml", run, order[i]);
		gather_to(x, name, to);
		snprintf(
		    name, sizeof(name), "%s-%d.yaml", run, order[seeded(0, i)]);
		gather_to(x, name, to);
	}
}

/* Some here, some there, and then there what came together here. */
static void gather_in_parts(struct fixture *x, const char *run, const char *to)
{
	char name[60], part[60], record[60];

	snprintf(part, sizeof(part), "data/part-%s.db", run);
	snprintf(record, sizeof(record), "part-%s.yaml", run);
	for (int i = 0; i < RECORDS; i++) {
		bool here = i == 0 || seeded(0, 1);

		snprintf(name, sizeof(name), "%s-%d.yaml", run, i);
		gather_to(x, name, here ? part : to);
	}
	give_from(x, part, -1, record);
	gather_to(x, record, to);
}

static void test_any_order(void **state)
{
	struct fixture *x = *state;

	seeded_begin("any order");
	for (int i = 0; i < runs(); i++) {
		char run[20], one[60], two[60], parts[60];

		snprintf(run, sizeof(run), "run%d", i);
		snprintf(one, sizeof(one), "data/one-%s.db", run);
		snprintf(two, sizeof(two), "data/two-%s.db", run);
		snprintf(parts, sizeof(parts), "data/parts-%s.db", run);
		make_records(x, run);
		gather_all(x, run, one);
		gather_all(x, run, two);
		gather_in_parts(x, run, parts);
		is_whole(x, one);
		same_told(x, one, two);
		same_told(x, one, parts);
	}
}

/* Each gathers the other's into what was practised there: the same. */
static void test_both_ways(void **state)
{
	struct fixture *x = *state;

	seeded_begin("both ways");
	make_records(x, "both");
	give_from(x, "data/left-both.db", -1, "left.yaml");
	give_from(x, "data/right-both.db", -1, "right.yaml");
	gather_to(x, "left.yaml", "data/right-both.db");
	gather_to(x, "right.yaml", "data/left-both.db");
	same_told(x, "data/left-both.db", "data/right-both.db");
	is_whole(x, "data/left-both.db");
}

static void copy(const struct fixture *x, const char *from, const char *to)
{
	char a[PATH_ROOM], b[PATH_ROOM], command[500];

	path_of(x, from, a);
	path_of(x, to, b);
	snprintf(command, sizeof(command), "cp %s %s", a, b);
	assert_int_equal(system(command), 0);
}

/*
 * The same sets; where two wrote under one name, which of them kept it, and so
 * the order on one day, is another on each computer.
 */
static void same_sets(const struct fixture *x, const char *a, const char *b)
{
	static const char *const sets[] = {
		"SELECT group_concat(v, char(10)) FROM (SELECT printf('%d %d "
		"%d %s %d %d %d %d %s', began_utc, s.sequence, day, "
		"r.fingerprint, cap_ms, ended, length_ms, ended_sequence, "
		"(SELECT group_concat(stage || unit || planned || dropped || "
		"played) FROM shares WHERE sitting = s.key)) AS v FROM "
		"sittings s JOIN routines r ON r.key = s.routine ORDER BY v)",
		"SELECT group_concat(v, char(10)) FROM (SELECT printf('%d %d "
		"%d %d %d %s %s %d %d %d %d', s.began_utc, s.sequence, "
		"t.number, t.sequence, t.utc, t.stage, t.unit, t.slide_um, "
		"t.mark, t.mark_ms, t.resets) AS v FROM turns t JOIN sittings "
		"s ON s.key = t.sitting ORDER BY v)",
		"SELECT group_concat(v, char(10)) FROM (SELECT printf('%d %d "
		"%d %d %d %s %d', n.utc, n.sequence, n.day, n.kind, n.finger, "
		"n.words, s.began_utc) AS v FROM notes n LEFT JOIN sittings s "
		"ON s.key = n.sitting ORDER BY v)",
		"SELECT group_concat(v, char(10)) FROM (SELECT printf('%d %d "
		"%d %d %s %.9g', s.began_utc, s.sequence, t.number, m.method, "
		"m.name, m.value) AS v FROM measures m JOIN turns t ON t.key = "
		"m.turn JOIN sittings s ON s.key = t.sitting ORDER BY v)",
	};
	char path_a[PATH_ROOM], path_b[PATH_ROOM];

	path_of(x, a, path_a);
	path_of(x, b, path_b);
	for (size_t i = 0; i < sizeof(sets) / sizeof(sets[0]); i++)
		same_text(path_a, path_b, sets[i]);
}

/* A copied home folder: both write under one name, and nothing is lost. */
static void test_copied_home(void **state)
{
	struct fixture *x = *state;
	char path[PATH_ROOM];
	int apart = 0;

	seeded_begin("copied home");
	for (int i = 0; i < runs(); i++) {
		char a[40], b[40], c[40];
		struct gathered news, back;
		int sittings = 0;

		snprintf(a, sizeof(a), "data/a%d.db", i);
		snprintf(b, sizeof(b), "data/b%d.db", i);
		snprintf(c, sizeof(c), "data/c%d.db", i);
		practise_on_computer(x, a, DAY_ONE, 3);
		copy(x, a, b);
		practise_on_computer(x, a, DAY_ONE + 10, 3);
		practise_on_computer(x, b, DAY_ONE + 20, 3);
		give_from(x, a, -1, "a.yaml");
		give_from(x, b, -1, "b.yaml");
		news = gather_to(x, "a.yaml", b);
		assert_int_equal(news.sittings_new, 3);
		assert_int_equal(news.sittings_known, 3);
		apart += news.apart;
		back = gather_to(x, "b.yaml", a);
		assert_int_equal(back.sittings_new, 3);
		same_sets(x, a, b);
		is_whole(x, a);
		/* What was told apart is known again, by either name. */
		give_from(x, a, -1, "a.yaml");
		give_from(x, b, -1, "b.yaml");
		news = gather_to(x, "b.yaml", a);
		back = gather_to(x, "a.yaml", b);
		assert_int_equal(news.sittings_new + back.sittings_new, 0);
		assert_int_equal(news.notes_new + back.notes_new, 0);
		assert_int_equal(news.apart + back.apart, 0);
		same_sets(x, a, b);
		gather_to(x, "b.yaml", c);
		gather_to(x, "a.yaml", c);
		same_sets(x, a, c);
		/* From now on they write under two names. */
		practise_on_computer(x, a, DAY_ONE + 30, 1);
		practise_on_computer(x, b, DAY_ONE + 40, 1);
		give_from(x, a, -1, "a.yaml");
		news = gather_to(x, "a.yaml", b);
		assert_int_equal(news.sittings_new, 1);
		assert_int_equal(news.apart, 0);
		path_of(x, b, path);
		sittings = (int)ask(path, "SELECT count(*) FROM sittings");
		assert_int_equal(sittings, 11);
	}
	assert_true(apart > 0);
}

/* A record changed by hand: it is said, and everywhere the same stays. */
static void test_changed_by_hand(void **state)
{
	struct fixture *x = *state;
	char path[PATH_ROOM], other[PATH_ROOM];
	struct gathered news;
	struct record r;
	struct fault f;
	struct journal *j;

	j = computer_open(x, "data/a.db");
	set_edition(x, 0);
	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	path_of(x, "data/a.db", path);
	sql(path, "UPDATE about SET student = '" STUDENT "'");
	give_from(x, "data/a.db", -1, "a.yaml");
	path_of(x, "a.yaml", path);
	path_of(x, "hand.yaml", other);
	load_good(path, &r);
	r.sitting->turn[1].mark = MARK_SHAKY;
	r.sitting->turn[2].resets = 7;
	r.sitting->length_ms++;
	assert_true(record_save(other, &r, true, &f));
	record_done(&r);
	gather_to(x, "a.yaml", "data/b.db");
	news = gather_to(x, "hand.yaml", "data/b.db");
	assert_int_equal(news.different, 3);
	assert_int_equal(news.sittings_new, 0);
	gather_to(x, "hand.yaml", "data/c.db");
	news = gather_to(x, "a.yaml", "data/c.db");
	assert_int_equal(news.different, 3);
	same_told(x, "data/b.db", "data/c.db");
}

/* Somebody else's record is refused, and not a byte is another. */
static void test_other_student(void **state)
{
	struct fixture *x = *state;
	char a[PATH_ROOM], record[PATH_ROOM], *before, *after;
	struct gathered news;
	struct record r;
	struct fault f;

	seeded_begin("other student");
	practise_on_computer(x, "data/a.db", DAY_ONE, 2);
	practise_on_computer(x, "data/b.db", DAY_ONE, 2);
	path_of(x, "data/b.db", a);
	sql(a, "UPDATE about SET student = 'ffffffffffffffffffffffffffffffff'");
	give_from(x, "data/b.db", -1, "b.yaml");
	path_of(x, "b.yaml", record);
	path_of(x, "data/a.db", a);
	load_good(record, &r);
	before = told(x, "data/a.db");
	assert_false(
	    gather_into(a, &(struct gather_what) { .record = &r }, &news, &f));
	assert_int_equal(f.message.id, M_GATHER_OTHER_STUDENT);
	after = told(x, "data/a.db");
	assert_string_equal(before, after);
	free(before);
	free(after);
	record_done(&r);
}

/* --- one student under several ids --- */

enum { IDS = 3, OF_EACH = 2 };

static const char *const ids[IDS] = { "aaaa000000000000000000000000000a",
	"bbbb000000000000000000000000000b",
	"cccc000000000000000000000000000c" };

static void all_asked(struct join_asked *asked)
{
	assert_true(join_read("aaaa+bbbb0+cccc0000", asked));
}

/* A journal for each id, and records of it. */
static void make_students(struct fixture *x, const char *run)
{
	char name[60], record[60], path[PATH_ROOM], change[120];

	for (int i = 0; i < IDS * OF_EACH; i++) {
		snprintf(name, sizeof(name), "data/id%d-%s.db", i % IDS, run);
		practise_on_computer(
		    x, name, DAY_ONE + 5 * i, (int)seeded(1, 3));
		path_of(x, name, path);
		snprintf(change, sizeof(change),
		    "UPDATE about SET student = '%s'", ids[i % IDS]);
		sql(path, change);
		snprintf(record, sizeof(record), "%s-%d.yaml", run, i);
		give_from(x, name, -1, record);
	}
}

static void same_ids(const struct fixture *x, const char *a, const char *b)
{
	char path_a[PATH_ROOM], path_b[PATH_ROOM];

	path_of(x, a, path_a);
	path_of(x, b, path_b);
	same_text(path_a, path_b, "SELECT student FROM about");
}

/* All of them in a random order, some twice, some by way of another journal. */
static void gather_students(struct fixture *x, const char *run, const char *to)
{
	int order[IDS * OF_EACH];
	struct join_asked asked;
	char name[60], part[60];

	all_asked(&asked);
	for (int i = 0; i < IDS * OF_EACH; i++) {
		int at = (int)seeded(0, i);

		order[i] = order[at];
		order[at] = i;
	}
	for (int i = 0; i < IDS * OF_EACH; i++) {
		bool here = seeded(0, 2) > 0;

		snprintf(name, sizeof(name), "%s-%d.yaml", run, order[i]);
		snprintf(part, sizeof(part), "%s-part", to);
		gather_joined(x, name, here ? to : part, &asked);
		if (!here) {
			give_from(x, part, -1, "part.yaml");
			gather_joined(x, "part.yaml", to, &asked);
		}
		snprintf(
		    name, sizeof(name), "%s-%d.yaml", run, order[seeded(0, i)]);
		gather_joined(x, name, to, &asked);
	}
}

static void test_joined_any_order(void **state)
{
	struct fixture *x = *state;
	struct gathered news;
	char name[60];

	seeded_begin("joined in any order");
	for (int i = 0; i < runs(); i++) {
		char run[20], one[60], two[60];

		snprintf(run, sizeof(run), "join%d", i);
		snprintf(one, sizeof(one), "data/one-%s.db", run);
		snprintf(two, sizeof(two), "data/two-%s.db", run);
		make_students(x, run);
		gather_students(x, run, one);
		gather_students(x, run, two);
		is_whole(x, one);
		same_told(x, one, two);
		same_ids(x, one, two);
		/* Remembered: later records need no asking, and bring no more. */
		for (int k = 0; k < IDS * OF_EACH; k++) {
			snprintf(name, sizeof(name), "%s-%d.yaml", run, k);
			news = gather_to(x, name, one);
			assert_int_equal(news.joined + news.sittings_new, 0);
		}
		/* And where nothing was practised all of them come along. */
		give_from(x, one, -1, "both.yaml");
		snprintf(name, sizeof(name), "data/fresh-%s.db", run);
		gather_to(x, "both.yaml", name);
		same_told(x, one, name);
		same_ids(x, one, name);
	}
}

/* Refused as it stands: the answer, and not a byte is another. */
static void refused(struct fixture *x, const char *record, const char *to,
    const char *join, enum message_id why)
{
	char journal[PATH_ROOM], path[PATH_ROOM];
	char *before = told(x, to), *after;
	struct gather_what what = { 0 };
	struct gathered news;
	struct record r;
	struct fault f;

	path_of(x, to, journal);
	path_of(x, record, path);
	load_good(path, &r);
	what.record = &r;
	if (join)
		assert_true(join_read(join, &what.asked));
	assert_false(gather_into(journal, &what, &news, &f));
	assert_int_equal(f.message.id, why);
	after = told(x, to);
	assert_string_equal(before, after);
	free(before);
	free(after);
	record_done(&r);
}

static void test_never_by_itself(void **state)
{
	struct fixture *x = *state;
	struct join_asked asked;

	seeded_begin("never by itself");
	make_students(x, "own");
	refused(
	    x, "own-1.yaml", "data/id0-own.db", NULL, M_GATHER_OTHER_STUDENT);
	/* Others were named, or one of the two alone. */
	refused(x, "own-1.yaml", "data/id0-own.db", "bbbb+cccc",
	    M_GATHER_OTHER_STUDENT);
	refused(x, "own-1.yaml", "data/id0-own.db", "aaaa+cccc",
	    M_GATHER_OTHER_STUDENT);
	/* What was joined elsewhere is asked for here, too. */
	all_asked(&asked);
	gather_joined(x, "own-2.yaml", "data/id1-own.db", &asked);
	give_from(x, "data/id1-own.db", -1, "two.yaml");
	refused(x, "two.yaml", "data/id2-own.db", NULL, M_GATHER_MORE_IDS);
	refused(x, "two.yaml", "data/id0-own.db", NULL, M_GATHER_OTHER_STUDENT);
	assert_int_equal(
	    gather_joined(x, "two.yaml", "data/id0-own.db", &asked).joined, 2);
}

/* While somebody practises, nothing is gathered. */
static void test_locked(void **state)
{
	struct fixture *x = *state;
	char a[PATH_ROOM], record[PATH_ROOM];
	struct gathered news;
	struct record r;
	struct fault f;
	struct journal *j;

	seeded_begin("locked");
	practise_on_computer(x, "data/a.db", DAY_ONE, 2);
	give_from(x, "data/a.db", -1, "a.yaml");
	path_of(x, "a.yaml", record);
	path_of(x, "data/a.db", a);
	load_good(record, &r);
	j = computer_open(x, "data/a.db");
	assert_false(
	    gather_into(a, &(struct gather_what) { .record = &r }, &news, &f));
	assert_int_equal(f.message.id, M_WORLD_JOURNAL_LOCKED);
	journal_close(j);
	assert_true(
	    gather_into(a, &(struct gather_what) { .record = &r }, &news, &f));
	record_done(&r);
}

/* A record is taken and read again; how many sittings it left out. */
static int left_out_of(struct fixture *x, const char *name)
{
	char journal[PATH_ROOM], record[PATH_ROOM];
	struct record_left left;
	struct record r;
	struct fault f;

	path_of(x, name, journal);
	path_of(x, "damaged.yaml", record);
	assert_true(record_take(journal, -1, &r, &left, &f));
	r.given = moment_on(DAY_ONE, 0);
	assert_true(record_save(record, &r, true, &f));
	record_done(&r);
	load_good(record, &r);
	record_done(&r);
	return left.sittings;
}

/* What was damaged in a journal is left out, and the record can be read. */
static void test_damaged_journal(void **state)
{
	static const char *const damages[] = {
		"UPDATE routines SET text = text || 'x' WHERE key = 1",
		"UPDATE routines SET name = name || char(0x202e) WHERE key = 1",
		"UPDATE routines SET edition = 5000000 WHERE key = 1",
		"UPDATE measures SET value = 1e300 WHERE name = 'sequence'",
		"UPDATE measures SET value = -9e999 WHERE name = 'sequence'",
	};
	struct fixture *x = *state;

	seeded_begin("damaged");
	for (size_t i = 0; i < sizeof(damages) / sizeof(damages[0]); i++) {
		char name[40], path[PATH_ROOM];

		snprintf(name, sizeof(name), "data/damaged-%zu.db", i);
		practise_on_computer(x, name, DAY_ONE, 12);
		path_of(x, name, path);
		assert_int_equal(left_out_of(x, name), 0);
		sql(path, damages[i]);
		assert_true(left_out_of(x, name) > 0);
	}
}

/* A journal that does not say whose it is gives nothing that others refuse. */
static void test_nobodys_journal(void **state)
{
	struct fixture *x = *state;
	char path[PATH_ROOM];
	struct record_left left;
	struct record r;
	struct fault f = { 0 };

	practise_on_computer(x, "data/nobody.db", DAY_ONE, 2);
	path_of(x, "data/nobody.db", path);
	sql(path, "UPDATE about SET student = 'wren'");
	assert_false(record_take(path, -1, &r, &left, &f));
	assert_int_equal(f.message.id, M_WORLD_JOURNAL_LOOK_BROKEN);
	record_done(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
#define IN_FOLDER(test) \
	cmocka_unit_test_setup_teardown(test, fixture_open, fixture_close)
		IN_FOLDER(test_same_as_before),
		IN_FOLDER(test_twice_is_once),
		IN_FOLDER(test_any_order),
		IN_FOLDER(test_both_ways),
		IN_FOLDER(test_copied_home),
		IN_FOLDER(test_changed_by_hand),
		IN_FOLDER(test_other_student),
		IN_FOLDER(test_joined_any_order),
		IN_FOLDER(test_never_by_itself),
		IN_FOLDER(test_locked),
		IN_FOLDER(test_damaged_journal),
		IN_FOLDER(test_nobodys_journal),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
