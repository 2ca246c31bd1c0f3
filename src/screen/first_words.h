/*
 * first_words.h - the first minutes, for both ways of showing them
 */
#ifndef EVENHAND_SCREEN_FIRST_WORDS_H
#define EVENHAND_SCREEN_FIRST_WORDS_H

#include "evenhand/coach/first.h"
#include "sentences.h"

/* Adds the page it is at; none while it plays, or once it is over. */
void sentences_first(struct sentences *out, const struct first *f);

#endif
