/*
 * settings.c - settings from the words of their file
 */
#include "evenhand/routine/settings.h"

#include <string.h>

#include "reader.h"

enum { LOUDNESS = 50, LOUDNESS_MOST = 100 };

static const char *const colour_words[] = { "auto", "none", "8", "256", NULL };
static const char *const marking_words[] = { "turn", "round", NULL };

void settings_defaults(struct settings *s)
{
	memset(s, 0, sizeof(*s));
	s->sound = true;
	s->loudness = LOUDNESS;
}

const char *settings_key(enum setting what)
{
	return keys_at(MAP_SETTINGS, (int)what);
}

bool settings_given(const struct settings *s, enum setting what)
{
	return s->given >> what & 1;
}

/* A name as other programs gave it, letter by letter; "" is none, said so. */
static bool read_name(
    struct reader *rd, const struct node *n, char *buffer, size_t size)
{
	const char *word = "";
	size_t length;
	bool none = n->kind == NODE_WORD && n->quoted && *n->word == '\0';

	if (!none && !value_word(rd, n, n->key, &word))
		return false;
	length = strlen(word);
	if (strpbrk(word, "\t\r\n") != NULL)
		return fault_here(rd, n, message_of(M_ROUTINE_CONTROL));
	if (length >= size)
		return fault_here(rd, n,
		    message_with(M_SETTINGS_LONG, TEXT(n->key),
			WHOLE((int64_t)size - 1)));
	memcpy(buffer, word, length + 1);
	return true;
}

static bool read_marking(
    struct reader *rd, const struct node *n, struct settings *s)
{
	int found;

	if (!value_choice(rd, n, marking_words, &found))
		return false;
	s->mark_turns = found == 0;
	return true;
}

static bool read_colours(
    struct reader *rd, const struct node *n, struct settings *s)
{
	int found;

	if (!value_choice(rd, n, colour_words, &found))
		return false;
	s->colours = (enum colours)found;
	return true;
}

/* One value; false with a fault. */
static bool read_one(struct reader *rd, const struct node *n, enum setting what,
    struct settings *s)
{
	switch (what) {
	case SETTING_SOUND:
		return value_yes_no(rd, n, &s->sound);
	case SETTING_SOUND_CARD:
		return read_name(rd, n, s->sound_card, sizeof(s->sound_card));
	case SETTING_SOUND_THROUGH:
		return read_name(
		    rd, n, s->sound_through, sizeof(s->sound_through));
	case SETTING_LOUDNESS:
		return number_whole(rd, n,
		    (struct bounds) { n->key, 0, LOUDNESS_MOST }, &s->loudness);
	case SETTING_LISTEN:
		return value_yes_no(rd, n, &s->listen);
	case SETTING_MICROPHONE:
		return read_name(rd, n, s->microphone, sizeof(s->microphone));
	case SETTING_MARKING:
		return read_marking(rd, n, s);
	case SETTING_COLOURS:
		return read_colours(rd, n, s);
	case SETTING_LINES:
		return value_yes_no(rd, n, &s->lines);
	case SETTING_ASCII:
		return value_yes_no(rd, n, &s->ascii);
	case SETTING_MIRRORED:
		return value_yes_no(rd, n, &s->mirrored);
	case SETTING_FIRST_SEEN:
		return value_yes_no(rd, n, &s->first_seen);
	case SETTINGS:
		break;
	}
	return false;
}

void settings_read(
    struct settings *s, const struct source *file, struct faults *faults)
{
	struct reader rd = { .faults = faults, .path = file->path };

	if (!keys_check(&rd, file->root, MAP_SETTINGS))
		return;
	for (int i = 0; i < SETTINGS; i++) {
		enum setting what = (enum setting)i;
		const struct node *n = node_get(file->root, settings_key(what));

		if (n != NULL && read_one(&rd, n, what, s))
			s->given |= UINT32_C(1) << i;
	}
}

/* A sentence that speaks of routines, said of settings. */
static enum message_id words_of(enum message_id id)
{
	switch (id) {
	case M_ROUTINE_PICTURE:
		return M_SETTINGS_PICTURE;
	case M_ROUTINE_NO_COLON:
		return M_SETTINGS_NO_COLON;
	case M_ROUTINE_FENCE:
		return M_SETTINGS_FENCE;
	case M_ROUTINE_NOTE:
		return M_SETTINGS_NOTE;
	case M_ROUTINE_DEEP:
		return M_SETTINGS_DEEP;
	default:
		return id;
	}
}

void settings_words(struct faults *faults, int from)
{
	/* Both sentences take the same arguments. */
	for (int i = from; i < faults->count; i++)
		faults->at[i].message.id = words_of(faults->at[i].message.id);
}

/* --- as they are written --- */

static const char *yes_no(bool yes)
{
	return yes ? "yes" : "no";
}

static void add_quoted(struct text *out, const char *name)
{
	text_add(out, "\"");
	for (const char *s = name; *s; s++) {
		if (*s == '"' || *s == '\\')
			text_add(out, "\\");
		text_add_bytes(out, s, 1);
	}
	text_add(out, "\"");
}

void settings_value(
    struct text *out, const struct settings *s, enum setting what)
{
	switch (what) {
	case SETTING_SOUND:
		text_add(out, yes_no(s->sound));
		break;
	case SETTING_SOUND_CARD:
		add_quoted(out, s->sound_card);
		break;
	case SETTING_SOUND_THROUGH:
		add_quoted(out, s->sound_through);
		break;
	case SETTING_LOUDNESS:
		text_number(out, s->loudness);
		break;
	case SETTING_LISTEN:
		text_add(out, yes_no(s->listen));
		break;
	case SETTING_MICROPHONE:
		add_quoted(out, s->microphone);
		break;
	case SETTING_MARKING:
		text_add(out, marking_words[!s->mark_turns]);
		break;
	case SETTING_COLOURS:
		text_add(out, colour_words[s->colours]);
		break;
	case SETTING_LINES:
		text_add(out, yes_no(s->lines));
		break;
	case SETTING_ASCII:
		text_add(out, yes_no(s->ascii));
		break;
	case SETTING_MIRRORED:
		text_add(out, yes_no(s->mirrored));
		break;
	case SETTING_FIRST_SEEN:
		text_add(out, yes_no(s->first_seen));
		break;
	case SETTINGS:
		break;
	}
}
