/*
 * read_turns.c - who takes a turn: fingers, pairs of fingers or strings
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "evenhand/music/pitch.h"
#include "reader.h"

enum { LETTER_BYTES = 4, OPEN = 0 };

static const char *const takes[] = { "fingers", "pairs", "strings", NULL };

void list_units(const struct routine *r, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	for (int i = 0; i < r->units; i++) {
		text_add(&t, i > 0 ? ", " : "");
		text_add(&t, r->unit[i].name);
	}
}

static void name_unit(struct unit *u, const char *word)
{
	struct text t = text_in(u->name, sizeof(u->name));

	text_add(&t, word);
}

/* A single digit from least to 4. */
static bool finger(char digit, int least, int *out)
{
	if (digit < '0' + least || digit > '0' + FINGERS_MAX)
		return false;
	*out = digit - '0';
	return true;
}

static bool parse_pair(const char *word, struct unit *u)
{
	return strlen(word) == strlen("0-1") && word[1] == '-' &&
	    finger(word[0], OPEN, &u->from) && finger(word[2], OPEN, &u->to) &&
	    u->from != u->to;
}

static bool parse_strings(
    const struct setup *s, const char *word, struct unit *u)
{
	const char *dash = strchr(word, '-');
	char from[PITCH_NAME_MAX];
	struct text t = text_in(from, sizeof(from));

	if (dash == NULL || strlen(word) >= UNIT_NAME_MAX)
		return false;
	text_add_bytes(&t, word, (size_t)(dash - word));
	u->from = setup_string(s, from);
	u->to = setup_string(s, dash + 1);
	return !t.cut && u->from >= 0 && u->to >= 0 && u->from != u->to;
}

static bool read_unit(struct reader *rd, const struct node *n, struct unit *u)
{
	const char *word;
	char strings[TEXT_LISTED];

	if (!value_word(rd, n, "order", &word))
		return false;
	switch (rd->r->take) {
	case TAKE_FINGERS:
		if (strlen(word) != 1 || !finger(*word, 1, &u->from))
			return fault_here(
			    rd, n, message_with(M_ROUTINE_FINGER, TEXT(word)));
		u->to = u->from;
		break;
	case TAKE_PAIRS:
		if (!parse_pair(word, u))
			return fault_here(
			    rd, n, message_with(M_ROUTINE_PAIR, TEXT(word)));
		break;
	case TAKE_STRINGS:
		list_strings(rd->r, strings, sizeof(strings));
		if (!parse_strings(&rd->r->setup, word, u))
			return fault_here(rd, n,
			    message_with(
				M_ROUTINE_STRINGS, TEXT(word), TEXT(strings)));
		break;
	}
	name_unit(u, word);
	return true;
}

static bool bass_three(const struct reader *rd, const struct unit *u)
{
	return rd->r->setup.instrument == INSTRUMENT_BASS &&
	    rd->r->take == TAKE_FINGERS && u->from == 3;
}

/* Every finger has a turn, or the teacher says why not. */
static void check_fingers(struct reader *rd, const struct node *list)
{
	bool bass = rd->r->setup.instrument == INSTRUMENT_BASS;
	bool has[FINGERS_MAX + 1] = { false };

	for (int i = 0; i < rd->r->units; i++)
		has[rd->r->unit[i].from] = true;
	for (int f = 1; f <= FINGERS_MAX; f++)
		if (!has[f] && !(bass && f == 3))
			fault_here(rd, list,
			    message_with(M_ROUTINE_FINGER_LEFT, WHOLE(f)));
}

/* The usual order; a bass player's finger 3 helps finger 4. */
static void usual_fingers(struct routine *r)
{
	bool bass = r->setup.instrument == INSTRUMENT_BASS;

	r->units = 0;
	for (int f = 1; f <= FINGERS_MAX; f++) {
		struct unit *u = &r->unit[r->units];

		if (bass && f == 3)
			continue;
		u->from = u->to = f;
		u->name[0] = (char)('0' + f);
		u->name[1] = '\0';
		r->units++;
	}
}

static void read_order(struct reader *rd, const struct node *list, bool because)
{
	struct routine *r = rd->r;
	int faults = faults_found(rd);

	if (list == NULL || !value_list(rd, list, UNITS_MAX))
		return;
	r->units = 0;
	for (const struct node *n = list->first; n != NULL; n = n->next) {
		struct unit u = { .from = 0 };

		if (!read_unit(rd, n, &u))
			continue;
		if (routine_unit(r, u.name) >= 0)
			fault_here(rd, n,
			    message_with(M_ROUTINE_UNIT_TWICE, TEXT(u.name)));
		else
			r->unit[r->units++] = u;
		if (!because && bass_three(rd, &u))
			fault_here(rd, n, message_of(M_ROUTINE_BASS_THREE));
	}
	if (faults_found(rd) == faults && r->take == TAKE_FINGERS && !because)
		check_fingers(rd, list);
	if (r->units == 0)
		usual_fingers(r);
}

/* Pairs and strings have no usual order: it must be given. */
static void order_missing(struct reader *rd, const struct node *map)
{
	const struct node *take = node_get(map, "take");
	const struct setup *s = &rd->r->setup;
	char name[PITCH_NAME_MAX], example[2 * PITCH_NAME_MAX];
	struct text t = text_in(example, sizeof(example));

	if (rd->r->take == TAKE_PAIRS) {
		fault_here(rd, take, message_of(M_ROUTINE_NO_PAIRS));
		return;
	}
	/* The two highest strings, the lower one first. */
	for (int i = s->strings > 1 ? 1 : 0; i >= 0; i--) {
		pitch_name(s->open[i], false, name);
		text_add_bytes(&t, name, strcspn(name, "-0123456789"));
		text_add(&t, i > 0 ? "-" : "");
	}
	fault_here(rd, take, message_with(M_ROUTINE_NO_STRINGS, TEXT(example)));
}

void read_turns(struct reader *rd, const struct node *map)
{
	struct routine *r = rd->r;
	const struct node *order = node_get(map, "order");
	struct bounds change = { "change_seconds", 2, 30 };
	bool good = map != NULL && keys_check(rd, map, MAP_TURNS);
	int take = TAKE_FINGERS, hundredths;
	int faults = faults_found(rd);

	if (good)
		value_choice(rd, node_get(map, "take"), takes, &take);
	rd->units_known = faults_found(rd) == faults;
	r->take = (enum take)take;
	usual_fingers(r);
	if (!good)
		return;
	if (order == NULL && r->take != TAKE_FINGERS)
		order_missing(rd, map);
	else if (rd->units_known)
		read_order(rd, order, value_because(rd, map));
	rd->units_known = faults_found(rd) == faults;
	number_whole(rd, node_get(map, "bows_each"),
	    (struct bounds) { "bows_each", 1, BOWS_EACH_MAX }, &r->bows_each);
	if (number_hundredths(
		rd, node_get(map, "change_seconds"), change, &hundredths))
		r->change_ms = hundredths * 10;
}
