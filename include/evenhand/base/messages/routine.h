/* routine.h - sentences of routine; see ../message_list.h */

/* --- slips: the whole file --- */
MESSAGE(M_ROUTINE_TOO_BIG, "w",
    "this file is larger than {0} KB. A routine is a small text file; this is "
    "something else")
MESSAGE(M_ROUTINE_DOCUMENT, "",
    "this is a word-processor document. Save it as plain text, UTF-8")
MESSAGE(M_ROUTINE_PICTURE, "",
    "this is a picture. A routine is a text file")
MESSAGE(M_ROUTINE_UTF16, "",
    "this text is saved as UTF-16. Save it as plain text, UTF-8")
MESSAGE(M_ROUTINE_NOT_UTF8, "",
    "the letter here is not written in UTF-8. Save the file as plain text, "
    "UTF-8")
MESSAGE(M_ROUTINE_CONTROL, "",
    "an invisible control character stands here. Remove it")
MESSAGE(M_ROUTINE_EMPTY, "",
    "this file is empty. To begin with one that works: evenhand new FILE")

/* --- slips: lines --- */
MESSAGE(M_ROUTINE_TAB, "",
    "this line begins with a Tab. Use spaces: two for each step inwards")
MESSAGE(M_ROUTINE_ODD_SPACE, "",
    "the space at the beginning of this line is not a plain one. Remove it "
    "and use the space bar: two spaces for each step inwards")
MESSAGE(M_ROUTINE_NO_SPACE, "tt", "leave a space after the colon: {0}: {1}")
MESSAGE(M_ROUTINE_NO_DASH_SPACE, "t", "leave a space after the dash: - {0}")
MESSAGE(M_ROUTINE_DASH_HERE, "t",
    "a list with dashes begins on a line of its own, below \"{0}:\"")
MESSAGE(M_ROUTINE_NO_COLON, "",
    "there is no colon in this line. Write the word, a colon, a space and "
    "what belongs to it, for example bow_seconds: 4")
MESSAGE(M_ROUTINE_GO_ON, "",
    "if these words go on from the line above, begin them two spaces further "
    "in. If not, a word and a colon are missing before them")
MESSAGE(M_ROUTINE_WIDE_COLON, "",
    "this colon is a wide sign of another script. Write a plain colon and a "
    "space")
MESSAGE(M_ROUTINE_BULLET, "t",
    "a list has a plain dash and a space before each of its parts: - {0}")
MESSAGE(M_ROUTINE_FENCE, "",
    "this line of back-ticks is no part of a routine. Remove it")
MESSAGE(M_ROUTINE_SECOND_COLON, "tt",
    "there is a second colon in this line. Put quotation marks round the "
    "words: {0}: {1}")
MESSAGE(M_ROUTINE_ITEM_COLON, "t",
    "there is a colon in these words. Put quotation marks round them: {0}")
MESSAGE(M_ROUTINE_TWO_KEYS, "t",
    "\"{0}:\" begins something new. Put it on a line of its own")
MESSAGE(M_ROUTINE_NO_COMMA, "t",
    "a comma is missing before \"{0}:\"")
MESSAGE(M_ROUTINE_COLON_HERE, "t",
    "a colon and a space are missing behind \"{0}\"")
MESSAGE(M_ROUTINE_COMMA_HERE, "", "a comma is missing before this")
MESSAGE(M_ROUTINE_COMMA_TOO_MANY, "",
    "nothing stands before this comma. Remove it")
MESSAGE(M_ROUTINE_TOO_FAR_IN, "",
    "this line stands further in than the one above it. Begin both at the "
    "same place, or put quotation marks round words that hold a colon")
MESSAGE(M_ROUTINE_DASH_TOO_FAR, "",
    "the dash here would become part of the words above it. Begin all dashes "
    "of a list at the same place, or leave this one out")
MESSAGE(M_ROUTINE_OPEN_BRACKET, "tt",
    "a {0} was opened here and not closed. End it with {1}")
