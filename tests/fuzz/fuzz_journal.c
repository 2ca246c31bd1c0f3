/*
 * fuzz_journal.c - journals that a disk, a cloud's copy or somebody spoilt
 *
 * A small good journal is made once.  The first byte says what happens to a
 * copy of it: bytes of the file become others, cells of its tables get random
 * values, or random rows wait in a spool beside it, with the checksum that lets
 * them in.  Whatever lies there: it is read or refused with a sentence, plans
 * and a class's row are made of what was read, and a record taken from it is
 * one that can be gathered.
 */
#include <inttypes.h>
#include <stdint.h>

#include "../world/histories.h"
#include "evenhand/coach/student.h"
#include "evenhand/record/write.h"
#include "evenhand/world/load.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum {
	SITTINGS = 12,
	TODAY = DAY_ONE + 9,
	PATCH = 4, /* bytes: place (3), value */
	CELL = 4,  /* bytes: which, row, kind of value, value */
	CELLS_MAX = 40,
	RECORD_ROOM = 1 << 20,
};

/* All of a journal that is read and is no key. */
static const struct {
	const char *table, *column;
} cells[] = {
	{ "turns", "sitting" },
	{ "turns", "number" },
	{ "turns", "utc" },
	{ "turns", "utc_offset" },
	{ "turns", "day" },
	{ "turns", "kind" },
	{ "turns", "stage" },
	{ "turns", "unit" },
	{ "turns", "round" },
	{ "turns", "pulses" },
	{ "turns", "bows_asked" },
	{ "turns", "bows_done" },
	{ "turns", "first_go" },
	{ "turns", "resets" },
	{ "turns", "dropouts" },
	{ "turns", "start_ms" },
	{ "turns", "slide_um" },
	{ "turns", "mark" },
	{ "turns", "mark_ms" },
	{ "turns", "sequence" },
	{ "turns", "mark_sequence" },
	{ "sittings", "began_utc" },
	{ "sittings", "utc_offset" },
	{ "sittings", "day" },
	{ "sittings", "work_stage" },
	{ "sittings", "marking" },
	{ "sittings", "cap_ms" },
	{ "sittings", "planned_ms" },
	{ "sittings", "rate" },
	{ "sittings", "device" },
	{ "sittings", "ended" },
	{ "sittings", "length_ms" },
	{ "sittings", "ended_utc" },
	{ "sittings", "ended_offset" },
	{ "sittings", "seen" },
	{ "sittings", "instrument" },
	{ "sittings", "asked_stage" },
	{ "sittings", "sequence" },
	{ "sittings", "ended_sequence" },
	{ "routines", "fingerprint" },
	{ "routines", "name" },
	{ "routines", "edition" },
	{ "routines", "text" },
	{ "notes", "sitting" },
	{ "notes", "utc" },
	{ "notes", "day" },
	{ "notes", "kind" },
	{ "notes", "finger" },
	{ "notes", "words" },
	{ "notes", "sequence" },
	{ "shares", "stage" },
	{ "shares", "unit" },
	{ "shares", "planned" },
	{ "shares", "dropped" },
	{ "shares", "played" },
	{ "measures", "method" },
	{ "measures", "name" },
	{ "measures", "value" },
	{ "days", "day" },
	{ "days", "entries" },
	{ "days", "tallies" },
	{ "about", "student" },
	{ "about", "origin" },
	{ "origins", "id" },
	{ "origins", "last" },
};

enum { COLUMNS = sizeof(cells) / sizeof(cells[0]) };

static struct fixture *x;
static struct routine *routine;
static char path[PATH_ROOM];
static char *good;
static size_t good_length;

static void hold(bool holds, const char *what)
{
	if (holds)
		return;
	fprintf(stderr, "%s\n", what);
	abort();
}

static void remove_all(void)
{
	static const char *const ends[] = { "", "-wal", "-shm", "-journal",
		".spool" };
	char name[PATH_ROOM + 16];

	for (size_t i = 0; i < sizeof(ends) / sizeof(ends[0]); i++) {
		snprintf(name, sizeof(name), "%s%s", path, ends[i]);
		unlink(name);
	}
}

