/*
 * view_first.h - the pages of the first minutes on the full screen
 */
#ifndef EVENHAND_SCREEN_VIEW_FIRST_H
#define EVENHAND_SCREEN_VIEW_FIRST_H

#include "view_page_story.h"

/* Whether such a page is to be shown; not while a turn plays. */
bool view_first_shows(const struct view *v);

/* What it shows, for the same layout as all other pages. */
void story_first(struct story *story, const struct view *v);

#endif
