/*
 * read_stage.c - the stages in their order
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "reader.h"

enum { TITLE_COLUMNS = 60, SAY_COLUMNS = 200, FADE_MOST = 99 };

static bool good_id(const char *id)
{
	return strlen(id) < ID_MAX && *id != '\0' &&
	    id[strspn(id, "abcdefghijklmnopqrstuvwxyz0123456789-")] == '\0';
}

static bool read_id(
    struct reader *rd, const struct node *n, const char *key, char *id)
{
	struct text t = text_in(id, ID_MAX);
	const char *word;

	if (!value_word(rd, n, key, &word))
		return false;
	if (!good_id(word))
		return fault_here(rd, n,
		    message_with(M_ROUTINE_ID, TEXT(word), WHOLE(ID_MAX - 1)));
	text_add(&t, word);
	return true;
}

/* The id, and the id it had: both name one history only. */
static void read_ids(struct reader *rd, const struct node *map, struct stage *s)
{
	const struct node *id = node_get(map, "id");
	const struct node *was = node_get(map, "was");
	int same;

	s->line = id != NULL ? id->line : map->line;
	s->column = id != NULL ? id->column : map->column;
	if (!keys_meant(map, MAP_STAGE, "id"))
		fault_here(rd, map, message_of(M_ROUTINE_NO_ID));
	else if (id != NULL && read_id(rd, id, "id", s->id)) {
		same = routine_stage(rd->r, s->id);
		if (same >= 0)
			fault_here(rd, id,
			    message_with(M_ROUTINE_ID_TWICE, TEXT(s->id),
				WHOLE(rd->r->stage[same].line)));
	}
	if (was != NULL)
		read_id(rd, was, "was", s->was);
}

/* was: names an id that is gone, and only one stage may take it over. */
static void check_was(struct reader *rd, const struct node *list)
{
	const struct routine *r = rd->r;
	const struct node *map = list->first;

	for (int i = 0; i < r->stages && map != NULL; i++, map = map->next) {
		const char *was = r->stage[i].was;
		int there = *was ? routine_stage(r, was) : -1;

		if (there >= 0)
			fault_here(rd, node_get(map, "was"),
			    message_with(M_ROUTINE_WAS_THERE, TEXT(was),
				WHOLE(r->stage[there].line)));
		for (int j = 0; j < i && *was; j++)
			if (strcmp(r->stage[j].was, was) == 0)
				fault_here(rd, node_get(map, "was"),
				    message_with(M_ROUTINE_WAS_TWICE, TEXT(was),
					WHOLE(r->stage[j].line)));
	}
}

static void read_lines(
    struct reader *rd, const struct node *list, const char **lines, int *count)
{
	if (!value_list(rd, list, CHECKS_MAX))
		return;
	for (const struct node *n = list->first; n != NULL; n = n->next)
		if (value_text(rd, n, list->key, SAY_COLUMNS, &lines[*count]))
			(*count)++;
}

static void read_cue(struct reader *rd, const struct node *n, struct stage *s)
{
	const char *cue;
	int wide;

	if (!value_text(rd, n, "cue", SAY_COLUMNS, &cue))
		return;
	wide = text_columns(cue);
	if (wide > CUE_COLUMNS)
		fault_here(rd, n,
		    message_with(
			M_ROUTINE_CUE, WHOLE(wide), WHOLE(CUE_COLUMNS)));
	else
		s->cue = cue;
}

static void read_words(
    struct reader *rd, const struct node *map, struct stage *s)
{
	s->title = s->id;
	s->cue = s->say = "";
	value_text(
	    rd, node_get(map, "title"), "title", TITLE_COLUMNS, &s->title);
	read_cue(rd, node_get(map, "cue"), s);
	value_text(rd, node_get(map, "say"), "say", SAY_COLUMNS, &s->say);
	read_lines(rd, node_get(map, "check"), s->check, &s->checks);
	read_lines(rd, node_get(map, "feel"), s->feel, &s->feels);
}

/* Faults for keys that mean nothing in this kind of stage. */
static void no_keys(struct reader *rd, const struct node *map,
    const char *const *keys, enum message_id id)
{
	for (int i = 0; keys[i] != NULL; i++) {
		const struct node *n = node_get(map, keys[i]);

		if (n != NULL)
			fault_key(rd, n, message_with(id, TEXT(keys[i])));
	}
}

/* Neither the air nor a string: perhaps only the capital letters. */
static void no_place(struct reader *rd, const struct node *n, struct stage *s)
{
	static const char string[] = "string ";
	char small[TEXT_LISTED], right[TEXT_LISTED];
	struct text t = text_in(right, sizeof(right));

	small_letters(small, sizeof(small), n->word);
	if (strcmp(small, "in the air") == 0) {
		s->in_the_air = true;
		fault_small(rd, n, small);
	} else if (strncmp(small, string, strlen(string)) == 0) {
		/* The letter of the string is a capital one. */
		text_format(&t, "%s%s", string, n->word + strlen(string));
		fault_small(rd, n, right);
	} else {
		fault_here(rd, n, message_with(M_ROUTINE_PLACE, TEXT(n->word)));
	}
}

/* "in the air", "string D", or nothing where strings take the turns. */
static void read_place(
    struct reader *rd, const struct node *map, struct stage *s)
{
	static const char string[] = "string ";
	const struct node *n = node_get(map, "place");
	const struct routine *r = rd->r;
	char strings[TEXT_LISTED];
	const char *word;

