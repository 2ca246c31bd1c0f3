/*
 * score.c - a passage worked out as sounds and cues
 *
 * The passage is walked once from its start to its end, so that sounds and
 * cues come out in the order of their frames.  Every time is taken in whole ms
 * from the passage's start and made a frame at the last moment: nothing is
 * summed in frames.
 *
 * Finger notes share the time between the last bow and the next one:
 *
 *	|bow|  lead  |note  note  note|  600 ms  |bow|
 */
#include "evenhand/score/score.h"

#include "evenhand/base/frames.h"
#include "evenhand/score/pulse.h"

enum {
	NOTE_STEP_MS = 300,  /* from note to note */
	NOTE_LEAST_MS = 20,  /* closer notes would be one noise: none then */
	NOTE_CLEAR_MS = 600, /* from the last note's end to the next bow */
	NOTE_LEAD_MS = 200,  /* from the last bow's end to the first note */
	TONE_LEAD_MS = 200,
	TONE_MS = 600,
	TONE_STEP_MS = 700,
	/* Settling shorter than this has no room for reference tones. */
	TONE_ROOM_MS = 3000,
};

/* What a voice is when nothing more is said about it. */
static const struct {
	int ms, level, millihertz;
} usual[VOICE_KINDS] = {
	[VOICE_DOWN] = { 70, 500, 0 },
	[VOICE_UP] = { 70, 500, 0 },
	[VOICE_TICK] = { 15, 250, 0 },
	[VOICE_COUNT] = { 15, 300, 0 },
	[VOICE_FINGER] = { 225, 200, 220000 },
	[VOICE_TONE] = { TONE_MS, 120, 0 },
	[VOICE_SWEEP] = { 60, 400, 0 },
};

/* Even a passage with the most of everything fits. */
enum {
	TURN_PULSES_MAX = BOWS_EACH_MAX * PULSES_MAX,
	SOUNDS_WORST = 2 + COUNT_IN_MAX * PULSES_MAX +
	    UNITS_MAX * TURN_PULSES_MAX + (UNITS_MAX + 1) * FINGER_NOTES_MAX,
	CUES_WORST = 3 + COUNT_IN_MAX * PULSES_MAX +
	    UNITS_MAX * (TURN_PULSES_MAX + BOWS_EACH_MAX + 1),
};
_Static_assert((int)SOUNDS_WORST <= SCORE_SOUNDS_MAX, "sounds of a passage");
_Static_assert((int)CUES_WORST <= SCORE_CUES_MAX, "cues of a passage");

int passage_lead_ms(const struct passage *p)
{
	return p->settle_ms + p->count_in_bows * p->bow_ms;
}

int64_t passage_turn_ms(const struct passage *p, int turn)
{
	int64_t bows = INT64_C(1) * p->bows_each * p->bow_ms;

	return passage_lead_ms(p) + turn * (bows + p->change_ms);
}

int64_t passage_bows_end_ms(const struct passage *p, int turn)
{
	return passage_turn_ms(p, turn) + INT64_C(1) * p->bows_each * p->bow_ms;
}

int64_t passage_ms(const struct passage *p)
{
	return passage_bows_end_ms(p, p->turns - 1) + p->last_change_ms;
}

static bool within(int value, int low, int high)
{
	return value >= low && value <= high;
}

static bool passage_in_range(const struct passage *p)
{
	if (!within(p->settle_ms, 0, PASSAGE_MS_MAX) ||
	    !within(p->count_in_bows, 0, COUNT_IN_MAX) ||
	    !within(p->bow_ms, BOW_MS_MIN, BOW_MS_MAX) ||
	    !within(p->pulses, 0, PULSES_MAX) ||
	    !within(p->bows_each, 1, BOWS_EACH_MAX) ||
	    !within(p->turns, 1, UNITS_MAX) ||
	    !within(p->coming, 0, FINGER_NOTES_MAX) ||
	    !within(p->change_ms, 0, PASSAGE_MS_MAX) ||
	    !within(p->last_change_ms, 0, PASSAGE_MS_MAX))
		return false;
	for (int i = 0; i < p->turns; i++)
		if (!within(p->unit[i], 0, FINGER_NOTES_MAX))
			return false;
	for (int i = 0; i < 2; i++)
		if (!within(p->tone[i], 0, 20000000))
			return false;
	return p->fade_after >= 0 && within(p->bows_before, 0, 1000000);
}

static void add_sound(
    struct score *s, int64_t frame, enum voice v, int ms, int millihertz)
{
	s->sound[s->sounds++] = (struct sound) {
		.frame = frame,
		.length = (int32_t)frames_of_ms(ms, s->rate),
		.millihertz = millihertz,
		.voice = (int16_t)v,
		.level = (int16_t)usual[v].level,
	};
}

/* A sound of the usual length and pitch. */
static void add_usual(struct score *s, int64_t frame, enum voice v)
{
	add_sound(s, frame, v, usual[v].ms, usual[v].millihertz);
}

static void add_cue(
    struct score *s, int64_t frame, enum cue_kind kind, int turn, int value)
{
	s->cue[s->cues++] = (struct cue) {
		.frame = frame,
		.kind = (int16_t)kind,
		.turn = (int16_t)turn,
		.value = value,
	};
}

