/*
 * device_sound_play.c - passages: given to the engine, and again
 *
 * A passage is remembered until it is over or silenced.  An engine is given it
 * when it has room, at the frame where it belongs; the engine joins what is
 * late where it would be by now.  So a passage outlives the card.
 *
 * A silence comes before any passage that was played after it.
 */
#include "device_sound.h"

#include "evenhand/base/frames.h"

static bool give(
    struct sound_device *d, struct engine *e, const struct sound_passage *p)
{
	int slot;
	struct score *s = engine_slot(e, &slot);

	return s && score_make(s, &p->passage, engine_rate(e)) &&
	    engine_play(e, slot, count_to_card(&d->count, p->frame));
}

static void give_all(struct sound_device *d)
{
	struct engine *e = sounding_engine(d);

	if (!e)
		return;
	engine_collect(e);
	if (d->hush)
		d->hush = !engine_silence(e, 0);
	if (d->level_owed)
		d->level_owed = !engine_level(e, d->level);
	if (d->hush)
		return;
	/* In their order, so that none waits behind a later one. */
	for (int i = 0; i < d->passages; i++) {
		struct sound_passage *p = &d->passage[i];

		if (!p->given && !(p->given = give(d, e, p)))
			return;
	}
}

static void forget(struct sound_device *d)
{
	int kept = 0;

	for (int i = 0; i < d->passages; i++)
		if (d->passage[i].end > d->count.frame) {
			if (kept != i)
				d->passage[kept] = d->passage[i];
			kept++;
		}
	d->passages = kept;
}

bool passages_play(
    struct sound_device *d, const struct passage *p, int64_t frame)
{
	int64_t length;

	forget(d);
	if (d->passages == SOUND_PASSAGES_MAX ||
	    !score_make(&d->scratch, p, d->count.rate))
		return false;
	/* The last sound may outlast the passage. */
	length = frames_of_ms(passage_ms(p) + 1000, d->count.rate);
	d->passage[d->passages++] = (struct sound_passage) {
		.passage = *p, .frame = frame, .end = frame + length
	};
	give_all(d);
	return true;
}

void passages_silence(struct sound_device *d)
{
	d->passages = 0;
	d->hush = sounding_engine(d) != NULL;
	give_all(d);
}

void passages_again(struct sound_device *d)
{
	for (int i = 0; i < d->passages; i++)
		d->passage[i].given = false;
	give_all(d);
}

void passages_look(struct sound_device *d)
{
	forget(d);
	give_all(d);
}
