/*
 * turn_values.c - the measures of a turn by name
 *
 * A table: where a measure lies, and what must hold for it to be told.
 */
#include <stddef.h>
#include <string.h>

#include "evenhand/listen/turn.h"

enum kind { WHOLE, REAL };

/* What must be known. */
enum known { ALWAYS, HEARD, ROOM, TOPS, EVEN, TIMED, SWAY, WIDTH, CALM };

static const struct measure {
	const char *name;
	size_t at;
	enum kind kind;
	enum known known;
} measures[] = {
#define AT(member) offsetof(struct turn_heard, member)
	{ "answer", AT(answer), WHOLE, ALWAYS },
	{ "distance", AT(distance), WHOLE, ALWAYS },
	{ "share", AT(share), REAL, ALWAYS },
	{ "room", AT(room), REAL, ROOM },
	{ "bows", AT(bows), WHOLE, HEARD },
	{ "bows_listened", AT(bows_listened), WHOLE, HEARD },
	{ "bows_full", AT(bows_full), WHOLE, HEARD },
	{ "tops_asked", AT(arrivals.asked), WHOLE, HEARD },
	{ "tops_heard", AT(arrivals.heard), WHOLE, HEARD },
	{ "travel_cents", AT(arrivals.travel_cents), REAL, TOPS },
	{ "travel_spread_cents", AT(arrivals.travel_spread), REAL, TOPS },
	{ "travel_share", AT(arrivals.travel_share), REAL, TOPS },
	{ "tops_sure", AT(arrivals.sure), REAL, TOPS },
	{ "unevenness", AT(arrivals.unevenness), REAL, EVEN },
	{ "late_s", AT(arrivals.late_s), REAL, TIMED },
	{ "late_spread_s", AT(arrivals.late_spread_s), REAL, TIMED },
	{ "rate_hz", AT(sway.rate_hz), REAL, SWAY },
	{ "cycles", AT(sway.cycles), WHOLE, SWAY },
	{ "rate_unevenness", AT(sway.unevenness), REAL, SWAY },
	{ "middle_cents", AT(sway.middle_cents), REAL, SWAY },
	{ "sway_from_s", AT(sway.from_s), REAL, SWAY },
	{ "sway_to_s", AT(sway.to_s), REAL, SWAY },
	{ "sway_sure", AT(sway.sure), REAL, SWAY },
	{ "width_cents", AT(sway.width_cents), REAL, WIDTH },
	{ "width_spread_cents", AT(sway.width_spread), REAL, WIDTH },
	{ "stops", AT(stops), WHOLE, CALM },
	{ "drift_db", AT(drift_db), REAL, CALM },
	{ "unsteady_db", AT(unsteady_db), REAL, CALM },
	{ "calm_sure", AT(calm_sure), REAL, CALM },
};

enum { MEASURES = sizeof(measures) / sizeof(*measures) };
_Static_assert((int)MEASURES <= (int)TURN_VALUES_MAX, "room for all values");
_Static_assert(sizeof(enum turn_answer) == sizeof(int) &&
	sizeof(enum turn_distance) == sizeof(int),
    "enums are read and written as whole numbers");

static bool known(const struct turn_heard *h, enum known k)
{
	if (k == ALWAYS)
		return true;
	if (h->answer != TURN_HEARD)
		return false;
	switch (k) {
	case ROOM:
		return h->room > 0;
	case TOPS:
		return h->arrivals.heard > 0;
	case EVEN:
		return h->arrivals.even_known;
	case TIMED:
		return h->arrivals.timed;
	case SWAY:
		return h->sway.heard;
	case WIDTH:
		return h->width_known;
	case CALM:
		return h->calm_known;
	default:
		return true;
	}
}

int turn_values(const struct turn_heard *heard, struct turn_value *out)
{
	int n = 0;

	for (int i = 0; i < MEASURES; i++) {
		const struct measure *m = &measures[i];
		const char *at = (const char *)heard + m->at;
		int whole;

		if (!known(heard, m->known))
			continue;
		out[n].name = m->name;
		if (m->kind == WHOLE) {
			memcpy(&whole, at, sizeof(whole));
			out[n].value = whole;
		} else {
			memcpy(&out[n].value, at, sizeof(out[n].value));
		}
		n++;
	}
	return n;
}
