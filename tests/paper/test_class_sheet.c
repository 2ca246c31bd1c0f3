/*
 * test_class_sheet.c - the list of a class on paper: who needs the teacher
 * stands first, nothing meets, any number of students
 */
#include "../screen/class_made.h"
#include "../screen/golden_pages.h"
#include "areas.h"

#include "evenhand/paper/list.h"
#include "evenhand/paper/sheet.h"

enum { MANY = 1000 };

static struct paper paper;
static struct student students[MANY];
static struct class_row rows[MANY];
static struct class_row *order[MANY];
static char list[LIST_BYTES_MAX];

/*
 * The whole list as evenhand-paper gets it; paper holds its last page, each was
 * looked at for words that meet.  How many pages.
 */
static int make(int count, enum sheet_size size, bool large)
{
	struct class_wish wish = { order, count, CLASS_TODAY, size, large };
	struct text t = text_in(list, sizeof(list));
	struct sheet_page page = { 1, 0, 0 };

	class_rows(rows, order, students, count, CLASS_TODAY);
	page.pages = sheet_class_pages(&paper, &wish);
	list_write_begin(&t, &paper);
	for (; page.row < count; page.number++) {
		int next = sheet_class(&paper, &wish, page);

		assert_true(next > page.row);
		assert_int_equal(paper.pages, 1);
		areas_check(&paper, "class");
		list_write_pages(&t, &paper);
		page.row = next;
	}
	list_write_end(&t);
	assert_false(paper.cut || t.cut);
	assert_int_equal(page.number - 1, page.pages);
	return page.pages;
}

static int begin(void **context)
{
	(void)context;
	class_make(students);
	students[7].unread = true;
	for (int i = CLASS_SIZE; i < MANY; i++) {
		students[i] = students[i % CLASS_SIZE];
		students[i].id[31] = (char)('a' + i % 6);
	}
	return 0;
}

/* The place of a name among the words of the list. */
static long place(const char *name)
{
	char words[200];
	const char *at;

	snprintf(words, sizeof(words), " 100 %s\n", name);
	at = strstr(list, words);
	return at ? at - list : -1;
}

static void test_looked_at(void **context)
{
	(void)context;
	make(CLASS_SIZE, SHEET_A4, false);
	golden_check("../../paper/golden/class-a4", list);
}

/* All of them, in the order in which they need the teacher. */
static void test_order(void **context)
{
	(void)context;
	make(CLASS_SIZE, SHEET_A4, false);
	for (int i = 0; i < CLASS_SIZE; i++) {
		assert_true(place(order[i]->name) >= 0);
		if (i > 0)
			assert_true(
			    place(order[i]->name) > place(order[i - 1]->name));
	}
}

/* How often words stand in the list. */
static int times(const char *words)
{
	int n = 0;

	for (const char *at = list; (at = strstr(at, words)); at++)
		n++;
	return n;
}

/* Nobody is left out between two pages, and the head stands once. */
static void whole(int count, enum sheet_size size, bool large)
{
	int pages = make(count, size, large);
	char last[40];

	snprintf(last, sizeof(last), "page %d of %d\n", pages, pages);
	assert_int_equal(times("\npage "), pages);
	assert_int_equal(times(last), pages > 1);
	assert_int_equal(times(" 100 Class on "), 1);
	/* Its word is never cut. */
	for (int i = 0, words = 0; i < STUDENT_ORDERS; i++) {
		char word[40];

		snprintf(word, sizeof(word), " 100 %s\n",
		    message_sentence(student_word((enum student_order)i)));
		words += times(word);
		if (i == STUDENT_ORDERS - 1)
			assert_int_equal(words, count);
	}
	/* A rule below the head and below each row. */
	assert_int_equal(times("\nline "), count + 1);
}

static void test_sizes(void **context)
{
	(void)context;
	for (int way = 0; way < 4; way++)
		for (int count = 1; count <= 300; count += 46)
			whole(
			    count, way & 1 ? SHEET_LETTER : SHEET_A4, way & 2);
	whole(MANY, SHEET_A4, false);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
#define CASE(f) cmocka_unit_test_setup(f, begin)
		CASE(test_looked_at),
		CASE(test_order),
		CASE(test_sizes),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
