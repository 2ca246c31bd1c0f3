/*
 * today.c - evenhand today: what today holds and why, nothing played
 *
 * Only looks: no journal is made, none is locked, and it works while somebody
 * practises.  A journal that cannot be read is said, and the plan is then
 * what the routine alone gives.
 */
#include <stdlib.h>

#include "choices.h"
#include "evenhand/base/tongue.h"
#include "evenhand/coach/history.h"
#include "evenhand/screen/lines.h"
#include "evenhand/screen/plan_json.h"
#include "options.h"

/* What the command line asks. */
struct ask {
	const char *routine, *player;
	struct moment now;
	enum marking marking;
	bool marking_said;
	bool why, json;
};

/* Everything the plan is made of, too large for the stack. */
struct today {
	struct settings_file chosen;
	struct routine *routine;
	struct load_paths paths;
	struct history history;
	struct plan plan;
	struct forecast forecast;
	char page[PLAN_JSON_BYTES_MAX];
};

static bool ask_read(struct ask *a, int argc, char **argv, int *status)
{
	const char *at = NULL, *marking = NULL;
	const struct option_wish wishes[] = {
		{ "why", M_COMMAND_OPTION_WHY, NULL, &a->why, NULL },
		{ "json", M_COMMAND_OPTION_PLAN_JSON, NULL, &a->json, NULL },
		OPTION_MARKING(&marking),
		OPTION_PLAYER(&a->player),
		OPTION_AT(&at),
		OPTIONS_END,
	};
	const struct verb verb = { "today", "[ROUTINE]", M_COMMAND_TODAY, 0, 1,
		wishes };

	if (!options_read(&verb, &argc, &argv, status))
		return false;
	*status = EXIT_USAGE;
	if (argc > 0)
		a->routine = argv[0];
	a->marking_said = marking != NULL;
	/* What programs read is the same everywhere. */
	if (a->json)
		tongue_set(NULL);
	return options_now(at, &a->now) &&
	    options_marking(marking, &a->marking);
}

static void look_ahead(struct today *t)
{
	forecast_make(&t->forecast, t->routine, &t->history, t->plan.work_stage,
	    t->plan.day);
	plan_add_forecast(&t->plan, &t->forecast, t->routine);
}

static void tell(struct today *t, const struct ask *a, struct text *page)
{
	struct message start = plan_before_start(&t->history);

	if (a->json) {
		plan_json(page, t->routine, &t->plan, &t->forecast);
		return;
	}
	lines_plan(page, t->routine, &t->plan, a->why ? TELL_WHY : TELL_ROUNDS);
	if (t->plan.verdict == VERDICT_PRACTISE)
		lines_say(page, &start);
}

static int show(struct today *t, const struct ask *a)
{
	int status = EXIT_GOOD;
	struct text page = text_in(t->page, sizeof(t->page));
	struct plan_wish wish = {
		.history = &t->history, .now = a->now, .marking = a->marking
	};

	choices_read(&t->chosen);
	if (!a->marking_said)
		wish.marking = choices_marking(&t->chosen.now);
	t->routine = command_load(a->routine, &t->paths, &status);
	if (!t->routine)
		return status;
	if (!command_look_back(
		&t->history, a->player, a->now, t->routine, &status))
		return status;
	wish.routine = t->routine;
	plan_make(&t->plan, &wish);
	look_ahead(t);
	tell(t, a, &page);
	return command_print(&page) ? status : EXIT_IO;
}

int command_today(int argc, char **argv)
{
	struct ask ask = { 0 };
	struct today *t;
	int status;

	if (!ask_read(&ask, argc, argv, &status))
		return status;
	t = calloc(1, sizeof(*t));
	if (!t) {
		struct message m = message_of(M_COMMAND_NO_MEMORY);

		command_say(&m);
		return EXIT_OS;
	}
	status = show(t, &ask);
	history_done(&t->history);
	routine_free(t->routine);
	free(t);
	return status;
}
