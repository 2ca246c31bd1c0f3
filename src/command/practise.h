/*
 * practise.h - what a sitting holds together
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_PRACTISE_H
#define EVENHAND_COMMAND_PRACTISE_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/coach/first.h"
#include "evenhand/coach/session.h"
#include "evenhand/screen/lines.h"
#include "evenhand/world/device.h"
#include "evenhand/world/journal.h"
#include "evenhand/world/keys.h"
#include "evenhand/world/lines_out.h"
#include "evenhand/world/load.h"
#include "evenhand/world/script.h"
#include "evenhand/world/settings_file.h"
#include "evenhand/world/sound_keeper.h"
#include "practise_listen.h"
#include "practise_screen.h"

/* Too large for a stack. */
struct practice {
	struct routine *routine;
	struct history history;
	struct journal *journal;
	struct sound_keeper *keeper; /* NULL: no sound is wished for */
	struct device *device;
	struct script *script; /* NULL: keys are live */
	struct keys *keys;
	struct lines_out *out; /* NULL: whoever reads may be waited for */
	struct lines_out *err; /* standard error, the same */
	struct session session;
	struct first first; /* stands before the session, see there */
	struct effects effects;

	struct practice_screen screen;
	struct practice_listen listen;
	struct settings_file chosen;

	int64_t reached;	 /* the frame at the ear, as last looked at */
	int64_t lost_ms;	 /* by the device, as last looked at */
	int dropouts;		 /* the same */
	enum device_state heard; /* the same; UNHEARD: not said yet */
	enum message_id told_sound; /* what is missing, as last told */
	bool unheard;		    /* the last passage could not be played */
	bool rows_new;	 /* rows the journal may not have written yet */
	bool over;	 /* nothing more will happen */
	bool mute;	 /* standard output is gone */
	bool input_over; /* no key will come any more */
	bool taught;	 /* the first minutes come first */
	bool loudness_changed;

	char typed[SESSION_WORDS_MAX]; /* words, as last looked at */
	struct load_paths paths;
	char bytes[LINES_BYTES_MAX];
};

/* Plays the session from its first page to its end. */
void practice_run(struct practice *p);

/* Does all that the session asked for. */
void practice_effects(struct practice *p);

/* Tells one event, unless standard output is gone. */
void practice_say(struct practice *p, struct message m);

/* Sends on the lines for which there was no room before. */
void practice_lines_on(struct practice *p);

/* Says what the journal or a device has to say, where it can be read. */
void practice_trouble(struct practice *p, const struct message *m);

/* Keeps one setting as it is now; what prevents it is said once, there too. */
void practice_keep(struct practice *p, enum setting what);

#endif
