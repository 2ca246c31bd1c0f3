/* coach.h - sentences of coach; see ../message_list.h */

/* --- what takes a turn --- */
MESSAGE(M_COACH_FINGER, "", "finger")
MESSAGE(M_COACH_PAIR, "", "pair of fingers")
MESSAGE(M_COACH_STRINGS, "", "pair of strings")

/* --- reasons: the stage and the cap --- */
MESSAGE(M_COACH_WORK, "tw", "You work on \"{0}\". This is day {1} on it.")
MESSAGE(M_COACH_LIMIT, "t",
    "Your teacher's file lets you go as far as \"{0}\". What comes after it is "
    "opened in the lesson.")
MESSAGE(M_COACH_CAP, "cc",
    "Today has {0} at most and takes {1}. What is left stays empty: rest is "
    "part of the work.")
MESSAGE(M_COACH_CAP_NEW, "cwc",
    "The file gives {0}. In the first {1} days of a stage it stays at {2}, so "
    "that skin and hand get used to it.")
MESSAGE(M_COACH_EASED, "dwwcw",
    "Pain was noted on {0}. For {1} clear days after it you take {2} percent of "
    "the time, {3}, at {4} pulses, and nothing wider than a tone.")
MESSAGE(M_COACH_NO_WORK, "t",
    "\"{0}\" is wider than a tone, so it rests until those days are over.")
MESSAGE(M_COACH_REST_TODAY, "",
    "Pain was noted today. Nothing more is played before four tomorrow "
    "morning, and then only if it is quite gone.")
MESSAGE(M_COACH_REST_TONIGHT, "",
    "Pain was noted today. Nothing more is played before four this morning, "
    "and then only if it is quite gone.")
MESSAGE(M_COACH_ASK_FIRST, "w",
    "There was pain on two days within {0}. Nothing is played until your "
    "teacher has written \"seen: yes\" in the file: it means that someone who "
    "treats hands was asked.")
MESSAGE(M_COACH_NOTHING, "",
    "Nothing is left that may be played today. Rest is part of the work.")
MESSAGE(M_COACH_TOO_SHORT, "c",
    "{0} is too short for a round, so only the arm swings today.")

/* --- reasons: sore --- */
MESSAGE(M_COACH_HURT, "t",
    "Left out today because it is sore: finger {0}. The session gets shorter; "
    "no other finger gets its turns.")
MESSAGE(M_COACH_HURT_ALL, "",
    "With that too few are left to take turns, so only the arm swings today.")
MESSAGE(M_COACH_AIR_ONLY, "",
    "Something is sore, so today holds nothing but the swing in the air.")
MESSAGE(M_COACH_APART, "tw",
    "{0} has {1} {1|turn|turns} fewer today, because too few others are left "
    "to play between.")

/* --- reasons: what goes in (rule F2) --- */
MESSAGE(M_COACH_TIMES, "wnnnwn",
    "A turn is {0} {0|bow|bows} of {1} seconds and {2} seconds to change: {3} "
    "seconds. A round has {4} {4|turn|turns}: {5} seconds.")
MESSAGE(M_COACH_TIMES_ROUND, "wnnnwn",
    "A turn is {0} {0|bow|bows} of {1} seconds. Between turns there are {2} "
    "seconds, after the last of a round {3}, in which it is marked. A round has "
    "{4} {4|turn|turns}: {5} seconds.")
MESSAGE(M_COACH_LEAD, "nwn",
    "Each part begins with {0} seconds to settle and {1} {1|bow|bows} to count "
    "in: {2} seconds.")
MESSAGE(M_COACH_AIR, "t", "\"{0}\" comes first, to loosen the arm.")
MESSAGE(M_COACH_SWINGS, "wnc",
    "{0} {0|swing|swings} of {1} seconds fit into {2}.")
MESSAGE(M_COACH_SWING_MARK, "",
    "Each swing is marked; the first of the day is the one that counts.")
MESSAGE(M_COACH_RECAP_LONG, "tw",
    "\"{0}\" comes back: it was not played for {1} sessions.")
