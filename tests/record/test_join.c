/*
 * test_join.c - ids of one student: what is said, and what may come together
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "evenhand/record/join.h"

enum { RUNS = 2000, POOL = 20 };

static void make_id(char id[RECORD_ID_MAX], int n)
{
	snprintf(id, RECORD_ID_MAX, "%08x%024x", (unsigned)n * 0x10101u, 7u);
}

static void random_ids(struct student_ids *ids, int most)
{
	char id[RECORD_ID_MAX];

	ids->count = 0;
	for (int i = (int)seeded(0, most - 1); i >= 0; i--) {
		make_id(id, (int)seeded(0, POOL - 1));
		ids_add(ids, id);
	}
}

static bool same(const struct student_ids *a, const struct student_ids *b)
{
	for (int i = 0; i < a->count; i++)
		if (a->count != b->count || strcmp(a->id[i], b->id[i]) != 0)
			return false;
	return a->count == b->count;
}

/* All ids of the pool are said to be one student's. */
static void everybody(struct join_asked *asked)
{
	asked->count = 1;
	asked->start[0][0] = '\0';
}

static void join(struct student_ids *to, const struct student_ids *more)
{
	struct student_ids both;
	struct join_asked asked;
	enum join_answer answer;

	everybody(&asked);
	answer = join_answer(to, more, &asked, &both);
	assert_true(answer == JOIN_KNOWN || answer == JOIN_TOGETHER);
	*to = both;
}

static void test_sets(void **state)
{
	(void)state;
	seeded_begin("sets of ids");
	for (int i = 0; i < RUNS; i++) {
		struct student_ids a, b, c, ab, ba, left, right;

		random_ids(&a, 5);
		random_ids(&b, 5);
		random_ids(&c, 5);
		ab = a;
		join(&ab, &b);
		ba = b;
		join(&ba, &a);
		assert_true(same(&ab, &ba));
		left = ab;
		join(&left, &c);
		right = b;
		join(&right, &c);
		join(&right, &a);
		assert_true(same(&left, &right));
		join(&left, &b);
		assert_true(same(&left, &right));
		for (int k = 1; k < left.count; k++)
			assert_true(strcmp(left.id[k - 1], left.id[k]) < 0);
	}
}

/* Without a word nothing comes that is not known, whatever the ids. */
static void test_silence(void **state)
{
	static const struct join_asked nothing = { 0 };

	(void)state;
	seeded_begin("silence");
	for (int i = 0; i < RUNS; i++) {
		struct student_ids known, theirs, both;
		enum join_answer answer;
		int shared = 0;

		random_ids(&known, 5);
		random_ids(&theirs, 5);
		for (int k = 0; k < theirs.count; k++)
			shared += ids_have(&known, theirs.id[k]);
		answer = join_answer(&known, &theirs, &nothing, &both);
		assert_int_equal(answer,
		    shared == theirs.count ? JOIN_KNOWN
			: shared > 0	   ? JOIN_MORE
					   : JOIN_STRANGER);
		known.count = 0;
		assert_int_equal(join_answer(&known, &theirs, &nothing, &both),
		    JOIN_TOGETHER);
		assert_true(same(&both, &theirs));
	}
}

static void test_too_many(void **state)
{
	struct student_ids known = { 0 }, theirs = { 0 }, both;
	struct join_asked asked;
	char id[RECORD_ID_MAX];

	(void)state;
	everybody(&asked);
	for (int i = 0; i < STUDENT_IDS_MAX; i++) {
		make_id(id, i);
		assert_true(ids_add(&known, id));
	}
	make_id(id, STUDENT_IDS_MAX);
	assert_false(ids_add(&known, id));
	ids_add(&theirs, id);
	assert_int_equal(
	    join_answer(&known, &theirs, &asked, &both), JOIN_MANY);
}

static void refused(enum join_answer why, const char *initials,
    const struct student_ids *known, const struct student_ids *theirs,
    const char *expected)
{
	static struct record r;
	struct message m;
	char words[1000];

	snprintf(r.initials, sizeof(r.initials), "%s", initials);
	m = join_refusal(why, &r, known, theirs);
	message_text(&m, words, sizeof(words));
	if (!strstr(words, expected))
		fail_msg("\"%s\" does not say \"%s\"", words, expected);
}

/* What a refusal names: an id known here, and one that is not. */
static void test_refused(void **state)
{
	struct student_ids known = { 0 }, theirs = { 0 };
	char id[RECORD_ID_MAX];

	(void)state;
	make_id(id, 1);
	ids_add(&known, id);
	make_id(id, 3);
	ids_add(&theirs, id);
	refused(JOIN_STRANGER, "", &known, &theirs,
	    "another student (-, id 00030303) than");
	refused(JOIN_STRANGER, "A. B.", &known, &theirs,
	    "it would go into (id 00010101)");
	/* Of two that are known, the one that the record has. */
	make_id(id, 2);
	ids_add(&known, id);
	ids_add(&theirs, id);
	refused(JOIN_MORE, "A. B.", &known, &theirs,
	    "with the id 00030303, who is another one here than 00020202");
	refused(
	    JOIN_MORE, "A. B.", &known, &theirs, "--join 00020202+00030303");
	refused(JOIN_MANY, "", &known, &theirs, "more than 16 ids");
}

static void test_said(void **state)
{
	static const char *const bad[] = { "", "4f2a", "4f2a+", "+4f2a",
		"4f2a++91bc", "4f2a+91b", "4f2a+91bg", "4F2A+91BC", "4f2a 91bc",
		"4f2a+91bc+", "4f2a+0123456789abcdef0123456789abcdef0" };
	struct join_asked a;

	(void)state;
	for (size_t i = 0; i < sizeof(bad) / sizeof(bad[0]); i++)
		assert_false(join_read(bad[i], &a));
	assert_true(join_read("4f2a77e0+91bc+0000", &a));
	assert_int_equal(a.count, 3);
	assert_true(join_names(&a, "91bc0d12aa55aa55aa55aa55aa55aa55"));
	assert_false(join_names(&a, "4f2a77e1aa55aa55aa55aa55aa55aa55"));
}

static void test_kept(void **state)
{
	struct student_ids ids, again;
	char bytes[IDS_TEXT];

	(void)state;
	seeded_begin("kept");
	for (int i = 0; i < RUNS; i++) {
		struct text t = text_in(bytes, sizeof(bytes));

		random_ids(&ids, STUDENT_IDS_MAX);
		ids_tell(&t, &ids);
		assert_false(t.cut);
		assert_true(ids_told(bytes, &again));
		assert_true(same(&ids, &again));
	}
	assert_false(ids_told("", &again));
	assert_int_equal(again.count, 0);
	assert_false(ids_told("4f2a77e0", &again));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_sets),
		cmocka_unit_test(test_silence),
		cmocka_unit_test(test_too_many),
		cmocka_unit_test(test_refused),
		cmocka_unit_test(test_said),
		cmocka_unit_test(test_kept),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
