/*
 * read_player.c - the instrument, its strings and who holds it
 *
 * In a homework file the student's own size and string length lie over the
 * routine's.  A size given there without a length stands for a length, for the
 * length in the routine was measured on another instrument.
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "evenhand/music/pitch.h"
#include "reader.h"

enum {
	HZ_LEAST = 380,
	HZ_MOST = 500,
	CM_MOST = 9999, /* of a number; the instrument decides below */
	/* Smallest and largest made, in parts of a usual full size. */
	SMALLEST_PERCENT = 55,
	LARGEST_PERCENT = 115,
};

static const char *const hands[] = { "right", "left", NULL };

void list_strings(const struct routine *r, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	for (int i = 0; i < r->setup.strings; i++) {
		char name[PITCH_NAME_MAX];

		/* The letter alone, without its octave. */
		pitch_name(r->setup.open[i], false, name);
		text_add(&t, i > 0 ? ", " : "");
		text_add_bytes(&t, name, strcspn(name, "-0123456789"));
	}
}

static void read_instrument(struct reader *rd, const struct node *n)
{
	const char *names[INSTRUMENT_COUNT + 1] = { NULL };
	int found;

	for (int i = 0; i < INSTRUMENT_COUNT; i++)
		names[i] = instrument_name((enum instrument)i);
	if (value_choice(rd, n, names, &found))
		rd->r->setup = instrument_setup((enum instrument)found);
}

static void read_tuning(struct reader *rd, const struct node *list)
{
	struct setup s = rd->r->setup;
	int faults = faults_found(rd);

	if (!value_list(rd, list, STRINGS_MAX))
		return;
	s.strings = 0;
	for (const struct node *n = list->first; n != NULL; n = n->next) {
		int note, above = s.strings > 0 ? s.strings - 1 : 0;
		const char *word = "";

		if (!value_word(rd, n, "tuning", &word))
			continue;
		if (!pitch_parse(word, &note))
			fault_here(rd, n,
			    message_with(M_ROUTINE_TUNING_NOTE, TEXT(word)));
		else if (s.strings > 0 && note >= s.open[above]) {
			char name[PITCH_NAME_MAX];

			pitch_name(s.open[above], false, name);
			fault_here(rd, n,
			    message_with(M_ROUTINE_TUNING_ORDER, TEXT(word),
				TEXT(name)));
			/* The others are the other way round as well. */
			return;
		} else {
			s.open[s.strings++] = note;
		}
	}
	if (faults_found(rd) == faults)
		rd->r->setup = s;
}

static void read_size(struct reader *rd, const struct node *n, bool measured)
{
	struct setup *s = &rd->r->setup;
	const char *word;
	double mm;

	if (n == NULL || !value_word(rd, n, "size", &word))
		return;
	mm = instrument_length(s->instrument, word);
	if (mm > 0)
		s->length_mm = mm;
	else if (!measured)
		fault_here(rd, n,
		    message_with(M_ROUTINE_SIZE, TEXT(word),
			WORD(instrument_word(s->instrument))));
}

static void read_length(struct reader *rd, const struct node *n)
{
	struct setup *s = &rd->r->setup;
	double full = instrument_setup(s->instrument).length_mm;
	int least = (int)(full * SMALLEST_PERCENT / 1000);
	int most = (int)(full * LARGEST_PERCENT / 1000);
	struct bounds b = { "string_length_cm", 0, CM_MOST };
	int hundredths;

	if (!number_hundredths(rd, n, b, &hundredths))
		return;
	if (hundredths < least * 100 || hundredths > most * 100)
		fault_here(rd, n,
		    message_with(M_ROUTINE_LENGTH, FIGURE(hundredths / 100.0),
			WORD(instrument_word(s->instrument)), FIGURE(least),
			FIGURE(most)));
	else
		s->length_mm = hundredths / 10.0;
}

static void read_hand_and_pitch(struct reader *rd, const struct node *map)
{
	struct bounds b = { "reference_hz", HZ_LEAST, HZ_MOST };
	int hand, hundredths;

	if (value_choice(rd, node_get(map, "bow_hand"), hands, &hand))
		rd->r->left_handed = hand == 1;
	if (number_hundredths(
		rd, node_get(map, "reference_hz"), b, &hundredths))
		rd->r->setup.reference_hz = hundredths / 100.0;
}

void read_player(struct reader *rd, const struct node *map, enum map_kind kind)
{
	const struct node *length = node_get(map, "string_length_cm");

	if (map == NULL || !keys_check(rd, map, kind))
		return;
	if (kind == MAP_PLAYER) {
		read_instrument(rd, node_get(map, "instrument"));
		read_tuning(rd, node_get(map, "tuning"));
	}
	read_size(rd, node_get(map, "size"), length != NULL);
	read_length(rd, length);
	read_hand_and_pitch(rd, map);
}
