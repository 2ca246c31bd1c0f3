/*
 * keys.c - keys: a terminal or a pipe, one press at a time
 *
 * Bytes are read as they come into a small buffer and leave it as keys or as
 * a line of words.  An escape byte alone is the Escape key only when nothing
 * follows within ESCAPE_MS.
 */
#include "evenhand/world/keys.h"

#include <errno.h>
#include <poll.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "evenhand/base/text.h"
#include "evenhand/world/clock.h"
#include "key_bytes.h"
#include "terminal_mode.h"

enum { BUFFER_BYTES = 256, LINE_BYTES = 1024, ESCAPE_MS = 25 };
enum { CTRL_D = 4, CTRL_U = 21, ESC = 27, DEL = 127 };

struct keys {
	int descriptor; /* -1: none, or nothing more comes */
	bool terminal;
	bool ended;
	bool words;
	bool quiet; /* words being typed are shown by somebody else */
	char buffer[BUFFER_BYTES];
	size_t held;	 /* bytes in the buffer */
	int64_t last_ns; /* when the last byte came */
	int exact;	 /* the last key, as it was */
	bool begun;	 /* of a line of words something is in line[] */
	char line[LINE_BYTES];
	size_t length;
	char said[SESSION_WORDS_MAX];  /* a whole line, as it was given out */
	char shown[SESSION_WORDS_MAX]; /* the line so far, fit to be shown */
};

struct keys *keys_open(int descriptor)
{
	struct keys *k = calloc(1, sizeof *k);

	if (!k)
		return NULL;
	k->descriptor = descriptor;
	k->terminal = descriptor >= 0 && isatty(descriptor);
	terminal_take(k->terminal ? descriptor : -1);
	return k;
}

struct keys *keys_open_deaf(int descriptor)
{
	struct keys *k = keys_open(descriptor);

	if (k)
		k->descriptor = -1;
	return k;
}

void keys_echo(struct keys *k, bool echo)
{
	k->quiet = !echo;
}

const char *keys_typed(struct keys *k)
{
	k->line[k->length] = '\0';
	text_clean(k->shown, sizeof k->shown, k->line);
	return k->shown;
}

void keys_want_words(struct keys *k, bool words)
{
	if (words == k->words)
		return;
	k->words = words;
	k->length = 0;
	k->begun = false;
}

static void drop(struct keys *k, size_t bytes)
{
	k->held -= bytes;
	memmove(k->buffer, k->buffer + bytes, k->held);
}

static int64_t ms_since(int64_t ns)
{
	return (clock_steady_ns() - ns) / 1000000;
}

static enum keys_got take_key(struct keys *k, enum key *key, int *digit)
{
	bool over = k->ended || ms_since(k->last_ns) >= ESCAPE_MS;
	size_t taken;

	if (k->terminal && k->held > 0 && k->buffer[0] == CTRL_D) {
		k->ended = true;
		k->held = 0;
		return KEYS_NONE;
	}
	taken = key_decode(k->buffer, k->held, over, key, digit);
	k->exact = key_exact(k->buffer, taken);
	drop(k, taken);
	return taken > 0 ? KEYS_PRESS : KEYS_NONE;
}

static enum keys_got words_done(struct keys *k, const char **words)
{
	k->line[k->length] = '\0';
	text_clean(k->said, sizeof k->said, k->line);
	k->length = 0;
	k->begun = false;
	*words = k->said;
	return KEYS_WORDS;
}

/* Moves bytes of a pipe into the line; a longer line loses its end. */
static enum keys_got take_line(struct keys *k, const char **words)
{
	for (size_t i = 0; i < k->held; i++) {
		char c = k->buffer[i];

		k->begun = true;
		if (c == '\n' || c == '\r') {
			drop(k, i + 1);
			return words_done(k, words);
		}
		if (k->length < sizeof k->line - 1 && c != '\0')
			k->line[k->length++] = c;
	}
	k->held = 0;
	if (k->ended && k->begun)
		return words_done(k, words);
	return KEYS_NONE;
}

