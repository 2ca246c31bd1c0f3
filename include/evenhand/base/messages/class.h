/* class.h - sentences of the teacher's class; see ../message_list.h */

/* --- the order in which a teacher is needed, one word each --- */
MESSAGE(M_CLASS_WORD_PAIN, "", "pain")
MESSAGE(M_CLASS_WORD_STUCK, "", "stuck")
MESSAGE(M_CLASS_WORD_HURRIED, "", "hurried")
MESSAGE(M_CLASS_WORD_ABSENT, "", "absent")
MESSAGE(M_CLASS_WORD_READY, "", "ready")
MESSAGE(M_CLASS_WORD_FINE, "", "fine")
MESSAGE(M_CLASS_WORD_GONE, "", "gone")
MESSAGE(M_CLASS_WORD_UNREAD, "", "unread")

/* --- why --- */
MESSAGE(M_CLASS_ASK_FIRST, "w",
    "pain twice in {0} days; rests until the file says \"seen: yes\"")
MESSAGE(M_CLASS_PAIN, "d", "pain on {0}")
MESSAGE(M_CLASS_PAIN_AT, "dt", "pain on {0}: {1}")
MESSAGE(M_CLASS_PAIN_SKIN, "dw", "pain on {0}: skin of finger {1}")
MESSAGE(M_CLASS_SKIN, "dw", "sore on {0}: skin of finger {1}")
MESSAGE(M_CLASS_SORE, "d", "something was sore on {0}")
MESSAGE(M_CLASS_SORE_AT, "dt", "sore on {0}: {1}")
MESSAGE(M_CLASS_BACK, "tt", "went back to \"{0}\"; the file says \"{1}\"")
MESSAGE(M_CLASS_LONG, "wwt",
    "{0} practice days, {1} are usual: \"{2}\"")
MESSAGE(M_CLASS_HELD, "wwt",
    "{2} for {0} {0|week|weeks} and {1} practice days")
MESSAGE(M_CLASS_HURRY, "ww",
    "{0} signs of hurry in 7 days; {1} make a day slower")
MESSAGE(M_CLASS_AWAY, "wd",
    "{0} {0|day|days} without practice, since {1}")
MESSAGE(M_CLASS_NEVER, "", "nothing practised yet")
MESSAGE(M_CLASS_SELDOM, "ww",
    "{0} of {1} practice days in two weeks")
MESSAGE(M_CLASS_NO_RECORD, "wd", "no record for {0} days; the last is of {1}")
MESSAGE(M_CLASS_READY, "t", "ready to show \"{0}\"")
MESSAGE(M_CLASS_SECURE, "t", "\"{0}\" is secure")
MESSAGE(M_CLASS_GONE, "d", "no record since {0}")
MESSAGE(M_CLASS_UNREAD, "", "the journal cannot be read")

/* --- how a stage stands --- */
MESSAGE(M_CLASS_HOLD_READY, "", "ready to show")
MESSAGE(M_CLASS_HOLD_DAYS, "ww", "{0} of {1} practice days")
MESSAGE(M_CLASS_HOLD_RUNG, "ww", "first round at {0} pulses of {1}")
MESSAGE(M_CLASS_HOLD_SHAKY, "mt", "{0} {1} shaky")
MESSAGE(M_CLASS_HOLD_SWING, "", "first swing shaky")
MESSAGE(M_CLASS_HOLD_MARK, "mt", "{0} {1} without a mark")
MESSAGE(M_CLASS_HOLD_NO_MARK, "", "first round without marks")
MESSAGE(M_CLASS_HOLD_CLEAN, "ww", "{0} of {1} days all clean")
MESSAGE(M_CLASS_HOLD_SHARE, "mtw", "{0} {1} has {2} percent of the bows")
MESSAGE(M_CLASS_HOLD_HEARD, "ww", "every top heard in {0} of {1} bows")
MESSAGE(M_CLASS_HOLD_OTHER, "", "look at it in the lesson")
MESSAGE(M_CLASS_HOLD_UNKNOWN, "", "the routine is not known")
MESSAGE(M_CLASS_AT, "tt", "\"{0}\": {1}")
MESSAGE(M_CLASS_ASKS, "t", "asks: {0}")

/* --- the folder --- */
MESSAGE(M_CLASS_NO_NAME, "",
    "the folder of the class has no name. Write one, such as: evenhand class "
    "students")
