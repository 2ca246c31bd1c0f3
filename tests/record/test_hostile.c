/*
 * test_hostile.c - records of strangers: what is wrong and where, what is too
 * much, no memory; and what is odd but right comes back letter by letter
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>
#include <math.h>

#include "changed.h"
#include "evenhand/base/fingerprint.h"
#include "evenhand/record/read.h"
#include "evenhand/record/write.h"
#include "evenhand/world/yaml.h"

static struct record r;
static struct fault f;
static char said[800];

/* --- no memory --- */

/* While above 0, counted down; the call that comes to 0 finds no memory. */
static int calls_left;

/* The linker brings the calls of arenas and of lists that grow here. */
void *__real_calloc(size_t count, size_t size);
void *__wrap_calloc(size_t count, size_t size);
void *__real_realloc(void *old, size_t size);
void *__wrap_realloc(void *old, size_t size);

void *__wrap_calloc(size_t count, size_t size)
{
	if (calls_left > 0 && --calls_left == 0)
		return NULL;
	return __real_calloc(count, size);
}

void *__wrap_realloc(void *old, size_t size)
{
	if (calls_left > 0 && --calls_left == 0)
		return NULL;
	return __real_realloc(old, size);
}

/* --- what is wrong, and where --- */

/* A word where there is to be a list or a map, and the other way round. */
static void test_kinds(void **state)
{
	static const struct wrong cases[] = {
		{ "\"W.\"", "[W]", M_RECORD_WANT_WORD, 2, 21 },
		{ "\"0123456789abcdef0123456789abcdef\"", "[a]",
		    M_RECORD_WANT_WORD, 2, 31 },
		{ "rows: 60", "rows: {}", M_RECORD_WANT_WORD, 6, 50 },
		{ "2026-03-09T17:00:00+01:00", "[]", M_RECORD_MOMENT, 3, 8 },
		{ "since: 2026-03-02", "since: []", M_RECORD_DAY, 4, 8 },
		{ "- fingerprint", "- wrong\n- fingerprint", M_RECORD_WANT_MAP,
		    8, 3 },
		{ "{stage: tone, asked: tone, instrument: cello}", "tone",
		    M_RECORD_WANT_MAP, 18, 9 },
		{ "{marking: round", "{marking: [round]", M_RECORD_WANT_WORD,
		    19, 19 },
		{ "{how: whole, at: 2026-03-02T18:00:32+01:00, row: 12}",
		    "whole", M_RECORD_WANT_MAP, 21, 8 },
		{ "[[tone, 1, 3, 0], [tone, 0-1, 3, 1]]", "tone",
		    M_RECORD_WANT_LIST, 22, 11 },
		{ "[[tone, 1, 3, 0]", "[tone", M_RECORD_WANT_LIST, 22, 12 },
		{ "- [0, air, air", "- air\n  - [0, air, air",
		    M_RECORD_WANT_LIST, 24, 5 },
		{ "{first_go: yes, bows_asked: 3, resets: 1, dropouts: 2, "
		  "offset_s: 0}",
		    "yes", M_RECORD_WANT_MAP, 25, 72 },
		{ "first_go: yes", "first_go: [yes]", M_RECORD_WANT_WORD, 25,
		    83 },
		{ "{share: 0.934, late_s: -0.0123, tops_asked: 12}", "much",
		    M_RECORD_WANT_MAP, 28, 42 },
		{ "share: 0.934", "share: [1]", M_RECORD_WANT_WORD, 28, 50 },
		{ "\"Which \\\"way\\\"?\"", "[Which]", M_RECORD_WANT_WORD, 30,
		    88 },
		{ "{how: cut off}", "{how: cut off}\n  turns: none",
		    M_RECORD_WANT_LIST, 40, 10 },
		{ "{how: cut off}", "{how: cut off}\n  measures: none",
		    M_RECORD_WANT_LIST, 40, 13 },
		{ "{how: cut off}", "{how: cut off}\n  notes: none",
		    M_RECORD_WANT_LIST, 40, 10 },
		{ "- {at: 2026-03-04", "- none\n- {at: 2026-03-04",
		    M_RECORD_WANT_MAP, 41, 3 },
	};

	(void)state;
	refused(cases, sizeof(cases) / sizeof(cases[0]));
}

