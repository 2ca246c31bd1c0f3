/*
 * audio_parts.c - the names of a track's parts, in the file
 *
 * libsndfile knows neither of the two ways in which players find names:
 *
 *	WAV         a list "adtl" of labels, one for each cue point
 *	FLAC, Ogg   tags CHAPTER001=00:00:28.000 and CHAPTER001NAME=...
 *
 * [common practice, from memory].  The list goes behind the samples.  The tags
 * take the place of one tag of exactly as many bytes, so that nothing else in
 * the file moves; a page of Ogg gets its checksum anew.
 */
#include "audio_parts.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum {
	ROOM_MOST = 48 * 1024,	/* with the rest below a page of Ogg, 65025 */
	HEAD_MOST = 128 * 1024, /* of a file, in which the tags stand */
	TAG_BYTES = AUDIO_NAME_MAX + 32,
	FLAC_TAGS = 4,		/* its block of Vorbis comments */
	PAGE_HEAD = 27,		/* of Ogg, before the sizes of its segments */
	PAGE_SUM = 22,		/* where its checksum stands */
	SIZE = 4,		/* bytes of a size */
	CHUNK_HEAD = 2 * SIZE,	/* of a chunk in WAV: its name, its size */
	NUMBER_HEAD = 3 * SIZE, /* and a number or a second name */
	FILLER = '~',
};

static const char key[] = "license=";

static uint32_t size_at(const unsigned char *b)
{
	return b[0] | (uint32_t)b[1] << 8 | (uint32_t)b[2] << 16 |
	    (uint32_t)b[3] << 24;
}

static void put_size(unsigned char *b, size_t size)
{
	for (int i = 0; i < SIZE; i++)
		b[i] = (unsigned char)(size >> (8 * i));
}

/* --- the tags of a part -------------------------------------------------------- */

static void time_tag(struct text *t, const struct audio_wish *w, int i)
{
	long long ms = w->mark[i].frame * 1000 / w->rate;

	text_format(t, "CHAPTER%03d=%02lld:%02lld:%02lld.%03lld", i + 1,
	    ms / 3600000, ms / 60000 % 60, ms / 1000 % 60, ms % 1000);
}

static void name_tag(struct text *t, const struct audio_wish *w, int i)
{
	text_format(t, "CHAPTER%03dNAME=%s", i + 1, w->mark[i].name);
}

/* Writes a tag with its size before it; where the next one goes. */
static unsigned char *put_tag(unsigned char *to, const struct text *t)
{
	put_size(to, t->length);
	memcpy(to + SIZE, t->bytes, t->length);
	return to + SIZE + t->length;
}

/* Bytes of all tags; written as well, where there is a place. */
static size_t tags(unsigned char *to, const struct audio_wish *w)
{
	size_t all = 0;

	for (int i = 0; i < 2 * w->marks; i++) {
		char bytes[TAG_BYTES];
		struct text t = text_in(bytes, sizeof(bytes));

		if (i % 2 == 0)
			time_tag(&t, w, i / 2);
		else
			name_tag(&t, w, i / 2);
		if (to)
			to = put_tag(to, &t);
		all += SIZE + t.length;
	}
	return all;
}

size_t audio_parts_room(const struct audio_wish *w)
{
	size_t all = tags(NULL, w);

	return all > SIZE + strlen(key) && all <= ROOM_MOST
	    ? all - SIZE - strlen(key)
	    : 0;
}

void audio_parts_keep_room(char *words, size_t length)
{
	memset(words, FILLER, length);
	words[length] = '\0';
}

/* --- where the room is --------------------------------------------------------- */

/* A stretch of the file's head. */
struct stretch {
	unsigned char *bytes;
	size_t length;
};

/* The block of tags in a FLAC file. */
static bool find_flac(const struct stretch *head, struct stretch *found)
{
	size_t at = SIZE; /* behind "fLaC" */

	while (at + SIZE <= head->length) {
		unsigned char *b = head->bytes + at;
		size_t length = (size_t)b[1] << 16 | (size_t)b[2] << 8 | b[3];

		if (at + SIZE + length > head->length)
			return false;
		*found = (struct stretch) { b + SIZE, length };
		if ((b[0] & 0x7F) == FLAC_TAGS)
			return true;
		at += SIZE + length;
	}
	return false;
}

/* A page of Ogg from its start on, and how long its own head is. */
static bool find_page(
    const struct stretch *head, size_t at, struct stretch *page, size_t *own)
{
	unsigned char *b = head->bytes + at;
	size_t length = 0;

	if (at + PAGE_HEAD > head->length || memcmp(b, "OggS", 4) != 0)
		return false;
	*own = PAGE_HEAD + (size_t)b[PAGE_HEAD - 1];
	if (at + *own > head->length)
		return false;
	for (size_t i = PAGE_HEAD; i < *own; i++)
		length += b[i];
	*page = (struct stretch) { b, *own + length };
	return at + page->length <= head->length;
}

