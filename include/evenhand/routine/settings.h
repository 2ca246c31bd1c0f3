/*
 * settings.h - what is chosen for this computer, not by the teacher
 *
 *	# Loud enough for the kitchen.
 *	loudness: 60
 *	marking: turn
 *
 * One small YAML file, flat: a word, a colon, a value.  It is read as strictly
 * as a routine, with the same sentences, but a fault in one line takes nothing
 * from the others: that setting keeps its default and practice goes on.
 *
 * The program changes the file too.  It touches the value that it changes and
 * nothing else, so notes, order and words it does not know stay as they were
 * written.
 *
 * Pure.  Any thread.  The file itself: world/settings_file.h.
 */
#ifndef EVENHAND_ROUTINE_SETTINGS_H
#define EVENHAND_ROUTINE_SETTINGS_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/fault.h"
#include "evenhand/base/text.h"
#include "evenhand/routine/read.h"

enum {
	SETTINGS_CARD_MAX = 128,   /* bytes of a sound card's name, with zero */
	SETTINGS_THROUGH_MAX = 64, /* and of what leads to it */
	SETTINGS_VALUE_MAX = 2 * SETTINGS_CARD_MAX + 4, /* as it is written */
};

/* One word of the file each, in this order. */
enum setting {
	SETTING_SOUND,
	SETTING_SOUND_CARD,
	SETTING_SOUND_THROUGH,
	SETTING_LOUDNESS,
	SETTING_LISTEN,
	SETTING_MICROPHONE,
	SETTING_MARKING,
	SETTING_COLOURS,
	SETTING_LINES,
	SETTING_ASCII,
	SETTING_MIRRORED,
	SETTING_FIRST_SEEN,
	SETTINGS
};

enum colours { COLOURS_AUTO, COLOURS_NONE, COLOURS_8, COLOURS_256 };

struct settings {
	uint32_t given; /* bit per enum setting: the file says it, and well */
	bool sound;	/* wanted at all; yes */
	char sound_card[SETTINGS_CARD_MAX]; /* its name; "": the usual one */
	char sound_through[SETTINGS_THROUGH_MAX]; /* host API; "": any */
	int loudness;				  /* 0..100 percent; 50 */
	bool listen;				  /* a microphone listens; no */
	char microphone[SETTINGS_CARD_MAX]; /* its name; "": the usual one */
	bool mark_turns; /* marking: turn; no, which is round */
	enum colours colours;
	bool lines;	 /* line mode; no */
	bool ascii;	 /* no signs beyond ASCII; no */
	bool mirrored;	 /* bow in the left hand; no */
	bool first_seen; /* the first minutes were shown or skipped; no */
};

/* What counts where the file says nothing. */
void settings_defaults(struct settings *s);

/* The word of a setting in the file, "loudness". */
const char *settings_key(enum setting what);

/* Whether the file says it: else the routine or the terminal may know. */
bool settings_given(const struct settings *s, enum setting what);

/*
 * Takes what the file says over what is in s.  The root must be parsed.  Every
 * fault is added with its place; its setting stays as it was.
 */
void settings_read(
    struct settings *s, const struct source *file, struct faults *faults);

/*
 * Gives the faults of slips_find and the YAML reader, from one on, words that
 * fit a settings file where they speak of routines.
 */
void settings_words(struct faults *faults, int from);

/* Adds the value of a setting as it stands in the file: 60, turn, "USB". */
void settings_value(
    struct text *out, const struct settings *s, enum setting what);

/* Adds what a new file begins with. */
void settings_head(struct text *out);

/*
 * Writes the file anew with one setting as it is in s: its value changed in
 * place, or a line of its own added behind the last one.  The root must be
 * parsed.  False when the value is written in a way that is better left alone
 * (over several lines) or out is full; the caller must still see that the
 * result reads well, as someone may write YAML that nobody thought of.
 */
bool settings_edit(struct text *out, const struct source *file,
    const struct settings *s, enum setting what);

#endif
