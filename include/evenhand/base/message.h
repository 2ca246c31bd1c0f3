/*
 * message.h - what is to be said, before it becomes a sentence
 *
 * Pure rooms never hold sentences.  They say which message they mean and
 * give its arguments with their kinds; one table (message_list.h) turns it
 * into English at the edge, and a tongue (tongue.h) into other languages.
 *
 *	MESSAGE(M_ROUTINE_TWICE, "tw",
 *	    "\"{0}\" is already on line {1}. Keep one of them")
 *
 *	message_with(M_ROUTINE_TWICE, TEXT("session"), WHOLE(8))
 *
 * In a sentence {0} is the first argument, and {0|bow|bows} chooses a word
 * by a whole argument: the first for 1 or -1, the second for all others.
 * The letters of the signature, one per argument:
 *
 *	t text           w whole number     n number, up to 3 decimals
 *	c clock (ms as m:ss)                h time of day (minutes as 17:05)
 *	d date (day number as 2026-03-02)   m word (another message)
 *	f figure, y day: a number and a date as they are typed and stand in
 *	  files, whatever the tongue
 *
 * A message is a plain value that owns its text: copy it freely.
 * Any thread.
 */
#ifndef EVENHAND_BASE_MESSAGE_H
#define EVENHAND_BASE_MESSAGE_H

#include <stddef.h>
#include <stdint.h>

enum {
	MESSAGE_ARGS_MAX = 6,
	MESSAGE_TEXT_MAX = 240, /* bytes of all text arguments */
};

#define MESSAGE(id, signature, sentence) id,
enum message_id {
	M_NONE,
#include "evenhand/base/message_list.h"
	M_COUNT
};
#undef MESSAGE

enum argument_kind {
	ARGUMENT_TEXT = 't',
	ARGUMENT_WHOLE = 'w',
	ARGUMENT_NUMBER = 'n',
	ARGUMENT_CLOCK = 'c',
	ARGUMENT_TIME = 'h',
	ARGUMENT_DATE = 'd',
	ARGUMENT_WORD = 'm',
	ARGUMENT_FIGURE = 'f',
	ARGUMENT_DAY = 'y',
};

/* One argument as it is handed in.  The text is borrowed for the call. */
struct argument {
	enum argument_kind kind;
	int64_t whole;	  /* w, c (ms), h (minutes), d, y (day number), m */
	double number;	  /* n, f */
	const char *text; /* t; NULL counts as "" */
};

#define TEXT(s) ((struct argument) { .kind = ARGUMENT_TEXT, .text = (s) })
#define WHOLE(i) ((struct argument) { .kind = ARGUMENT_WHOLE, .whole = (i) })
#define NUMBER(x) ((struct argument) { .kind = ARGUMENT_NUMBER, .number = (x) })
#define CLOCK(ms) ((struct argument) { .kind = ARGUMENT_CLOCK, .whole = (ms) })
#define TIME(min) ((struct argument) { .kind = ARGUMENT_TIME, .whole = (min) })
#define DATE(day) ((struct argument) { .kind = ARGUMENT_DATE, .whole = (day) })
#define FIGURE(x) ((struct argument) { .kind = ARGUMENT_FIGURE, .number = (x) })
#define DAY(day) ((struct argument) { .kind = ARGUMENT_DAY, .whole = (day) })
#define WORD(id) ((struct argument) { .kind = ARGUMENT_WORD, .whole = (id) })

/* One argument as it is kept: text lies in the message's own store. */
struct message_value {
	enum argument_kind kind;
	int64_t whole; /* for t: offset into the store */
	double number;
};

struct message {
	enum message_id id;
	int count; /* arguments, 0..MESSAGE_ARGS_MAX */
	struct message_value value[MESSAGE_ARGS_MAX];
	char store[MESSAGE_TEXT_MAX];
};

/* A message without arguments. */
struct message message_of(enum message_id id);

/*
 * A message with arguments.  They must fit its signature (asserted: a
 * mismatch is our own mistake).  Text that does not fit the store is cut at
 * a letter and ends in "..."; control characters become '?'.
 */
struct message message_build(
    enum message_id id, int count, const struct argument *arguments);

#define ARGUMENTS_(...) ((const struct argument[]) { __VA_ARGS__ })
#define message_with(id, ...) \
	message_build((id), \
	    (int)(sizeof(ARGUMENTS_(__VA_ARGS__)) / sizeof(struct argument)), \
	    ARGUMENTS_(__VA_ARGS__))

/*
 * Writes the sentence into buffer (size bytes, always ended with a zero,
 * cut at a letter).  Returns the length in bytes, without the zero.
 */
size_t message_text(const struct message *m, char *buffer, size_t size);

/* The name of an id as it stands in the source ("M_ROUTINE_TWICE"). */
const char *message_name(enum message_id id);

/* The sentence of an id, with its places still open. */
const char *message_sentence(enum message_id id);

/* As the lists have it: its signature, and its sentence in English. */
const char *message_signature(enum message_id id);
const char *message_english(enum message_id id);

#endif
