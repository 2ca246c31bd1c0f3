/* sound.h - sentences of `evenhand sound`; see ../message_list.h */

/* --- the command line --- */
MESSAGE(M_SOUND_ABOUT, "", "where sound can be played, and a bow to try it")
MESSAGE(M_SOUND_OPTION_TRY, "", "play one bow with its pulses")

/* --- the cards --- */
MESSAGE(M_SOUND_CARDS, "", "Sound can be played on:")
MESSAGE(M_SOUND_CARD, "tt", "{0} ({1})")
MESSAGE(M_SOUND_CARD_USUAL, "tt", "{0} ({1}), the usual one of this computer")
MESSAGE(M_SOUND_LEFT_OUT, "w", "and {0} {0|card|cards} more")
MESSAGE(M_SOUND_WIRELESS, "t",
    "{0} is wireless: its sound comes late, after what the screen shows. A "
    "loudspeaker on a wire is better here.")
MESSAGE(M_SOUND_WOULD, "ttw",
    "evenhand plays on {0} ({1}), at loudness {2} of 100.")
MESSAGE(M_SOUND_WISH_GONE, "t",
    "The card that was chosen, \"{0}\", is not there now.")
MESSAGE(M_SOUND_NO_USUAL, "",
    "None of them is the usual one of this computer, so evenhand needs to be "
    "told: --card, or sound_card in its settings.")
MESSAGE(M_SOUND_OFF, "", "The settings say sound: no, so a session makes none.")
MESSAGE(M_SOUND_TO_TRY, "",
    "Hear it: evenhand sound --try. Start quiet. Turn down if ears ring.")
MESSAGE(M_SOUND_NONE, "",
    "there is no sound card here, and no sound server. Practise by sight, or "
    "connect a loudspeaker and look again")
MESSAGE(M_SOUND_NO_PROGRAM, "",
    "the part of evenhand that makes sound, evenhand-sound, is missing or does "
    "not start. Install evenhand anew and try again")
MESSAGE(M_SOUND_OTHER_PROGRAM, "",
    "the part of evenhand that makes sound, evenhand-sound, is of another "
    "version. Install evenhand anew and try again")

/* --- the bow to try --- */
MESSAGE(M_SOUND_CAUTION, "", "Start quiet. Turn down if ears ring.")
MESSAGE(M_SOUND_PLAYS, "ww", "At loudness {0} of 100: one bow of {1} seconds.")
MESSAGE(M_SOUND_PLAYED, "w",
    "That was one knock for the bow and {0} {0|tick|ticks} for its pulses, "
    "evenly apart. If you heard nothing, turn the loudspeaker up, or choose "
    "another card with --card.")
MESSAGE(M_SOUND_BROKEN, "w",
    "The sound was interrupted {0} {0|time|times}. Close other programs and "
    "try again.")
MESSAGE(M_SOUND_LOST, "t",
    "the sound of {0} stopped before the bow was over. Look at the cable, or "
    "at the sound server, and try again")
MESSAGE(M_SOUND_NO_ANSWER, "",
    "the sound system of this computer does not answer. Practise by sight, or "
    "start the computer anew and try again")
