/* session.h - sentences of session; see ../message_list.h */
