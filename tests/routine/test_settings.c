/*
 * Settings read and changed as text: every fault with its place, letter by
 * letter, and every edit byte by byte.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include <string.h>

#include "evenhand/routine/settings.h"
#include "evenhand/world/yaml.h"

enum { SAID_MAX = 4096 };

static struct faults faults;
static struct settings s;

/* Reads a text; the faults without the file's name, one a line. */
static void read_bytes(const char *bytes, size_t length, char *said)
{
	struct arena arena = { NULL, 0 };
	struct source file = { "settings.yaml", bytes, length, NULL };
	size_t used = 0;

	faults = (struct faults) { .count = 0 };
	settings_defaults(&s);
	if (slips_find(&file, &faults))
		file.root = yaml_parse(
		    file.path, bytes, length, &arena, &faults);
	settings_words(&faults, 0);
	if (file.root)
		settings_read(&s, &file, &faults);
	arena_done(&arena);
	faults_sort(&faults);
	said[0] = '\0';
	for (int i = 0; i < faults.count; i++) {
		struct fault f = faults.at[i];

		assert_string_equal(f.path, "settings.yaml");
		f.path = NULL;
		used += fault_text(&f, said + used, SAID_MAX - used - 1);
		said[used++] = '\n';
		said[used] = '\0';
	}
}

static void read_text(const char *text, char *said)
{
	read_bytes(text, strlen(text), said);
}

static void assert_defaults(enum setting but)
{
	struct settings usual;
	char one[SETTINGS_VALUE_MAX], two[SETTINGS_VALUE_MAX];

	settings_defaults(&usual);
	for (int i = 0; i < SETTINGS; i++) {
		struct text a = text_in(one, sizeof(one));
		struct text b = text_in(two, sizeof(two));

		if (i == (int)but)
			continue;
		settings_value(&a, &s, (enum setting)i);
		settings_value(&b, &usual, (enum setting)i);
		assert_string_equal(one, two);
		assert_false(settings_given(&s, (enum setting)i));
	}
}

static void test_defaults(void **state)
{
	char said[SAID_MAX];

	(void)state;
	settings_defaults(&s);
	assert_true(s.sound);
	assert_int_equal(s.loudness, 50);
	assert_string_equal(s.sound_card, "");
	assert_string_equal(s.sound_through, "");
	assert_false(s.mark_turns || s.lines || s.ascii || s.mirrored);
	assert_false(s.first_seen || s.listen);
	assert_string_equal(s.microphone, "");
	assert_int_equal(s.colours, COLOURS_AUTO);
	read_text("", said);
	assert_string_equal(said, "");
	assert_defaults(SETTINGS);
	read_text("# nothing yet\n\n", said);
	assert_string_equal(said, "");
	assert_defaults(SETTINGS);
}

static void test_all_said(void **state)
{
	char said[SAID_MAX];

	(void)state;
	read_text("sound: no\n"
		  "sound_card: \"USB \\\"Box\\\" C:\\\\2, #3\"\n"
		  "sound_through: ALSA\n"
		  "loudness: 0\n"
		  "listen: yes\n"
		  "microphone: \"desk: 2\"\n"
		  "marking: turn\n"
		  "colours: 256\n"
		  "lines: yes\n"
		  "ascii: yes\n"
		  "mirrored: yes\n"
		  "first_minutes_seen: yes\n",
	    said);
	assert_string_equal(said, "");
	assert_false(s.sound);
	assert_string_equal(s.sound_card, "USB \"Box\" C:\\2, #3");
	assert_string_equal(s.sound_through, "ALSA");
	assert_int_equal(s.loudness, 0);
	assert_true(s.listen);
	assert_string_equal(s.microphone, "desk: 2");
	assert_true(s.mark_turns && s.lines && s.ascii && s.mirrored);
	assert_true(s.first_seen);
	assert_int_equal(s.colours, COLOURS_256);
	assert_int_equal(s.given, (1 << SETTINGS) - 1);
	read_text("{marking: round, loudness: 100, colours: \"8\"}", said);
	assert_string_equal(said, "");
	assert_false(s.mark_turns);
	assert_true(settings_given(&s, SETTING_MARKING));
	assert_int_equal(s.loudness, 100);
	assert_int_equal(s.colours, COLOURS_8);
}

