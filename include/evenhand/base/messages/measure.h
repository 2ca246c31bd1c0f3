/* measure.h - sentences of what a recording shows; see ../message_list.h */

/* --- the command line --- */
MESSAGE(M_MEASURE_ABOUT, "",
    "what a recording shows: how far, how even, how fast")
MESSAGE(M_MEASURE_OPTION_ROUTINE, "", "the routine that was played")
MESSAGE(M_MEASURE_OPTION_STAGE, "", "the stage of it that was played")
MESSAGE(M_MEASURE_OPTION_FINGER, "", "the finger, pair or string of it")
MESSAGE(M_MEASURE_OPTION_NOTES, "",
    "or the lowest and highest note, such as E3-A3")
MESSAGE(M_MEASURE_OPTION_CHANNEL, "",
    "listen to one channel (all together if left out)")
MESSAGE(M_MEASURE_OPTION_TRACK, "", "write the pitch, a row each 5 ms, as CSV")
MESSAGE(M_MEASURE_OPTION_PLOT, "", "draw it: the end says .pdf, .svg or .png")
MESSAGE(M_MEASURE_OPTION_JSON, "", "all that was measured, for programs")
MESSAGE(M_MEASURE_BAD_NOTES, "t",
    "\"{0}\" are no two notes from E1 to B7. Write them like this: --notes "
    "E3-A3")
MESSAGE(M_MEASURE_BAD_CHANNEL, "t",
    "--channel is the number of a channel, such as 1, not \"{0}\"")
MESSAGE(M_MEASURE_TWICE_KNOWN, "",
    "--notes and --routine both say what was played. Keep one of them")
MESSAGE(M_MEASURE_NO_STAGE, "",
    "--finger needs the stage as well: --stage ID --finger NAME")
MESSAGE(M_MEASURE_NO_UNIT, "tt",
    "this routine has no \"{0}\" that takes turns. There are: {1}")
MESSAGE(M_MEASURE_IN_THE_AIR, "t",
    "the stage \"{0}\" has no notes of its own, so a recording of it cannot be "
    "measured by it. Say --notes, or nothing")
MESSAGE(M_MEASURE_ONE_FILE, "t",
    "{0} takes one recording at a time. Leave it out for several")
MESSAGE(M_MEASURE_PLOT_SUFFIX, "t",
    "\"{0}\" has to end in .pdf, .svg or .png, which says what is drawn")

/* --- what is wrong with a recording --- */
MESSAGE(M_MEASURE_RATE, "w",
    "this recording has {0} samples a second, and evenhand understands 8000 to "
    "192000. Save it with 48000")
MESSAGE(M_MEASURE_EMPTY, "", "there is no sound in this recording")
MESSAGE(M_MEASURE_CUT, "c",
    "This recording ends before its own beginning says so; {0} of it was there "
    "to measure.")
MESSAGE(M_MEASURE_NO_NUMBERS, "w",
    "{0} of its samples {0|is|are} no {0|number|numbers} and {0|was|were} taken "
    "as silence.")
MESSAGE(M_MEASURE_OVERDRIVEN, "",
    "It was recorded too loud, so the tops of the sound are cut off. Turn the "
    "microphone down next time; pitch is still good.")
MESSAGE(M_MEASURE_CANCELS, "",
    "Its channels cancel each other. Listen to one of them with --channel 1.")
MESSAGE(M_MEASURE_PROGRESS, "tw", "{0}: {1} % heard")

/* --- the page --- */
MESSAGE(M_MEASURE_HEAD, "tctww",
    "{0}: {1} long, {2}, {3} samples a second, {4} {4|channel|channels}.")
MESSAGE(M_MEASURE_SILENT, "", "Nothing in it is loud enough to be measured.")
MESSAGE(M_MEASURE_BETWEEN, "cc", "{0} to {1}:")
MESSAGE(M_MEASURE_NOTE, "t", "{0}")
MESSAGE(M_MEASURE_NOTE_HIGH, "tw", "{0} +{1} {1|cent|cents}")
MESSAGE(M_MEASURE_NOTE_LOW, "tw", "{0} -{1} {1|cent|cents}")
MESSAGE(M_MEASURE_UNCLEAR, "t",
    "{0} a sound, but hardly a clear note. Nothing more can be heard.")
MESSAGE(M_MEASURE_PIECES, "t",
    "{0} notes too short for a bow, as of a voice or of clicks. Nothing more can "
    "be heard.")
MESSAGE(M_MEASURE_ELSEWHERE, "t",
    "{0} notes, but not those that were to come. Was it another string, or "
    "another octave?")
