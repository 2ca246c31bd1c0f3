/* session.h - sentences of session; see ../message_list.h */

/* --- what takes a turn, inside a sentence --- */
MESSAGE(M_SESSION_FINGER, "t", "finger {0}")
MESSAGE(M_SESSION_PAIR, "t", "fingers {0}")
MESSAGE(M_SESSION_STRINGS, "t", "strings {0}")
MESSAGE(M_SESSION_DIGIT, "wt", "{0} for {1}")

/* --- lead-in --- */
MESSAGE(M_SESSION_LEAD_AIR, "t", "In the air: {0}.")
MESSAGE(M_SESSION_LEAD_RECAP, "tw", "Again: {0}, {1} pulses.")
MESSAGE(M_SESSION_LEAD_WORK, "tw", "Work: {0}, {1} pulses.")
MESSAGE(M_SESSION_CUE_FIRST, "tt", "{0}, {1}.")
MESSAGE(M_SESSION_FIRST, "t", "First: {0}.")
MESSAGE(M_SESSION_CUE, "t", "{0}.")

/* --- change --- */
MESSAGE(M_SESSION_NEXT, "t", "Next: {0}.")
MESSAGE(M_SESSION_MARK_TURN, "", "Clean or shaky?")
MESSAGE(M_SESSION_MARK_TURN_NEXT, "t", "Clean or shaky? Next: {0}.")
MESSAGE(M_SESSION_MARK_ROUND, "", "How was this round?")
MESSAGE(M_SESSION_MARK_ROUND_NEXT, "t", "How was this round? Next: {0}.")
MESSAGE(M_SESSION_STILL_THERE, "", "Still there? Mark now, or it ends soon.")
MESSAGE(M_SESSION_STILL_THERE_DIGIT, "", "Still there? A digit says yes.")
MESSAGE(M_SESSION_NEXT_PULSES, "w", "Next: {0} pulses.")
MESSAGE(M_SESSION_MARKED_CLEAN, "", "Marked: clean.")
MESSAGE(M_SESSION_MARKED_SHAKY, "", "Marked: shaky.")
MESSAGE(M_SESSION_UNMARKED, "", "No mark now.")
MESSAGE(M_SESSION_ROUND_CLEAN, "", "Marked: all clean.")
MESSAGE(M_SESSION_ROUND_SHAKY, "", "Marked: all shaky.")
MESSAGE(M_SESSION_ROUND_SOME, "t", "Marked shaky: {0}. The others clean.")
MESSAGE(M_SESSION_ROUND_UNMARKED, "", "No marks now.")
MESSAGE(M_SESSION_NO_SUCH, "w", "{0} is not in this round.")

/* --- what was heard, in play: in one breath --- */
MESSAGE(M_HEARD_SAY_COUNT, "ww", "{0} of {1} tops heard.")
MESSAGE(M_HEARD_SAY_FEW, "ww", "{0} of {1} heard.")
MESSAGE(M_HEARD_SAY_LISTEN, "t", "Listen to {0}.")
MESSAGE(M_HEARD_SAY_CLEAN_MISSING, "tw",
    "You marked {0} clean: {1} {1|top|tops} not heard.")
MESSAGE(M_HEARD_SAY_MISSING, "tw", "{1} {1|top|tops} of {0} not heard.")
MESSAGE(M_HEARD_SAY_SHORT, "t", "A little short: {0}.")
MESSAGE(M_HEARD_SAY_LATE, "", "The tops came late.")
MESSAGE(M_HEARD_SAY_EARLY, "", "The tops came early.")
MESSAGE(M_HEARD_SAY_SWINGS, "n", "{0} swings a second.")
MESSAGE(M_HEARD_SAY_UNHEARD, "", "That was not heard.")
MESSAGE(M_HEARD_SAY_ELSEWHERE, "", "Other notes were heard.")
MESSAGE(M_HEARD_SAY_STRING, "", "Another string?")

