/*
 * changed.h - the small record with one piece of it changed
 *
 * The record that the fuzzer begins with, too; read_small is the setup of the
 * group.
 */
#ifndef EVENHAND_TESTS_CHANGED_H
#define EVENHAND_TESTS_CHANGED_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "evenhand/base/text.h"
#include "evenhand/world/record_file.h"

enum { ROOM = 256 * 1024 };

static char small[ROOM], changed[ROOM];
static size_t changed_length;

static inline int read_small(void **state)
{
	FILE *in = fopen("tests/fuzz/record/small.yaml", "r");

	(void)state;
	assert_non_null(in);
	assert_true(fread(small, 1, sizeof(small) - 1, in) > 0);
	fclose(in);
	return 0;
}

/* The first of these words, or the whole where there are none, as others. */
static inline void change(const char *from, const char *to)
{
	struct text t = text_in(changed, sizeof(changed));
	const char *at = *from ? strstr(small, from) : small;

	assert_non_null(at);
	text_add_bytes(&t, small, (size_t)(at - small));
	text_add(&t, to);
	text_add(&t, at + strlen(from));
	assert_false(t.cut);
	changed_length = t.length;
}

/* Read so changed; the first fault of it. */
static inline bool read_changed(
    const char *from, const char *to, struct fault *first, struct record *r)
{
	struct faults faults = { 0 };
	bool good;

	change(from, to);
	good = record_parse("r.yaml", changed, changed_length, r, &faults);
	assert_int_equal(good, faults.count == 0);
	*first = faults.at[0];
	return good;
}

/* A piece of the record changed into what no evenhand writes. */
struct wrong {
	const char *from, *to;
	enum message_id id;
	int line, column;
};

/* All of them are refused, each with its sentence and its place. */
static inline void refused(const struct wrong *cases, size_t count)
{
	for (const struct wrong *w = cases; w < cases + count; w++) {
		char words[400];
		struct record r;
		struct fault f;

		assert_false(read_changed(w->from, w->to, &f, &r));
		record_done(&r);
		fault_text(&f, words, sizeof(words));
		if (f.message.id != w->id || f.line != w->line ||
		    f.column != w->column)
			fail_msg("%s: %s, not %s at %d:%d", w->to, words,
			    message_name(w->id), w->line, w->column);
	}
}

#endif
