/* world.h - sentences of world; see ../message_list.h */
