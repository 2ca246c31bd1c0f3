/* record.h - sentences of records given and gathered; see ../message_list.h */

/* --- the file as a whole --- */
MESSAGE(M_RECORD_NOT_RECORD, "",
    "this is not a practice record: its first words are not "
    "\"evenhand_record: 1\"")
MESSAGE(M_RECORD_NEWER, "tw",
    "this record was written by a newer evenhand, in format {0}. This one "
    "reads formats up to {1}: get the newer evenhand")
MESSAGE(M_RECORD_DEEP, "w",
    "more than {0} steps inwards. No record goes so deep")
MESSAGE(M_RECORD_MUCH, "", "there is more here than any record holds")
MESSAGE(M_RECORD_CONTROL, "",
    "an invisible control character stands here. No record holds one")
MESSAGE(M_RECORD_NOT_UTF8, "",
    "the letter here is not written in UTF-8. No record holds one")
MESSAGE(M_RECORD_LONG_LINE, "w",
    "this line has more than {0} bytes. No record holds such a line")
MESSAGE(M_RECORD_TOO_MANY, "tw",
    "\"{0}\" holds more than {1} entries. No record does")
MESSAGE(M_RECORD_NO_MEMORY, "",
    "the computer has no memory left for this record. Close other programs "
    "and start again")

/* --- keys and kinds --- */
MESSAGE(M_RECORD_KEY, "t", "a record has no \"{0}\" here")
MESSAGE(M_RECORD_TWICE, "tw", "\"{0}\" is already on line {1}")
MESSAGE(M_RECORD_AGAIN, "t", "\"{0}\" stands here for the second time")
MESSAGE(M_RECORD_MISSING, "t", "\"{0}\" is missing here")
MESSAGE(M_RECORD_WANT_MAP, "t", "\"{0}\" is followed by words with colons")
MESSAGE(M_RECORD_WANT_LIST, "t", "\"{0}\" is followed by a list")
MESSAGE(M_RECORD_WANT_WORD, "t", "\"{0}\" is followed by one word")
MESSAGE(M_RECORD_COLUMNS, "tww",
    "an entry of \"{0}\" has {1} values, and here {2|is|are} {2}")

/* --- values --- */
MESSAGE(M_RECORD_WHOLE, "twwt",
    "\"{0}\" is a whole number from {1} to {2}, not \"{3}\"")
MESSAGE(M_RECORD_REAL, "t", "a measure is a number such as 4.25, not \"{0}\"")
MESSAGE(M_RECORD_MOMENT, "tt",
    "\"{0}\" is a date and a time such as 2026-03-02T17:00:00+01:00, not "
    "\"{1}\"")
MESSAGE(M_RECORD_DAY, "tt", "\"{0}\" is a date such as 2026-03-02, not \"{1}\"")
MESSAGE(M_RECORD_FAR, "y",
    "{0} is too far from the time beside it to be its day")
MESSAGE(M_RECORD_CHOICE, "ttt", "\"{0}\" is one of {1}, not \"{2}\"")
MESSAGE(M_RECORD_ID, "tt",
    "\"{0}\" has {1} signs, each of them 0 to 9 or a to f, in quotation marks")
MESSAGE(M_RECORD_STAGE, "t",
    "\"{0}\" is no name of a stage: small letters, digits and dashes")
MESSAGE(M_RECORD_UNIT, "t",
    "\"{0}\" is no finger, pair of fingers or pair of strings")
MESSAGE(M_RECORD_LONG, "tw", "\"{0}\" has more than {1} bytes")
MESSAGE(M_RECORD_MEASURE, "t", "\"{0}\" is no name of a measure")

/* --- what belongs together --- */
MESSAGE(M_RECORD_NO_COMPUTER, "w", "this record has no computer {0}")
MESSAGE(M_RECORD_NO_ROUTINE, "t", "this record has no routine \"{0}\"")
MESSAGE(M_RECORD_NO_TURN, "w", "this session has no turn {0}")
MESSAGE(M_RECORD_ORDER, "ww",
    "turn {0} stands behind turn {1}. Their numbers rise")
