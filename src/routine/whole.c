/*
 * whole.c - what only the whole routine shows
 *
 * The session must hold what it begins with, and no fingertip may be hurried:
 * above 0.7 metres a second along the string the hand tightens.
 */
#include <math.h>

#include "reader.h"

#define SPEED_MOST 0.7 /* metres a second */
#define MINUTE_MS 60000.0

/* The node to point at: the first that is there. */
static const struct node *first_of(
    const struct node *a, const struct node *b, const struct node *c)
{
	if (a != NULL)
		return a;
	return b != NULL ? b : c;
}

static const struct node *value_at(
    const struct node *root, const char *map, const char *key)
{
	return node_get(node_get(root, map), key);
}

/* One decimal, but enough of them to show that it is above the most. */
static double shown(double speed)
{
	double tenths = round(speed * 10) / 10;

	return tenths > SPEED_MOST ? tenths : ceil(speed * 1000) / 1000;
}

static double fastest(const struct routine *r, int *stage)
{
	int top = r->ladder[r->ladder_count - 1];
	double most = 0;

	for (int s = 0; s < r->stages; s++) {
		for (int u = 0; u < r->units; u++) {
			double speed = routine_speed(r, s, u, top);

			if (speed > most) {
				most = speed;
				*stage = s;
			}
		}
	}
	return most;
}

static const struct node *stage_node(const struct node *root, int stage)
{
	const struct node *list = node_get(root, "stages");
	const struct node *n = list != NULL ? list->first : NULL;

	while (n != NULL && stage-- > 0)
		n = n->next;
	return n;
}

static void check_speed(struct reader *rd, const struct node *root)
{
	int stage = 0;
	double speed = fastest(rd->r, &stage);

	if (speed > SPEED_MOST)
		fault_here(rd,
		    first_of(value_at(root, "bowing", "bow_seconds"),
			value_at(root, "bowing", "pulses"),
			stage_node(root, stage)),
		    message_with(M_ROUTINE_SPEED, FIGURE(shown(speed))));
}

static bool has_air(const struct routine *r)
{
	return r->stages > 0 && r->stage[0].in_the_air;
}

static void check_cap(struct reader *rd, const struct node *root)
{
	const struct routine *r = rd->r;
	const struct node *place = first_of(
	    value_at(root, "session", "minutes"), node_get(root, "turns"),
	    root);
	int round = routine_lead_ms(r) + routine_round_ms(r);
	double minutes = r->cap_ms / MINUTE_MS;

	if (has_air(r) && r->stages > 1 &&
	    r->cap_ms < round + routine_air_ms(r))
		fault_here(rd, place,
		    message_with(M_ROUTINE_SHORT_AIR, FIGURE(minutes),
			CLOCK(round + routine_air_ms(r))));
	else if (r->stages > has_air(r) && r->cap_ms < round)
		fault_here(rd, place,
		    message_with(
			M_ROUTINE_SHORT, FIGURE(minutes), CLOCK(round)));
	else if (r->cap_ms < routine_air_ms(r) && has_air(r))
		fault_here(rd, place,
		    message_with(M_ROUTINE_SHORT_SWING, FIGURE(minutes),
			CLOCK(routine_air_ms(r))));
}

/* A stage's own minutes hold less: the air stage only its swings. */
static void check_stage_cap(
    struct reader *rd, const struct stage *s, const struct node *minutes)
{
	const struct routine *r = rd->r;
	int round = routine_lead_ms(r) + routine_round_ms(r);
	int least = s->in_the_air ? routine_air_ms(r) : round;

	if (has_air(r) && !s->in_the_air)
		least += routine_air_ms(r);
	if (minutes == NULL || s->minutes_ms >= least)
		return;
	fault_here(rd, minutes,
	    message_with(s->in_the_air ? M_ROUTINE_SHORT_SWING
		    : has_air(r)       ? M_ROUTINE_SHORT_AIR
				       : M_ROUTINE_SHORT,
		FIGURE(s->minutes_ms / MINUTE_MS), CLOCK(least)));
}

void check_whole(struct reader *rd, const struct node *root)
{
	const struct node *list = node_get(root, "stages");
	const struct node *n = list != NULL ? list->first : NULL;

	check_cap(rd, root);
	for (int i = 0; i < rd->r->stages && n != NULL; i++, n = n->next)
		check_stage_cap(rd, &rd->r->stage[i], node_get(n, "minutes"));
	check_speed(rd, root);
}
