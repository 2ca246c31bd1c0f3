/*
 * test_first.c - the first minutes: every way through, and out of them
 *
 * The shell here does what a real one must: it steps at each frame that is
 * asked for.  On every effect it checks what must hold always: nothing that a
 * journal keeps comes before the session itself, and nothing is said over a
 * count-in or a bow.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include <stdlib.h>

#include "evenhand/base/frames.h"
#include "evenhand/coach/first.h"
#include "programme.h"

enum { RATE = 48000, LETTERS_A_SECOND = 17, WALKS = 400 };

static const struct history nothing;
static struct routine r;
static struct session s;
static struct first f;
static struct effects e;
static int passages, silences, over, notes, pages;
static struct passage passage;
static int64_t passage_frame, talk_until;
static char said[65536];
static uint64_t digest;

static int64_t frames(int64_t ms)
{
	return frames_of_ms(ms, RATE);
}

static void stir(int64_t value)
{
	digest = (digest ^ (uint64_t)value) * UINT64_C(1099511628211);
	digest ^= digest >> 29;
}

/* The next count-in or bow of what plays. */
static int64_t next_pulse(void)
{
	const struct passage *p = &s.at.passage;
	int64_t ms = passage_ms(p);

	if (s.phase == PHASE_LEAD)
		ms = p->settle_ms;
	return s.at.frame + frames(ms);
}

/* Read aloud, it is over before the next pulse. */
static void listen(const struct message *m)
{
	char line[1024];
	size_t length = message_text(m, line, sizeof(line));

	if (strlen(said) + length + 2 < sizeof(said)) {
		strcat(said, line);
		strcat(said, "\n");
	}
	for (size_t i = 0; i < length; i++)
		stir(line[i]);
	if (!first_plays(&f) || m->id == M_SESSION_SOUND_LOST)
		return;
	/* Who asks for the keys hears them. */
	if (m->id == first_help(&f).id)
		return;
	/* After a silence a name is called, and ticks begin at once. */
	if (s.phase == PHASE_LEAD && s.at.passage.settle_ms == 0)
		return;
	assert_int_not_equal(s.phase, PHASE_BOWS);
	if (talk_until < s.now)
		talk_until = s.now;
	talk_until += (int64_t)length * RATE / LETTERS_A_SECOND;
	if (talk_until > next_pulse())
		fail_msg("too long: %s", line);
}

static void take(bool teaching)
{
	for (int i = 0; i < e.count; i++) {
		const struct effect *at = &e.at[i];

		stir((int64_t)at->kind);
		switch (at->kind) {
		case EFFECT_PAGE:
			pages++;
			stir((int64_t)f.part);
			break;
		case EFFECT_SAY:
			listen(&at->message);
			break;
		case EFFECT_PASSAGE:
			assert_true(at->frame >= f.now);
			passage = at->passage;
			passage_frame = at->frame;
			passages++;
			stir(at->frame);
			break;
		case EFFECT_SILENCE:
			silences++;
			break;
		case EFFECT_OVER:
			over++;
			break;
		case EFFECT_NOTE:
			/* Only what hurts, and from the session itself. */
			assert_false(first_shows(&f));
			notes++;
			break;
		case EFFECT_BEGIN:
		case EFFECT_TURN:
		case EFFECT_MARK:
		case EFFECT_END:
			assert_false(teaching);
			break;
		}
	}
}

static void step(struct input in)
{
	bool teaching = first_shows(&f);

	first_step(&f, &in, &e);
	assert_false(e.more);
	take(teaching);
	assert_ptr_equal(f.session, &s);
	if (first_plays(&f))
		assert_int_equal(s.page, PAGE_PLAY);
	else if (first_shows(&f))
		assert_int_not_equal(s.page, PAGE_PLAY);
	if (first_shows(&f)) {
		assert_int_equal(s.now, f.now);
		assert_int_equal(first_waits(&f), !first_plays(&f));
	}
}

static void reach(int64_t frame)
{
	int64_t wake;

	while ((wake = first_wake(&f)) <= frame)
		step((struct input) { .kind = INPUT_FRAME, .frame = wake });
	step((struct input) { .kind = INPUT_FRAME, .frame = frame });
}

static void key_at(int64_t frame, enum key key)
{
	reach(frame);
	step((struct input) { .kind = INPUT_KEY, .frame = frame, .key = key });
}

/* A press with a little time before it. */
static void press(enum key key)
{
	key_at(s.now + frames(1200), key);
}

