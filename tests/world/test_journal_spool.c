/*
 * test_journal_spool.c - lines of the spool: torn, damaged, out of order
 */
#include <signal.h>

#include "journal_fixture.h"
#include "ordinary.h"

#include "../../src/world/journal_spool.h"
#include "../score/seeded.h"

/* Rows of four turns in the spool of a journal that is "newer" meanwhile. */
static void fill_spool(struct fixture *x, int sittings)
{
	struct fault f;
	struct journal *j = open_good(x);

	journal_close(j);
	ask(x->path, "PRAGMA user_version = 1000");
	j = journal_open(x->path, &f);
	assert_non_null(j);
	for (int i = 0; i < sittings; i++)
		sit(x, j, DAY_ONE + i, 4);
	journal_close(j);
	ask(x->path, "PRAGMA user_version = 2");
}

static char *spool_path(const struct fixture *x)
{
	static char path[140];

	snprintf(path, sizeof(path), "%s.spool", x->path);
	return path;
}

static char *read_spool(const struct fixture *x, size_t *length)
{
	FILE *f = fopen(spool_path(x), "rb");
	char *bytes = malloc(1 << 20);

	assert_non_null(f);
	*length = fread(bytes, 1, 1 << 20, f);
	bytes[*length] = '\0';
	fclose(f);
	return bytes;
}

static void write_spool(
    const struct fixture *x, const char *bytes, size_t length)
{
	FILE *f = fopen(spool_path(x), "wb");

	assert_non_null(f);
	assert_int_equal(fwrite(bytes, 1, length, f), length);
	fclose(f);
}

static int lines_of(const char *bytes, size_t length, const char *kind)
{
	char pattern[16];
	int lines = 0;

	snprintf(pattern, sizeof(pattern), "2\t%s\t", kind);
	for (size_t i = 0; i < length; i++)
		if ((i == 0 || bytes[i - 1] == '\n') &&
		    strncmp(bytes + i, pattern, strlen(pattern)) == 0 &&
		    memchr(bytes + i, '\n', length - i) != NULL)
			lines++;
	return lines;
}

static void remove_journal(const struct fixture *x)
{
	char command[200];

	snprintf(command, sizeof(command), "rm -f %s*", x->path);
	assert_int_equal(system(command), 0);
}

/* Cut anywhere: every whole line counts, the torn one is as if never there. */
static void test_torn(void **state)
{
	struct fixture *x = *state;
	size_t length;
	char *bytes;

	seeded_begin("torn");
	fill_spool(x, 2);
	bytes = read_spool(x, &length);
	assert_int_equal(lines_of(bytes, length, "turn"), 8);
	for (int i = 0; i < 40; i++) {
		size_t cut = (size_t)seeded(0, (int)length);
		struct journal *j;

		remove_journal(x);
		write_spool(x, bytes, cut);
		j = open_good(x); /* nothing to be said */
		journal_close(j);
		assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"),
		    lines_of(bytes, cut, "turn"));
		assert_int_equal(ask(x->path, "SELECT count(*) FROM sittings"),
		    lines_of(bytes, cut, "sitting"));
		assert_int_equal(
		    ask(x->path, "SELECT count(*) FROM turns WHERE mark = 1"),
		    lines_of(bytes, cut, "mark"));
		assert_false(cut > 0 && exists(x->path, ".spool"));
	}
	free(bytes);
}

/* What is added after a torn line does not run into it. */
static void test_added_after_torn(void **state)
{
	struct fixture *x = *state;
	struct fault f;
	struct journal *j;
	size_t length;
	char *bytes;

	fill_spool(x, 1);
	bytes = read_spool(x, &length);
	write_spool(x, bytes, length - 5); /* in the row of the end */
	free(bytes);
	ask(x->path, "PRAGMA user_version = 1000");
	j = journal_open(x->path, &f);
	sit(x, j, DAY_ONE + 1, 4);
	journal_close(j);
	ask(x->path, "PRAGMA user_version = 2");
	j = journal_open(x->path, &f);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_SPOOL_DAMAGED);
	assert_int_equal(journal_state(j), JOURNAL_GOOD);
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 8);
	assert_int_equal(
	    ask(x->path, "SELECT count(*) FROM sittings WHERE ended = 1"), 1);
	assert_true(exists(x->path, ".spool.unusable"));
	assert_false(exists(x->path, ".spool"));
}