	s->string = -1;
	if (n == NULL) {
		if (r->take != TAKE_STRINGS &&
		    !keys_meant(map, MAP_STAGE, "place"))
			fault_here(rd, map, message_of(M_ROUTINE_NO_PLACE));
		return;
	}
	if (!value_word(rd, n, "place", &word))
		return;
	if (strcmp(word, "in the air") == 0) {
		s->in_the_air = true;
		return;
	}
	if (strncmp(word, string, strlen(string)) != 0) {
		no_place(rd, n, s);
		return;
	}
	word += strlen(string);
	s->string = setup_string(&r->setup, word);
	list_strings(r, strings, sizeof(strings));
	if (s->string < 0)
		fault_here(rd, n,
		    message_with(M_ROUTINE_NO_STRING, TEXT(word),
			WORD(instrument_word(r->setup.instrument)),
			TEXT(strings)));
}

/* Who takes the turns says what a pulse may be. */
static void read_motion(
    struct reader *rd, const struct node *n, struct stage *s)
{
	static const char *const motions[] = { "slide", "finger drop",
		"string crossing", NULL };
	static const enum motion usual[] = {
		[TAKE_FINGERS] = MOTION_SLIDE,
		[TAKE_PAIRS] = MOTION_DROP,
		[TAKE_STRINGS] = MOTION_CROSSING,
	};
	enum take take = rd->r->take;
	int found = (int)usual[take];

	s->motion = usual[take];
	if (!value_choice(rd, n, motions, &found) || !rd->units_known)
		return;
	if (take == TAKE_STRINGS && found != MOTION_CROSSING)
		fault_here(rd, n, message_of(M_ROUTINE_MOTION_STRINGS));
	else if (take == TAKE_PAIRS && found != MOTION_DROP)
		fault_here(rd, n, message_of(M_ROUTINE_MOTION_PAIRS));
	else if (take == TAKE_FINGERS && found == MOTION_CROSSING)
		fault_here(rd, n, message_of(M_ROUTINE_MOTION_FINGERS));
	else
		s->motion = (enum motion)found;
}

static void read_start(struct reader *rd, const struct node *n, struct stage *s)
{
	const struct routine *r = rd->r;
	char list[TEXT_LISTED];
	struct text t = text_in(list, sizeof(list));
	int pulses;

	if (!number_whole(rd, n,
		(struct bounds) { "start_pulses", 1, PULSES_MAX }, &pulses))
		return;
	if (routine_rung(r, pulses) >= 0) {
		s->start_pulses = pulses;
		return;
	}
	for (int i = 0; i < r->ladder_count; i++) {
		text_add(&t, i > 0 ? ", " : "");
		text_number(&t, r->ladder[i]);
	}
	fault_here(rd, n,
	    message_with(M_ROUTINE_START_PULSES, WHOLE(pulses), TEXT(list)));
}

static void read_play(
    struct reader *rd, const struct node *map, struct stage *s)
{
	static const char *const in_air[] = { "shift", "travel", "motion",
		"start_pulses", "upper_note", "pulses_fade_after", NULL };
	static const char *const no_way[] = { "shift", "travel", NULL };
	static const char *const crossing[] = { "place", "shift", "travel",
		"upper_note", NULL };
	static const char *const upper[] = { "exact", "near", NULL };
	int near = 0;

	if (s->in_the_air) {
		no_keys(rd, map, in_air, M_ROUTINE_AIR_KEY);
		return;
	}
	read_motion(rd, node_get(map, "motion"), s);
	if (s->motion == MOTION_SLIDE)
		read_travel(rd, map, s);
	else if (s->motion == MOTION_DROP)
		no_keys(rd, map, no_way, M_ROUTINE_DROP_KEY);
	else
		no_keys(rd, map, crossing, M_ROUTINE_CROSSING_KEY);
	read_start(rd, node_get(map, "start_pulses"), s);
	value_choice(rd, node_get(map, "upper_note"), upper, &near);
	s->upper_near = near == 1;
	number_whole(rd, node_get(map, "pulses_fade_after"),
	    (struct bounds) { "pulses_fade_after", 0, FADE_MOST },
	    &s->fade_after);
}

static void read_stage(struct reader *rd, const struct node *map)
{
	struct routine *r = rd->r;
	struct stage s = { .string = -1 };
	/* Words first: the title is the id where there is none. */
	struct stage *kept = &r->stage[r->stages];

	if (!keys_check(rd, map, MAP_STAGE)) {
		kept->title = kept->cue = kept->say = "";
		r->stages++;
		return;
	}
	read_ids(rd, map, &s);
	*kept = s;
	read_words(rd, map, kept);
	read_place(rd, map, kept);
	if (kept->in_the_air && r->stages > 0)
		fault_here(rd, node_get(map, "place"),
		    message_of(M_ROUTINE_AIR_FIRST));
	kept->because = value_because(rd, map);
	read_minutes(
	    rd, node_get(map, "minutes"), kept->because, &kept->minutes_ms);
	value_yes_no(rd, node_get(map, "patience"), &kept->patience);
	read_play(rd, map, kept);
	r->stages++;
}

void read_stages(struct reader *rd, const struct node *list)
{
	if (!value_list(rd, list, STAGES_MAX))
		return;
	for (const struct node *n = list->first; n != NULL; n = n->next)
		read_stage(rd, n);
	check_was(rd, list);
}
