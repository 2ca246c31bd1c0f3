# Whether the word at the cursor is the first one.
function __evenhand_first
    test (count (commandline -opc)) -eq 1
end

# Whether a command, or the practice that needs none, is what it is about.
function __evenhand_in
    set -l words (commandline -opc)
    if set -q words[2]; and contains -- $words[2] $__evenhand_verbs
        test $words[2] = $argv[1]
    else
        test practise = $argv[1]
    end
end

# Players who have a journal on this computer.
function __evenhand_players
    set -l data $HOME/.local/share
    if string match -q '/*' -- "$XDG_DATA_HOME"
        set data $XDG_DATA_HOME
    end
    for file in $data/evenhand/player-*.db
        string replace -r '.*/player-(.*)\.db$' '$1' -- $file
    end
end

# Routine files, and folders to go on from.
function __evenhand_files
    set -l at (commandline -ct)
    for file in $at*.yaml $at*.yml $at*/
        echo $file
    end
end