/* --- and when all was played, by block --- */
MESSAGE(M_HEARD_BLOCK, "tww", "\"{0}\": {1} of {2} tops were heard.")
MESSAGE(M_HEARD_BLOCK_ALL, "tw", "\"{0}\": all {1} tops were heard.")
MESSAGE(M_HEARD_BLOCK_ONLY, "tt", "\"{0}\": {1}")
MESSAGE(M_HEARD_BLOCK_UNHEARD, "t", "\"{0}\" could not be heard.")
MESSAGE(M_HEARD_BLOCK_ELSEWHERE, "t",
    "\"{0}\": other notes were heard than it asks for. Was it another string?")
MESSAGE(M_HEARD_TWO, "tt", "{0} {1}")
MESSAGE(M_HEARD_CLEAN_MISSING, "tw",
    "You marked {0} clean; {1} {1|top was|tops were} not heard. Listen for "
    "{1|it|them}.")
MESSAGE(M_HEARD_MISSING, "tw",
    "For {0}, {1} {1|was|were} not heard. Listen for {1|it|them}.")
MESSAGE(M_HEARD_SHORT, "t", "The way up was a little short for {0}.")
MESSAGE(M_HEARD_BOW, "w", "The bow stopped {0} {0|time|times}.")
MESSAGE(M_HEARD_LATE, "", "They came a little after the pulses.")
MESSAGE(M_HEARD_EARLY, "", "They came a little before the pulses.")
MESSAGE(M_HEARD_SWINGS, "n", "It swung about {0} times a second.")
MESSAGE(M_HEARD_DEAF, "",
    "The microphone heard next to nothing. Is it on, and is it the right one?")
MESSAGE(M_HEARD_FAR, "",
    "The microphone is far away, so nothing is said of how far a finger went. 30 "
    "to 40 centimetres are good.")

/* --- silence and going on --- */
MESSAGE(M_SESSION_SWING, "", "the swing")
MESSAGE(M_SESSION_AGAIN, "t", "Again: {0}.")
MESSAGE(M_SESSION_GOES_ON, "t", "Going on: {0}.")
MESSAGE(M_SESSION_GAP, "", "The program stood still for a while.")
MESSAGE(M_SESSION_SOUND_LOST, "",
    "The sound is gone. Go on; it comes back.")
MESSAGE(M_SESSION_SOUND_BACK, "", "The sound is back.")
MESSAGE(M_SESSION_SOUND_AGAIN, "", "Sound is back.")

/* --- before and after --- */
MESSAGE(M_SESSION_ASK_WHY, "",
    "Last time no key came for three minutes and the session ended. Was "
    "something in the way? You can tell your teacher at the end.")
MESSAGE(M_SESSION_NOT_TODAY, "", "Not today, then. Rest is part of the work.")
MESSAGE(M_SESSION_STOP_NOW, "", "Stop now. That is enough for today.")
MESSAGE(M_SESSION_ALONE, "",
    "No key came for three minutes, so this ended by itself.")
MESSAGE(M_SESSION_QUESTION_KEPT, "", "Your question is kept for your teacher.")

/* --- where it hurts --- */
MESSAGE(M_SESSION_WORD_THUMB, "", "thumb")
MESSAGE(M_SESSION_WORD_HAND, "", "hand")
MESSAGE(M_SESSION_WORD_WRIST, "", "wrist")
MESSAGE(M_SESSION_WORD_ARM, "", "arm")
MESSAGE(M_SESSION_WORD_SHOULDER, "", "shoulder")
MESSAGE(M_SESSION_WORD_NECK, "", "neck")
MESSAGE(M_SESSION_WORD_NUMB, "", "numb, tingling, weak or swollen")
MESSAGE(M_SESSION_WORD_ELSEWHERE, "", "somewhere else")
MESSAGE(M_SESSION_CHOICE_SKIN, "w", "The skin of finger {0}?")
MESSAGE(M_SESSION_CHOICE_NOT_SORE, "",
    "Nothing is sore, the key was a slip?")
MESSAGE(M_SESSION_CHOICE_AIR, "", "Somewhere else? Then only the air stage.")
MESSAGE(M_SESSION_CHOICE_NOT_TODAY, "", "Rather not today?")
MESSAGE(M_SESSION_CHOICE_PLACE, "m", "Here: {0}?")
MESSAGE(M_SESSION_CHOICE_SLIP, "", "Nothing hurts, the key was a slip?")

/* --- one thing to keep, and the next time --- */
MESSAGE(M_SESSION_KEEP_FIRST_GO, "ttt",
    "One thing to keep: {2}. It is for {0}, shaky first go at \"{1}\".")
