#!/bin/sh
# dist-check.sh - the packed source is the same twice; in an empty folder, without
# git, it builds, passes a part of the tests and installs; the installed program
# runs without the source tree, and uninstalling leaves nothing behind
set -eu
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
# Wherever the build outside goes, this one goes its own way.
unset B MAKEFLAGS MAKELEVEL
# Whether it builds is asked here, not how fast it is.
export OPT=-O0 HARDEN=

# What somebody else gets from the same commit must be the same bytes.
git clone -q . "$work/clone"
make -s dist B="$work/one"
make -s -C "$work/clone" dist B="$work/other"
packed=$(cd "$work/one" && echo evenhand-*.tar.gz)
cmp "$work/one/$packed" "$work/other/$packed"
rm -rf "$work/clone"

tar -xzf "$work/one/$packed" -C "$work/one"
tar -xzf "$work/one/$packed" -C "$work"
tree=$work/${packed%.tar.gz}
cd "$tree"
make -s -j"${JOBS:-2}" all build/tests/routine/test_load \
    build/tests/score/test_score
EVENHAND=$tree/build/evenhand CHECK_B=build sh tests/tools/run.sh \
    build/tests/routine/test_load build/tests/score/test_score \
    tests/whole/test_manual.sh tests/whole/test_check.sh
make -s install DESTDIR="$work/root" PREFIX=/usr
diff -r -x build "$work/one/${packed%.tar.gz}" "$tree"

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
make -s -C "$tree" uninstall DESTDIR="$work/root" PREFIX=/usr
left=$(find "$work/root" ! -type d)
if [ -n "$left" ]; then
	echo "left behind by uninstall: $left"
	exit 1
fi
echo "dist-check: good"
