/* command.h - sentences of command; see ../message_list.h */
