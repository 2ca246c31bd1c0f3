/* coach.h - sentences of coach; see ../message_list.h */
