/* words.h - sentences of words; see ../message_list.h */
