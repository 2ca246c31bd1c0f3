/*
 * test_threads.c - signals are the main thread's; a fault in any thread gives
 * the terminal back
 */
#ifndef _DEFAULT_SOURCE
#define _DEFAULT_SOURCE /* mappings of no file */
#endif

#include <pthread.h>
#include <signal.h>
#include <sys/mman.h>

#include "journal_fixture.h"
#include "seat.h"

#include "../../src/world/thread_signals.h"
#include "evenhand/world/device.h"

static struct fixture *here; /* for the child, which is given only its keys */

/* The memory that WAL shares is cut under the journal's thread. */
static void fault_in_journal(struct keys *k)
{
	struct turn_row t = turn_of(0, BLOCK_WORK, TONE, 0, 6);
	struct fault f;
	struct journal *j = journal_open(here->path, &f);
	char shared[200];

	(void)k;
	begin(here, j, DAY_ONE);
	journal_flush(j);
	snprintf(shared, sizeof(shared), "%s-shm", here->path);
	if (truncate(shared, 0) == 0)
		put_turn(here, j, &t);
	journal_flush(j);
}

static void *touch(void *nothing)
{
	sigset_t before;
	volatile char *page = nothing;

	thread_signals_hold(&before);
	*page = 1;
	return NULL;
}

/* A thread that holds its signals, as all of ours do, touches nothing. */
static void fault_in_thread(struct keys *k)
{
	void *page = mmap(
	    NULL, 1, PROT_NONE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
	pthread_t thread;

	(void)k;
	if (page == MAP_FAILED)
		return;
	if (pthread_create(&thread, NULL, touch, page) == 0)
		sleep_ms(2000);
}

static void breaks(sitting *part, int number)
{
	struct seat s;
	int status;

	seat_open(&s, part);
	assert_int_equal(waitpid(s.child, &status, 0), s.child);
	assert_true(WIFSIGNALED(status));
	assert_int_equal(WTERMSIG(status), number);
	seat_given_back(&s);
	close(s.master);
}

static void test_fault_in_journal(void **state)
{
	here = *state;
	breaks(fault_in_journal, SIGBUS);
}

static void test_fault_in_thread(void **state)
{
	here = *state;
	breaks(fault_in_thread, SIGSEGV);
}

static volatile sig_atomic_t heard;

static void hear(int number)
{
	heard = number;
}

/* Blocked in the main thread, a signal waits: no other thread takes it. */
static void no_thread_takes(int number)
{
	struct sigaction a = { .sa_handler = hear }, before;
	sigset_t just, mask;

	heard = 0;
	sigemptyset(&a.sa_mask);
	sigaction(number, &a, &before);
	sigemptyset(&just);
	sigaddset(&just, number);
	pthread_sigmask(SIG_BLOCK, &just, &mask);
	kill(getpid(), number);
	sleep_ms(50);
	assert_int_equal(heard, 0);
	pthread_sigmask(SIG_SETMASK, &mask, NULL);
	assert_int_equal(heard, number);
	sigaction(number, &before, NULL);
}

static void test_signals_are_mains(void **state)
{
	struct fixture *x = *state;
	struct fault f;
	struct device *d = device_null_open(48000, true, &f);
	struct journal *j = open_good(x);

	assert_non_null(d);
	no_thread_takes(SIGTERM);
	no_thread_takes(SIGINT);
	no_thread_takes(SIGTSTP);
	no_thread_takes(SIGQUIT);
	journal_close(j);
	device_close(d);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_fault_in_journal),
		T(test_fault_in_thread),
		T(test_signals_are_mains),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