static void put_file(const char *name, const char *bytes, size_t length)
{
	FILE *to = fopen(name, "w");

	hold(to != NULL && fwrite(bytes, 1, length, to) == length &&
		fclose(to) == 0,
	    "a file of the test could not be written");
}

static void take_file(void)
{
	FILE *from = fopen(path, "r");
	long length;

	hold(from != NULL && fseek(from, 0, SEEK_END) == 0, "no journal");
	length = ftell(from);
	rewind(from);
	good_length = (size_t)length;
	good = malloc(good_length);
	hold(good != NULL && fread(good, 1, good_length, from) == good_length,
	    "the journal could not be read");
	fclose(from);
}

static void end(void)
{
	remove_all();
	fixture_close((void **)&x);
	routine_free(routine);
	free(good);
}

/* The journal that is spoilt: with all there can be in one. */
static void begin_all(void)
{
	static struct faults faults;
	static struct load_paths paths;
	bool unreadable;

	fixture_open((void **)&x);
	seeded_begin("journals");
	practise_on_computer(x, "good.sqlite", DAY_ONE, SITTINGS);
	path_of(x, "good.sqlite", path);
	sql(path,
	    "UPDATE about SET origin = 'fedcba9876543210fedcba9876543210';"
	    "UPDATE origins SET id = 'fedcba9876543210fedcba9876543210';"
	    "PRAGMA journal_mode = DELETE; VACUUM");
	take_file();
	routine = load_routine(NULL, &paths, &faults, &unreadable);
	hold(routine != NULL, "no routine");
	atexit(end);
}

static void spoil_bytes(const uint8_t *data, size_t size)
{
	char *bytes = malloc(good_length);

	hold(bytes != NULL, "memory");
	memcpy(bytes, good, good_length);
	for (size_t i = 0; i + PATCH <= size; i += PATCH) {
		size_t at = (size_t)data[i] << 16 | (size_t)data[i + 1] << 8 |
		    data[i + 2];

		bytes[at % good_length] = (char)data[i + 3];
	}
	put_file(path, bytes, good_length);
	free(bytes);
}

static void bind_value(sqlite3_stmt *st, int kind, int value)
{
	static const int64_t edges[] = { 0, -1, 1, INT64_MAX, INT64_MIN,
		INT32_MAX, INT32_MIN, (int64_t)INT32_MAX + 1, 1000000,
		TODAY - 1, TODAY, TODAY + 1, UTC_ONE };
	static const char *const texts[] = { "", "tone", "air", "\033[2J", "[]",
		"[[", "[[\"tone\",\"1\",2,4,8,3,1,1,6,100,900]]", "\xff\xfe",
		"{\"a\": 1}", "0-1", "1", "[\"air\",0,\"tone\",1]",
		"0123456789abcdef0123456789abcdef+", "cello", "lower\nline" };

	if (kind % 4 == 0)
		sqlite3_bind_int64(st, 1,
		    edges[(size_t)value % (sizeof(edges) / sizeof(edges[0]))]);
	else if (kind % 4 == 1)
		sqlite3_bind_text(st, 1,
		    texts[(size_t)value % (sizeof(texts) / sizeof(texts[0]))],
		    -1, SQLITE_STATIC);
	else if (kind % 4 == 2)
		sqlite3_bind_int(st, 1, value - 128);
	else
		sqlite3_bind_double(st, 1, (value - 128) * 1e30);
}

/* What the tables do not allow stays as it was. */
static void spoil_cell(sqlite3 *d, const uint8_t *data)
{
	const int which = data[0] % COLUMNS;
	const char *t = cells[which].table, *c = cells[which].column;
	sqlite3_stmt *st = NULL;
	char text[300];

	snprintf(text, sizeof(text),
	    "UPDATE %s SET %s = ?1 WHERE %s IN (SELECT %s FROM %s "
	    "LIMIT 1 OFFSET %d)",
	    t, c, c, c, t, data[1] % 24);
	hold(sqlite3_prepare_v2(d, text, -1, &st, NULL) == SQLITE_OK,
	    sqlite3_errmsg(d));
	bind_value(st, data[2], data[3]);
	sqlite3_step(st);
	sqlite3_finalize(st);
}

