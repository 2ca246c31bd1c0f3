/*
 * sndfile_read.c - recordings, read by libsndfile
 *
 * Whatever stands in the file, what comes out is one channel of numbers, at
 * most as many as the file has, and an account of what was odd about it.
 */
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <sndfile.h>

#include "evenhand/base/text.h"
#include "evenhand/world/audio_file.h"

#define TOP 0.99996F /* of full scale: 16 bits reach 32767 / 32768 */

enum { FRAMES = 2048, FLOATS_MAX = FRAMES * AUDIO_CHANNELS_MAX };

struct reading {
	SNDFILE *file;
	SF_INFO info;
	int channel; /* 0: the mean of all */
	audio_take *take;
	void *to;
	float *in; /* frames of all channels */
	float out[FRAMES];
	struct audio_tail tail;
};

static uint32_t number_at(const unsigned char *b, bool big)
{
	return big ? (uint32_t)b[0] << 24 | (uint32_t)b[1] << 16 |
		(uint32_t)b[2] << 8 | b[3]
		   : (uint32_t)b[3] << 24 | (uint32_t)b[2] << 16 |
		(uint32_t)b[1] << 8 | b[0];
}

/*
 * RIFF and AIFF begin with their own size.  Where it goes beyond the end of
 * the file, somebody cut it off; libsndfile reads what is there and is silent.
 */
static bool head_says_more(int in)
{
	unsigned char b[8];
	off_t size = lseek(in, 0, SEEK_END);
	bool big, known = false;

	if (pread(in, b, sizeof(b), 0) == (ssize_t)sizeof(b))
		known = memcmp(b, "RIFF", 4) == 0 || memcmp(b, "FORM", 4) == 0;
	lseek(in, 0, SEEK_SET);
	big = b[0] == 'F';
	/* One byte may be missing that only fills up. */
	return known && (int64_t)number_at(b + 4, big) + 8 > (int64_t)size + 1;
}

static float number(struct reading *r, float x)
{
	if (!isfinite(x)) {
		r->tail.no_numbers++;
		return 0;
	}
	r->tail.overdriven += fabsf(x) >= TOP;
	return x;
}

/* The channel that is asked for, or the mean of all. */
static void join(struct reading *r, size_t frames)
{
	int channels = r->info.channels;

	for (size_t k = 0; k < frames; k++) {
		const float *x = r->in + k * (size_t)channels;
		double sum = 0, square = 0, given;

		for (int c = 0; c < channels; c++) {
			double y = (double)number(r, x[c]);

			sum += r->channel == 0 || c + 1 == r->channel ? y : 0;
			square += y * y;
		}
		given = r->channel == 0 ? sum / channels : sum;
		r->out[k] = (float)given;
		r->tail.given_square += given * given;
		r->tail.square += square / channels;
	}
}

static bool give(struct reading *r, const void *bytes, size_t length)
{
	return r->take(r->to, bytes, length);
}

static bool give_head(struct reading *r)
{
	SF_FORMAT_INFO format = { 0 };
	struct audio_head head = { .layout = AUDIO_LAYOUT };
	struct text name = text_in(head.format, sizeof(head.format));

	format.format = r->info.format & SF_FORMAT_TYPEMASK;
	head.rate = r->info.samplerate;
	head.channels = r->info.channels;
	head.channel = r->channel;
	head.frames = r->info.frames < 0 || r->info.frames == SF_COUNT_MAX
	    ? -1
	    : r->info.frames;
	if (sf_command(NULL, SFC_GET_FORMAT_INFO, &format, sizeof(format)) == 0)
		text_add(&name, format.name);
	return give(r, &head, sizeof(head));
}

static enum audio_how give_samples(struct reading *r)
{
	for (;;) {
		sf_count_t got = sf_readf_float(r->file, r->in, FRAMES);
		uint32_t count = got > 0 ? (uint32_t)got : 0;

		join(r, count);
		if (!give(r, &count, sizeof(count)))
			return AUDIO_LOST;
		if (count == 0)
			break;
		if (!give(r, r->out, count * sizeof(float)))
			return AUDIO_LOST;
		r->tail.frames += count;
	}
	if (r->info.frames != SF_COUNT_MAX && r->tail.frames < r->info.frames)
		r->tail.cut = 1;
	return give(r, &r->tail, sizeof(r->tail)) ? AUDIO_GOOD : AUDIO_LOST;
}

static enum audio_how read_open(struct reading *r)
{
	size_t channels = (size_t)r->info.channels;

	if (r->info.channels < 1 || r->info.channels > AUDIO_CHANNELS_MAX)
		return AUDIO_DAMAGED;
	if (r->channel > r->info.channels)
		return AUDIO_NO_CHANNEL;
	r->in = malloc(FRAMES * channels * sizeof(float));
	if (!r->in)
		return AUDIO_NO_ROOM;
	return give_head(r) ? give_samples(r) : AUDIO_LOST;
}

enum audio_how audio_read(int in, int channel, audio_take *take, void *to)
{
	struct reading *r = calloc(1, sizeof(*r));
	enum audio_how how;

	if (!r)
		return AUDIO_NO_ROOM;
	*r = (struct reading) { .channel = channel, .take = take, .to = to };
	r->tail.cut = head_says_more(in);
	r->file = sf_open_fd(in, SFM_READ, &r->info, SF_FALSE);
	if (r->file)
		how = read_open(r);
	else
		how = sf_error(NULL) == SF_ERR_UNRECOGNISED_FORMAT
		    ? AUDIO_UNKNOWN
		    : AUDIO_DAMAGED;
	if (r->file)
		sf_close(r->file);
	free(r->in);
	free(r);
	return how;
}
