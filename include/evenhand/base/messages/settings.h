/* settings.h - sentences of the settings file; see ../message_list.h */

/* --- the file --- */
MESSAGE(M_SETTINGS_HEAD, "",
    "What evenhand remembers. Change it as you like; man evenhand tells the "
    "words.")
MESSAGE(M_SETTINGS_NO_HOME, "",
    "I do not know your home folder: neither XDG_CONFIG_HOME nor HOME is set "
    "to a whole path, so nothing you choose is remembered")

/* --- slips of a routine, told of this file --- */
MESSAGE(M_SETTINGS_PICTURE, "",
    "this is a picture. The settings are a text file")
MESSAGE(M_SETTINGS_NO_COLON, "",
    "there is no colon in this line. Write the word, a colon, a space and "
    "what belongs to it, for example loudness: 50")
MESSAGE(M_SETTINGS_FENCE, "",
    "this line of back-ticks is no part of the settings. Remove it")
MESSAGE(M_SETTINGS_NOTE, "t",
    "everything after \" #\" is a private note, so only \"{0}\" is read. Put "
    "quotation marks round it")
MESSAGE(M_SETTINGS_DEEP, "w",
    "more than {0} steps inwards. Settings need none: every word begins a "
    "line")

/* --- what could not be remembered --- */
MESSAGE(M_SETTINGS_BROKEN, "t",
    "this file has a slip, so \"{0}\" is not remembered. Mend it first")
MESSAGE(M_SETTINGS_LEFT, "tt",
    "the way \"{0}\" is written here is left as it is, so what you chose is "
    "not remembered. Write it in one line: {0}: {1}")
MESSAGE(M_SETTINGS_BUSY, "t",
    "another program is busy with this file, so \"{0}\" is not remembered")
MESSAGE(M_SETTINGS_LONG, "tw",
    "\"{0}\" has {1} letters at most")
