/* world.h - sentences of world; see ../message_list.h */

/* --- lines that nobody reads --- */
MESSAGE(M_WORLD_LINES_LEFT_OUT, "w",
    "{0} {0|line was|lines were} left out here.")

/* --- the journal --- */
MESSAGE(M_WORLD_JOURNAL_LOCKED, "",
    "another evenhand is open for this player. Close it first, or add "
    "--player NAME for another player")
MESSAGE(M_WORLD_JOURNAL_NO_MEMORY, "",
    "the computer has no memory left for the practice history. Close other "
    "programs and start again")
MESSAGE(M_WORLD_JOURNAL_UNREAD, "t",
    "the practice history in {0} cannot be read")
MESSAGE(M_WORLD_JOURNAL_LOOK_BROKEN, "t",
    "the practice history in {0} is damaged and cannot be read. It was left "
    "as it is")
MESSAGE(M_WORLD_JOURNAL_LOOK_OTHER, "t", "{0} is not a practice history")
MESSAGE(M_WORLD_JOURNAL_NOT_WRITTEN, "t",
    "the practice history could not be written out: {0}")
MESSAGE(M_WORLD_JOURNAL_BUSY, "t",
    "another program is busy with the practice history in {0}. What you "
    "practise is kept beside it and added as soon as it is free")
MESSAGE(M_WORLD_JOURNAL_FULL, "t",
    "the disk takes no more of the practice history in {0}: it may be full. "
    "Make some room. The practice goes on, and evenhand keeps trying")
MESSAGE(M_WORLD_JOURNAL_READ_ONLY, "t",
    "the practice history in {0} may not be written. What you practise is "
    "kept apart and added when it may")
MESSAGE(M_WORLD_JOURNAL_NEWER, "t",
    "the practice history in {0} was made by a newer evenhand, so this one "
    "only reads it. What you practise is kept beside it for the newer one")
MESSAGE(M_WORLD_JOURNAL_BROKEN, "t",
    "the practice history in {0} is damaged. It is left as it is, and today "
    "is planned without it. What you practise is kept beside it. Put a good "
    "copy in its place, or move it away")
MESSAGE(M_WORLD_JOURNAL_OTHER_FILE, "t",
    "{0} is not a practice history. It is left as it is, and what you "
    "practise is kept beside it. Move it away")
MESSAGE(M_WORLD_JOURNAL_MOVED, "t",
    "the practice history in {0} was moved or replaced while evenhand was "
    "open. What you practise from now on is kept beside it")
MESSAGE(M_WORLD_JOURNAL_UNREACHABLE, "t",
    "the practice history in {0} cannot be reached. What you practise is "
    "kept apart and added when it can")
MESSAGE(M_WORLD_JOURNAL_SLOW, "t",
    "the practice history in {0} lies where several computers may share it. "
    "Practise on one of them at a time")
MESSAGE(M_WORLD_JOURNAL_NOT_KEPT, "t",
    "what you practise cannot be kept just now, neither in {0} nor anywhere "
    "else. The practice goes on, and evenhand keeps trying until it ends")
MESSAGE(M_WORLD_JOURNAL_LOST, "t",
    "the computer has no memory left, so some of what you practise will be "
    "missing in {0}. Close other programs")
MESSAGE(M_WORLD_JOURNAL_STARVED, "t",
    "the computer has no memory left for the practice history in {0}. What you "
    "practise is kept beside it and added when there is some. Close other "
    "programs")
MESSAGE(M_WORLD_JOURNAL_ELSEWHERE, "t",
    "beside the practice history there is no place to keep what you practise. "
    "It is kept in {0} until the history can be written")
MESSAGE(M_WORLD_JOURNAL_SPOOL_DAMAGED, "t",
    "some of what was kept beside the practice history could not be used. All "
    "the rest is in the history now, and the file was put aside as {0}")
MESSAGE(M_WORLD_JOURNAL_SPOOL_UNREAD, "t",
    "what was kept in {0} cannot be read just now. It was left there and is "
    "added to the practice history as soon as it can be read")