MESSAGE(M_RECORD_ROW_TWICE, "ww",
    "row {0} of this computer is already on line {1}")
MESSAGE(M_RECORD_ROW_BEYOND, "ww",
    "row {0} is beyond the {1} {1|row|rows} of its computer")
MESSAGE(M_RECORD_BEFORE, "ww",
    "row {0} comes before row {1}, the turn it is about")
MESSAGE(M_RECORD_CHANGED, "t",
    "this text was changed: it is not the one with the fingerprint \"{0}\"")
MESSAGE(M_RECORD_MARKLESS, "",
    "a turn without a mark has none, 0 and 0 for its mark")
MESSAGE(M_RECORD_ENDLESS, "",
    "a session that was cut off has no time and no row of its end, and every "
    "other has both")

/* --- giving --- */
MESSAGE(M_RECORD_TOO_LONG, "",
    "this is more than one record holds. Give the last years alone: --since "
    "DATE")
MESSAGE(M_RECORD_JOURNAL_NEWER, "t",
    "the practice history in {0} was made by a newer evenhand. Give it with "
    "that one")

MESSAGE(M_GIVE_ABOUT, "", "the practice as a file for the teacher")
MESSAGE(M_GIVE_HELP, "",
    "the practice as a file. Open it and read it before you give it away")
MESSAGE(M_GIVE_OPTION_OUTPUT, "", "where it goes; -o FILE for short")
MESSAGE(M_GIVE_OPTION_SINCE, "", "from this day on, such as 2026-03-02")
MESSAGE(M_GIVE_OPTION_INITIALS, "", "the initials that stand in it")
MESSAGE(M_GIVE_NO_FILE, "",
    "where should it go? Write it like this: evenhand give -o FILE")
MESSAGE(M_GIVE_BAD_INITIALS, "tw",
    "\"{0}\" is too long for initials, or holds signs that cannot be seen: {1} "
    "letters at most")
MESSAGE(M_GIVE_NOTHING, "",
    "nothing has been practised yet, so there is nothing to give")
MESSAGE(M_GIVE_NOTHING_SINCE, "y",
    "nothing was practised since {0}, so there is nothing to give")
MESSAGE(M_GIVE_WRITTEN, "twddw",
    "{0} holds {1} {1|session|sessions}, {2} to {3}, and {4} {4|note|notes}.")
MESSAGE(M_GIVE_LEFT, "ww",
    "{0} {0|session|sessions} and {1} {1|note|notes} have dates or numbers "
    "that cannot be and were left out.")
MESSAGE(M_GIVE_READ, "",
    "Open it and read it before you give it away: it holds what hurt and what "
    "you asked, too.")
MESSAGE(M_GIVE_READ_NAMELESS, "",
    "It holds no initials: --initials adds them. Open it and read it before "
    "you give it away: it holds what hurt and what you asked, too.")

/* --- gathering --- */
MESSAGE(M_GATHER_ABOUT, "", "records brought together, of one or of a class")
MESSAGE(M_GATHER_HELP, "",
    "records of another computer, or of a class, brought together")
MESSAGE(M_GATHER_OPTION_CLASS, "", "a journal for each student in this folder")
MESSAGE(M_GATHER_OPTION_JOIN, "",
    "these ids are one and the same person's")
MESSAGE(M_GATHER_BAD_JOIN, "t",
    "--join wants the beginnings of two ids with + between, such as "
    "4f2a77e0+91bc0d12, not \"{0}\"")
MESSAGE(M_GATHER_JOINED, "w",
    "{0} more {0|id is|ids are} this student's from now on, and records of "
    "{0|it|them} are taken, too.")
MESSAGE(M_GATHER_TWO_TARGETS, "",
    "--player and --class are two places to gather into. Take one of them")