MESSAGE(M_COACH_RECAP_NEW, "t",
    "\"{0}\" comes too: it was not played here yet.")
MESSAGE(M_COACH_RECAP_SHAKY, "t",
    "\"{0}\" comes back: it was shaky last time.")
MESSAGE(M_COACH_RECAP_TURN, "t", "\"{0}\" comes back: it is its turn.")
MESSAGE(M_COACH_RECAP_WAITS, "t",
    "\"{0}\" waits: it comes back in another session.")
MESSAGE(M_COACH_RECAP_ORDER, "w",
    "First comes what was not played for {0} sessions, longest ago first; then "
    "what was shaky, then what was played longest ago, then what came back "
    "least often.")
MESSAGE(M_COACH_RECAP_FACTS, "tww",
    "\"{0}\" was last played {1} {1|session|sessions} ago and has come back "
    "{2} {2|time|times}.")
MESSAGE(M_COACH_RECAP_FACTS_NEW, "tw",
    "\"{0}\" was not played in any of {1} {1|session|sessions}.")
MESSAGE(M_COACH_RECAP_PART, "cwwcc",
    "Air and earlier stages may take {0}, which is {1}/{2} of {3}. "
    "They take {4}.")
MESSAGE(M_COACH_RECAP_CLEAN, "tw",
    "\"{0}\" is played at {1} pulses, where it was last all clean.")
MESSAGE(M_COACH_RECAP_START, "tw",
    "\"{0}\" has no round all clean here yet: it is played at {1} pulses, as a "
    "new stage begins.")
MESSAGE(M_COACH_RECAP_LOWER, "tww",
    "\"{0}\" is played at {1} pulses today, and not at {2}.")
MESSAGE(M_COACH_ROUNDS, "cccwc",
    "{0} less {1} for what comes first and {2} to get ready leaves room for {3} "
    "{3|round|rounds} of {4}.")

/* --- reasons: whose turn (rule F1) --- */
MESSAGE(M_COACH_EVEN, "mw",
    "Each {0} gets the same share of today's work: {1} {1|turn|turns}.")
MESSAGE(M_COACH_MISSED, "t",
    "A session of this week ended early. Those who missed a turn begin: {0}.")
MESSAGE(M_COACH_MORE, "t",
    "The past was uneven. More turns today for: {0}.")
MESSAGE(M_COACH_BOUNDS, "mww",
    "Each {0} has at least {1} and at most {2} {2|turn|turns} of work, and none "
    "plays twice running.")
MESSAGE(M_COACH_MISSED_ONE, "mtww",
    "For {0} {1}: {2} {2|turn|turns} to make up from cut-off sessions of this "
    "week, {3} today.")
MESSAGE(M_COACH_COUNTED_ONE, "mtww",
    "For {0} {1}: {2} {2|turn|turns} of work so far, {3} today.")
MESSAGE(M_COACH_CATCH_UP_WIDE, "w",
    "Catching up waits for the first {0} days of a stage wider than a tone.")
MESSAGE(M_COACH_CATCH_UP_HURT, "w",
    "Catching up waits: something hurt in the last {0} days.")

/* --- reasons: how many pulses (rule F3) --- */
MESSAGE(M_COACH_RUNG_NEW, "w",
    "The work begins at {0} pulses, as a new stage does.")
MESSAGE(M_COACH_RUNG_CLEAN, "w",
    "The work begins at {0} pulses: your last round was all clean.")
MESSAGE(M_COACH_RUNG_LOWER, "ww",
    "The work begins one step lower, at {0} pulses: your last round at {1} was "
    "not all clean.")
MESSAGE(M_COACH_RUNG_LOWEST, "w",
    "The work begins at {0} pulses, the lowest step: your last round was not "
    "all clean.")
MESSAGE(M_COACH_RUNG_KEPT, "w",
    "The work begins at {0} pulses again: your last round was not marked to its "
    "end.")
MESSAGE(M_COACH_RUNG_NEXT, "w",
    "One more round all clean and it goes up to {0}.")
