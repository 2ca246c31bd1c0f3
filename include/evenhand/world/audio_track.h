/*
 * audio_track.h - a track on its way from evenhand to evenhand-file
 *
 * What it is called, what must be known of it, and where it begins anew; then
 * its samples.  evenhand says it, evenhand-file writes it.
 */
#ifndef EVENHAND_WORLD_AUDIO_TRACK_H
#define EVENHAND_WORLD_AUDIO_TRACK_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/text.h"
#include "evenhand/world/audio_file.h"

enum {
	AUDIO_MARKS_MAX = 512,
	AUDIO_NAME_MAX = 200, /* bytes of a name, with its zero */
	AUDIO_COMMENT_MAX = 4000,
	AUDIO_HEAD_MAX = 160 * 1024, /* of all of it as text */
};

enum audio_format { AUDIO_WAV, AUDIO_FLAC, AUDIO_OGG, AUDIO_FORMATS };

/* Where a part of a track begins. */
struct audio_mark {
	int64_t frame;
	char name[AUDIO_NAME_MAX];
};

/* Too large for a stack.  Text is UTF-8 in one line; "" says nothing. */
struct audio_wish {
	int rate;
	int64_t frames;
	char title[AUDIO_NAME_MAX], artist[AUDIO_NAME_MAX];
	char date[AUDIO_NAME_MAX]; /* 2026-03-02 */
	char comment[AUDIO_COMMENT_MAX];
	int marks;
	struct audio_mark mark[AUDIO_MARKS_MAX];
};

/* The word for a format, as evenhand-file takes it: "wav", "flac", "ogg". */
const char *audio_format_word(enum audio_format format);

/* The format of such a word. */
bool audio_format_named(const char *word, enum audio_format *format);

/*
 * The format of a file by the end of its name, in any letters: .wav, .flac,
 * .ogg or .oga.
 */
bool audio_format_of(const char *path, enum audio_format *format);

/* The head of the stream to `evenhand-file write`, before the samples. */
void audio_head_say(struct text *out, const struct audio_wish *wish);

/*
 * Writes a track to a descriptor that can be written, read and sought in, and
 * is empty; the stream comes from in.  Only for evenhand-file.
 */
enum audio_how audio_write(enum audio_format format, int in, int out);

#endif
