/* routine.h - sentences of routine; see ../message_list.h */
