#!/usr/bin/env python3
"""track.py - what stands in a track, read without the program's own code

    track.py tags FILE
    track.py same TAP FILE
    track.py near FILE STREAM
    track.py peak STREAM

`tags` prints the tags of a WAV, FLAC or Ogg file, a line each, and the frames
(WAV) or times at which its parts begin with their names.  Checksums of Ogg's
pages are looked at, too.

`same` compares a WAV file of 16 bits with what a card was given (32-bit floats
in two channels): from the first sound on each sample must be the card's, times
32768, rounded to the nearest whole number, a half to the even one.

A STREAM is what `evenhand-file read` prints.  `near` finds where each sound of
a WAV file lies in it, by correlation, and prints how many there are; none may
be more than a frame off.  `peak` prints its largest sample in dB of full scale.
"""
import array
import math
import struct
import sys

PIECE = 4800
FAR = 6      # frames to each side in which a sound is looked for
LONG = 1200  # frames of it that are compared


# --- tags -------------------------------------------------------------------

def comments(data):
    """The lines of a block of Vorbis comments."""
    at = 4 + struct.unpack_from("<I", data)[0]
    count, = struct.unpack_from("<I", data, at)
    at += 4
    for _ in range(count):
        size, = struct.unpack_from("<I", data, at)
        yield data[at + 4:at + 4 + size].decode()
        at += 4 + size


def flac_tags(data):
    at = 4
    while True:
        kind, size = data[at], int.from_bytes(data[at + 1:at + 4], "big")
        if kind & 127 == 4:
            yield from comments(data[at + 4:at + 4 + size])
        at += 4 + size
        if kind & 128:
            return


def checksum(page):
    """RFC 3533: the polynomial 04c11db7, from 0, nothing turned round."""
    total = 0
    for byte in page[:22] + bytes(4) + page[26:]:
        total ^= byte << 24
        for _ in range(8):
            total = total << 1 ^ (0x04c11db7 if total >> 31 else 0)
            total &= 0xffffffff
    return total


def ogg_tags(data):
    at = 0
    for number in range(3):
        sizes = data[at + 27:at + 27 + data[at + 26]]
        page = data[at:at + 27 + len(sizes) + sum(sizes)]
        if page[:4] != b"OggS" or \
           checksum(page) != struct.unpack_from("<I", page, 22)[0]:
            sys.exit(f"page {number} is damaged")
        if number == 1:
            body = page[27 + len(sizes):]
            if body[:7] != b"\3vorbis":
                sys.exit("no tags on the second page")
            yield from comments(body[7:])
        at += len(page)


def chunks(data):
    if struct.unpack_from("<I", data, 4)[0] != len(data) - 8:
        sys.exit("the file has another length than it says")
    at = 12
    while at < len(data):
        size, = struct.unpack_from("<I", data, at + 4)
        yield data[at:at + 4], data[at + 8:at + 8 + size]
        at += 8 + size + size % 2


def sub_chunks(body):
    at = 4
    while at < len(body):
        size, = struct.unpack_from("<I", body, at + 4)
        yield body[at:at + 4], body[at + 8:at + 8 + size]
        at += 8 + size + size % 2


def wav_tags(data):
    names = {b"INAM": "title", b"IART": "artist", b"ICRD": "date",
             b"ICMT": "comment"}
    frames, cues = {}, []
    for kind, body in chunks(data):
        if kind == b"LIST" and body[:4] == b"INFO":
            for key, text in sub_chunks(body):
                words = text.rstrip(b"\0").decode()
                yield f"{names.get(key, key.decode())}={words}"
        elif kind == b"cue ":
            for i in range(struct.unpack_from("<I", body)[0]):
                number, _, _, _, _, frame = struct.unpack_from(
                    "<II4sIII", body, 4 + 24 * i)
                frames[number] = frame
        elif kind == b"LIST" and body[:4] == b"adtl":
            for key, text in sub_chunks(body):
                cues.append((struct.unpack_from("<I", text)[0],
                             text[4:].rstrip(b"\0").decode()))
    for number, name in cues:
        yield f"{frames[number]} {name}"
    if len(cues) != len(frames):
        sys.exit("as many names as cue points")


def tags(name):
    data = open(name, "rb").read()
    kinds = {b"RIFF": wav_tags, b"fLaC": flac_tags, b"OggS": ogg_tags}
    for line in kinds[data[:4]](data):
        key, sign, rest = line.partition("=")
        parts = not sign or key.startswith("CHAPTER")
        print(line if parts else key.lower() + sign + rest)


# --- samples ----------------------------------------------------------------

def wav_samples(name):
    for kind, body in chunks(open(name, "rb").read()):
        if kind == b"data":
            return array.array("h", body)
    sys.exit("no samples")


def stream_samples(name):
    data = open(name, "rb").read()
    at, samples = 88, array.array("f")
    while True:
        count, = struct.unpack_from("<I", data, at)
        if count == 0:
            return samples
        samples.frombytes(data[at + 4:at + 4 + 4 * count])
        at += 4 + 4 * count


def first(samples, zero):
    """The first sample that is not nothing."""
    for at in range(0, len(samples), PIECE):
        piece = samples[at:at + PIECE]
        if piece != zero[:len(piece)]:
            return at + next(i for i, x in enumerate(piece) if x)
    sys.exit("nothing sounds")


def same(tap, name):
    card = array.array("f", open(tap, "rb").read())[0::2]
    track = wav_samples(name)
    zero_f, zero_h = array.array("f", bytes(4 * PIECE)), \
        array.array("h", bytes(2 * PIECE))
    # What is below half a step sounds on the card and not in the file.
    for k, x in enumerate(card):
        if round(x * 32768):
            break
    card = card[k - first(track, zero_h):]
    if len(card) < len(track):
        sys.exit(f"the card was given {len(card)} frames of {len(track)}")
    heard = 0
    for at in range(0, len(track), PIECE):
        a, b = card[at:at + PIECE], track[at:at + PIECE]
        a = a[:len(b)]
        if b == zero_h[:len(b)] and a == zero_f[:len(b)]:
            continue
        for i, x in enumerate(a):
            heard += x != 0
            if round(x * 32768) != b[i]:
                sys.exit(f"frame {at + i}: {x * 32768} became {b[i]}")
    print(heard)


def starts(track):
    """Where sounds begin: after 4 ms of nothing at 48 kHz."""
    quiet = 192
    for i, x in enumerate(track):
        if x and quiet >= 192:
            yield i
        quiet = 0 if x else quiet + 1


def likeness(a, b):
    """-1..1, whatever the loudness of the two."""
    size = math.sqrt(sum(x * x for x in b)) or 1
    return sum(x * y for x, y in zip(a, b)) / size


def near(name, stream):
    track, other = wav_samples(name), stream_samples(stream)
    count = 0
    if len(track) != len(other):
        sys.exit(f"{len(other)} frames, not {len(track)}")
    for at in starts(track):
        sound = track[at:at + LONG]
        lag = max(range(-min(FAR, at), FAR + 1), key=lambda lag: likeness(
            sound, other[at + lag:at + lag + LONG]))
        if abs(lag) > 1:
            sys.exit(f"the sound at {at} is {lag} frames off")
        count += 1
    print(count)


def peak(stream):
    samples = stream_samples(stream)
    print(f"{20 * math.log10(max(max(samples), -min(samples))):.2f}")


verbs = {"tags": tags, "same": same, "near": near, "peak": peak}
verbs[sys.argv[1]](*sys.argv[2:])