MESSAGE(M_MEASURE_HELD, "tt", "{0} one note, {1}, held.")
MESSAGE(M_MEASURE_NOTES, "ttt", "{0} several notes between {1} and {2}.")
MESSAGE(M_MEASURE_BOW_ONLY, "t", "{0} listened to for the bow alone.")
MESSAGE(M_MEASURE_GLIDES, "twtt",
    "{0} {1} glides up from {2} to {3}.")
MESSAGE(M_MEASURE_WAY, "nnnt",
    "They are {0} cents far, give or take {1}, and come every {2} seconds, "
    "{3}.")
MESSAGE(M_MEASURE_WAY_FEW, "nn",
    "They are {0} cents far, give or take {1}; too few to say how even.")
MESSAGE(M_MEASURE_PACE, "nt", "They come every {0} seconds, {1}.")
MESSAGE(M_MEASURE_PACE_FEW, "", "They are too few to say how even.")
MESSAGE(M_MEASURE_VIBRATO, "ttnn",
    "{0} vibrato about {1}: {2} swings a second, {3} cents to each side.")
MESSAGE(M_MEASURE_VIBRATO_RATE, "ttn",
    "{0} vibrato about {1}: {2} swings a second.")
MESSAGE(M_MEASURE_SWINGS, "tw", "The swings are {0} ({1} of them).")
MESSAGE(M_MEASURE_EVEN_WELL, "n", "evenly ({0} in 100 apart)")
MESSAGE(M_MEASURE_EVEN_NEARLY, "n", "nearly evenly ({0} in 100 apart)")
MESSAGE(M_MEASURE_EVEN_NOT, "n", "unevenly ({0} in 100 apart)")
MESSAGE(M_MEASURE_REGULAR_WELL, "n", "regular, {0} in 100 apart")
MESSAGE(M_MEASURE_REGULAR_NEARLY, "n", "nearly regular, {0} in 100 apart")
MESSAGE(M_MEASURE_REGULAR_NOT, "n", "irregular, {0} in 100 apart")
MESSAGE(M_MEASURE_STRETCHES_LEFT, "w",
    "and {0} {0|stretch|stretches} more; --json tells of all.")

/* --- all of it --- */
MESSAGE(M_MEASURE_ALL, "wcw",
    "In all {0} {0|stretch|stretches} of playing, {1} of sound, {2} % of it a "
    "clear note.")
MESSAGE(M_MEASURE_ALL_VIBRATO, "wnnn",
    "Vibrato in {0} of them: {1} swings a second, from {2} to {3}.")
MESSAGE(M_MEASURE_ALL_WIDTH, "nnn",
    "It is {0} cents wide to each side, from {1} to {2}.")
MESSAGE(M_MEASURE_ALL_GLIDES, "wwnnn",
    "Glides in {0} of them, {1} in all: {2} cents far, from {3} to {4}.")
MESSAGE(M_MEASURE_ALL_GLIDES_FAR, "ww",
    "Glides in {0} of them, {1} in all.")
MESSAGE(M_MEASURE_BOWS, "wnw",
    "{0} {0|bow|bows} measured: apart from what the notes change, the loudness "
    "stays within {1} dB; the bow stood still {2} {2|time|times}.")
MESSAGE(M_MEASURE_NO_BOWS, "",
    "No bow was long and clear enough to tell how calm it was.")
MESSAGE(M_MEASURE_CLEAR, "w", "{0} % of the sound was a clear note.")
MESSAGE(M_MEASURE_FAR, "",
    "The microphone was far away: from there swings look narrower than they "
    "are, so no widths are given. 30 to 40 cm from the strings is near enough.")
MESSAGE(M_MEASURE_DISTANCE_UNKNOWN, "",
    "How far away the microphone was could not be told. From far away every "
    "swing looks narrower than it is.")
MESSAGE(M_MEASURE_CAUTION, "",
    "Hand shape, squeeze, heat and pain cannot be heard. How surely the rest is "
    "known: man evenhand-listening.")

/* --- several recordings --- */
MESSAGE(M_MEASURE_CLOCK, "c", "{0}")
/* Each names the same columns, with bars between them. */
MESSAGE(M_MEASURE_TABLE, "", "||clear|glides|far|even|swings|wide|reg.|bow")
MESSAGE(M_MEASURE_TABLE_UNITS, "",
    "recording|long|%|up|cents|%|a sec.|cents|%|dB")

/* --- on paper --- */
MESSAGE(M_MEASURE_PLOT_PITCH, "", "pitch")
MESSAGE(M_MEASURE_PLOT_LEVEL, "", "loudness, 50 dB from top to bottom")
MESSAGE(M_MEASURE_PLOT_WRITTEN, "t", "{0} is drawn.")
MESSAGE(M_MEASURE_TRACK_WRITTEN, "tw", "{0} is written, {1} {1|row|rows}.")