MESSAGE(M_ROUTINE_STRAY_BRACKET, "tt",
    "a {0} stands here, but no {1} was opened before it. Remove it")
MESSAGE(M_ROUTINE_OPEN_QUOTE, "",
    "a quotation mark was opened here and never closed")
MESSAGE(M_ROUTINE_AFTER_QUOTE, "",
    "more words follow the closing quotation mark. Put the mark behind the "
    "last of them")
MESSAGE(M_ROUTINE_APOSTROPHE, "",
    "the apostrophe here ends the words between ' marks. Put \" marks round "
    "them instead")
MESSAGE(M_ROUTINE_CURLY, "",
    "this quotation mark is a curly one. Use the plain one of the keyboard, "
    "\", before and behind the words")
MESSAGE(M_ROUTINE_AFTER_BRACKET, "t",
    "something follows the closing {0}. Remove it, or put it on a line of its "
    "own")
MESSAGE(M_ROUTINE_SIGN, "",
    "words may not begin with * & ! % @ or a back-tick. Put quotation marks "
    "round them")
MESSAGE(M_ROUTINE_NOTE, "t",
    "everything after \" #\" is a private note, so the student would read only "
    "\"{0}\". Put quotation marks round it")
MESSAGE(M_ROUTINE_DEEP, "w",
    "more than {0} steps inwards. A routine needs no more than five")

/* --- what the YAML reader finds --- */
MESSAGE(M_ROUTINE_YAML_STEP, "",
    "this line does not stand straight under the others of its group. Lines "
    "that belong together begin at the same place")
MESSAGE(M_ROUTINE_NO_DASH, "",
    "a dash is missing before this, or it belongs further in: the parts of "
    "the list above begin with dashes in this column")
MESSAGE(M_ROUTINE_YAML_BROKEN, "",
    "this cannot be read here. Look for a colon, comma, bracket or quotation "
    "mark that is missing or too many, in this line and the one above")
MESSAGE(M_ROUTINE_YAML_ESCAPE, "",
    "a \\ in quotation marks begins a special sign, and this is none. Leave it "
    "out, or write it twice")
MESSAGE(M_ROUTINE_YAML_DOCUMENTS, "",
    "a second document begins here. Keep one in a file and remove this line "
    "of dashes")
MESSAGE(M_ROUTINE_NO_KEY, "",
    "one plain word is expected before the colon")
MESSAGE(M_ROUTINE_NO_MEMORY, "",
    "the computer has no memory left to read this file. Close other programs "
    "and start again")

/* --- keys and kinds --- */
MESSAGE(M_ROUTINE_KEY_UNKNOWN, "tt",
    "I do not know \"{0}\". The words that may stand here are {1}")
MESSAGE(M_ROUTINE_KEY_NEAR, "tt",
    "I do not know \"{0}\". Did you mean \"{1}\"?")
MESSAGE(M_ROUTINE_KEY_NEAR_ELSEWHERE, "ttt",
    "I do not know \"{0}\". Did you mean \"{1}\"? It belongs under \"{2}\"")
MESSAGE(M_ROUTINE_SMALL, "tt", "write \"{0}\" in small letters: {1}")
MESSAGE(M_ROUTINE_KEY_ELSEWHERE, "tt",
    "\"{0}\" does not belong here. Put it under \"{1}\"")
MESSAGE(M_ROUTINE_KEY_TOP, "t",
    "\"{0}\" does not belong here. Put it at the beginning of a line, not "
    "under anything")
MESSAGE(M_ROUTINE_KEY_ROUTINE_ONLY, "t",
    "\"{0}\" belongs in the routine, not in a homework file")
MESSAGE(M_ROUTINE_TWICE, "tw",
    "\"{0}\" is already on line {1}. Keep one of them")
MESSAGE(M_ROUTINE_NOT_A_MAP, "t",
    "lines of the form \"word: value\" are expected here, for example {0}")
