/*
 * fuzz_keys.c - random bytes as what a terminal sends, all through a sitting
 *
 * The first bytes choose a stage, a way of marking, a rate and a size of the
 * screen.  Of each two after them one is a pause and one a byte of a key; a
 * pause of none leaves an escape sequence open, and the longest is no pause but
 * something else that happens.  Whatever comes: each key takes bytes that are
 * there, what must hold of a sitting holds (sitting.h), pages can be drawn
 * at any moment, and in the end the sitting is over, once.
 */
#include <stdint.h>
#include <stdlib.h>

#include "../../src/world/key_bytes.h"
#include "../coach/sitting.h"
#include "evenhand/screen/view.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { HEAD = 5, PAIRS_MAX = 200, PAUSE_STEP_MS = 2, OTHER = 255, LOOK = 16 };

static const struct history nothing;
static struct sitting sitting;
static struct canvas canvas;

/* Bytes that came and are no key yet. */
struct arrived {
	char bytes[2 * KEY_BYTES_MAX];
	size_t length;
};

static void look(const struct sitting *d, const uint8_t *head)
{
	struct view v = {
		.session = &d->s,
		.heard = d->s.now,
		.mirror = head[1] & 2,
		.ascii = head[1] & 4,
		.help = head[1] & 8,
		.typed = "Why?",
	};

	canvas_init(&canvas, head[3] % (CANVAS_COLUMNS_MAX + 1),
	    head[4] % (CANVAS_ROWS_MAX + 1));
	v.leaf = head[1] >> 4;
	view_draw(&canvas, &v);
	assert_true(view_change(&v, canvas.columns, canvas.rows) > v.heard);
}

/* Gives the sitting the keys there are; over: no more bytes come in time. */
static void give_keys(struct sitting *d, struct arrived *a, bool over)
{
	while (a->length > 0) {
		struct input in = { .kind = INPUT_KEY, .frame = d->s.now };
		size_t taken = key_decode(
		    a->bytes, a->length, over, &in.key, &in.digit);

		assert_true(taken <= a->length);
		if (taken == 0)
			break;
		key_exact(a->bytes, taken);
		a->length -= taken;
		memmove(a->bytes, a->bytes + taken, a->length);
		sitting_step(d, &in);
	}
	assert_true(a->length == 0 || !over);
	assert_true(a->length < KEY_BYTES_MAX);
}

/* What happens beside keys. */
static void happen(struct sitting *d, uint8_t what)
{
	const struct listened heard = {
		.told = true,
		.answer = (enum turn_answer)(what % (TURN_LITTLE + 1)),
		.bows = 2,
		.bows_full = what % 3,
		.tops = what % 17,
		.tops_asked = 16,
		.travel_share = (float)(what % 5) / 4,
		.stops = what % 2,
		.timed = what & 1,
		.late_s = (float)(what - 128) / 1000,
	};

	sitting_step(d,
	    &(struct input) {
		.kind = (enum input_kind)(
		    INPUT_WORDS + what % (INPUT_GAP - INPUT_WORDS + 1)),
		.frame = d->s.now,
		.words = "Why?",
		.lost_ms = what * INT64_C(1000),
		.number = what % (d->turns + 1),
		.heard = &heard,
	    });
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static const int rates[] = { 8000, 11025, 44100, 48000, 192000 };
	struct routine r;
	struct arrived a = { .length = 0 };

	if (size < HEAD)
		return 0;
	r = programme_cello(data[0] % 6);
	sitting_begin(&sitting, &r, &nothing, (enum marking)(data[1] & 1),
	    rates[data[2] % 5]);
	for (size_t i = HEAD; i + 2 <= size && i < 2 * PAIRS_MAX; i += 2) {
		int64_t pause = data[i];

		if (pause > 0)
			give_keys(&sitting, &a, true);
		if (pause == OTHER) {
			happen(&sitting, data[i + 1]);
		} else {
			sitting_reach(&sitting,
			    sitting.s.now +
				frames_of_ms(pause * pause * PAUSE_STEP_MS,
				    sitting.s.rate));
			a.bytes[a.length++] = (char)data[i + 1];
			give_keys(&sitting, &a, false);
		}
		if (i % LOOK == HEAD % LOOK)
			look(&sitting, data);
	}
	sitting_step(&sitting,
	    &(struct input) { .kind = INPUT_END, .frame = sitting.s.now });
	look(&sitting, data);
	assert_int_equal(sitting.over, 1);
	assert_int_equal(sitting.begun, sitting.ended);
	return 0;
}
