/*
 * measure_track.c - every instant of a recording as a row
 *
 *	time_s,f0_hz,confidence,level_db
 *	0.000,0,0.102,-71.3
 *	0.005,146.832,0.987,-20.4
 *
 * The time is that to which the pitch belongs; without a note it is 0.  Rows go
 * out as they come, and the file takes its place when all of it is there.
 */
#include "evenhand/world/program.h"
#include "measure.h"
#include "options.h"

enum { ROW_BYTES = 80 };

static void let_out(struct measure_track *t)
{
	t->failed = t->failed ||
	    !program_write(t->file.fd, t->text.bytes, t->text.length);
	t->text = text_in(t->bytes, sizeof(t->bytes));
}

bool measure_track_open(struct measured *m, struct fault *f)
{
	struct measure_track *t = &m->track;

	t->open = file_new_open(
	    &t->file, m->ask->track, FILE_RIGHTS, m->ask->force, f);
	t->text = text_in(t->bytes, sizeof(t->bytes));
	text_add(&t->text, "time_s,f0_hz,confidence,level_db\n");
	return t->open;
}

void measure_track_add(struct measured *m, const struct stretch *s)
{
	struct measure_track *t = &m->track;

	for (size_t k = 0; k < s->n; k++) {
		const struct instant *at = &s->m[k];
		double hz = at->what == HEARD_NOTE ? (double)at->hz : 0;

		if (t->text.length + ROW_BYTES > t->text.size)
			let_out(t);
		text_format(
		    &t->text, "%.3f,", s->from_s + (double)k * HEARD_STEP_S);
		text_number(&t->text, hz);
		text_format(&t->text, ",%.3f,%.1f\n", (double)at->sure,
		    (double)at->level_db);
		t->rows++;
	}
}

bool measure_track_close(struct measured *m, struct fault *f)
{
	struct measure_track *t = &m->track;

	if (!t->open)
		return true;
	let_out(t);
	t->open = false;
	if (!t->failed)
		return file_new_put(&t->file, f);
	file_new_drop(&t->file);
	fault_set(f, message_of(M_WORLD_FILE_FULL));
	return fault_at(f, m->ask->track, 0, 0);
}