MESSAGE(M_ROUTINE_FILE_NOT_A_MAP, "",
    "a routine begins with lines of the form \"word: value\", for example "
    "routine: From wide to still")
MESSAGE(M_ROUTINE_WANT_MAP, "tt",
    "what belongs to \"{0}\" stands in lines below it, two spaces further in, "
    "for example {1}")
MESSAGE(M_ROUTINE_WANT_LIST, "t",
    "\"{0}\" takes a list. Put [ ] round it, with commas between")
MESSAGE(M_ROUTINE_WANT_DASHES, "tt",
    "each part of \"{0}\" begins with a dash and a space, for example - {1}")
MESSAGE(M_ROUTINE_WANT_WORD, "t",
    "\"{0}\" takes one value, not a list or a group of lines")
MESSAGE(M_ROUTINE_ITEM_WORD, "t",
    "each part of \"{0}\" is one value. If words hold a colon, put quotation "
    "marks round them")
MESSAGE(M_ROUTINE_ITEM_COMMAS, "tt",
    "put commas between the parts of \"{0}\": [{1}]")
MESSAGE(M_ROUTINE_COMMA_WORDS, "tt",
    "inside { } a comma begins something new. Put quotation marks round words "
    "that hold one: {0}: \"{1}\"")
MESSAGE(M_ROUTINE_NOTHING, "t",
    "nothing stands after \"{0}:\". Write a value or remove the line")
MESSAGE(M_ROUTINE_ITEM_NOTHING, "t", "this part of \"{0}\" is empty. Remove it")
MESSAGE(M_ROUTINE_LIST_LONG, "tw", "\"{0}\" holds {1} at most")

/* --- values --- */
MESSAGE(M_ROUTINE_COMMA_HALF, "mt",
    "write {0} and a half as {1}, with a point")
MESSAGE(M_ROUTINE_COMMA, "tt", "write {0} as {1}, with a point")
MESSAGE(M_ROUTINE_NOT_WHOLE, "tt",
    "\"{0}\" is a whole number, and \"{1}\" is none")
MESSAGE(M_ROUTINE_NOT_NUMBER, "tt",
    "\"{0}\" is a number, and \"{1}\" is none")
MESSAGE(M_ROUTINE_CLOCK, "tt",
    "{0} looks like a time of day. Write a number with a point: {1}")
MESSAGE(M_ROUTINE_ZERO_FIRST, "tt", "write {0} without the zero: {1}")
MESSAGE(M_ROUTINE_UNIT, "tt", "write the number alone: {0}: {1}")
MESSAGE(M_ROUTINE_DECIMALS, "tt",
    "\"{0}\" has two digits behind the point at most, not {1}")
MESSAGE(M_ROUTINE_RANGE, "tfft", "\"{0}\" goes from {1} to {2}, not {3}")
MESSAGE(M_ROUTINE_CHOICE, "ttt",
    "\"{0}\" cannot be \"{1}\". Write one of: {2}")
MESSAGE(M_ROUTINE_YES_NO, "tt", "\"{0}\" is yes or no, not \"{1}\"")
MESSAGE(M_ROUTINE_TEXT_LONG, "tww",
    "\"{0}\" has {1} letters; {2} fit. Make it shorter")
MESSAGE(M_ROUTINE_BECAUSE_EMPTY, "",
    "because: must give a reason in words, for you and the next teacher")

/* --- the routine itself --- */
MESSAGE(M_ROUTINE_NO_NAME, "",
    "the routine has no name. Add a line such as routine: From wide to still")
MESSAGE(M_ROUTINE_RECORD, "",
    "this is a student's record and no routine. Put it into a folder and look "
    "at it with evenhand class FOLDER")
MESSAGE(M_ROUTINE_NO_STAGES, "",
    "the routine has no stages. Add stages: and below it at least one stage, "
    "beginning with - id:")

