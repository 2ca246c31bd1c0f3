/*
 * record_words.c - the words of the file for numbers of ours
 */
#include "words.h"

#include <stddef.h>

#include "evenhand/record/record.h"

const char *const record_blocks[] = {
	[BLOCK_AIR] = "air",
	[BLOCK_RECAP] = "recap",
	[BLOCK_WORK] = "work",
	NULL,
};

const char *const record_marks[] = {
	[MARK_NONE] = "none",
	[MARK_CLEAN] = "clean",
	[MARK_SHAKY] = "shaky",
	NULL,
};

const char *const record_hows[] = {
	[ENDED_UNDER_WAY] = "cut off",
	[ENDED_WHOLE] = "whole",
	[ENDED_CAP] = "cap",
	[ENDED_EARLY] = "early",
	[ENDED_PAIN] = "pain",
	[ENDED_NO_KEY] = "no key",
	[ENDED_INPUT] = "input",
	[ENDED_NOT_TODAY] = "not today",
	NULL,
};

const char *const record_kinds[] = {
	[0] = "pain",
	[NOTE_SKIN - NOTE_PAIN] = "skin",
	[NOTE_SORE - NOTE_PAIN] = "sore",
	[NOTE_QUESTION - NOTE_PAIN] = "question",
	[NOTE_LATER - NOTE_PAIN] = "later",
	NULL,
};

const char *const record_markings[] = {
	[MARKING_TURN] = "turn",
	[MARKING_ROUND] = "round",
	NULL,
};

const char *record_block_word(enum block_kind kind)
{
	return record_blocks[kind];
}

const char *record_how_word(enum ended how)
{
	return record_hows[how];
}

bool record_instrument_known(const char *name)
{
	for (int i = 0; i < INSTRUMENT_COUNT; i++)
		if (strcmp(instrument_name((enum instrument)i), name) == 0)
			return true;
	return *name == '\0';
}
