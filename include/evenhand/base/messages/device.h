/* device.h - sentences of devices; see ../message_list.h */
MESSAGE(M_WORLD_NO_CLOCK, "",
    "the computer has no room left to keep time for a session. Close other "
    "programs and start again")
MESSAGE(M_DEVICE_UNHEARD, "", "no sound was asked for. Follow the screen")