MESSAGE(M_CLASS_NO_FOLDER, "t",
    "there is no folder {0}. Look at its name, and where you are")
MESSAGE(M_CLASS_NOT_A_FOLDER, "t",
    "{0} is not a folder. A class is a folder with the records of its students")
MESSAGE(M_CLASS_UNREACHED, "t",
    "the folder {0} cannot be read or written by you")
MESSAGE(M_CLASS_DAMAGED, "t",
    "{0} is damaged. Delete it and gather the records again: nothing that was "
    "practised is lost, as every student has a journal beside it")
MESSAGE(M_CLASS_IN_THE_WAY, "t",
    "{0} is no file, and evenhand keeps the list of the class in a file of that "
    "name. Move it out of this folder")
MESSAGE(M_CLASS_CLOSED, "t",
    "{0} may not be read by you: it belongs to somebody else. Ask for it, or "
    "copy the records into a folder of your own")
MESSAGE(M_CLASS_OTHER_FILE, "t",
    "{0} is not from evenhand. Move it out of this folder")
MESSAGE(M_CLASS_NEWER, "t",
    "{0} was made by a newer evenhand. Use that one for this class")
MESSAGE(M_CLASS_BUSY, "t",
    "another program is busy with {0}. Start again when it is done")
MESSAGE(M_CLASS_UNKEPT, "t",
    "{0} cannot be written: the disk may be full. Make some room")
MESSAGE(M_CLASS_NO_MEMORY, "",
    "the computer has no memory left for the class. Close other programs and "
    "start again")
MESSAGE(M_CLASS_NO_STUDENT, "t", "\"{0}\" is not the id of a student")

/* --- the list --- */
MESSAGE(M_CLASS_TITLE, "dw", "Class on {0}: {1} {1|student|students}")
MESSAGE(M_CLASS_STUDENTS, "w", "{0} {0|student|students}")
MESSAGE(M_CLASS_COUNT, "wm", "{0} {1}")
MESSAGE(M_CLASS_PLACE, "ww", "{0} of {1}")
MESSAGE(M_CLASS_HEAD_NAME, "", "name")
MESSAGE(M_CLASS_HEAD_WHY, "", "why")
MESSAGE(M_CLASS_HEAD_WEEK, "", "7 days")
MESSAGE(M_CLASS_HEAD_MONTH, "", "28 days")
MESSAGE(M_CLASS_WEEK, "ww", "{0} d {1} min")
MESSAGE(M_CLASS_WEEK_DAYS, "w", "{0}")
MESSAGE(M_CLASS_STAGE, "wwtwwt",
    "Stage {0} of {1}, \"{2}\": {3} practice {3|day|days} ({4} are usual), {5}.")
MESSAGE(M_CLASS_STAGE_FINE, "wwtww",
    "Stage {0} of {1}, \"{2}\": {3} practice {3|day|days} ({4} are usual).")
MESSAGE(M_CLASS_PRACTISED, "dwwww",
    "Last practised {0}: {1} {1|day|days} and {2} {2|minute|minutes} in 7 days, "
    "{3} and {4} in 28.")
MESSAGE(M_CLASS_RECORD, "d", "Record of {0}.")
MESSAGE(M_CLASS_RECORD_AHEAD, "d",
    "Record of {0}, a day that is still to come, so it does not count. Is the "
    "clock of the student's computer right?")
MESSAGE(M_CLASS_ASKS_ON, "dt", "Asked on {0}: {1}")
MESSAGE(M_CLASS_NOBODY, "t", "No name holds \"{0}\".")
MESSAGE(M_CLASS_FINDING, "t", "Find a name: {0}_")

/* --- keys of the list and of a lesson page --- */
MESSAGE(M_CLASS_KEY_MOVE, "", "Up Down move")
MESSAGE(M_CLASS_KEY_OPEN, "", "Enter open")
MESSAGE(M_CLASS_KEY_PAGE, "", "Space page")
MESSAGE(M_CLASS_KEY_FIND, "", "f find")
MESSAGE(M_CLASS_KEY_STUDENT, "", "Up Down student")
MESSAGE(M_CLASS_KEY_MORE, "", "Space more")
MESSAGE(M_CLASS_KEY_BACK, "", "Left back")
MESSAGE(M_CLASS_KEYS_FIND, "", "Enter keeps it, empty shows all")
MESSAGE(M_CLASS_HELP_MOVE, "", "Up, Down: another student.")
MESSAGE(M_CLASS_HELP_PAGE, "",
    "Space, Page Down, Page Up: the next or the last screen; so two pedals "
    "will do.")
