/*
 * text.c - text being put together, and text that is safe to show
 *
 * The one pure file that knows the C library's formatting.  A buffer that is
 * full is cut where a letter ends, so that half a letter never reaches a
 * terminal; what comes after a cut is left out, however short it is.
 */
#include "evenhand/base/text.h"

#include <assert.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include "letter.h"

/* Above this a double holds no thousandths any more. */
#define THOUSANDTHS_UP_TO 1e12

struct text text_in(char *buffer, size_t size)
{
	assert(size >= 1);
	buffer[0] = '\0';
	return (struct text) { .bytes = buffer, .size = size };
}

/* Bytes of whole letters at the start of s that fit into room bytes. */
static size_t whole_letters(const char *s, size_t length, size_t room)
{
	size_t fits = 0;

	while (fits < length) {
		size_t letter = letter_bytes(s + fits, length - fits);

		if (fits + letter > room)
			break;
		fits += letter;
	}
	return fits;
}

void text_add_bytes(struct text *t, const char *more, size_t length)
{
	size_t room = t->size - 1 - t->length;

	if (t->cut)
		return;
	if (length > room) {
		t->cut = true;
		length = whole_letters(more, length, room);
	}
	if (length > 0)
		memcpy(t->bytes + t->length, more, length);
	t->length += length;
	t->bytes[t->length] = '\0';
}

void text_add(struct text *t, const char *more)
{
	text_add_bytes(t, more, strlen(more));
}

void text_format(struct text *t, const char *format, ...)
{
	char *from = t->bytes + t->length;
	size_t room = t->size - t->length;
	va_list arguments;
	int length;

	if (t->cut)
		return;
	va_start(arguments, format);
	/* The analyser forgets va_start when it reads several files. */
	/* NOLINTNEXTLINE(clang-analyzer-valist.Uninitialized) */
	length = vsnprintf(from, room, format, arguments);
	va_end(arguments);
	assert(length >= 0);
	if ((size_t)length < room) {
		t->length += (size_t)length;
		return;
	}
	t->cut = true;
	t->length += letter_whole(from, room - 1);
	t->bytes[t->length] = '\0';
}

void text_number(struct text *t, double number)
{
	if (!isfinite(number)) {
		text_add(t, "?");
	} else if (fabs(number) >= THOUSANDTHS_UP_TO) {
		text_format(t, "%.0f", number);
	} else {
		/* In whole thousandths no locale can turn the point. */
		int64_t all = llround(fabs(number) * 1000);
		int rest = (int)(all % 1000);
		int digits = 3;

		if (number < 0 && all > 0)
			text_add(t, "-");
		text_format(t, "%lld", (long long)(all / 1000));
		while (digits > 0 && rest % 10 == 0) {
			rest /= 10;
			digits--;
		}
		if (digits > 0)
			text_format(t, ".%0*d", digits, rest);
	}
}

bool text_is_utf8(const char *s, size_t length)
{
	for (size_t at = 0; at < length;) {
		size_t bytes;

		if (letter_point(s + at, length - at, &bytes) < 0)
			return false;
		at += bytes;
	}
	return true;
}

void text_add_clean(struct text *t, const char *more)
{
	size_t length = strlen(more);

	for (size_t at = 0; at < length && !t->cut;) {
		size_t plain = at, bytes, first;
		int32_t point;

		/* Nearly all text is plain and goes in one piece. */
		while (letter_is_plain(more + plain))
			plain++;
		if (plain > at) {
			text_add_bytes(t, more + at, plain - at);
			at = plain;
			continue;
		}
		bytes = letter_bytes(more + at, length - at);
		point = letter_point(more + at, bytes, &first);
		if (point < 0 || letter_is_control(point))
			text_add(t, "?");
		else
			text_add_bytes(t, more + at, bytes);
		at += bytes;
	}
}

void text_clean(char *buffer, size_t size, const char *s)
{
	struct text t = text_in(buffer, size);

	text_add_clean(&t, s);
}
