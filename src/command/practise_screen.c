/*
 * practise_screen.c - the sitting on a full screen
 *
 *	session, device ─▶ view ─▶ canvas ─▶ terminal
 *
 * A page is drawn when something was pressed or said, and else not before the
 * frame at which it can differ, at most DRAWS_A_SECOND times a second.  Help and
 * leaves belong to the screen alone: the session gets the same keys in every
 * shell and never knows of them.
 */
#include "practise_screen.h"

#include <string.h>
#include <unistd.h>

#include "evenhand/base/frames.h"
#include "evenhand/world/clock.h"
#include "options.h"
#include "practise.h"

enum {
	DRAWS_A_SECOND = 30,
	DRAW_NS = 1000000000 / DRAWS_A_SECOND,
	NEWS_MS = 8000, /* what is said while it plays stays so long */
};

bool screen_open(struct practice *p, const struct screen_wish *w)
{
	struct practice_screen *s = &p->screen;

	if (!terminal_able())
		return false;
	s->terminal = terminal_open(w->colours);
	if (!s->terminal)
		return false;
	s->view.ascii = w->ascii || !terminal_signs(s->terminal);
	s->view.mirror = w->mirror;
	s->view.session = &p->session;
	s->view.first = &p->first;
	s->view.typed = p->typed;
	s->later = text_in(s->later_bytes, sizeof s->later_bytes);
	s->stale = true;
	keys_echo(p->keys, false);
	return true;
}

void screen_page(struct practice *p)
{
	/* What was said before was said of another page. */
	if (p->screen.fresh)
		p->screen.view.said = 0;
	p->screen.view.leaf = 0;
	p->screen.stale = true;
}

void screen_step(struct practice *p)
{
	p->screen.fresh = true;
}

void screen_say(struct practice *p, const struct message *m)
{
	struct view *v = &p->screen.view;

	if (p->screen.fresh)
		v->said = 0;
	p->screen.fresh = false;
	p->screen.stale = true;
	p->screen.said_at = p->reached;
	if (v->said < VIEW_NEWS_MAX)
		v->news[v->said++] = *m;
}

void screen_trouble(struct practice *p, const struct message *m)
{
	char sentence[SCREEN_LATER_BYTES / 4];

	message_text(m, sentence, sizeof sentence);
	text_format(&p->screen.later, "evenhand: %s\n", sentence);
	screen_say(p, m);
}

void screen_fault(struct practice *p, const struct fault *f)
{
	char sentence[SCREEN_LATER_BYTES / 4];

	if (!f->path) {
		screen_trouble(p, &f->message);
		return;
	}
	fault_text(f, sentence, sizeof sentence);
	text_format(&p->screen.later, "%s\n", sentence);
	screen_say(p, &f->message);
}

static void turn_leaf(struct practice *p, int leaves)
{
	p->screen.view.leaf = (p->screen.view.leaf + 1) % leaves;
}

/*
 * Who has two pedals and a small screen reads all of a page too, where leaves
 * may hold what is told this once: before the first practice, and at the end.
 */
static bool pedal_turns(const struct practice *p, enum key key, int leaves)
{
	const struct session *s = &p->session;
	const struct view *v = &p->screen.view;

	if (first_shows(&p->first) || (s->page == PAGE_TODAY && s->taught))
		return key == KEY_FORWARD && v->leaf + 1 < leaves;
	return key == KEY_BACK && s->page == PAGE_END && leaves > 1 && !v->help;
}

bool screen_key(struct practice *p, enum key key)
{
	struct view *v = &p->screen.view;
	int columns, rows, leaves;

	if (!p->screen.terminal)
		return false;
	p->screen.stale = true;
	terminal_size(p->screen.terminal, &columns, &rows);
	leaves = view_leaves(v, columns, rows);
	if (key == KEY_LEAF) {
		/* A picture that something else has spoilt is mended too. */
		terminal_forget(p->screen.terminal);
		turn_leaf(p, leaves);
		return false;
	}
	if (pedal_turns(p, key, leaves)) {
		turn_leaf(p, leaves);
		return true;
	}
	if (key == KEY_HELP)
		v->leaf = 0;
	v->help = key == KEY_HELP && !v->help;
	v->said = 0;
	return false;
}

