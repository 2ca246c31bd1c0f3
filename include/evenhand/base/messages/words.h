/* words.h - single words that stand inside sentences; see ../message_list.h */
MESSAGE(M_WORD_CLEAN, "", "clean")
MESSAGE(M_WORD_SHAKY, "", "shaky")
MESSAGE(M_WORD_NO_MARK, "", "no mark")
MESSAGE(M_WORD_VIOLIN, "", "violin")
MESSAGE(M_WORD_VIOLA, "", "viola")
MESSAGE(M_WORD_CELLO, "", "cello")
MESSAGE(M_WORD_BASS, "", "double bass")
/* What each of these notes is called, in this order and at most 5 bytes each. */
MESSAGE(M_WORD_NOTES, "",
    "C C# Db D D# Eb E F F# Gb G G# Ab A A# Bb B")
