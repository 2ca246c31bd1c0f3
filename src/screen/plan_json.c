/*
 * plan_json.c - today's plan as a JSON object
 */
#include "evenhand/screen/plan_json.h"

#include "evenhand/base/json.h"

enum { SENTENCE_BYTES = 1024 };

struct writing {
	struct json json;
	const struct routine *routine;
	const struct plan *plan;
};

static const char *const verdicts[] = {
	[VERDICT_PRACTISE] = "practise",
	[VERDICT_REST_TODAY] = "rest today",
	[VERDICT_ASK_FIRST] = "ask first",
};

static const char *const kinds[] = {
	[BLOCK_AIR] = "air",
	[BLOCK_RECAP] = "recap",
	[BLOCK_WORK] = "work",
};

static const char *const whys[] = {
	[WHERE_FILE] = "file",
	[WHERE_SECURE] = "secure",
	[WHERE_BACK] = "back",
	[WHERE_STAYS] = "stays back",
	[WHERE_ON] = "on again",
	[WHERE_AWAY_BACK] = "away",
	[WHERE_AWAY_START] = "away long",
};

static const char *const wanted[] = {
	[MISSING_NOTHING] = "nothing",
	[MISSING_WELL] = "clear days",
	[MISSING_DAYS] = "practice days",
	[MISSING_RUNG] = "top rung",
	[MISSING_CLEAN] = "clean first go",
	[MISSING_MARK] = "mark",
	[MISSING_CLEAN_DAYS] = "clean days",
	[MISSING_SHARE] = "share",
	[MISSING_HEARD] = "tops heard",
};

static void add_day(struct json *j, const char *key, int day)
{
	char date[DATE_TEXT_MAX];

	date_text(day, date);
	json_text(j, key, date);
}

static void add_head(struct writing *w)
{
	const struct plan *p = w->plan;
	const struct routine *r = w->routine;
	struct json *j = &w->json;

	add_day(j, "day", p->day);
	json_text(j, "routine", r->name);
	json_text(j, "verdict", verdicts[p->verdict]);
	json_text(j, "work_stage", r->stage[p->work_stage].id);
	json_text(j, "asked_stage", r->stage[p->where.asked].id);
	json_text(j, "work_stage_because", whys[p->where.why]);
	json_whole(j, "day_on_stage", p->day_on_stage);
	json_whole(j, "clear_days_before", p->where.away);
	json_whole(j, "cap_ms", p->cap_ms);
	json_whole(j, "length_ms", p->length_ms);
	json_whole(j, "bows", p->bows);
}

static const char *unit_name(const struct writing *w, int unit)
{
	return unit < 0 ? "" : w->routine->unit[unit].name;
}

static void add_block(struct writing *w, const struct plan_block *b)
{
	struct json *j = &w->json;

	json_open(j, NULL, '{');
	json_text(j, "kind", kinds[b->kind]);
	json_text(j, "stage", w->routine->stage[b->stage].id);
	json_whole(j, "pulses", b->pulses);
	json_whole(j, "start_ms", b->start_ms);
	json_whole(j, "end_ms", b->end_ms);
	json_open(j, "turns", '[');
	for (int i = 0; i < b->turns; i++) {
		const struct plan_turn *t = &w->plan->turn[b->first_turn + i];

		json_open(j, NULL, '{');
		json_text(j, "unit", unit_name(w, t->unit));
		json_whole(j, "round", t->round + 1);
		json_whole(j, "start_ms", t->start_ms);
		json_close(j, '}');
	}
	json_close(j, ']');
	json_close(j, '}');
}

static void add_shares(struct writing *w)
{
	const struct plan *p = w->plan;
	struct json *j = &w->json;

	json_open(j, "shares", '[');
	for (int u = 0; u < w->routine->units; u++) {
		json_open(j, NULL, '{');
		json_text(j, "unit", unit_name(w, u));
		json_whole(j, "turns", p->share[u]);
		json_whole(j, "left_out", p->dropped[u]);
		json_close(j, '}');
	}
	json_close(j, ']');
}

static void add_standing(struct writing *w)
{
	const struct standing *s = &w->plan->standing;
	struct json *j = &w->json;
	bool air = w->routine->stage[s->stage].in_the_air;

	json_open(j, "standing", '{');
	json_truth(j, "ready", s->missing == MISSING_NOTHING);
	json_text(j, "missing", wanted[s->missing]);
	json_text(j, "unit", air ? "" : unit_name(w, s->unit));
	json_whole(j, "days", s->days);
	json_whole(j, "days_needed", s->days_needed);
	json_whole(j, "clean_days", s->clean_days);
	json_whole(j, "clean_days_of", s->clean_of);
	json_whole(j, "clean_days_needed", s->clean_needed);
	json_whole(j, "more_days", s->more_days);
	json_whole(j, "bows_listened", s->bows_listened);
	json_whole(j, "bows_all_tops", s->bows_full);
	json_close(j, '}');
}

static void add_forecast(struct writing *w, const struct forecast *f)
{
	struct json *j = &w->json;

	json_open(j, "forecast", '{');
	json_truth(j, "silent", f->silence != FORECAST_SPEAKS);
	if (f->silence == FORECAST_SPEAKS) {
		json_whole(j, "low_weeks", f->low_weeks);
		json_whole(j, "high_weeks", f->high_weeks);
	}
	json_close(j, '}');
}

static void add_sentence(struct json *j, const struct message *m)
{
	char words[SENTENCE_BYTES];

	message_text(m, words, sizeof(words));
	json_text(j, "words", words);
}

static void add_reasons(struct writing *w)
{
	const struct plan *p = w->plan;
	struct json *j = &w->json;

	json_open(j, "reasons", '[');
	for (int i = 0; i < p->reasons; i++) {
		const struct reason *r = &p->reason[i];
		char ground[] = { (char)r->ground, '\0' };

		json_open(j, NULL, '{');
		json_whole(j, "rule", r->rule);
		json_text(j, "ground", ground);
		json_truth(j, "detail", r->detail);
		add_sentence(j, &r->message);
		json_close(j, '}');
	}
	json_close(j, ']');
	json_open(j, "cautions", '[');
	for (int i = 0; i < p->cautions; i++) {
		json_open(j, NULL, '{');
		add_sentence(j, &p->caution[i]);
		json_close(j, '}');
	}
	json_close(j, ']');
}

void plan_json(struct text *out, const struct routine *r, const struct plan *p,
    const struct forecast *f)
{
	struct writing w = { json_in(out), r, p };

	json_open(&w.json, NULL, '{');
	json_whole(&w.json, "version", 1);
	add_head(&w);
	json_open(&w.json, "blocks", '[');
	for (int b = 0; b < p->blocks; b++)
		add_block(&w, &p->block[b]);
	json_close(&w.json, ']');
	add_shares(&w);
	add_standing(&w);
	add_forecast(&w, f);
	add_reasons(&w);
	json_close(&w.json, '}');
}
