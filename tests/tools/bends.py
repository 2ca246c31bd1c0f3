#!/usr/bin/env python3
"""bends.py - notes whose pitch is bent as it is written

    bends.py write CASE FILE      a MIDI file for a synthesiser
    bends.py look CASE TRACK      what a track of it says, against the truth
    bends.py truth CASE           its glides: half way, nine tenths, in seconds

A case is KIND:PROGRAM:NOTE:..., with a program and notes as MIDI counts them:

    notes:42:36:81        every note from one to the other, each for a second
    steps:42:36           one note, bent up and down by STEPS
    glides:42:36:200      one note, so many cents up and down again
    sway:42:36:5.5:20     a vibrato: swings a second, cents to each side
    own:42:36             held, with the vibrato that the font itself gives it

A tick is a millisecond.  fluidsynth, for which this is meant, looks at its
events once in 64 samples, and leaves out what is less than a whole cent: both
were seen in the Fourier transform of what version 2.3.1 plays.  A range of 12
semitones comes out as 12700 x 12 / 128 cents, which is what SoundFont 2.01
(section 8.4, from memory) makes of it.  So all bends are whole cents, a hair
above, and the pitch is true to one part in seven of a cent.
"""
import math
import statistics
import struct
import sys

RANGE = 12                # semitones of bend to each side
BEGIN = 300               # ms of silence before anything
STEPS = [0, 50, 0, 100, 0, -50, 0, -100, 0, 200, 0, -200, 0, 13, 0, -7, 0]
STEP = 600                # ms of each
SETTLE = 100              # ms at both ends of it that are left out
HELD, APART = 1000, 2000  # ms of a note of "notes", and from one to the next
GLIDE, WAIT, GLIDES = 150, 180, 9
SWAY = 6000


def control(number, value):
    return bytes([0xB0, number, value])


def bend(cents):
    value = 8192 + math.ceil(cents * 8192 / (12700 * RANGE / 128))
    return bytes([0xE0, value & 127, value >> 7])


def number(n):
    """A number of seven bits a byte, as MIDI files have it."""
    out = [n & 127]
    while n > 127:
        n >>= 7
        out.insert(0, 128 | n & 127)
    return bytes(out)


def head(program, own):
    """Bends of RANGE semitones, and unless asked for no vibrato of the font.

    That begins after a delay (SoundFont 2.01, generator 21, from memory), which
    is made longer by the standard's NRPN 120, 21: 18 seconds, and none is heard.
    """
    events = [bytes([0xC0, program]), control(101, 0), control(100, 0),
              control(6, RANGE), control(38, 0)]
    if not own:
        events += [control(99, 120), control(98, 21), control(38, 127),
                   control(6, 127)]
    return [(0, e) for e in events]


def write(path, events):
    body = bytes([0]) + b"\xff\x51\x03" + (1000000).to_bytes(3, "big")
    before = 0
    for at, event in sorted(events, key=lambda e: e[0]):
        body += number(at - before) + event
        before = at
    body += number(500) + b"\xff\x2f\0"
    with open(path, "wb") as f:
        f.write(b"MThd" + struct.pack(">IHHH", 6, 0, 1, 1000))
        f.write(b"MTrk" + struct.pack(">I", len(body)) + body)


def ramp(x):
    return 0.5 - 0.5 * math.cos(math.pi * min(max(x, 0), 1))


def ups():
    """When the glides up begin: not quite evenly, so none fits by chance."""
    every = 2 * (GLIDE + WAIT)
    return [BEGIN + 700 + every * i + 7 * (i * i % 5) for i in range(GLIDES)]


def glided(t, cents):
    for up in ups():
        if up <= t < up + 2 * GLIDE + WAIT:
            down = up + GLIDE + WAIT
            return cents * (ramp((t - up) / GLIDE) - ramp((t - down) / GLIDE))
    return 0


