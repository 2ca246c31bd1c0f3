/*
 * bench_paper.c - sheets of paper: how soon one is there
 *
 * Runs the real binary (EVENHAND), which starts evenhand-paper, and prints each
 * figure beside its goal.  The last two lay sheets out in this process: the
 * homework with most on it tries many sizes until all of it fits on a page.
 */
#include "bench.h"
#include "evenhand/paper/list.h"
#include "evenhand/paper/sheet.h"
#include "evenhand/world/load.h"

enum { RUNS = 15, DAY = 20514 };

static char folder[] = "/tmp/evenhand-bench-XXXXXX";

/* ms until a sheet is on the disk. */
static double print_once(const char *program, const char *sheet)
{
	const char *const words[] = { program, "print", sheet, "cello-homework",
		"--force", "-o", "sheet.pdf", NULL };

	return run_ms(words);
}

static double print_median(const char *program, const char *sheet)
{
	double ms[RUNS];

	print_once(program, sheet);
	for (int i = 0; i < RUNS; i++)
		ms[i] = print_once(program, sheet);
	return median(ms, RUNS);
}

static double lay_out(bool large)
{
	static struct paper paper;
	static struct load_paths paths;
	static struct faults faults;
	static char list[LIST_BYTES_MAX];
	bool unreadable;
	struct routine *r = load_routine("cello", &paths, &faults, &unreadable);
	struct sheet_wish w = { r, DAY, SHEET_A4, large };
	double ms[RUNS];

	if (!r)
		fail("cello");
	r->work_on = r->stages - 1;
	for (int i = 0; i < RUNS; i++) {
		struct text t = text_in(list, sizeof list);
		double began = now_ms();

		sheet_homework(&paper, &w);
		list_write(&t, &paper);
		ms[i] = now_ms() - began;
	}
	routine_free(r);
	return median(ms, RUNS);
}

int main(void)
{
	const char *program = getenv("EVENHAND");

	if (!program || !mkdtemp(folder) || chdir(folder) != 0)
		fail("EVENHAND and a folder");
	home_is(folder);
	figure("a lesson sheet as PDF", "< 60", print_median(program, "lesson"),
	    "ms");
	beside_true("a lesson sheet as PDF");
	figure("a homework sheet as PDF", "< 100",
	    print_median(program, "homework"), "ms");
	figure("the homework with most on it, laid out", "< 20", lay_out(false),
	    "ms");
	figure("the same in large print", "< 5", lay_out(true), "ms");
	unlink("sheet.pdf");
	if (chdir("/") != 0 || rmdir(folder) != 0)
		fail(folder);
	return 0;
}
