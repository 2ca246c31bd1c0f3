/*
 * class_made.h - a class of 25 invented students, up to Sunday 2026-03-29
 *
 * A letter is a day: x all clean, t clean at the top rung, s finger 4 shaky, b
 * all shaky, . nothing.  A capital adds a note of that day: P pain, K the skin
 * of finger 3, W a sore wrist, Q a question, L a later stage asked for.
 */
#ifndef EVENHAND_TESTS_CLASS_MADE_H
#define EVENHAND_TESTS_CLASS_MADE_H

#include "../coach/made.h"
#include "evenhand/base/text.h"
#include "evenhand/coach/student.h"

enum { CLASS_SIZE = 25, CLASS_DAYS = 28, CLASS_TODAY = FIRST_DAY + 27 };

static const struct class_made {
	const char *initials;
	int stage;
	const char *days; /* the last one is today */
	int given;	  /* days ago the record was written */
} class_made[CLASS_SIZE] = {
	{ "W. P.", TONE, "xxx.xx.xxxx.xx.xxx.xx.xsxPs.", 1 },
	{ "K. O.", WIDE, "sssssssss.sssssssss.ssss.sss", 1 },
	{ "B. L.", WIDE, "......................xxx.xx", 0 },
	{ "M. T.", SEMITONE, "ttt.ttt.ttt.ttt.ttt.ttt.tt..", 0 },
	{ "A. R.", THIRDS, "xx.xx.xx.xx.xx.xx.xx........", 1 },
	{ "J. H.", THIRDS, "xxx.xx.xxx.xx.xxx.x.xxLxxLx.", 1 },
	{ "S. N.", TONE, "xx.xxx.xx.xxx.xx.xx.xx.xxKx.", 0 },
	{ "D. V.", TONE, "............................", 2 },
	{ "C. F.", LETTING_GO, "ttt.ttt.ttt.ttt.ttt.ttt.xx..", 1 },
	{ "E. G.", THIRDS, "xx.xxx.xx.xxx.xx.xxx.xbb.b..", 1 },
	{ "N. A.", AIR, "....................xx.xx.xx", 0 },
	{ "O. I.", WIDE, "xxx.xxxQ.xx.xxx.xxx.xx.x.xx.", 1 },
	{ "L. U.", WIDE, "x...x....x....x......x....x.", 1 },
	{ "T. E.", TONE, "xx.xx.xx.xxxx.x.xxx.", 8 },
	{ "H. J.", TONE, "P.xx.xx.xx.xxx.xx.Pxx.xx.xx.", 1 },
	{ "F. B.", SEMITONE, "xx.xx.xxx.xx.xxx.xx.xx.xxxQ.", 0 },
	{ "G. C.", WIDE, "..............xxx.xx.xxx.xx.", 1 },
	{ "I. D.", THIRDS, ".......xxx.xx.xxx.xx.xxx.xx.", 1 },
	{ "P. K.", TONE, ".....xxx.xx.xxx.xx.xxx.xx.x.", 0 },
	{ "R. M.", TONE, "..xx.xx.xxx.xxx.xx.xxx.xx.x.", 1 },
	{ "U. S.", WIDE, "......xxx.xx.xxx.xx.xx.xx.x.", 1 },
	{ "V. W.", THIRDS, "....xx.xx.xxx.xx.xx.xxx.xxx.", 1 },
	{ "Y. Z.", TONE, "........xx.xx.xxx.xx.xx.xx.x", 0 },
	{ "A. R.", WIDE, "...................xxxW.xxx.", 1 },
	{ "Z. Q.", SEMITONE, "xx.xx.xx.xx.xx.xx.xx.xx.xx.x", 0 },
};

static inline enum mark class_mark(
    void *context, int stage, int unit, int round)
{
	char day = *(const char *)context;

	(void)stage, (void)round;
	if (day == 'b')
		return MARK_SHAKY;
	return day == 's' && unit == 3 ? MARK_SHAKY : MARK_CLEAN;
}

static inline void class_note(struct past *p, char letter, int day)
{
	switch (letter) {
	case 'P':
		past_note(p, day, NOTE_PAIN, 0);
		p->note[p->h.notes - 1].words = "thumb";
		break;
	case 'K':
		past_note(p, day, NOTE_SKIN, 3);
		break;
	case 'W':
		past_note(p, day, NOTE_SORE, 0);
		p->note[p->h.notes - 1].words = "wrist";
		break;
	case 'L':
		past_note(p, day, NOTE_LATER, 0);
		break;
	case 'Q':
		past_note(p, day, NOTE_QUESTION, 0);
		p->note[p->h.notes - 1].words =
		    "May the thumb leave the neck when I go up?";
		break;
	default:
		break;
	}
}

/* All that one of them practised. */
static inline void class_past_of(
    struct past *p, const struct routine *r, const struct class_made *made)
{
	static struct plan plan;
	int days = (int)strlen(made->days);

	for (int i = 0; i < days; i++) {
		char letter = made->days[i], mark = letter;
		int day = CLASS_TODAY - (CLASS_DAYS - 1) + i;

		if (letter == '.')
			continue;
		made_plan(&plan, r, p, made_moment(day, 17));
		for (int b = 0; b < plan.blocks; b++)
			if (letter == 't' && plan.block[b].kind == BLOCK_WORK)
				plan.block[b].pulses = 8;
		past_play(p, r, &plan, class_mark, &mark, PLAY_ALL,
		    letter == 'P' ? ENDED_PAIN : ENDED_WHOLE);
		class_note(p, letter, day);
	}
}

/* The facts of them all, in the order of the table. */
static inline void class_make(struct student *student)
{
	for (int i = 0; i < CLASS_SIZE; i++) {
		const struct class_made *made = &class_made[i];
		struct routine r = programme_cello(made->stage);
		struct past *p = past_new();
		struct student *s = &student[i];
		struct text id, initials;

		class_past_of(p, &r, made);
		student_of(s, &r, &p->h, CLASS_TODAY);
		s->given = CLASS_TODAY - made->given;
		id = text_in(s->id, sizeof(s->id));
		text_format(&id, "%04x%028x", 0x3a1f + i * 2654, i);
		initials = text_in(s->initials, sizeof(s->initials));
		text_add(&initials, made->initials);
		free(p);
	}
}

#endif
