/* paper.h - sentences on sheets of paper; see ../message_list.h */

/* --- the head --- */
MESSAGE(M_PAPER_HOMEWORK, "", "Homework")
MESSAGE(M_PAPER_HOMEWORK_FOR, "t", "Homework for {0}")
MESSAGE(M_PAPER_FROM_DAY, "d", "from {0}")
MESSAGE(M_PAPER_ROUTINE, "tw", "{0}, edition {1}")
MESSAGE(M_PAPER_ROUTINE_BY, "twt", "{0}, edition {1}, by {2}")
MESSAGE(M_PAPER_STRING, "mn", "{0}, string {1} mm from nut to bridge")
MESSAGE(M_PAPER_STRING_LEFT, "mn",
    "{0}, string {1} mm from nut to bridge, bow in the left hand")
MESSAGE(M_PAPER_PAGE_OF, "ww", "page {0} of {1}")

/* --- each day --- */
MESSAGE(M_PAPER_EACH_DAY, "", "Each day")
MESSAGE(M_PAPER_SESSION, "nwww",
    "{0} minutes at a time, {1} {1|time|times} a day at most, {2} "
    "{2|hour|hours} apart, on {3} {3|day|days} a week.")
MESSAGE(M_PAPER_SESSION_ONE, "nw",
    "{0} minutes, once a day, on {1} {1|day|days} a week.")
MESSAGE(M_PAPER_STOP, "",
    "When the time is over, stop: rest is part of the work.")
MESSAGE(M_PAPER_ORDER, "",
    "First the arm in the air, then earlier stages, in half of the time at "
    "most, then the stage of this week.")
MESSAGE(M_PAPER_ORDER_AIR, "",
    "First the arm in the air, then the stage of this week.")
MESSAGE(M_PAPER_ORDER_EARLIER, "",
    "First earlier stages, in half of the time at most, then the stage of this "
    "week.")
MESSAGE(M_PAPER_TURNS, "mwt",
    "Change the {0} every {1} {1|bow|bows}: {2}, and round again.")
MESSAGE(M_PAPER_NOTE, "", "From your teacher")

/* --- stages --- */
MESSAGE(M_PAPER_THIS_WEEK, "t", "This week: {0}")
MESSAGE(M_PAPER_AGAIN, "", "Earlier stages, which come back in turns")
MESSAGE(M_PAPER_STAGE, "ttnw",
    "String {0}. {1} pulses in a bow of {2} seconds; begin with {3}.")
MESSAGE(M_PAPER_STAGE_ANY, "tnw",
    "{0} pulses in a bow of {1} seconds; begin with {2}.")
MESSAGE(M_PAPER_BEGIN, "tw", "{0}, begin with {1}")
MESSAGE(M_PAPER_STAGE_AIR, "n",
    "In the air, without the instrument. One swing takes {0} "
    "seconds.")
MESSAGE(M_PAPER_NEAR_NOTE, "", "The upper note may be near; close will do.")
MESSAGE(M_PAPER_FADE, "w",
    "After {0} {0|bow|bows} the pulses go quiet; go on without them.")
MESSAGE(M_PAPER_TICK, "", "Ask yourself, and tick")
MESSAGE(M_PAPER_MONDAY, "", "Mo")
MESSAGE(M_PAPER_TUESDAY, "", "Tu")
MESSAGE(M_PAPER_WEDNESDAY, "", "We")
MESSAGE(M_PAPER_THURSDAY, "", "Th")
MESSAGE(M_PAPER_FRIDAY, "", "Fr")
MESSAGE(M_PAPER_SATURDAY, "", "Sa")
MESSAGE(M_PAPER_SUNDAY, "", "Su")

/* --- the fingerboard --- */
MESSAGE(M_PAPER_NEAR, "", "lower")
MESSAGE(M_PAPER_FAR, "", "upper")
MESSAGE(M_PAPER_APART, "", "apart")
MESSAGE(M_PAPER_SCALE, "n", "mm from the nut, drawn 1 : {0}")

/* --- cautions --- */
MESSAGE(M_PAPER_CAUTIONS, "", "Take care")
MESSAGE(M_PAPER_HEAT, "",
    "Heat at a fingertip or thumb: stop and shake out. It means rubbing or "
    "pressing. If it comes back, that is enough for today.")
MESSAGE(M_PAPER_PAIN, "",
    "Anything hurts: stop now, and not again today.")

/* --- putting them on paper --- */
MESSAGE(M_PAPER_PROGRAM, "",
    "evenhand-paper puts the sheets of evenhand on paper, which starts it by "
    "itself. Start evenhand print instead.")
MESSAGE(M_PAPER_NO_PROGRAM, "",
    "the part of evenhand that draws on paper, evenhand-paper, is missing or "
    "does not start. Install evenhand anew, with cairo and pango (make deps)")
MESSAGE(M_PAPER_OTHER_PROGRAM, "",
    "the part of evenhand that draws on paper, evenhand-paper, is of another "
    "version. Install evenhand anew")
MESSAGE(M_PAPER_NO_LETTERS, "",
    "this computer has no letters to print with. Install a font, such as "
    "DejaVu Sans (package fonts-dejavu-core)")
MESSAGE(M_PAPER_LARGE, "",
    "these are too many pages for one picture. Choose a file that ends in .pdf")
MESSAGE(M_PAPER_NO_ROOM, "",
    "the computer has no memory left for the sheet. Close other programs and "
    "start again")
MESSAGE(M_PAPER_BROKE, "",
    "the part of evenhand that draws on paper, evenhand-paper, was ended from "
    "outside. Nothing was written. Try again")
MESSAGE(M_PAPER_SUFFIX, "t",
    "\"{0}\" has to end in .pdf, .svg or .png, which says what is made")
MESSAGE(M_PAPER_OUT, "tt",
    "say where the sheet goes, such as: evenhand print {0}{1} -o sheet.pdf")
MESSAGE(M_PAPER_WHAT, "t",
    "I can print homework, lesson or class, not \"{0}\". Write it like this: "
    "evenhand print homework [ROUTINE] -o FILE")
MESSAGE(M_PAPER_SIZE, "t", "--paper is a4 or letter, not \"{0}\"")
MESSAGE(M_PAPER_FULL, "",
    "this routine is too long for a sheet. Shorten its texts")
MESSAGE(M_PAPER_WRITTEN, "tw", "{0} is written, {1} {1|page|pages}.")
MESSAGE(M_PAPER_NOBODY, "",
    "Nothing has been practised in this journal. For students whose records "
    "you have: evenhand print class FOLDER -o FILE")
MESSAGE(M_PAPER_ABOUT, "", "sheets of paper: the week's homework, the lesson's, the class's")
MESSAGE(M_PAPER_OPTION_OUT, "", "the file to write, also -o; its end says which kind")
MESSAGE(M_PAPER_OPTION_PAPER, "", "the size of the paper (a4 if left out)")
MESSAGE(M_PAPER_OPTION_LARGE, "", "in large print, for those who see less")