/* Random damage: each line counts whole or not at all, and never a crash. */
static void test_damaged(void **state)
{
	struct fixture *x = *state;
	size_t length;
	char *bytes, *hurt;

	seeded_begin("damaged");
	fill_spool(x, 2);
	bytes = read_spool(x, &length);
	hurt = malloc(length);
	for (int i = 0; i < 60; i++) {
		struct fault f;
		struct journal *j;

		memcpy(hurt, bytes, length);
		for (int k = seeded(1, 6); k > 0; k--)
			hurt[seeded(0, (int)length - 1)] = (char)(seeded(0, 3)
				? seeded(0, 255)
				: '\n');
		remove_journal(x);
		write_spool(x, hurt, length);
		j = journal_open(x->path, &f);
		assert_non_null(j);
		assert_int_equal(journal_state(j), JOURNAL_GOOD);
		journal_close(j);
		assert_true(ask(x->path, "SELECT count(*) FROM turns") <= 8);
		assert_int_equal(
		    ask(x->path,
			"SELECT count(*) FROM turns WHERE stage <> "
			"'tone' OR pulses <> 6 OR bows_done <> 2"),
		    0);
	}
	free(bytes);
	free(hurt);
}

/* Lines that are no rows, however right their checksums are. */
static void test_foreign_lines(void **state)
{
	struct fixture *x = *state;
	static const char *const texts[] = { "", "\t\t\t", "1\tturn\tx",
		"1\tmark\t0123456789abcdef0123456789abcdef\t1\t1\t1\t1\t1\t0\t"
		"1",
		"3\tmark\t0123456789abcdef0123456789abcdef\t1\t1\t1\t1\t1\t0\t1"
		"\t1",
		"1\tmark\t0123456789abcdef0123456789abcdef\t1\t1\t1\t1\t1\t0\t1"
		"\tx",
		"1\tnote\t0123456789abcdef0123456789abcdef\t1\t0\t1\t1\t1\t1\t1"
		"\t\\q",
		"1\tnote\t0123456789abcdef\t1\t0\t1\t1\t1\t1\t1\tshort",
		"1\tnote\t0123456789abcdef0123456789abcdef0\t1\t0\t1\t1\t1\t1"
		"\t1\tlong" };
	struct fault f;
	struct journal *j = open_good(x);
	FILE *to;

	journal_close(j);
	to = fopen(spool_path(x), "wb");
	for (size_t i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
		uint64_t sum = UINT64_C(0xcbf29ce484222325); /* FNV-1a */

		for (const char *s = texts[i]; *s; s++)
			sum = (sum ^ (unsigned char)*s) *
			    UINT64_C(0x100000001b3);
		fprintf(to, "%s\t%016llx\n", texts[i], (unsigned long long)sum);
	}
	fclose(to);
	j = journal_open(x->path, &f);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_SPOOL_DAMAGED);
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 0);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM notes"), 0);
	assert_true(exists(x->path, ".spool.unusable"));
}

static void make_state_folder(const struct fixture *x)
{
	char command[200];

	snprintf(command, sizeof(command), "mkdir -p %s/.local/state/evenhand",
	    x->folder);
	assert_int_equal(system(command), 0);
}

static void write_file(const char *path, const char *bytes, size_t length)
{
	FILE *f = fopen(path, "wb");

	assert_non_null(f);
	assert_int_equal(fwrite(bytes, 1, length, f), length);
	fclose(f);
}

