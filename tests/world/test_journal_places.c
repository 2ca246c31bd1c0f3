/*
 * test_journal_places.c - where rows wait when there is no place beside the
 * journal, and that they are found again whatever the environment is
 */
#include "ordinary.h"

#include "../../src/world/journal_spool.h"

/* The places of a spool, in the order they are tried. */
enum { BESIDE, STATE, STATE_OF_HOME, LAST_RESORT };

static void make_unwritable(struct fixture *x)
{
	journal_close(open_any(x));
	make_closed(x, 0500, 0);
}

/* Notes where it hurts; what is told, and the sentence of it. */
static void hurt(struct fixture *x, const char *folder)
{
	struct note_row pain = { .kind = NOTE_PAIN };
	struct journal *j = open_any(x);
	struct message m;
	char sentence[600];

	CHECK(trouble_of(j) == M_WORLD_JOURNAL_READ_ONLY);
	journal_note(j, &pain, moment_on(DAY_ONE, 0));
	journal_flush(j);
	CHECK(journal_trouble(j, &m));
	CHECK(m.id == M_WORLD_JOURNAL_ELSEWHERE);
	message_text(&m, sentence, sizeof(sentence));
	CHECK(strstr(sentence, folder) != NULL);
	CHECK(journal_state(j) == JOURNAL_READ_ONLY);
	journal_close(j);
}

static int notes_looked_at(struct fixture *x)
{
	struct history h;
	int notes;

	look(x, DAY_ONE, &h);
	notes = h.notes;
	history_done(&h);
	return notes;
}

static bool rights(const char *path, mode_t mode)
{
	struct stat s;

	return stat(path, &s) == 0 && (s.st_mode & 07777) == mode;
}

/* One note to each place, each seen from each environment. */
static void places_part(struct fixture *x)
{
	char state[100], home[160], folder[200];
	struct spool s;

	snprintf(state, sizeof(state), "%s/state", x->folder);
	snprintf(home, sizeof(home), "%s/.local/state/evenhand", x->folder);
	snprintf(folder, sizeof(folder), "%s/evenhand", state);
	make_unwritable(x);
	CHECK(setenv("TMPDIR", state, 1) == 0);
	hurt(x, home);
	CHECK(rights(home, 0700));
	CHECK(!exists(state, ""));

	CHECK(setenv("XDG_STATE_HOME", state, 1) == 0);
	CHECK(notes_looked_at(x) == 1);
	hurt(x, folder);
	CHECK(rights(folder, 0700));
	spool_init(&s, x->path);
	CHECK(rights(s.path[STATE], 0600));
	CHECK(notes_looked_at(x) == 2);

	CHECK(unsetenv("HOME") == 0);
	CHECK(setenv("XDG_STATE_HOME", "not/whole", 1) == 0);
	hurt(x, "/var/tmp/evenhand-");
	CHECK(!exists("not", ""));
	CHECK(notes_looked_at(x) == 1);
	CHECK(setenv("HOME", x->folder, 1) == 0);
	CHECK(setenv("XDG_STATE_HOME", state, 1) == 0);
	CHECK(notes_looked_at(x) == 3);

	make_closed(x, 0700, 0);
	journal_close(open_any(x));
	CHECK(ask(x->path, "SELECT count(*) FROM notes") == 3);
	for (int i = 0; i < SPOOL_PLACES; i++)
		CHECK(!exists(s.path[i], ""));
}

static void test_places(void **state)
{
	as_ordinary(*state, places_part);
}

/* Both variables lead to one folder: its rows are there once. */
static void same_folder_part(struct fixture *x)
{
	char state[100];

	snprintf(state, sizeof(state), "%s/.local/state", x->folder);
	CHECK(setenv("XDG_STATE_HOME", state, 1) == 0);
	make_unwritable(x);
	hurt(x, state);
	CHECK(notes_looked_at(x) == 1);
	make_closed(x, 0700, 0);
	journal_close(open_any(x));
	CHECK(ask(x->path, "SELECT count(*) FROM notes") == 1);
}

static void test_same_folder(void **state)
{
	as_ordinary(*state, same_folder_part);
}

/* What lies in such a place is not followed to somewhere else. */
static void trap_part(struct fixture *x)
{
	char victim[120];
	struct journal *j;
	struct spool s;
	char *bytes;

	snprintf(victim, sizeof(victim), "%s/victim", x->folder);
	write_bytes(victim, "mine", 4);
	make_unwritable(x);
	hurt(x, "/.local/state/evenhand");
	spool_init(&s, x->path);
	CHECK(unlink(s.path[STATE_OF_HOME]) == 0);
	CHECK(symlink(victim, s.path[STATE_OF_HOME]) == 0);
	CHECK(symlink(victim, s.path[LAST_RESORT]) == 0);
	j = open_any(x);
	CHECK(trouble_of(j) == M_WORLD_JOURNAL_READ_ONLY);
	sit(x, j, DAY_ONE, 1);
	journal_flush(j);
	CHECK(unlink(s.path[LAST_RESORT]) == 0);
	CHECK(trouble_of(j) == M_WORLD_JOURNAL_NOT_KEPT);
	CHECK(bytes_of(victim, &bytes) == 4);
	make_closed(x, 0700, 0);
	journal_close(j);
}

static void test_trap(void **state)
{
	as_ordinary(*state, trap_part);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_places),
		T(test_same_folder),
		T(test_trap),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
