/* file.h - sentences of files and folders; see ../message_list.h */
MESSAGE(M_WORLD_FILE_MISSING, "",
    "there is no such file. Look at its name and folder")
MESSAGE(M_WORLD_FILE_NO_ROUTINE, "tt",
    "there is no file called \"{0}\", and no routine of that name comes with "
    "evenhand. There are: {1}")
MESSAGE(M_WORLD_FILE_DENIED, "", "this file may not be read by you")
MESSAGE(M_WORLD_FILE_FOLDER, "",
    "this is a folder, not a file. Name a file in it, or move it away")
MESSAGE(M_WORLD_FILE_ODD, "", "this is no ordinary file")
MESSAGE(M_WORLD_FILE_BIG, "w", "this file is larger than {0} KB")
MESSAGE(M_WORLD_FILE_UNREAD, "", "this file cannot be read from the disk")
MESSAGE(M_WORLD_FILE_NO_MEMORY, "",
    "the computer has no memory left for this file. Close other programs and "
    "start again")
MESSAGE(M_WORLD_FILE_NO_MORE, "",
    "the computer can open no more files just now. Close other programs and "
    "start again")
MESSAGE(M_WORLD_FILE_THERE, "",
    "this file is there already and was left as it is. Choose another name, "
    "or add --force to write over it")
MESSAGE(M_WORLD_FILE_NO_FOLDER, "",
    "this file cannot be made: its folder is not there")
MESSAGE(M_WORLD_FILE_NO_RIGHT, "",
    "this file cannot be made: you may not write in its folder")
MESSAGE(M_WORLD_FILE_FULL, "",
    "this file cannot be written: the disk is full")
MESSAGE(M_WORLD_FILE_UNWRITTEN, "", "this file cannot be written to the disk")
MESSAGE(M_WORLD_FOLDER_UNMADE, "",
    "this folder cannot be made. Choose another one, or look at who may write in "
    "the one above it")
MESSAGE(M_WORLD_FOLDER_OF_UNMADE, "",
    "the folder of this file cannot be made")
MESSAGE(M_WORLD_PATH_LONG, "", "this name of a file or folder is too long")
MESSAGE(M_WORLD_NO_HOME, "",
    "I do not know your home folder: neither XDG_DATA_HOME nor HOME is set to "
    "a whole path")
MESSAGE(M_WORLD_PLAYER_NAME, "tw",
    "\"{0}\" is no name for a player: use up to {1} letters, digits, spaces, -, "
    "_ and points, and begin with a letter or digit")
