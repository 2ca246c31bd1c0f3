/*
 * journal_row.c - rows, and rows as lines of the spool
 *
 * A line is a format number, the kind, the origin, the numbers, the texts
 * and a checksum over all before it, with a tab between.  A line that a power
 * cut tore fails its checksum.  Lines of format 1, which an older evenhand left,
 * are read as well: its sittings had neither instrument nor asked stage, the last
 * of their texts.
 */
#include "journal_row.h"

#include <assert.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/fingerprint.h"

enum {
	HEAD = 3, /* fields before the numbers */
	FIELDS_MAX = HEAD + ROW_NUMBERS_MAX + ROW_TEXTS_MAX,
	HEX = 16,
};

#define FORMAT "2"
#define FORMAT_1 "1"

#define COMMON \
	[ROW_SEQUENCE] = ":sequence", [ROW_SITTING_OF] = ":sitting_of", \
	[ROW_UTC] = ":utc", [ROW_OFFSET] = ":offset", [ROW_DAY] = ":day"

const struct row_layout row_layouts[ROW_KINDS] = {
	[ROW_SITTING] = { "sitting", SITTING_NUMBERS, SITTING_TEXTS,
	    { COMMON, [SITTING_EDITION] = ":edition",
		[SITTING_MARKING] = ":marking", [SITTING_CAP] = ":cap_ms",
		[SITTING_PLANNED] = ":planned_ms", [SITTING_RATE] = ":rate" },
	    { [SITTING_FINGERPRINT] = ":fingerprint",
		[SITTING_NAME] = ":name",
		[SITTING_TEXT] = ":text",
		[SITTING_STAGE] = ":stage",
		[SITTING_DEVICE] = ":device",
		[SITTING_INSTRUMENT] = ":instrument",
		[SITTING_ASKED] = ":asked_stage" } },
	[ROW_SHARE] = { "share", SHARE_NUMBERS, SHARE_TEXTS,
	    { COMMON, [SHARE_PLANNED] = ":planned",
		[SHARE_DROPPED] = ":dropped" },
	    { [SHARE_STAGE] = ":stage", [SHARE_UNIT] = ":unit" } },
	[ROW_TURN] = { "turn", TURN_NUMBERS, TURN_TEXTS,
	    { COMMON, [TURN_NUMBER] = ":number", [TURN_KIND] = ":kind",
		[TURN_ROUND] = ":round", [TURN_PULSES] = ":pulses",
		[TURN_ASKED] = ":asked", [TURN_DONE] = ":done",
		[TURN_FIRST_GO] = ":first_go", [TURN_RESETS] = ":resets",
		[TURN_DROPOUTS] = ":dropouts", [TURN_START] = ":start_ms",
		[TURN_ENDED] = ":end_ms", [TURN_SLIDE] = ":slide_um" },
	    { [TURN_STAGE] = ":stage", [TURN_UNIT] = ":unit" } },
	[ROW_MARK] = { "mark", MARK_NUMBERS, 0,
	    { COMMON, [MARK_NUMBER] = ":number", [MARK_MARK] = ":mark",
		[MARK_MS] = ":mark_ms" },
	    { NULL } },
	[ROW_NOTE] = { "note", NOTE_NUMBERS, NOTE_TEXTS,
	    { COMMON, [NOTE_KIND] = ":kind", [NOTE_FINGER] = ":finger" },
	    { [NOTE_WORDS] = ":words" } },
	[ROW_END] = { "end", END_NUMBERS, 0,
	    { COMMON, [END_ENDED] = ":ended", [END_LENGTH] = ":length_ms" },
	    { NULL } },
	[ROW_MEASURE] = { "measure", MEASURE_NUMBERS, MEASURE_TEXTS,
	    { COMMON, [MEASURE_NUMBER] = ":number",
		[MEASURE_METHOD] = ":method" },
	    { [MEASURE_VALUES] = ":values" } },
};

struct row *row_new(enum row_kind kind, const char *const *texts)
{
	int count = row_layouts[kind].texts;
	size_t size = sizeof(struct row);
	struct row *row;
	char *to;

	for (int i = 0; i < count; i++)
		size += strlen(texts[i]) + 1;
	row = calloc(1, size);
	if (row == NULL)
		return NULL;
	row->kind = kind;
	to = (char *)(row + 1);
	for (int i = 0; i < count; i++) {
		size_t bytes = strlen(texts[i]) + 1;

		memcpy(to, texts[i], bytes);
		row->text[i] = to;
		to += bytes;
	}
	return row;
}

struct row *row_copy(const struct row *row)
{
	struct row *copy = row_new(row->kind, row->text);

	if (copy == NULL)
		return NULL;
	memcpy(copy->origin, row->origin, ORIGIN_BYTES);
	memcpy(copy->number, row->number, sizeof(copy->number));
	return copy;
}

/* What must not stand in a line as it is, and the letter it is written as. */
static const char escaped[] = "\t\n\r\\";
static const char letters[] = "tnr\\";

