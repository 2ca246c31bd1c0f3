/*
 * instrument.c - the four bowed instruments as one table
 *
 * Everything that differs between them stands in the table below, so that a
 * fifth instrument would be one more entry and nothing else.
 */
#include "evenhand/music/instrument.h"

#include <assert.h>
#include <math.h>
#include <stddef.h>
#include <string.h>

#include "evenhand/base/text.h"
#include "evenhand/music/pitch.h"

enum { SIZES_MAX = 8, OCTAVE = 12 };

struct size {
	const char *name;
	double length_mm;
};

struct position {
	const char *name;
	int semitones;
};

static const struct position by_scale[] = {
	{ "half", 1 },
	{ "first", 2 },
	{ "third", 5 },
	{ "fourth", 7 },
	{ NULL, 0 },
};

struct kind {
	const char *name;
	enum message_id word;
	int open[STRINGS_USUAL];
	double length_mm;
	int finger[FINGERS_MAX];	 /* semitones above finger 1 */
	const struct position *position; /* ended by an empty one */
	struct size size[SIZES_MAX];
};

static const struct kind kinds[INSTRUMENT_COUNT] = {
	[INSTRUMENT_VIOLIN] = {
		.name = "violin",
		.word = M_WORD_VIOLIN,
		.open = { 76, 69, 62, 55 }, /* E5 A4 D4 G3 */
		.length_mm = 328,
		.finger = { 0, 2, 3, 5 },
		.position = by_scale,
		.size = { { "4/4", 328 }, { "7/8", 317 }, { "3/4", 307 },
		    { "1/2", 285 }, { "1/4", 255 }, { "1/8", 230 },
		    { "1/16", 200 } },
	},
	[INSTRUMENT_VIOLA] = {
		.name = "viola",
		.word = M_WORD_VIOLA,
		.open = { 69, 62, 55, 48 }, /* A4 D4 G3 C3 */
		.length_mm = 375,
		.finger = { 0, 2, 3, 5 },
		.position = by_scale,
		.size = { { "4/4", 375 }, { "3/4", 330 }, { "1/2", 310 } },
	},
	[INSTRUMENT_CELLO] = {
		.name = "cello",
		.word = M_WORD_CELLO,
		.open = { 57, 50, 43, 36 }, /* A3 D3 G2 C2 */
		.length_mm = 690,
		.finger = { 0, 1, 2, 3 },
		.position = by_scale,
		.size = { { "4/4", 690 }, { "7/8", 655 }, { "3/4", 635 },
		    { "1/2", 580 }, { "1/4", 510 }, { "1/8", 440 } },
	},
	[INSTRUMENT_BASS] = {
		.name = "double bass",
		.word = M_WORD_BASS,
		.open = { 43, 38, 33, 28 }, /* G2 D2 A1 E1 */
		.length_mm = 1050,
		/* Finger 3 stands with 4 and helps it. */
		.finger = { 0, 1, 2, 2 },
		/* As most method books count; some count otherwise. */
		.position = by_scale,
		.size = { { "4/4", 1100 }, { "3/4", 1050 }, { "1/2", 970 },
		    { "1/4", 900 }, { "1/8", 800 } },
	},
};

static const struct kind *kind(enum instrument i)
{
	assert((int)i >= 0 && i < INSTRUMENT_COUNT);
	return &kinds[i];
}

const char *instrument_name(enum instrument i)
{
	return kind(i)->name;
}

enum message_id instrument_word(enum instrument i)
{
	return kind(i)->word;
}

struct setup instrument_setup(enum instrument i)
{
	struct setup s = {
		.instrument = i,
		.strings = STRINGS_USUAL,
		.length_mm = kind(i)->length_mm,
		.reference_hz = PITCH_ISO_16,
	};

	memcpy(s.open, kind(i)->open, sizeof(kind(i)->open));
	return s;
}

double instrument_length(enum instrument i, const char *size)
{
	const struct size *s = kind(i)->size;

	for (int n = 0; n < SIZES_MAX && s[n].name != NULL; n++)
		if (strcmp(s[n].name, size) == 0)
			return s[n].length_mm;
	return 0;
}

int instrument_position(enum instrument i, const char *name)
{
	for (const struct position *p = kind(i)->position; p->name; p++)
		if (strcmp(p->name, name) == 0)
			return p->semitones;
	return 0;
}

int instrument_finger(enum instrument i, int finger)
{
	assert(finger >= 1 && finger <= FINGERS_MAX);
	return kind(i)->finger[finger - 1];
}

int setup_string(const struct setup *s, const char *letter)
{
	char whole[2 * PITCH_NAME_MAX];
	struct text t = text_in(whole, sizeof(whole));
	int note;

	if (pitch_parse(letter, &note)) {
		for (int i = 0; i < s->strings; i++)
			if (s->open[i] == note)
				return i;
		return -1;
	}
	/* A letter alone: any octave will do. */
	text_format(&t, "%s4", letter);
	if (!pitch_parse(whole, &note))
		return -1;
	for (int i = 0; i < s->strings; i++)
		if (s->open[i] % OCTAVE == note % OCTAVE)
			return i;
	return -1;
}