static void echo(const struct keys *k, const char *s, size_t length)
{
	struct pollfd p = { .fd = k->descriptor, .events = POLLOUT };

	/* Without an echo the words still count; nobody waits for one. */
	if (k->quiet || poll(&p, 1, 0) != 1)
		return;
	if (write(k->descriptor, s, length) < 0)
		return;
}

/* Takes the last letter back, here and on the terminal. */
static void rub_out(struct keys *k)
{
	size_t start = k->length;

	while (start > 0 && ((unsigned char)k->line[--start] & 0xc0) == 0x80)
		;
	k->line[k->length] = '\0';
	for (int n = text_columns(k->line + start); n > 0; n--)
		echo(k, "\b \b", 3);
	k->length = start;
}

/* One byte typed into the line. */
static void type(struct keys *k, char c)
{
	if (c == DEL || c == '\b') {
		rub_out(k);
	} else if (c == CTRL_U) {
		while (k->length > 0)
			rub_out(k);
	} else if ((unsigned char)c >= ' ' &&
	    k->length < SESSION_WORDS_MAX - 1) {
		k->line[k->length++] = c;
		echo(k, &c, 1);
	}
}

/* Words being typed on a terminal, which shows nothing by itself. */
static enum keys_got take_typed(
    struct keys *k, enum key *key, int *digit, const char **words)
{
	while (k->held > 0) {
		char c = k->buffer[0];
		bool done = c == '\n' || c == '\r';

		if (c == ESC || (c == CTRL_D && k->length == 0)) {
			if (take_key(k, key, digit) == KEYS_NONE)
				return KEYS_NONE;
			if (k->length == 0 && *key != KEY_OTHER &&
			    *key != KEY_ESCAPE)
				return KEYS_PRESS;
			done = *key == KEY_FORWARD;
		} else {
			drop(k, 1);
		}
		if (done) {
			echo(k, "\n", 1);
			return words_done(k, words);
		}
		if (c != ESC)
			type(k, c);
	}
	return KEYS_NONE;
}

static void read_more(struct keys *k)
{
	ssize_t n = read(
	    k->descriptor, k->buffer + k->held, BUFFER_BYTES - k->held);

	if (n > 0) {
		k->held += (size_t)n;
		k->last_ns = clock_steady_ns();
	} else if (n == 0 || (errno != EINTR && errno != EAGAIN)) {
		k->ended = true;
	}
}

static enum keys_got take(
    struct keys *k, enum key *key, int *digit, const char **words)
{
	if (!k->words)
		return take_key(k, key, digit);
	if (k->terminal)
		return take_typed(k, key, digit, words);
	return take_line(k, words);
}

/* Waits for bytes or a signal. */
static void wait_more(struct keys *k, int64_t wait_ms)
{
	struct pollfd p[2] = {
		{ .fd = k->ended ? -1 : k->descriptor, .events = POLLIN },
		{ .fd = terminal_wake(), .events = POLLIN },
	};

	if (k->held > 0 && (wait_ms < 0 || wait_ms > ESCAPE_MS))
		wait_ms = ESCAPE_MS;
	if (poll(p, 2, (int)wait_ms) <= 0)
		return;
	if (p[1].revents)
		terminal_woken();
	if (p[0].revents)
		read_more(k);
}

enum keys_got keys_next(
    struct keys *k, int wait_ms, enum key *key, int *digit, const char **words)
{
	int64_t start = clock_steady_ns();
	bool last = false;

	for (;;) {
		enum keys_got got;
		int64_t left = wait_ms;

		if (terminal_signal())
			return KEYS_END;
		got = take(k, key, digit, words);
		if (got != KEYS_NONE)
			return got;
		if (k->ended)
			return KEYS_END;
		if (wait_ms >= 0) {
			left = wait_ms - ms_since(start);
			if (last)
				return KEYS_NONE;
			last = left <= 0;
			left = last ? 0 : left;
		}
		wait_more(k, left);
	}
}

int keys_exact(const struct keys *k)
{
	return k->exact;
}

int keys_signal(void)
{
	return terminal_signal();
}

void keys_close(struct keys *k)
{
	if (!k)
		return;
	terminal_leave();
	free(k);
}
