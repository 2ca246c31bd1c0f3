/* history.h - sentences of history; see ../message_list.h */
MESSAGE(M_HISTORY_NONE, "", "Nothing has been practised yet.")
MESSAGE(M_HISTORY_DAY, "dcw",
    "{0}: {1} in {2} {2|session|sessions}.")
MESSAGE(M_HISTORY_DAY_NOT_PLAYED, "d", "{0}: nothing was played.")
MESSAGE(M_HISTORY_DAY_NO_TIME, "d",
    "{0}: how long it took was not kept.")
MESSAGE(M_HISTORY_STAGES, "t", "Stages: {0}.")
MESSAGE(M_HISTORY_STAGE, "t", "{0}")
MESSAGE(M_HISTORY_STAGE_RECAP, "t", "{0} (recap)")
MESSAGE(M_HISTORY_STAGE_ON, "tt", "{0} ({1})")
MESSAGE(M_HISTORY_BOWS, "t", "Bows: {0}.")
MESSAGE(M_HISTORY_BOWS_FINGER, "tw", "finger {0}: {1}")
MESSAGE(M_HISTORY_BOWS_UNIT, "tw", "{0}: {1}")
MESSAGE(M_HISTORY_HEARD, "t", "Bows with every top heard: {0}.")
MESSAGE(M_HISTORY_HEARD_FINGER, "tww", "finger {0}: {1} of {2}")
MESSAGE(M_HISTORY_HEARD_UNIT, "tww", "{0}: {1} of {2}")
MESSAGE(M_HISTORY_FIRST_GO, "twt", "First go of {0}, {1} pulses: {2}.")
MESSAGE(M_HISTORY_FIRST_GO_AIR, "tt", "First go of {0}: {1}.")
MESSAGE(M_HISTORY_MARK_FINGER, "tm", "finger {0} {1}")
MESSAGE(M_HISTORY_MARK_UNIT, "tm", "{0} {1}")
MESSAGE(M_HISTORY_NOTE_PAIN, "", "Stopped for pain.")
MESSAGE(M_HISTORY_NOTE_PAIN_AT, "t", "Stopped for pain: {0}.")
MESSAGE(M_HISTORY_NOTE_PAIN_SKIN, "w",
    "Stopped for pain: the skin of finger {0}.")
MESSAGE(M_HISTORY_NOTE_SKIN, "w", "The skin of finger {0} was sore.")
MESSAGE(M_HISTORY_NOTE_SORE, "", "Something was sore.")
MESSAGE(M_HISTORY_NOTE_SORE_AT, "t", "Sore: {0}.")
MESSAGE(M_HISTORY_NOTE_QUESTION, "t", "Question: {0}")

/* --- days that are wished for --- */
MESSAGE(M_HISTORY_BAD_DAY, "tt",
    "{0} wants a day, such as 2026-03-02, not \"{1}\"")
MESSAGE(M_HISTORY_BACKWARDS, "yy",
    "{0} is after {1}, so no day lies between them. Write the earlier one "
    "behind --from")
MESSAGE(M_HISTORY_TWO_FORMS, "",
    "--csv, --sessions and --json are three ways to write it. Take one of "
    "them")
MESSAGE(M_HISTORY_NONE_THEN, "", "Nothing was practised in these days.")
MESSAGE(M_HISTORY_OPTION_CSV, "", "a table: day, stage and finger in each row")
MESSAGE(M_HISTORY_OPTION_SESSIONS, "", "a table: a session in each row")
MESSAGE(M_HISTORY_OPTION_LINES, "", "in lines of text, no charts")
MESSAGE(M_HISTORY_NO_MEMORY, "",
    "the computer has no memory left to show this. Close other programs and "
    "start again")
MESSAGE(M_HISTORY_OPTION_FROM, "", "the first day, such as 2026-03-02")
MESSAGE(M_HISTORY_OPTION_TO, "", "the last day")

/* --- lines --- */
MESSAGE(M_HISTORY_METRES, "t", "Metres along the string: {0}.")
MESSAGE(M_HISTORY_METRES_FINGER, "tn", "finger {0}: {1}")
MESSAGE(M_HISTORY_METRES_UNIT, "tn", "{0}: {1}")
MESSAGE(M_HISTORY_WEEK, "dwwc",
    "Week from {0}: {1} {1|day|days}, {2} {2|session|sessions}, {3}.")
MESSAGE(M_HISTORY_WEEK_STAGE, "tw", "{0} on {1} {1|day|days}")
MESSAGE(M_HISTORY_WEEK_STAGE_RECAP, "tw", "{0} (recap) on {1} {1|day|days}")
MESSAGE(M_HISTORY_WEEK_STAGES, "t", "Stages of the week: {0}.")
MESSAGE(M_HISTORY_ALL, "ddwww",
    "All together, {0} to {1}: {2} {2|day|days}, {3} {3|session|sessions}, "
    "{4} {4|minute|minutes}.")

