/* view.h - words of the playing on the full screen; see ../message_list.h */
MESSAGE(M_VIEW_SMALL, "ww",
    "This window is too small. Make it {0} columns wide and {1} rows high.")