/* --- player --- */
MESSAGE(M_ROUTINE_LENGTH, "fmff",
    "{0} cm does not fit a {1}: its strings are {2} to {3} cm long from nut to "
    "bridge")
MESSAGE(M_ROUTINE_SIZE, "tm",
    "I know no string length of a {1} of size {0}. Measure from nut to bridge "
    "and write it as string_length_cm")
MESSAGE(M_ROUTINE_TUNING_NOTE, "t",
    "\"{0}\" is no note. Write a letter and the octave, for example D3, F#3 or "
    "Bb2")
MESSAGE(M_ROUTINE_TUNING_ORDER, "tt",
    "{0} is not lower than {1}. Name the strings from the highest to the "
    "lowest")

/* --- bowing --- */
MESSAGE(M_ROUTINE_PULSES_ODD, "w",
    "{0} pulses: the steps here are 4, 6 and 8. If {0} is meant, add because: "
    "\"...\"")
MESSAGE(M_ROUTINE_PULSES_RISE, "ww",
    "{1} pulses after {0}: write them from few to many, each once")
MESSAGE(M_ROUTINE_START_PULSES, "wt",
    "a stage cannot begin at {0} pulses: the steps here are {1}")
MESSAGE(M_ROUTINE_SPEED, "f",
    "the fingertip would travel at {0} metres a second; above 0.7 the hand "
    "tightens. Lengthen the bow or lower the pulses")

/* --- turns --- */
MESSAGE(M_ROUTINE_FINGER, "t",
    "\"{0}\" is no finger. Fingers are 1, 2, 3 and 4")
MESSAGE(M_ROUTINE_PAIR, "t",
    "\"{0}\" is no pair of fingers. Write two different ones with a dash "
    "between, such as 1-2; 0 is the open string")
MESSAGE(M_ROUTINE_STRINGS, "tt",
    "\"{0}\" is no pair of strings here. Write two different ones with a dash "
    "between; the strings are {1}")
MESSAGE(M_ROUTINE_UNIT_TWICE, "t",
    "{0} stands twice in the order. A round takes each once")
MESSAGE(M_ROUTINE_FINGER_LEFT, "w",
    "finger {0} never gets a turn. If that is meant, add because: \"...\"")
MESSAGE(M_ROUTINE_BASS_THREE, "",
    "on the double bass finger 3 helps finger 4 and takes no turn of its own. "
    "Remove it; if it is meant, add because: \"...\"")
MESSAGE(M_ROUTINE_NO_PAIRS, "",
    "say which pairs take turns, for example order: [0-1, 1-2]")
MESSAGE(M_ROUTINE_NO_STRINGS, "t",
    "say which strings take turns, for example order: [{0}]")

/* --- session --- */
MESSAGE(M_ROUTINE_LONG, "fm",
    "{0} minutes is {1} times the usual five and is where blisters and tired "
    "hands begin. If it is meant, add because: \"...\"; the first two weeks of "
    "a stage stay at 5")
MESSAGE(M_ROUTINE_LONG_PART, "ff",
    "{0} minutes is {1} times the usual five and is where blisters and tired "
    "hands begin. If it is meant, add because: \"...\"; the first two weeks of "
    "a stage stay at 5")
MESSAGE(M_ROUTINE_SHORT_AIR, "fc",
    "a session of {0} minutes cannot hold the air stage and one round. "
    "Shortest here: {1}")
MESSAGE(M_ROUTINE_SHORT, "fc",
    "a session of {0} minutes cannot hold one round. Shortest here: {1}")
MESSAGE(M_ROUTINE_SHORT_SWING, "fc",
    "{0} minutes cannot hold one swing in the air. Shortest here: {1}")
MESSAGE(M_ROUTINE_RECAP, "t",
    "\"most\" cannot be \"{0}\". Write half, third, two thirds, quarter, none "
    "or a part such as 2/5")