class Case:
    def __init__(self, words):
        self.kind, *rest = words.split(":")
        self.program, self.note, *self.more = [float(w) for w in rest]
        self.program, self.note = int(self.program), int(self.note)
        self.length = {
            "notes": HELD, "own": SWAY, "sway": SWAY,
            "steps": STEP * len(STEPS),
            "glides": ups()[-1] - BEGIN + 2 * (GLIDE + WAIT)}[self.kind]

    def notes(self):
        last = int(self.more[0]) if self.kind == "notes" else self.note
        return [(BEGIN + APART * i, n)
                for i, n in enumerate(range(self.note, last + 1))]

    def cents(self, t):
        """The bend at so many ms."""
        if self.kind == "steps":
            i = (t - BEGIN) // STEP
            return STEPS[i] if 0 <= i < len(STEPS) else 0
        if self.kind == "glides":
            return glided(t, self.more[0])
        if self.kind == "sway":
            return self.more[1] * math.sin(
                2 * math.pi * self.more[0] * (t - BEGIN) / 1000)
        return 0

    def events(self):
        events = head(self.program, self.kind == "own")
        for at, note in self.notes():
            events += [(at, bytes([0x90, note, 100])),
                       (at + self.length, bytes([0x80, note, 0]))]
        now = 0
        for t in range(BEGIN, BEGIN + self.length):
            if round(self.cents(t)) != now:
                now = round(self.cents(t))
                events.append((t, bend(now)))
        return events


def read(path):
    with open(path, encoding="ascii") as f:
        rows = [line.split(",") for line in f.readlines()[1:]]
    return [(1000 * float(r[0]), float(r[1])) for r in rows]


def between(track, begin, end):
    return [hz for t, hz in track if begin <= t < end]


def above(hz, note):
    """Cents over the tempered note, A 440."""
    return 1200 * math.log2(hz / 440) - 100 * (note - 69)


def look_notes(case, track):
    """Instants found, and wrong by more than 50 cents; how the font is tuned."""
    all_of, found, wrong, tuned = 0, 0, 0, []
    for at, note in case.notes():
        hz = between(track, at + SETTLE, at + HELD - SETTLE)
        cents = [above(x, note) for x in hz if x > 0]
        all_of += len(hz)
        found += len(cents)
        wrong += sum(abs(c) > 50 for c in cents)
        tuned += [statistics.median(cents)] if cents else []
    print("notes", len(case.notes()))
    print("found %.2f" % (100 * found / all_of))
    print("wrong", wrong)
    print("flattest %.2f" % min(tuned))
    print("sharpest %.2f" % max(tuned))


def look_steps(case, track):
    """Every bent stay against the mean of the two unbent ones beside it."""
    middle = []
    for i, _ in enumerate(STEPS):
        at = BEGIN + STEP * i
        hz = between(track, at + SETTLE, at + STEP - SETTLE)
        middle.append(statistics.median(
            above(x, case.note) if x > 0 else 1e9 for x in hz))
    off = [middle[i] - (middle[i - 1] + middle[i + 1]) / 2 - STEPS[i]
           for i in range(1, len(STEPS) - 1, 2)]
    print("off %.3f" % max(map(abs, off)))
    print("unbent %.3f" % (max(middle[::2]) - min(middle[::2])))
    print("hz %.4f" % (440 * 2 ** (
        (case.note - 69) / 12 + statistics.mean(middle[::2]) / 1200)))


def main(what, words, path=None):
    case = Case(words)
    if what == "write":
        write(path, case.events())
    elif what == "truth":
        for up in ups():
            nine = GLIDE * math.acos(1 - 2 * 0.9) / math.pi
            print("%.6f %.6f" % ((up + GLIDE / 2) / 1000, (up + nine) / 1000))
    elif case.kind == "notes":
        look_notes(case, read(path))
    else:
        look_steps(case, read(path))


main(*sys.argv[1:])
