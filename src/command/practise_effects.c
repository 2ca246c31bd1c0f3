/*
 * practise_effects.c - what the session asks for, done
 *
 *	passage  ─▶ device
 *	turn, mark, note ─▶ journal's queue
 *	page, say ─▶ the screen, or lines on standard output
 *
 * Lines do not wait for who reads them while time passes (lines_out.h).
 * When time is unpaced nothing is printed before the rows so far are on the
 * disk, so that what was read was kept, whatever happens next.
 */
#include <unistd.h>

#include "options.h"
#include "practise.h"

#include "evenhand/base/frames.h"

enum { SENTENCE_BYTES = 1024 };

/* Wall time of a frame. */
static struct moment moment_of(const struct practice *p, int64_t frame)
{
	struct moment m = p->session.wish.now;

	m.utc += (frames_to_ms(frame, p->session.rate) + p->lost_ms) / 1000;
	return m;
}

static void print(struct practice *p, const struct text *t)
{
	if (p->mute)
		return;
	if (p->out) {
		p->mute = !lines_out_say(p->out, t->bytes, t->length) &&
		    !command_unprinted();
		return;
	}
	if (p->rows_new) {
		journal_flush(p->journal);
		p->rows_new = false;
	}
	p->mute = !command_print(t);
}

void practice_lines_on(struct practice *p)
{
	if (p->out && !p->mute)
		p->mute = !lines_out_send(p->out) && !command_unprinted();
	/* With standard error gone there is nobody left to tell. */
	if (p->err)
		(void)lines_out_send(p->err);
}

/* What a line may take of a screen that may have changed its size. */
static int columns_now(void)
{
	return lines_columns(lines_out_columns(STDOUT_FILENO));
}

void practice_say(struct practice *p, struct message m)
{
	struct text t = text_in(p->bytes, sizeof p->bytes);

	if (p->screen.terminal) {
		screen_say(p, &m);
		return;
	}
	lines_say_within(&t, columns_now(), &m);
	print(p, &t);
}

/* What belongs on standard error, whose reader may not read either. */
static void print_fault(struct practice *p, const struct fault *f)
{
	struct text t = text_in(p->bytes, sizeof p->bytes);
	char sentence[SENTENCE_BYTES];

	if (!p->err) {
		command_fault(f);
		return;
	}
	if (f->path)
		fault_text(f, sentence, sizeof sentence);
	else
		message_text(&f->message, sentence, sizeof sentence);
	text_format(&t, "%s%s\n", f->path ? "" : "evenhand: ", sentence);
	(void)lines_out_say(p->err, t.bytes, t.length);
}

void practice_trouble(struct practice *p, const struct message *m)
{
	if (p->screen.terminal)
		screen_trouble(p, m);
	else
		print_fault(p, &(struct fault) { .message = *m });
}

void practice_keep(struct practice *p, enum setting what)
{
	struct fault fault;

	if (settings_keep(&p->chosen, what, &fault))
		return;
	if (p->screen.terminal)
		screen_fault(p, &fault);
	else
		print_fault(p, &fault);
}

static void page(struct practice *p, enum page page)
{
	struct text t = text_in(p->bytes, sizeof p->bytes);

	if (p->screen.terminal) {
		screen_page(p);
		return;
	}
	/* Whoever listens to lines hears last what a page asks. */
	listen_say(p);
	if (first_shows(&p->first))
		lines_first(&t, columns_now(), &p->first);
	else
		lines_page(&t, columns_now(), &p->session, page);
	print(p, &t);
}

/* A passage that cannot be played is practised unheard, and that is said. */
static void play(struct practice *p, const struct effect *e)
{
	bool heard = device_play(p->device, &e->passage, e->frame);

	if (!heard && !p->unheard)
		practice_say(p, message_of(M_COMMAND_UNHEARD));
	p->unheard = !heard;
}

static void begin(struct practice *p)
{
	struct sitting_row row = {
		.routine = p->routine,
		.plan = &p->session.plan,
		.began = moment_of(p, p->session.first_sound),
		.rate = p->session.rate,
		.device = device_name(p->device),
	};

	journal_begin(p->journal, &row);
}

/* Effects that are kept; whether this was one. */
static bool keep(struct practice *p, const struct effect *e)
{
	struct moment now = moment_of(p, p->session.now);

	switch (e->kind) {
	case EFFECT_BEGIN:
		begin(p);
		break;
	case EFFECT_TURN:
		journal_turn(p->journal, &e->turn, p->routine, now);
		listen_kept(p, &e->turn);
		break;
	case EFFECT_MARK:
		journal_mark(p->journal, e->number, e->mark, e->mark_ms);
		break;
	case EFFECT_NOTE:
		journal_note(p->journal, &e->note, now);
		break;
	case EFFECT_END:
		journal_end(p->journal, e->ended, e->length_ms, now);
		break;
	default:
		return false;
	}
	p->rows_new = true;
	return true;
}

static void show(struct practice *p, const struct effect *e)
{
	switch (e->kind) {
	case EFFECT_PAGE:
		page(p, e->page);
		break;
	case EFFECT_SAY:
		practice_say(p, e->message);
		break;
	case EFFECT_PASSAGE:
		play(p, e);
		break;
	case EFFECT_SILENCE:
		device_silence(p->device);
		break;
	case EFFECT_OVER:
		p->over = true;
		break;
	default:
		break;
	}
}

void practice_effects(struct practice *p)
{
	struct message m;

	screen_step(p);
	p->screen.stale |= p->effects.count > 0;
	for (int i = 0; i < p->effects.count; i++)
		if (!keep(p, &p->effects.at[i]))
			show(p, &p->effects.at[i]);
	while (journal_trouble(p->journal, &m))
		practice_trouble(p, &m);
	listen_follow(p);
	keys_want_words(p->keys, p->session.page == PAGE_QUESTION);
}
