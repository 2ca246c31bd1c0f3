/*
 * stage_travel.c - how far apart the two notes of a stage are
 *
 *	travel: tone                 200 cents, from first position
 *	shift: first to fourth       finger 1 from 2 to 7 semitones: 500 cents
 *	shift: first to F#           by the note finger 1 comes to
 *
 * Position names are taken only where every school agrees on them.
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "evenhand/music/pitch.h"
#include "reader.h"

enum {
	OCTAVE = 12,
	CENTS = 100,
	TRAVEL_MOST = 24,  /* semitones */
	TRAVEL_LEAST = 10, /* cents */
	SIDE_BYTES = 24,
	D = 2, /* of an octave that begins with C */
};

/* One end of a shift. */
struct side {
	char word[SIDE_BYTES];
	bool note;     /* named by a note, not by a position */
	int semitones; /* of finger 1 above the open string */
};

static bool is_d_string(const struct reader *rd, const struct stage *s)
{
	return s->string >= 0 && rd->r->setup.open[s->string] % OCTAVE == D;
}

/* A note by its letter: the first one above the open string. */
static bool note_side(
    const struct reader *rd, const struct stage *s, struct side *side)
{
	char whole[SIDE_BYTES + 2];
	struct text t = text_in(whole, sizeof(whole));
	int note, open;
	bool octave = pitch_parse(side->word, &note);

	text_format(&t, "%s4", side->word);
	side->note = octave || pitch_parse(whole, &note);
	if (!side->note || s->string < 0)
		return false;
	open = rd->r->setup.open[s->string];
	if (octave) {
		side->semitones = note - open;
		return side->semitones > 0 && side->semitones <= TRAVEL_MOST;
	}
	side->semitones = (note - open) % OCTAVE;
	if (side->semitones <= 0)
		side->semitones += OCTAVE;
	return true;
}

static bool read_side(struct reader *rd, const struct node *n,
    const struct stage *s, struct side *side)
{
	enum instrument i = rd->r->setup.instrument;
	char small[SIDE_BYTES];

	side->semitones = instrument_position(i, side->word);
	if (side->semitones > 0)
		return true;
	if (strcmp(side->word, "second") == 0)
		return fault_here(rd, n,
		    message_of(i == INSTRUMENT_CELLO && is_d_string(rd, s)
			    ? M_ROUTINE_SECOND_CELLO
			    : M_ROUTINE_SECOND));
	if (note_side(rd, s, side))
		return true;
	if (side->note && s->string < 0)
		return false; /* the place is at fault */
	small_letters(small, sizeof(small), side->word);
	if (instrument_position(i, small) > 0 || strcmp(small, "second") == 0)
		return fault_here(rd, n,
		    message_with(
			M_ROUTINE_SMALL, TEXT(side->word), TEXT(small)));
	return fault_here(
	    rd, n, message_with(M_ROUTINE_POSITION, TEXT(side->word)));
}

/* Cuts "first to fourth" in two. */
static bool cut(const char *word, struct side *from, struct side *to)
{
	static const char between[] = " to ";
	const char *at = strstr(word, between);
	struct text a = text_in(from->word, SIDE_BYTES);
	struct text b = text_in(to->word, SIDE_BYTES);

	if (at == NULL)
		return false;
	text_add_bytes(&a, word, (size_t)(at - word));
	text_add(&b, at + strlen(between));
	return a.length > 0 && b.length > 0 && !a.cut && !b.cut;
}

/* The shift's semitones, or 0; *notes when a side was named by a note. */
static int read_shift(
    struct reader *rd, const struct node *n, struct stage *s, bool *notes)
{
	struct side from = { .note = false }, to = { .note = false };
	const char *word;
	bool good;

	if (n == NULL || !value_word(rd, n, "shift", &word))
		return 0;
	if (!cut(word, &from, &to)) {
		fault_here(rd, n, message_with(M_ROUTINE_SHIFT, TEXT(word)));
		return 0;
	}
	good = read_side(rd, n, s, &from);
	if (!good || !read_side(rd, n, s, &to))
		return 0;
	if (to.semitones <= from.semitones) {
		fault_here(
		    rd, n, message_with(M_ROUTINE_SHIFT_DOWN, TEXT(word)));
		return 0;
	}
	*notes = from.note || to.note;
	s->from = from.semitones;
	return to.semitones - from.semitones;
}

/* Whether it can only be meant as a number of semitones. */
static bool semitones(const char *word)
{
	static const char name[] = "semitone";
	const char *unit = word + strspn(word, "-0123456789.,: ");

	return (*word == '-' || (*word >= '0' && *word <= '9')) &&
	    strchr(word, '/') == NULL &&
	    (strstr(unit, "tone") == NULL ||
		strncmp(unit, name, strlen(name)) == 0);
}

/* The travel's cents, or 0. */
static int read_cents(struct reader *rd, const struct node *n)
{
	static const char *const words[] = { "quarter tone", "semitone",
		"tone" };
	struct bounds b = { "travel", 0, TRAVEL_MOST };
	char small[SIDE_BYTES];
	const char *word;
	int cents = 0;

	if (n == NULL || !value_word(rd, n, "travel", &word))
		return 0;
	small_letters(small, sizeof(small), word);
	for (int i = 0; i < 3; i++) {
		if (strcmp(words[i], word) == 0)
			return (CENTS / 2) << i;
		if (strcmp(words[i], small) == 0) {
			fault_small(rd, n, words[i]);
			return 0;
		}
	}
	if (!semitones(word))
		fault_here(rd, n, message_with(M_ROUTINE_TRAVEL, TEXT(word)));
	else if (number_hundredths(rd, n, b, &cents) && cents < TRAVEL_LEAST) {
		fault_here(rd, n,
		    message_with(M_ROUTINE_RANGE, TEXT("travel"),
			FIGURE((double)TRAVEL_LEAST / CENTS),
			FIGURE(TRAVEL_MOST), TEXT(word)));
		return 0;
	}
	return cents;
}

void read_travel(struct reader *rd, const struct node *map, struct stage *s)
{
	const struct node *shift = node_get(map, "shift");
	const struct node *travel = node_get(map, "travel");
	bool notes = false;
	int semitones, cents;

	s->from = instrument_position(rd->r->setup.instrument, "first");
	if (shift == NULL && travel == NULL) {
		/* What is no place may be meant to be the air. */
		if ((s->string >= 0 || node_get(map, "place") == NULL) &&
		    !keys_meant(map, MAP_STAGE, "shift") &&
		    !keys_meant(map, MAP_STAGE, "travel"))
			fault_here(rd, map, message_of(M_ROUTINE_NO_TRAVEL));
		return;
	}
	semitones = read_shift(rd, shift, s, &notes);
	cents = read_cents(rd, travel);
	if (shift != NULL && semitones > 0 && cents > 0 &&
	    cents != semitones * CENTS)
		fault_here(rd, travel,
		    message_with(
			notes ? M_ROUTINE_NOTES_TRAVEL : M_ROUTINE_SHIFT_TRAVEL,
			TEXT(shift->word), FIGURE(semitones),
			FIGURE((double)cents / CENTS)));
	s->travel_cents = semitones > 0 ? semitones * CENTS : cents;
}
