# shellcheck shell=sh
# processes.sh - what is there and what has ended, for scripts that start servers

# running PID: it is there and has not ended, also when nobody asked it how
running()
{
	state=$(sed 's/.*) //; s/ .*//' "/proc/$1/stat" 2> /dev/null) &&
	    [ -n "$state" ] && [ "$state" != Z ]
}

ended()
{
	! running "$1"
}

# within SECONDS COMMAND...: asks every 20 ms until it is so
within()
{
	left=$(($1 * 50))
	shift
	while [ "$left" -gt 0 ]; do
		if "$@"; then
			return 0
		fi
		left=$((left - 1))
		sleep 0.02
	done
	return 1
}
