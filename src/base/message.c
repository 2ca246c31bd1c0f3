/*
 * message.c - messages with their arguments, turned into sentences
 *
 * A message carries its text arguments in a small store of its own, cleaned
 * of everything that could upset a terminal.  When they do not all fit, each
 * is sure of an equal part of the store, and a short one leaves its rest to
 * the long ones:
 *
 *	"session" 0 "a very long line of the file th..." 0
 */
#include "evenhand/base/message.h"

#include <assert.h>
#include <limits.h>
#include <stdbool.h>
#include <string.h>

#include "evenhand/base/date.h"
#include "evenhand/base/text.h"
#include "evenhand/base/tongue.h"

enum { MS = 1000, MINUTE = 60, MINUTES_A_DAY = 1440 };

struct message message_of(enum message_id id)
{
	return message_build(id, 0, NULL);
}

static size_t smaller(size_t a, size_t b)
{
	return a < b ? a : b;
}

/* Bytes an argument takes in the store: its text and a zero. */
static size_t need(const struct argument *a)
{
	if (a->kind != ARGUMENT_TEXT)
		return 0;
	return a->text ? strlen(a->text) + 1 : 1;
}

/* Keeps a text in room bytes; returns how many it took with its zero. */
static size_t keep(char *to, size_t room, const char *s)
{
	struct text t = text_in(to, room);

	text_add_clean(&t, s);
	if (t.cut && room > sizeof("...")) {
		t = text_in(to, room - strlen("..."));
		text_add_clean(&t, s);
		memcpy(to + t.length, "...", sizeof("..."));
		t.length += strlen("...");
	}
	return t.length + 1;
}

static void keep_texts(struct message *m, const struct argument *arguments)
{
	size_t used = 0, later = 0, share, texts = 0;

	for (int i = 0; i < m->count; i++)
		texts += arguments[i].kind == ARGUMENT_TEXT;
	share = texts > 0 ? MESSAGE_TEXT_MAX / texts : 0;
	for (int i = 0; i < m->count; i++)
		later += smaller(need(&arguments[i]), share);
	for (int i = 0; i < m->count; i++) {
		const struct argument *a = &arguments[i];

		if (a->kind != ARGUMENT_TEXT)
			continue;
		later -= smaller(need(a), share);
		m->value[i].whole = (int64_t)used;
		used += keep(m->store + used, MESSAGE_TEXT_MAX - used - later,
		    a->text ? a->text : "");
	}
}

struct message message_build(
    enum message_id id, int count, const struct argument *arguments)
{
	struct message m = { .id = id, .count = count };
	const char *signature = message_signature(id);

	assert(count >= 0 && count <= MESSAGE_ARGS_MAX);
	assert((size_t)count == strlen(signature));
	for (int i = 0; i < count; i++) {
		const struct argument *a = &arguments[i];

		assert((int)a->kind == signature[i]);
		assert(a->kind != ARGUMENT_WORD ||
		    *message_signature((enum message_id)a->whole) == '\0');
		m.value[i].kind = a->kind;
		m.value[i].whole = a->whole;
		m.value[i].number = a->number;
	}
	keep_texts(&m, arguments);
	return m;
}

static void add_clock(struct text *t, int64_t ms)
{
	bool before = ms < 0;
	uint64_t size = before ? 0 - (uint64_t)ms : (uint64_t)ms;
	uint64_t seconds = size / MS + (size % MS >= MS / 2);

	text_format(t, "%s%llu:%02llu", before && seconds > 0 ? "-" : "",
	    (unsigned long long)(seconds / MINUTE),
	    (unsigned long long)(seconds % MINUTE));
}

static void add_time(struct text *t, int64_t minutes)
{
	int64_t today = minutes % MINUTES_A_DAY;

	if (today < 0)
		today += MINUTES_A_DAY;
	text_format(
	    t, "%02d:%02d", (int)(today / MINUTE), (int)(today % MINUTE));
}

/* As write writes a day: date_text or tongue_date. */
static void add_date(struct text *t, int64_t day, void (*write)(int, char *))
{
	char date[DATE_TEXT_MAX];

	if (day > INT_MAX || day < INT_MIN)
		day = day > 0 ? INT_MAX : INT_MIN;
	write((int)day, date);
	text_add(t, date);
}

static void add_value(
    struct text *t, const struct message *m, const struct message_value *v)
{
	switch (v->kind) {
	case ARGUMENT_TEXT:
		text_add(t, m->store + v->whole);
		break;
	case ARGUMENT_WHOLE:
		text_format(t, "%lld", (long long)v->whole);
		break;
	case ARGUMENT_NUMBER:
		tongue_number(t, v->number);
		break;
	case ARGUMENT_FIGURE:
		text_number(t, v->number);
		break;
	case ARGUMENT_CLOCK:
		add_clock(t, v->whole);
		break;
	case ARGUMENT_TIME:
		add_time(t, v->whole);
		break;
	case ARGUMENT_DATE:
		add_date(t, v->whole, tongue_date);
		break;
	case ARGUMENT_DAY:
		add_date(t, v->whole, date_text);
		break;
	case ARGUMENT_WORD:
		text_add(t, message_sentence((enum message_id)v->whole));
		break;
	}
}

/*
 * Adds what stands in a place of the sentence, "0}" or "0|bow|bows}", and
 * returns what follows it.
 */
static const char *add_place(
    struct text *t, const struct message *m, const char *place)
{
	const struct message_value *v = &m->value[*place - '0'];
	const char *end = strchr(place, '}');
	const char *one = place + 2, *bar;

	assert(*place - '0' < m->count && end != NULL);
	if (place[1] != '|') {
		add_value(t, m, v);
		return end + 1;
	}
	bar = memchr(one, '|', (size_t)(end - one));
	assert(bar != NULL);
	if (v->whole == 1 || v->whole == -1)
		text_add_bytes(t, one, (size_t)(bar - one));
	else
		text_add_bytes(t, bar + 1, (size_t)(end - bar - 1));
	return end + 1;
}

size_t message_text(const struct message *m, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);
	const char *s = message_sentence(m->id);

	while (*s) {
		size_t plain = strcspn(s, "{");

		text_add_bytes(&t, s, plain);
		s += plain;
		/* A bracket before anything but a digit is itself. */
		if (*s && s[1] >= '0' && s[1] <= '9')
			s = add_place(&t, m, s + 1);
		else if (*s)
			text_add_bytes(&t, s++, 1);
	}
	return t.length;
}