static void spoil_cells(const uint8_t *data, size_t size)
{
	sqlite3 *d;

	put_file(path, good, good_length);
	hold(
	    sqlite3_open_v2(path, &d, SQLITE_OPEN_READWRITE, NULL) == SQLITE_OK,
	    "the copy does not open");
	sqlite3_exec(d, "PRAGMA synchronous = OFF; BEGIN", NULL, NULL, NULL);
	for (size_t i = 0; i + CELL <= size && i < CELL * CELLS_MAX; i += CELL)
		spoil_cell(d, data + i);
	sqlite3_exec(d, "COMMIT", NULL, NULL, NULL);
	sqlite3_close(d);
}

/* Lines of the bytes, each with its checksum behind it. */
static void spoil_spool(const uint8_t *data, size_t size)
{
	char name[PATH_ROOM + 16];
	const char *bytes = (const char *)data;
	FILE *to;

	put_file(path, good, good_length);
	snprintf(name, sizeof(name), "%s.spool", path);
	to = fopen(name, "w");
	hold(to != NULL, "no spool");
	while (size > 0) {
		const char *stop = memchr(bytes, '\n', size);
		size_t length = stop ? (size_t)(stop - bytes) : size;

		fwrite(bytes, 1, length, to);
		fprintf(to, "\t%016" PRIx64 "\n",
		    fingerprint_add(FINGERPRINT_START, bytes, length));
		length += stop != NULL;
		bytes += length;
		size -= length;
	}
	fclose(to);
}

static void no_escape(const char *said)
{
	hold(strpbrk(said, "\033\a\b\r") == NULL, "a control character");
}

static void must_say(const struct fault *f)
{
	char said[600];

	fault_text(f, said, sizeof(said));
	hold(said[0] != '\0', "nothing is said");
	no_escape(said);
}

/* What is made of a history, whatever it holds. */
static void use(const struct history *h)
{
	static struct plan plan;
	static struct student student;
	static struct student_state state;
	struct plan_wish w = {
		.routine = routine,
		.history = h,
		.now = moment_on(TODAY, 0),
		.marking = MARKING_TURN,
	};
	char said[600];

	plan_make(&plan, &w);
	hold(plan.length_ms <= plan.cap_ms, "longer than the cap");
	for (int i = 0; i < plan.reasons; i++) {
		message_text(&plan.reason[i].message, said, sizeof(said));
		no_escape(said);
	}
	student_of(&student, routine, h, TODAY);
	student_look(&state, &student, TODAY);
}

static void read_history(void)
{
	struct history h;
	struct fault f = { 0 };
	struct journal *j = journal_look(path, &f);

	if (j == NULL) {
		must_say(&f);
		return;
	}
	if (journal_history(j, &h, TODAY, routine, &f))
		use(&h);
	else
		must_say(&f);
	history_done(&h);
	journal_close(j);
}

/* Whether there is anything that evenhand would give. */
static bool given(const struct record *r)
{
	return r->sittings > 0 || r->notes > 0;
}

/* What is given away must be what others take. */
static void take_record(void)
{
	static char bytes[RECORD_ROOM];
	struct text t = text_in(bytes, sizeof(bytes));
	struct record_left left;
	struct faults faults = { 0 };
	struct record r, again;
	struct fault f = { 0 };
	char said[600] = "";

	if (!record_take(path, -1, &r, &left, &f)) {
		must_say(&f);
	} else if (given(&r)) {
		r.given = moment_on(TODAY, 0);
		record_write(&t, &r);
		hold(!t.cut, "a record longer than its room");
		if (!record_parse(path, bytes, t.length, &again, &faults)) {
			fault_text(&faults.at[0], said, sizeof(said));
			hold(false, said);
		}
		record_done(&again);
	}
	record_done(&r);
}

static void tell_json(void)
{
	struct fault f = { 0 };
	int null = open("/dev/null", O_WRONLY);

	if (!journal_dump_json(path, INT32_MIN, INT32_MAX, null, &f))
		must_say(&f);
	close(null);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	if (x == NULL)
		begin_all();
	if (size < 1)
		return 0;
	remove_all();
	if (data[0] % 3 == 0)
		spoil_bytes(data + 1, size - 1);
	else if (data[0] % 3 == 1)
		spoil_cells(data + 1, size - 1);
	else
		spoil_spool(data + 1, size - 1);
	read_history();
	take_record();
	tell_json();
	return 0;
}
