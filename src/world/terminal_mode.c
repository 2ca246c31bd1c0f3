/*
 * terminal_mode.c - how the terminal takes keys, and giving it back
 *
 *	INT TERM         a note for the main loop; the second one ends at once
 *	HUP              a note, however often it comes: a terminal that is
 *	                 closed may send several, and rows are still to be kept
 *	TSTP             give back, stop, and when continued take again
 *	CONT             take again (a shell sets its own mode meanwhile)
 *	WINCH            a note: the window has another size
 *	SEGV ABRT ...    give back and die of it
 *
 * With a full screen up, giving back also writes the bytes that were prepared
 * for it, and taking again those that begin it.
 *
 * Handlers do nothing but tcsetattr, poll, write and raise, which POSIX allows
 * in them.  Signals that were ignored from outside (nohup) stay ignored.
 */
#include "terminal_mode.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <string.h>
#include <termios.h>
#include <unistd.h>

enum { STACK_BYTES = 32 * 1024, SCREEN_BYTES = 256 };

/* Bytes to be written whole by a handler. */
struct bytes {
	char at[SCREEN_BYTES];
	volatile sig_atomic_t count;
};

/* Handlers have no other way to reach these than as globals. */
static struct {
	int descriptor; /* of the terminal, -1 none */
	struct termios found, keys;
	volatile sig_atomic_t mode;  /* enum terminal_mode that is wished */
	volatile sig_atomic_t stop;  /* the signal that asked to stop first */
	volatile sig_atomic_t asked; /* INT or TERM came */
	volatile sig_atomic_t disturbed;
	struct bytes enter, leave; /* of the full screen, if one is up */
	int wake[2];
} terminal = { .descriptor = -1, .wake = { -1, -1 } };

/* A broken stack must not keep the handler from giving the terminal back. */
static char handler_stack[STACK_BYTES];

static const int stop_signals[] = { SIGINT, SIGTERM, SIGHUP };
static const int fatal_signals[] = { SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT,
	SIGQUIT };

enum {
	STOP_SIGNALS = sizeof stop_signals / sizeof *stop_signals,
	FATAL_SIGNALS = sizeof fatal_signals / sizeof *fatal_signals,
};

static void put(const struct bytes *b)
{
	struct pollfd p = { .fd = STDOUT_FILENO, .events = POLLOUT };

	/* A handler that waits for a terminal at rest could not be ended. */
	if (b->count == 0 || poll(&p, 1, 0) != 1)
		return;
	/* A terminal that is gone needs nothing more. */
	if (write(STDOUT_FILENO, b->at, (size_t)b->count) < 0)
		return;
}

static void apply(enum terminal_mode mode)
{
	const struct termios *how = &terminal.found;
	pid_t front;

	if (terminal.descriptor < 0)
		return;
	/* In the background it is the shell's, not ours. */
	front = tcgetpgrp(terminal.descriptor);
	if (front >= 0 && front != getpgrp())
		return;
	if (mode == TERMINAL_KEYS)
		how = &terminal.keys;
	put(mode == TERMINAL_KEYS ? &terminal.enter : &terminal.leave);
	tcsetattr(terminal.descriptor, TCSANOW, how);
}

static void note(void)
{
	/* A full pipe is a note already. */
	if (write(terminal.wake[1], "", 1) < 0)
		return;
}

static void on_fatal(int number)
{
	apply(TERMINAL_GIVEN_BACK);
	signal(number, SIG_DFL);
	raise(number);
}

static void on_stop(int number)
{
	int kept = errno;

	if (number != SIGHUP) {
		if (terminal.asked)
			on_fatal(number);
		terminal.asked = true;
	}
	if (!terminal.stop)
		terminal.stop = number;
	note();
	errno = kept;
}

static void on_size(int number)
{
	int kept = errno;

	(void)number;
	terminal.disturbed = true;
	note();
	errno = kept;
}

static void on_continue(int number)
{
	int kept = errno;

	(void)number;
	terminal.disturbed = true;
	apply((enum terminal_mode)terminal.mode);
	note();
	errno = kept;
}

static void on_suspend(int number);

static void install(int number, void (*handler)(int), int flags)
{
	struct sigaction a = { .sa_handler = handler,
		.sa_flags = flags | SA_ONSTACK };

	sigemptyset(&a.sa_mask);
	sigaction(number, &a, NULL);
}

static void on_suspend(int number)
{
	int kept = errno;
	sigset_t just, before;

	apply(TERMINAL_GIVEN_BACK);
	signal(number, SIG_DFL);
	sigemptyset(&just);
	sigaddset(&just, number);
	raise(number);
	/* It waits while its own handler runs: here it stops the program. */
	pthread_sigmask(SIG_UNBLOCK, &just, &before);
	pthread_sigmask(SIG_SETMASK, &before, NULL);
	install(number, on_suspend, SA_RESTART);
	on_continue(number);
	errno = kept;
}

