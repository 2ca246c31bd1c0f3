/*
 * main_file.c - evenhand-file, which evenhand starts to read recordings and to
 * write tracks
 *
 *	the recording ── 0 ──▶ evenhand-file read ── 1 ──▶ samples
 *	samples ── 0 ──▶ evenhand-file write ── 1 ──▶ the new file
 *
 * A program of its own, so that evenhand need not load what knows the formats,
 * and so that a file which breaks one of those libraries breaks nothing else.
 */
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "evenhand/base/message.h"
#include "evenhand/world/audio_file.h"
#include "evenhand/world/audio_track.h"
#include "evenhand/world/program.h"

enum { DECIMAL = 10 };

static bool put_out(void *to, const void *bytes, size_t length)
{
	return program_write(*(const int *)to, bytes, length);
}

static int read_file(const char *channel)
{
	int out = STDOUT_FILENO;
	long number = channel ? strtol(channel, NULL, DECIMAL) : 0;

	if (number < 0 || number > AUDIO_CHANNELS_MAX)
		return AUDIO_NO_CHANNEL;
	return (int)audio_read(STDIN_FILENO, (int)number, put_out, &out);
}

static int write_file(const char *word)
{
	enum audio_format format;

	/* A limit of the system is told as a full disk is, not by a signal. */
	signal(SIGXFSZ, SIG_IGN);
	return audio_format_named(word, &format)
	    ? (int)audio_write(format, STDIN_FILENO, STDOUT_FILENO)
	    : AUDIO_USAGE;
}

int main(int argc, char **argv)
{
	const char *about = message_sentence(M_AUDIO_PROGRAM);
	const char *word = argc > 1 ? argv[1] : "";

	if (strcmp(word, "read") == 0 && argc <= 3)
		return read_file(argc > 2 ? argv[2] : NULL);
	if (strcmp(word, "write") == 0 && argc == 3)
		return write_file(argv[2]);
	if (argc == 2 && strcmp(word, "--version") == 0)
		return program_say(STDOUT_FILENO, AUDIO_PROGRAM " ",
		    EVENHAND_VERSION, AUDIO_GOOD, AUDIO_LOST);
	if (argc == 2 && strcmp(word, "--help") == 0)
		return program_say(
		    STDOUT_FILENO, "", about, AUDIO_GOOD, AUDIO_LOST);
	return program_say(STDERR_FILENO, "", about, AUDIO_USAGE, AUDIO_LOST);
}
