/*
 * test_keys.c - bytes of terminals as keys, words, and the terminal given back
 *
 * The byte sequences are those of ECMA-48 and of the xterm control sequences
 * document (PC-style function keys): CSI A..D and SS3 A..D for arrows, CSI 5 ~
 * and CSI 6 ~ for Page Up and Page Down; from memory.
 */

#include <fcntl.h>
#include <poll.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

#include "../../src/world/key_bytes.h"
#include "evenhand/world/keys.h"
#include "seat.h"

/* Keys of a pipe that holds these bytes and is closed behind them. */
static struct keys *keys_of(const char *bytes, size_t length)
{
	int ends[2];
	struct keys *k;

	assert_int_equal(pipe(ends), 0);
	assert_int_equal(write(ends[1], bytes, length), length);
	close(ends[1]);
	k = keys_open(ends[0]);
	assert_non_null(k);
	return k;
}

static enum keys_got next(struct keys *k, enum key *key, int *digit)
{
	const char *words;

	return keys_next(k, 1000, key, digit, &words);
}

static void one(const char *bytes, enum key expected)
{
	enum key key;
	int digit;
	struct keys *k = keys_of(bytes, strlen(bytes));

	if (next(k, &key, &digit) != KEYS_PRESS || key != expected)
		fail_msg("\"%s\" is not key %d", bytes + (*bytes == 27),
		    (int)expected);
	if (next(k, &key, &digit) != KEYS_END)
		fail_msg("\"%s\" left something", bytes + (*bytes == 27));
	keys_close(k);
}

