/*
 * pictures.h - the pictures of the manual and the README, from real sessions
 *
 * make picture writes them; a test asks whether they are still what the program
 * draws.
 */
#ifndef EVENHAND_TESTS_PICTURES_H
#define EVENHAND_TESTS_PICTURES_H

#include "evenhand/screen/picture.h"
#include "scenes.h"

enum { PICTURE_BYTES = 1 << 20 };

static const struct picture {
	const char *name, *title;
	int columns, rows;
} pictures[] = {
	{ "play",
	    "The screen of evenhand in play: finger 2, a down bow, pulse 4 of "
	    "6, the cue, the bows each finger has had and the fingerboard to "
	    "scale",
	    120, 40 },
	{ "today",
	    "The screen of evenhand before the playing: today's plan with its "
	    "times, and the two answers rest and begin",
	    120, 40 },
};

enum { PICTURES = sizeof(pictures) / sizeof(pictures[0]) };

/* Finger 2 of the first go, every turn before it marked clean. */
static inline void picture_playing(struct scene *s)
{
	enum { BOW_MS = 160000, PULSE_4_MS = 2200 };
	struct sitting *d = &s->d;
	int64_t end = sitting_at(d, BOW_MS + PULSE_4_MS);

	while (d->s.now < end - d->s.rate) {
		sitting_reach(d, d->s.now + d->s.rate / 2);
		if (d->s.phase == PHASE_CHANGE && d->s.marked_by == KEY_OTHER)
			sitting_soon(d, KEY_FORWARD);
	}
	sitting_reach(d, end);
	assert_int_equal(d->s.page, PAGE_PLAY);
	s->view.heard = end;
}

/* Draws one of them into a buffer of PICTURE_BYTES. */
static inline void picture_draw(struct scene *s, int which, char *buffer)
{
	static struct canvas c;
	struct text t = text_in(buffer, PICTURE_BYTES);

	scene_make(s, SCENE_TODAY, MARKING_TURN);
	if (strcmp(pictures[which].name, "play") == 0) {
		sitting_soon(&s->d, KEY_FORWARD);
		picture_playing(s);
	}
	canvas_init(&c, pictures[which].columns, pictures[which].rows);
	view_draw(&c, &s->view);
	picture_write(&t, &c, pictures[which].title);
	assert_false(t.cut);
	scene_done(s);
}

#endif
