/* check.h - sentences of check, new and the dry run; see ../message_list.h */

/* --- the dry run: sentences and headings --- */
MESSAGE(M_DRY_SESSIONS, "cwww",
    "A session has {0} at most. {1} {1|session|sessions} a day, {2} "
    "{2|hour|hours} apart, {3} {3|day|days} a week.")
MESSAGE(M_DRY_SESSION, "cw",
    "A session has {0} at most. One session a day, {1} {1|day|days} a week.")
MESSAGE(M_DRY_NEW_STAGE, "wc",
    "In the first {0} days of a stage a session has {1} at most, and so has "
    "each one below.")
MESSAGE(M_DRY_HOMEWORK, "tt", "Homework: work on {0}, no further than {1}.")
MESSAGE(M_DRY_HOMEWORK_FOR, "ttt",
    "Homework for {0}: work on {1}, no further than {2}.")
MESSAGE(M_DRY_MINUTES, "",
    "The first session of each stage: when its blocks begin and when it ends")
MESSAGE(M_DRY_BOWS_FINGERS, "", "Bows of each finger in that session")
MESSAGE(M_DRY_BOWS_PAIRS, "", "Bows of each pair in that session")
MESSAGE(M_DRY_BOWS_STRINGS, "",
    "Bows of each pair of strings in that session")
MESSAGE(M_DRY_METRES, "w",
    "Metres of slide in that session, and the most, with {0} pulses in every "
    "bow")
MESSAGE(M_DRY_SPEED, "",
    "Mean speed of the fastest fingertip, in metres a second (0.7 is the most)")
MESSAGE(M_DRY_NO_SLIDE, "",
    "Nothing slides along the string in this routine.")
MESSAGE(M_DRY_CYCLE, "",
    "Earlier stages that come back, a line for each session when all is clean")
MESSAGE(M_DRY_PASS_OVER, "wcnc",
    "One pass through {0|the stage|all stages} takes {1}, {2} s over {3}. "
    "Earlier stages come back in turns, over several sessions.")
MESSAGE(M_DRY_PASS_FITS, "wcc",
    "One pass through {0|the stage|all stages} takes {1} and fits into {2}.")

/* --- the dry run: what stands under the headings --- */
MESSAGE(M_DRY_BEGINS, "tc", "{0} {1}")
MESSAGE(M_DRY_ENDS, "c", "end {0}")
MESSAGE(M_DRY_STAGE, "t", "{0}")
MESSAGE(M_DRY_SWINGS, "w", "{0} {0|swing|swings}, no bow")
MESSAGE(M_DRY_BOWS_EVEN, "ww", "{0} each, {1} in all")
MESSAGE(M_DRY_BOWS_ONE, "tw", "{0}: {1}")
MESSAGE(M_DRY_BOWS_ALL, "w", "{0} in all")
MESSAGE(M_DRY_SLIDE_FINGER, "tn", "finger {0}: {1}")
MESSAGE(M_DRY_SLIDE_FINGER_TO, "tnn", "finger {0}: {1} to {2}")
MESSAGE(M_DRY_SLIDE_OTHER, "tn", "{0}: {1}")
MESSAGE(M_DRY_SLIDE_OTHER_TO, "tnn", "{0}: {1} to {2}")
MESSAGE(M_DRY_SPEED_AT, "nw", "{0} with {1} pulses")

/* --- check --- */
MESSAGE(M_CHECK_GOOD, "ttww",
    "{0} is good: {1}, edition {2}, {3} {3|stage|stages}.")
MESSAGE(M_CHECK_GONE, "tw",
    "stage \"{0}\" has {1} {1|turn|turns} of history and is gone from this "
    "edition. If you renamed it, add to the new one: was: {0}. If it is meant "
    "to go, leave it so")
MESSAGE(M_CHECK_NO_HISTORY, "",
    "stages with history that are gone from this edition were not looked for")
MESSAGE(M_CHECK_NO_PLAYER, "t",
    "there is no journal of a player called \"{0}\"")

/* --- new --- */
MESSAGE(M_NEW_UNKNOWN, "tt",
    "no routine called \"{0}\" comes with evenhand. There are: {1}")
MESSAGE(M_NEW_WRITTEN, "tt", "{0} is written, from {1}.")
MESSAGE(M_NEW_NEXT, "t",
    "Change what you like, then see what it comes to: evenhand check {0}")
MESSAGE(M_NEW_NEEDS, "ttt",
    "It goes with a routine called {0} in the same folder, which is not there "
    "yet. To write it: evenhand new {1} --from {2}")
