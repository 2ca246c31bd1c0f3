#!/bin/sh
# deps.sh [dev] - installs what evenhand needs and this computer lacks
#
# Knows apt, dnf, pacman and brew.  Says what it is about to install, and does
# nothing when all is there.  With "dev" also what lint and the slow suites use.
set -eu

# probe | apt | dnf | pacman | brew  ("-": part of the system there)
build_needs='
cmd:cc|gcc|gcc|gcc|-
hdr:stdio.h|libc6-dev|glibc-devel|glibc|-
cmd:pkg-config|pkg-config|pkgconf-pkg-config|pkgconf|pkg-config
pc:yaml-0.1|libyaml-dev|libyaml-devel|libyaml|libyaml
pc:sqlite3|libsqlite3-dev|sqlite-devel|sqlite|sqlite
pc:libutf8proc|libutf8proc-dev|utf8proc-devel|libutf8proc|utf8proc
pc:portaudio-2.0|portaudio19-dev|portaudio-devel|portaudio|portaudio
pc:pangocairo|libpango1.0-dev|pango-devel|pango|pango
pc:sndfile|libsndfile1-dev|libsndfile-devel|libsndfile|libsndfile
pc:cairo|libcairo2-dev|cairo-devel|cairo|cairo
cmd:pdftotext|poppler-utils|poppler-utils|poppler|poppler
font:sans-serif|fonts-dejavu-core|dejavu-sans-fonts|ttf-dejavu|-
pc:ncursesw|libncurses-dev|ncurses-devel|ncurses|ncurses
pc:cmocka|libcmocka-dev|libcmocka-devel|cmocka|cmocka
cmd:msgfmt|gettext|gettext|gettext|gettext
cmd:localedef|libc-bin|glibc-common|glibc|-
locale:de_DE|locales|glibc-locale-source|glibc|-
cmd:tmux|tmux|tmux|tmux|tmux
cmd:bash|bash|bash|bash|bash
cmd:sqlite3|sqlite3|sqlite|sqlite|sqlite
cmd:python3|python3|python3|python|python
py:yaml|python3-yaml|python3-pyyaml|python-yaml|pyyaml
py:jsonschema|python3-jsonschema|python3-jsonschema|python-jsonschema|-
'
dev_needs='
cmd:git|git|git|git|git
cmd:clang|clang|clang|clang|llvm
cmd:clang-format|clang-format|clang-tools-extra|clang|clang-format
cmd:clang-tidy|clang-tidy|clang-tools-extra|clang|llvm
fuzz:|libclang-rt-dev|compiler-rt|compiler-rt|llvm
cmd:cppcheck|cppcheck|cppcheck|cppcheck|cppcheck
cmd:valgrind|valgrind|valgrind|valgrind|-
cmd:mandoc|mandoc|mandoc|mandoc|mandoc
cmd:shellcheck|shellcheck|ShellCheck|shellcheck|shellcheck
cmd:codespell|codespell|codespell|codespell|codespell
cmd:zsh|zsh|zsh|zsh|zsh
cmd:fish|fish|fish|fish|fish
cmd:strace|strace|strace|strace|-
pc:aubio|libaubio-dev|aubio-devel|aubio|aubio
cmd:fluidsynth|fluidsynth|fluidsynth|fluidsynth|fluid-synth
sf2:TimGM6mb|timgm6mb-soundfont|-|-|-
cmd:pipewire|pipewire|pipewire|pipewire|-
cmd:pw-cli|pipewire-bin|pipewire-utils|pipewire|-
alsa:pipewire|pipewire-alsa|pipewire-alsa|pipewire-alsa|-
cmd:wireplumber|wireplumber|wireplumber|wireplumber|-
cmd:jackd|jackd2|jack-audio-connection-kit|jack2|jack
cmd:jack_rec|jackd2|jack-audio-connection-kit-example-clients|jack-example-tools|jack
'

# Debian's python3 is asked first: the packages of apt are for that one.
python=python3
if [ -x /usr/bin/python3 ]; then
	python=/usr/bin/python3
fi

there()
{
	case $1 in
	cmd:*) command -v "${1#cmd:}" >/dev/null 2>&1 ;;
	pc:*) pkg-config --exists "${1#pc:}" 2>/dev/null ;;
	py:*) "$python" -c "import ${1#py:}" 2>/dev/null ;;
	alsa:*) find /usr/lib* -maxdepth 3 -path \
	    "*/alsa-lib/libasound_module_pcm_${1#alsa:}.so" 2>/dev/null |
	    grep -q . ;;
	sf2:*) find /usr/share/sounds/sf2 /usr/share/soundfonts -name \
	    "${1#sf2:}.sf2" 2>/dev/null | grep -q . ;;
	font:*) [ -n "$(fc-match "${1#font:}" file 2>/dev/null)" ] ||
	    [ "$(uname)" = Darwin ] ;;
	locale:*) [ -f "/usr/share/i18n/locales/${1#locale:}" ] ||
	    [ "$(uname)" = Darwin ] ;;
	hdr:*) echo "#include <${1#hdr:}>" | cc -E - >/dev/null 2>&1 ;;
	fuzz:*) echo 'int LLVMFuzzerTestOneInput(const char *d, unsigned long n)
		{ return !d && n; }' |
		clang -x c -fsanitize=fuzzer -o /dev/null - 2>/dev/null ;;
	esac
}

column=0
for manager in apt-get:2 dnf:3 pacman:4 brew:5; do
	if command -v "${manager%:*}" >/dev/null 2>&1; then
		column=${manager#*:}
		manager=${manager%:*}
		break
	fi
done

needs=$build_needs
if [ "${1-}" = dev ]; then
	needs=$needs$dev_needs
fi

missing=
packages=
for line in $(printf '%s' "$needs" | tr ' ' '_'); do
	probe=${line%%|*}
	if there "$probe"; then
		continue
	fi
	missing="$missing ${probe#*:}"
	if [ "$column" -gt 0 ]; then
		package=$(printf '%s' "$line" | cut -d'|' -f"$column")
		case " $packages " in
		*" $package "*) ;;
		*) [ "$package" = - ] || packages="$packages $package" ;;
		esac
	fi
done

if [ -z "$missing" ]; then
	exit 0
fi
if [ "$column" -eq 0 ]; then
	echo "evenhand needs:$missing" >&2
	echo "I know apt, dnf, pacman and brew, and found none of them." \
	    "Install these by hand, then try again." >&2
	exit 1
fi

# What a system does not have its tests do without, and say so.
if [ -z "$packages" ]; then
	echo "Not to be had with $manager:$missing"
	exit 0
fi

sudo=
if [ "$(id -u)" -ne 0 ] && [ "$manager" != brew ]; then
	sudo=sudo
	if ! command -v sudo >/dev/null 2>&1; then
		echo "These packages are missing:$packages" >&2
		echo "Ask somebody who may install software on this computer" \
		    "to install them with $manager." >&2
		exit 1
	fi
fi

echo "About to install with $manager:$packages"
# The list is split into words on purpose.
# shellcheck disable=SC2086
case $manager in
apt-get)
	$sudo apt-get -qq update
	DEBIAN_FRONTEND=noninteractive $sudo apt-get -qq -y \
	    --no-install-recommends install $packages ;;
dnf) $sudo dnf -y install $packages ;;
pacman) $sudo pacman -S --needed --noconfirm $packages ;;
brew) brew install $packages ;;
esac
