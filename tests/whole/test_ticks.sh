#!/bin/sh
# test_ticks.sh - the ear of the sound tests itself: made-up sounds whose frames
# and kinds are known, and slips of one frame that it must not miss
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
ticks=$root/tests/tools/ticks.py

# make FILE FORMAT CHANNELS: sounds of the shapes in src/sound/voices.h, at the
# frames of the list
cat > make.py <<'END'
import array, math, sys
name, kind, channels = sys.argv[1], sys.argv[2], int(sys.argv[3])
LENGTH = {"tick": 720, "count": 720, "down": 3360, "up": 3360,
          "finger": 10800, "tone": 28800}
HERTZ = {"tick": 1600, "count": 1200, "down": 196, "up": 392, "finger": 220,
         "tone": 293}
samples = [0.0] * 200000
for line in open(sys.argv[4]):
    frame, what = line.split()
    for i in range(LENGTH[what]):
        left = 1 - i / LENGTH[what]
        shape = min((i + 1) / 48, 1) * left ** 4
        wave = math.sin(2 * math.pi * HERTZ[what] * (i + 1) / 48000)
        samples[int(frame) + i] += 0.2 * shape * wave
if kind == "s16":
    out = array.array("h", (round(x * 32767) for x in samples))
else:
    out = array.array("f", samples)
if len(sys.argv) > 5:
    out[int(sys.argv[5])] = 1
data = array.array(out.typecode, bytes(len(out) * channels * out.itemsize))
for channel in range(channels):
    data[channel::channels] = out
if len(sys.argv) > 6:
    data[-1] += 1
open(name, "wb").write(data.tobytes())
END
cat > list <<-'END'
	0 finger
	14400 finger
	48000 down
	60000 tick
	72000 tick
	84001 tick
	96000 up
	108000 count
	112800 count
	150000 tone
END

for shape in 'f32 1' 's16 2'; do
	format=${shape% *}
	channels=${shape#* }
	"$python" make.py a.raw "$format" "$channels" list
	"$python" "$ticks" heard a.raw --format "$format" \
	    --channels "$channels" > heard.txt
	so "every frame and kind, $format in $channels" cmp heard.txt list
done

# A lone sample is a sound of its own, and no known one.
"$python" make.py a.raw f32 1 list 130000
"$python" "$ticks" heard a.raw > heard.txt
is "one sample too many" "$(grep -c '^130000 click$' heard.txt)" 1
is "and nothing else" "$(diff list heard.txt | grep -c '^[<>]')" 1

# The two channels are compared.
"$python" make.py a.raw f32 2 list 130000 differ
"$python" "$ticks" heard a.raw --channels 2 > heard.txt 2> "$work/err"
status_is $? 1 "a channel of its own is told"
has "$work/err" "the channels do not hold the same"

# A stretch is found in the whole; with a hole or a frame off it is not.
match()
{
	"$python" "$ticks" match list part 2> "$work/err" || echo no
}
sed -n 4,8p list | awk '{ print $1 - 50000, $2 }' > part
is "a stretch" "$(match)" "5 50000"
sed -n -e 4,5p -e 7,8p list > part
is "a hole" "$(match)" no
sed -n 4,8p list | sed 's/^84001/84000/' > part
is "a frame off" "$(match)" no
sed -n 4,8p list | sed 's/tick/count/' > part
is "another kind" "$(match)" no
: > part
is "nothing" "$(match)" no

# --- the arithmetic of a routine, against figures worked out by hand -----------

# Bows of 4 s at 48 kHz: pulses 48 000, 32 000 and 24 000 apart.  The blocks of a
# session at the stage "tone": its first bows at 2:28, 2:40, 2:52 and 3:04.
gaps()
{
	awk -v from="$1" -v to="$2" '$2 != "finger" && $1 >= from && $1 < to {
	    if (last) print $1 - last; last = $1 }' due.txt | sort -u | tr '\n' ' '
}
"$python" "$ticks" due 28:4:1234 140:6:1234,6:1234,8:1234 > due.txt
is "four pulses" "$(gaps 1728000 2112000)" "48000 "
is "six pulses" "$(gaps 7104000 7488000)" "32000 "
is "eight pulses" "$(gaps 11712000 12096000)" "24000 "
is "first bows" "$(grep -c -e '^7104000 down' -e '^7680000 down' \
    -e '^8256000 down' -e '^8832000 down' due.txt)" 4
is "a six-pulse bow has no tick at 48 000" \
    "$(grep -c '^7152000' due.txt)" 0
is "bows" "$(grep -c -e down -e up due.txt)" 32
is "ticks" "$(grep -c tick due.txt)" $((8 * 3 + 16 * 5 + 8 * 7))
is "notes of the fingers 1 to 4" "$(awk '$1 < 4032000 && $2 == "finger"' due.txt |
    wc -l | tr -d ' ')" 10
# The last of finger 1's notes: 600 ms and its own 225 before 0:32.
is "where they stand" "$(sed -n 1p due.txt)" "1496400 finger"

# 3.3 s at 44.1 kHz in eight: worked out with fractions.
"$python" "$ticks" due 0:8:1 --bow-ms 3300 --rate 44100 --count-in-bows 0 |
    sed -n '2,9s/ .*//p' > due.txt
is "an odd bow" "$(awk '{ print $1 - 176400 }' due.txt | tr '\n' ' ')" \
    "0 18191 36383 54574 72765 90956 109148 127339 "
finish
