/*
 * cards.h - the little that a sound child wants of PortAudio
 *
 * Only in a child: every call here may abort, spin, or never return.
 */
#ifndef EVENHAND_WORLD_CARDS_H
#define EVENHAND_WORLD_CARDS_H

#include "sound_shared.h"

/* False: there is no sound system. */
bool cards_begin(void);

void cards_end(void);

enum card_way { CARD_PLAYS, CARD_HEARS };

/* Every card that can play; every microphone. */
void cards_list(struct sound_list *out, enum card_way way);

/*
 * The card of an order, as sound_choose has it among all that go this way; -1:
 * none, or none but another one where that was not wanted.
 */
int cards_choose(const struct sound_order *o, enum card_way way, bool *other);

/* What is known of a card. */
void card_describe(int card, enum card_way way, struct sound_card *out);

/*
 * Opens and starts a card at 48000 frames a second, at the card's own rate or
 * at 44100, whichever it takes first, and sets up the engine for it.  False:
 * it takes none.
 */
bool card_open(int card, struct sound_shared *s);

/* Unpaced: gives the card so many frames, and waits until it took them. */
bool card_write(struct sound_shared *s, int frames);

/* ms of sound the opened card may still hold. */
int card_delay_ms(void);

/* Closes the card; drain: after it has played what it holds. */
void card_close(bool drain);

/*
 * Opens and starts a microphone, at the same rates in the same order; its one
 * channel, or the mean of its first two, since it may be in either.  False: it
 * takes none.
 */
bool microphone_open(int card, struct sound_hearing *h);

/* Whether the opened one still hears, as far as PortAudio knows. */
bool microphone_hears(void);

/* Unpaced: takes so many samples (256 at most), and waits for them. */
bool microphone_read(struct sound_hearing *h, int count);

#endif
