/*
 * yaml_end.c - where a file of text ends
 */
#include "yaml_end.h"

#include <stdbool.h>

struct place yaml_end(const char *bytes, size_t length)
{
	struct place here = { 1, 1 }, end = here;

	for (size_t i = 0; i < length; i++) {
		unsigned char c = (unsigned char)bytes[i];

		if (c == '\n' || c == '\r') {
			here.line += c == '\r' || i == 0 ||
			    bytes[i - 1] != '\r';
			here.column = 1;
			continue;
		}
		here.column += (c & 0xc0) != 0x80;
		if (c != ' ' && c != '\t')
			end = here;
	}
	return end;
}
