#!/usr/bin/env python3
"""ticks.py - what sounded, and what a routine says should sound

    ticks.py heard FILE [--format f32|s16|s32|wav] [--channels N] [--rate N]
    ticks.py due PART...
    ticks.py match DUE HEARD

The first two print a line for each sound, its frame and its kind:

    1344000 count
    1536000 down

so that a test compares them with diff.  --from-first counts frames from the
first sound, where what came before it does not matter.

`heard` reads samples.  A sound begins at the first sample that is not nothing
after 4 ms of nothing; its kind is told by its length and by its pitch (the
table in src/sound/voices.h).  All channels must hold the same.

`match` takes two such lists and finds where what was heard lies in what was due:
from its first sound to its last none may be missing, none extra, none a frame
off.  It prints how many sounds were heard and which frame of the one list is
frame 0 of the other, or fails.

`due` knows nothing of the program: it is the arithmetic of a routine, in whole
numbers.  A part is AT:PULSES:UNITS[,PULSES:UNITS...], a block at a second with
its rounds:

    28:4:1234          at 0:28 one round of fingers 1 to 4 at 4 pulses
    140:6:1234,8:4321  at 2:20 two rounds
    0:0:air            at 0:00 a swing in the air, which has no pulses

A block begins with 4 s to settle and a bow to count in.  A turn is two bows,
each begun by a knock, its other pulses ticks; then comes a change.  Before a
turn as many soft notes as the finger's number end 600 ms before it (or before
the count-in), 300 ms apart and 225 ms long.
"""
import argparse
import array
import io
import sys

SETTLE = 4  # seconds
NOTE_MS, STEP_MS, CLEAR_MS = 225, 300, 600
GAP_MS = 4
CLICK_MS = 5  # shorter than anything of ours
PIECE = 4800  # frames read at once
AIR_BOWS = 4

# A format as Python's array knows it, and its full scale.
SAMPLES = {"f32": ("f", 1.0), "s16": ("h", 2.0 ** 15), "s32": ("i", 2.0 ** 31)}

# What is shorter than so many ms is one of these, by its pitch in Hz.
KINDS = ((17, {1600: "tick", 1200: "count"}),
         (75, {196: "down", 392: "up"}),
         (240, {220: "finger"}))


# --- heard ------------------------------------------------------------------

def open_wave(name):
    """The file behind its header, its format and its channels."""
    file = open(name, "rb")
    head = file.read(12)
    if head[:4] != b"RIFF" or head[8:] != b"WAVE":
        sys.exit(f"{name}: not a WAV file")
    shape = None
    while True:
        chunk = file.read(8)
        if len(chunk) < 8:
            sys.exit(f"{name}: a WAV file without samples")
        size = int.from_bytes(chunk[4:], "little")
        if chunk[:4] == b"data":
            # What stands behind the samples is not heard; a recorder that
            # was stopped may not have said how many there are.
            known = 0 < size < 0xFFFFFFFF
            samples = io.BytesIO(file.read(size if known else -1))
            return samples, shape[0], shape[1]
        body = file.read(size + size % 2)
        if chunk[:4] == b"fmt ":
            bits = int.from_bytes(body[14:16], "little")
            tag = int.from_bytes(body[24:26] or body[:2], "little")
            shape = ({(1, 16): "s16", (1, 32): "s32", (3, 32): "f32"}
                     [tag, bits], int.from_bytes(body[2:4], "little"))


