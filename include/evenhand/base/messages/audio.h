/* audio.h - sentences of files of sound; see ../message_list.h */
MESSAGE(M_AUDIO_PROGRAM, "",
    "evenhand-file reads recordings and writes tracks for evenhand, which "
    "starts it by itself. Start evenhand instead.")
MESSAGE(M_AUDIO_UNKNOWN, "",
    "this is no recording that evenhand can read. Use WAV, FLAC, Ogg or AIFF")
MESSAGE(M_AUDIO_DAMAGED, "",
    "this recording is damaged at its beginning. Copy it once more from where "
    "it was made")
MESSAGE(M_AUDIO_NO_CHANNEL, "",
    "this recording has no channel of that number. Leave --channel out")
MESSAGE(M_AUDIO_NO_PROGRAM, "",
    "the part of evenhand that reads and writes files of sound, "
    "evenhand-file, is missing or does not start. Install evenhand anew, with "
    "libsndfile (make deps)")
MESSAGE(M_AUDIO_OTHER_PROGRAM, "",
    "the part of evenhand that reads and writes files of sound, "
    "evenhand-file, is of another version. Install evenhand anew")
MESSAGE(M_AUDIO_BROKE, "",
    "this file broke the part of evenhand that reads and writes files of "
    "sound. Nothing else was harmed")
