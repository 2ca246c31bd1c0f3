/*
 * yaml_end.h - where a file of text ends
 */
#ifndef EVENHAND_WORLD_YAML_END_H
#define EVENHAND_WORLD_YAML_END_H

#include <stddef.h>

/* A line and column, from 1. */
struct place {
	int line, column;
};

/* Behind the last letter that is no blank; 1:1 when there is none. */
struct place yaml_end(const char *bytes, size_t length);

#endif