static int64_t at_most(int64_t a, int64_t b)
{
	return a < b ? a : b;
}

/*
 * Notes from one ms to another, the room between two bows.  When the room is
 * short the quiet at its ends shrinks with it, and the notes draw together.
 */
static void add_notes(struct score *s, int notes, int64_t from, int64_t to)
{
	int64_t room = to - from;
	int64_t clear = at_most(NOTE_CLEAR_MS, room * 3 / 10);
	int64_t lead = at_most(NOTE_LEAD_MS, room / 10);

	if (notes == 0)
		return;
	int64_t step = at_most(NOTE_STEP_MS, (room - clear - lead) / notes);
	if (step < NOTE_LEAST_MS)
		return;
	int64_t length = step * usual[VOICE_FINGER].ms / NOTE_STEP_MS;
	for (int i = 0; i < notes; i++) {
		int64_t ms = to - clear - length - (notes - 1 - i) * step;

		add_sound(s, frames_of_ms(ms, s->rate), VOICE_FINGER,
		    (int)length, usual[VOICE_FINGER].millihertz);
	}
}

/* The two notes of the stage, once: fingers differ, the distance is told. */
static int64_t add_tones(struct score *s, const struct passage *p)
{
	int64_t ms = TONE_LEAD_MS;

	if (p->settle_ms < TONE_ROOM_MS)
		return 0;
	for (int i = 0; i < 2; i++) {
		if (p->tone[i] == 0)
			continue;
		add_sound(s, frames_of_ms(ms, s->rate), VOICE_TONE, TONE_MS,
		    p->tone[i]);
		ms += TONE_STEP_MS;
	}
	return ms == TONE_LEAD_MS ? 0 : ms - NOTE_LEAD_MS;
}

static int pulses_of(const struct passage *p)
{
	return p->pulses > 0 ? p->pulses : 1;
}

static int64_t pulse_frame(
    const struct score *s, const struct passage *p, int64_t bow, int k)
{
	struct pulse_grid g = { s->rate, p->bow_ms, pulses_of(p) };

	return bow + pulse_at(&g, k);
}

static void add_lead_in(struct score *s, const struct passage *p)
{
	if (p->settle_ms > 0) {
		add_cue(s, 0, CUE_SETTLE, -1, p->settle_ms);
		int64_t from = add_tones(s, p);
		add_notes(s, p->unit[0], from, p->settle_ms);
	}
	if (p->count_in_bows > 0)
		add_cue(s, frames_of_ms(p->settle_ms, s->rate), CUE_COUNT_IN,
		    -1, p->count_in_bows);
	for (int b = 0; b < p->count_in_bows; b++) {
		int64_t bow = frames_of_ms(
		    p->settle_ms + b * p->bow_ms, s->rate);

		for (int k = 0; k < pulses_of(p); k++) {
			int64_t frame = pulse_frame(s, p, bow, k);

			add_usual(s, frame, VOICE_COUNT);
			add_cue(s, frame, CUE_PULSE, -1, k);
		}
	}
}

static bool faded(const struct passage *p, int turn, int bow)
{
	int before = p->bows_before + turn * p->bows_each + bow;

	return p->fade_after > 0 && before >= p->fade_after;
}

/* What a bow begins with. */
static enum voice knock(const struct passage *p, int bow)
{
	if (p->sweeps)
		return VOICE_SWEEP;
	return bow % 2 == 0 ? VOICE_DOWN : VOICE_UP;
}

static void add_bow(struct score *s, const struct passage *p, int turn, int b)
{
	int64_t ms = passage_turn_ms(p, turn) + INT64_C(1) * b * p->bow_ms;
	int64_t bow = frames_of_ms(ms, s->rate);

	add_usual(s, bow, knock(p, b));
	add_cue(s, bow, CUE_BOW, turn, b);
	for (int k = 0; k < p->pulses; k++) {
		int64_t frame = pulse_frame(s, p, bow, k);

		add_cue(s, frame, CUE_PULSE, turn, k);
		if (k > 0 && !faded(p, turn, b))
			add_usual(s, frame, VOICE_TICK);
	}
}

static void add_turn(struct score *s, const struct passage *p, int turn)
{
	bool last = turn == p->turns - 1;
	int change = last ? p->last_change_ms : p->change_ms;
	int64_t from = passage_bows_end_ms(p, turn);

	for (int b = 0; b < p->bows_each; b++)
		add_bow(s, p, turn, b);
	add_cue(s, frames_of_ms(from, s->rate), CUE_CHANGE, turn, change);
	add_notes(s, last ? p->coming : p->unit[turn + 1], from, from + change);
}

bool score_make(struct score *s, const struct passage *p, int rate)
{
	if (!within(rate, RATE_MIN, RATE_MAX) || !passage_in_range(p))
		return false;
	s->rate = rate;
	s->sounds = 0;
	s->cues = 0;
	s->length = frames_of_ms(passage_ms(p), rate);
	add_lead_in(s, p);
	for (int t = 0; t < p->turns; t++)
		add_turn(s, p, t);
	add_cue(s, s->length, CUE_END, p->turns - 1, 0);
	return true;
}
