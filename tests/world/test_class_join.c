/*
 * test_class_join.c - a class's line under several ids: who it is hangs on the
 * records alone, and neither on their order nor on when the ids were joined
 */
#include "histories.h"

#include "evenhand/world/class_folder.h"

enum { IDS = 3, RECORDS = 8, RUNS = 12, FAR = 2932896 /* 9999-12-31 */ };

static const char *const ids[IDS] = { "aaaa000000000000000000000000000a",
	"bbbb000000000000000000000000000b",
	"cccc000000000000000000000000000c" };

static int runs(void)
{
	return seeded_quick() ? 2 : RUNS;
}

/* A record of each id, as long as there are any. */
static void make_records(struct fixture *x)
{
	char name[60], path[PATH_ROOM], change[120];

	for (int i = 0; i < IDS; i++) {
		snprintf(name, sizeof(name), "data/id%d.db", i);
		practise_on_computer(x, name, DAY_ONE + 5 * i, 2);
		path_of(x, name, path);
		snprintf(change, sizeof(change),
		    "UPDATE about SET student = '%s'", ids[i]);
		sql(path, change);
		snprintf(name, sizeof(name), "data/id%d.db", i);
		snprintf(change, sizeof(change), "id%d.yaml", i);
		give_from(x, name, -1, change);
	}
}

/* What records of the same practice say of who it is. */
struct says {
	int id, day, second;
	const char *initials;
};

/* Some in the same second, some without initials, some of a wrong clock. */
static void make_says(struct says says[RECORDS])
{
	static const char *const initials[] = { "", "A. B.", "B. A.", "C." };

	for (int i = 0; i < RECORDS; i++)
		says[i] = (struct says) { i % IDS,
			seeded(0, 7) == 0 ? FAR : DAY_ONE - seeded(0, 1),
			seeded(0, 2), initials[seeded(0, 3)] };
}

static void merge_one(const struct fixture *x, struct class_folder *c,
    const struct says *s, const struct join_asked *asked)
{
	char name[60], path[PATH_ROOM];
	struct gathered news;
	struct record r;
	struct fault f;

	snprintf(name, sizeof(name), "id%d.yaml", s->id);
	path_of(x, name, path);
	load_good(path, &r);
	r.given = moment_on(s->day, s->second);
	snprintf(r.initials, sizeof(r.initials), "%s", s->initials);
	assert_true(class_merge(c, &r, asked, &news, &f));
	record_done(&r);
}

/* All of them in a random order, joined with them, between or at the end. */
static void gather_class(const struct fixture *x, const char *folder,
    const struct says says[RECORDS], struct student *out)
{
	static const struct join_asked nothing = { 0 };
	struct join_asked asked;
	struct class_list list;
	struct class_folder *c;
	char path[PATH_ROOM];
	int order[RECORDS], joined;
	struct fault f;

	assert_true(join_read("aaaa+bbbb0+cccc0000", &asked));
	path_of(x, folder, path);
	c = class_open(path, &f);
	assert_non_null(c);
	for (int i = 0; i < RECORDS; i++) {
		int at = seeded(0, i);

		order[i] = order[at];
		order[at] = i;
	}
	for (int i = 0; i < RECORDS; i++) {
		bool join = seeded(0, 1) > 0;

		/* As --join does: first those that are there, then the file. */
		if (join)
			assert_true(class_join(c, &asked, false, &joined, &f));
		merge_one(x, c, &says[order[i]], join ? &asked : &nothing);
		if (seeded(0, 3) == 0)
			merge_one(x, c, &says[order[seeded(0, i)]], &nothing);
	}
	assert_true(class_join(c, &asked, true, &joined, &f));
	assert_true(class_students(c, &list, DAY_ONE + 30, NULL, NULL, &f));
	assert_int_equal(list.count, 1);
	*out = list.student[0];
	class_list_done(&list);
	class_close(c);
}

/* The newest with initials, of one second the greatest; a wrong clock last. */
static const char *rule(const struct says says[RECORDS])
{
	const struct says *best = NULL;

	for (int i = 0; i < RECORDS; i++) {
		const struct says *s = &says[i];
		bool late = s->day == FAR, later;

		if (*s->initials == '\0')
			continue;
		later = !best ||
		    (late != (best->day == FAR)	  ? !late
			    : s->day != best->day ? s->day > best->day
			    : s->second != best->second
			    ? s->second > best->second
			    : strcmp(s->initials, best->initials) > 0);
		if (later)
			best = s;
	}
	return best ? best->initials : "";
}

static void test_who_it_is(void **state)
{
	struct fixture *x = *state;

	seeded_begin("who it is");
	make_records(x);
	for (int i = 0; i < runs(); i++) {
		struct says says[RECORDS];
		struct student one, two;
		char folder[40];

		make_says(says);
		snprintf(folder, sizeof(folder), "one%d", i);
		gather_class(x, folder, says, &one);
		snprintf(folder, sizeof(folder), "two%d", i);
		gather_class(x, folder, says, &two);
		assert_string_equal(one.initials, rule(says));
		assert_string_equal(two.initials, rule(says));
		assert_int_equal(one.given, two.given);
		assert_int_equal(one.days, two.days);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(
		    test_who_it_is, fixture_open, fixture_close),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