static bool ignored(int number)
{
	struct sigaction a;

	return sigaction(number, NULL, &a) == 0 && a.sa_handler == SIG_IGN;
}

static void install_all(void)
{
	stack_t stack = { .ss_sp = handler_stack,
		.ss_size = sizeof handler_stack };

	sigaltstack(&stack, NULL);
	for (int i = 0; i < STOP_SIGNALS; i++)
		if (!ignored(stop_signals[i]))
			install(stop_signals[i], on_stop, 0);
	for (int i = 0; i < FATAL_SIGNALS; i++)
		if (!ignored(fatal_signals[i]))
			install(fatal_signals[i], on_fatal, 0);
	if (!ignored(SIGTSTP))
		install(SIGTSTP, on_suspend, SA_RESTART);
	install(SIGCONT, on_continue, SA_RESTART);
	install(SIGWINCH, on_size, SA_RESTART);
}

static void wake_open(void)
{
	if (pipe(terminal.wake) != 0) {
		terminal.wake[0] = terminal.wake[1] = -1;
		return;
	}
	for (int i = 0; i < 2; i++) {
		fcntl(terminal.wake[i], F_SETFL, O_NONBLOCK);
		fcntl(terminal.wake[i], F_SETFD, FD_CLOEXEC);
	}
}

/* The modes of single keys, made from those there are. */
static struct termios fit_for_keys(struct termios t)
{
	t.c_lflag &= ~(tcflag_t)(ICANON | ECHO | IEXTEN);
	t.c_lflag |= ISIG;
	t.c_iflag |= ICRNL;
	/* Ctrl-S would hold what is written, and the session with it. */
	t.c_iflag &= ~(tcflag_t)IXON;
	t.c_cc[VMIN] = 1;
	t.c_cc[VTIME] = 0;
	return t;
}

void terminal_take(int descriptor)
{
	terminal.mode = TERMINAL_GIVEN_BACK;
	terminal.stop = terminal.asked = 0;
	terminal.enter.count = terminal.leave.count = 0;
	wake_open();
	if (descriptor >= 0 && tcgetattr(descriptor, &terminal.found) == 0) {
		terminal.descriptor = descriptor;
		terminal.keys = fit_for_keys(terminal.found);
	}
	install_all();
	terminal_mode(TERMINAL_KEYS);
}

void terminal_mode(enum terminal_mode mode)
{
	terminal.mode = (sig_atomic_t)mode;
	apply(mode);
}

/* In an order that leaves no handler with half of them. */
static void prepare(struct bytes *b, const char *s)
{
	size_t length = s ? strnlen(s, SCREEN_BYTES) : 0;

	b->count = 0;
	/* Half a sequence would be worse than none. */
	if (length == SCREEN_BYTES)
		return;
	memcpy(b->at, s ? s : "", length);
	b->count = (sig_atomic_t)length;
}

void terminal_screen(const char *enter, const char *leave)
{
	struct termios now;

	prepare(&terminal.enter, NULL);
	prepare(&terminal.leave, enter ? leave : NULL);
	if (!enter || terminal.descriptor < 0 ||
	    tcgetattr(terminal.descriptor, &now) != 0)
		return;
	terminal.keys = fit_for_keys(now);
	/* It is entered already, so that is not written a second time. */
	terminal_mode(TERMINAL_KEYS);
	prepare(&terminal.enter, enter);
}

bool terminal_disturbed(void)
{
	/* A signal in between must not be taken for an old one. */
	if (!terminal.disturbed)
		return false;
	terminal.disturbed = false;
	return true;
}

int terminal_wake(void)
{
	return terminal.wake[0];
}

void terminal_woken(void)
{
	char bytes[16];

	while (read(terminal.wake[0], bytes, sizeof bytes) > 0)
		;
}

int terminal_signal(void)
{
	return terminal.stop;
}

void terminal_leave(void)
{
	terminal_mode(TERMINAL_GIVEN_BACK);
	if (terminal.stop)
		signal(SIGHUP, SIG_IGN); /* the program is ending */
	for (int i = 0; i < STOP_SIGNALS; i++)
		if (!ignored(stop_signals[i]))
			signal(stop_signals[i], SIG_DFL);
	for (int i = 0; i < FATAL_SIGNALS; i++)
		if (!ignored(fatal_signals[i]))
			signal(fatal_signals[i], SIG_DFL);
	if (!ignored(SIGTSTP))
		signal(SIGTSTP, SIG_DFL);
	signal(SIGCONT, SIG_DFL);
	signal(SIGWINCH, SIG_DFL);
	terminal.descriptor = -1;
	for (int i = 0; i < 2; i++)
		if (terminal.wake[i] >= 0)
			close(terminal.wake[i]);
	terminal.wake[0] = terminal.wake[1] = -1;
}
