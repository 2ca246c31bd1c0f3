/* command.h - sentences of command; see ../message_list.h */

/* --- the command line --- */
MESSAGE(M_COMMAND_UNKNOWN_OPTION, "tt",
    "I do not know {0}. evenhand {1} --help lists what there is")
MESSAGE(M_COMMAND_UNKNOWN_OPTION_NEAR, "tt",
    "I do not know {0}. Did you mean {1}?")
MESSAGE(M_COMMAND_OPTION_AMBIGUOUS, "ttt",
    "{0} could be {1} or {2}. Write more of it")
MESSAGE(M_COMMAND_OPTION_WANTS, "tt", "{0} needs a word behind it: {0} {1}")
MESSAGE(M_COMMAND_OPTION_TWICE, "t", "{0} is there twice. Write it once")
MESSAGE(M_COMMAND_OPTION_BARE, "t", "{0} takes no value. Write {0} alone")
MESSAGE(M_COMMAND_TOO_MANY, "tt",
    "there is a word too many: \"{0}\". Write it like this: {1}")
MESSAGE(M_COMMAND_TOO_FEW, "t",
    "something is missing. Write it like this: {0}")
MESSAGE(M_COMMAND_BAD_MARKING, "t",
    "--marking is turn or round, not \"{0}\"")
MESSAGE(M_COMMAND_BAD_CLOCK, "t",
    "--clock can only be fast, not \"{0}\". Leave it out for real time")
MESSAGE(M_COMMAND_BAD_LOUDNESS, "t",
    "--loudness is a number from 0 to 100, not \"{0}\"")
MESSAGE(M_COMMAND_BAD_TIME, "t",
    "\"{0}\" is no date and time. Write it like this: 2026-03-02T17:00")
MESSAGE(M_COMMAND_UNKNOWN_VERB_NEAR, "tt",
    "I know no command and no routine \"{0}\". Did you mean evenhand {1}?")
MESSAGE(M_COMMAND_UNKNOWN_VERB, "t",
    "I know no command and no routine \"{0}\". evenhand --help lists the "
    "commands")
MESSAGE(M_COMMAND_VERB_FIRST, "t",
    "the command comes first: evenhand {0}, then its options")

/* --- help --- */
MESSAGE(M_COMMAND_ABOUT, "",
    "evenhand leads a student through a short daily practice of vibrato, to "
    "the teacher's routine.")
MESSAGE(M_COMMAND_AID, "",
    "This is a practice aid for use with a teacher. It cannot see your hands "
    "and gives no medical advice. Where local rules or a licensed "
    "professional say otherwise, follow them.")
MESSAGE(M_COMMAND_GROWN_UP, "",
    "A grown-up should know about these exercises and hear about any "
    "soreness.")
MESSAGE(M_COMMAND_USAGE, "", "Usage:")
MESSAGE(M_COMMAND_COMMANDS, "", "Commands:")
MESSAGE(M_COMMAND_OPTIONS, "", "Options:")
MESSAGE(M_COMMAND_MORE, "",
    "evenhand COMMAND --help says more about one of them, man evenhand "
    "everything.")
MESSAGE(M_COMMAND_PRACTISE, "",
    "today's practice; the command to leave out")
MESSAGE(M_COMMAND_TODAY, "", "what today holds and why, nothing played")
MESSAGE(M_COMMAND_CHECK, "",
    "every fault of routine files, and what they come to")
MESSAGE(M_COMMAND_NEW, "", "a routine file to edit")
MESSAGE(M_COMMAND_HISTORY, "", "what was practised")
MESSAGE(M_COMMAND_OPTION_HELP, "", "say this")
MESSAGE(M_COMMAND_OPTION_VERSION, "", "say which version this is")
MESSAGE(M_COMMAND_OPTION_LINES, "",
    "one event, one line, and no full screen")
MESSAGE(M_COMMAND_OPTION_SILENT, "", "practise by sight, without sound")
MESSAGE(M_COMMAND_OPTION_CARD, "", "the sound card, or part of its name")
MESSAGE(M_COMMAND_OPTION_THROUGH, "",
    "what leads to that card, such as ALSA or JACK")
MESSAGE(M_COMMAND_OPTION_LOUDNESS, "", "0 to 100; start quiet")
MESSAGE(M_COMMAND_OPTION_LISTEN, "", "let a microphone listen")
MESSAGE(M_COMMAND_OPTION_NO_LISTEN, "", "let no microphone listen")
MESSAGE(M_COMMAND_OPTION_MICROPHONE, "",
    "the microphone, or part of its name")
MESSAGE(M_COMMAND_OPTION_ASCII, "", "draw with plain letters and signs")
MESSAGE(M_COMMAND_OPTION_MIRRORED, "",
    "for those who bow with the left hand")
