/* script.h - sentences of key scripts; see ../message_list.h */
MESSAGE(M_SCRIPT_BAD_TIME, "t",
    "\"{0}\" is no time. Write minutes and seconds from the first sound, like "
    "2:36.5, or - for as soon as a key is waited for")
MESSAGE(M_SCRIPT_FALLING_TIME, "tt",
    "this key is at {1} and the one before it at {0}. Put them in the order "
    "of their times")
MESSAGE(M_SCRIPT_NO_KEY, "t",
    "a key is missing behind {0}. Write one, like: {0} forward")
MESSAGE(M_SCRIPT_BAD_KEY, "t",
    "I do not know the key \"{0}\". There are forward, back, clean, shaky, "
    "silence, hurt, leave, help, a digit, and words with a text behind it")
MESSAGE(M_SCRIPT_BAD_KEY_NEAR, "tt",
    "I do not know the key \"{0}\". Did you mean {1}?")
MESSAGE(M_SCRIPT_TOO_MUCH, "t",
    "\"{0}\" is too much here. Write one key in each line")
MESSAGE(M_SCRIPT_NO_WORDS, "",
    "the words are missing. Write them behind it, like: words How loose is "
    "loose?")
MESSAGE(M_SCRIPT_LONG_WORDS, "w",
    "these words are longer than {0} letters. Shorten them")
MESSAGE(M_SCRIPT_NOT_TEXT, "",
    "this file is no plain text. Save it as plain text, UTF-8")
