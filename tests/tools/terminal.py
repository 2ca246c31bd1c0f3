#!/usr/bin/env python3
"""terminal.py - runs a command on a terminal of its own

    terminal.py COLUMNS ROWS COMMAND...

Standard input and output of the command are that terminal; what it shows goes to
our standard output, and its status is ours (128 and the number of a signal that
ended it).  Ends with 99 when the terminal is not left as it was found: in its
other screen, with its cursor hidden, or with other settings (stty).
"""

import fcntl
import os
import struct
import subprocess
import sys
import termios

NOT_AS_FOUND = 99
# What is turned on and off: the other screen, and the hidden cursor.
SWITCHES = ((b"\x1b[?1049h", b"\x1b[?1049l"), (b"\x1b[?25l", b"\x1b[?25h"))


def shown_by(ours):
    """All that comes until nobody has the terminal any more."""
    parts = []
    while True:
        try:
            part = os.read(ours, 65536)
        except OSError:
            break
        if not part:
            break
        parts.append(part)
    return b"".join(parts)


def main():
    columns, rows = int(sys.argv[1]), int(sys.argv[2])
    ours, theirs = os.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ,
                struct.pack("HHHH", rows, columns, 0, 0))
    found = termios.tcgetattr(theirs)
    command = subprocess.Popen(sys.argv[3:], stdin=theirs, stdout=theirs,
                               start_new_session=True)
    os.close(theirs)
    shown = shown_by(ours)
    status = command.wait()
    sys.stdout.buffer.write(shown)
    left_on = [on for on, off in SWITCHES if shown.rfind(on) > shown.rfind(off)]
    if left_on or termios.tcgetattr(ours) != found:
        print("terminal.py: not as it was found:", left_on, file=sys.stderr)
        return NOT_AS_FOUND
    return 128 - status if status < 0 else status


sys.exit(main())
