/*
 * test_class_sheet.c - the list of a class on paper: who needs the teacher
 * stands first, nothing meets, any number of students
 */
#include "../screen/class_made.h"
#include "../screen/golden_pages.h"
#include "areas.h"

#include "evenhand/paper/list.h"
#include "evenhand/paper/sheet.h"

enum { MANY = 300 };

static struct paper paper;
static struct student students[MANY];
static struct class_row rows[MANY];
static struct class_row *order[MANY];
static char list[LIST_BYTES_MAX];

static void make(int count, enum sheet_size size, bool large)
{
	struct class_wish wish = { order, count, CLASS_TODAY, size, large };
	struct text t = text_in(list, sizeof(list));

	class_rows(rows, order, students, count, CLASS_TODAY);
	sheet_class(&paper, &wish);
	list_write(&t, &paper);
	assert_false(paper.cut || t.cut);
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

/* The place of a name among the words of the sheet. */
static int place(const char *name)
{
	for (int i = 0; i < paper.items; i++)
		if (paper.item[i].kind == PAPER_WORDS &&
		    strcmp(paper.item[i].text, name) == 0)
			return i;
	return -1;
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

static void test_sizes(void **context)
{
	(void)context;
	for (int way = 0; way < 4; way++)
		for (int count = 0; count <= MANY; count += 60) {
			make(count, way & 1 ? SHEET_LETTER : SHEET_A4, way & 2);
			areas_check(&paper, "class");
		}
	assert_true(paper.pages > 10);
}

/* The parts of a list make the whole of it. */
static void test_parts(void **context)
{
	static char parts[LIST_BYTES_MAX];
	struct text t = text_in(parts, sizeof(parts));

	(void)context;
	make(CLASS_SIZE, SHEET_LETTER, true);
	list_write_begin(&t, &paper);
	list_write_pages(&t, &paper);
	list_write_end(&t);
	assert_string_equal(parts, list);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
#define CASE(f) cmocka_unit_test_setup(f, begin)
		CASE(test_looked_at),
		CASE(test_order),
		CASE(test_sizes),
		CASE(test_parts),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
