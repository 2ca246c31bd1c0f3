/* lesson.h - sentences of the teacher's sheet; see ../message_list.h */
MESSAGE(M_LESSON_TITLE, "", "Before the lesson")
MESSAGE(M_LESSON_TITLE_OF, "t", "Before the lesson: {0}")
MESSAGE(M_LESSON_WEEK, "dd", "{0} to {1}")

/* --- the answer --- */
MESSAGE(M_LESSON_READY, "", "READY TO SHOW")
MESSAGE(M_LESSON_HOLD, "", "HOLD")
MESSAGE(M_LESSON_BACK, "", "STEP BACK")
MESSAGE(M_LESSON_STOP, "", "STOP AND ASK")
MESSAGE(M_LESSON_AT, "tt",
    "Works on \"{0}\" for now; the file says \"{1}\".")

/* What the student is told in words of their own. */
MESSAGE(M_LESSON_WHY_STOP, "w",
    "There was pain on two days within {0}. Nothing is played until you write "
    "\"seen: yes\" in the file: it says that someone who treats hands was asked.")
MESSAGE(M_LESSON_WHY_START, "wt",
    "{0} days without practice: it begins again with \"{1}\", after a word with "
    "you. Each stage leads on after one day that is all clean.")
MESSAGE(M_LESSON_WHY_STAYS, "tt",
    "One day on which the first round of \"{0}\" is all clean leads on to "
    "\"{1}\".")
MESSAGE(M_LESSON_WHY_READY, "t", "Ready to show: hear \"{0}\" in this lesson.")
MESSAGE(M_LESSON_WHY_UNIT, "tmtd",
    "Stay with \"{0}\": you marked {1} {2} shaky on {3}.")

/* --- one thing to look at --- */
MESSAGE(M_LESSON_LOOK, "t", "Look at one thing: {0}")
MESSAGE(M_LESSON_LOOK_HURT, "d",
    "something hurt or was sore on {0}. Ask about it first.")
MESSAGE(M_LESSON_LOOK_UNIT, "mtww",
    "{0} {1} was shaky in {2} of {3} first {3|round|rounds}.")
MESSAGE(M_LESSON_LOOK_RECAP, "t",
    "\"{0}\", an earlier stage, was shaky in 2 of the last 3 times it came back.")
MESSAGE(M_LESSON_LOOK_HURRY, "",
    "is it hurried? Hear the widest stage before this one.")
MESSAGE(M_LESSON_LOOK_RESETS, "mtw",
    "{0} {1} was stopped and begun again {2} times.")
MESSAGE(M_LESSON_LOOK_DAYS, "ww",
    "{0} of {1} days were practised. When in the day does it fit?")
MESSAGE(M_LESSON_LOOK_NONE, "t", "nothing stands out. Hear \"{0}\".")

/* --- the week in lines --- */
MESSAGE(M_LESSON_STAGE, "tw",
    "Stage: \"{0}\", {1} practice {1|day|days} on it.")
MESSAGE(M_LESSON_DAYS, "www",
    "Days: {0} of 7, in {1} {1|session|sessions}. The file says {2}.")
MESSAGE(M_LESSON_TIME, "cc", "Minutes: {0} in all, {1} on the longest day.")
MESSAGE(M_LESSON_BOWS, "t", "Bows: {0}.")
MESSAGE(M_LESSON_BOWS_ONE, "tw", "{0} has {1}")
MESSAGE(M_LESSON_FIRST_GO, "ww",
    "First rounds of the day: {0} of {1} all clean.")
MESSAGE(M_LESSON_FIRST_GO_NONE, "", "First rounds of the day: no marks.")
MESSAGE(M_LESSON_RESETS, "w", "Turns stopped and begun again: {0}.")
MESSAGE(M_LESSON_STOPS, "wwww",
    "Sessions played whole: {0}. Ended early: {1}, cut off: {2}, for pain: {3}.")
MESSAGE(M_LESSON_SORE, "w", "Notes of something sore or painful: {0}.")
MESSAGE(M_LESSON_HURRY, "ww",
    "Signs of hurry: {0}. From {1} on, a day goes slower.")
MESSAGE(M_LESSON_LATER, "w", "Days on which a later stage was asked for: {0}.")
MESSAGE(M_LESSON_HEARD, "ww",
    "Bows a microphone listened to: {0}. Every top was heard in {1}.")
MESSAGE(M_LESSON_RECAP, "t", "Earlier stages shaky in 2 of 3 returns: {0}.")
MESSAGE(M_LESSON_RECAP_NONE, "", "Earlier stages shaky in 2 of 3 returns: none.")
MESSAGE(M_LESSON_ASKS, "t", "Asks: {0}")
MESSAGE(M_LESSON_ASKS_NOTHING, "", "Asks: nothing.")

/* --- the pictures --- */
MESSAGE(M_LESSON_CHART_MINUTES, "", "minutes")
MESSAGE(M_LESSON_CHART_BOWS, "", "bows")
MESSAGE(M_LESSON_CHART_FIRST_GO, "", "first rounds")
MESSAGE(M_LESSON_CHART_RUNG, "w", "at {0}")