static void test_each_key(void **state)
{
	static const struct {
		const char *bytes;
		enum key key;
	} cases[] = {
		{ "\033[6~", KEY_FORWARD },
		{ "\033[C", KEY_FORWARD },
		{ "\033[B", KEY_FORWARD },
		{ "\033OC", KEY_FORWARD },
		{ "\033OB", KEY_FORWARD },
		{ "\033OM", KEY_FORWARD },
		{ "\r", KEY_FORWARD },
		{ "\n", KEY_FORWARD },
		{ "\033[5~", KEY_BACK },
		{ "\033[D", KEY_BACK },
		{ "\033[A", KEY_BACK },
		{ "\033OD", KEY_BACK },
		{ "\033OA", KEY_BACK },
		{ "\177", KEY_BACK },
		{ "\b", KEY_BACK },
		{ " ", KEY_SILENCE },
		{ "c", KEY_CLEAN },
		{ "C", KEY_CLEAN },
		{ "s", KEY_SHAKY },
		{ "h", KEY_HURT },
		{ "q", KEY_LEAVE },
		{ "?", KEY_HELP },
		{ "x", KEY_OTHER },
		{ "\303\251", KEY_OTHER },     /* one letter, one key */
		{ "\342\231\257", KEY_OTHER }, /* a sharp sign */
		{ "\033[1;5C", KEY_FORWARD },  /* with Ctrl held */
		{ "\033[6;2~", KEY_FORWARD },
		{ "\033[15~", KEY_OTHER }, /* F5 is not Page Up */
		{ "\033[65~", KEY_OTHER },
		{ "\033[3~", KEY_OTHER },
		{ "\033[[A", KEY_OTHER }, /* F1 of a Linux console */
		{ "\033c", KEY_OTHER },	  /* Alt-c is not clean */
		{ "\033h", KEY_OTHER },
		{ "\033", KEY_ESCAPE },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		one(cases[i].bytes, cases[i].key);
}

static void test_digits(void **state)
{
	struct keys *k = keys_of("0123456789", 10);
	enum key key;
	int digit;

	(void)state;
	for (int i = 0; i < 10; i++) {
		assert_int_equal(next(k, &key, &digit), KEYS_PRESS);
		assert_int_equal(key, KEY_DIGIT);
		assert_int_equal(digit, i);
	}
	assert_int_equal(next(k, &key, &digit), KEYS_END);
	keys_close(k);
}

/* Keys that come in one piece are told apart. */
static void test_many_at_once(void **state)
{
	static const enum key expected[] = { KEY_CLEAN, KEY_FORWARD, KEY_BACK,
		KEY_ESCAPE, KEY_FORWARD, KEY_HURT };
	static const char bytes[] = "c\033[6~\033[D\033\033[Bh";
	struct keys *k = keys_of(bytes, sizeof bytes - 1);
	enum key key;
	int digit;

	(void)state;
	for (size_t i = 0; i < sizeof expected / sizeof *expected; i++) {
		assert_int_equal(next(k, &key, &digit), KEYS_PRESS);
		assert_int_equal(key, expected[i]);
	}
	assert_int_equal(next(k, &key, &digit), KEYS_END);
	keys_close(k);
}

/* Any bytes end, and give no more keys than bytes. */
static void test_any_bytes(void **state)
{
	unsigned seed = 20261125;
	char bytes[600];

	(void)state;
	printf("seed %u\n", seed);
	srand(seed);
	for (int round = 0; round < 200; round++) {
		enum key key;
		int digit, presses = 0;
		size_t length = (size_t)rand() % sizeof bytes;

		for (size_t i = 0; i < length; i++)
			bytes[i] = (char)(rand() % 3 ? "\033[O;1~A6"[rand() % 8]
						     : rand() % 256);
		struct keys *k = keys_of(bytes, length);
		while (next(k, &key, &digit) == KEYS_PRESS)
			presses++;
		assert_true(presses <= (int)length);
		keys_close(k);
	}
}

/* A key cut in two by the line is one key; Escape alone is told in time. */
static void test_split_sequence(void **state)
{
	int ends[2], digit;
	enum key key;
	const char *words;

	(void)state;
	assert_int_equal(pipe(ends), 0);
	struct keys *k = keys_open(ends[0]);
	assert_int_equal(write(ends[1], "\033[", 2), 2);
	assert_int_equal(keys_next(k, 5, &key, &digit, &words), KEYS_NONE);
	assert_int_equal(write(ends[1], "6~", 2), 2);
	assert_int_equal(next(k, &key, &digit), KEYS_PRESS);
	assert_int_equal(key, KEY_FORWARD);
	assert_int_equal(write(ends[1], "\033", 1), 1);
	assert_int_equal(next(k, &key, &digit), KEYS_PRESS);
	assert_int_equal(key, KEY_ESCAPE);
	close(ends[1]);
	assert_int_equal(next(k, &key, &digit), KEYS_END);
	assert_int_equal(next(k, &key, &digit), KEYS_END);
	keys_close(k);
}

/* A sequence without an end is cut and cannot eat the keys behind it. */
static void test_too_long_sequence(void **state)
{
	char bytes[2 * KEY_BYTES_MAX];
	enum key key;
	int digit;

	(void)state;
	memset(bytes, '7', sizeof bytes);
	memcpy(bytes, "\033[", 2);
	/* An end behind the longest is no end of it. */
	bytes[KEY_BYTES_MAX] = 'C';
	/* More may come, until it is as long as any may be. */
	for (size_t n = 1; n < KEY_BYTES_MAX; n++) {
		assert_int_equal(key_decode(bytes, n, false, &key, &digit), 0);
		assert_int_equal(key_decode(bytes, n, true, &key, &digit), n);
		assert_int_equal(key, n == 1 ? KEY_ESCAPE : KEY_OTHER);
	}
	for (size_t n = KEY_BYTES_MAX; n <= sizeof bytes; n++) {
		assert_int_equal(
		    key_decode(bytes, n, false, &key, &digit), KEY_BYTES_MAX);
		assert_int_equal(key, KEY_OTHER);
	}
	/* Its end in the last place is still its end. */
	bytes[KEY_BYTES_MAX - 1] = 'C';
	assert_int_equal(key_decode(bytes, sizeof bytes, false, &key, &digit),
	    KEY_BYTES_MAX);
	assert_int_equal(key, KEY_FORWARD);
	bytes[KEY_BYTES_MAX] = '7';
	assert_int_equal(key_decode(bytes + KEY_BYTES_MAX, KEY_BYTES_MAX, false,
			     &key, &digit),
	    1);
	assert_int_equal(key, KEY_DIGIT);
	assert_int_equal(digit, 7);
}

static void test_words_of_a_pipe(void **state)
{
	static const char bytes[] = "Is it so?\nc\nhalf a \033[31mline";
	struct keys *k = keys_of(bytes, sizeof bytes - 1);
	const char *words;
	enum key key;
	int digit;

	(void)state;
	keys_want_words(k, true);
	assert_int_equal(keys_next(k, 1000, &key, &digit, &words), KEYS_WORDS);
	assert_string_equal(words, "Is it so?");
	keys_want_words(k, false);
	assert_int_equal(keys_next(k, 1000, &key, &digit, &words), KEYS_PRESS);
	assert_int_equal(key, KEY_CLEAN);
	assert_int_equal(keys_next(k, 1000, &key, &digit, &words), KEYS_PRESS);
	keys_want_words(k, true);
	assert_int_equal(keys_next(k, 1000, &key, &digit, &words), KEYS_WORDS);
	assert_string_equal(words, "half a ?[31mline");
	assert_int_equal(keys_next(k, 1000, &key, &digit, &words), KEYS_END);
	keys_close(k);
}

static void test_long_words(void **state)
{
	char bytes[3000];
	const char *words;
	enum key key;
	int digit;

	(void)state;
	memset(bytes, 'w', sizeof bytes);
	bytes[sizeof bytes - 2] = '\n';
	bytes[sizeof bytes - 1] = 'h';
	struct keys *k = keys_of(bytes, sizeof bytes);
	keys_want_words(k, true);
	assert_int_equal(keys_next(k, 1000, &key, &digit, &words), KEYS_WORDS);
	assert_int_equal(strlen(words), SESSION_WORDS_MAX - 1);
	keys_want_words(k, false);
	assert_int_equal(keys_next(k, 1000, &key, &digit, &words), KEYS_PRESS);
	assert_int_equal(key, KEY_HURT);
	keys_close(k);
}

static void test_no_input(void **state)
{
	enum key key;
	int digit;

	(void)state;
	struct keys *k = keys_open(open("/dev/null", O_RDONLY));
	assert_int_equal(next(k, &key, &digit), KEYS_END);
	keys_close(k);
	/* The wrong way round: a program started with its input closed. */
	k = keys_open(open("/dev/null", O_WRONLY));
	assert_int_equal(next(k, &key, &digit), KEYS_END);
	keys_close(k);
}

static void wait_for_end(struct keys *k)
{
	enum key key;
	int digit;

	while (next(k, &key, &digit) != KEYS_END)
		;
	keys_close(k);
}

static void break_down(struct keys *k)
{
	enum key key;
	int digit;

	next(k, &key, &digit);
	abort();
}

static void test_terminal_given_back(void **state)
{
	static const int signals[] = { SIGINT, SIGTERM, SIGHUP };
	struct seat s;
	int status;

	(void)state;
	for (int i = 0; i < 3; i++) {
		seat_open(&s, wait_for_end);
		assert_false(seat_now(&s).c_lflag & (ICANON | ECHO));
		assert_true(seat_now(&s).c_lflag & ISIG);
		kill(s.child, signals[i]);
		waitpid(s.child, &status, 0);
		assert_true(WIFEXITED(status) && WEXITSTATUS(status) == 0);
		seat_given_back(&s);
		close(s.master);
	}
}

/* Has still something to do when it was told to end, and after. */
static void end_slowly(struct keys *k)
{
	enum key key;
	int digit;

	while (next(k, &key, &digit) != KEYS_END)
		;
	sleep_ms(200);
	sleep_ms(200); /* a signal cuts a sleep short */
	keys_close(k);
	sleep_ms(200);
}

/* How a program ends that is sent these signals, 60 ms apart. */
static int after_signals(const int *numbers, int count)
{
	struct seat s;
	int status;

	seat_open(&s, end_slowly);
	for (int i = 0; i < count; i++) {
		kill(s.child, numbers[i]);
		sleep_ms(60);
	}
	assert_int_equal(waitpid(s.child, &status, 0), s.child);
	seat_given_back(&s);
	close(s.master);
	return status;
}

/*
 * Whether they end it at once.  Two of a kind are one where a very busy computer
 * let the program see neither yet; it may try again.
 */
static bool at_once(const int *numbers, int count)
{
	int status = 0;

	for (int i = 0; i < 4 && !WIFSIGNALED(status); i++)
		status = after_signals(numbers, count);
	return WIFSIGNALED(status) && WTERMSIG(status) == SIGTERM;
}

/* Only who asks twice is served at once; a hang-up never cuts anything. */
static void test_asked_twice(void **state)
{
	static const int hangups[] = { SIGHUP, SIGHUP, SIGHUP, SIGHUP, SIGHUP,
		SIGHUP, SIGHUP, SIGHUP };
	static const int gone[] = { SIGHUP, SIGTERM, SIGHUP };
	static const int twice[] = { SIGTERM, SIGTERM };
	static const int either[] = { SIGHUP, SIGINT, SIGTERM };
	int status;

	(void)state;
	status = after_signals(hangups, 8);
	assert_true(WIFEXITED(status) && WEXITSTATUS(status) == 0);
	status = after_signals(gone, 3);
	assert_true(WIFEXITED(status) && WEXITSTATUS(status) == 0);
	assert_true(at_once(twice, 2));
	assert_true(at_once(either, 3));
}

/* Says into its terminal that it heard a key. */
static void say_heard(struct keys *k)
{
	int terminal = open("/dev/tty", O_WRONLY);
	enum key key;
	int digit;

	while (next(k, &key, &digit) == KEYS_PRESS)
		if (key == KEY_CLEAN)
			break;
	if (write(terminal, "heard", 5) != 5)
		_exit(1);
	keys_close(k);
}

/* Ctrl-S, which holds what a program writes, is a key like another. */
static void test_not_held(void **state)
{
	struct seat s;
	int status;

	(void)state;
	seat_open(&s, say_heard);
	assert_true(s.found.c_iflag & IXON);
	assert_int_equal(write(s.master, "\023c", 2), 2);
	struct pollfd p = { .fd = s.master, .events = POLLIN };
	int heard = poll(&p, 1, 30000);
	if (heard != 1)
		kill(s.child, SIGKILL);
	assert_int_equal(waitpid(s.child, &status, 0), s.child);
	assert_int_equal(heard, 1);
	assert_int_equal(status, 0);
	seat_given_back(&s);
	close(s.master);
}

static void test_broken_gives_back(void **state)
{
	static const int signals[] = { SIGSEGV, SIGFPE, SIGQUIT, SIGABRT };
	struct seat s;
	int status;

	(void)state;
	for (int i = 0; i < 4; i++) {
		seat_open(&s, break_down);
		if (signals[i] == SIGABRT)
			assert_int_equal(write(s.master, "c", 1), 1);
		else
			kill(s.child, signals[i]);
		waitpid(s.child, &status, 0);
		assert_true(WIFSIGNALED(status));
		assert_int_equal(WTERMSIG(status), signals[i]);
		seat_given_back(&s);
		close(s.master);
	}
}

/* Suspended, the terminal is the shell's; continued, it is ours again. */
static void test_suspend(void **state)
{
	struct seat s;
	int status;

	(void)state;
	seat_open(&s, wait_for_end);
	kill(s.child, SIGTSTP);
	/* Its group has no parent in the session, so it may not stop: then it
	 * must have taken the terminal again. */
	sleep_ms(100);
	if (waitpid(s.child, &status, WUNTRACED | WNOHANG) == s.child) {
		assert_true(WIFSTOPPED(status));
		seat_given_back(&s);
		kill(s.child, SIGCONT);
		sleep_ms(100);
	}
	for (int i = 0;
	     i < 300 && (seat_now(&s).c_lflag & (ICANON | ECHO)) != 0; i++)
		sleep_ms(100);
	assert_false(seat_now(&s).c_lflag & (ICANON | ECHO));
	kill(s.child, SIGTERM);
	waitpid(s.child, &status, 0);
	seat_given_back(&s);
	close(s.master);
}

/* Writes its words into the terminal as they come. */
static void one_line(struct keys *k)
{
	enum key key = KEY_OTHER;
	int digit;
	const char *words = "";
	char said[300];

	keys_want_words(k, true);
	enum keys_got got = keys_next(k, 5000, &key, &digit, &words);
	int n = snprintf(said, sizeof said, "<%d %d %s>", (int)got,
	    got == KEYS_PRESS ? (int)key : -1, got == KEYS_WORDS ? words : "");
	keys_close(k);
	_exit(write(1, said, (size_t)n) == n ? 0 : 1);
}

static void typed(const char *bytes, const char *expected)
{
	struct seat s;
	int ends[2], status;
	char said[300] = "", wish[300];
	int kept = dup(1);

	assert_int_equal(pipe(ends), 0);
	dup2(ends[1], 1);
	seat_open(&s, one_line);
	dup2(kept, 1);
	close(kept);
	close(ends[1]);
	assert_int_equal(write(s.master, bytes, strlen(bytes)), strlen(bytes));
	assert_true(read(ends[0], said, sizeof said - 1) > 0);
	waitpid(s.child, &status, 0);
	snprintf(wish, sizeof wish, "<%s>", expected);
	assert_string_equal(said, wish);
	close(ends[0]);
	close(s.master);
}

static void test_words_typed(void **state)
{
	char words[64];

	(void)state;
	snprintf(words, sizeof words, "%d -1 Is it so?", (int)KEYS_WORDS);
	typed("Is it so?\r", words);
	typed("Is ut\177\177it so?\r", words);
	typed("gone\025Is it so?\r", words);
	typed("Is it so?\033[6~", words);
	typed("Is it \303\251\177so?\r", words);
	typed("Is it\033[D so?\r", words);
	typed("\033xIs it so?\r", words);
	snprintf(words, sizeof words, "%d -1 ", (int)KEYS_WORDS);
	typed("\r", words);
	snprintf(
	    words, sizeof words, "%d %d ", (int)KEYS_PRESS, (int)KEY_FORWARD);
	typed("\033[6~", words);
	snprintf(words, sizeof words, "%d -1 ", (int)KEYS_END);
	typed("\004", words);
}

/* What is too much is not taken, so rubbing out takes what is seen. */
static void test_much_typed(void **state)
{
	char bytes[SESSION_WORDS_MAX + 8], words[SESSION_WORDS_MAX + 16];
	size_t n = SESSION_WORDS_MAX - 1;

	(void)state;
	memset(bytes, 'x', n);
	memcpy(bytes + n, "yz\177\r", 5);
	n = (size_t)snprintf(words, sizeof words, "%d -1 ", (int)KEYS_WORDS);
	memset(words + n, 'x', SESSION_WORDS_MAX - 2);
	words[n + SESSION_WORDS_MAX - 2] = '\0';
	typed(bytes, words);
}

static void unseen_line(struct keys *k)
{
	keys_echo(k, false);
	one_line(k);
}

/* Where a page shows the words, the terminal is not written to. */
static void test_no_echo(void **state)
{
	struct seat s;
	char came[64];
	int status;

	(void)state;
	seat_open(&s, unseen_line);
	fcntl(s.master, F_SETFL, O_NONBLOCK);
	assert_int_equal(write(s.master, "Is it?\177\r", 8), 8);
	waitpid(s.child, &status, 0);
	assert_int_equal(status, 0);
	assert_true(read(s.master, came, sizeof came) <= 0);
	close(s.master);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_each_key),
		cmocka_unit_test(test_digits),
		cmocka_unit_test(test_many_at_once),
		cmocka_unit_test(test_any_bytes),
		cmocka_unit_test(test_split_sequence),
		cmocka_unit_test(test_too_long_sequence),
		cmocka_unit_test(test_words_of_a_pipe),
		cmocka_unit_test(test_long_words),
		cmocka_unit_test(test_no_input),
		cmocka_unit_test(test_terminal_given_back),
		cmocka_unit_test(test_asked_twice),
		cmocka_unit_test(test_not_held),
		cmocka_unit_test(test_broken_gives_back),
		cmocka_unit_test(test_suspend),
		cmocka_unit_test(test_words_typed),
		cmocka_unit_test(test_much_typed),
		cmocka_unit_test(test_no_echo),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