MESSAGE(M_ROUTINE_ALL_CLEAN, "t",
    "\"all_clean\" cannot be \"{0}\". Write how many of how many days, such as 2 "
    "of 3 (at most 9 of 9)")

/* --- stages --- */
MESSAGE(M_ROUTINE_NO_ID, "",
    "this stage has no id. Give it a short name of its own, for example id: "
    "wide")
MESSAGE(M_ROUTINE_ID, "tw",
    "\"{0}\" is no id: use small letters, digits and -, at most {1} of them")
MESSAGE(M_ROUTINE_ID_TWICE, "tw",
    "the id \"{0}\" is already used on line {1}. Histories would mix")
MESSAGE(M_ROUTINE_WAS_THERE, "tw",
    "\"{0}\" is still the id of the stage on line {1}. was: names an id that is "
    "gone")
MESSAGE(M_ROUTINE_WAS_TWICE, "tw",
    "the stage on line {1} already says was: {0}. Histories would mix")
MESSAGE(M_ROUTINE_AIR_FIRST, "",
    "only the first stage can be in the air: it begins every session")
MESSAGE(M_ROUTINE_AIR_KEY, "t",
    "in the air there is no string and no bow, so \"{0}\" means nothing here. "
    "Remove it")
MESSAGE(M_ROUTINE_NO_PLACE, "",
    "say where this stage is played: place: in the air, or for example place: "
    "string D")
MESSAGE(M_ROUTINE_PLACE, "t",
    "\"{0}\" is no place. Write in the air, or string and its letter, such as "
    "string D")
MESSAGE(M_ROUTINE_NO_STRING, "tmt",
    "there is no string {0} on this {1}. Its strings are {2}")
MESSAGE(M_ROUTINE_NO_TRAVEL, "",
    "say how far apart the two notes are, for example travel: tone, or shift: "
    "first to third")
MESSAGE(M_ROUTINE_TRAVEL, "t",
    "\"{0}\" is no distance. Write tone, semitone, quarter tone or a number of "
    "semitones")
MESSAGE(M_ROUTINE_SHIFT, "t",
    "\"{0}\" is no shift. Write two positions, such as first to fourth")
MESSAGE(M_ROUTINE_POSITION, "t",
    "I do not know the position \"{0}\". Write half, first, third or fourth, a "
    "note such as F, or give travel in semitones instead")
MESSAGE(M_ROUTINE_SECOND_CELLO, "",
    "second position is F or F sharp on the D string, by different schools. "
    "Write the note of finger 1 instead, such as first to F#, or travel in "
    "semitones")
MESSAGE(M_ROUTINE_SECOND, "",
    "schools do not agree where second position is. Write the note of finger 1 "
    "instead, such as first to F#, or travel in semitones")
MESSAGE(M_ROUTINE_SHIFT_DOWN, "t",
    "\"{0}\" does not go up. Write the lower place first")
MESSAGE(M_ROUTINE_SHIFT_TRAVEL, "tff",
    "{0} position is {1} semitones, but travel says {2}. Remove one")
MESSAGE(M_ROUTINE_NOTES_TRAVEL, "tff",
    "{0} is {1} semitones, but travel says {2}. Remove one")
MESSAGE(M_ROUTINE_MOTION_STRINGS, "",
    "strings take the turns here, so every stage is motion: string crossing")
MESSAGE(M_ROUTINE_MOTION_PAIRS, "",
    "pairs of fingers take the turns here, so every stage is motion: finger "
    "drop")
MESSAGE(M_ROUTINE_MOTION_FINGERS, "",
    "a string crossing needs strings that take turns: write take: strings")
MESSAGE(M_ROUTINE_DROP_KEY, "t",
    "a finger drop has no way along the string, so \"{0}\" means nothing here. "
    "Remove it")
MESSAGE(M_ROUTINE_CROSSING_KEY, "t",
    "in a string crossing the strings take turns, so \"{0}\" means nothing "
    "here. Remove it")
