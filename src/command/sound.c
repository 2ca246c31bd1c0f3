/*
 * sound.c - `evenhand sound`: where sound can be played, and a bow to try it
 *
 *	evenhand sound            the cards, and which one a session would take
 *	evenhand sound --try      one bow with its pulses, on that card
 *	evenhand sound --measure  how late a microphone hears it: sound_measure.c
 *
 * Everything that may hang happens in the sound child; here one only waits, and
 * only so long.
 */
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "evenhand/base/frames.h"
#include "evenhand/world/beside.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/paths.h"
#include "options.h"
#include "sound_verb.h"

enum {
	PULSES = 6,
	BOW_MS = 4000,
	LIST_MS = 6000,	 /* for the cards to be listed */
	OPEN_MS = 6000,	 /* for a card to open */
	LEAD_MS = 300,	 /* before the bow */
	AFTER_MS = 300,	 /* after it */
	SPARE_MS = 2000, /* for the card to be late */
};

static volatile sig_atomic_t stopped;

static void stop(int number)
{
	stopped = number;
}

int sound_stopped(void)
{
	return stopped;
}

/* --- the command line over the settings ------------------------------------ */

static void take(char *to, size_t size, const char *from)
{
	struct text t = text_in(to, size);

	text_add(&t, from);
}

/* A try chooses nothing for the next session, so nothing is written. */
static void choose(struct sound_verb *t, const char *card, const char *through)
{
	struct settings *s = &t->chosen.now;

	/* A card named here need not be reached through what is written. */
	if (card && !through)
		through = "";
	if (card)
		take(s->sound_card, sizeof s->sound_card, card);
	if (through)
		take(s->sound_through, sizeof s->sound_through, through);
	choices_card(s, &t->wish);
}

static void choose_microphone(struct sound_verb *t, const char *microphone)
{
	struct settings *s = &t->chosen.now;

	if (microphone)
		take(s->microphone, sizeof s->microphone, microphone);
	choices_microphone(s, &t->microphone);
}

/* --- the cards ------------------------------------------------------------- */

static void add(struct text *out, struct message m)
{
	lines_say(out, &m);
}

static void add_names(struct text *out, const struct sound_list *list)
{
	char words[LINE_COLUMNS * 4];

	for (int i = 0; i < list->count; i++) {
		const struct sound_card *c = &list->card[i];
		struct message m = message_with(
		    c->is_default ? M_SOUND_CARD_USUAL : M_SOUND_CARD,
		    TEXT(c->name), TEXT(c->api));

		message_text(&m, words, sizeof words);
		text_format(out, "  %s\n", words);
	}
	if (list->left_out > 0)
		add(out, message_with(M_SOUND_LEFT_OUT, WHOLE(list->left_out)));
}

static void add_cards(struct text *out, const struct sound_list *list)
{
	add(out, message_of(M_SOUND_CARDS));
	add_names(out, list);
	for (int i = 0; i < list->count; i++)
		if (list->card[i].wireless)
			add(out,
			    message_with(
				M_SOUND_WIRELESS, TEXT(list->card[i].name)));
}

static void add_microphones(struct text *out, const struct sound_list *list)
{
	add(out,
	    message_of(
		list->count > 0 ? M_SOUND_MICROPHONES : M_SOUND_NO_MICROPHONE));
	add_names(out, list);
}

static void add_choice(struct text *out, const struct sound_verb *t)
{
	bool other;
	const struct sound_card *c = sound_choose(
	    &t->lists.cards, &t->wish, &other);

	if (!t->chosen.now.sound)
		add(out, message_of(M_SOUND_OFF));
	if (c && other)
		add(out,
		    message_with(M_SOUND_WISH_GONE,
			TEXT(*t->wish.name ? t->wish.name : t->wish.api)));
	if (c) {
		add(out,
		    message_with(M_SOUND_WOULD, TEXT(c->name), TEXT(c->api),
			WHOLE(t->chosen.now.loudness)));
		add(out, message_of(M_SOUND_TO_TRY));
	} else {
		add(out, message_of(M_SOUND_NO_USUAL));
	}
}

static int list_cards(struct sound_verb *t)
{
	struct text out = text_in(t->page, sizeof t->page);
	struct fault f;

	if (!sound_list(t->keeper, &t->lists, LIST_MS, &f)) {
		command_fault(&f);
		return EXIT_UNAVAILABLE;
	}
	if (t->lists.cards.count == 0) {
		struct message m = message_of(M_SOUND_NONE);

		command_say(&m);
		return EXIT_UNAVAILABLE;
	}
	add_cards(&out, &t->lists.cards);
	add_microphones(&out, &t->lists.microphones);
	add_choice(&out, t);
	return command_print(&out) ? EXIT_GOOD : EXIT_IO;
}

/* --- one bow --------------------------------------------------------------- */

bool sound_print(struct sound_verb *t, struct message m)
{
	struct text out = text_in(t->page, sizeof t->page);

	lines_say(&out, &m);
	return command_print(&out);
}

/* Waits until the card sounds or it is known that it will not. */
bool sound_opened(struct device *d)
{
	int64_t until = clock_steady_ms() + OPEN_MS;

	while (!stopped && device_state(d) != DEVICE_SOUNDS &&
	    device_state(d) != DEVICE_MISSING && clock_steady_ms() < until) {
		device_look(d);
		clock_sleep_us(SOUND_LOOK_US);
	}
	return device_state(d) == DEVICE_SOUNDS;
}