MESSAGE(M_COACH_RUNG_UP, "",
    "Two rounds running all clean: one step up, once a session at most.")
MESSAGE(M_COACH_RUNG_DOWN, "",
    "A round with half of its turns shaky, or more: one step down at once.")

/* --- reasons: what a week may hold (rule F5) --- */
MESSAGE(M_COACH_LOAD_OVER_METRES, "wnn",
    "With all that could be played today, the tip of finger {0} would slide {1} "
    "metres in seven days. {2} are allowed this week.")
MESSAGE(M_COACH_LOAD_OVER_PULSES, "www",
    "With all that could be played today, finger {0} would come to {1} pulses "
    "in seven days. {2} are allowed this week.")
MESSAGE(M_COACH_LOAD_RECAPS, "w",
    "So earlier stages wider than a tone are played at {0} pulses.")
MESSAGE(M_COACH_LOAD_NO_CLIMB, "w",
    "So the work stays at {0} pulses today, however clean it is.")
MESSAGE(M_COACH_LOAD_LOWEST, "w",
    "So the work is played at {0} pulses today, the lowest step.")
MESSAGE(M_COACH_LOAD_SHORT, "cc",
    "So today has {0} instead of {1}: skin and hand need time to get used to "
    "more.")
MESSAGE(M_COACH_LOAD_AIR, "",
    "So only the arm swings today. Rest is part of the work.")
MESSAGE(M_COACH_LOAD_REST, "",
    "So another session today is left out.")
MESSAGE(M_COACH_LOAD_FINGER, "wnnww",
    "Finger {0}: with today at most {1} of {2} metres and {3} of {4} pulses in "
    "seven days.")
MESSAGE(M_COACH_LOAD_GROWS, "ww",
    "A week may hold {0} percent more than the week before; after {1} rising "
    "weeks the next one does not rise.")
MESSAGE(M_COACH_LOAD_BASE, "www",
    "A week may always hold {0} sessions of five minutes with {1} bows of each "
    "finger at the widest stage and {2} pulses, and never more than twice that.")

/* --- reasons: hurry (rule F7) --- */
MESSAGE(M_COACH_HURRY_RUNG, "w",
    "Today is a slower day: the work begins one step lower, at {0} pulses, and "
    "earlier stages may take more of the time.")
MESSAGE(M_COACH_HURRY_AFTER, "w",
    "Today is a slower day: after the first round the work goes one step lower, "
    "to {0} pulses, and earlier stages may take more of the time.")
MESSAGE(M_COACH_HURRY, "",
    "Today is a slower day: earlier stages may take more of the time.")
MESSAGE(M_COACH_HURRY_UNHEARD, "www",
    "Days of the last {0} on which {2} turns or more were marked clean without "
    "a bow in which every top was heard: {1}. A microphone can be wrong, so "
    "together they count once.")
MESSAGE(M_COACH_HURRY_SIGNS, "wwwwww",
    "In {0} days: sessions begun before the pause was over: {1}; beyond those "
    "of a day: {2}; days on which a later stage was asked for, which count "
    "twice: {3}. Together {4}; from {5} on a day is a slower one.")

/* --- cautions --- */
MESSAGE(M_COACH_CAUTION_AID, "",
    "This is a practice aid for use with a teacher. It cannot see your hands "
    "and gives no medical advice. Where local rules or a licensed professional "
    "say otherwise, follow them.")
MESSAGE(M_COACH_CAUTION_CHILD, "",
    "A grown-up should know about these exercises and hear about any soreness.")
MESSAGE(M_COACH_CAUTION_DOCTOR, "",
    "Diabetes, poor feeling in the fingers, blood thinners or fragile skin: ask "
    "your doctor before exercises that rub the fingertips.")
MESSAGE(M_COACH_CAUTION_LOWER, "",
    "After an illness or injury, with very bendy joints, in a growth spurt or on "
    "a bigger instrument: start lower, and follow the advice of the person "
    "treating you before this plan.")
MESSAGE(M_COACH_CAUTION_START, "",
    "Warm hands? Nails short? Nothing sore from last time?")