MESSAGE(M_COMMAND_OPTION_MARKING, "",
    "when marks are given (round if left out)")
MESSAGE(M_COMMAND_OPTION_PLAYER, "", "the journal of another player")
MESSAGE(M_COMMAND_OPTION_AT, "",
    "as if it were this time, such as 2026-03-02T17:00")
MESSAGE(M_COMMAND_OPTION_CLOCK, "", "let time pass as fast as it can")
MESSAGE(M_COMMAND_OPTION_STAGE, "", "work on another stage that is opened")
MESSAGE(M_COMMAND_STAGE_UNKNOWN, "tt",
    "this routine has no stage \"{0}\". What may be worked on: {1}")
MESSAGE(M_COMMAND_STAGE_LATER, "tt",
    "\"{0}\" is not opened yet: that happens in the lesson. Until then there "
    "is all up to \"{1}\"")
MESSAGE(M_COMMAND_OPTION_SCRIPT, "", "take the keys from a file")
MESSAGE(M_COMMAND_OPTION_WHY, "", "with every number used and its rule")
MESSAGE(M_COMMAND_OPTION_JSON, "", "everything that was kept, as JSON")
MESSAGE(M_COMMAND_OPTION_PLAN_JSON, "", "the plan for programs, as JSON")
MESSAGE(M_COMMAND_OPTION_FROM, "", "the routine to begin from")
MESSAGE(M_COMMAND_OPTION_FORCE, "", "write over a file that is there")

/* --- practise --- */
MESSAGE(M_COMMAND_NEW_PLAYER, "t", "A new journal begins, for {0}.")
MESSAGE(M_COMMAND_NO_MEMORY, "",
    "the computer has no memory left for this. Close other programs "
    "and start again")
MESSAGE(M_COMMAND_CANNOT_PRINT, "t", "this cannot be printed: {0}")
MESSAGE(M_COMMAND_INPUT_GONE, "",
    "No more keys can come, so the practice ends here. Start evenhand in a "
    "terminal, or give it --script FILE.")
MESSAGE(M_COMMAND_SCRIPT_OVER, "",
    "The script has no more keys, so the practice ends here.")
MESSAGE(M_COMMAND_LOUDNESS, "w", "Loudness: {0} of 100.")
MESSAGE(M_COMMAND_NO_SOUND, "", "There is no sound to change.")
MESSAGE(M_COMMAND_FOLLOW_LINES, "",
    "Without sound, follow these lines: each names what is next. Bows and pulses "
    "are seen on the full screen alone.")
MESSAGE(M_COMMAND_UNHEARD, "",
    "The sound cannot be made just now. The words go on; Space stops.")
MESSAGE(M_COMMAND_LISTEN_BOTH, "",
    "take --listen (or --microphone) or --no-listen, not both")
MESSAGE(M_COMMAND_LISTEN_FIRST, "",
    "From now on a microphone listens to you. Nothing is recorded and nothing "
    "leaves this computer: only numbers are kept, such as how many tops were "
    "heard. --no-listen ends it.")
MESSAGE(M_COMMAND_LISTENS, "",
    "The microphone listens. Nothing of it is recorded.")
MESSAGE(M_COMMAND_LISTEN_DEVICE, "",
    "Without a sound card no microphone is heard, so nobody listens this time.")
MESSAGE(M_COMMAND_LISTEN_ROOM, "",
    "The computer has no room left to listen, so nobody listens this time. "
    "Practice goes on as ever.")
MESSAGE(M_COMMAND_LISTEN_NONE, "",
    "There is no microphone, so nobody listens. Practice goes on as ever.")
MESSAGE(M_COMMAND_LISTEN_NO_SUCH, "t",
    "No microphone here is called \"{0}\", so nobody listens. Practice goes on as "
    "ever.")
MESSAGE(M_COMMAND_LISTEN_LOST, "",
    "The microphone is gone. Practice goes on, and it is looked for.")
MESSAGE(M_COMMAND_LISTEN_DEAD, "",
    "The microphone gives no sound at all. Is it switched off?")
MESSAGE(M_COMMAND_LISTEN_QUIET, "",
    "The microphone hears very little. Bring it nearer or turn it up.")
MESSAGE(M_COMMAND_LISTEN_CLIPS, "",
    "The microphone is turned up too far. Turn it down a little.")
MESSAGE(M_COMMAND_LISTEN_FILTERED, "",
    "This microphone seems to be made for speech: it changes what it hears. Turn "
    "off what makes it quiet or clear, or take another one.")
MESSAGE(M_COMMAND_LISTEN_NOISY, "",
    "There is much other noise, so less may be heard of you.")
MESSAGE(M_COMMAND_LEFT_OUT, "w",
    "and {0} {0|fault|faults} more. Mend these first")
