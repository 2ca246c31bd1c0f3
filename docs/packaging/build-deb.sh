#!/bin/sh
# build-deb.sh [FOLDER] - the Debian package, from a copy of this tree
#
# Builds and lints it in a folder of its own, which goes at the end; the package
# is put into FOLDER (build, if left out).  Wants debhelper 13, lintian and what
# debian/control lists; dpkg-buildpackage says what is missing.
set -eu

root=$(cd "$(dirname "$0")/../.." && pwd)
mkdir -p "${1:-$root/build}"
into=$(cd "${1:-$root/build}" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

tree=$work/evenhand
mkdir "$tree"
cd "$root"
tar -cf - --exclude=./.git --exclude='./build*' . | tar -xf - -C "$tree"
cp -R docs/packaging/debian "$tree/debian"

# What is told twice must be the same.
said=$(sed -n 's/^VERSION := //p' Makefile)
packed=$(sed -n '1s/.*(\(.*\)).*/\1/p' docs/packaging/debian/changelog)
if [ "$said" != "$packed" ]; then
	echo "the Makefile says $said, debian/changelog $packed" >&2
	exit 1
fi

# It holds what the system has: no word of the builder's own environment.
cd "$tree"
env -u B -u PREFIX -u DESTDIR -u EXTRA -u MAKEFLAGS -u MAKELEVEL \
    dpkg-buildpackage -us -uc -b
lintian --fail-on error,warning "$work"/*.changes
mv "$work"/evenhand_*.deb "$into/"
ls -l "$into"/evenhand_*.deb