static void begin(enum marking marking)
{
	struct plan_wish w = { .routine = &r,
		.history = &nothing,
		.now = { INT64_C(1772470800), 0 },
		.marking = marking };

	passages = silences = over = notes = pages = 0;
	talk_until = 0;
	digest = 1;
	said[0] = '\0';
	first_begin(&f, &s, &w, RATE, true, &e);
	take(true);
}

/* Two keys, to a part; the playing is let alone. */
static void go_to(enum first_part part)
{
	for (int i = 0; i < 20 && f.part != part; i++) {
		if (first_plays(&f))
			reach(first_wake(&f));
		else if (f.part == FIRST_BACK)
			press(KEY_BACK);
		else
			press(KEY_FORWARD);
	}
	/* The pause to mark in needs more steps. */
	assert_int_equal(f.part, part);
}

static const enum first_part all_pages[] = { FIRST_WELCOME, FIRST_FORWARD,
	FIRST_BACK, FIRST_LISTEN, FIRST_MARK, FIRST_LAST };

enum { PAGES = sizeof(all_pages) / sizeof(all_pages[0]) };

/* --- the way through --- */

static void test_due(void **state)
{
	struct history some = { .sittings = 1 };

	(void)state;
	assert_true(first_due(NULL, false));
	assert_true(first_due(&nothing, false));
	assert_false(first_due(&nothing, true));
	assert_false(first_due(&some, false));
	assert_false(first_due(&some, true));
}

/* Not due: as if it were not there. */
static void test_not_due(void **state)
{
	struct plan_wish w = { .routine = &r, .history = &nothing };
	struct effects other;
	static struct session alone;

	(void)state;
	first_begin(&f, &s, &w, RATE, false, &e);
	session_begin(&alone, &w, RATE, &other);
	assert_false(first_shows(&f));
	assert_int_equal(e.count, other.count);
	assert_memory_equal(&s, &alone, sizeof(s));
	assert_true(first_waits(&f));
	assert_int_equal(first_wake(&f), session_wake(&alone));
	assert_int_equal(first_help(&f).id, session_help(&alone).id);
	press(KEY_FORWARD);
	assert_int_equal(s.page, PAGE_TODAY);
}

static void test_whole(void **state)
{
	(void)state;
	begin(MARKING_ROUND);
	assert_int_equal(f.part, FIRST_WELCOME);
	assert_int_equal(pages, 1);
	press(KEY_FORWARD);
	assert_int_equal(f.part, FIRST_FORWARD);
	press(KEY_BACK);
	assert_int_equal(f.part, FIRST_FORWARD);
	assert_non_null(strstr(said, "That was back."));
	press(KEY_FORWARD);
	assert_int_equal(f.part, FIRST_BACK);
	press(KEY_OTHER);
	assert_non_null(strstr(said, "That key does nothing here."));
	press(KEY_BACK);
	assert_int_equal(f.part, FIRST_LISTEN);
	press(KEY_FORWARD);
	/* 4 s of stillness, a bow of count-in, two bows at the lowest rung */
	assert_int_equal(f.part, FIRST_HEAR);
	assert_int_equal(passages, 1);
	assert_int_equal(passage.settle_ms, 4000);
	assert_int_equal(passage.count_in_bows, 1);
	assert_int_equal(passage.turns, 1);
	assert_int_equal(passage.bows_each, 2);
	assert_int_equal(passage.pulses, 4);
	assert_int_equal(passage.unit[0], 1);
	assert_int_equal(passage_frame, s.now + frames(DECIDE_MS));
	reach(passage_frame + frames(16000) - 1);
	assert_int_equal(f.part, FIRST_HEAR);
	reach(passage_frame + frames(16000));
	assert_int_equal(f.part, FIRST_MARK);
	assert_null(strstr(said, "Clean or shaky?"));
	press(KEY_FORWARD);
	assert_int_equal(f.part, FIRST_TRY);
	assert_int_equal(passages, 2);
	assert_int_equal(passage.last_change_ms, 8000);
	reach(passage_frame + frames(16500));
	assert_non_null(strstr(said, "How was this round?"));
	key_at(passage_frame + frames(18000), KEY_BACK);
	assert_non_null(strstr(said, "Marked: all shaky."));
	key_at(passage_frame + frames(19000), KEY_BACK);
	assert_non_null(strstr(said, "No marks now."));
	key_at(passage_frame + frames(20000), KEY_CLEAN);
	assert_int_equal(f.part, FIRST_TRY);
	reach(passage_frame + frames(24000));
	assert_int_equal(f.part, FIRST_LAST);
	assert_int_equal(f.mark, MARK_CLEAN);
	assert_true(f.tried);
	assert_int_equal(silences, 0);
	press(KEY_FORWARD);
	assert_false(first_shows(&f));
	assert_int_equal(s.page, PAGE_SORE);
	/* 40 s of it sound, the rest is read: a minute and a half at most. */
	assert_in_range(frames_to_ms(s.now, RATE), 40000, 90000);
}