/* A text, what is said of it, and the setting that counts all the same. */
static const struct slip {
	const char *text, *said;
	enum setting counts;
} slips[] = {
	/* --- words --- */
	{ "loudnes: 40\n",
	    "1:1: I do not know \"loudnes\". Did you mean \"loudness\"?\n",
	    SETTINGS },
	{ "Marking: turn\n",
	    "1:1: write \"Marking\" in small letters: marking\n", SETTINGS },
	{ "sound-card: X\nlines: yes\n",
	    "1:1: I do not know \"sound-card\". Did you mean "
	    "\"sound_card\"?\n",
	    SETTING_LINES },
	{ "lines: yes\n  \nvolume: 4\n",
	    "3:1: I do not know \"volume\". The words that may stand here are "
	    "sound, sound_card, sound_through, loudness, listen, microphone, "
	    "marking, colours, lines, ascii, mirrored, first_minutes_seen\n",
	    SETTING_LINES },
	/* A word of routines is no word of settings. */
	{ "bow_hand: left\n",
	    "1:1: I do not know \"bow_hand\". The words that may stand here "
	    "are sound, sound_card, sound_through, loudness, listen, "
	    "microphone, marking, colours, lines, ascii, mirrored, "
	    "first_minutes_seen\n",
	    SETTINGS },
	{ "loudness: 40\n# no\nloudness: 50\n",
	    "3:1: \"loudness\" is already on line 1. Keep one of them\n",
	    SETTING_LOUDNESS },
	/* --- values --- */
	{ "loudness: 101\n", "1:11: \"loudness\" goes from 0 to 100, not 101\n",
	    SETTINGS },
	{ "loudness: -1\n", "1:11: \"loudness\" goes from 0 to 100, not -1\n",
	    SETTINGS },
	{ "loudness: 40.5\n",
	    "1:11: \"loudness\" is a whole number, and \"40.5\" is none\n",
	    SETTINGS },
	{ "loudness: 4,5\n",
	    "1:11: write four and a half as 4.5, with a point\n", SETTINGS },
	{ "loudness: 40 %\n", "1:11: write the number alone: loudness: 40\n",
	    SETTINGS },
	{ "loudness: 040\n", "1:11: write 040 without the zero: 40\n",
	    SETTINGS },
	{ "loudness: quiet\n",
	    "1:11: \"loudness\" is a number, and \"quiet\" is none\n",
	    SETTINGS },
	{ "loudness:\n",
	    "1:1: nothing stands after \"loudness:\". Write a value or remove "
	    "the line\n",
	    SETTINGS },
	{ "marking: turns\n",
	    "1:10: \"marking\" cannot be \"turns\". Write one of: turn, "
	    "round\n",
	    SETTINGS },
	{ "marking: Turn\n", "1:10: write \"Turn\" in small letters: turn\n",
	    SETTINGS },
	{ "marking: [turn]\n",
	    "1:10: \"marking\" takes one value, not a list or a group of "
	    "lines\n",
	    SETTINGS },
	{ "colours: 16\n",
	    "1:10: \"colours\" cannot be \"16\". Write one of: auto, none, 8, "
	    "256\n",
	    SETTINGS },
	{ "lines: true\nascii: yes\n",
	    "1:8: \"lines\" is yes or no, not \"true\"\n", SETTING_ASCII },
	{ "sound: off\n", "1:8: \"sound\" is yes or no, not \"off\"\n",
	    SETTINGS },
	{ "ascii: Yes\n", "1:8: \"ascii\" is yes or no, not \"Yes\"\n",
	    SETTINGS },
	{ "mirrored: left\n", "1:11: \"mirrored\" is yes or no, not \"left\"\n",
	    SETTINGS },
	{ "first_minutes_seen: 1\n",
	    "1:21: \"first_minutes_seen\" is yes or no, not \"1\"\n",
	    SETTINGS },
	{ "sound_card: USB #2\n",
	    "1:17: everything after \" #\" is a private note, so only \"USB\" "
	    "is read. Put quotation marks round it\n",
	    SETTING_SOUND_CARD },
	{ "sound_through: \"two\\nlines\"\n",
	    "1:16: an invisible control character stands here. Remove it\n",
	    SETTINGS },
	/* --- the file --- */
	{ "- loudness\n",
	    "1:1: lines of the form \"word: value\" are expected here, for "
	    "example loudness: 50\n",
	    SETTINGS },
	{ "lines: yes\nascii\n",
	    "2:1: there is no colon in this line. Write the word, a colon, a "
	    "space and what belongs to it, for example loudness: 50\n",
	    SETTINGS },
	{ "loudness:50\n", "1:9: leave a space after the colon: loudness: 50\n",
	    SETTINGS },
	{ "\tloudness: 50\n",
	    "1:1: this line begins with a Tab. Use spaces: two for each step "
	    "inwards\n",
	    SETTINGS },
	{ "sound_card: \"USB\n",
	    "1:13: a quotation mark was opened here and never closed\n",
	    SETTINGS },
	{ "sound_card: USB: the red one\n",
	    "1:16: there is a second colon in this line. Put quotation marks "
	    "round the words: sound_card: \"USB: the red one\"\n",
	    SETTINGS },
	{ "sound_card: *USB\n",
	    "1:13: words may not begin with * & ! % @ or a back-tick. Put "
	    "quotation marks round them\n",
	    SETTINGS },
	{ "lines: yes\n```\n",
	    "2:1: this line of back-ticks is no part of the settings. Remove "
	    "it\n",
	    SETTINGS },
	{ "lines: [[[[[[[[no]]]]]]]]\n",
	    "1:15: more than 8 steps inwards. Settings need none: every word "
	    "begins a line\n",
	    SETTINGS },
	{ "\x89PNG\r\n",
	    "1:1: this is a picture. The settings are a text file\n",
	    SETTINGS },
	{ "ascii: yes\n---\nlines: yes\n",
	    "2:1: a second document begins here. Keep one in a file and "
	    "remove this line of dashes\n",
	    SETTINGS },
	/* --- several, in one pass --- */
	{ "loudness: loud\nmarking: both\nlinse: yes\nascii: yes\n",
	    "1:11: \"loudness\" is a number, and \"loud\" is none\n"
	    "2:10: \"marking\" cannot be \"both\". Write one of: turn, round\n"
	    "3:1: I do not know \"linse\". Did you mean \"lines\"?\n",
	    SETTING_ASCII },
};

