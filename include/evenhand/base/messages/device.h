/* device.h - sentences of devices; see ../message_list.h */
MESSAGE(M_WORLD_NO_CLOCK, "",
    "the computer has no room left to keep time for a session. Close other "
    "programs and start again")
MESSAGE(M_DEVICE_NO_KEEPER, "",
    "the computer has no room left to make sound. Close other programs and "
    "start again")
MESSAGE(M_DEVICE_NO_LIST, "",
    "the sound of this computer does not answer, so its sound cards cannot be "
    "listed. Play something with another program; when that is silent too, "
    "start the computer again")
MESSAGE(M_DEVICE_PROGRAM, "",
    "evenhand-sound makes the sound of evenhand, which starts it by itself. "
    "Start evenhand instead.")
MESSAGE(M_DEVICE_UNHEARD, "", "No sound was asked for. Follow the screen.")
MESSAGE(M_DEVICE_SOUNDS_USUAL, "",
    "Sound comes from the computer's usual loudspeaker.")
MESSAGE(M_DEVICE_SOUNDS, "tt", "Sound comes from {0} ({1}).")
MESSAGE(M_DEVICE_SOUNDS_LATE, "tt",
    "Sound comes from {0} ({1}). That is wireless, so the clicks come late: "
    "better use a cable or the computer's own loudspeaker.")
MESSAGE(M_DEVICE_OTHER, "ttt",
    "There is no sound card \"{0}\" just now. Sound comes from {1} ({2}).")
MESSAGE(M_DEVICE_NONE, "",
    "There is no loudspeaker yet. Practise without sound: it begins as soon as "
    "there is one.")
MESSAGE(M_DEVICE_MUTE, "",
    "The sound of this computer does not answer. Practise without it: it begins "
    "as soon as it does.")
MESSAGE(M_DEVICE_LOST, "",
    "The sound is gone. Practise without it; it comes back by itself.")
MESSAGE(M_DEVICE_NO_ROOM, "",
    "The computer has no room left to make sound. Practise without it: it begins "
    "as soon as there is some.")
MESSAGE(M_DEVICE_NO_PROGRAM, "",
    "The part of evenhand that makes sound, evenhand-sound, is missing or does "
    "not start. Practise without it; with evenhand installed anew there is sound "
    "again.")
MESSAGE(M_DEVICE_OTHER_PROGRAM, "",
    "The part of evenhand that makes sound, evenhand-sound, is of another "
    "version. Practise without it; with evenhand installed anew there is sound "
    "again.")
MESSAGE(M_DEVICE_KEEPER_GONE, "",
    "The part of this program that makes sound was ended from outside. "
    "Practise without it; after a new start there is sound again.")