/* Values that cannot be, or that contradict each other. */
static void test_values(void **state)
{
	static const struct wrong cases[] = {
		{ "id: \"0", "id: \"", M_RECORD_ID, 2, 31 },
		{ "id: \"0", "id: \"A", M_RECORD_ID, 2, 31 },
		{ "initials", "name", M_RECORD_KEY, 2, 11 },
		{ "\"W.\"", "\"Wilhelmina Augusta Victoria\"", M_RECORD_LONG, 2,
		    21 },
		{ "rows: 60}",
		    "rows: 60}\n- {id: \"9f3c5a7be1d2084466aa00ff13579bdf\", "
		    "rows: 1}",
		    M_RECORD_AGAIN, 7, 3 },
		{ "- fingerprint: \"cbf29ce484222325\"",
		    "- {fingerprint: cbf29ce484222325, name: \"\", edition: 1, "
		    "text: \"\"}\n- fingerprint: \"cbf29ce484222325\"",
		    M_RECORD_AGAIN, 9, 3 },
		{ "fingerprint: \"c", "fingerprint: \"", M_RECORD_ID, 8, 16 },
		{ "began: 2026-03-02T18", "began: 2026-03-02T25",
		    M_RECORD_MOMENT, 13, 10 },
		{ "  day: 2026-03-02", "  day: 2026-02-30", M_RECORD_DAY, 14,
		    8 },
		{ "  day: 2026-03-02", "  day: 2026-01-02", M_RECORD_FAR, 14,
		    8 },
		{ "computer: 1\n", "computer: one\n", M_RECORD_WHOLE, 15, 13 },
		{ "routine: \"cbf29ce484222325\"", "routine: \"cbf2\"",
		    M_RECORD_ID, 17, 12 },
		{ "routine: \"cbf29ce484222325\"",
		    "routine: \"0bf29ce484222325\"", M_RECORD_NO_ROUTINE, 17,
		    12 },
		{ "how: whole", "how: well", M_RECORD_CHOICE, 21, 14 },
		{ "how: whole, at: 2026-03-02T18:00:32+01:00, row: 12",
		    "how: cut off, row: 12", M_RECORD_ENDLESS, 21, 8 },
		{ "{how: cut off}", "{how: cap, row: 21}", M_RECORD_ENDLESS, 39,
		    8 },
		{ "row: 12}", "row: 61}", M_RECORD_ROW_BEYOND, 21, 57 },
		{ "[tone, 1, 3, 0]", "[tone, \"\", 3, 0]", M_RECORD_UNIT, 22,
		    19 },
		{ "[tone, 1, 3, 0]", "[tone, [1], 3, 0]", M_RECORD_UNIT, 22,
		    19 },
		{ "[tone, 1, 3, 0]", "[tone, 1, 3, -1]", M_RECORD_WHOLE, 22,
		    25 },
		{ "[tone, 1, 3, 0]", "[tone, 1, 3, 0, 0]", M_RECORD_TOO_MANY,
		    22, 28 },
		{ "4, 0, 0]\n", "4, 0]\n", M_RECORD_COLUMNS, 24, 5 },
		{ "4, 0, 0]\n", "4, 0, 0, {}, 0]\n", M_RECORD_TOO_MANY, 24,
		    64 },
		{ "4, 0, 0]\n", "4, none, 0]\n", M_RECORD_WHOLE, 24, 54 },
		{ "5, 7, 17000", "5, 61, 17000", M_RECORD_ROW_BEYOND, 25, 5 },
		{ "first_go: yes", "first_go: maybe", M_RECORD_CHOICE, 25, 83 },
		{ "resets: 1", "resets: -1", M_RECORD_WHOLE, 25, 111 },
		{ "resets: 1", "hurt: 1", M_RECORD_KEY, 25, 103 },
		{ "{turn: 1, method: 1", "{turn: 7, method: 1",
		    M_RECORD_NO_TURN, 28, 5 },
		{ "{turn: 1, method: 1, row: 10",
		    "{turn: 1, method: 1, row: 10, heard: {}}\n"
		    "  - {turn: 1, method: 1, row: 11",
		    M_RECORD_ORDER, 29, 5 },
		{ "{turn: 1, method: 1, row: 10",
		    "{turn: 2, method: 1, row: 9, heard: {}}\n"
		    "  - {turn: 1, method: 2, row: 11",
		    M_RECORD_ORDER, 29, 5 },
		{ "row: 10, heard", "row: 61, heard", M_RECORD_ROW_BEYOND, 28,
		    5 },
		{ "share: 0.934", "share: 9.34e-1", M_RECORD_REAL, 28, 50 },
		{ "share: 0.934", "share: .934", M_RECORD_REAL, 28, 50 },
		{ "share: 0.934", "share: nan", M_RECORD_REAL, 28, 50 },
		{ "share: 0.934", "share: 1000000000000", M_RECORD_REAL, 28,
		    50 },
		{ "share: 0.934", "late_s: 0.934", M_RECORD_MEASURE, 28, 66 },
		{ "kind: question", "kind: joy", M_RECORD_CHOICE, 30, 60 },
		{ "+00:19:32, day: 2026-03-04", "+00:19:32, day: 2027-03-04",
		    M_RECORD_FAR, 41, 43 },
		{ "row: 30, computer: 1", "row: 30, computer: 2",
		    M_RECORD_NO_COMPUTER, 41, 108 },
		{ "notes:\n- {at", "letters: [a]\nnotes:\n- {at", M_RECORD_KEY,
		    40, 1 },
	};

	(void)state;
	refused(cases, sizeof(cases) / sizeof(cases[0]));
}

