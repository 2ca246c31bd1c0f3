/*
 * audio_head.c - what stands before the samples of a track on their way
 */
#include "audio_head.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <unistd.h>

#include "evenhand/base/frames.h"

static const char first_line[] = "evenhand-file 1";

/* A day of 192000 frames a second. */
#define FRAMES_MAX (INT64_C(86400) * RATE_MAX)

/* --- formats ---------------------------------------------------------------- */

static const char *const words[AUDIO_FORMATS] = { "wav", "flac", "ogg" };

const char *audio_format_word(enum audio_format format)
{
	return words[format];
}

bool audio_format_named(const char *word, enum audio_format *format)
{
	for (int i = 0; i < AUDIO_FORMATS; i++)
		if (strcmp(word, words[i]) == 0) {
			*format = (enum audio_format)i;
			return true;
		}
	return false;
}

bool audio_format_of(const char *path, enum audio_format *format)
{
	const char *end = strrchr(path, '.');

	*format = AUDIO_OGG;
	if (!end || strchr(end, '/'))
		return false;
	if (strcasecmp(end, ".oga") == 0)
		return true;
	for (int i = 0; i < AUDIO_FORMATS; i++)
		if (strcasecmp(end + 1, words[i]) == 0) {
			*format = (enum audio_format)i;
			return true;
		}
	return false;
}

/* --- saying ------------------------------------------------------------------ */

void audio_head_say(struct text *out, const struct audio_wish *wish)
{
	text_format(out, "%s\nrate %d\nframes %lld\n", first_line, wish->rate,
	    (long long)wish->frames);
	text_format(out, "title %s\nartist %s\ndate %s\ncomment %s\n",
	    wish->title, wish->artist, wish->date, wish->comment);
	for (int i = 0; i < wish->marks; i++)
		text_format(out, "mark %lld %s\n",
		    (long long)wish->mark[i].frame, wish->mark[i].name);
	text_add(out, "\n");
}

/* --- reading ----------------------------------------------------------------- */

static bool more(struct audio_source *from)
{
	ssize_t got;

	do
		got = read(from->fd, from->ahead, sizeof(from->ahead));
	while (got < 0 && errno == EINTR);
	from->at = 0;
	from->end = got > 0 ? (size_t)got : 0;
	return from->end > 0;
}

bool audio_source_take(struct audio_source *from, void *to, size_t length)
{
	char *bytes = to;

	while (length > 0) {
		size_t there = from->end - from->at;
		size_t count = length < there ? length : there;

		memcpy(bytes, from->ahead + from->at, count);
		from->at += count;
		bytes += count;
		length -= count;
		if (length > 0 && !more(from))
			return false;
	}
	return true;
}

/* A line without its end; false when it has none, or is too long. */
static bool take_line(struct audio_source *from, char *line, size_t size)
{
	for (size_t i = 0; i < size; i++) {
		if (!audio_source_take(from, &line[i], 1) || line[i] == '\0')
			return false;
		if (line[i] == '\n') {
			line[i] = '\0';
			return true;
		}
	}
	return false;
}

/* A whole number at the start of a text, and what stands behind it. */
static bool number(const char *text, int64_t most, int64_t *value, char **rest)
{
	errno = 0;
	*value = strtoll(text, rest, 10);
	return errno == 0 && *rest != text && *value >= 0 && *value <= most &&
	    (**rest == '\0' || **rest == ' ');
}

static void keep(char *to, size_t size, const char *words_said)
{
	struct text t = text_in(to, size);

	text_add_clean(&t, words_said);
}

static bool take_mark(struct audio_wish *wish, const char *value)
{
	struct audio_mark *m = &wish->mark[wish->marks];
	char *rest;

	if (wish->marks == AUDIO_MARKS_MAX ||
	    !number(value, FRAMES_MAX, &m->frame, &rest))
		return false;
	keep(m->name, sizeof(m->name), rest + (*rest == ' '));
	wish->marks++;
	return true;
}

/* One line of the head. */
static bool take_word(struct audio_wish *wish, const char *word, char *value)
{
	int64_t rate = 0;
	char *rest;

	if (strcmp(word, "mark") == 0)
		return take_mark(wish, value);
	if (strcmp(word, "frames") == 0)
		return number(value, FRAMES_MAX, &wish->frames, &rest);
	if (strcmp(word, "title") == 0)
		keep(wish->title, sizeof(wish->title), value);
	else if (strcmp(word, "artist") == 0)
		keep(wish->artist, sizeof(wish->artist), value);
	else if (strcmp(word, "date") == 0)
		keep(wish->date, sizeof(wish->date), value);
	else if (strcmp(word, "comment") == 0)
		keep(wish->comment, sizeof(wish->comment), value);
	else if (strcmp(word, "rate") != 0 ||
	    !number(value, RATE_MAX, &rate, &rest))
		return false;
	wish->rate = rate ? (int)rate : wish->rate;
	return true;
}

bool audio_head_read(struct audio_source *from, struct audio_wish *wish)
{
	char line[AUDIO_COMMENT_MAX + sizeof("comment ")];

	*wish = (struct audio_wish) { .rate = 0 };
	if (!take_line(from, line, sizeof(line)) ||
	    strcmp(line, first_line) != 0)
		return false;
	for (;;) {
		char *space;

		if (!take_line(from, line, sizeof(line)))
			return false;
		if (line[0] == '\0')
			return wish->rate >= RATE_MIN && wish->frames > 0;
		space = strchr(line, ' ');
		if (!space)
			return false;
		*space = '\0';
		if (!take_word(wish, line, space + 1))
			return false;
	}
}
