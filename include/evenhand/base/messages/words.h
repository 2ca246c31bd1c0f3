/* words.h - single words that stand inside sentences; see ../message_list.h */
MESSAGE(M_WORD_DOWN, "", "down")
MESSAGE(M_WORD_UP, "", "up")
MESSAGE(M_WORD_DOWN_BOW, "", "down bow")
MESSAGE(M_WORD_CLEAN, "", "clean")
MESSAGE(M_WORD_SHAKY, "", "shaky")
MESSAGE(M_WORD_NO_MARK, "", "no mark")
