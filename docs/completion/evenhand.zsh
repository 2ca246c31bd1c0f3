# Players who have a journal on this computer.
_evenhand_players()
{
	local data=$HOME/.local/share
	local -a found

	[[ ${XDG_DATA_HOME-} == /* ]] && data=$XDG_DATA_HOME
	found=($data/evenhand/player-*.db(N:t:r))
	compadd -- ${found#player-}
}

_evenhand_files()
{
	_files -g '*.(yaml|yml)(-.)'
}

_evenhand_routine()
{
	_alternative "routines:routine of evenhand:($_evenhand_routines)" \
	    'files:routine file:_evenhand_files'
}

# The first word may be a command, a routine or an option.
_evenhand_first()
{
	if [[ $PREFIX != -* ]]; then
		_evenhand_verbs
	fi
	_evenhand_practise $_evenhand_alone
}

_evenhand()
{
	if (( CURRENT == 2 )); then
		_evenhand_first
	elif (( $+functions[_evenhand_$words[2]] )) &&
	    [[ $words[2] != (first|alone|verbs|players|files|routine) ]]; then
		local verb=$words[2]

		shift words
		(( CURRENT-- ))
		_evenhand_$verb
	else
		_evenhand_practise
	fi
}

_evenhand "$@"