MESSAGE(M_GATHER_PROGRESS, "ww", "{0} of {1} records read")
MESSAGE(M_GATHER_FILES, "w", "{0} {0|record|records}")
MESSAGE(M_GATHER_NEWS, "twww",
    "{0}: {1} {1|session|sessions} new, {2} known, {3} {3|note|notes} new.")
MESSAGE(M_GATHER_MORE, "w",
    "Of {0} more {0|session|sessions} a part was known, and the rest is new.")
MESSAGE(M_GATHER_APART, "w",
    "{0} of these {0|has|have} the number of another on the same computer, as "
    "when a home folder was copied. Both are kept.")
MESSAGE(M_GATHER_DIFFERENT, "w",
    "{0} {0|entry says|entries say} something else than what is known under "
    "the same number. Was the record changed by hand? The higher value stays.")

/* --- what keeps a record out of a journal --- */
MESSAGE(M_GATHER_OTHER_STUDENT, "ttt",
    "this record is of another student ({0}, id {1}) than the practice history "
    "it would go into (id {2}). For another student on this computer, add "
    "--player NAME; for a class, --class FOLDER. Only if both are the same "
    "person, who practised on two computers, add --join {2}+{1}")
MESSAGE(M_GATHER_MORE_IDS, "ttt",
    "this record ({0}) is also of the student with the id {1}, who is another "
    "one here than {2}. Only if both are the same person, add --join {2}+{1}")
MESSAGE(M_GATHER_SEVERAL, "t",
    "several students of the class have an id that begins with {0}. Write more "
    "of its digits")
MESSAGE(M_GATHER_NOBODY, "t",
    "nobody in the class has an id that begins with {0}. evenhand class FOLDER "
    "--csv shows all of them")
MESSAGE(M_GATHER_JOIN_LEFT, "t",
    "the practice history in {0} holds dates or numbers that cannot be, which "
    "would be left out. Nothing was joined")
MESSAGE(M_GATHER_ONE_ALREADY, "", "These ids are one student's already.")
MESSAGE(M_GATHER_MANY_IDS, "w",
    "this record would give one student more than {0} ids. Are they all the "
    "same person?")
MESSAGE(M_GATHER_BUSY, "t",
    "another program is busy with the practice history in {0}. Nothing was "
    "changed; try again when it is free")
MESSAGE(M_GATHER_FULL, "t",
    "the disk takes no more of the practice history in {0}: it may be full. "
    "Nothing was changed")
MESSAGE(M_GATHER_READ_ONLY, "t",
    "the practice history in {0} may not be written. Nothing was changed")
MESSAGE(M_GATHER_NEWER, "t",
    "the practice history in {0} was made by a newer evenhand. Nothing was "
    "changed; gather with that one")
MESSAGE(M_GATHER_BROKEN, "t",
    "the practice history in {0} is damaged. It was left as it is")
MESSAGE(M_GATHER_OTHER_FILE, "t",
    "{0} is not a practice history. It was left as it is")
MESSAGE(M_GATHER_UNREACHABLE, "t",
    "the practice history in {0} cannot be reached. Nothing was changed")

/* --- what a person reads who opens one --- */
MESSAGE(M_RECORD_COMMENT_1, "",
    "A practice record of evenhand, to be given to a teacher. Read it first:")
MESSAGE(M_RECORD_COMMENT_2, "",
    "it holds what hurt and what was asked, too. evenhand-record(5) tells each")
MESSAGE(M_RECORD_COMMENT_3, "",
    "word. A line of turns is [turn, block, stage, finger, pulses of a bow,")
MESSAGE(M_RECORD_COMMENT_4, "",
    "mark, round, bows, start_ms, ended_s, slide_um, row, mark_row, mark_ms],")
MESSAGE(M_RECORD_COMMENT_5, "",
    "with what is seldom said behind it. Times are those of the clock there.")
