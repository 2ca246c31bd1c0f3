/*
 * history_csv.c - what was practised, as tables (RFC 4180)
 *
 *	day,stage,block,unit,turns,bows,pulses,metres,clean,shaky,...
 *	2026-03-02,wide,work,1,5,10,40,24.7,4,1,clean,4,0,10,8,cello
 *
 * Names come from a journal and may hold anything: csv.h.
 */
#include "history_csv.h"

#include "csv.h"
#include "evenhand/base/date.h"
#include "evenhand/record/record.h"

enum { UM_MM = 1000, MINUTE = 60, OFFSET = 64800 };

/* --- day, stage, finger --- */

static const char *mark_of(const struct tally *t)
{
	if (t->first_go == MARK_CLEAN)
		return "clean";
	if (t->first_go == MARK_SHAKY)
		return "shaky";
	return t->first_go_pulses > 0 ? "none" : "";
}

/* A number that means something only where something was counted. */
static void add_counted(struct csv_row *r, int number, int counted)
{
	if (counted > 0)
		csv_whole(r, number);
	else
		csv_text(r, "");
}

static void print_tally(struct history_page *p, const struct tally *t)
{
	struct csv_row r;

	csv_begin(&r);
	csv_day(&r, t->day);
	csv_text(&r, t->stage);
	csv_text(&r, record_block_word(t->kind));
	csv_text(&r, t->unit);
	csv_whole(&r, t->turns);
	csv_whole(&r, t->bows);
	csv_whole(&r, t->pulses);
	csv_thousandths(
	    &r, t->slide_um / UM_MM + (t->slide_um % UM_MM >= UM_MM / 2));
	csv_whole(&r, t->clean);
	csv_whole(&r, t->shaky);
	csv_text(&r, mark_of(t));
	add_counted(&r, t->first_go_pulses, t->first_go_pulses);
	csv_whole(&r, t->resets);
	add_counted(&r, t->bows_listened, t->bows_listened);
	add_counted(&r, t->bows_full, t->bows_listened);
	csv_text(&r, t->instrument);
	csv_end(&r, p);
}

bool history_print_csv(const struct days *d)
{
	struct history_page page;

	page_begin(&page);
	page_line(&page,
	    "day,stage,block,unit,turns,bows,pulses,metres,clean,shaky,"
	    "first_go,first_go_pulses,resets,bows_listened,bows_all_tops,"
	    "instrument\r\n");
	for (int i = 0; i < d->count && page.good; i++)
		for (int k = 0; k < d->day[i].tallies; k++)
			print_tally(&page, days_tally(d, &d->day[i], k));
	return page_end(&page);
}

/* --- sessions --- */

/* Local time with the offset that was in force, as ISO 8601 writes it. */
static void add_began(struct csv_row *r, struct moment m)
{
	char bytes[DATE_TEXT_MAX + 32];
	struct text t = text_in(bytes, sizeof(bytes));
	char date[DATE_TEXT_MAX];
	int minutes = moment_minute(m);
	int offset = m.offset > OFFSET || m.offset < -OFFSET
	    ? 0
	    : m.offset / MINUTE;
	int away = offset < 0 ? -offset : offset;
	int second = (int)(m.utc % MINUTE + m.offset % MINUTE) % MINUTE;

	date_text(moment_day(m), date);
	text_format(&t, "%sT%02d:%02d:%02d%c%02d:%02d", date, minutes / MINUTE,
	    minutes % MINUTE, second < 0 ? second + MINUTE : second,
	    offset < 0 ? '-' : '+', away / MINUTE, away % MINUTE);
	csv_text(r, bytes);
}

static void print_sitting(struct history_page *p, const struct past_sitting *s)
{
	struct csv_row r;

	csv_begin(&r);
	csv_whole(&r, s->key);
	csv_day(&r, s->day);
	add_began(&r, s->began);
	csv_text(&r, s->work_stage);
	csv_thousandths(&r, s->length_ms);
	csv_thousandths(&r, s->cap_ms);
	csv_text(&r, record_how_word(s->ended));
	csv_text(&r, s->instrument);
	csv_end(&r, p);
}

bool history_print_sessions(const struct days *d, const struct day_range *range)
{
	struct history_page page;

	page_begin(&page);
	page_line(&page,
	    "session,day,began,work_stage,length_s,cap_s,ended,"
	    "instrument\r\n");
	for (int i = 0; i < d->h->sittings && page.good; i++)
		if (d->h->sitting[i].day >= range->from &&
		    d->h->sitting[i].day <= range->to)
			print_sitting(&page, &d->h->sitting[i]);
	return page_end(&page);
}
