/*
 * sndfile_write.c - tracks, written by libsndfile
 *
 *	head, samples ── pipe ──▶ quantised ──▶ libsndfile ──▶ the new file
 *
 * WAV and FLAC hold 16 bits: a sample times 32768, rounded to the nearest whole
 * number, a half to the even one, without dither.  Clicks and silence have no
 * use for noise, and the same track is the same file.  Ogg gets the samples as
 * they are.
 *
 * libsndfile does not tell of every write that failed, so the bytes go through
 * our own hands on their way to the disk.
 */
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <sndfile.h>

#include "audio_head.h"
#include "audio_parts.h"
#include "evenhand/world/audio_file.h"
#include "evenhand/world/program.h"

#define OGG_QUALITY 0.6

/* libsndfile's Vorbis takes its memory from the stack, a block at a time. */
enum { BLOCK = 4096, FULL_SCALE = 32768 };

struct writing {
	struct audio_wish wish;
	struct audio_source from;
	enum audio_format format;
	int out;
	bool unwritten; /* the disk takes no more */
	SNDFILE *file;
	float samples[BLOCK];
	short whole[BLOCK];
};

static const int formats[AUDIO_FORMATS] = {
	[AUDIO_WAV] = SF_FORMAT_WAV | SF_FORMAT_PCM_16,
	[AUDIO_FLAC] = SF_FORMAT_FLAC | SF_FORMAT_PCM_16,
	[AUDIO_OGG] = SF_FORMAT_OGG | SF_FORMAT_VORBIS,
};

/* --- the file, through our own hands --------------------------------------- */

static sf_count_t hands_length(void *writing)
{
	struct stat s;
	const struct writing *w = writing;

	return fstat(w->out, &s) == 0 ? s.st_size : -1;
}

static sf_count_t hands_seek(sf_count_t offset, int from, void *writing)
{
	const struct writing *w = writing;

	return lseek(w->out, offset, from);
}

static sf_count_t hands_tell(void *writing)
{
	return hands_seek(0, SEEK_CUR, writing);
}

static sf_count_t hands_read(void *to, sf_count_t count, void *writing)
{
	const struct writing *w = writing;

	return read(w->out, to, (size_t)count);
}

static sf_count_t hands_write(const void *from, sf_count_t count, void *writing)
{
	struct writing *w = writing;

	if (program_write(w->out, from, (size_t)count))
		return count;
	w->unwritten = true;
	return 0;
}

static bool open_file(struct writing *w)
{
	static SF_VIRTUAL_IO hands = { hands_length, hands_seek, hands_read,
		hands_write, hands_tell };
	SF_INFO info = { .samplerate = w->wish.rate,
		.channels = 1,
		.format = formats[w->format] };

	w->file = sf_open_virtual(&hands, SFM_WRITE, &info, w);
	return w->file != NULL;
}

/* --- what is told beside the sound ----------------------------------------- */

static void tag(struct writing *w, int what, const char *words)
{
	if (*words)
		sf_set_string(w->file, what, words);
}

/* The marks of a WAV file; they get their names when it is whole. */
static bool set_marks(struct writing *w)
{
	typedef SF_CUES_VAR(AUDIO_MARKS_MAX) cue_list;
	cue_list *all = calloc(1, sizeof(*all));

	if (!all)
		return false;
	all->cue_count = (uint32_t)w->wish.marks;
	for (int i = 0; i < w->wish.marks; i++) {
		SF_CUE_POINT *c = &all->cue_points[i];

		c->indx = i + 1;
		c->position = (uint32_t)w->wish.mark[i].frame;
		c->sample_offset = c->position;
		memcpy(&c->fcc_chunk, "data", sizeof(c->fcc_chunk));
	}
	if (w->wish.marks > 0)
		sf_command(w->file, SFC_SET_CUE, all, sizeof(*all));
	free(all);
	return true;
}

/* A tag of many bytes, which the names of the parts will take. */
static bool keep_room(struct writing *w)
{
	size_t room = audio_parts_room(&w->wish);
	char *words = malloc(room + 1);

	if (!words)
		return false;
	audio_parts_keep_room(words, room);
	tag(w, SF_STR_LICENSE, words);
	free(words);
	return true;
}

static bool begin(struct writing *w)
{
	double quality = OGG_QUALITY;

	tag(w, SF_STR_TITLE, w->wish.title);
	tag(w, SF_STR_ARTIST, w->wish.artist);
	tag(w, SF_STR_DATE, w->wish.date);
	tag(w, SF_STR_COMMENT, w->wish.comment);
	if (w->format == AUDIO_OGG)
		sf_command(w->file, SFC_SET_VBR_ENCODING_QUALITY, &quality,
		    sizeof(quality));
	return w->format == AUDIO_WAV ? set_marks(w) : keep_room(w);
}

/* --- the sound -------------------------------------------------------------- */

static short quantised(float x)
{
	float scaled = x * FULL_SCALE;

	if (!(scaled > -FULL_SCALE))
		return -FULL_SCALE;
	if (scaled > FULL_SCALE - 1)
		return FULL_SCALE - 1;
	/* As the processor rounds at a start: to nearest, halves to even. */
	return (short)lrintf(scaled);
}

static bool put(struct writing *w, sf_count_t count)
{
	if (w->format == AUDIO_OGG)
		return sf_write_float(w->file, w->samples, count) == count;
	for (sf_count_t i = 0; i < count; i++)
		w->whole[i] = quantised(w->samples[i]);
	return sf_write_short(w->file, w->whole, count) == count;
}

/* All the frames that were promised, or the track is not whole. */
static enum audio_how put_all(struct writing *w)
{
	int64_t left = w->wish.frames;

	while (left > 0) {
		size_t count = left < BLOCK ? (size_t)left : BLOCK;

		if (!audio_source_take(
			&w->from, w->samples, count * sizeof(float)))
			return AUDIO_LOST;
		if (!put(w, (sf_count_t)count))
			return AUDIO_UNWRITTEN;
		left -= (int64_t)count;
	}
	return AUDIO_GOOD;
}

static enum audio_how write_open(struct writing *w)
{
	enum audio_how how;

	if (!open_file(w))
		return w->unwritten ? AUDIO_UNWRITTEN : AUDIO_USAGE;
	how = begin(w) ? put_all(w) : AUDIO_NO_ROOM;
	if (sf_close(w->file) != 0 && how == AUDIO_GOOD)
		how = AUDIO_UNWRITTEN;
	if (w->unwritten)
		return AUDIO_UNWRITTEN;
	if (how == AUDIO_GOOD && !audio_parts_name(w->format, w->out, &w->wish))
		return AUDIO_UNWRITTEN;
	return how;
}

enum audio_how audio_write(enum audio_format format, int in, int out)
{
	struct writing *w = calloc(1, sizeof(*w));
	enum audio_how how = AUDIO_NO_ROOM;

	if (!w)
		return how;
	w->format = format;
	w->from.fd = in;
	w->out = out;
	how = audio_head_read(&w->from, &w->wish) ? write_open(w) : AUDIO_USAGE;
	free(w);
	return how;
}