MESSAGE(M_COACH_CAUTION_START_FIRST, "",
    "Warm hands? Nails short? Nothing sore today?")
MESSAGE(M_COACH_CAUTION_HURRY, "",
    "Close to the goal, hurry creeps in. Keep it as loose as the widest stage.")
MESSAGE(M_COACH_CAUTION_SAY, "t", "Your teacher's words: {0}")
MESSAGE(M_COACH_CAUTION_PAIN, "",
    "Playing through pain is not practice. Sharp pain, or pain that stays, "
    "wakes you or comes back: see a doctor, physiotherapist or hand therapist.")
MESSAGE(M_COACH_CAUTION_NUMB, "",
    "Numbness, tingling, weakness or swelling: stop, not again today, and have "
    "it looked at soon. Sudden weakness on one side, trouble with face or "
    "speech, chest pain: call the emergency number.")
MESSAGE(M_COACH_CAUTION_ASK, "",
    "We stop here until your teacher, and someone licensed to treat hands, have "
    "been asked.")
MESSAGE(M_COACH_CAUTION_SKIN, "",
    "Leave a sore finger out until it has healed. A blister: keep it clean and "
    "do not burst it. Redness that spreads, pus or fever: see a doctor or "
    "pharmacist.")
MESSAGE(M_COACH_CAUTION_ENOUGH, "w",
    "You have had {0} {0|session|sessions} today. Rest is part of the work. "
    "Other playing counts too.")
MESSAGE(M_COACH_CAUTION_GAP, "wh",
    "Sessions are {0} {0|hour|hours} apart: the next one is due at {1}.")
MESSAGE(M_COACH_CAUTION_DAY_OFF, "www",
    "You practised on {0} of the {1} days before today. The file says {2} "
    "{2|day|days} a week: a day off is part of the work.")

/* --- the plan in words --- */
MESSAGE(M_COACH_LINE_HEAD, "twc", "Today: {0}, day {1}. It ends at {2}.")
MESSAGE(M_COACH_LINE_HEAD_RESTS, "tc", "Today: {0} rests. It ends at {1}.")
MESSAGE(M_COACH_LINE_AIR, "ctw", "{0} in the air: {1}, {2} {2|swing|swings}.")
MESSAGE(M_COACH_LINE_RECAP, "ctmtw",
    "{0} again: {1}. Each {2} once, {3}, at {4} pulses.")
MESSAGE(M_COACH_LINE_WORK, "ctww",
    "{0} the work: {1}. {2} {2|round|rounds}, beginning at {3} pulses.")
MESSAGE(M_COACH_LINE_FIRST_GO, "wt", "Round {0}, the first go: {1}.")
MESSAGE(M_COACH_LINE_TIMES, "wt", "Round {0}: {1}.")
MESSAGE(M_COACH_LINE_ROUND, "wct", "Round {0} at {1}: {2}.")
MESSAGE(M_COACH_LINE_UNIT_AT, "mtc", "{0} {1} at {2}")
MESSAGE(M_COACH_LINE_AT, "tc", "{0} at {1}")
MESSAGE(M_COACH_LINE_END_EVEN, "cwwm",
    "{0} the end: {1} {1|bow|bows}, {2} for each {3}.")
MESSAGE(M_COACH_LINE_END_EACH, "cwt",
    "{0} the end: {1} {1|bow|bows}; {2}.")
MESSAGE(M_COACH_LINE_END_AIR, "c", "{0} the end.")
MESSAGE(M_COACH_LINE_BOWS, "mtw", "{0} {1} has {2}")
MESSAGE(M_COACH_LINE_BOWS_NEXT, "tw", "{0} has {1}")
MESSAGE(M_COACH_LINE_REST, "", "Nothing is played today.")
MESSAGE(M_COACH_LINE_NOTE, "t", "From your teacher: {0}")
MESSAGE(M_COACH_LINE_WHY, "", "Why it is so:")
MESSAGE(M_COACH_LINE_GROUNDS, "",
    "[C] is common practice among teachers, [P] comes from published work, and "
    "[O] is our own choice.")
