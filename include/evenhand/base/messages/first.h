/* first.h - sentences of the first minutes; see ../message_list.h */

/* --- 1: welcome, before the cautions --- */
MESSAGE(M_FIRST_WELCOME, "",
    "Welcome. In about a minute you know how evenhand works.")
MESSAGE(M_FIRST_WELCOME_PEDALS, "",
    "Two keys or two pedals do all. Forward is Enter, Right, Down or Page "
    "Down. Back is Backspace, Left, Up or Page Up.")
MESSAGE(M_FIRST_WELCOME_KEYS, "", "Forward: go on. Back: skip all this.")

/* --- 2: the two keys --- */
MESSAGE(M_FIRST_FORWARD, "", "Press forward now: the right pedal, or Enter.")
MESSAGE(M_FIRST_FORWARD_MEANS, "", "Forward is yes, go on, or clean.")
MESSAGE(M_FIRST_FORWARD_NOT, "",
    "That was back. Now the other one: forward.")
MESSAGE(M_FIRST_BACK, "",
    "Good. Now press back: the left pedal, or Backspace.")
MESSAGE(M_FIRST_BACK_MEANS, "", "Back is no, something else, or shaky.")
MESSAGE(M_FIRST_BACK_NOT, "",
    "That was forward. Now the other one: back.")
MESSAGE(M_FIRST_KEY_NOT, "",
    "That key does nothing here. Pedals send Page Down and Page Up, or the "
    "arrows.")

/* --- 3: listen --- */
MESSAGE(M_FIRST_LISTEN, "",
    "Next comes one turn: a down bow and an up bow. Only follow it, or play "
    "along.")
MESSAGE(M_FIRST_LISTEN_SIGHT, "",
    "No sound just now: the screen shows what you would hear.")
MESSAGE(M_FIRST_LISTEN_COUNT, "",
    "Soft notes tell the finger. Then ticks count one bow before you begin.")
MESSAGE(M_FIRST_LISTEN_BOWS, "",
    "A low knock: down bow. A higher knock: up bow. Each light tick is a "
    "pulse: one swing of the hand.")
MESSAGE(M_FIRST_LISTEN_STOP, "",
    "Press forward or back while it sounds, and it is silent.")
MESSAGE(M_FIRST_LISTEN_EARS, "", "Start quiet. Turn down if ears ring.")
MESSAGE(M_FIRST_LISTEN_KEYS, "", "Forward: begin. Back: leave this out.")
MESSAGE(M_FIRST_SETTLE, "", "Be still. Ticks first, then two bows.")

/* --- silence --- */
MESSAGE(M_FIRST_SILENT, "",
    "Silent. So you stop it, whenever you like.")
MESSAGE(M_FIRST_SILENT_KEYS, "",
    "Forward: go on, after the ticks. Back: leave it out.")

/* --- 4: mark it --- */
MESSAGE(M_FIRST_MARK_TURN, "",
    "After each turn comes a pause. Was the turn clean or shaky? Mark it "
    "then.")
MESSAGE(M_FIRST_MARK_ROUND, "",
    "After the last finger of each round comes a pause. Was the round clean "
    "or shaky? Mark it then.")
MESSAGE(M_FIRST_MARK_KEYS, "",
    "In the pause: forward is clean, back is shaky. The same again takes the "
    "mark back. No key is no mark.")
MESSAGE(M_FIRST_MARK_TRY, "",
    "Try it: two bows, then mark them as you like. Nothing of this is kept.")
MESSAGE(M_FIRST_MARK_GO, "", "Forward: begin. Back: leave this out.")

/* --- 5: what else there is --- */
MESSAGE(M_FIRST_LAST_CLEAN, "", "You marked it clean.")
MESSAGE(M_FIRST_LAST_SHAKY, "",
    "You marked it shaky. A true mark helps more than a good one.")
MESSAGE(M_FIRST_LAST_NONE, "", "You gave no mark, which is allowed.")
MESSAGE(M_FIRST_LAST_HURT, "",
    "If something hurts: forward or back for silence, then back twice. On a "
    "keyboard h does all of it. Everything stops.")
MESSAGE(M_FIRST_LAST_HELP, "",
    "? tells the keys wherever you are. q leaves.")
MESSAGE(M_FIRST_LAST_ALONE, "",
    "Three minutes without a key end a practice by themselves.")
MESSAGE(M_FIRST_LAST_KEYS, "",
    "Forward: to today's practice. Back: mark a turn once more.")

/* --- it hurts --- */
MESSAGE(M_FIRST_PAIN, "",
    "Everything is silent. Put the instrument down. Does something hurt?")
MESSAGE(M_FIRST_PAIN_KEYS, "", "Forward: nothing hurts. Back: it hurts.")

/* --- all of them --- */
MESSAGE(M_FIRST_SKIP, "", "q goes straight to the practice.")
MESSAGE(M_FIRST_TITLE, "", "First minutes")
MESSAGE(M_FIRST_CUE_HEAR, "", "FOLLOW")
MESSAGE(M_FIRST_CUE_TRY, "", "MARK IT")

/* --- the full screen: big words of at most 12 and 5 letters --- */
MESSAGE(M_FIRST_BIG_WELCOME, "", "WELCOME")
MESSAGE(M_FIRST_BIG_FORWARD, "", "FORWARD")
MESSAGE(M_FIRST_BIG_BACK, "", "BACK")
MESSAGE(M_FIRST_BIG_LISTEN, "", "FOLLOW")
MESSAGE(M_FIRST_BIG_MARK, "", "MARK IT")
MESSAGE(M_FIRST_BIG_LAST, "", "READY")
MESSAGE(M_FIRST_BIG_SKIP, "", "SKIP")
MESSAGE(M_FIRST_BIG_PRESS, "", "PRESS")
MESSAGE(M_FIRST_BIG_WAIT, "", "WAIT")
MESSAGE(M_FIRST_BIG_AGAIN, "", "AGAIN")
MESSAGE(M_FIRST_BIG_MORE, "", "MORE")

/* What the two keys do, each by itself. */
MESSAGE(M_FIRST_DO_SKIP, "", "Back: skip all this.")
MESSAGE(M_FIRST_DO_GO_ON, "", "Forward: go on.")
MESSAGE(M_FIRST_DO_MORE, "", "Forward: read on.")
MESSAGE(M_FIRST_DO_FORWARD, "", "Forward: press it now.")
MESSAGE(M_FIRST_DO_BACK, "", "Back: press it now.")
MESSAGE(M_FIRST_DO_BACK_LATER, "", "Back: not yet.")
MESSAGE(M_FIRST_DO_FORWARD_DONE, "", "Forward: not this time.")
MESSAGE(M_FIRST_DO_LEAVE_OUT, "", "Back: leave this out.")
MESSAGE(M_FIRST_DO_BEGIN, "", "Forward: begin.")
MESSAGE(M_FIRST_DO_TICKS, "", "Forward: go on, after the ticks.")
MESSAGE(M_FIRST_DO_PRACTICE, "", "Forward: to today's practice.")
MESSAGE(M_FIRST_DO_AGAIN, "", "Back: mark a turn once more.")
