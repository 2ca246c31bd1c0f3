/*
 * track.c - `evenhand track`: today's practice as a file of sound
 *
 *	evenhand track wren.yaml -o today.flac
 *	evenhand track --stage tone --rung 4 --rounds 3 -o tone.wav
 *
 * Only looks, as `today` does: what is played away from the computer has no
 * marks and is not kept.
 */
#include <stdlib.h>
#include <string.h>

#include "choices.h"
#include "evenhand/screen/lines.h"
#include "options.h"
#include "practise_stage.h"
#include "track.h"

enum { PAGE_BYTES = 2048, RUNGS_BYTES = 80, NUMBER_MAX = 1000 };

/* What the command line asks. */
struct ask {
	const char *routine; /* NULL: the built-in one */
	const char *player, *stage, *loudness;
	struct track_place place;
	struct moment now;
	enum marking marking;
	bool marking_said, alone, tones;
	int rate, rung, rounds; /* rung and rounds 0: not said */
};

/* What a track is made of, too large for the stack. */
struct made {
	struct settings_file chosen;
	struct load_paths paths;
	struct routine *routine;
	struct history history;
	struct plan_wish wish;
	struct plan plan;
	struct track track;
	struct audio_wish words;
};

static bool refuse(struct message m)
{
	command_say(&m);
	return false;
}

/* --- the command line ---------------------------------------------------- */

static bool rate_of(const char *word, int *rate)
{
	static const struct {
		const char *word;
		int rate;
	} rates[] = { { "48", 48000 }, { "44.1", 44100 }, { "96", 96000 },
		{ "48000", 48000 }, { "44100", 44100 }, { "96000", 96000 } };

	*rate = rates[0].rate;
	if (!word)
		return true;
	for (size_t i = 0; i < sizeof(rates) / sizeof(*rates); i++)
		if (strcmp(word, rates[i].word) == 0) {
			*rate = rates[i].rate;
			return true;
		}
	return refuse(message_with(M_TRACK_RATE, TEXT(word)));
}

/* A whole number from 1 on; one that is too large stays so. */
static bool number_of(const char *option, const char *word, int *number)
{
	int n = 0;

	if (!word)
		return true;
	if (!*word || word[strspn(word, "0123456789")])
		return refuse(
		    message_with(M_TRACK_NUMBER, TEXT(option), TEXT(word)));
	for (const char *c = word; *c && n < NUMBER_MAX; c++)
		n = n * 10 + (*c - '0');
	*number = n;
	return n > 0 ||
	    refuse(message_with(M_TRACK_NUMBER, TEXT(option), TEXT(word)));
}

static bool ask_read(struct ask *a, int argc, char **argv, int *status)
{
	const char *at = NULL, *marking = NULL, *rate = NULL, *rung = NULL,
		   *rounds = NULL;
	int percent;
	const struct option_wish wishes[] = {
		{ "output", M_TRACK_OPTION_OUT, "FILE", NULL, &a->place.path },
		{ "stage", M_TRACK_OPTION_STAGE, "ID", NULL, &a->stage },
		{ "rung", M_TRACK_OPTION_RUNG, "PULSES", NULL, &rung },
		{ "rounds", M_TRACK_OPTION_ROUNDS, "NUMBER", NULL, &rounds },
		{ "tones", M_TRACK_OPTION_TONES, NULL, &a->tones, NULL },
		{ "rate", M_TRACK_OPTION_RATE, "44.1|48|96", NULL, &rate },
		{ "loudness", M_COMMAND_OPTION_LOUDNESS, "PERCENT", NULL,
		    &a->loudness },
		{ "force", M_COMMAND_OPTION_FORCE, NULL, &a->place.force,
		    NULL },
		OPTION_MARKING(&marking),
		OPTION_PLAYER(&a->player),
		OPTION_AT(&at),
		OPTIONS_END,
	};
	const struct verb verb = { "track", "[ROUTINE] -o FILE", M_TRACK_ABOUT,
		0, 1, wishes };

	if (!options_read(&verb, &argc, &argv, status))
		return false;
	*status = EXIT_USAGE;
	a->routine = argc > 0 ? argv[0] : NULL;
	a->marking_said = marking != NULL;
	a->alone = a->stage || rung || rounds;
	if (!a->place.path)
		return refuse(message_of(M_TRACK_OUT));
	if (!audio_format_of(a->place.path, &a->place.format))
		return refuse(
		    message_with(M_TRACK_SUFFIX, TEXT(a->place.path)));
	return rate_of(rate, &a->rate) && number_of("--rung", rung, &a->rung) &&
	    number_of("--rounds", rounds, &a->rounds) &&
	    options_loudness(a->loudness, &percent) &&
	    options_now(at, &a->now) && options_marking(marking, &a->marking);
}

/* --- what there is to play ------------------------------------------------ */

/* Why nothing is played today, as `today` tells it. */
static bool say_nothing(const struct plan *p)
{
	refuse(message_of(M_TRACK_NOTHING));
	for (int i = 0; i < p->reasons; i++)
		if (!p->reason[i].detail)
			refuse(p->reason[i].message);
	for (int i = 0; i < p->cautions; i++)
		refuse(p->caution[i]);
	return false;
}

