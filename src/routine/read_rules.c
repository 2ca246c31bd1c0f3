/*
 * read_rules.c - the bow, the session, recap and moving on
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

enum {
	TEN_MS = 10,	 /* a hundredth of a second, in ms */
	MINUTE_MS = 600, /* a hundredth of a minute, in ms */
	USUAL_MINUTES = 5,
	LONG_MINUTES = 10, /* above it a reason is asked for */
	OF_MAX = 9,
	PART_MAX = 12,
};

static const int usual_ladder[] = { 4, 6, 8 };

static bool usual_rung(int pulses)
{
	for (size_t i = 0; i < sizeof(usual_ladder) / sizeof(int); i++)
		if (usual_ladder[i] == pulses)
			return true;
	return false;
}

static bool read_pulse(
    struct reader *rd, const struct node *n, bool because, int *pulses)
{
	struct bounds b = { "pulses", 1, PULSES_MAX };
	int before = *pulses;

	if (!number_whole(rd, n, b, pulses))
		return false;
	if (*pulses <= before)
		return fault_here(rd, n,
		    message_with(
			M_ROUTINE_PULSES_RISE, WHOLE(before), WHOLE(*pulses)));
	if (!because && !usual_rung(*pulses))
		return fault_here(
		    rd, n, message_with(M_ROUTINE_PULSES_ODD, WHOLE(*pulses)));
	return true;
}

static void read_pulses(
    struct reader *rd, const struct node *list, bool because)
{
	int ladder[LADDER_MAX], count = 0, last = 0;
	bool good = true;

	if (!value_list(rd, list, LADDER_MAX))
		return;
	for (const struct node *n = list->first; n != NULL; n = n->next) {
		good = read_pulse(rd, n, because, &last) && good;
		ladder[count++] = last;
	}
	if (!good)
		return;
	rd->r->ladder_count = count;
	memcpy(rd->r->ladder, ladder, sizeof(int) * (size_t)count);
}

void read_bowing(struct reader *rd, const struct node *map)
{
	struct bounds seconds = { "bow_seconds", 1, 20 };
	struct bounds count_in = { "count_in_bows", 0, 4 };
	int hundredths;

	if (map == NULL || !keys_check(rd, map, MAP_BOWING))
		return;
	if (number_hundredths(
		rd, node_get(map, "bow_seconds"), seconds, &hundredths))
		rd->r->bow_ms = hundredths * TEN_MS;
	read_pulses(rd, node_get(map, "pulses"), value_because(rd, map));
	number_whole(rd, node_get(map, "count_in_bows"), count_in,
	    &rd->r->count_in_bows);
}

void read_minutes(
    struct reader *rd, const struct node *n, bool because, int *ms)
{
	struct bounds b = { "minutes", 0, 60 };
	int hundredths;
	double times;

	if (!number_hundredths(rd, n, b, &hundredths))
		return;
	*ms = hundredths * MINUTE_MS;
	if (because || hundredths <= LONG_MINUTES * 100)
		return;
	times = hundredths / (USUAL_MINUTES * 100.0);
	if (hundredths % (USUAL_MINUTES * 100) == 0)
		fault_here(rd, n,
		    message_with(M_ROUTINE_LONG, FIGURE(hundredths / 100.0),
			WORD(M_ROUTINE_1 + (int)times - 1)));
	else
		fault_here(rd, n,
		    message_with(M_ROUTINE_LONG_PART,
			FIGURE(hundredths / 100.0), FIGURE(times)));
}

void read_session(struct reader *rd, const struct node *map)
{
	struct routine *r = rd->r;

	if (map == NULL || !keys_check(rd, map, MAP_SESSION))
		return;
	read_minutes(
	    rd, node_get(map, "minutes"), value_because(rd, map), &r->cap_ms);
	number_whole(rd, node_get(map, "per_day"),
	    (struct bounds) { "per_day", 1, 4 }, &r->per_day);
	number_whole(rd, node_get(map, "hours_apart"),
	    (struct bounds) { "hours_apart", 0, 12 }, &r->hours_apart);
	number_whole(rd, node_get(map, "days_a_week"),
	    (struct bounds) { "days_a_week", 1, 7 }, &r->days_a_week);
}

struct part {
	const char *word;
	int num, den;
};

static const struct part parts[] = {
	{ "half", 1, 2 },
	{ "third", 1, 3 },
	{ "two thirds", 2, 3 },
	{ "quarter", 1, 4 },
	{ "none", 0, 1 },
};

/* A digit or two at *s, stepped over; -1 when there is none. */
static int small_number(const char **s)
{
	int value = 0, digits = 0;

	while (**s >= '0' && **s <= '9' && digits++ < 2)
		value = value * 10 + (*(*s)++ - '0');
	return digits > 0 ? value : -1;
}

static bool part_of(const char *word, int *num, int *den)
{
	const char *s = strncmp(word, "a ", 2) == 0 ? word + 2 : word;

	for (size_t i = 0; i < sizeof(parts) / sizeof(parts[0]); i++) {
		if (strcmp(parts[i].word, s) == 0) {
			*num = parts[i].num;
			*den = parts[i].den;
			return true;
		}
	}
	s = word;
	*num = small_number(&s);
	if (*s != '/')
		return false;
	s++;
	*den = small_number(&s);
	return *s == '\0' && *num > 0 && *den <= PART_MAX && *num < *den;
}

void read_recap(struct reader *rd, const struct node *map)
{
	const struct node *n = node_get(map, "most");
	const char *word;
	int num, den;

	if (map == NULL || !keys_check(rd, map, MAP_RECAP))
		return;
	if (n == NULL || !value_word(rd, n, "most", &word))
		return;
	if (!part_of(word, &num, &den)) {
		fault_here(rd, n, message_with(M_ROUTINE_RECAP, TEXT(word)));
		return;
	}
	rd->r->recap_num = num;
	rd->r->recap_den = den;
}

/* "2 of 3": so many of so many days. */
static void read_all_clean(struct reader *rd, const struct node *n)
{
	const char *word, *s;
	int clean, of = -1;

	if (n == NULL || !value_word(rd, n, "all_clean", &word))
		return;
	s = word;
	clean = small_number(&s);
	if (strncmp(s, " of ", strlen(" of ")) == 0) {
		s += strlen(" of ");
		of = small_number(&s);
	}
	if (*s != '\0' || clean < 1 || clean > of || of > OF_MAX) {
		fault_here(
		    rd, n, message_with(M_ROUTINE_ALL_CLEAN, TEXT(word)));
		return;
	}
	rd->r->move_clean = clean;
	rd->r->move_of = of;
}

void read_move_on(struct reader *rd, const struct node *map)
{
	static const char *const who[] = { "teacher", "student", NULL };
	int found;

	if (map == NULL || !keys_check(rd, map, MAP_MOVE_ON))
		return;
	number_whole(rd, node_get(map, "days"),
	    (struct bounds) { "days", 1, 60 }, &rd->r->move_days);
	read_all_clean(rd, node_get(map, "all_clean"));
	if (value_choice(rd, node_get(map, "decided_by"), who, &found))
		rd->r->decided_by = (enum decided_by)found;
}
