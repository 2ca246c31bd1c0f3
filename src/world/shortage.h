/*
 * shortage.h - how often the computer had too little for us
 *
 * Any thread may call these.
 */
#ifndef EVENHAND_WORLD_SHORTAGE_H
#define EVENHAND_WORLD_SHORTAGE_H

/*
 * Notes an error of the system (errno) for which something is left out without a
 * word, if it is one of these: no memory, or no file more may be open.
 */
void shortage_note(int error);

/* The error noted last, 0 none so far. */
int shortage_error(void);

/* How often so far; what was begun before it rose may lack something. */
unsigned long shortage_count(void);

#endif