MESSAGE(M_SESSION_KEEP_SHAKY, "ttt",
    "One thing to keep: {2}. It is for {0}, shaky at \"{1}\".")
MESSAGE(M_SESSION_KEEP_AIR, "tt",
    "One thing to keep: {1}. \"{0}\" was shaky.")
MESSAGE(M_SESSION_KEEP_CLEAN, "t",
    "One thing to keep: {0}. Nothing was marked shaky.")
MESSAGE(M_SESSION_KEEP_CHECK, "t", "One thing to keep: {0}.")
MESSAGE(M_SESSION_KEEP_LOOSE, "", "slow and loose")
MESSAGE(M_SESSION_NEXT_TODAY, "h", "Next session: not before {0} today.")
MESSAGE(M_SESSION_NEXT_ANY, "",
    "Nothing counts yet today: begin again whenever you like.")
MESSAGE(M_SESSION_NEXT_TOMORROW, "", "Next session: tomorrow.")
MESSAGE(M_SESSION_NEXT_AFTER_SLEEP, "", "Next session: after a night's sleep.")
MESSAGE(M_SESSION_NEXT_PAIN, "",
    "No start before four tomorrow morning, and then only if it is quite gone.")
MESSAGE(M_SESSION_NEXT_PAIN_NIGHT, "",
    "No start before four this morning, and then only if it is quite gone.")

/* --- help: the keys of a page --- */
MESSAGE(M_SESSION_HELP_SORE, "",
    "Forward: nothing is sore. Back: something is. h: it hurts. q: leave.")
MESSAGE(M_SESSION_HELP_WHERE, "",
    "Forward: this one. Back: the next one. A digit: the skin of that finger.")
MESSAGE(M_SESSION_HELP_TODAY, "",
    "Forward: begin. Back: not today. A digit: leave that finger out.")
MESSAGE(M_SESSION_HELP_PLAY_TURN, "",
    "Forward: clean. Back: shaky. Space: silence. h: it hurts.")
MESSAGE(M_SESSION_HELP_PLAY_ROUND, "",
    "Forward: clean. Back: shaky. A digit: that one. Space: silence. h: it "
    "hurts.")
MESSAGE(M_SESSION_HELP_PLAY_DIGITS, "t",
    "Forward: clean. Back: shaky. A digit: {0}. Space: silence. h: it hurts.")
MESSAGE(M_SESSION_HELP_SILENT, "",
    "Forward: go on. Back: it hurts, or enough for today. h: it hurts. q: "
    "leave.")
MESSAGE(M_SESSION_HELP_PAIN, "", "Forward: nothing hurts. Back: it hurts.")
MESSAGE(M_SESSION_HELP_LEAVE, "", "Forward: go on. Back: end here.")
MESSAGE(M_SESSION_HELP_END, "",
    "Forward: on to a question for your teacher. Back: read this again. q: "
    "leave.")
MESSAGE(M_SESSION_HELP_QUESTION, "",
    "Type a question and press Enter, or only forward to leave. Back: the page "
    "before.")
MESSAGE(M_SESSION_HELP_REST, "", "Forward or back: leave.")

/* --- pages in words --- */
MESSAGE(M_PAGE_SORE, "",
    "Before you begin. Warm hands? Nails short? String tuned?")
MESSAGE(M_PAGE_SORE_ASK, "", "Nothing sore from last time?")
MESSAGE(M_PAGE_SORE_ASK_FIRST, "", "Nothing sore today?")
MESSAGE(M_PAGE_SORE_KEYS, "", "Forward: nothing is sore. Back: something is.")
MESSAGE(M_PAGE_FIRST_KEYS, "",
    "Two keys do all. Forward is Enter, Down, Right or Page Down. Back is "
    "Backspace, Up, Left or Page Up. ? tells the keys, h says it hurts.")
MESSAGE(M_PAGE_FIRST_MARKS, "",
    "Three minutes without a key end the session, so mark as you go.")
MESSAGE(M_PAGE_WHERE, "", "Where is it sore?")
MESSAGE(M_PAGE_PAIN_WHERE, "", "Everything is silent. Put the instrument down. Where does it hurt?")
MESSAGE(M_PAGE_WHERE_KEYS, "",
    "Forward: this one. Back: the next one. A digit: the skin of that finger.")
