/*
 * sound_count.c - the session's frames, by the card or by the clock
 */
#include "sound_count.h"

/* a x b / c for c > 0, rounded down; whole parts apart, so no overflow. */
static int64_t scaled(int64_t a, int64_t b, int64_t c)
{
	int64_t whole = a / c, rest = a % c;

	if (rest < 0) {
		rest += c;
		whole--;
	}
	return whole * b + rest * b / c;
}

int64_t count_to_card(const struct count *c, int64_t frame)
{
	int64_t twice = scaled(2 * (frame - c->origin), c->card_rate, c->rate);

	return scaled(twice + 1, 1, 2);
}

int64_t count_from_card(const struct count *c, int64_t card)
{
	return c->origin + scaled(card, c->rate, c->card_rate);
}

void count_begin(struct count *c, int rate, bool timed)
{
	*c = (struct count) { .rate = rate, .timed = timed };
}

static void reach(struct count *c, int64_t frame)
{
	if (frame > c->frame)
		c->frame = frame;
}

/* Whether the card moved much further than time did. */
static bool races(
    const struct count *c, const struct count_now *now, int64_t lost_ms)
{
	int64_t gone = scaled(now->card - c->card, 1000, c->card_rate);
	int64_t time = scaled(now->wall - c->moved_wall, 1000, c->rate);

	return c->timed && gone > time + lost_ms + COUNT_AHEAD_MS;
}

static bool look_at_card(
    struct count *c, const struct count_now *now, int64_t lost_ms)
{
	bool moved = now->card != c->card;
	bool gave_up = now->shuts != c->shuts;
	bool shifted = false;

	c->raced = c->raced || races(c, now, lost_ms);
	if (c->raced)
		return false;
	if (moved && lost_ms > 0 && gave_up) {
		/* It went on to nobody's ear. */
		c->origin += c->frame - count_from_card(c, now->card);
		c->lost_ms += lost_ms;
		shifted = true;
	} else if (!moved ||
	    scaled(now->card - c->card, 1000, c->card_rate) < lost_ms / 2) {
		/* It stood still too. */
		c->lost_ms += lost_ms;
	}
	if (moved)
		c->moved_wall = now->wall;
	c->card = now->card;
	c->shuts = now->shuts;
	reach(c, count_from_card(c, now->card));
	return shifted;
}

bool count_look(struct count *c, const struct count_now *now)
{
	int64_t lost_ms = now->wall_lost_ms - c->wall_lost_ms;

	c->wall_lost_ms = now->wall_lost_ms;
	if (c->carried)
		return look_at_card(c, now, lost_ms);
	c->lost_ms += lost_ms;
	reach(c, c->stood + now->wall - c->stood_wall);
	return false;
}

void count_join(struct count *c, int card_rate, const struct count_now *now)
{
	count_look(c, now);
	c->carried = true;
	c->raced = false;
	c->card_rate = card_rate;
	c->origin = 0;
	c->origin = c->frame - count_from_card(c, now->card);
	c->card = now->card;
	c->moved_wall = now->wall;
	c->shuts = now->shuts;
}

void count_leave(struct count *c)
{
	if (!c->carried)
		return;
	c->carried = false;
	c->stood = c->frame;
	c->stood_wall = c->moved_wall;
}

int64_t count_still_ms(const struct count *c, const struct count_now *now)
{
	return (now->wall - c->moved_wall) * 1000 / c->rate;
}