MESSAGE(M_ROUTINE_CUE, "ww",
    "{0} characters with the spaces; {1} fit in letters that can be read from "
    "two metres")

/* --- homework --- */
MESSAGE(M_ROUTINE_STAGE_UNKNOWN, "t", "no stage has the id \"{0}\"")
MESSAGE(M_ROUTINE_STAGE_NEAR, "tt",
    "no stage has the id \"{0}\". Did you mean \"{1}\"?")
MESSAGE(M_ROUTINE_STAGE_WAS, "tt",
    "the stage \"{0}\" is called \"{1}\" now. Write that")
MESSAGE(M_ROUTINE_BEYOND, "tt",
    "work_on is \"{0}\", but the student may go no further than \"{1}\"")
MESSAGE(M_ROUTINE_SO_FAR_COUNT, "ww",
    "turns_so_far has {0} {0|number|numbers}, but {1} take turns. Write one "
    "for each, in their order")
MESSAGE(M_ROUTINE_SO_FAR_WHY, "",
    "turns_so_far is only used with make_up: catch_up. Add that to the "
    "routine, or remove this line")
MESSAGE(M_ROUTINE_DATE, "t",
    "\"{0}\" is no date. Write year, month and day, for example 2026-03-02")
MESSAGE(M_ROUTINE_NO_DATE, "",
    "this lesson mark has no date. Add date: and the day, for example "
    "2026-03-02")
MESSAGE(M_ROUTINE_MARK_NO_STAGE, "",
    "this lesson mark has no stage. Add stage: and the id of a stage")
MESSAGE(M_ROUTINE_MARK_EMPTY, "",
    "this lesson mark says neither clean nor shaky. Add what you saw, for "
    "example clean: [1, 2]")
MESSAGE(M_ROUTINE_MARK_UNIT, "tt",
    "\"{0}\" takes no turns here. Those who do: {1}")
MESSAGE(M_ROUTINE_MARK_BOTH, "t",
    "{0} cannot be clean and shaky on one day. Keep one of them")
MESSAGE(M_ROUTINE_MARK_TWICE, "t",
    "{0} stands twice in this list. Keep one")
MESSAGE(M_ROUTINE_MARK_AIR, "",
    "in the air there are no fingers. Write clean: [1] for a clean swing or "
    "shaky: [1] for a shaky one")

/* --- homework files --- */
MESSAGE(M_ROUTINE_NO_HOMEWORK_FOR, "",
    "say whose homework this is, for example homework_for: W.")
MESSAGE(M_ROUTINE_NO_ROUTINE_NAME, "",
    "name the routine of this homework, a file in the same folder, for "
    "example routine: cello.yaml")
MESSAGE(M_ROUTINE_NAME_PATH, "t",
    "\"{0}\" names a folder. Write the name of a file in the same folder as "
    "this one, and nothing before it")
MESSAGE(M_ROUTINE_HOMEWORK_OF, "t",
    "{0} is a homework file itself. Name the routine")
MESSAGE(M_ROUTINE_GONE, "t",
    "there is no file called \"{0}\" in this folder")
MESSAGE(M_ROUTINE_UNREAD, "t",
    "the routine \"{0}\" in this folder cannot be opened")

/* --- number words inside sentences --- */
MESSAGE(M_ROUTINE_1, "", "one")
MESSAGE(M_ROUTINE_2, "", "two")
MESSAGE(M_ROUTINE_3, "", "three")
MESSAGE(M_ROUTINE_4, "", "four")
MESSAGE(M_ROUTINE_5, "", "five")
MESSAGE(M_ROUTINE_6, "", "six")
MESSAGE(M_ROUTINE_7, "", "seven")
MESSAGE(M_ROUTINE_8, "", "eight")
MESSAGE(M_ROUTINE_9, "", "nine")
MESSAGE(M_ROUTINE_10, "", "ten")
MESSAGE(M_ROUTINE_11, "", "eleven")
MESSAGE(M_ROUTINE_12, "", "twelve")
