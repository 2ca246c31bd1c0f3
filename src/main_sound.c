/*
 * main_sound.c - evenhand-sound, which evenhand starts to make sound, and to hear
 *
 * A program of its own, so that evenhand need not load any sound library, and
 * does not stand or fall with one.
 */
#include <stdbool.h>
#include <string.h>
#include <sysexits.h>
#include <unistd.h>

#include "evenhand/base/message.h"
#include "evenhand/world/program.h"
#include "evenhand/world/sound_child.h"

int main(int argc, char **argv)
{
	const char *about = message_sentence(M_DEVICE_PROGRAM);

	if (argc == 2 && strcmp(argv[1], "--version") == 0)
		return program_say(STDOUT_FILENO, "evenhand-sound ",
		    EVENHAND_VERSION, EX_OK, EX_IOERR);
	if (argc == 2 && strcmp(argv[1], "--help") == 0)
		return program_say(STDOUT_FILENO, "", about, EX_OK, EX_IOERR);
	if (argc == 3 && strcmp(argv[1], "--for") == 0)
		sound_child(argv[2]);
	if (argc == 3 && strcmp(argv[1], "--hear") == 0)
		sound_child_hear(argv[2]);
	/* That is also the answer for an evenhand of another version. */
	return program_say(STDERR_FILENO, "", about, EX_USAGE, EX_IOERR);
}
