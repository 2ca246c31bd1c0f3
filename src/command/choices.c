/*
 * choices.c - what was chosen: the settings file, and the command line over it
 */
#include "choices.h"

#include "options.h"

enum { LEVEL_MOST = 700 };

void choices_read(struct settings_file *f)
{
	struct faults faults = { 0 };

	settings_open(f, &faults);
	command_faults(&faults);
}

static void take_text(char *to, size_t size, const char *from)
{
	struct text t = text_in(to, size);

	text_add(&t, from);
}

static void keep(struct settings_file *f, enum setting what)
{
	struct fault fault;

	if (!settings_keep(f, what, &fault))
		command_fault(&fault);
}

void choices_take(struct settings_file *f, const struct call *c)
{
	struct settings *s = &f->now;
	/* Another card need not be reached through what was chosen before. */
	const char *through = c->card && !c->through && *s->sound_through
	    ? ""
	    : c->through;
	/* Who names a microphone wants it to listen. */
	bool listening = c->listen || c->no_listen || c->microphone;
	const struct {
		const void *said;
		enum setting what;
	} all[] = {
		{ c->marking, SETTING_MARKING },
		{ c->card, SETTING_SOUND_CARD },
		{ through, SETTING_SOUND_THROUGH },
		{ c->loudness, SETTING_LOUDNESS },
		{ listening ? c : NULL, SETTING_LISTEN },
		{ c->microphone, SETTING_MICROPHONE },
	};

	if (c->marking)
		s->mark_turns = c->way == MARKING_TURN;
	if (c->card)
		take_text(s->sound_card, sizeof s->sound_card, c->card);
	if (through)
		take_text(s->sound_through, sizeof s->sound_through, through);
	if (c->loudness)
		s->loudness = c->percent;
	if (listening)
		s->listen = !c->no_listen;
	if (c->microphone)
		take_text(s->microphone, sizeof s->microphone, c->microphone);
	for (size_t i = 0; i < sizeof all / sizeof *all && !c->script; i++)
		if (all[i].said)
			keep(f, all[i].what);
}

enum marking choices_marking(const struct settings *s)
{
	return s->mark_turns ? MARKING_TURN : MARKING_ROUND;
}

/* All the way up stays well under full scale, whatever sounds together. */
int choices_level(int percent)
{
	return percent * LEVEL_MOST / 100;
}

void choices_card(const struct settings *s, struct sound_wish *w)
{
	take_text(w->name, sizeof w->name, s->sound_card);
	take_text(w->api, sizeof w->api, s->sound_through);
	w->level = choices_level(s->loudness);
}

void choices_microphone(const struct settings *s, struct sound_wish *w)
{
	*w = (struct sound_wish) { .level = 0 };
	take_text(w->name, sizeof w->name, s->microphone);
}

enum terminal_colours choices_colours(const struct settings *s)
{
	switch (s->colours) {
	case COLOURS_NONE:
		return TERMINAL_COLOURLESS;
	case COLOURS_8:
		return TERMINAL_8;
	case COLOURS_256:
		return TERMINAL_256;
	case COLOURS_AUTO:
		break;
	}
	return TERMINAL_AUTO;
}