/* The other ids of a student: some, each of them another. */
static void test_also(void **state)
{
	static const struct {
		const char *also;
		enum message_id id;
	} cases[] = {
		{ "also: none", M_RECORD_WANT_LIST },
		{ "also: []", M_RECORD_MISSING },
		{ "also: [f]", M_RECORD_ID },
		{ "also: [0123456789abcdef0123456789abcdef]", M_RECORD_AGAIN },
		{ "also: [ff23456789abcdef0123456789abcdef, "
		  "ff23456789abcdef0123456789abcdef]",
		    M_RECORD_AGAIN },
	};
	char to[400];

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		snprintf(to, sizeof(to),
		    "2\nstudent: {initials: \"W.\", %s, id: "
		    "\"0123456789abcdef0123456789abcdef\"}\n",
		    cases[i].also);
		assert_false(
		    read_changed("1\nstudent: {initials: \"W.\", "
				 "id: \"0123456789abcdef0123456789abcdef\"}\n",
			to, &f, &r));
		record_done(&r);
		assert_int_equal(f.message.id, cases[i].id);
		assert_int_equal(f.line, 2);
	}
}

/* --- too much --- */

/* So many entries, each with a number of its own, in the place of others. */
static void repeated(
    const char *from, const char *before, int times, const char *behind)
{
	static char to[ROOM];
	struct text t = text_in(to, sizeof(to));

	for (int i = 0; i < times; i++)
		text_format(&t, "%s%s%d%s", i ? ", " : "", before, i, behind);
	assert_false(t.cut);
	f.message.id = M_NONE;
	read_changed(from, to, &f, &r);
	record_done(&r);
}

static void test_too_many_in_a_sitting(void **state)
{
	static const char values[] =
	    "share: 0.934, late_s: -0.0123, tops_asked: 12";
	static const char shares[] = "[tone, 1, 3, 0], [tone, 0-1, 3, 1]";

	(void)state;
	repeated(values, "a", RECORD_VALUES_MAX, ": 1");
	assert_int_equal(f.message.id, M_NONE);
	repeated(values, "a", RECORD_VALUES_MAX + 1, ": 1");
	assert_int_equal(f.message.id, M_RECORD_TOO_MANY);
	repeated(shares, "[tone-", RECORD_SHARES_MAX, ", 1, 3, 0]");
	assert_int_equal(f.message.id, M_NONE);
	repeated(shares, "[tone-", RECORD_SHARES_MAX + 1, ", 1, 3, 0]");
	assert_int_equal(f.message.id, M_RECORD_TOO_MANY);
}

