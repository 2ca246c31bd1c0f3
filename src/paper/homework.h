/*
 * homework.h - parts of the homework sheet
 */
#ifndef EVENHAND_PAPER_HOMEWORK_H
#define EVENHAND_PAPER_HOMEWORK_H

#include "evenhand/base/message.h"
#include "pen.h"

/* A sentence over the whole width. */
void homework_say(struct pen *pen, double size, bool bold, struct message m);

/* The stage of this week, with all there is to know of it. */
void homework_work(struct pen *pen, const struct sheet_wish *w);

/* Its self-checks to be ticked; a short list stays on one page. */
void homework_checks(struct pen *pen, const struct sheet_wish *w);

/* The stages before it, where there are any. */
void homework_earlier(struct pen *pen, const struct sheet_wish *w);

#endif
