/* words.h - single words that stand inside sentences; see ../message_list.h */
MESSAGE(M_WORD_CLEAN, "", "clean")
MESSAGE(M_WORD_SHAKY, "", "shaky")
MESSAGE(M_WORD_NO_MARK, "", "no mark")