/* --- charts --- */
MESSAGE(M_HISTORY_TAB_MINUTES, "", "minutes")
MESSAGE(M_HISTORY_TAB_FINGERS, "", "fingers")
MESSAGE(M_HISTORY_TAB_FIRST_GO, "", "first go")
MESSAGE(M_HISTORY_TAB_STAGES, "", "stages")
MESSAGE(M_HISTORY_SPAN, "dd", "{0} to {1}")
MESSAGE(M_HISTORY_ABOUT_MINUTES, "m", "minutes of practice, by {0}")
MESSAGE(M_HISTORY_ABOUT_FINGERS, "m", "bows and metres, by {0}")
MESSAGE(M_HISTORY_ABOUT_FIRST_GO, "m", "marks of the first go, by {0}")
MESSAGE(M_HISTORY_ABOUT_STAGES, "m", "stages that were played, by {0}")
MESSAGE(M_HISTORY_ABOUT_SHORT, "m", "by {0}")
MESSAGE(M_HISTORY_SCALE_DAY, "", "day")
MESSAGE(M_HISTORY_SCALE_WEEK, "", "week")
MESSAGE(M_HISTORY_SCALE_MONTH, "", "month")
MESSAGE(M_HISTORY_FINGER, "t", "finger {0}")
MESSAGE(M_HISTORY_BOWS_ALONE, "", "bows")
MESSAGE(M_HISTORY_METRES_ALONE, "", "metres")
MESSAGE(M_HISTORY_METRES_ALONG, "", "metres along the string")
MESSAGE(M_HISTORY_DAYS, "w", "{0} {0|day|days}")
MESSAGE(M_HISTORY_SUM_MINUTES, "www",
    "{0} {0|day|days}, {1} {1|session|sessions}, {2} {2|minute|minutes}.")
MESSAGE(M_HISTORY_SUM_MINUTES_SORE, "wwwt",
    "{0} {0|day|days}, {1} {1|session|sessions}, {2} {2|minute|minutes}. "
    "{3} pain or soreness was told.")
MESSAGE(M_HISTORY_SUM_FINGERS, "wn",
    "{0} {0|bow|bows}, {1} metres along the string.")
MESSAGE(M_HISTORY_NO_FIRST_GO, "", "No first go was kept.")
MESSAGE(M_HISTORY_SUM_FIRST_GO, "ttt", "{0} clean  {1} shaky  {2} no mark")
MESSAGE(M_HISTORY_SUM_FIRST_GO_RUNG, "ttt",
    "{0} clean  {1} shaky  {2} no mark; numbers: pulses a bow")
MESSAGE(M_HISTORY_SUM_FIRST_GO_MORE, "tttw",
    "{0} clean  {1} shaky  {2} no mark. No room for {3} {3|stage|stages} "
    "before these.")
MESSAGE(M_HISTORY_SUM_STAGES, "ttt",
    "{0} work  {1} recap  {2} arm in the air")
MESSAGE(M_HISTORY_SUM_STAGES_MORE, "tttw",
    "{0} work  {1} recap  {2} arm in the air. No room for {3} "
    "{3|stage|stages} before these.")
MESSAGE(M_HISTORY_OUTSIDE, "w",
    "{0} {0|day has a date|days have dates} before 1970 or after 9999; "
    "--lines tells of {0|it|them}.")
MESSAGE(M_HISTORY_KEY_TIME, "tt", "{0} {1} time")
MESSAGE(M_HISTORY_KEY_SCALE, "", "+ closer, - wider")
MESSAGE(M_HISTORY_KEY_SCALE_SHORT, "", "+ -")
MESSAGE(M_HISTORY_KEY_TAB, "", "Tab next chart")
MESSAGE(M_HISTORY_KEY_TAB_SHORT, "", "Tab")
MESSAGE(M_HISTORY_KEY_LEAVE, "", "q leave")
MESSAGE(M_HISTORY_HELP_LATER, "", "Page Down, Right, Down, Enter: later.")
MESSAGE(M_HISTORY_HELP_EARLIER, "", "Page Up, Left, Up, Backspace: earlier.")
MESSAGE(M_HISTORY_HELP_CLOSER, "",
    "+ closer: from months to weeks, from weeks to days.")
MESSAGE(M_HISTORY_HELP_WIDER, "",
    "- wider: from days to weeks, from weeks to months.")
MESSAGE(M_HISTORY_HELP_TAB, "", "Tab: the next chart.")
MESSAGE(M_HISTORY_HELP_BACK, "", "?: from here back to the chart.")
MESSAGE(M_HISTORY_HELP_LEAVE, "", "q or Esc: leave.")
