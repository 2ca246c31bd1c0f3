/* sound.h - sentences of `evenhand sound`; see ../message_list.h */

/* --- the command line --- */
MESSAGE(M_SOUND_ABOUT, "", "where sound is played and heard, a bow to try, and its delay")
MESSAGE(M_SOUND_OPTION_TRY, "", "play one bow with its pulses")
MESSAGE(M_SOUND_OPTION_MEASURE, "",
    "how late the microphone hears the loudspeaker")
MESSAGE(M_SOUND_ONE_THING, "",
    "--try and --measure are two things. Ask for one of them")

/* --- the cards --- */
MESSAGE(M_SOUND_CARDS, "", "Sound can be played on:")
MESSAGE(M_SOUND_CARD, "tt", "{0} ({1})")
MESSAGE(M_SOUND_CARD_USUAL, "tt", "{0} ({1}), the usual one of this computer")
MESSAGE(M_SOUND_MICROPHONES, "", "Microphones:")
MESSAGE(M_SOUND_NO_MICROPHONE, "", "There is no microphone.")
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

/* --- measured delays --- */
MESSAGE(M_LATENCY_BROKEN, "",
    "this is no measured delay, so nothing of this file counts. Measure again: "
    "evenhand sound --measure")
MESSAGE(M_DELAY_BEGINS, "tt",
    "Short chirps on {0}, heard by {1}. Nothing of it is kept but one number.")
MESSAGE(M_DELAY_CAUTION, "",
    "Take headphones off your ears. It begins quietly and grows.")
MESSAGE(M_DELAY_TRIES, "w", "At loudness {0} of 100.")
MESSAGE(M_DELAY_GOES, "www", "{0} of {1}: {2} heard.")
MESSAGE(M_DELAY_DONE, "nn",
    "The microphone hears the loudspeaker {0} ms late, give or take {1} ms. "
    "Three metres of air are 9 ms of that.")
MESSAGE(M_DELAY_KEPT, "",
    "That is kept for these two, so a session that listens can tell early from "
    "late. Measure again when you use others or move them.")
MESSAGE(M_DELAY_DEAF, "",
    "there is no microphone, or it does not answer. Plug one in, or name one "
    "with --microphone; evenhand sound lists them")
MESSAGE(M_DELAY_NO_SUCH, "t",
    "no microphone here is called \"{0}\", or it does not answer. evenhand sound "
    "lists them")
MESSAGE(M_DELAY_LOST, "",
    "the loudspeaker or the microphone was lost on the way. Look at the cable "
    "and try again")
MESSAGE(M_DELAY_SILENT, "",
    "the microphone gives nothing but silence: it is muted, or this program "
    "may not use it. Turn it on in the computer's settings and try again")
MESSAGE(M_DELAY_QUIET, "ww",
    "only {0} of {1} chirps were heard, too few. With headphones, hold one to "
    "the microphone; else turn the loudspeaker up, and try again")
MESSAGE(M_DELAY_NOISE, "ww",
    "only {0} of {1} chirps were heard through the noise. Make it quiet, bring "
    "the microphone nearer to the loudspeaker, and try again")
MESSAGE(M_DELAY_CLIPPED, "",
    "the chirps are too loud for the microphone. Turn the microphone or the "
    "loudspeaker down and try again")
MESSAGE(M_DELAY_ECHO, "",
    "the echo is louder than the chirp itself. Bring the microphone nearer to "
    "the loudspeaker, with nothing between them, and try again")
MESSAGE(M_DELAY_SPREAD, "n",
    "the delay changes by {0} ms from chirp to chirp, so no number would be "
    "true. Close other programs, use cables, and try again")
MESSAGE(M_DELAY_ODD, "n",
    "a delay of {0} ms cannot be. Something else was heard, or the sound goes "
    "through another program. Choose cards with --card and --microphone")
MESSAGE(M_DELAY_BROKEN, "ww",
    "the sound was interrupted in {0} of {1} chirps. Close other programs and "
    "try again")
