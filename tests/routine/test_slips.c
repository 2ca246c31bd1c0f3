/*
 * No false alarms: what is good YAML and good sense passes, however it is
 * written, and the scan agrees with the YAML reader about it.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "sheet.h"

static struct faults faults;

#define NEXT "  - id: next\n    place: string D\n    travel: tone\n"

/* Each stands behind the last stage of a routine. */
static const char *const good_lines[] = {
	"    title: \"Week 2: thirds\"\n",
	"    title: 'Week 2: thirds'\n",
	"    title: \"finger #2\"\n",
	"    title: 'It''s light'\n",
	"    title: It's light\n",
	"    title: \"a \\\"free\\\" hand\"\n",
	"    title: At 3:30, twice\n",
	"    title: Ratio 1:2\n",
	"    title: see http://example.org/a#b\n",
	"    title: C# and F#\n",
	"    title: Wide   # a note\n",
	"    title: Wide # a note\n",
	"    title: Wide   #a note\n",
	"    title: Wide\t# a note\n",
	"    title:   Wide\n",
	"    title:\n      Wide\n",
	"    title:   # a note\n      Wide\n",
	"    title: a - b\n",
	"    title: a [b] {c}\n",
	"    title: \"[open\"\n",
	"    say: Let the slide sound. Arm weight\n      alone meets it.\n",
	"    say: Let the slide sound.\n      # a note\n",
	"    say: \"Let the slide: sound. Arm weight\n      alone # meets.\"\n",
	"    say: |\n      Let it: sound.\n\n      - \"More #2 [words\n",
	"    say: >-\n      *Let* it\n      sound.\n    cue: FREE\n",
	("    check: [Round hand,\n      Elbow off,   # a note\n\n"
	 "      \"Thumb: weightless\"]\n"),
	"    check: [\n      Round hand,\n      Elbow off\n    ]\n",
	"    check: [Round hand, 'Thumb, free',]\n",
	"    check:\n    - Round hand\n    - Elbow off\n",
	"    check:\n      - Round hand with a window\n        under it\n",
	"    check:\n      - \"Thumb: free\"\n      - 'finger #2'\n",
	"    check:\n      - At 3:30\n      -   Elbow off\n",
	"    check:\n      -\n        Round hand\n",
	"    check:\n      - |\n        Round: hand\n      - Elbow\n",
	"    \"check\": [Round hand]\n",
	"    cue : FREE\n",
	"    'cue' : FREE\n",
	"    feel: [Could you talk while you do it?]\n",
	"    check: [\"Tip at rest, forearm swinging\"]\n",
	"    title: A \u201cwide\u201d swing\n",
	"    title: \"\u201cWide\u201d\"\n",
	"    title: It\u2019s light \u2013 and free\n",
	"    title: Ratio 1\uff1a2\n",
	"    check:\n      - Round \u2022 hand\n      - Hand\uff1a round\n",
	"    check: [Round hand; Elbow off, Wrist quiet]\n",
	"    check: [\"Wide, loose\", 'Thumb, free']\n",
	"    say: |\n      \u201cFree\u201d\n      \u2022 one\n      ```\n",
	"    say: \"Let go\n      \u2022 now\"\n",
	"    say: Let go\n      \u2013 now\n",
	"    say:\n      cue [loose] and go\n",
	"    check: [a, b,]\n    cue: \"FREE\"\n",
	"  - id : last\n    place : string D\n    travel : tone\n",
	"\n\n# the end\n",
	"  # the end\n\n",
	"...\n",
};

static void test_good_lines(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof(good_lines) / sizeof(char *); i++) {
		char text[1000], said[500] = "";
		struct routine *r;

		strcpy(text, NAME STAGES NEXT);
		strcat(text, good_lines[i]);
		r = sheet_routine(text, NULL, &faults);
		if (faults.count > 0)
			fault_text(&faults.at[0], said, sizeof(said));
		if (r == NULL)
			print_error("%s%s\n", good_lines[i], said);
		assert_int_equal(faults.count, 0);
		assert_non_null(r);
		routine_free(r);
	}
}

/* The same routine in other ways of writing. */
static const char *const good_files[] = {
	NAME STAGES,
	"\xef\xbb\xbf" NAME STAGES,
	"routine: Short\r\nstages:\r\n  - id: air\r\n    place: in the air\r\n"
	"  - id: wide\r\n    place: string D\r\n    shift: first to fourth\r\n",
	"routine: Short\rstages:\r  - id: air\r    place: in the air\r"
	"  - id: wide\r    place: string D\r    shift: first to fourth\r",
	"---\n" NAME STAGES,
	"--- # a routine\n" NAME STAGES,
	"# a note\n\n" NAME STAGES,
	NAME "stages: [{id: air, place: in the air}, {id: wide,\n"
	     "  place: string D, shift: first to fourth}]\n",
	"{\"routine\": \"Short\", \"stages\": [\n"
	"{\"id\": \"air\", \"place\": \"in the air\"},\n"
	"{\"id\": \"wide\", \"place\": \"string D\",\n"
	"\"shift\": \"first to fourth\"}]}\n",
	"{\nroutine: Short,\nstages: [\n{id: air, place: in the air},\n"
	"{id: wide, place: string D, shift: first to fourth}\n]\n}\n",
	NAME "stages:\n- id: air\n  place: in the air\n- id: wide\n"
	     "  place: string D\n  shift: first to fourth",
	NAME "stages:\n  -\n    id: air\n    place: in the air\n  -\n"
	     "    id: wide\n    place: string D\n    shift: first to fourth\n",
	"routine:\n  Short\nstages:\n" AIR WIDE "    # the end",
};

static void test_good_files(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof(good_files) / sizeof(char *); i++) {
		char said[500] = "";
		struct routine *r = sheet_routine(good_files[i], NULL, &faults);

		if (faults.count > 0)
			fault_text(&faults.at[0], said, sizeof(said));
		if (r == NULL)
			print_error("%s%s\n", good_files[i], said);
		assert_non_null(r);
		assert_string_equal(r->name, "Short");
		assert_int_equal(r->stages, 2);
		assert_string_equal(r->stage[1].id, "wide");
		assert_int_equal(r->stage[1].travel_cents, 500);
		routine_free(r);
	}
}

/* Places count letters, not bytes, and lines as editors count them. */
static void test_places(void **state)
{
	static const struct {
		const char *text;
		int line, column;
	} cases[] = {
		{ NAME "written_by: \u00c4\u00f6\u00fc: x\n" STAGES, 2, 16 },
		{ "routine: Short\r\n\r\nwritten_by: a: x\r\n", 3, 14 },
		{ "routine: Short\r\rwritten_by: a: x\r", 3, 14 },
		{ "\xef\xbb\xbfroutine: a: b\n", 1, 11 },
		{ "\xef\xbb\xbfrutine: a\n" STAGES, 1, 1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		assert_null(sheet_routine(cases[i].text, NULL, &faults));
		assert_int_equal(faults.at[0].line, cases[i].line);
		assert_int_equal(faults.at[0].column, cases[i].column);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_good_lines),
		cmocka_unit_test(test_good_files),
		cmocka_unit_test(test_places),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