static void test_faults(void **state)
{
	int bad = 0;

	(void)state;
	for (size_t i = 0; i < sizeof(slips) / sizeof(slips[0]); i++) {
		char said[SAID_MAX];

		read_text(slips[i].text, said);
		if (strcmp(said, slips[i].said) != 0) {
			print_error("%swanted: %ssaid:   %s\n", slips[i].text,
			    slips[i].said, said);
			bad++;
		}
		assert_defaults(slips[i].counts);
		if (slips[i].counts != SETTINGS)
			assert_true(settings_given(&s, slips[i].counts));
	}
	assert_int_equal(bad, 0);
}

/* As many bytes as fit, and one more. */
static void test_long_name(void **state)
{
	char text[400], said[SAID_MAX], name[SETTINGS_CARD_MAX + 1];

	(void)state;
	memset(name, 'x', sizeof(name));
	name[SETTINGS_CARD_MAX - 1] = '\0';
	snprintf(text, sizeof(text), "sound_card: %s\n", name);
	read_text(text, said);
	assert_string_equal(said, "");
	assert_string_equal(s.sound_card, name);
	snprintf(text, sizeof(text), "sound_card: %sx\n", name);
	read_text(text, said);
	assert_string_equal(
	    said, "1:13: \"sound_card\" has 127 letters at most\n");
	assert_string_equal(s.sound_card, "");
}

/* No name can be said outright; nothing at all is a slip. */
static void test_no_name(void **state)
{
	char said[SAID_MAX];

	(void)state;
	read_text("sound_through: \"\"\n", said);
	assert_string_equal(said, "");
	assert_true(settings_given(&s, SETTING_SOUND_THROUGH));
	assert_string_equal(s.sound_through, "");
	read_text("sound_through:\n", said);
	assert_string_not_equal(said, "");
	assert_false(settings_given(&s, SETTING_SOUND_THROUGH));
}

/* --- edits --- */

static void edit(const char *text, enum setting what, const char *wanted)
{
	struct arena arena = { NULL, 0 };
	struct source file = { "settings.yaml", text, strlen(text), NULL };
	char bytes[1000], said[SAID_MAX];
	struct text out = text_in(bytes, sizeof(bytes));
	struct settings want;

	settings_defaults(&want);
	want.mark_turns = want.lines = true;
	want.loudness = 35;
	memcpy(want.sound_card, "A \"B\" \\", 8);
	faults = (struct faults) { .count = 0 };
	file.root = yaml_parse(file.path, text, file.length, &arena, &faults);
	assert_non_null(file.root);
	if (wanted == NULL) {
		assert_false(settings_edit(&out, &file, &want, what));
	} else {
		assert_true(settings_edit(&out, &file, &want, what));
		assert_string_equal(bytes, wanted);
		read_text(bytes, said);
		assert_true(settings_given(&s, what));
		assert_int_equal(s.mark_turns, what == SETTING_MARKING);
	}
	arena_done(&arena);
}

