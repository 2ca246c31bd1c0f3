/*
 * random.h - names that nobody else has
 */
#ifndef EVENHAND_WORLD_RANDOM_H
#define EVENHAND_WORLD_RANDOM_H

/* 128 random bits as 32 hex digits and a zero. Any thread. */
void random_id(char id[33]);

#endif