static enum sounding sounding_of(enum device_state state)
{
	switch (state) {
	case DEVICE_SOUNDS:
		return SOUNDING_ON;
	case DEVICE_OPENING:
		return SOUNDING_OPENING;
	case DEVICE_LOST:
		return SOUNDING_LOST;
	case DEVICE_UNHEARD:
	case DEVICE_MISSING:
		break;
	}
	return SOUNDING_NONE;
}

/* What the device has to say; whether anything of it is new. */
static bool look_at_device(struct practice *p)
{
	struct view *v = &p->screen.view;
	enum sounding sounding = sounding_of(device_state(p->device));
	uint64_t dropped = device_dropped(p->device) +
	    (uint64_t)device_dropouts(p->device);
	struct text name = text_in(v->device, sizeof v->device);

	text_add_clean(&name, device_name(p->device));
	if (sounding == v->sounding && dropped == v->dropped)
		return false;
	v->sounding = sounding;
	v->dropped = dropped;
	return true;
}

/* Whether what was said has stood long enough; on a page it stays. */
static bool look_at_news(struct practice *p)
{
	struct view *v = &p->screen.view;

	if (v->said == 0 || p->session.page != PAGE_PLAY ||
	    p->reached - p->screen.said_at <
		frames_of_ms(NEWS_MS, p->session.rate))
		return false;
	v->said = 0;
	return true;
}

int screen_wait_ms(const struct practice *p, int limit)
{
	const struct practice_screen *s = &p->screen;
	int64_t since = clock_steady_ns() - s->drawn_ns, left;

	if (!s->terminal || p->over)
		return limit;
	if (!s->stale) {
		if (s->change == INT64_MAX || !device_paced(p->device))
			return limit;
		left = (s->change - p->reached) * 1000 / p->session.rate + 1;
		if (limit >= 0 && left >= limit)
			return limit;
		limit = (int)(left < INT32_MAX ? left : INT32_MAX);
	}
	left = (DRAW_NS - since) / 1000000 + 1;
	if (s->stale || limit < left)
		limit = left > 0 ? (int)left : 0;
	return limit;
}

void screen_draw(struct practice *p)
{
	struct practice_screen *s = &p->screen;
	int64_t now = clock_steady_ns();
	int columns, rows;

	if (!s->terminal || now - s->drawn_ns < DRAW_NS)
		return;
	/* A picture on its way to a terminal that stands still comes first. */
	if (!terminal_ready(s->terminal)) {
		s->drawn_ns = now;
		return;
	}
	s->stale |= look_at_device(p);
	s->stale |= look_at_news(p);
	s->stale |= terminal_size(s->terminal, &columns, &rows);
	s->view.heard = p->reached;
	if (!s->stale && p->reached < s->change)
		return;
	canvas_size(&s->canvas, columns, rows);
	view_draw(&s->canvas, &s->view);
	terminal_show(s->terminal, &s->canvas);
	s->change = view_change(&s->view, columns, rows);
	s->drawn_ns = now;
	s->stale = !terminal_ready(s->terminal);
}

/* What the last step said was never seen: it is there when all is over. */
static void say_last(struct practice *p)
{
	const struct view *v = &p->screen.view;

	for (int i = 0; i < v->said && p->over && !p->screen.fresh; i++)
		practice_say(p, v->news[i]);
}

void screen_close(struct practice *p)
{
	struct practice_screen *s = &p->screen;

	if (!s->terminal)
		return;
	terminal_close(s->terminal);
	s->terminal = NULL;
	keys_echo(p->keys, true);
	say_last(p);
	if (write(STDERR_FILENO, s->later.bytes, s->later.length) < 0)
		return;
}
