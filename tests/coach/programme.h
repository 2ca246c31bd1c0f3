/*
 * programme.h - the six stages of the worked cello programme, fingers 1 to 4
 *
 * What the shipped cello routine says, made in memory for tests of rooms that
 * cannot read a file.  Any stage may be worked on, and the last is the limit.
 */
#ifndef EVENHAND_TESTS_PROGRAMME_H
#define EVENHAND_TESTS_PROGRAMME_H

#include <string.h>

#include "evenhand/routine/routine.h"

enum { AIR, WIDE, THIRDS, TONE, SEMITONE, LETTING_GO };

static inline struct routine programme_cello(int work_on)
{
	static const struct {
		const char *id, *title, *cue, *check;
		int travel_cents, start_pulses;
	} stages[] = {
		{ "air", "Forearm swing, no instrument", "LOOSE ARM",
		    "Trunk still in the mirror", 0, 0 },
		{ "wide", "First to fourth position", "LIGHT HAND",
		    "Elbow off the body", 500, 4 },
		{ "thirds", "First to third position", "STEADY BOW",
		    "Idle fingers hover close", 300, 0 },
		{ "tone", "A tone apart", "ARM LEADS",
		    "Forearm and hand in one line", 200, 0 },
		{ "semitone", "A semitone apart", "STAY EASY",
		    "Bow undisturbed", 100, 0 },
		{ "letting-go", "Inside the semitone", "LET IT GO",
		    "Tip at rest, forearm swinging", 50, 0 },
	};
	struct routine r = {
		.name = "From wide to still",
		.written_by = "",
		.homework_for = "",
		.note = "",
		.text = "",
		.edition = 1,
		.setup = instrument_setup(INSTRUMENT_CELLO),
		.bow_ms = 4000,
		.ladder_count = 3,
		.ladder = { 4, 6, 8 },
		.count_in_bows = 1,
		.take = TAKE_FINGERS,
		.units = 4,
		.bows_each = 2,
		.change_ms = 4000,
		.cap_ms = 300000,
		.per_day = 2,
		.hours_apart = 3,
		.days_a_week = 6,
		.recap_num = 1,
		.recap_den = 2,
		.move_days = 5,
		.move_clean = 2,
		.move_of = 3,
		.stages = LETTING_GO + 1,
		.work_on = work_on,
		.no_further_than = LETTING_GO,
	};

	for (int u = 0; u < r.units; u++) {
		r.unit[u].name[0] = (char)('1' + u);
		r.unit[u].from = r.unit[u].to = u + 1;
	}
	for (int i = 0; i < r.stages; i++) {
		struct stage *s = &r.stage[i];

		strcpy(s->id, stages[i].id);
		s->title = stages[i].title;
		s->cue = stages[i].cue;
		s->say = "";
		s->in_the_air = i == AIR;
		s->string = i == AIR ? -1 : 1;
		s->from = 2;
		s->travel_cents = stages[i].travel_cents;
		s->start_pulses = stages[i].start_pulses;
		s->checks = 1;
		s->check[0] = stages[i].check;
	}
	r.stage[AIR].minutes_ms = 180000;
	r.stage[SEMITONE].patience = true;
	r.stage[LETTING_GO].patience = true;
	return r;
}

#endif