static void write_text(const char *s, FILE *to)
{
	for (; *s; s++) {
		const char *found = strchr(escaped, *s);

		if (found != NULL) {
			putc('\\', to);
			putc(letters[found - escaped], to);
		} else {
			putc(*s, to);
		}
	}
}

static void write_fields(const struct row *row, FILE *to)
{
	const struct row_layout *l = &row_layouts[row->kind];

	fprintf(to, FORMAT "\t%s\t%s", l->name, row->origin);
	for (int i = 0; i < l->numbers; i++)
		fprintf(to, "\t%" PRId64, row->number[i]);
	for (int i = 0; i < l->texts; i++) {
		putc('\t', to);
		write_text(row->text[i], to);
	}
}

bool row_write(const struct row *row, FILE *to)
{
	char *bytes = NULL;
	size_t length = 0;
	FILE *line = open_memstream(&bytes, &length);
	bool good;

	if (line == NULL)
		return false;
	write_fields(row, line);
	good = !ferror(line);
	good = fclose(line) == 0 && good;
	if (good) {
		fwrite(bytes, 1, length, to);
		fprintf(to, "\t%016" PRIx64 "\n",
		    fingerprint_add(FINGERPRINT_START, bytes, length));
	}
	free(bytes);
	return good;
}

/* Turns escapes back into what they stand for, in place. */
static bool read_text(char *s)
{
	char *to = s;

	for (; *s; s++) {
		const char *found;

		if (*s != '\\') {
			*to++ = *s;
			continue;
		}
		found = s[1] ? strchr(letters, s[1]) : NULL;
		if (found == NULL)
			return false;
		*to++ = escaped[found - letters];
		s++;
	}
	*to = '\0';
	return true;
}

static bool read_number(const char *s, int64_t *out)
{
	char *end;

	assert(s != NULL); /* fields were counted */
	*out = strtoll(s, &end, 10);
	return *s != '\0' && *end == '\0';
}

/* Whether the checksum at the end of the line is right; takes it off. */
static bool checksum_good(char *line)
{
	char *tab = strrchr(line, '\t');
	char right[HEX + 1];

	if (tab == NULL || strlen(tab + 1) != HEX)
		return false;
	snprintf(right, sizeof(right), "%016" PRIx64,
	    fingerprint_add(FINGERPRINT_START, line, (size_t)(tab - line)));
	if (strcmp(tab + 1, right) != 0)
		return false;
	*tab = '\0';
	return true;
}

/* Cuts a line at its tabs; returns the fields, 0 when there are too many. */
static int split(char *line, char **field)
{
	int count = 0;

	for (;;) {
		char *tab = strchr(line, '\t');

		if (count == FIELDS_MAX)
			return 0;
		field[count++] = line;
		if (tab == NULL)
			return count;
		*tab = '\0';
		line = tab + 1;
	}
}

static int kind_of(const char *name)
{
	for (int k = 0; k < ROW_KINDS; k++)
		if (strcmp(row_layouts[k].name, name) == 0)
			return k;
	return -1;
}

/* How many texts a line of that format has; -1 for none of ours. */
static int texts_in(const char *format, int kind)
{
	if (strcmp(format, FORMAT) == 0)
		return row_layouts[kind].texts;
	if (strcmp(format, FORMAT_1) == 0)
		return row_layouts[kind].texts - (kind == ROW_SITTING ? 2 : 0);
	return -1;
}

/* The row of the fields of a line, each in its place. */
static struct row *row_of(enum row_kind kind, char **field, int there)
{
	const struct row_layout *l = &row_layouts[kind];
	const char *texts[ROW_TEXTS_MAX];
	int64_t number[ROW_NUMBERS_MAX] = { 0 };
	struct row *row;

	for (int i = 0; i < l->numbers; i++)
		if (!read_number(field[HEAD + i], &number[i]))
			return NULL;
	for (int i = 0; i < l->texts; i++) {
		texts[i] = i < there ? field[HEAD + l->numbers + i] : "";
		if (i < there && !read_text(field[HEAD + l->numbers + i]))
			return NULL;
	}
	row = row_new(kind, texts);
	if (row == NULL)
		return NULL;
	memcpy(row->number, number, sizeof(number));
	memcpy(row->origin, field[2], ORIGIN_BYTES);
	return row;
}

struct row *row_read(char *line)
{
	char *field[FIELDS_MAX] = { NULL };
	int count, kind, texts;

	if (!checksum_good(line))
		return NULL;
	count = split(line, field);
	kind = count < HEAD ? -1 : kind_of(field[1]);
	if (kind < 0 || strlen(field[2]) != ORIGIN_BYTES - 1)
		return NULL;
	texts = texts_in(field[0], kind);
	if (texts < 0 || count != HEAD + row_layouts[kind].numbers + texts)
		return NULL;
	return row_of((enum row_kind)kind, field, texts);
}

void rows_free(struct row *first)
{
	while (first != NULL) {
		struct row *next = first->next;

		free(first);
		first = next;
	}
}