/* The session that follows is any other, at its own frames. */
static void test_session_follows(void **state)
{
	int64_t began;

	(void)state;
	begin(MARKING_TURN);
	go_to(FIRST_OVER);
	assert_int_equal(s.page, PAGE_SORE);
	assert_ptr_equal(s.wish.routine, &r);
	assert_int_equal(first_wake(&f), s.now + frames(NO_KEY_MS));
	/* The pedal that is still held does not answer its first page. */
	key_at(s.now + frames(200), KEY_FORWARD);
	assert_int_equal(s.page, PAGE_SORE);
	press(KEY_FORWARD);
	assert_int_equal(s.page, PAGE_TODAY);
	press(KEY_FORWARD);
	assert_int_equal(s.page, PAGE_PLAY);
	began = s.now + frames(DECIDE_MS);
	assert_int_equal(s.first_sound, began);
	while (s.page == PAGE_PLAY) {
		int played = s.played;

		reach(first_wake(&f));
		if (s.played > played)
			key_at(s.now + frames(1000), KEY_FORWARD);
	}
	assert_int_equal(s.page, PAGE_END);
	assert_int_equal(s.ended, ENDED_WHOLE);
	assert_int_equal(session_length(&s), frames(s.plan.length_ms));
}

static void test_same_marking(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	go_to(FIRST_LAST);
	assert_non_null(strstr(said, "Clean or shaky?"));
	assert_int_equal(f.mark, MARK_NONE);
	assert_true(f.tried);
	/* Once more, and the mark is new. */
	press(KEY_BACK);
	assert_int_equal(f.part, FIRST_MARK);
	press(KEY_FORWARD);
	assert_int_equal(f.part, FIRST_TRY);
	assert_false(f.tried);
	key_at(passage_frame + frames(17000), KEY_BACK);
	assert_int_equal(f.mark, MARK_SHAKY);
	go_to(FIRST_LAST);
	assert_int_equal(f.mark, MARK_SHAKY);
}

/* --- silence --- */

static void test_silence(void **state)
{
	static const enum key keys[] = { KEY_FORWARD, KEY_BACK, KEY_SILENCE };

	(void)state;
	for (int i = 0; i < 3; i++) {
		begin(MARKING_TURN);
		go_to(FIRST_HEAR);
		key_at(passage_frame + frames(9000), keys[i]);
		assert_int_equal(f.part, FIRST_SILENT);
		assert_int_equal(silences, 1);
		press(KEY_FORWARD);
		/* The same turn again, after a count-in. */
		assert_int_equal(f.part, FIRST_HEAR);
		assert_int_equal(passages, 2);
		assert_int_equal(passage.settle_ms, 0);
		assert_int_equal(passage.count_in_bows, 1);
		reach(passage_frame + frames(12000));
		assert_int_equal(f.part, FIRST_MARK);
		go_to(FIRST_TRY);
		key_at(passage_frame + frames(100), keys[i]);
		assert_int_equal(f.part, FIRST_SILENT);
		press(KEY_BACK);
		assert_int_equal(f.part, FIRST_LAST);
		assert_false(f.tried);
		go_to(FIRST_OVER);
		assert_int_equal(silences, 2);
	}
	/* In the pause: the turn is there, and going on is the end. */
	begin(MARKING_TURN);
	go_to(FIRST_TRY);
	key_at(passage_frame + frames(17000), KEY_FORWARD);
	key_at(passage_frame + frames(19000), KEY_SILENCE);
	assert_int_equal(f.part, FIRST_SILENT);
	press(KEY_FORWARD);
	assert_int_equal(f.part, FIRST_LAST);
	assert_int_equal(f.mark, MARK_CLEAN);
}

/* A key for what has just gone quiet answers no page. */
static void test_late_key(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	go_to(FIRST_MARK);
	key_at(s.now + frames(600), KEY_BACK);
	assert_int_equal(f.part, FIRST_MARK);
	press(KEY_FORWARD);
	key_at(passage_frame + frames(24300), KEY_FORWARD);
	assert_int_equal(f.part, FIRST_LAST);
	key_at(passage_frame + frames(25200), KEY_FORWARD);
	assert_false(first_shows(&f));
}