/* The rows of a pain note, far shorter than a routine's text. */
static struct row *short_row(void)
{
	static const char *const texts[NOTE_TEXTS] = { "It hurts here" };
	struct row *row = row_new(ROW_NOTE, texts);

	strcpy(row->origin, "0123456789abcdef0123456789abcdef");
	return row;
}

static off_t bytes_in(const char *path)
{
	struct stat s;

	return stat(path, &s) == 0 ? s.st_size : -1;
}

/* A file may not grow beyond one row and a half: the half is taken back. */
static void half_written_part(struct fixture *x)
{
	struct row *row = short_row();
	struct spool s;
	off_t one;

	spool_init(&s, x->path);
	*strrchr(x->path, '/') = '\0';
	CHECK(mkdir(x->path, 0700) == 0);
	CHECK(spool_add(&s, row) == 0);
	one = bytes_in(s.path[0]);
	CHECK(one > 40);
	signal(SIGXFSZ, SIG_IGN);
	limit_files((rlim_t)(one + one / 2));
	CHECK(spool_add(&s, row) == 2);
	CHECK(bytes_in(s.path[0]) == one);
	CHECK(bytes_in(s.path[2]) == one);
	limit_files(RLIM_INFINITY);
	rows_free(row);
}

static void test_half_written(void **state)
{
	as_ordinary(*state, half_written_part);
}

/* Numbers in a spool that cannot be read may be taken: none is used again. */
static void test_numbers_out_of_sight(void **state)
{
	struct fixture *x = *state;
	struct fault f;
	struct journal *j = open_good(x);
	sqlite3 *busy = hold(x);
	char other[200];

	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	let_go(busy);
	snprintf(other, sizeof(other), "%s/backup", x->folder);
	assert_int_equal(link(spool_path(x), other), 0);
	j = journal_open(x->path, &f);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_SPOOL_UNREAD);
	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 4);
	assert_int_equal(unlink(other), 0);
	journal_close(open_good(x));
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 8);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM sittings"), 2);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM origins"), 2);
}

/* A second spool that is put aside leaves the first where it is. */
static void test_aside_twice(void **state)
{
	static const char *const words[] = { "one\n", "two\n", "three\n" };
	static const char *const ends[] = { "", "-2", "-3" };
	struct fixture *x = *state;

	for (int i = 0; i < 3; i++) {
		char name[200], back[16] = "";
		struct fault f;
		struct journal *j;
		FILE *from;

		journal_close(open_good(x));
		write_spool(x, words[i], strlen(words[i]));
		j = journal_open(x->path, &f);
		assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_SPOOL_DAMAGED);
		journal_close(j);
		for (int k = 0; k <= i; k++) {
			snprintf(name, sizeof(name), "%s.unusable%s",
			    spool_path(x), ends[k]);
			from = fopen(name, "rb");
			assert_non_null(from);
			assert_non_null(fgets(back, sizeof(back), from));
			assert_string_equal(back, words[k]);
			fclose(from);
		}
	}
}

/* A place that is good goes, though another was damaged. */
static void test_each_place_for_itself(void **state)
{
	struct fixture *x = *state;
	struct fault f;
	struct journal *j;
	struct message m;
	struct spool s;
	char sentence[600], aside[SPOOL_ASIDE_BYTES];

	fill_spool(x, 1);
	spool_init(&s, x->path);
	make_state_folder(x);
	write_file(s.path[2], "no row\n", 7);
	j = journal_open(x->path, &f);
	assert_true(journal_trouble(j, &m));
	assert_int_equal(m.id, M_WORLD_JOURNAL_SPOOL_DAMAGED);
	message_text(&m, sentence, sizeof(sentence));
	snprintf(aside, sizeof(aside), "%s.unusable", s.path[2]);
	assert_non_null(strstr(sentence, aside));
	assert_int_equal(journal_state(j), JOURNAL_GOOD);
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 4);
	assert_true(exists(aside, ""));
	assert_false(exists(x->path, ".spool"));
	assert_false(exists(x->path, ".spool.unusable"));
}