def pieces(file, kind, channels):
    """Lists of samples of one channel; None for a piece of nothing."""
    code = SAMPLES[kind][0]
    frame = array.array(code).itemsize * channels
    nothing = bytes(PIECE * frame)
    while True:
        data = file.read(PIECE * frame)
        data = data[:len(data) // frame * frame]
        if not data:
            return
        if data == nothing:
            yield PIECE, None
            continue
        samples = array.array(code, data)
        for channel in range(1, channels):
            if samples[channel::channels] != samples[0::channels]:
                sys.exit("the channels do not hold the same")
        yield len(samples) // channels, samples[0::channels]


def sounds(all_pieces, gap):
    """Each sound as its first frame and its samples."""
    at = 0
    start, samples, quiet = None, [], 0
    for length, piece in all_pieces:
        if piece is None and start is None:
            at += length
            continue
        for value in piece if piece is not None else [0] * length:
            if value != 0:
                if start is None:
                    start, samples = at, []
                quiet = 0
            elif start is not None:
                quiet += 1
            if start is not None:
                samples.append(value)
                if quiet == gap:
                    yield start, samples[:-gap]
                    start = None
            at += 1
    if start is not None:
        yield start, samples[:len(samples) - quiet]


def power(samples, hertz, rate):
    """Goertzel's sum: how much of a pitch is in there."""
    import math
    w = 2 * math.cos(2 * math.pi * hertz / rate)
    a = b = 0.0
    for x in samples:
        a, b = x + w * a - b, a
    return a * a + b * b - w * a * b


def kind_of(samples, rate):
    if len(samples) * 1000 < CLICK_MS * rate:
        return "click"
    for most_ms, pitches in KINDS:
        if len(samples) * 1000 <= most_ms * rate:
            near = {p * f: name for p, name in pitches.items()
                    for f in (0.75, 1, 1.33)}
            best = max(near, key=lambda p: power(samples, p, rate))
            for pitch, name in pitches.items():
                if best == pitch:
                    return name
            return f"strange({len(samples)} frames, near {best:.0f} Hz)"
    return "tone"


def heard(options):
    file, kind, channels = None, options.format, options.channels
    if kind == "wav":
        file, kind, channels = open_wave(options.file)
    else:
        file = open(options.file, "rb")
    found = []
    gap = GAP_MS * options.rate // 1000
    full = SAMPLES[kind][1]
    for frame, samples in sounds(pieces(file, kind, channels), gap):
        line = kind_of(samples, options.rate)
        if options.measure:
            peak = max(abs(x) for x in samples) / full
            line += f" {len(samples)} {peak:.4f}"
        found.append((frame, line))
    return found


# --- due --------------------------------------------------------------------

class Due:
    def __init__(self, options):
        self.rate = options.rate
        self.bow = options.bow_ms
        self.each = options.bows_each
        self.change = options.change_ms
        self.count_in = options.count_in_bows
        self.found = []

    def add(self, ms, name, pulse=0, pulses=1):
        """A pulse at floor(k T fs / n + 1/2) frames from a bow at ms."""
        bow = ms * self.rate // 1000
        top = 2 * pulse * self.bow * self.rate + 1000 * pulses
        self.found.append((bow + top // (2000 * pulses), name))

    def notes(self, count, end):
        for i in range(count):
            self.add(end - CLEAR_MS - NOTE_MS - (count - 1 - i) * STEP_MS,
                     "finger")

    def turn(self, ms, bows, pulses):
        for bow in range(bows):
            start = ms + bow * self.bow
            self.add(start, "up" if bow % 2 else "down")
            for pulse in range(1, pulses):
                self.add(start, "tick", pulse, pulses)
        return ms + bows * self.bow

    def block(self, at, rounds):
        if not rounds[0][1].startswith("air"):
            self.notes(int(rounds[0][1][0]), at + SETTLE * 1000)
        ms = at + SETTLE * 1000
        for _ in range(self.count_in):
            pulses = max(rounds[0][0], 1)
            for pulse in range(pulses):
                self.add(ms, "count", pulse, pulses)
            ms += self.bow
        turns = [(pulses, unit) for pulses, units in rounds
                 for unit in (["air"] if units == "air" else units)]
        for i, (pulses, unit) in enumerate(turns):
            bows = AIR_BOWS if unit == "air" else self.each
            ms = self.turn(ms, bows, pulses) + self.change
            if i + 1 < len(turns) and unit != "air":
                self.notes(int(turns[i + 1][1]), ms)


def due(options):
    d = Due(options)
    for part in options.part:
        at, rounds = part.split(":", 1)
        d.block(int(float(at) * 1000),
                [(int(pulses), units) for pulses, units in
                 (r.split(":") for r in rounds.split(","))])
    return sorted(d.found)


# --- match ------------------------------------------------------------------

def read_list(name):
    return [(int(frame), kind) for frame, kind in
            (line.split()[:2] for line in open(name))]


def match(options):
    plan, ears = read_list(options.due), read_list(options.heard)
    if not ears:
        sys.exit("nothing was heard")
    for start, (frame, kind) in enumerate(plan):
        offset = frame - ears[0][0]
        part = [(f - offset, k) for f, k in plan[start:start + len(ears)]]
        if part == ears:
            print(len(ears), offset)
            return
    sys.exit(f"{len(ears)} sounds lie nowhere in the {len(plan)} due")


def main():
    parser = argparse.ArgumentParser()
    verbs = parser.add_subparsers(dest="verb", required=True)
    ears = verbs.add_parser("heard")
    ears.add_argument("file")
    ears.add_argument("--format", choices=[*SAMPLES, "wav"],
                      default="f32")
    ears.add_argument("--channels", type=int, default=1)
    ears.add_argument("--measure", action="store_true",
                      help="length in frames and peak as well")
    paper = verbs.add_parser("due")
    paper.add_argument("part", nargs="+")
    paper.add_argument("--bow-ms", type=int, default=4000)
    paper.add_argument("--bows-each", type=int, default=2)
    paper.add_argument("--change-ms", type=int, default=4000)
    paper.add_argument("--count-in-bows", type=int, default=1)
    pair = verbs.add_parser("match")
    pair.add_argument("due")
    pair.add_argument("heard")
    for verb in ears, paper:
        verb.add_argument("--rate", type=int, default=48000)
        verb.add_argument("--from-first", action="store_true")
    options = parser.parse_args()
    if options.verb == "match":
        match(options)
        return
    found = heard(options) if options.verb == "heard" else due(options)
    first = found[0][0] if options.from_first and found else 0
    for frame, name in found:
        print(frame - first, name)


main()
