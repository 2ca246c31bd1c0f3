/* pages.h - words of the full screen's pages; see ../message_list.h */

/*
 * In big letters: a question or a name of at most 12 letters, and answers of at
 * most 5, so that two stand side by side on 80 columns.
 */
MESSAGE(M_PAGES_BIG_SORE_ASK, "", "SORE?")
MESSAGE(M_PAGES_BIG_HURT_ASK, "", "HURTS?")
MESSAGE(M_PAGES_BIG_TIRED_ASK, "", "TIRED?")
MESSAGE(M_PAGES_BIG_QUESTION_ASK, "", "QUESTION?")
MESSAGE(M_PAGES_BIG_TODAY, "", "TODAY")
MESSAGE(M_PAGES_BIG_SILENT, "", "SILENT")
MESSAGE(M_PAGES_BIG_DONE, "", "DONE")
MESSAGE(M_PAGES_BIG_REST, "", "REST")
MESSAGE(M_PAGES_BIG_KEYS, "", "KEYS")
MESSAGE(M_PAGES_BIG_SORE, "", "SORE")
MESSAGE(M_PAGES_BIG_HURTS, "", "HURTS")
MESSAGE(M_PAGES_BIG_FINE, "", "FINE")
MESSAGE(M_PAGES_BIG_NEXT, "", "NEXT")
MESSAGE(M_PAGES_BIG_YES, "", "YES")
MESSAGE(M_PAGES_BIG_BEGIN, "", "BEGIN")
MESSAGE(M_PAGES_BIG_STOP, "", "STOP")
MESSAGE(M_PAGES_BIG_GO_ON, "", "GO ON")
MESSAGE(M_PAGES_BIG_END, "", "END")
MESSAGE(M_PAGES_BIG_STAY, "", "STAY")
MESSAGE(M_PAGES_BIG_BACK, "", "BACK")
MESSAGE(M_PAGES_BIG_KEEP, "", "KEEP")
MESSAGE(M_PAGES_BIG_LEAVE, "", "LEAVE")
MESSAGE(M_PAGES_BIG_CLEAN, "", "CLEAN")
MESSAGE(M_PAGES_BIG_SHAKY, "", "SHAKY")

/* What can be chosen, in big letters. */
MESSAGE(M_PAGES_BIG_FINGER, "w", "FINGER {0}?")
MESSAGE(M_PAGES_BIG_SLIP, "", "A SLIP?")
MESSAGE(M_PAGES_BIG_ELSEWHERE, "", "ELSEWHERE?")
MESSAGE(M_PAGES_BIG_NOT_TODAY, "", "NOT TODAY?")
MESSAGE(M_PAGES_BIG_THUMB, "", "THUMB?")
MESSAGE(M_PAGES_BIG_HAND, "", "HAND?")
MESSAGE(M_PAGES_BIG_WRIST, "", "WRIST?")
MESSAGE(M_PAGES_BIG_ARM, "", "ARM?")
MESSAGE(M_PAGES_BIG_SHOULDER, "", "SHOULDER?")
MESSAGE(M_PAGES_BIG_NECK, "", "NECK?")
MESSAGE(M_PAGES_BIG_NUMB, "", "NUMB?")

/* And in a list. */
MESSAGE(M_PAGES_LIST_SKIN, "w", "skin of finger {0}")
MESSAGE(M_PAGES_LIST_SLIP, "", "nothing, a slip")
MESSAGE(M_PAGES_LIST_NOT_TODAY, "", "not today")

/* The two answers: whose key, what it does here, and which keys it has. */
MESSAGE(M_PAGES_PEDAL_BACK, "", "back, left pedal")
MESSAGE(M_PAGES_PEDAL_FORWARD, "", "forward, right pedal")
MESSAGE(M_PAGES_KEYS_BACK, "", "Page Up, Left, Up, Backspace")
MESSAGE(M_PAGES_KEYS_FORWARD, "", "Page Down, Right, Down, Enter")
MESSAGE(M_PAGES_KEYS_BACK_FEW, "", "Page Up, Backspace")
MESSAGE(M_PAGES_KEYS_FORWARD_FEW, "", "Page Down, Enter")
MESSAGE(M_PAGES_BACK_SORE, "", "Back: something is.")
MESSAGE(M_PAGES_FORWARD_SORE, "", "Forward: nothing is sore.")
MESSAGE(M_PAGES_BACK_WHERE, "", "Back: the next one.")
MESSAGE(M_PAGES_FORWARD_WHERE, "", "Forward: this one.")
MESSAGE(M_PAGES_DIGIT_WHERE, "", "A digit: the skin of that finger.")
MESSAGE(M_PAGES_BACK_TODAY, "", "Back: not today.")
MESSAGE(M_PAGES_FORWARD_TODAY, "", "Forward: begin.")
MESSAGE(M_PAGES_BACK_LEAVE, "", "Back: leave.")
MESSAGE(M_PAGES_FORWARD_LEAVE, "", "Forward: leave.")
MESSAGE(M_PAGES_FORWARD_GO_ON, "", "Forward: go on.")
MESSAGE(M_PAGES_BACK_HURT, "", "Back: it hurts.")
MESSAGE(M_PAGES_FORWARD_HURT, "", "Forward: nothing hurts.")
MESSAGE(M_PAGES_BACK_END_HERE, "", "Back: end here.")
MESSAGE(M_PAGES_BACK_READ, "", "Back: read this again.")
MESSAGE(M_PAGES_BACK_BEFORE, "", "Back: the page before.")
MESSAGE(M_PAGES_FORWARD_SEND, "", "Enter: keep it for the teacher.")
MESSAGE(M_PAGES_BACK_SHAKY, "", "Back: shaky.")
MESSAGE(M_PAGES_FORWARD_CLEAN, "", "Forward: clean.")

/* --- on the pages --- */
MESSAGE(M_PAGES_MORE, "ww", "Tab: more ({0} of {1})")
MESSAGE(M_PAGES_CUE, "t", "The cue to think of: {0}.")
MESSAGE(M_PAGES_SCALE, "t", "To scale, from the nut, for {0}:")
MESSAGE(M_PAGES_CARE, "", "!")

/* --- help --- */
MESSAGE(M_PAGES_HELP, "", "The keys of this page.")
MESSAGE(M_PAGES_HELP_FORWARD, "",
    "Forward is Enter, Down, Right, Page Down and the right pedal.")
MESSAGE(M_PAGES_HELP_BACK, "",
    "Back is Backspace, Up, Left, Page Up and the left pedal.")
MESSAGE(M_PAGES_HELP_SILENCE, "", "Space: silence, whenever it sounds.")
MESSAGE(M_PAGES_HELP_HURTS, "", "h: it hurts. Everything stops at once.")
MESSAGE(M_PAGES_HELP_CLEAN, "", "c: clean, the same as forward.")
MESSAGE(M_PAGES_HELP_SHAKY, "", "s: shaky, the same as back.")
MESSAGE(M_PAGES_HELP_LEAF, "", "Tab: more, where a page is too long.")
MESSAGE(M_PAGES_HELP_LEAVE, "", "q: leave. Nothing that was played is lost.")
MESSAGE(M_PAGES_HELP_HELP, "", "?: these keys, and away with them again.")
