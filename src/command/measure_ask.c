/*
 * measure_ask.c - what is known of what was played
 *
 *	--routine cello --stage tone --finger 2    the notes of that finger
 *	--stage tone			           of all fingers
 *	--notes E3-A3			           as they are written
 */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/listen/ask.h"
#include "evenhand/music/pitch.h"
#include "measure.h"
#include "options.h"

enum { NAME_BYTES = 16, LIST_BYTES = 200, CHANNEL_DIGITS = 4, DECIMAL = 10 };

static bool refuse(struct message m)
{
	command_say(&m);
	return false;
}

/* "E3-A3" or "E3"; a name may begin with no sign, so '-' parts them. */
static bool read_notes(struct measure_ask *a)
{
	const char *to = strchr(a->notes, '-');
	char name[NAME_BYTES];
	struct text t = text_in(name, sizeof(name));
	int low, high;
	double swap;

	text_add_bytes(
	    &t, a->notes, to ? (size_t)(to - a->notes) : strlen(a->notes));
	if (t.cut || !pitch_parse(name, &low) ||
	    !pitch_parse(to ? to + 1 : name, &high))
		return false;
	a->asked.known = true;
	a->asked.asked.low_hz = pitch_hz(low, a->reference_hz);
	a->asked.asked.high_hz = pitch_hz(high, a->reference_hz);
	if (low > high) {
		swap = a->asked.asked.low_hz;
		a->asked.asked.low_hz = a->asked.asked.high_hz;
		a->asked.asked.high_hz = swap;
	}
	return asked_valid(&a->asked.asked);
}

static void list_units(const struct routine *r, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	for (int i = 0; i < r->units; i++)
		text_format(&t, i > 0 ? ", %s" : "%s", r->unit[i].name);
}

/* Takes in the notes of one unit; false when it has none. */
static bool take_unit(
    struct measure_ask *a, const struct routine *r, int stage, int unit)
{
	struct ask_time when = { 0, r->bow_ms, 1, 1 };
	struct asked *all = &a->asked.asked;
	struct turn_asked turn;

	if (!ask_turn(r, stage, unit, &when, &turn))
		return false;
	if (!a->asked.known)
		*all = turn.asked;
	all->low_hz = fmin(all->low_hz, turn.asked.low_hz);
	all->high_hz = fmax(all->high_hz, turn.asked.high_hz);
	a->asked.known = true;
	a->asked.travel_cents = turn.travel_cents;
	a->asked.only_bow = turn.travel_cents <= 0;
	return true;
}

static bool take_stage(struct measure_ask *a, const struct routine *r)
{
	int stage = a->stage ? routine_stage(r, a->stage) : r->work_on;
	int unit = a->finger ? routine_unit(r, a->finger) : 0;
	int units = a->finger ? 1 : r->units;
	char list[LIST_BYTES];
	struct text t = text_in(list, sizeof(list));

	if (stage < 0) {
		for (int i = 0; i < r->stages; i++)
			text_format(&t, i > 0 ? ", %s" : "%s", r->stage[i].id);
		return refuse(message_with(
		    M_COMMAND_STAGE_UNKNOWN, TEXT(a->stage), TEXT(list)));
	}
	if (unit < 0) {
		list_units(r, list, sizeof(list));
		return refuse(message_with(
		    M_MEASURE_NO_UNIT, TEXT(a->finger), TEXT(list)));
	}
	for (int i = unit; i < unit + units; i++)
		if (!take_unit(a, r, stage, i))
			return refuse(message_with(
			    M_MEASURE_IN_THE_AIR, TEXT(r->stage[stage].id)));
	return true;
}

static bool read_routine(struct measure_ask *a, int *status)
{
	struct load_paths paths;
	struct routine *r = command_load(a->routine, &paths, status);
	bool good;

	if (!r)
		return false;
	*status = EXIT_USAGE;
	a->reference_hz = r->setup.reference_hz;
	good = take_stage(a, r);
	routine_free(r);
	return good;
}

static bool read_channel(struct measure_ask *a)
{
	size_t digits = strspn(a->channel, "0123456789");

	a->channel_number = (int)strtol(a->channel, NULL, DECIMAL);
	if (digits == 0 || digits > CHANNEL_DIGITS || a->channel[digits] ||
	    a->channel_number < 1 || a->channel_number > AUDIO_CHANNELS_MAX)
		return refuse(
		    message_with(M_MEASURE_BAD_CHANNEL, TEXT(a->channel)));
	return true;
}

bool measure_known(struct measure_ask *a, int *status)
{
	bool routine = a->routine || a->stage;

	*status = EXIT_USAGE;
	a->reference_hz = PITCH_ISO_16;
	if (a->channel && !read_channel(a))
		return false;
	if (a->finger && !a->stage)
		return refuse(message_of(M_MEASURE_NO_STAGE));
	if (a->notes && routine)
		return refuse(message_of(M_MEASURE_TWICE_KNOWN));
	if (a->notes && !read_notes(a))
		return refuse(
		    message_with(M_MEASURE_BAD_NOTES, TEXT(a->notes)));
	return !routine || read_routine(a, status);
}
