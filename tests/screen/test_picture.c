/* test_picture.c - a canvas as a picture, and the ones that are kept */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "pictures.h"

static struct scene scene;
static struct canvas page;
static char bytes[PICTURE_BYTES], kept[PICTURE_BYTES];

static const char *picture(void)
{
	struct text t = text_in(bytes, sizeof(bytes));

	picture_write(&t, &page, "a & b");
	assert_false(t.cut);
	return bytes;
}

static void assert_holds(const char *words)
{
	if (!strstr(bytes, words))
		fail_msg("\"%s\" is not in:\n%s", words, bytes);
}

/* Every letter has its own x, and nothing of the text is taken for a tag. */
static void test_letters(void **state)
{
	(void)state;
	canvas_init(&page, 20, 2);
	canvas_put(&page, 0, 0, ATTRIBUTE_PLAIN, "a <&> b");
	canvas_put(&page, 1, 2, ATTRIBUTE_STRONG, "弓x");
	picture();
	assert_holds("width=\"230\" height=\"70\"");
	assert_holds("<title>a &amp; b</title>");
	assert_holds("<g fill=\"#dadada\">\n"
		     "<text x=\"15\" y=\"30\">a</text>"
		     "<text x=\"35\" y=\"30\">&lt;</text>"
		     "<text x=\"45\" y=\"30\">&amp;</text>"
		     "<text x=\"55\" y=\"30\">&gt;</text>"
		     "<text x=\"75\" y=\"30\">b</text>\n</g>");
	assert_holds("<g fill=\"#ffffff\" font-weight=\"bold\">\n"
		     "<text x=\"35\" y=\"50\">弓</text>"
		     "<text x=\"55\" y=\"50\">x</text>\n</g>");
}

/* Blocks side by side are one box, and grounds too. */
static void test_shapes(void **state)
{
	(void)state;
	canvas_init(&page, 20, 2);
	canvas_put(&page, 0, 1, ATTRIBUTE_PLAIN, "███▄");
	canvas_put(&page, 0, 10, ATTRIBUTE_PLAIN, "░░");
	canvas_put(&page, 1, 0, ATTRIBUTE_REVERSE, "  █");
	picture();
	assert_holds("<rect x=\"25\" y=\"15\" width=\"30\" height=\"20\" "
		     "fill=\"#dadada\"/>");
	assert_holds("<rect x=\"55\" y=\"25\" width=\"10\" height=\"10\" "
		     "fill=\"#dadada\"/>");
	assert_holds("<rect x=\"15\" y=\"35\" width=\"30\" height=\"20\" "
		     "fill=\"#dadada\"/>");
	assert_holds("<rect x=\"35\" y=\"35\" width=\"10\" height=\"20\" "
		     "fill=\"#121212\"/>");
	assert_holds("<rect x=\"115\" y=\"15\" width=\"20\" height=\"20\" "
		     "fill=\"#dadada\" fill-opacity=\"0.25\"/>");
	assert_null(strstr(bytes, "<text"));
}

/* The kept pictures are what the program draws today. */
static void test_kept(void **state)
{
	(void)state;
	for (int i = 0; i < (int)PICTURES; i++) {
		char path[80];
		size_t length;
		FILE *f;

		snprintf(path, sizeof(path), "docs/%s.svg", pictures[i].name);
		f = fopen(path, "r");
		if (!f)
			fail_msg("%s is missing: make picture", path);
		length = fread(kept, 1, sizeof(kept) - 1, f);
		kept[length] = '\0';
		fclose(f);
		picture_draw(&scene, i, bytes);
		if (strcmp(bytes, kept) != 0)
			fail_msg("%s is not what the program draws: "
				 "make picture, then look at it",
			    path);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_letters),
		cmocka_unit_test(test_shapes),
		cmocka_unit_test(test_kept),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