/* A record that was full before an entry, and one entry more. */
static const char *full_of;

static bool take_when_full(void *context, const struct node *root,
    const struct node *list, const struct node *entry)
{
	if (strcmp(list->key, full_of) == 0) {
		if (strcmp(full_of, "computers") == 0)
			r.computers = RECORD_COMPUTERS_MAX;
		if (strcmp(full_of, "routines") == 0)
			r.routines = RECORD_ROUTINES_MAX;
		if (strcmp(full_of, "sittings") == 0)
			r.sittings = RECORD_SITTINGS_MAX;
		if (strcmp(full_of, "notes") == 0)
			r.notes = RECORD_NOTES_MAX;
	}
	if (strcmp(full_of, "turns") == 0)
		r.turns = RECORD_TURNS_MAX - 2; /* and three come */
	return record_entry(context, root, list, entry);
}

static void test_full(void **state)
{
	static const struct {
		const char *of, *sentence;
	} cases[] = {
		{ "computers", "6:3: \"computers\" holds more than 1000" },
		{ "routines", "8:3: \"routines\" holds more than 5000" },
		{ "sittings", "13:3: \"sittings\" holds more than 50000" },
		{ "turns", "24:3: \"turns\" holds more than 600000" },
		{ "notes", "41:3: \"notes\" holds more than 50000" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct faults faults = { 0 };
		struct arena arena = { 0 };
		struct record_reader rd;
		const struct yaml_parts parts = { take_when_full, &rd,
			RECORD_PART_BYTES };

		full_of = cases[i].of;
		r = (struct record) { 0 };
		record_reader_begin(&rd, &r, NULL, &faults);
		yaml_parse_parts(
		    "r.yaml", small, strlen(small), &parts, &arena, &faults);
		record_reader_done(&rd);
		assert_true(faults.count > 0);
		fault_text(&faults.at[0], said, sizeof(said));
		said[strlen(cases[i].sentence)] = '\0';
		assert_string_equal(said, cases[i].sentence);
		arena_done(&arena);
		record_done(&r);
	}
}

/* --- no memory --- */

/* Wherever memory ends, that is what is said, and no half record is taken. */
static void test_no_memory(void **state)
{
	int calls = 0;
	bool good;

	(void)state;
	do {
		calls_left = ++calls;
		good = read_changed("", "", &f, &r);
		if (calls_left > 0)
			break;
		assert_false(good);
		fault_text(&f, said, sizeof(said));
		assert_non_null(strstr(said, "no memory left"));
		record_done(&r);
	} while (calls < 1000);
	calls_left = 0;
	assert_true(good);
	assert_int_equal(r.turns, 3);
	record_done(&r);
	assert_true(calls > 3);
}

/* --- odd, and right --- */

/* Writes a record, and reads what was written. */
static void through(struct record *from, struct record *to)
{
	struct text t = text_in(changed, sizeof(changed));
	struct faults faults = { 0 };

	record_write(&t, from);
	assert_false(t.cut);
	if (!record_parse("again.yaml", changed, t.length, to, &faults)) {
		fault_text(&faults.at[0], said, sizeof(said));
		fail_msg("%s", said);
	}
}

/* A routine's text comes back letter by letter, whatever stands in it. */
static void test_texts_kept(void **state)
{
	static const char *const texts[] = { "", "a", "\n", "one: 1\n",
		"one: 1\ntwo: 2", "\none: 1\n", "one: 1\n\n", "one: 1\r\n",
		"one:\t1\n", "a \"quoted\" \\ word\tand\rmore",
		"\xef\xbb\xbfroutine: it begins with a mark\n",
		"    further in\nless\n", "# a comment\n\n\n  x: 1\n" };

	(void)state;
	for (size_t i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
		struct record again;

		assert_true(read_changed("", "", &f, &r));
		r.routine->text = texts[i];
		r.routine->fingerprint = fingerprint_add(
		    FINGERPRINT_START, texts[i], strlen(texts[i]));
		through(&r, &again);
		assert_string_equal(again.routine->text, texts[i]);
		record_done(&again);
		record_done(&r);
	}
}

/* Names that readers of YAML take for something else, and long words. */
static void test_names_kept(void **state)
{
	static const char *const names[] = { "y", "no", "on", "null", "true",
		"1", "10", "1e3", "-", "a-b" };
	char words[RECORD_WORDS_MAX] = "";
	struct record again;

	(void)state;
	while (strlen(words) + 3 < sizeof(words))
		strcat(words, strlen(words) == 0 ? "x" : "\xc3\xa9");
	for (size_t i = 0; i < sizeof(names) / sizeof(names[0]); i++) {
		assert_true(read_changed("", "", &f, &r));
		r.sitting->work_stage = r.sitting->turn[1].stage = names[i];
		r.sitting->note->words = words;
		through(&r, &again);
		assert_string_equal(again.sitting->work_stage, names[i]);
		assert_string_equal(again.sitting->turn[1].stage, names[i]);
		assert_string_equal(again.sitting->note->words, words);
		record_done(&again);
		record_done(&r);
	}
	/* Other readers see a word there, too (YAML 1.1, 10.2.1.2). */
	assert_true(read_changed("", "", &f, &r));
	r.sitting->work_stage = "no";
	through(&r, &again);
	assert_non_null(strstr(changed, "{stage: \"no\","));
	record_done(&again);
	record_done(&r);
}

/* Each way in which a session can end. */
static void test_ends_kept(void **state)
{
	(void)state;
	for (int how = ENDED_WHOLE; how <= ENDED_NOT_TODAY; how++) {
		struct record again;
		char line[40];

		assert_true(read_changed("", "", &f, &r));
		r.sitting->how = (enum ended)how;
		through(&r, &again);
		assert_int_equal(again.sitting->how, how);
		assert_int_equal(
		    again.sitting->ended.utc, r.sitting->ended.utc);
		snprintf(line, sizeof(line), "{how: %s, at",
		    record_how_word((enum ended)how));
		assert_non_null(strstr(changed, line));
		record_done(&again);
		record_done(&r);
	}
}

/* What a damaged journal may hold is given to nobody. */
static void test_not_given(void **state)
{
	static const double no_numbers[] = { NAN, INFINITY, -INFINITY, 1e12 };
	struct record_sitting *s;

	(void)state;
	assert_true(read_changed("", "", &f, &r));
	s = r.sitting;
	assert_true(record_sitting_good(&r, s));
	s->shares = RECORD_SHARES_MAX + 1;
	assert_false(record_sitting_good(&r, s));
	s->shares = 2;
	for (size_t i = 0; i < 4; i++) {
		struct text t = text_in(said, sizeof(said));

		s->measure->value[1].value = no_numbers[i];
		assert_false(record_sitting_good(&r, s));
		record_write_real(&t, no_numbers[i]);
		assert_string_equal(said, "0");
	}
	s->measure->value[1].value = 0;
	strcpy(s->measure->value[0].name, "Late");
	assert_false(record_sitting_good(&r, s));
	strcpy(s->measure->value[0].name, "late_s");
	s->measure->turn = -1;
	assert_false(record_sitting_good(&r, s));
	s->measure->turn = 1;
	assert_true(record_sitting_good(&r, s));
	record_done(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_kinds),
		cmocka_unit_test(test_values),
		cmocka_unit_test(test_also),
		cmocka_unit_test(test_too_many_in_a_sitting),
		cmocka_unit_test(test_full),
		cmocka_unit_test(test_no_memory),
		cmocka_unit_test(test_texts_kept),
		cmocka_unit_test(test_names_kept),
		cmocka_unit_test(test_ends_kept),
		cmocka_unit_test(test_not_given),
	};

	return cmocka_run_group_tests(tests, read_small, NULL);
}
