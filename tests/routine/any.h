/*
 * any.h - what must hold whatever bytes a routine file is made of
 *
 * The bytes go the way a file's bytes go: a homework file is laid over a
 * routine that ships, all else is read as a routine.  Then there is a routine
 * or at least one fault; every fault is a clean sentence at a place in the
 * file; and a routine can be shown by the dry run and planned for a day.
 *
 * What does not hold comes back as words, with the fault it was seen in.
 */
#ifndef ANY_H
#define ANY_H

#include <stdbool.h>
#include <stdio.h>

#include "evenhand/base/text.h"
#include "evenhand/coach/plan.h"
#include "evenhand/screen/dry_run.h"
#include "evenhand/world/load.h"
#include "sheet.h"

enum {
	ANY_SAID = 1024,
	ANY_PAGE = 128 * 1024,
	ANY_COLUMNS = 79,
	ANY_DAY = 20514, /* 2026-03-02 */
};

struct any {
	struct sheet routine, homework;
	struct faults faults;
	struct routine *read; /* NULL when there were faults */
	char said[ANY_SAID];  /* the fault that is not as it should be */
	char page[ANY_PAGE];
	struct plan plan;
};

/* The text of a routine that ships, as a homework file names it. */
static inline const char *any_shipped(const char *name, size_t *length)
{
	size_t bare = strcspn(name, ".");

	for (int i = 0; i < builtin_count(); i++)
		if (strlen(builtin_name(i)) == bare &&
		    memcmp(builtin_name(i), name, bare) == 0 &&
		    strstr(builtin_name(i), "-homework") == NULL)
			return builtin_text(i, length);
	return any_shipped("cello", length);
}

static inline void any_lay_over(struct any *a, const char *name)
{
	size_t length;
	const char *text = any_shipped(name, &length);

	a->homework = a->routine;
	a->homework.source.path = "wren.yaml";
	for (int i = 0; i < a->faults.count; i++)
		a->faults.at[i].path = "wren.yaml";
	if (*name == '\0') {
		a->routine = (struct sheet) { .arena = { NULL, 0 } };
		homework_check(&a->homework.source, &a->faults);
		return;
	}
	if (sheet_parse(&a->routine, "routine.yaml", text, length, &a->faults))
		a->read = routine_read(
		    &a->routine.source, &a->homework.source, &a->faults);
}

/* Reads the bytes of one file.  any_done when all was looked at. */
static inline void any_read(struct any *a, const char *bytes, size_t length)
{
	const char *name;

	a->homework = (struct sheet) { .arena = { NULL, 0 } };
	a->faults.count = a->faults.left_out = 0;
	a->read = NULL;
	if (!sheet_parse(
		&a->routine, "routine.yaml", bytes, length, &a->faults))
		return;
	name = homework_routine_name(a->routine.source.root);
	if (name != NULL)
		any_lay_over(a, name);
	else
		a->read = routine_read(&a->routine.source, NULL, &a->faults);
}

/* Reads the bytes of two files, a homework file and its routine. */
static inline void any_read_two(struct any *a, const char *bytes, size_t length,
    const char *homework, size_t homework_length)
{
	a->homework = (struct sheet) { .arena = { NULL, 0 } };
	a->faults.count = a->faults.left_out = 0;
	a->read = NULL;
	if (sheet_parse(&a->homework, "wren.yaml", homework, homework_length,
		&a->faults) &&
	    sheet_parse(&a->routine, "routine.yaml", bytes, length, &a->faults))
		a->read = routine_read(
		    &a->routine.source, &a->homework.source, &a->faults);
}

static inline void any_done(struct any *a)
{
	routine_free(a->read);
	arena_done(&a->routine.arena);
	arena_done(&a->homework.arena);
}

/* --- what must hold --- */

/* Letters of a line of the file, or -1 when there is no such line. */
static inline int any_letters(const struct source *s, int line)
{
	const char *at = s->bytes, *end = s->bytes + s->length;
	int letters = 0;

	if (s->length >= 3 && memcmp(at, "\xef\xbb\xbf", 3) == 0)
		at += 3;
	for (; line > 1 && at < end; at++)
		if (*at == '\n' ||
		    (*at == '\r' && (at + 1 == end || at[1] != '\n')))
			line--;
	if (line != 1)
		return -1;
	for (; at < end && *at != '\n' && *at != '\r'; at++)
		letters += ((unsigned char)*at & 0xc0) != 0x80;
	return letters;
}