/* A pedal that is held sends many; one page is left. */
static void test_held(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	for (int i = 1; i <= 40; i++)
		key_at(frames(1000 + 40 * i), KEY_FORWARD);
	assert_int_equal(f.part, FIRST_FORWARD);
}

/* --- ways out --- */

static void test_skip(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	press(KEY_BACK);
	assert_false(first_shows(&f));
	assert_int_equal(s.page, PAGE_SORE);
	assert_int_equal(passages, 0);
	for (int i = 0; i < PAGES; i++) {
		begin(MARKING_TURN);
		go_to(all_pages[i]);
		press(KEY_LEAVE);
		assert_false(first_shows(&f));
		assert_int_equal(s.page, PAGE_SORE);
		/* Once more leaves the program. */
		press(KEY_LEAVE);
		assert_int_equal(over, 1);
		assert_int_equal(silences, 0);
	}
	for (int i = 0; i < 2; i++) {
		begin(MARKING_TURN);
		go_to(i ? FIRST_TRY : FIRST_HEAR);
		key_at(passage_frame + frames(9000), KEY_LEAVE);
		assert_false(first_shows(&f));
		assert_int_equal(s.page, PAGE_SORE);
		assert_int_equal(silences, 1);
	}
	begin(MARKING_TURN);
	go_to(FIRST_LISTEN);
	press(KEY_BACK);
	assert_int_equal(f.part, FIRST_MARK);
	press(KEY_BACK);
	assert_int_equal(f.part, FIRST_LAST);
	assert_int_equal(passages, 0);
	assert_false(f.tried);
}

static void test_nobody(void **state)
{
	(void)state;
	for (int i = 0; i < PAGES; i++) {
		begin(MARKING_TURN);
		go_to(all_pages[i]);
		int64_t end = f.last_key + frames(NO_KEY_MS);

		reach(end - 1);
		assert_int_equal(f.part, all_pages[i]);
		pages = 0;
		reach(end);
		assert_int_equal(over, 1);
		assert_int_equal(pages, 0);
		assert_int_equal(s.page, PAGE_OVER);
		assert_int_equal(first_wake(&f), INT64_MAX);
		assert_false(first_waits(&f));
	}
	begin(MARKING_TURN);
	go_to(FIRST_HEAR);
	key_at(passage_frame, KEY_FORWARD);
	reach(s.now + frames(NO_KEY_MS));
	assert_int_equal(over, 1);
	/* Nobody says whether it hurts: then it does. */
	press(KEY_OTHER);
	begin(MARKING_TURN);
	press(KEY_HURT);
	reach(s.now + frames(NO_KEY_MS));
	assert_int_equal(over, 0);
	assert_int_equal(notes, 1);
	assert_int_equal(s.page, PAGE_REST);
	reach(s.now + frames(NO_KEY_MS));
	assert_int_equal(over, 1);
}

static void input_over(void)
{
	step(
	    (struct input) { .kind = INPUT_END, .frame = s.now + frames(500) });
	assert_int_equal(over, 1);
	assert_int_equal(s.page, PAGE_OVER);
	assert_false(first_shows(&f));
}

static void test_input_over(void **state)
{
	(void)state;
	for (int i = 0; i < PAGES; i++) {
		begin(MARKING_TURN);
		go_to(all_pages[i]);
		input_over();
		assert_int_equal(notes, 0);
	}
	begin(MARKING_TURN);
	go_to(FIRST_TRY);
	reach(passage_frame + frames(9000));
	input_over();
	assert_int_equal(silences, 1);
	begin(MARKING_TURN);
	press(KEY_HURT);
	input_over();
	assert_int_equal(notes, 1);
}

/* --- it hurts --- */

