# Players who have a journal on this computer, one a line.
_evenhand_players()
{
	local data=$HOME/.local/share file

	case ${XDG_DATA_HOME-} in
	/*) data=$XDG_DATA_HOME ;;
	esac
	for file in "$data"/evenhand/player-*.db; do
		[ -e "$file" ] || continue
		file=${file##*/player-}
		printf '%s\n' "${file%.db}"
	done
}

# Adds those of the words that begin as the word at the cursor does.
_evenhand_add()
{
	local word

	for word; do
		case $word in
		"$_evenhand_at"*) COMPREPLY+=("$word") ;;
		esac
	done
}

# Names may hold spaces, so they are quoted.
_evenhand_add_players()
{
	local name

	while IFS= read -r name; do
		case $name in
		"$_evenhand_at"*)
			printf -v name %q "$name"
			COMPREPLY+=("$name") ;;
		esac
	done < <(_evenhand_players)
}

# Files with one of the ends given, or all; and folders, to go on from.
_evenhand_add_files()
{
	local file end

	compopt -o filenames 2>/dev/null
	while IFS= read -r file; do
		if [ -d "$file" ] || [ $# -eq 0 ]; then
			COMPREPLY+=("$file")
			continue
		fi
		for end; do
			case $file in
			*"$end") COMPREPLY+=("$file") ;;
			esac
		done
	done < <(compgen -f -- "$_evenhand_at")
}

# What stands behind an option that takes a value.  Lists are of plain words.
# shellcheck disable=SC2086
_evenhand_add_value()
{
	local kind

	kind=$(_evenhand_takes "$1")
	case $kind in
	player) _evenhand_add_players ;;
	routine) _evenhand_add $_evenhand_routines ;;
	"words "*) _evenhand_add ${kind#words } ;;
	file) _evenhand_add_files ;;
	esac
	[ -n "$kind" ]
}

# shellcheck disable=SC2086
_evenhand_add_operands()
{
	local on

	on=$(_evenhand_works_on "$1")
	case $on in
	*ROUTINE)
		_evenhand_add ${on%ROUTINE} $_evenhand_routines
		_evenhand_add_files .yaml .yml ;;
	FILE) _evenhand_add_files .yaml .yml ;;
	esac
}

# shellcheck disable=SC2046,SC2086
_evenhand()
{
	local _evenhand_at=${COMP_WORDS[COMP_CWORD]} verb=practise first=1
	local before=${COMP_WORDS[COMP_CWORD - 1]} i

	COMPREPLY=()
	# "--player=Wren" comes as three words.
	if [ "$_evenhand_at" = = ]; then
		_evenhand_at=
	elif [ "$before" = = ] && [ "$COMP_CWORD" -gt 2 ]; then
		before=${COMP_WORDS[COMP_CWORD - 2]}
	fi
	case " $_evenhand_verbs " in
	*" ${COMP_WORDS[1]-} "*)
		if [ "$COMP_CWORD" -gt 1 ]; then
			verb=${COMP_WORDS[1]}
			first=2
		fi ;;
	esac
	for ((i = first; i < COMP_CWORD; i++)); do
		if [ "${COMP_WORDS[i]}" = -- ]; then
			_evenhand_add_operands "$verb"
			return
		fi
	done
	case $before in
	--*) _evenhand_add_value "$verb:$before" && return ;;
	esac
	case $_evenhand_at in
	-*)
		_evenhand_add $(_evenhand_options "$verb")
		if [ "$COMP_CWORD" -eq 1 ]; then
			_evenhand_add $_evenhand_alone
		fi
		return ;;
	esac
	if [ "$COMP_CWORD" -eq 1 ]; then
		_evenhand_add $_evenhand_verbs
	fi
	_evenhand_add_operands "$verb"
}

complete -F _evenhand evenhand
