/* track.h - sentences of `evenhand track`; see ../message_list.h */

/* --- the command line --- */
MESSAGE(M_TRACK_ABOUT, "", "today's practice as a file of sound, for elsewhere")
MESSAGE(M_TRACK_OPTION_OUT, "",
    "the file to write, also -o: .wav, .flac or .ogg")
MESSAGE(M_TRACK_OPTION_STAGE, "", "one stage alone instead of the whole plan")
MESSAGE(M_TRACK_OPTION_RUNG, "", "that stage at so many pulses in a bow")
MESSAGE(M_TRACK_OPTION_ROUNDS, "", "and for so many rounds")
MESSAGE(M_TRACK_OPTION_RATE, "", "thousands of samples a second (48 if left out)")
MESSAGE(M_TRACK_OPTION_TONES, "", "the two notes of a stage, before its block")
MESSAGE(M_TRACK_OUT, "",
    "say where the track goes, such as: evenhand track -o today.flac")
MESSAGE(M_TRACK_SUFFIX, "t",
    "\"{0}\" has to end in .wav, .flac or .ogg, which says what is made")
MESSAGE(M_TRACK_RATE, "t", "--rate is 44.1, 48 or 96, not \"{0}\"")
MESSAGE(M_TRACK_NUMBER, "tt", "{0} is a whole number from 1 on, not \"{1}\"")
MESSAGE(M_TRACK_RUNG, "wt",
    "this routine has no rung of {0} {0|pulse|pulses}. Its rungs are {1}")
MESSAGE(M_TRACK_RUNG_AIR, "t",
    "\"{0}\" is played in the air, where there are no pulses. Leave --rung out")

/* --- what there is to play --- */
MESSAGE(M_TRACK_NOTHING, "", "nothing is to be played today, so there is no track:")
MESSAGE(M_TRACK_NOT_TODAY, "t",
    "today holds no work on \"{0}\", so there is no track of it. evenhand today "
    "--why tells the reason")
MESSAGE(M_TRACK_LONG, "wtcw",
    "{0} {0|round|rounds} of \"{1}\" take longer than a session of today may, "
    "which is {2}. Write --rounds {3} or fewer")
MESSAGE(M_TRACK_BROKE, "",
    "the part of evenhand that writes files of sound, evenhand-file, was ended "
    "from outside. Nothing was written. Try again")

/* --- in the file --- */
MESSAGE(M_TRACK_TITLE, "yt", "{0}: {1}")
MESSAGE(M_TRACK_DATE, "y", "{0}")
MESSAGE(M_TRACK_AIR, "t", "{0}")
MESSAGE(M_TRACK_PART, "tw", "{0}, {1} {1|pulse|pulses}")
MESSAGE(M_TRACK_PART_ROUND, "tww",
    "{0}, {1} {1|pulse|pulses}, round {2}")
MESSAGE(M_TRACK_COMMENT, "",
    "A track of evenhand, to practise to where no computer is. It has no marks "
    "and is not counted in the history.")

/* --- when it is there --- */
MESSAGE(M_TRACK_PROGRESS, "w", "{0} % written")
MESSAGE(M_TRACK_WRITTEN, "tcw", "{0} is written: {1} long, {2} {2|part|parts}.")
MESSAGE(M_TRACK_UNCOUNTED, "",
    "What is practised to a track has no marks and is not counted in the "
    "history.")
MESSAGE(M_TRACK_GOES_ON, "",
    "A track goes on by itself: if anything hurts, stop it and put the bow down.")