static void test_hurt_in_play(void **state)
{
	(void)state;
	for (int i = 0; i < 2; i++) {
		enum first_part part = i ? FIRST_TRY : FIRST_HEAR;

		begin(MARKING_TURN);
		go_to(part);
		key_at(passage_frame + frames(9000), KEY_HURT);
		assert_int_equal(f.part, FIRST_PAIN);
		assert_int_equal(silences, 1);
		press(KEY_HURT);
		assert_int_equal(f.part, FIRST_PAIN);
		/* A slip: the same turn again. */
		press(KEY_FORWARD);
		assert_int_equal(f.part, FIRST_SILENT);
		press(KEY_FORWARD);
		assert_int_equal(f.part, part);
		/* Even a press that would be too soon for others. */
		key_at(s.now + frames(50), KEY_HURT);
		assert_int_equal(f.part, FIRST_PAIN);
		press(KEY_BACK);
		assert_false(first_shows(&f));
		assert_int_equal(s.page, PAGE_PAIN_WHERE);
		assert_int_equal(notes, 0);
		press(KEY_FORWARD);
		assert_int_equal(notes, 1);
		assert_int_equal(s.page, PAGE_REST);
	}
}

static void test_hurt_on_pages(void **state)
{
	(void)state;
	for (int i = 0; i < PAGES; i++) {
		begin(MARKING_TURN);
		go_to(all_pages[i]);
		press(KEY_HURT);
		assert_int_equal(f.part, FIRST_PAIN);
		press(KEY_FORWARD);
		assert_int_equal(f.part, all_pages[i]);
		press(KEY_HURT);
		press(KEY_LEAVE);
		assert_int_equal(s.page, PAGE_PAIN_WHERE);
	}
}

/* --- the sound --- */

static void sound(enum input_kind kind)
{
	step((struct input) { .kind = kind, .frame = s.now });
}

static void test_sound(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	sound(INPUT_SOUND_LOST);
	sound(INPUT_SOUND_LOST);
	assert_non_null(strstr(said, "The sound is gone."));
	assert_null(strstr(
	    strstr(said, "The sound is gone.") + 1, "The sound is gone."));
	go_to(FIRST_HEAR);
	assert_true(s.silent_device);
	go_to(FIRST_OVER);
	assert_true(s.silent_device);
	begin(MARKING_TURN);
	go_to(FIRST_HEAR);
	sound(INPUT_SOUND_LOST);
	go_to(FIRST_MARK);
	sound(INPUT_SOUND_BACK);
	assert_non_null(strstr(said, "The sound is back"));
	go_to(FIRST_OVER);
	assert_false(s.silent_device);
}

static void test_gap(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	go_to(FIRST_TRY);
	reach(passage_frame + frames(13000));
	step((struct input) {
	    .kind = INPUT_GAP, .frame = s.now, .lost_ms = 5000 });
	assert_int_equal(f.part, FIRST_SILENT);
	assert_non_null(strstr(said, "stood still"));
	go_to(FIRST_OVER);
	assert_int_equal(s.lost_ms, 5000);
}

/* --- any keys at any time --- */

static const enum key any_keys[] = { KEY_FORWARD, KEY_BACK, KEY_FORWARD,
	KEY_BACK, KEY_SILENCE, KEY_CLEAN, KEY_SHAKY, KEY_HURT, KEY_HELP,
	KEY_DIGIT, KEY_OTHER, KEY_LEAF };

/* Two keys alone always come to the end, whatever is pressed. */
static void test_two_keys_random(void **state)
{
	int64_t most = 0;

	(void)state;
	for (unsigned seed = 1; seed <= WALKS; seed++) {
		int presses = 0;

		srand(seed);
		begin(seed % 2 ? MARKING_TURN : MARKING_ROUND);
		while (first_shows(&f) && presses++ < 2000)
			key_at(s.now + frames(300 + rand() % 12000),
			    rand() % 2 ? KEY_FORWARD : KEY_BACK);
		if (first_shows(&f))
			fail_msg("seed %u: no way out", seed);
		assert_int_equal(over, 0);
		most = presses > most ? presses : most;
	}
	print_message(
	    "seeds 1 to %d, %lld presses at most\n", WALKS, (long long)most);
}

static void test_all_keys_random(void **state)
{
	(void)state;
	for (unsigned seed = 1; seed <= WALKS; seed++) {
		srand(seed);
		begin(seed % 2 ? MARKING_TURN : MARKING_ROUND);
		for (int i = 0; i < 60 && first_shows(&f); i++) {
			struct input in = { .kind = INPUT_KEY,
				.key = any_keys[rand() % 12],
				.digit = rand() % 10 };

			in.frame = s.now + frames(rand() % 9000);
			reach(in.frame);
			step(in);
		}
	}
}

