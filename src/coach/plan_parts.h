/*
 * plan_parts.h - a plan while it is being made
 *
 *	health ─▶ cap ─▶ how much fits ─▶ which recaps ─▶ rungs ─▶ whose turns
 *	      ─▶ load of the week ─▶ layout ─▶ reasons
 *
 * Each part reads what those before it found out and adds its own.  Only the
 * files of the planner see this.
 */
#ifndef EVENHAND_COACH_PLAN_PARTS_H
#define EVENHAND_COACH_PLAN_PARTS_H

#include "evenhand/coach/equal.h"
#include "evenhand/coach/load.h"
#include "evenhand/coach/plan.h"
#include "ladder.h"

enum {
	NEVER = -1,	       /* no such day, no such stage */
	WEEK_DAYS = 7,	       /* today included */
	CATCH_UP_DAYS = 28,    /* what catch_up looks back on */
	EASE_DAYS = HURT_DAYS, /* clear days after pain */
	EASE_PERCENT = 60,     /* of the cap, on those days */
	PAIN_WINDOW_DAYS = 14, /* two pain days within so many */
	WIDE_CENTS = 200,      /* wider than a tone is wide */
	UNSEEN_LONG = 3,       /* sessions */
};

/* Why the work begins at its rung. */
enum rung_why {
	RUNG_NEW,   /* a new stage */
	RUNG_CLEAN, /* the last round was all clean */
	RUNG_LOWER, /* it had a shaky turn */
	RUNG_KEPT,  /* it was not marked or played to its end */
	RUNG_EASED, /* pain lately */
	RUNG_AWAY,  /* many days without practice */
	RUNG_SHORT_AWAY,
	RUNG_LOAD, /* the week is nearly full */
	RUNG_HURRY,
	RUNG_NONE, /* no work with a rung */
};

/* What is done so that no finger comes over its week (rule F5). */
enum load_step {
	LOAD_FREE,
	LOAD_RECAPS,   /* wide recaps on the lowest rung */
	LOAD_NO_CLIMB, /* and no rung gained */
	LOAD_LOWEST,   /* and the work on the lowest rung */
	LOAD_SHORT,    /* and a shorter session */
	LOAD_AIR,      /* nothing but the air */
	LOAD_REST,     /* a second session, left out */
};

/* The first finger that would have come over its week. */
struct load_over {
	int finger; /* 0 none */
	struct load week, allowed;
};

/* Where the past of rule F1 comes from. */
enum past {
	PAST_NONE,     /* make_up: none */
	PAST_MISSED,   /* turns that cut-off sittings left out */
	PAST_ALL,      /* four weeks and what the teacher typed in */
	PAST_NEW_WIDE, /* catch_up waits: a new wide stage */
	PAST_NOTED,    /* catch_up waits: pain, skin or sore */
};

/* What there is to know of an earlier stage when recaps are chosen. */
struct recap {
	int stage;
	int unseen; /* sittings since it was seen */
	int times;  /* brought back so far */
	bool shaky; /* last time */
	bool chosen;
	int pulses;
	int usual;	/* pulses but for days away and the load */
	bool was_clean; /* usual is where it was last clean */
};

struct making {
	struct plan *plan;
	const struct plan_wish *wish;
	const struct routine *routine;
	const struct history *history;
	struct where where;
	int stage; /* worked on */
	bool in_the_air;

	/* Health. */
	int pain_day; /* the last one, or NEVER */
	bool easing;
	bool no_work; /* it rests: wide after pain, or after days away */

	/* The cap, and what fits. */
	int file_cap_ms; /* as the teacher's file says */
	bool new_stage;
	int air_stage; /* played first, or NEVER */
	int lead_ms, round_ms, air_ms;
	int recap_num, recap_den; /* of the cap recaps may take */
	int swings, recaps_fit, rounds;

	int candidates;
	struct recap recap[STAGES_MAX]; /* in the order of the programme */

	enum past past;
	int ledger[UNITS_MAX];
	int counted[UNITS_MAX]; /* turns missed, or turns had */

	enum rung_why rung_why;
	int rung_was; /* of the last round */
	int pulses;   /* to begin with */

	enum load_step load;
	struct loads had, today, week, allowed; /* week: with today's */
	struct load_over over;
	bool recaps_lowered;
	int full_cap_ms; /* before the load made it shorter */
};

/* The last rounds of a stage, newest first. */
struct round_walk {
	const struct history *history;
	const struct routine *routine;
	int stage;
	int at; /* turns before this one are still to be seen */
};

struct round_seen {
	int day;
	int pulses;
	bool work;
	bool all_clean; /* played to its end, each turn clean */
	int shaky;
};

/* --- plan_health.c --- */
void plan_health(struct making *m);
/* Whether two pain days ever lay within a fortnight. */
bool plan_pain_came_back(const struct history *h);
int plan_note_day(const struct past_note *n, int today);
bool plan_is_wide(const struct stage *s);
bool plan_is_hurt(const struct making *m, int unit);

/* --- plan_fit.c --- */
void plan_cap(struct making *m);
void plan_fit(struct making *m);

/* --- plan_guard.c --- */
void plan_guard(struct making *m);
void plan_guard_part(struct making *m);
void plan_guard_rung(struct making *m);
void plan_guard_reasons(struct making *m);
void plan_guard_details(struct making *m);
void plan_guard_cautions(struct making *m);

/* --- plan_recap.c --- */
void plan_candidates(struct making *m);
void plan_choose(struct making *m);

/* --- plan_rung.c --- */
void plan_rung(struct making *m);

/* --- plan_reasons_where.c --- */
void plan_where_reasons(struct making *m);

/* --- rounds.c --- */
bool round_before(struct round_walk *w, struct round_seen *out);

/* --- plan_ledger.c --- */
void plan_ledger(struct making *m);

/* --- plan_load.c --- */
void plan_load(struct making *m);

/* --- plan_layout.c --- */
void plan_layout(struct making *m);

/* --- plan_reasons.c --- */
void plan_reasons(struct making *m);
void plan_rest_reasons(struct making *m);
void plan_because(
    struct making *m, struct message message, enum ground ground, int rule);
void plan_detail(
    struct making *m, struct message message, enum ground ground, int rule);
void plan_caution(struct making *m, struct message message);
const char *plan_title(const struct making *m, int stage);

/* --- plan_reasons_fit.c, plan_reasons_work.c --- */
void plan_fit_reasons(struct making *m);
void plan_fit_details(struct making *m);
void plan_work_reasons(struct making *m);

/* --- plan_reasons_load.c --- */
void plan_load_reasons(struct making *m);
void plan_load_details(struct making *m);

/* --- plan_caution.c --- */
void plan_cautions(struct making *m);

#endif
