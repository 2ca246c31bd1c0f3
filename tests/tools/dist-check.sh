#!/bin/sh
# dist-check.sh - a clean clone builds and installs, the installed program runs
# without the source tree, and uninstalling leaves nothing behind
set -eu
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
git clone -q . "$work/clone"
cd "$work/clone"
make -s -j"${JOBS:-2}" all
make -s install DESTDIR="$work/root" PREFIX=/usr
cd /
HOME="$work/home" "$work/root/usr/bin/evenhand" --version
HOME="$work/home" "$work/root/usr/bin/evenhand" check \
    "$work/root/usr/share/evenhand/routines/cello.yaml" > /dev/null
# Whatever it finds here, it finds the program that looks for it.
status=0
HOME="$work/home" "$work/root/usr/bin/evenhand" sound > "$work/sound" 2>&1 ||
    status=$?
if [ "$status" -ne 0 ] && [ "$status" -ne 69 ] ||
    grep evenhand-sound "$work/sound"; then
	echo "the installed evenhand does not find evenhand-sound"
	exit 1
fi
HOME="$work/home" "$work/root/usr/bin/evenhand" print homework \
    -o "$work/week.pdf" > /dev/null
for file in bash-completion/completions/evenhand \
    zsh/site-functions/_evenhand fish/vendor_completions.d/evenhand.fish; do
	if ! grep -q marking "$work/root/usr/share/$file"; then
		echo "no completion in $file"
		exit 1
	fi
done
make -s -C "$work/clone" uninstall DESTDIR="$work/root" PREFIX=/usr
left=$(find "$work/root" ! -type d)
if [ -n "$left" ]; then
	echo "left behind by uninstall: $left"
	exit 1
fi
status=$(git -C "$work/clone" status --porcelain)
if [ -n "$status" ]; then
	echo "the build wrote into the tree: $status"
	exit 1
fi
echo "dist-check: good"