/* The sitting is in a place that cannot be read: its turns wait for it. */
static void test_sitting_in_another_place(void **state)
{
	struct fixture *x = *state;
	struct fault f;
	struct journal *j;
	struct spool s;
	size_t length;
	char *bytes, *rest, other[200];

	fill_spool(x, 1);
	spool_init(&s, x->path);
	make_state_folder(x);
	bytes = read_spool(x, &length);
	rest = strstr(bytes, "2\tturn\t");
	assert_non_null(rest);
	write_file(s.path[2], rest, length - (size_t)(rest - bytes));
	write_spool(x, bytes, (size_t)(rest - bytes));
	free(bytes);
	snprintf(other, sizeof(other), "%s/backup", x->folder);
	assert_int_equal(link(s.path[0], other), 0);

	j = journal_open(x->path, &f);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_SPOOL_UNREAD);
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 0);
	assert_true(exists(s.path[0], ""));
	assert_true(exists(s.path[2], ""));
	assert_int_equal(unlink(other), 0);
	journal_close(open_good(x));
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 4);
	assert_false(exists(s.path[0], ""));
	assert_false(exists(s.path[2], ""));
}

/* Turns that come before their sitting find it all the same. */
static void test_order(void **state)
{
	struct fixture *x = *state;
	size_t length;
	char *bytes, *half;
	FILE *to;
	struct journal *j;

	fill_spool(x, 1);
	bytes = read_spool(x, &length);
	half = strchr(bytes, '\n') + 1;
	to = fopen(spool_path(x), "wb");
	fwrite(half, 1, length - (size_t)(half - bytes), to);
	fwrite(bytes, 1, (size_t)(half - bytes), to);
	fclose(to);
	free(bytes);
	j = open_good(x);
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 4);
	assert_int_equal(ask(x->path, "SELECT sum(played) FROM shares"), 4);
}

/* Any row comes back from its line as it was. */
static void test_row_round_trip(void **state)
{
	static const char *const odd[] = { "", "\t", "\n\n", "\\", "\\t", "é",
		"a\rb", "1\tturn" };

	(void)state;
	seeded_begin("rows");
	for (int i = 0; i < 500; i++) {
		enum row_kind kind = (enum row_kind)seeded(0, ROW_KINDS - 1);
		const char *texts[ROW_TEXTS_MAX];
		char line[4096] = "";
		struct row *row, *back;
		FILE *to = fmemopen(line, sizeof(line) - 1, "w");

		for (int k = 0; k < ROW_TEXTS_MAX; k++)
			texts[k] = odd[seeded(0, 7)];
		row = row_new(kind, texts);
		strcpy(row->origin, "0123456789abcdef0123456789abcdef");
		for (int k = 0; k < row_layouts[kind].numbers; k++)
			row->number[k] = (int64_t)seeded_bits() >>
			    seeded(0, 63);
		assert_true(row_write(row, to));
		fclose(to);
		assert_int_equal(line[strlen(line) - 1], '\n');
		line[strlen(line) - 1] = '\0';
		assert_null(strchr(line, '\n'));
		back = row_read(line);
		assert_non_null(back);
		assert_int_equal(back->kind, kind);
		assert_memory_equal(
		    back->number, row->number, sizeof(row->number));
		for (int k = 0; k < row_layouts[kind].texts; k++)
			assert_string_equal(back->text[k], texts[k]);
		rows_free(row);
		rows_free(back);
	}
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_torn),
		T(test_added_after_torn),
		T(test_damaged),
		T(test_foreign_lines),
		T(test_half_written),
		T(test_numbers_out_of_sight),
		T(test_aside_twice),
		T(test_each_place_for_itself),
		T(test_sitting_in_another_place),
		T(test_order),
		cmocka_unit_test(test_row_round_trip),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