MESSAGE(M_PAGE_REST_KEYS, "", "Forward: leave.")
MESSAGE(M_PAGE_TODAY_KEYS, "", "Forward: begin. Back: not today.")
MESSAGE(M_PAGE_TODAY_SAY, "tt", "{0}: {1}")
MESSAGE(M_PAGE_TODAY_CHECK, "t", "Watch for: {0}.")
MESSAGE(M_PAGE_TODAY_FEEL, "t", "Feel for it: {0}")
MESSAGE(M_PAGE_PLAY, "",
    "While you bow, forward, back and Space are silence. h: it hurts.")
MESSAGE(M_PAGE_PLAY_TURN, "",
    "After each turn: forward is clean, back is shaky. The same again takes it "
    "back.")
MESSAGE(M_PAGE_PLAY_ROUND, "",
    "After each round: forward all clean, back all shaky, a digit that one "
    "shaky. The same again takes it back.")
MESSAGE(M_PAGE_PLAY_DIGITS, "t", "The digits: {0}.")
MESSAGE(M_PAGE_SILENT_AGAIN, "t",
    "Silent. A fresh start is a good habit. Forward: {0} again.")
MESSAGE(M_PAGE_SILENT_ON, "t", "Silent. Forward: on with {0}.")
MESSAGE(M_PAGE_SILENT_END, "", "Silent. Forward: to the end.")
MESSAGE(M_PAGE_SILENT_BACK, "", "Back: it hurts, or enough for today.")
MESSAGE(M_PAGE_PAIN, "", "Does something hurt?")
MESSAGE(M_PAGE_PAIN_HEAT, "",
    "Heat at a fingertip or thumb: shake out. It means rubbing or pressing. If "
    "it comes back, that is enough for today.")
MESSAGE(M_PAGE_PAIN_KEYS, "", "Forward: nothing hurts. Back: it hurts.")
MESSAGE(M_PAGE_LEAVE, "",
    "Tight or tired? Rest, or end early: a short good session counts in full.")
MESSAGE(M_PAGE_LEAVE_KEYS, "", "Forward: go on. Back: end here.")
MESSAGE(M_PAGE_END_WHOLE, "c", "That was today's session. It took {0}.")
MESSAGE(M_PAGE_END_CAP, "c",
    "Time is up, after {0}. Rest is part of the work. Other playing counts too.")
MESSAGE(M_PAGE_END_EARLY, "c", "Ended here, after {0}.")
MESSAGE(M_PAGE_END_PAIN, "c", "Stopped because it hurts, after {0}.")
MESSAGE(M_PAGE_END_NO_KEY, "c",
    "No key came for three minutes, so the session ended itself, after {0}. A "
    "mark now and then keeps it going.")
MESSAGE(M_PAGE_END_INPUT, "c", "Ended after {0}. All of it is kept.")
MESSAGE(M_PAGE_END_BOWS, "tw", "{1} for {0}")
MESSAGE(M_PAGE_END_BOWS_ALL, "wt", "{0} {0|bow|bows}: {1}.")
MESSAGE(M_PAGE_END_METRES, "n", "The fingertips travelled {0} metres.")
MESSAGE(M_PAGE_END_NO_BOWS, "", "No whole turn was bowed.")
MESSAGE(M_PAGE_END_PARENT_A, "",
    "For a parent to ask: which finger moved most easily today?")
MESSAGE(M_PAGE_END_PARENT_B, "",
    "For a parent to ask: will you show me how loose your arm is?")
MESSAGE(M_PAGE_END_PARENT_C, "",
    "For a parent to ask: what did you listen for today?")
MESSAGE(M_PAGE_END_PARENT_PAIN, "",
    "For a parent: rest comes first now. Ask where it hurt, and tell the "
    "teacher.")
MESSAGE(M_PAGE_END_KEYS, "", "Forward: go on. Back: read this again.")
MESSAGE(M_PAGE_QUESTION, "",
    "Is there a question for your teacher? Type it and press Enter.")
MESSAGE(M_PAGE_QUESTION_KEYS, "", "No question: only forward.")