MESSAGE(M_CLASS_HELP_OPEN, "",
    "Enter, Right: the lesson page of this student. Left: back to the class.")
MESSAGE(M_CLASS_HELP_FIND, "",
    "f: find a name by a part of it; Enter with empty shows all again.")
MESSAGE(M_CLASS_HELP_ORDER, "",
    "First comes who needs you: pain, stuck, hurried, absent. It is no "
    "ranking: it says nothing of how well somebody plays.")
MESSAGE(M_CLASS_HELP_BACK, "", "?: from here back to the class.")

/* --- a lesson page --- */
MESSAGE(M_CLASS_LESSON, "tt", "{0}, {1}")
MESSAGE(M_CLASS_NO_LESSON, "",
    "What was practised is there, but the routine of it cannot be read, so "
    "there is no lesson page. Ask for a new record.")

/* --- the command --- */
MESSAGE(M_CLASS_ABOUT, "", "all students of a teacher, who needs help first")
MESSAGE(M_CLASS_OPTION_LINES, "", "in lines of text, no full screen")
MESSAGE(M_CLASS_OPTION_CSV, "", "a table: a student in each row")
MESSAGE(M_CLASS_OPTION_JSON, "", "for programs, as JSON")
MESSAGE(M_CLASS_TWO_FORMS, "",
    "--csv and --json are two ways to write it. Take one of them")
MESSAGE(M_CLASS_EMPTY, "t",
    "{0} has no students yet. Put their records into it, the files that "
    "evenhand give writes, or gather them: evenhand gather --class {0} "
    "FILE...")
MESSAGE(M_CLASS_EMPTY_OTHERS, "twt",
    "{0} has no students yet: {1} {1|file lies|files lie} in it, but "
    "no record ({2} is none). Ask each student for the file that this writes: "
    "evenhand give -o NAME.yaml")
MESSAGE(M_CLASS_EMPTY_BAD, "tw",
    "{0} has no students yet: {1} {1|record lies|records lie} in it, "
    "but nothing could be taken from {1|it|them}. What is wrong is told above")
MESSAGE(M_CLASS_EMPTY_INSIDE, "t",
    "{0} holds journals that evenhand made for a class. The class is the folder "
    "above it: evenhand class {0}/..")
MESSAGE(M_CLASS_LEFT_OUT, "w",
    "{0} {0|student is|students are} more than a class can show and {0|is|are} "
    "left out")
MESSAGE(M_CLASS_SOME_UNREAD, "w",
    "{0} {0|journal|journals} of this class cannot be read; all others are "
    "shown. Delete {0|it|them} and gather the records of {0|that student|those "
    "students} again")
MESSAGE(M_CLASS_MAKING, "ww", "Looking at journal {0} of {1}")
MESSAGE(M_CLASS_GATHERING, "ww", "Gathering record {0} of {1}")
MESSAGE(M_CLASS_GATHERED, "w",
    "{0} new {0|record was|records were} gathered from the folder.")
MESSAGE(M_CLASS_NOT_GATHERED, "wt",
    "{0} new {0|record lies|records lie} in {1} and cannot be gathered, because "
    "the folder may not be written by you. What was gathered before is shown")

/* --- on paper --- */
MESSAGE(M_CLASS_SHEET, "d", "Class on {0}")
MESSAGE(M_CLASS_SHEET_WEEK, "www",
    "{0} {0|day|days}, {1} {1|minute|minutes} in 7 days; {2} in 28")
MESSAGE(M_CLASS_PRINT_PDF, "t",
    "the sheets of a class are many pages, and {0} can hold one. Choose a file "
    "that ends in .pdf")
MESSAGE(M_CLASS_PRINT_WHICH, "",
    "say which class: evenhand print class FOLDER -o FILE.pdf")
MESSAGE(M_CLASS_PRINT_NO_SHEET, "t",
    "{0} has no lesson sheet: the journal or its routine cannot be read")
MESSAGE(M_CLASS_PRINTING, "ww", "Sheet {0} of {1}")