/* The tags of an Ogg file stand in its second page, behind "\3vorbis". */
static bool find_ogg(
    const struct stretch *head, struct stretch *page, struct stretch *found)
{
	static const char before[] = "\3vorbis";
	size_t own, lead = sizeof(before) - 1;

	if (!find_page(head, 0, page, &own) ||
	    !find_page(head, page->length, page, &own) ||
	    page->length < own + lead ||
	    memcmp(page->bytes + own, before, lead) != 0)
		return false;
	*found = (struct stretch) { page->bytes + own + lead,
		page->length - own - lead };
	return true;
}

static bool is_room(const unsigned char *tag, size_t length, size_t room)
{
	return length == strlen(key) + room && tag[length - 1] == FILLER &&
	    tag[strlen(key)] == FILLER;
}

/* Puts the parts in the place of the tag that kept room for them. */
static bool replace(const struct stretch *s, const struct audio_wish *w)
{
	size_t at = 0, room = audio_parts_room(w);
	uint32_t count;
	unsigned char *counted;

	if (s->length < SIZE || s->length - SIZE < size_at(s->bytes))
		return false;
	at = SIZE + size_at(s->bytes);
	if (s->length - at < SIZE)
		return false;
	counted = s->bytes + at;
	count = size_at(counted);
	at += SIZE;
	for (uint32_t i = 0; i < count && s->length - at >= SIZE; i++) {
		size_t length = size_at(s->bytes + at);

		if (length > s->length - at - SIZE)
			return false;
		if (is_room(s->bytes + at + SIZE, length, room)) {
			tags(s->bytes + at, w);
			put_size(counted, count - 1 + 2 * (size_t)w->marks);
			return true;
		}
		at += SIZE + length;
	}
	return false;
}

/* The checksum of a page of Ogg, as if it had none (RFC 3533). */
static void sum_page(const struct stretch *page)
{
	uint32_t sum = 0;

	put_size(page->bytes + PAGE_SUM, 0);
	for (size_t i = 0; i < page->length; i++) {
		sum ^= (uint32_t)page->bytes[i] << 24;
		for (int bit = 0; bit < 8; bit++)
			sum = sum << 1 ^ (sum >> 31 ? 0x04C11DB7U : 0);
	}
	put_size(page->bytes + PAGE_SUM, sum);
}

static bool name_in_head(
    bool ogg, const struct stretch *head, const struct audio_wish *w)
{
	struct stretch page, found;

	if (!ogg)
		return find_flac(head, &found) && replace(&found, w);
	if (!find_ogg(head, &page, &found) || !replace(&found, w))
		return false;
	sum_page(&page);
	return true;
}

/* Reads the head, changes it, and writes it back. */
static bool name_tags(bool ogg, int file, const struct audio_wish *w)
{
	struct stretch head = { malloc(HEAD_MOST), 0 };
	ssize_t got = -1;
	bool good = false;

	if (audio_parts_room(w) == 0) {
		free(head.bytes);
		return true;
	}
	if (head.bytes)
		got = pread(file, head.bytes, HEAD_MOST, 0);
	if (got > 0) {
		head.length = (size_t)got;
		good = name_in_head(ogg, &head, w) &&
		    pwrite(file, head.bytes, head.length, 0) == got;
	}
	free(head.bytes);
	return good;
}

/* --- WAV ---------------------------------------------------------------------- */

/* "labl", its size, the number of its cue point, a name with its zero. */
static unsigned char *put_label(unsigned char *to, const char *name, int i)
{
	size_t length = SIZE + strlen(name) + 1;

	memcpy(to, "labl", SIZE);
	put_size(to + SIZE, length);
	put_size(to + CHUNK_HEAD, (size_t)i + 1);
	memcpy(to + NUMBER_HEAD, name, strlen(name) + 1);
	to += CHUNK_HEAD + length;
	if (length % 2 == 1)
		*to++ = '\0';
	return to;
}

static bool append(int file, const unsigned char *bytes, size_t length)
{
	unsigned char riff[SIZE];
	off_t end = lseek(file, 0, SEEK_END);

	put_size(riff, (size_t)end + length - CHUNK_HEAD);
	return end > 0 && pwrite(file, bytes, length, end) == (ssize_t)length &&
	    pwrite(file, riff, SIZE, SIZE) == SIZE;
}

static bool name_labels(int file, const struct audio_wish *w)
{
	size_t most = NUMBER_HEAD +
	    (size_t)w->marks * (NUMBER_HEAD + SIZE + AUDIO_NAME_MAX);
	unsigned char *list = malloc(most), *to;
	bool good = false;

	if (list && w->marks > 0) {
		memcpy(list, "LIST", SIZE);
		memcpy(list + CHUNK_HEAD, "adtl", SIZE);
		to = list + NUMBER_HEAD;
		for (int i = 0; i < w->marks; i++)
			to = put_label(to, w->mark[i].name, i);
		put_size(list + SIZE, (size_t)(to - list) - CHUNK_HEAD);
		good = append(file, list, (size_t)(to - list));
	}
	free(list);
	return good || w->marks == 0;
}

bool audio_parts_name(
    enum audio_format format, int file, const struct audio_wish *w)
{
	return format == AUDIO_WAV ? name_labels(file, w)
				   : name_tags(format == AUDIO_OGG, file, w);
}
