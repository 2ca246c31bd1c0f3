/* where.h - sentences of where the student stands; see ../message_list.h */

/* --- days away (rule F5) --- */
MESSAGE(M_WHERE_AWAY_LOWER, "w",
    "{0} days without practice: all is one step lower today.")
MESSAGE(M_WHERE_AWAY_RECAP, "wwct",
    "{0} days without practice: {1} percent of the time, {2}, and earlier "
    "stages only. When all of it is clean, \"{3}\" comes back next time, at the "
    "lowest step.")
MESSAGE(M_WHERE_AWAY_RECAP_AGAIN, "ct",
    "After the days away not all was clean yet: earlier stages once more, {0}. "
    "When all of it is clean, \"{1}\" comes back next time.")
MESSAGE(M_WHERE_AWAY_SELF, "wwc",
    "{0} days without practice: {1} percent of the time, {2}, at the lowest "
    "step, until all is clean.")
MESSAGE(M_WHERE_AWAY_SELF_AGAIN, "c",
    "After the days away not all was clean yet: {0} once more, at the lowest "
    "step.")
MESSAGE(M_WHERE_AWAY_BACK, "wtwc",
    "{0} days without practice: today works on \"{1}\", in {2} percent of the "
    "time, {3}. The next sessions grow again.")
MESSAGE(M_WHERE_AWAY_GROWS, "wc",
    "The second session after a long time away takes {0} percent of the time, "
    "{1}.")
MESSAGE(M_WHERE_AWAY_START, "wt",
    "{0} days without practice: begin again with \"{1}\", after a word with your "
    "teacher. Each stage leads on after one day that is all clean.")
MESSAGE(M_WHERE_AWAY_TABLE, "wwwww",
    "Days without practice: up to {0} change nothing; {1} to {2} cost one step; "
    "up to {3} bring earlier stages first; up to {4} one stage back; more, the "
    "first stage.")
MESSAGE(M_WHERE_RUNG_AWAY, "w",
    "The work begins at {0} pulses, the lowest step, because of the days away.")
MESSAGE(M_WHERE_RUNG_SHORT_AWAY, "w",
    "The work begins at {0} pulses, because of the days away.")

/* --- back and on again (rule F4) --- */
MESSAGE(M_WHERE_BACK, "tddt",
    "\"{0}\" was shaky from the start on two practice days running, {1} and {2}. "
    "Today goes one stage back, to \"{3}\".")
MESSAGE(M_WHERE_STAYS, "tt",
    "You are at \"{0}\". One day on which its first round is all clean leads on "
    "to \"{1}\".")
MESSAGE(M_WHERE_ON, "tt", "\"{0}\" was all clean, so today goes on to \"{1}\".")
MESSAGE(M_WHERE_SECURE, "tt",
    "\"{0}\" is secure, so today goes on to \"{1}\".")
MESSAGE(M_WHERE_BACK_RULE, "",
    "One bad day never leads back; two running, with half or more shaky at the "
    "lowest step, do.")

/* --- how a stage stands (rule F4) --- */
MESSAGE(M_STANDING_READY, "t",
    "Ready to show: play \"{0}\" to your teacher at the next lesson.")
MESSAGE(M_STANDING_READY_STUDENT, "t", "\"{0}\" is secure.")
MESSAGE(M_STANDING_WELL, "tdw",
    "Stay with \"{0}\": something hurt on {1}. It counts again after {2} clear "
    "days.")
MESSAGE(M_STANDING_DAYS, "tww",
    "Stay with \"{0}\": {1} of {2} practice days so far.")
MESSAGE(M_STANDING_DAYS_NONE, "tw",
    "\"{0}\" is new: it takes {1} practice days or more.")
MESSAGE(M_STANDING_RUNG, "tww",
    "Stay with \"{0}\": the last first round was at {1} pulses, and {2} are "
    "wanted.")
MESSAGE(M_STANDING_UNIT, "tmtd",
    "Stay with \"{0}\": {1} {2} was shaky in the first round on {3}.")
MESSAGE(M_STANDING_UNIT_TEACHER, "tmtd",
    "Stay with \"{0}\": your teacher marked {1} {2} shaky on {3}.")
MESSAGE(M_STANDING_SWING, "td",
    "Stay with \"{0}\": the first swing on {1} was shaky.")
MESSAGE(M_STANDING_MARK, "tmt",
    "Stay with \"{0}\": {1} {2} has no mark from the last first round.")
MESSAGE(M_STANDING_MARK_NONE, "t",
    "Stay with \"{0}\": there is no mark from the last day's first round.")
MESSAGE(M_STANDING_CLEAN_DAYS, "twww",
    "Stay with \"{0}\": the first round was all clean at the top step on {1} of "
    "the last {2} practice days, and {3} are wanted.")
MESSAGE(M_STANDING_SHARE, "tmtww",
    "Stay with \"{0}\": {1} {2} has had {3} percent of its bows, and at least "
    "{4} are wanted. Whole sessions even it out.")
MESSAGE(M_STANDING_HEARD, "tww",
    "Stay with \"{0}\": in {2} of {1} bows every top was heard. A microphone can "
    "be wrong, so look at it together in the lesson.")
MESSAGE(M_STANDING_MORE, "w",
    "With first rounds all clean at the top step it can be shown after {0} more "
    "practice {0|day|days}.")
MESSAGE(M_STANDING_MORE_AIR, "w",
    "With a clean first swing each day it can be shown after {0} more practice "
    "{0|day|days}.")
MESSAGE(M_STANDING_COUNTS, "wwwwww",
    "Practice days: {0}, and {1} or more are wanted. First rounds all clean at {5} "
    "pulses: {2} of the last {3}, and {4} are wanted, the latest one included.")
MESSAGE(M_STANDING_COUNTS_AIR, "wwwww",
    "Practice days: {0}, and {1} or more are wanted. First swings clean: {2} of "
    "the last {3}, and {4} are wanted, the latest one included.")
MESSAGE(M_STANDING_COUNTS_HEARD, "wwww",
    "Bows that were listened to on these days: {0}. Every top was heard in {1} "
    "of them, and in {2} percent it is wanted, once there are {3} or more.")
MESSAGE(M_STANDING_ODDS, "",
    "A mark is only a mark: who is truly clean 8 times of 10 with each finger "
    "passes by day 6 in 42 of 100 cases and by day 12 in 83. So earlier stages "
    "come back, and the teacher decides.")
