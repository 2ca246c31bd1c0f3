/*
 * view_page_text.h - the sentences of a page, set into its flow
 */
#ifndef EVENHAND_SCREEN_VIEW_PAGE_TEXT_H
#define EVENHAND_SCREEN_VIEW_PAGE_TEXT_H

#include "view_page_flow.h"
#include "view_page_story.h"

/*
 * What matters most comes first.  Pictures are left out when not wanted; room
 * is how many rows a field to type in may take.
 */
void page_text(struct flow *f, const struct story *story, const struct view *v,
    bool pictures, int room);

/* All choices with the chosen one marked, in so many rows if that can be. */
void page_choices(struct flow *f, const struct session *s, int room);

/* A field with what is typed in at most so many rows. */
void page_typed(struct flow *f, const char *typed, int room);

/* Bows of each unit as bars, for the end page. */
void page_bars(struct flow *f, const struct session *s);

/* Tops heard of those asked, for the end page; nothing where none was. */
void page_tops(struct flow *f, const struct session *s);

/* The slides of today's stages along the string, to scale. */
void page_scale(struct flow *f, const struct session *s);

#endif