/* Plays the bow.  False: the sound was lost on the way, or it was stopped. */
static bool play(struct device *d)
{
	static const struct passage bow = {
		.bow_ms = BOW_MS,
		.pulses = PULSES,
		.bows_each = 1,
		.turns = 1,
	};
	int64_t at = device_frame(d) + frames_of_ms(LEAD_MS, SOUND_RATE);
	int64_t end = at + frames_of_ms(BOW_MS + AFTER_MS, SOUND_RATE);
	int64_t until = clock_steady_ms() + LEAD_MS + BOW_MS + AFTER_MS +
	    SPARE_MS;

	if (!device_play(d, &bow, at))
		return false;
	while (!stopped && device_state(d) == DEVICE_SOUNDS &&
	    device_heard(d) < end && clock_steady_ms() < until) {
		clock_sleep_us(SOUND_LOOK_US);
		device_look(d);
	}
	return device_heard(d) >= end && device_state(d) == DEVICE_SOUNDS;
}

/* Why there is no sound: what a session says of it, told for here. */
int sound_say_missing(const struct device *d)
{
	struct message m = device_sentence(d);

	if (m.id == M_DEVICE_NONE)
		m = message_of(M_SOUND_NONE);
	else if (m.id == M_DEVICE_MUTE || m.id == M_NONE)
		m = message_of(M_SOUND_NO_ANSWER);
	else if (m.id == M_DEVICE_NO_ROOM)
		m = message_of(M_DEVICE_NO_KEEPER);
	command_say(&m);
	return EXIT_UNAVAILABLE;
}

static int say_played(struct sound_verb *t, struct device *d, int broken)
{
	broken = device_dropouts(d) - broken;
	if (!sound_print(t, message_with(M_SOUND_PLAYED, WHOLE(PULSES - 1))))
		return EXIT_IO;
	if (broken > 0)
		sound_print(t, message_with(M_SOUND_BROKEN, WHOLE(broken)));
	return EXIT_GOOD;
}

static int play_on(struct sound_verb *t, struct device *d)
{
	struct message m;
	int broken;

	if (!sound_opened(d))
		return stopped ? EXIT_GOOD : sound_say_missing(d);
	if (!sound_print(t, message_of(M_SOUND_CAUTION)) ||
	    !sound_print(t, device_sentence(d)) ||
	    !sound_print(t,
		message_with(M_SOUND_PLAYS, WHOLE(t->chosen.now.loudness),
		    WHOLE(BOW_MS / 1000))))
		return EXIT_IO;
	broken = device_dropouts(d);
	if (play(d))
		return say_played(t, d, broken);
	if (stopped)
		return EXIT_GOOD;
	m = message_with(M_SOUND_LOST, TEXT(device_name(d)));
	command_say(&m);
	return EXIT_UNAVAILABLE;
}

/* On a card that is opened for it; a key or a signal ends it gently. */
static int sounding(
    struct sound_verb *t, int (*way)(struct sound_verb *t, struct device *d))
{
	struct sigaction gently = { .sa_handler = stop };
	struct fault f;
	int status;

	struct device *d = device_sound_open(
	    t->keeper, &t->wish, SOUND_RATE, true, &f);
	if (!d) {
		command_fault(&f);
		return EXIT_OS;
	}
	sigemptyset(&gently.sa_mask);
	sigaction(SIGINT, &gently, NULL);
	sigaction(SIGTERM, &gently, NULL);
	sigaction(SIGHUP, &gently, NULL);
	status = way(t, d);
	device_close(d);
	return stopped ? 128 + stopped : status;
}

static int go(struct sound_verb *t, bool bow, bool measure)
{
	struct message m = message_of(M_SOUND_ONE_THING);

	if (bow && measure) {
		command_say(&m);
		return EXIT_USAGE;
	}
	if (bow)
		return sounding(t, play_on);
	return measure ? sounding(t, sound_measure) : list_cards(t);
}

int command_sound(int argc, char **argv)
{
	const char *card = NULL, *through = NULL, *loudness = NULL;
	const char *microphone = NULL;
	bool bow = false, measure = false;
	const struct option_wish wishes[] = {
		{ "try", M_SOUND_OPTION_TRY, NULL, &bow, NULL },
		{ "measure", M_SOUND_OPTION_MEASURE, NULL, &measure, NULL },
		{ "card", M_COMMAND_OPTION_CARD, "NAME", NULL, &card },
		{ "through", M_COMMAND_OPTION_THROUGH, "NAME", NULL, &through },
		{ "microphone", M_COMMAND_OPTION_MICROPHONE, "NAME", NULL,
		    &microphone },
		{ "loudness", M_COMMAND_OPTION_LOUDNESS, "PERCENT", NULL,
		    &loudness },
		OPTIONS_END,
	};
	char program[PATH_BYTES_MAX];
	const struct verb verb = { "sound", "", M_SOUND_ABOUT, 0, 0, wishes };
	struct fault f;
	int status;

	if (!options_read(&verb, &argc, &argv, &status))
		return status;
	struct sound_verb *t = calloc(1, sizeof *t);
	fault_set(&f, message_of(M_COMMAND_NO_MEMORY));
	status = EXIT_OS;
	beside_find(SOUND_PROGRAM, program, sizeof program);
	if (!t || !(t->keeper = sound_keeper_open(program, &f))) {
		command_fault(&f);
		free(t);
		return EXIT_OS;
	}
	choices_read(&t->chosen);
	status = EXIT_USAGE;
	if (options_loudness(loudness, &t->chosen.now.loudness)) {
		choose(t, card, through);
		choose_microphone(t, microphone);
		status = go(t, bow, measure);
	}
	sound_keeper_close(t->keeper);
	free(t);
	return status;
}
