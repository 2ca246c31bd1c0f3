/*
 * scenes.h - real sessions brought to each page, for tests of the full screen
 *
 *	scene_play(&scene, SCENE_END);
 *	view_draw(&canvas, &scene.view);
 */
#ifndef EVENHAND_TESTS_SCENES_H
#define EVENHAND_TESTS_SCENES_H

#include <stdio.h>
#include <stdlib.h>

#include "../coach/made.h"
#include "../coach/sitting.h"
#include "evenhand/screen/view.h"

enum scene_id {
	SCENE_SORE_FIRST, /* who never practised before */
	SCENE_SORE,
	SCENE_WHERE,
	SCENE_REST, /* pain on two days: ask first */
	SCENE_REST_NOW,
	SCENE_TODAY_FIRST,
	SCENE_TODAY,
	SCENE_TODAY_SORE, /* finger 2 is left out */
	SCENE_SILENT_ON,
	SCENE_SILENT,
	SCENE_PAIN,
	SCENE_PAIN_WHERE,
	SCENE_LEAVE,
	SCENE_END,
	SCENE_END_PAIN,
	SCENE_QUESTION,
	SCENE_TYPED,
	SCENE_HELP,
	SCENE_HELP_PLAY,
	SCENES
};

static const char *const scene_names[SCENES] = {
	"sore-first",
	"sore",
	"where",
	"rest",
	"rest-now",
	"today-first",
	"today",
	"today-sore",
	"silent-on",
	"silent",
	"pain",
	"pain-where",
	"leave",
	"end",
	"end-pain",
	"question",
	"typed",
	"help",
	"help-play",
};

struct scene {
	struct routine routine;
	struct past *past;
	struct sitting d;
	struct view view;
};

/* What a teacher would have written round the stages. */
static inline void scene_words(struct routine *r)
{
	r->note = "Finger 4: keep 1, 2 and 3 down beside it.";
	r->stage[AIR].say =
	    "Hand open. Only the forearm swings; the shoulders rest.";
	r->stage[WIDE].say =
	    "Let the slide sound. Arm weight alone meets the string.";
	r->stage[TONE].checks = 2;
	r->stage[TONE].check[1] = "Thumb glides, weightless";
	r->stage[TONE].feels = 1;
	r->stage[TONE].feel[0] =
	    "Rest your bow hand on the upper arm. Is it quiet?";
}

/* Two sessions on the days before, and pain on both when wanted. */
static inline void scene_past(struct scene *s, bool pain)
{
	struct plan plan;

	for (int day = 2; day >= 1; day--) {
		made_plan(&plan, &s->routine, s->past,
		    made_moment(FIRST_DAY - day, 17));
		past_play(s->past, &s->routine, &plan, all_clean, NULL,
		    PLAY_ALL, ENDED_WHOLE);
		if (pain)
			past_note(s->past, FIRST_DAY - day, NOTE_PAIN, 0);
	}
}

/* What the last step said is news to the page, as in the real shell. */
static inline void scene_news(struct scene *s)
{
	for (int i = 0; i < s->d.e.count; i++)
		if (s->d.e.at[i].kind == EFFECT_SAY &&
		    s->view.said < VIEW_NEWS_MAX)
			s->view.news[s->view.said++] = s->d.e.at[i].message;
}

/* A whole session: all rounds clean, but finger 1 of the first go. */
static inline void scene_whole(struct scene *s)
{
	struct sitting *d = &s->d;
	bool shaky = false;

	while (d->s.page == PAGE_PLAY) {
		sitting_reach(d, d->s.now + d->s.rate);
		if (d->s.page != PAGE_PLAY || d->s.phase != PHASE_CHANGE ||
		    d->s.turn < d->s.at.passage.turns - 1 ||
		    d->s.marked_by != KEY_OTHER)
			continue;
		if (d->s.at.from.block == 3 && !shaky) {
			shaky = true;
			sitting_input(d, d->s.now + d->s.rate / 2,
			    (struct input) { .kind = INPUT_KEY,
				.key = KEY_DIGIT,
				.digit = 4 });
		} else {
			sitting_soon(d, KEY_FORWARD);
		}
	}
	assert_int_equal(d->s.page, PAGE_END);
}

static inline void scene_keys(
    struct scene *s, const enum key *keys, int count, enum page page)
{
	for (int i = 0; i < count; i++)
		sitting_soon(&s->d, keys[i]);
	assert_int_equal(s->d.s.page, page);
}

