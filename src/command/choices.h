/*
 * choices.h - what was chosen: the settings file, and the command line over it
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_CHOICES_H
#define EVENHAND_COMMAND_CHOICES_H

#include <stdbool.h>

#include "evenhand/coach/plan.h"
#include "evenhand/world/device.h"
#include "evenhand/world/settings_file.h"
#include "evenhand/world/terminal.h"

/* Reads the settings; what is wrong in them is said and nothing stops. */
void choices_read(struct settings_file *f);

/* The way of marking when the command line says nothing of it. */
enum marking choices_marking(const struct settings *s);

/* Keeps one setting as it is in f->now; what prevents it is said once. */
void choices_keep(struct settings_file *f, enum setting what);

/* The colours of the settings, as the terminal takes them. */
enum terminal_colours choices_colours(const struct settings *s);

#endif