/* How often it is stepped between two keys makes no difference. */
static void test_steps(void **state)
{
	(void)state;
	for (unsigned seed = 1; seed <= 60; seed++) {
		uint64_t once = 0;

		for (int often = 0; often < 2; often++) {
			int64_t at = 0;

			srand(seed);
			begin(MARKING_TURN);
			for (int i = 0; i < 40 && first_shows(&f); i++) {
				at += frames(300 + rand() % 9000);
				enum key key = any_keys[rand() % 4];

				if (often)
					reach((s.now + at) / 2);
				key_at(at, key);
			}
			if (often)
				assert_true(digest == once);
			once = digest;
		}
	}
}

/* A shell that slept: all is done in order, and the key is for the end. */
static void test_late_step(void **state)
{
	(void)state;
	begin(MARKING_TURN);
	go_to(FIRST_HEAR);
	first_step(&f,
	    &(struct input) { .kind = INPUT_KEY,
		.frame = passage_frame + frames(60000),
		.key = KEY_FORWARD },
	    &e);
	assert_false(e.more);
	assert_int_equal(f.part, FIRST_TRY);
	go_to(FIRST_MARK + 1);
	reach(s.now + frames(1000000));
	assert_int_equal(over, 1);
}

/* --- other routines --- */

static void test_routines(void **state)
{
	struct routine usual = r;

	(void)state;
	/* A long bow, no count-in, a stage in the air, pulses that fade. */
	r.bow_ms = 12000;
	r.count_in_bows = 0;
	r.work_on = AIR;
	r.stage[WIDE].fade_after = 1;
	begin(MARKING_TURN);
	go_to(FIRST_HEAR);
	assert_int_equal(passage.bow_ms, 4000);
	assert_int_equal(passage.count_in_bows, 1);
	assert_int_equal(passage.fade_after, 0);
	assert_int_equal(f.routine.stage[0].travel_cents, 500);
	go_to(FIRST_OVER);
	assert_int_equal(s.wish.routine->bow_ms, 12000);
	/* Nothing but the air: there is a finger all the same. */
	r = usual;
	r.stages = 1;
	r.work_on = r.no_further_than = AIR;
	begin(MARKING_TURN);
	go_to(FIRST_HEAR);
	assert_int_equal(passage.pulses, 4);
	assert_int_equal(passage.bows_each, 2);
	go_to(FIRST_OVER);
	assert_int_equal(s.page, PAGE_SORE);
	/* Pairs of strings. */
	r = usual;
	r.take = TAKE_STRINGS;
	strcpy(r.unit[0].name, "D-A");
	begin(MARKING_ROUND);
	go_to(FIRST_OVER);
	r = usual;
}

static void test_help(void **state)
{
	(void)state;
	for (int i = 0; i < PAGES; i++) {
		begin(MARKING_TURN);
		go_to(all_pages[i]);
		said[0] = '\0';
		press(KEY_HELP);
		struct message m = first_help(&f);
		char line[1024];

		message_text(&m, line, sizeof(line));
		assert_non_null(strstr(said, line));
		assert_non_null(
		    strstr(line, f.part == FIRST_BACK ? "back" : "orward"));
		assert_int_equal(f.part, all_pages[i]);
	}
	/* Over the ticks it waits for the pause. */
	begin(MARKING_TURN);
	go_to(FIRST_TRY);
	said[0] = '\0';
	key_at(passage_frame + frames(9000), KEY_HELP);
	assert_string_equal(said, "");
	reach(passage_frame + frames(16000));
	assert_non_null(strstr(said, "Forward: clean. Back: shaky."));
	begin(MARKING_TURN);
	press(KEY_LEAF);
	assert_int_equal(f.part, FIRST_WELCOME);
	assert_string_equal(said, "");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_due),
		cmocka_unit_test(test_not_due),
		cmocka_unit_test(test_whole),
		cmocka_unit_test(test_session_follows),
		cmocka_unit_test(test_same_marking),
		cmocka_unit_test(test_silence),
		cmocka_unit_test(test_late_key),
		cmocka_unit_test(test_held),
		cmocka_unit_test(test_skip),
		cmocka_unit_test(test_nobody),
		cmocka_unit_test(test_input_over),
		cmocka_unit_test(test_hurt_in_play),
		cmocka_unit_test(test_hurt_on_pages),
		cmocka_unit_test(test_sound),
		cmocka_unit_test(test_gap),
		cmocka_unit_test(test_two_keys_random),
		cmocka_unit_test(test_all_keys_random),
		cmocka_unit_test(test_steps),
		cmocka_unit_test(test_late_step),
		cmocka_unit_test(test_routines),
		cmocka_unit_test(test_help),
	};

	r = programme_cello(TONE);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
