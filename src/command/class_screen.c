/*
 * class_screen.c - the class on a full screen
 *
 *	key ─▶ page ─▶ canvas ─▶ terminal
 *
 * A page is drawn when a key came, a letter of a name was typed, or the window
 * has another size.  A lesson page is made when it is looked at: one journal is
 * opened for it, and closed again.
 */
#include <stdlib.h>
#include <string.h>

#include "class.h"
#include "pages.h"

enum { ESCAPE = 27, RUB_OUT = 127 };

/* Too large for a stack. */
struct screen {
	const struct class_seen *seen;
	struct pages pages;
	struct class_page page;
	struct class_lesson lesson;
	struct lesson_words words;
	int told; /* of whom the words are, -1 nobody */
};

/* --- a lesson page --- */

/* Its words, or why there are none. */
static void make_words(struct screen *s)
{
	const struct class_row *row = s->seen->order[s->page.chosen];
	struct lesson_facts facts;
	struct fault f;

	memset(&s->words, 0, sizeof(s->words));
	if (class_lesson_of(&s->lesson, s->seen, row->student->id, &f)) {
		lesson_facts_of(&facts, s->lesson.routine, &s->lesson.history,
		    &s->lesson.plan);
		lesson_words_of(&s->words, &facts);
	} else {
		s->words.whys = 1;
		s->words.why[0] = f.message.id == M_NONE
		    ? message_of(M_CLASS_NO_LESSON)
		    : f.message;
	}
	class_lesson_done(&s->lesson);
	s->told = s->page.chosen;
}

static void open_lesson(struct screen *s)
{
	if (!class_chosen(&s->page))
		return;
	s->page.line = 0;
	s->page.lesson = &s->words;
}

/* --- drawing --- */

static void draw(struct screen *s)
{
	if (!pages_due(&s->pages))
		return;
	if (s->page.lesson && s->told != s->page.chosen)
		make_words(s);
	class_draw(&s->pages.canvas, &s->page);
	pages_show(&s->pages);
}

/* --- keys --- */

static enum class_key key_of(int exact)
{
	switch (exact) {
	case KEYS_DOWN:
	case 'j':
		return CLASS_KEY_NEXT;
	case KEYS_UP:
	case 'k':
		return CLASS_KEY_PREVIOUS;
	case KEYS_PAGE_DOWN:
	case ' ':
		return CLASS_KEY_PAGE_ON;
	case KEYS_PAGE_UP:
		return CLASS_KEY_PAGE_BACK;
	case KEYS_RIGHT:
	case '\r':
	case '\n':
		return CLASS_KEY_OPEN;
	case KEYS_LEFT:
	case ESCAPE:
	case '\b':
	case RUB_OUT:
		return CLASS_KEY_SHUT;
	case 'f':
	case '/':
		return CLASS_KEY_FIND;
	case '?':
		return CLASS_KEY_HELP;
	default:
		return CLASS_KEY_OTHER;
	}
}

static void find(struct screen *s, bool finding)
{
	s->page.finding = finding;
	keys_echo(s->pages.keys, false);
	keys_want_words(s->pages.keys, finding);
	if (finding)
		class_find(&s->page, "");
}

/* A key that is neither typed nor leaves. */
static void press(struct screen *s, enum class_key key)
{
	int columns, rows;

	terminal_size(s->pages.terminal, &columns, &rows);
	if (s->page.help || key == CLASS_KEY_HELP)
		class_press(&s->page, key, columns, rows);
	else if (key == CLASS_KEY_OPEN && !s->page.lesson)
		open_lesson(s);
	else if (key == CLASS_KEY_OPEN || key == CLASS_KEY_SHUT)
		s->page.lesson = NULL;
	else if (key == CLASS_KEY_FIND && !s->page.lesson)
		find(s, true);
	else
		class_press(&s->page, key, columns, rows);
}

/* False: it leaves. */
static bool pressed(struct screen *s)
{
	int exact = keys_exact(s->pages.keys);
	bool nowhere = !s->page.lesson && !s->page.help && !s->page.finding;

	s->pages.stale = true;
	if (exact == 'q' || exact == 'Q' || (exact == ESCAPE && nowhere))
		return false;
	/* Of keys, only those that are no letters come while one types. */
	if (s->page.finding)
		find(s, false);
	press(s, key_of(exact));
	return true;
}

static void typed(struct screen *s)
{
	const char *part = keys_typed(s->pages.keys);

	if (!s->page.finding || strcmp(part, s->page.find) == 0)
		return;
	class_find(&s->page, part);
	s->pages.stale = true;
}

/* One key, or a moment in which none came.  False: it is over. */
static bool take(struct screen *s)
{
	enum key key;
	int digit;
	const char *words;

	switch (keys_next(s->pages.keys, PAGES_LOOK_MS, &key, &digit, &words)) {
	case KEYS_PRESS:
		return pressed(s);
	case KEYS_WORDS:
		class_find(&s->page, words);
		find(s, false);
		s->pages.stale = true;
		return true;
	case KEYS_END:
		return false;
	case KEYS_NONE:
		typed(s);
		break;
	}
	return true;
}

/* --- the screen --- */

static bool screen_begin(struct screen *s, const struct class_seen *seen,
    enum terminal_colours colours, bool ascii)
{
	s->seen = seen;
	s->page = (struct class_page) { .order = seen->order,
		.count = seen->list.count,
		.today = seen->today };
	s->told = -1;
	if (!pages_open(&s->pages, colours))
		return false;
	s->page.ascii = ascii || !terminal_signs(s->pages.terminal);
	return true;
}

bool class_show(const struct class_seen *seen, enum terminal_colours colours,
    bool ascii, int *status)
{
	struct screen *s;
	bool shown = false;

	if (!terminal_able())
		return false;
	s = calloc(1, sizeof(*s));
	if (!s)
		return false;
	if (screen_begin(s, seen, colours, ascii)) {
		do
			draw(s);
		while (take(s));
		*status = pages_ended();
		shown = true;
	}
	pages_close(&s->pages);
	free(s);
	return shown;
}
