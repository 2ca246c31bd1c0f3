/*
 * track_words.c - what stands in a track beside its sound
 *
 * A track is heard where no page is seen and no key stops everything, so the
 * cautions go with it.
 */
#include "track.h"

enum { SENTENCE_BYTES = 1024 };

static void put(char *to, size_t size, struct message m)
{
	message_text(&m, to, size);
}

static const char *title_of(const struct routine *r, int stage)
{
	return r->stage[stage].title;
}

static struct message part_of(
    const struct track *t, const struct routine *r, int i)
{
	const struct track_passage *p = &t->at[i];
	const char *title = title_of(r, p->stage);

	if (p->passage.pulses == 0)
		return message_with(M_TRACK_AIR, TEXT(title));
	if (p->rounds == 1)
		return message_with(
		    M_TRACK_PART, TEXT(title), WHOLE(p->passage.pulses));
	return message_with(M_TRACK_PART_ROUND, TEXT(title),
	    WHOLE(p->passage.pulses), WHOLE(p->round + 1));
}

static void add(struct text *t, struct message m)
{
	char sentence[SENTENCE_BYTES];

	message_text(&m, sentence, sizeof(sentence));
	text_format(t, t->length ? " %s" : "%s", sentence);
}

/* The cautions of today, and those that hold always. */
static void comment(struct audio_wish *w, const struct plan *p)
{
	struct text t = text_in(w->comment, sizeof(w->comment));
	bool aid = false;

	add(&t, message_of(M_TRACK_COMMENT));
	for (int i = 0; i < p->cautions; i++) {
		aid |= p->caution[i].id == M_COACH_CAUTION_AID;
		add(&t, p->caution[i]);
	}
	if (!aid)
		add(&t, message_of(M_COACH_CAUTION_AID));
	add(&t, message_of(M_PAPER_HEAT));
	add(&t, message_of(M_PAPER_PAIN));
	add(&t, message_of(M_SOUND_CAUTION));
}

static void title(struct audio_wish *w, const struct track *t,
    const struct routine *r, bool alone)
{
	const struct plan *p = &t->session.plan;
	int pulses = t->at[0].passage.pulses;
	const char *work = title_of(r, p->work_stage);
	struct message m = message_with(M_TRACK_TITLE, DAY(p->day), TEXT(work));

	if (alone && pulses > 0)
		m = message_with(M_TRACK_PART, TEXT(work), WHOLE(pulses));
	else if (alone)
		m = message_with(M_TRACK_AIR, TEXT(work));
	put(w->title, sizeof(w->title), m);
}

void track_words(struct audio_wish *w, const struct track *t,
    const struct routine *r, bool alone)
{
	struct text artist = text_in(w->artist, sizeof(w->artist));

	w->rate = t->rate;
	w->frames = t->length;
	title(w, t, r, alone);
	text_add(&artist, r->written_by);
	put(w->date, sizeof(w->date),
	    message_with(M_TRACK_DATE, DAY(t->session.plan.day)));
	comment(w, &t->session.plan);
	w->marks = t->passages;
	for (int i = 0; i < t->passages; i++) {
		w->mark[i].frame = t->at[i].frame;
		put(w->mark[i].name, sizeof(w->mark[i].name), part_of(t, r, i));
	}
}
