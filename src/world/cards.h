/*
 * cards.h - the little that the sound child wants of PortAudio
 *
 * Only in the child: every call here may abort, spin, or never return.
 */
#ifndef EVENHAND_WORLD_CARDS_H
#define EVENHAND_WORLD_CARDS_H

#include "sound_shared.h"

/* False: there is no sound system. */
bool cards_begin(void);

void cards_end(void);

/* Every card that can play. */
void cards_list(struct sound_list *out);

/*
 * The card of an order, as sound_choose has it among all that can play; -1:
 * none, or none but another one where that was not wanted.
 */
int cards_choose(const struct sound_order *o, bool *other);

/* What is known of a card. */
void card_describe(int card, struct sound_card *out);

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

#endif