static void test_edits(void **state)
{
	enum setting m = SETTING_MARKING;

	(void)state;
	/* in its place, whatever stands round it */
	edit("marking: round\n", m, "marking: turn\n");
	edit("marking:   round   # new pedals\n", m,
	    "marking:   turn   # new pedals\n");
	edit("# a\nzzz: 1\n\nmarking: 'round'\nlines: no # b", m,
	    "# a\nzzz: 1\n\nmarking: turn\nlines: no # b");
	edit("\"marking\": \"ro\\x75nd\"\n", m, "\"marking\": turn\n");
	edit("{lines: no, marking: round, ascii: no}\n", m,
	    "{lines: no, marking: turn, ascii: no}\n");
	edit("marking:\nlines: no\n", m, "marking: turn\nlines: no\n");
	edit("marking: # none\n", m, "marking: turn # none\n");
	edit("marking: 'it''s'\n", m, "marking: turn\n");
	edit("sound_card: \"\xc3\xa9\xc3\xa9\"  # \xc3\xa9\r\nmarking: x\r\n",
	    m,
	    "sound_card: \"\xc3\xa9\xc3\xa9\"  # \xc3\xa9\r\nmarking: "
	    "turn\r\n");
	edit("\xef\xbb\xbfmarking: round\n", m, "\xef\xbb\xbfmarking: turn\n");
	edit("loudness: 100 # a\n", SETTING_LOUDNESS, "loudness: 35 # a\n");
	edit("sound_card: plain name\n", SETTING_SOUND_CARD,
	    "sound_card: \"A \\\"B\\\" \\\\\"\n");
	edit("sound_card: \"say \\\"so\\\" # not\" # b\n", SETTING_SOUND_CARD,
	    "sound_card: \"A \\\"B\\\" \\\\\" # b\n");
	/* behind the last line */
	edit("lines: no\n", m, "lines: no\nmarking: turn\n");
	edit("lines: no", m, "lines: no\nmarking: turn\n");
	edit("lines: no\r\n# end\r\n", m,
	    "lines: no\r\n# end\r\nmarking: turn\r\n");
	edit("  lines: no\n  ascii: no\n", m,
	    "  lines: no\n  ascii: no\n  marking: turn\n");
	edit("# only a note\n", m, "# only a note\nmarking: turn\n");
	edit("", m, "marking: turn\n");
	edit("{}", m, "{marking: turn}");
	edit("{lines: no}\n", m, "{marking: turn, lines: no}\n");
	/* better left alone */
	edit("marking: [round]\n", m, NULL);
	edit("marking: {a: b}\n", m, NULL);
	edit("marking: >\n  round\n", m, NULL);
	edit("marking: \"ro\\\n  und\"\n", m, NULL);
	edit("marking: one\n  two\n", m, NULL);
	edit("- marking\n", m, NULL);
}

static void test_head(void **state)
{
	char bytes[SAID_MAX], said[SAID_MAX];
	struct text out = text_in(bytes, sizeof(bytes));

	(void)state;
	settings_head(&out);
	assert_true(out.length > 10 && bytes[0] == '#');
	read_text(bytes, said);
	assert_string_equal(said, "");
	assert_defaults(SETTINGS);
}

/* --- the manual --- */

/* The next line of the section on settings, without its end; or NULL. */
static char *manual_line(FILE *manual, char *line, int size, bool *inside)
{
	while (fgets(line, size, manual) != NULL) {
		line[strcspn(line, "\n")] = '\0';
		if (strncmp(line, ".Sh ", 4) == 0)
			*inside = strcmp(line, ".Sh SETTINGS") == 0;
		if (*inside)
			return line;
	}
	return NULL;
}

/* An example as it is typed. */
static void typed(char *to, size_t size, const char *from)
{
	struct text t = text_in(to, size);

	for (const char *at = from; *at; at++) {
		bool mark = strncmp(at, "\\(dq", 4) == 0;

		text_add_bytes(&t, mark ? "\"" : at, 1);
		at += mark ? 3 : 0;
	}
	text_add(&t, "\n");
}

/* It has every word in this order, no other, and each example reads well. */
static void test_manual(void **state)
{
	FILE *manual = fopen("man/evenhand.1", "r");
	char line[1000], example[1000], said[SAID_MAX];
	int words = 0, examples = 0;
	bool inside = false;

	(void)state;
	assert_non_null(manual);
	while (manual_line(manual, line, sizeof(line), &inside)) {
		if (strncmp(line, ".It Li ", 7) == 0) {
			assert_true(words < SETTINGS);
			assert_string_equal(
			    line + 7, settings_key((enum setting)words++));
		}
		if (strncmp(line, ".Dl ", 4) != 0)
			continue;
		typed(example, sizeof(example), line + 4);
		read_text(example, said);
		assert_string_equal(said, "");
		assert_int_equal(s.given, 1 << examples++);
	}
	fclose(manual);
	assert_int_equal(words, SETTINGS);
	assert_int_equal(examples, SETTINGS);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_defaults),
		cmocka_unit_test(test_all_said),
		cmocka_unit_test(test_faults),
		cmocka_unit_test(test_long_name),
		cmocka_unit_test(test_no_name),
		cmocka_unit_test(test_edits),
		cmocka_unit_test(test_head),
		cmocka_unit_test(test_manual),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