#define SCENE_KEYS(s, page, ...) \
	do { \
		const enum key keys_[] = { __VA_ARGS__ }; \
		scene_keys( \
		    s, keys_, (int)(sizeof(keys_) / sizeof(*keys_)), page); \
	} while (0)

/* Silenced in the bows of a turn, or in its lead-in. */
static inline void scene_silence(struct scene *s, int ms)
{
	sitting_start(&s->d);
	sitting_key(&s->d, ms, KEY_SILENCE);
	assert_int_equal(s->d.s.page, PAGE_SILENT);
}

/* To numb, tingling, weak or swollen. */
static inline void scene_numb(struct scene *s)
{
	sitting_soon(&s->d, KEY_HURT);
	for (int i = 0; i < PAIN_NUMB; i++)
		sitting_soon(&s->d, KEY_BACK);
	assert_int_equal(s->d.s.choice, PAIN_NUMB);
}

static inline void scene_go(struct scene *s, enum scene_id id)
{
	switch (id) {
	case SCENE_SORE_FIRST:
	case SCENE_SORE:
	case SCENE_HELP:
		SCENE_KEYS(s, PAGE_SORE, KEY_OTHER);
		break;
	case SCENE_WHERE:
		SCENE_KEYS(s, PAGE_WHERE, KEY_BACK, KEY_BACK);
		break;
	case SCENE_REST:
		assert_int_equal(s->d.s.page, PAGE_REST);
		break;
	case SCENE_REST_NOW:
		scene_numb(s);
		SCENE_KEYS(s, PAGE_REST, KEY_FORWARD);
		break;
	case SCENE_TODAY_FIRST:
	case SCENE_TODAY:
		SCENE_KEYS(s, PAGE_TODAY, KEY_FORWARD);
		break;
	case SCENE_TODAY_SORE:
		SCENE_KEYS(s, PAGE_TODAY, KEY_BACK, KEY_BACK, KEY_FORWARD);
		break;
	case SCENE_SILENT_ON:
		scene_silence(s, 31000);
		break;
	case SCENE_SILENT:
		scene_silence(s, 40000);
		break;
	case SCENE_PAIN:
		scene_silence(s, 40000);
		SCENE_KEYS(s, PAGE_PAIN, KEY_BACK);
		break;
	case SCENE_PAIN_WHERE:
		scene_silence(s, 40000);
		scene_numb(s);
		break;
	case SCENE_LEAVE:
		scene_silence(s, 40000);
		SCENE_KEYS(s, PAGE_LEAVE, KEY_BACK, KEY_FORWARD);
		break;
	case SCENE_END_PAIN:
		scene_silence(s, 100000);
		scene_numb(s);
		SCENE_KEYS(s, PAGE_END, KEY_FORWARD);
		break;
	case SCENE_END:
		sitting_start(&s->d);
		scene_whole(s);
		break;
	case SCENE_QUESTION:
	case SCENE_TYPED:
		sitting_start(&s->d);
		scene_whole(s);
		SCENE_KEYS(s, PAGE_QUESTION, KEY_FORWARD);
		break;
	case SCENE_HELP_PLAY:
		sitting_start(&s->d);
		sitting_until(&s->d, 40000);
		break;
	case SCENES:
		break;
	}
	scene_news(s);
}

/* A scene is large: keep it static.  Its past is freed by the next one. */
static inline void scene_make(
    struct scene *s, enum scene_id id, enum marking marking)
{
	bool first = id == SCENE_SORE_FIRST || id == SCENE_TODAY_FIRST;

	free(s->past);
	memset(s, 0, sizeof(*s));
	s->past = past_new();
	s->routine = programme_cello(TONE);
	scene_words(&s->routine);
	if (!first)
		scene_past(s, id == SCENE_REST);
	sitting_begin(&s->d, &s->routine, &s->past->h, marking, 48000);
	s->view = (struct view) { .session = &s->d.s,
		.typed = id == SCENE_TYPED
		    ? "Why does finger 4 shake when the others are calm?"
		    : "",
		.help = id == SCENE_HELP || id == SCENE_HELP_PLAY };
	scene_go(s, id);
	s->view.heard = s->d.s.now;
}

static inline void scene_play(struct scene *s, enum scene_id id)
{
	scene_make(s, id, MARKING_ROUND);
}

static inline void scene_done(struct scene *s)
{
	free(s->past);
	s->past = NULL;
}

#endif
