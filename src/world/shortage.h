/*
 * shortage.h - how often the computer had too little for us
 *
 * Any thread may call these.
 */
#ifndef EVENHAND_WORLD_SHORTAGE_H
#define EVENHAND_WORLD_SHORTAGE_H

/* There was no memory for something that is left out without a word. */
void shortage_note(void);

/* How often so far; what was begun before it rose may lack something. */
unsigned long shortage_count(void);

#endif
