/*
 * picture.c - writes one of the pictures of the screen to its standard output
 *
 *	picture play > docs/play.svg
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "../screen/pictures.h"

static struct scene scene;
static char bytes[PICTURE_BYTES];

int main(int count, char **arguments)
{
	for (int i = 0; count == 2 && i < (int)PICTURES; i++) {
		if (strcmp(pictures[i].name, arguments[1]) != 0)
			continue;
		picture_draw(&scene, i, bytes);
		return fputs(bytes, stdout) < 0 || fflush(stdout) != 0;
	}
	fputs("picture NAME: which one? play or today\n", stderr);
	return 64;
}