/* The place may be just behind the last letter of a line. */
static inline bool any_in_file(const struct any *a, const struct fault *f)
{
	bool homework = strcmp(f->path, "wren.yaml") == 0;
	const struct source *s = homework ? &a->homework.source
					  : &a->routine.source;
	int letters = f->line > 0 ? any_letters(s, f->line) : -1;

	return letters >= 0 && f->column >= 1 && f->column <= letters + 1;
}

/* Control characters, and those that turn text round or end lines. */
static inline bool any_clean(const char *s)
{
	char clean[ANY_SAID];

	text_clean(clean, sizeof(clean), s);
	for (const unsigned char *c = (const unsigned char *)s; *c; c++)
		if (*c < 0x20 || *c == 0x7f)
			return false;
	return strcmp(clean, s) == 0;
}

static inline const char *any_fault_wrong(struct any *a, const struct fault *f)
{
	size_t length = fault_text(f, a->said, sizeof(a->said));

	if (!text_is_utf8(a->said, length))
		return "the sentence is not UTF-8";
	if (!any_clean(a->said))
		return "the sentence holds a control character";
	if (length + 1 >= sizeof(a->said))
		return "the sentence has no end";
	if (f->path == NULL || !any_in_file(a, f))
		return "the place is not in the file";
	return NULL;
}

static inline const char *any_faults_wrong(struct any *a)
{
	const struct fault *before = NULL;

	for (int i = 0; i < a->faults.count; i++) {
		const struct fault *f = &a->faults.at[i];
		const char *wrong = any_fault_wrong(a, f);

		if (wrong != NULL)
			return wrong;
		if (before != NULL && strcmp(before->path, f->path) == 0 &&
		    (before->line > f->line ||
			(before->line == f->line &&
			    before->column > f->column)))
			return "the faults are not in the order of lines";
		before = f;
	}
	return NULL;
}

/* The plan of a day without any history: inside the cap, turn after turn. */
static inline const char *any_plan_wrong(struct any *a)
{
	struct history none = { .sittings = 0 };
	struct plan_wish wish = { .routine = a->read,
		.history = &none,
		.now = { INT64_C(86400) * ANY_DAY + 61200, 0 } };
	const struct plan *p = &a->plan;
	int own_ms = a->read->stage[a->read->work_on].minutes_ms;
	int most_ms = own_ms > 0 ? own_ms : a->read->cap_ms;

	for (int m = MARKING_TURN; m <= MARKING_ROUND; m++) {
		wish.marking = (enum marking)m;
		plan_make(&a->plan, &wish);
		if (p->verdict != VERDICT_PRACTISE || p->turns == 0)
			return "nothing is planned";
		if (p->length_ms > p->cap_ms || p->cap_ms > most_ms)
			return "the plan is longer than the session";
		for (int t = 1; t < p->turns; t++)
			if (p->turn[t].start_ms <= p->turn[t - 1].start_ms)
				return "the turns are not in order";
	}
	return NULL;
}

static inline const char *any_page_wrong(struct any *a)
{
	struct text page = text_in(a->page, sizeof(a->page));
	char *line = a->page, *end;

	dry_run_write(&page, a->read);
	if (page.cut)
		return "the dry run does not fit";
	if (!text_is_utf8(a->page, page.length))
		return "the dry run is not UTF-8";
	for (; (end = strchr(line, '\n')) != NULL; line = end + 1) {
		*end = '\0';
		text_clean(a->said, sizeof(a->said), line);
		if (text_columns(line) > ANY_COLUMNS)
			return "a line of the dry run is too long";
		if (!any_clean(line))
			return "a line of the dry run is not clean";
	}
	return NULL;
}

/* What does not hold after any_read, or NULL: of faults, or of none. */
static inline const char *any_wrong(struct any *a)
{
	const char *wrong;

	a->said[0] = '\0';
	faults_sort(&a->faults);
	wrong = any_faults_wrong(a);
	if (wrong != NULL)
		return wrong;
	a->said[0] = '\0';
	return a->faults.count == 0 && a->read == NULL
	    ? "neither a routine nor a fault"
	    : NULL;
}

/* What does not hold of a routine without faults, as it is put to use. */
static inline const char *any_use_wrong(struct any *a)
{
	const char *wrong = any_plan_wrong(a);

	return wrong != NULL ? wrong : any_page_wrong(a);
}

#endif