/* Whether a rung is one of the routine, where there are rungs at all. */
static bool rung_good(const struct routine *r, int stage, int rung)
{
	char rungs[RUNGS_BYTES];
	struct text t = text_in(rungs, sizeof(rungs));

	if (rung == 0)
		return true;
	if (r->stage[stage].in_the_air)
		return refuse(message_with(
		    M_TRACK_RUNG_AIR, TEXT(r->stage[stage].title)));
	for (int i = 0; i < r->ladder_count; i++) {
		if (r->ladder[i] == rung)
			return true;
		text_format(&t, i > 0 ? ", %d" : "%d", r->ladder[i]);
	}
	return refuse(message_with(M_TRACK_RUNG, WHOLE(rung), TEXT(rungs)));
}

/* One stage of today.  False: said, and *status is the end. */
static bool plan_of_stage(struct made *m, const struct ask *a, int *status)
{
	const struct routine *r = m->routine;
	const char *title;
	int stage, most;

	if (a->stage) {
		if (!stage_opened(r, a->stage, &stage, status))
			return false;
		m->wish.stage = stage + 1;
	}
	/* What today works on, where no stage is said. */
	plan_make(&m->plan, &m->wish);
	stage = a->stage ? m->wish.stage - 1 : m->plan.work_stage;
	title = r->stage[stage].title;
	*status = EXIT_USAGE;
	if (!rung_good(r, stage, a->rung))
		return false;
	*status = EXIT_NO_PERMISSION;
	if (plan_alone(&m->plan, &m->wish, a->rung, a->rounds, &most))
		return true;
	if (m->plan.verdict != VERDICT_PRACTISE)
		return say_nothing(&m->plan);
	if (most == 0)
		return refuse(message_with(M_TRACK_NOT_TODAY, TEXT(title)));
	*status = EXIT_USAGE;
	return refuse(message_with(M_TRACK_LONG, WHOLE(a->rounds), TEXT(title),
	    CLOCK(m->plan.cap_ms), WHOLE(most)));
}

static bool plan_of(struct made *m, const struct ask *a, int *status)
{
	m->wish = (struct plan_wish) { .routine = m->routine,
		.history = &m->history,
		.now = a->now,
		.marking = a->marking_said ? a->marking
					   : choices_marking(&m->chosen.now) };
	if (a->alone)
		return plan_of_stage(m, a, status);
	plan_make(&m->plan, &m->wish);
	*status = EXIT_NO_PERMISSION;
	return m->plan.verdict == VERDICT_PRACTISE || say_nothing(&m->plan);
}

/* --- the track ------------------------------------------------------------- */

static bool say_written(const struct made *m, const struct ask *a)
{
	char bytes[PAGE_BYTES];
	struct text page = text_in(bytes, sizeof(bytes));
	const struct message said[] = {
		message_with(M_TRACK_WRITTEN, TEXT(a->place.path),
		    CLOCK(m->plan.length_ms), WHOLE(m->track.passages)),
		message_of(M_TRACK_UNCOUNTED),
		message_of(M_TRACK_GOES_ON),
	};

	for (size_t i = 0; i < sizeof(said) / sizeof(*said); i++)
		lines_say(&page, &said[i]);
	return command_print(&page);
}

static int write_track(struct made *m, const struct ask *a)
{
	struct track_place place = a->place;
	struct fault f;
	int percent = m->chosen.now.loudness, stopped = 0;

	options_loudness(a->loudness, &percent);
	place.level = choices_level(percent);
	if (!track_make(&m->track, &m->wish, &m->plan, a->rate)) {
		say_nothing(&m->plan);
		return EXIT_NO_PERMISSION;
	}
	if (a->tones)
		track_tones(&m->track, m->routine);
	track_words(&m->words, &m->track, m->routine, a->alone);
	if (!track_file(&m->track, &m->words, &place, &stopped, &f)) {
		if (stopped)
			return 128 + stopped;
		command_fault(&f);
		return command_status(&f);
	}
	return say_written(m, a) ? EXIT_GOOD : EXIT_IO;
}

static int make(struct made *m, const struct ask *a)
{
	int status, looked, written;

	choices_read(&m->chosen);
	m->routine = command_load(a->routine, &m->paths, &status);
	if (!m->routine)
		return status;
	if (!command_look_back(
		&m->history, a->player, a->now, m->routine, &status))
		return status;
	looked = status;
	if (!plan_of(m, a, &status))
		return status;
	written = write_track(m, a);
	return written == EXIT_GOOD ? looked : written;
}

int command_track(int argc, char **argv)
{
	struct ask ask = { 0 };
	struct made *m;
	int status;

	if (!ask_read(&ask, argc, argv, &status))
		return status;
	m = calloc(1, sizeof(*m));
	if (!m) {
		refuse(message_of(M_COMMAND_NO_MEMORY));
		return EXIT_OS;
	}
	status = make(m, &ask);
	history_done(&m->history);
	routine_free(m->routine);
	free(m);
	return status;
}
