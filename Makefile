# evenhand: build, test, install.  `make help` lists the targets.

PROGRAM := evenhand
VERSION := 0.1.0
PREFIX  ?= /usr/local
DESTDIR ?=
B       ?= build
CC      ?= cc

# make V=1 prints every command whole.
Q       := $(if $(V),,@)
SAY     := @$(if $(findstring s,$(firstword -$(MAKEFLAGS))),:,echo)

# A part of the house alone: make ROOMS="base music" B=build-music check
ROOMS   ?= base music routine score listen coach record sound screen paper \
	world command

PKG_CONFIG ?= pkg-config
LIBRARIES  := yaml-0.1 sqlite3 libutf8proc ncursesw
SOUND_LIBRARIES := libutf8proc portaudio-2.0
PAPER_LIBRARIES := libutf8proc pangocairo cairo
FILE_LIBRARIES := libutf8proc sndfile
WARN    := -Wall -Wextra -Wpedantic -Wshadow -Wconversion \
	-Wstrict-prototypes -Wmissing-prototypes -Wvla -Wformat=2 -Wundef \
	-Wcast-qual
HARDEN  ?= -fstack-protector-strong -D_FORTIFY_SOURCE=2
OPT     ?= -O2
SYSTEM  := -Iinclude -D_XOPEN_SOURCE=700 -D_DEFAULT_SOURCE
CPPFLAGS += $(SYSTEM) -DEVENHAND_VERSION='"$(VERSION)"'
EXTRA   ?=
# Headers of others are read without our warnings.
PAPER_CFLAGS := $(patsubst -I%,-isystem %,$(filter -I%,\
	$(shell $(PKG_CONFIG) --cflags $(PAPER_LIBRARIES) $(FILE_LIBRARIES) \
	    2>/dev/null)))
ALL_CFLAGS = -std=c17 $(WARN) $(OPT) -g $(HARDEN) -ffp-contract=off -pthread \
	$(filter-out -D%,$(shell $(PKG_CONFIG) --cflags $(LIBRARIES) \
	    $(SOUND_LIBRARIES) 2>/dev/null)) $(PAPER_CFLAGS) $(CFLAGS) $(EXTRA)
# Shared memory was in a library of its own before glibc 2.34.
LDLIBS  = $(shell $(PKG_CONFIG) --libs $(LIBRARIES)) -lm -pthread $(RT)
SOUND_LDLIBS = $(shell $(PKG_CONFIG) --libs $(SOUND_LIBRARIES)) -lm -pthread \
	$(RT)
# Where these are not there, all but paper is built.
PAPER_THERE := $(shell $(PKG_CONFIG) --exists $(PAPER_LIBRARIES) && echo yes)
PAPER_LDLIBS = $(shell $(PKG_CONFIG) --libs $(PAPER_LIBRARIES)) -lm
# And where this is not, all but files of sound.
FILE_THERE := $(shell $(PKG_CONFIG) --exists $(FILE_LIBRARIES) && echo yes)
FILE_LDLIBS = $(shell $(PKG_CONFIG) --libs $(FILE_LIBRARIES)) -lm
RT     := $(if $(filter Linux,$(shell uname)),-lrt)

LIB_SRC := $(filter-out $(if $(PAPER_THERE),,$(wildcard src/world/cairo*.c)) \
	$(if $(FILE_THERE),,$(wildcard src/world/sndfile_*.c)),\
	$(foreach r,$(ROOMS),$(wildcard src/$(r)/*.c)))
LIB_OBJ := $(LIB_SRC:%.c=$(B)/%.o)
LIB     := $(B)/lib$(PROGRAM).a
SOUND   := $(B)/$(PROGRAM)-sound
PAPER   := $(if $(PAPER_THERE),$(B)/$(PROGRAM)-paper)
AUDIO   := $(if $(FILE_THERE),$(B)/$(PROGRAM)-file)
TOOLS   := tests/tools
# And where this is not, all but other languages.
MSGFMT  := $(shell command -v msgfmt)
LOCALE  := $(B)/locale
PO      := $(sort $(wildcard src/po/*.po))
MO      := $(if $(MSGFMT),$(PO:src/po/%.po=$(LOCALE)/%/LC_MESSAGES/$(PROGRAM).mo))
ROUTINES := $(sort $(wildcard routines/*.yaml))
ifneq ($(filter world,$(ROOMS)),)
LIB_OBJ += $(B)/builtin.o
endif

TEST_SRC := $(foreach r,$(ROOMS),$(wildcard tests/$(r)/test_*.c))
TESTS   := $(TEST_SRC:%.c=$(B)/%)
# Invented students under the coach's rules: a few of them with every check.
SIMULATE := $(B)/tests/simulate/simulate
SIM_OBJ  := $(patsubst %.c,$(B)/%.o,$(wildcard tests/simulate/*.c))
ifneq ($(filter coach,$(ROOMS)),)
TESTS   += $(SIMULATE)
endif

# What random bytes are read as: make fuzz F=record
F ?= routine record list listen keys journal $(if $(FILE_THERE),recording)
FUZZ_ALL := $(F:%=fuzz-%)
# What is killed while it works, and how often.
KILLED := kill kill_gather kill_write
KILLS_kill := 200
KILLS_kill_gather := 100
KILLS_kill_write := 50

.DELETE_ON_ERROR:
.SECONDARY:
.PHONY: all run check check-all lint bench figures fuzz cover install \
	uninstall without-paper without-files without-tongues template \
	asan-built tsan-built fuzz-built bench-built \
	deps deps-dev dist dist-check deb help clean asan tsan valgrind killed \
	paced recorded sounded soak true-time picture tests golden simulate faults \
	$(KILLED) $(FUZZ_ALL)

all: $(B)/$(PROGRAM) $(SOUND) $(or $(PAPER),without-paper) \
    $(or $(AUDIO),without-files) $(if $(MSGFMT),$(MO),without-tongues)

without-paper:
	@echo "no sheets of paper: cairo and pango are not there (make deps)"

without-files:
	@echo "no files of sound: libsndfile is not there (make deps)"

without-tongues:
	@echo "English alone: msgfmt is not there (make deps)"

$(B)/$(PROGRAM): $(B)/src/main.o $(LIB)
	$(SAY) "link $@"
	$(Q)$(CC) $(ALL_CFLAGS) $(LDFLAGS) -o $@ $< $(LIB) $(LDLIBS)

# The program that makes sound: all that stands on PortAudio.
$(SOUND): $(B)/src/main_sound.o $(LIB)
	$(SAY) "link $@"
	$(Q)$(CC) $(ALL_CFLAGS) $(LDFLAGS) -o $@ $< $(LIB) $(SOUND_LDLIBS)

# The program that draws on paper: all that stands on cairo and pango.
$(B)/$(PROGRAM)-paper: $(B)/src/main_paper.o $(LIB)
	$(SAY) "link $@"
	$(Q)$(CC) $(ALL_CFLAGS) $(LDFLAGS) -o $@ $< $(LIB) $(PAPER_LDLIBS)

# The program that reads and writes files of sound: all that stands on libsndfile.
$(B)/$(PROGRAM)-file: $(B)/src/main_file.o $(LIB)
	$(SAY) "link $@"
	$(Q)$(CC) $(ALL_CFLAGS) $(LDFLAGS) -o $@ $< $(LIB) $(FILE_LDLIBS)

$(LIB): $(LIB_OBJ)
	@rm -f $@
	$(Q)$(AR) rcs $@ $(LIB_OBJ)

$(B)/%.o: %.c
	@mkdir -p $(@D)
	$(SAY) "cc $<"
	$(Q)$(CC) $(CPPFLAGS) $(ALL_CFLAGS) -MMD -MP -c -o $@ $<

# The shipped routines, inside the program.
$(B)/builtin.c: $(ROUTINES) $(TOOLS)/embed.sh
	@mkdir -p $(@D)
	$(Q)sh $(TOOLS)/embed.sh $(ROUTINES) > $@

$(B)/builtin.o: $(B)/builtin.c
	$(Q)$(CC) $(CPPFLAGS) $(ALL_CFLAGS) -MMD -MP -c -o $@ $<

# Sentences of other languages; src/world/gettext.c looks for them.
$(LOCALE)/%/LC_MESSAGES/$(PROGRAM).mo: src/po/%.po
	@mkdir -p $(@D)
	$(SAY) "msgfmt $<"
	$(Q)$(MSGFMT) -o $@ $<

# Every sentence, for whoever begins another language.
template: $(B)/$(PROGRAM).pot

$(B)/$(PROGRAM).pot: $(B)/tests/tools/template
	$(Q)$< > $@

# Completions of shells, from what the program tells of itself.
COMPLETE := docs/completion
$(B)/evenhand.bash $(B)/evenhand.zsh $(B)/evenhand.fish: \
    $(B)/evenhand.%: $(B)/$(PROGRAM) $(COMPLETE)/make.sh $(COMPLETE)/%.awk \
    $(COMPLETE)/evenhand.%
	$(Q)LC_ALL=C sh $(COMPLETE)/make.sh $* $(B)/$(PROGRAM) $(ROUTINES) > $@

# Unit tests: one program a file, linked with the library.
$(B)/tests/%: $(B)/tests/%.o $(LIB)
	$(Q)$(CC) $(ALL_CFLAGS) $(LDFLAGS) $(TEST_LDFLAGS) -o $@ $< $(LIB) \
	    $(shell $(PKG_CONFIG) --libs cmocka) $(LDLIBS) $(TEST_LDLIBS)

# Those that start it, and one that compares it with PortAudio alone.
$(B)/tests/world/test_device_paced $(B)/tests/world/test_device_sound \
    $(B)/tests/world/test_device_hear \
    $(B)/tests/world/test_device_owed \
    $(B)/tests/world/test_device_trouble $(B)/tests/whole/drive: | $(SOUND)
$(B)/tests/bench/bench_sound: TEST_LDLIBS = $(SOUND_LDLIBS)

$(SIMULATE): $(SIM_OBJ) $(LIB)
	$(SAY) "link $@"
	$(Q)$(CC) $(ALL_CFLAGS) $(LDFLAGS) -o $@ $(SIM_OBJ) $(LIB) $(LDLIBS)

# Recordings for the tests, in every format.
TONE := $(if $(FILE_THERE),$(B)/tests/whole/tone)
$(B)/tests/whole/tone: TEST_LDLIBS = $(FILE_LDLIBS)

# The guard round the audio callback sees these calls.
GUARDED := malloc calloc realloc free aligned_alloc pthread_cond_wait open \
	pthread_mutex_lock \
	pthread_mutex_trylock pthread_mutex_unlock pthread_cond_signal \
	pthread_create close read write fopen fwrite fputs clock_gettime time \
	nanosleep usleep poll
comma := ,
$(B)/tests/sound/test_guard: TEST_LDFLAGS = \
	$(foreach f,$(GUARDED),-Wl$(comma)--wrap=$(f))

# Memory ends where these tests want it to.
$(B)/tests/routine/test_faults: TEST_LDFLAGS = -Wl,--wrap=calloc
$(B)/tests/record/test_hostile: TEST_LDFLAGS = -Wl,--wrap=calloc \
	-Wl,--wrap=realloc

tests: $(TESTS) $(TONE)

# So many tests and analyses run at a time.
JOBS   ?= 2

# Those that let true time pass are slow and have a target of their own.
PACED  := tests/whole/test_completion_prompt.sh \
	tests/whole/test_first_minutes.sh \
	tests/whole/test_input.sh tests/whole/test_lines_held.sh \
	tests/whole/test_pace.sh \
	tests/whole/test_screen.sh tests/whole/test_screen_class.sh \
	tests/whole/test_screen_history.sh \
	tests/whole/test_screen_pages.sh \
	tests/whole/test_story_ways.sh \
	tests/whole/test_terminal.sh
PACED_C := $(B)/tests/world/test_device_paced
SOUNDED := $(sort $(wildcard tests/whole/test_sound_*.sh))
# Slow, and wants a core.
RECORDED := tests/whole/test_recorded.sh
WHOLE  := $(filter-out $(PACED) $(SOUNDED) $(RECORDED),\
	$(sort $(wildcard tests/whole/test_*.sh)))
C_FILES = $(wildcard src/*.c src/*/*.c tests/*/*.c)
H_FILES = $(filter-out include/evenhand/base/message%,\
	$(wildcard include/evenhand/*/*.h)) include/evenhand/base/message.h
OWN_H   = $(wildcard src/*/*.h tests/*/*.h)
SHELLS  = $(wildcard tests/*/*.sh docs/*/*.sh .ci/run)
PAGES   = $(wildcard man/*.[1-9])

run: all
	@$(B)/$(PROGRAM)

# The everyday suite: every unit test, and the real binary on real files.
check: all tests $(B)/tests/whole/bowing
	@EVENHAND=$(abspath $(B)/$(PROGRAM)) CHECK_B=$(B) JOBS=$(JOBS) \
	    BOWING=$(abspath $(B)/tests/whole/bowing) \
	    sh $(TOOLS)/run.sh $(filter-out $(PACED_C),$(TESTS)) $(WHOLE)

# Pages of the screen that were looked at, written anew: look again.
golden: $(filter $(B)/tests/screen/test_view% \
    $(B)/tests/screen/test_track_plot $(B)/tests/paper/test_plot \
    $(B)/tests/paper/test_homework $(B)/tests/paper/test_lesson \
    $(B)/tests/paper/test_class_sheet,$(TESTS))
	@for t in $^; do GOLDEN=rewrite $$t > $(B)/golden.log 2>&1 || \
	    { cat $(B)/golden.log; exit 1; }; done
	git --no-pager diff --stat -- tests/screen/golden tests/paper/golden

# Whole programmes of many invented students, and what the rules did.
STUDENTS ?= 540
SEED     ?= 1

simulate: $(SIMULATE)
	@$< --students $(STUDENTS) --seed $(SEED)

# --- slower suites -------------------------------------------------------

SAN = HARDEN= OPT=-O1

# They look at the same kinds of things as the everyday suite, at fewer of them;
# make asan QUICK= looks at all.
QUICK ?= 1

ASAN = B=$(B)-asan $(SAN) \
	EXTRA="-fsanitize=address,undefined -fno-sanitize-recover=all"

asan-built:
	$(MAKE) -s $(ASAN) all tests $(B)-asan/tests/whole/bowing

asan: asan-built
	$(if $(QUICK),EVENHAND_QUICK=1) \
	    LSAN_OPTIONS=print_suppressions=0:suppressions=$(abspath $(TOOLS)/leaks) \
	    $(MAKE) -s $(ASAN) check

# Data races: the rings, the engine, the device, who listens and the journal's
# thread.
THREADED = $(patsubst %.c,$(B)-tsan/%,$(wildcard tests/sound/test_*.c \
	tests/world/test_device*.c tests/world/test_journal*.c \
	tests/world/test_listener.c tests/world/test_threads.c))

tsan-built:
	$(MAKE) -s B=$(B)-tsan $(SAN) EXTRA=-fsanitize=thread $(THREADED)

tsan: tsan-built
	TSAN_OPTIONS=halt_on_error=1 JOBS=$(JOBS) sh $(TOOLS)/run.sh \
	    $(THREADED)

VALGRIND = valgrind -q --error-exitcode=99 --leak-check=full \
	--show-leak-kinds=definite,possible --errors-for-leak-kinds=definite

valgrind: all tests
	@EVENHAND_QUICK=1 UNDER="$(VALGRIND)" JOBS=$(JOBS) sh $(TOOLS)/run.sh \
	    $(filter $(B)/tests/base/% $(B)/tests/routine/% \
	    $(B)/tests/coach/% $(B)/tests/score/%,$(TESTS))
	HOME=$(abspath $(B))/valgrind-home $(VALGRIND) $(B)/$(PROGRAM) --clock fast \
	    --at 2026-03-02T17:00 < /dev/null > /dev/null

# All that the two below run: nothing is built while they let time pass.
true-time: all $(PACED_C) $(B)/tests/whole/drive $(B)/tests/whole/bowing

# They wait for most of their time, so several of them wait at once.
paced: all $(PACED_C)
	@EVENHAND=$(abspath $(B)/$(PROGRAM)) CHECK_B=$(B) JOBS=3 \
	    sh $(TOOLS)/run.sh $(PACED_C) $(PACED)

# Recorded notes of a sound font, bent and measured.
recorded: all
	@EVENHAND=$(abspath $(B)/$(PROGRAM)) CHECK_B=$(B) \
	    sh $(TOOLS)/run.sh $(RECORDED)

# Real sound on servers of our own: heard, lost, frozen, and back.  What takes
# longest is tried on one kind of server; make sounded QUICK= has all of them.
sounded: all $(B)/tests/whole/drive $(B)/tests/whole/bowing
	@$(if $(QUICK),EVENHAND_QUICK=1) \
	    EVENHAND=$(abspath $(B)/$(PROGRAM)) CHECK_B=$(B) \
	    DRIVE=$(abspath $(B)/tests/whole/drive) \
	    BOWING=$(abspath $(B)/tests/whole/bowing) \
	    sh $(TOOLS)/run.sh $(SOUNDED)

# Each with its own home: make -j2 runs them side by side.
killed: $(KILLED)

$(KILLED): %: all
	EVENHAND=$(abspath $(B)/$(PROGRAM)) KILLS=$(KILLS_$*) sh tests/whole/$*.sh

# A long session at true pace, by hand: what it cost goes to build/soak.txt.
MINUTES ?= 45
soak: all $(B)/tests/whole/bowing
	EVENHAND=$(abspath $(B)/$(PROGRAM)) SOAK=$(abspath $(B))/soak.txt \
	    BOWING=$(abspath $(B)/tests/whole/bowing) \
	    sh tests/whole/soak.sh $(MINUTES)

# Every call that can fail fails: for more memory, for room on the disk, ...
FAILS := $(B)/tests/faults/fails.so

$(FAILS): tests/faults/fails.c
	@mkdir -p $(@D)
	$(Q)$(CC) -std=c17 $(WARN) -O2 -g -fPIC -shared -o $@ $<

faults: all $(FAILS)
	@EVENHAND=$(abspath $(B)/$(PROGRAM)) FAILS=$(abspath $(FAILS)) \
	    JOBS=$(JOBS) sh $(TOOLS)/run.sh \
	    $(sort $(wildcard tests/faults/test_*.sh))

FUZZ_B = $(B)-fuzz
T ?= 60
FUZZED := $(F:%=$(FUZZ_B)/tests/fuzz/fuzz_%.o)
SEEDS_routine := tests/fuzz/routine tests/routine/bad routines
SEEDS_record := tests/fuzz/record
SEEDS_list := tests/fuzz/list tests/paper/golden
SEEDS_listen := tests/fuzz/listen
SEEDS_keys := tests/fuzz/keys
SEEDS_journal := tests/fuzz/journal
SEEDS_recording := tests/fuzz/recording
fuzz: $(FUZZ_ALL)

fuzz-built:
	$(MAKE) B=$(FUZZ_B) CC=clang $(SAN) ROOMS="base music routine score \
	    listen coach record sound screen paper world" \
	    EXTRA="-fsanitize=address,undefined,fuzzer-no-link -fno-sanitize-recover=all" \
	    $(FUZZ_B)/lib$(PROGRAM).a $(FUZZED)

$(FUZZ_ALL): fuzz-%: fuzz-built
	clang -fsanitize=address,undefined,fuzzer \
	    -o $(FUZZ_B)/fuzz_$* $(FUZZ_B)/tests/fuzz/fuzz_$*.o \
	    $(FUZZ_B)/lib$(PROGRAM).a $(shell $(PKG_CONFIG) --libs cmocka) \
	    $(LDLIBS) $(FILE_LDLIBS)
	mkdir -p $(FUZZ_B)/corpus-$*
	$(FUZZ_B)/fuzz_$* $${EVENHAND_SEED:+-seed=$$EVENHAND_SEED} \
	    -max_total_time=$(T) -timeout=5 \
	    -print_final_stats=1 -dict=tests/fuzz/$*.dict \
	    -artifact_prefix=$(FUZZ_B)/ $(FUZZ_B)/corpus-$* $(SEEDS_$*)

# --- figures -------------------------------------------------------------

# One of them hears the same sounds through a library that may not be there.
AUBIO := $(shell $(PKG_CONFIG) --exists aubio && echo yes)
BENCHES = $(patsubst %.c,$(B)/%,$(filter-out \
	$(if $(AUBIO),,tests/bench/bench_listen_aubio.c),\
	$(wildcard tests/bench/bench_*.c)))
$(B)/tests/bench/bench_listen_aubio: TEST_LDLIBS = \
	$(shell $(PKG_CONFIG) --libs aubio 2>/dev/null)

FIGURES = EVENHAND=$(abspath $(B)/$(PROGRAM)) sh $(TOOLS)/figures.sh

bench-built: all $(BENCHES) $(SIMULATE)

bench: bench-built
	@$(FIGURES) $(SIMULATE) $(BENCHES)

# The same as a page of docs/: for a machine where nothing else is at work.
figures: bench-built
	@CC="$(CC)" $(FIGURES) --page $(SIMULATE) $(BENCHES) > $(B)/figures.md
	mv $(B)/figures.md docs/figures.md

# With gcov beside CC; the table stays in $(B)-cover/cover.txt.
cover:
	@mkdir -p $(B)-cover
	@find $(B)-cover -name '*.gcda' -exec rm -f {} +
	$(MAKE) B=$(B)-cover HARDEN= OPT=-O0 \
	    EXTRA="--coverage -include $(TOOLS)/cover.h" check
	@sh $(TOOLS)/cover.sh $(B)-cover > $(B)-cover/cover.txt
	@cat $(B)-cover/cover.txt

# The pictures in docs/, from the program's own pages.
PICTURES := play today

picture: $(B)/tests/tools/picture
	@for p in $(PICTURES); do $< $$p > docs/$$p.svg || exit 1; done

# --- what must be tidy ---------------------------------------------------

# Where the warnings of the compiler are looked for; what is there is not built
# again, so it must have been built with the same EXTRA.
LINT_B ?= $(B)-lint

# Each version of gcc sees other things; with this one all was looked at.  What it
# takes for a leak is none where a list or a caller keeps it: leaks are what the
# sanitizer and valgrind find.
ANALYSER ?= gcc-12
ANALYSE = $(ANALYSER) -std=c17 $(CPPFLAGS) $(PAPER_CFLAGS) -O0 -fanalyzer \
	-Wno-analyzer-malloc-leak -Werror -S -o /dev/null

# Clang's analyser walks few paths in the everyday lint; make lint QUICK= walks all
# that it can, for some minutes more.
PATHS = $(if $(QUICK),-Xclang -analyzer-config -Xclang mode=shallow)

lint:
	sh $(TOOLS)/arrows.sh
	sh $(TOOLS)/size.sh
	sh $(TOOLS)/messages.sh
	$(MAKE) -s B=$(LINT_B) EXTRA=-Werror all tests
	@echo "the warnings of clang"
	@printf '%s\n' $(C_FILES) | xargs -P $(JOBS) -n 16 clang $(CPPFLAGS) \
	    $(ALL_CFLAGS) -Werror -fsyntax-only
	@echo "every header alone"
	@printf '%s\n' $(H_FILES) $(OWN_H) | xargs -P $(JOBS) -n 1 sh -c \
	    'echo "#include \"$$1\"" | $(CC) $(CPPFLAGS) -I. $(ALL_CFLAGS) -Werror \
	    -Wno-pedantic -fsyntax-only -x c - || exit 255' header
	clang-format --style=file:docs/clang-format --dry-run -Werror \
	    $(C_FILES) $(H_FILES) $(OWN_H)
	@printf '%s\n' $(filter src/%,$(C_FILES)) | xargs -P $(JOBS) -n 4 sh -c \
	    'clang-tidy --quiet --config-file=docs/clang-tidy "$$@" -- -std=c17 \
	    $(SYSTEM) $(PAPER_CFLAGS) $(PATHS) \
	    -DEVENHAND_VERSION=\"$(VERSION)\" 2>/dev/null' tidy
	@echo "the analyser of $(ANALYSER)"
	@if command -v $(ANALYSER) > /dev/null; then \
	    printf '%s\n' $(filter src/%,$(C_FILES)) | \
	    xargs -P $(JOBS) -n 1 $(ANALYSE); \
	    else echo "skipped: there is no $(ANALYSER)"; fi
	cppcheck -q --std=c11 --enable=warning,performance,portability \
	    --inline-suppr --suppress=missingIncludeSystem --error-exitcode=1 \
	    -j $(JOBS) -Iinclude src
	shellcheck $(SHELLS)
	@for p in $(PAGES); do mandoc -Tlint -Wwarning $$p || exit 1; done
	codespell -q 3 -S "*.po,*-deutsch*" -L nd,chekc README.md DEVELOPERS.md docs man include src routines

check-all: check paced recorded sounded asan tsan valgrind killed

# --- install -------------------------------------------------------------

DATA = $(DESTDIR)$(PREFIX)/share
# What nobody starts by hand; src/world/beside.c looks for it there.
LIBEXEC = $(DESTDIR)$(PREFIX)/libexec/$(PROGRAM)
BASH_COMPLETION = $(DATA)/bash-completion/completions
ZSH_COMPLETION  = $(DATA)/zsh/site-functions
FISH_COMPLETION = $(DATA)/fish/vendor_completions.d

install: all $(B)/evenhand.bash $(B)/evenhand.zsh $(B)/evenhand.fish
	install -d $(DESTDIR)$(PREFIX)/bin $(DESTDIR)$(PREFIX)/share/man/man1 \
	    $(DESTDIR)$(PREFIX)/share/man/man5 \
	    $(DESTDIR)$(PREFIX)/share/man/man7 \
	    $(DESTDIR)$(PREFIX)/share/$(PROGRAM)/routines $(LIBEXEC) \
	    $(BASH_COMPLETION) $(ZSH_COMPLETION) $(FISH_COMPLETION)
	install -m 755 $(B)/$(PROGRAM) $(DESTDIR)$(PREFIX)/bin/$(PROGRAM)
	install -m 755 $(SOUND) $(PAPER) $(AUDIO) $(LIBEXEC)/
	install -m 644 man/evenhand.1 $(DESTDIR)$(PREFIX)/share/man/man1/
	install -m 644 man/evenhand-routine.5 man/evenhand-record.5 \
	    $(DESTDIR)$(PREFIX)/share/man/man5/
	install -m 644 man/evenhand-listening.7 \
	    $(DESTDIR)$(PREFIX)/share/man/man7/
	install -m 644 $(ROUTINES) $(wildcard routines/*.schema.json) \
	    $(DESTDIR)$(PREFIX)/share/$(PROGRAM)/routines/
	for mo in $(MO:$(LOCALE)/%=%); do \
	    install -d $(DATA)/locale/$${mo%/*} && \
	    install -m 644 $(LOCALE)/$$mo $(DATA)/locale/$$mo || exit 1; done
	install -m 644 $(B)/evenhand.bash $(BASH_COMPLETION)/$(PROGRAM)
	install -m 644 $(B)/evenhand.zsh $(ZSH_COMPLETION)/_$(PROGRAM)
	install -m 644 $(B)/evenhand.fish $(FISH_COMPLETION)/

uninstall:
	rm -f $(DESTDIR)$(PREFIX)/bin/$(PROGRAM) \
	    $(DESTDIR)$(PREFIX)/share/man/man1/evenhand.1 \
	    $(DESTDIR)$(PREFIX)/share/man/man5/evenhand-routine.5 \
	    $(DESTDIR)$(PREFIX)/share/man/man5/evenhand-record.5 \
	    $(DESTDIR)$(PREFIX)/share/man/man7/evenhand-listening.7 \
	    $(BASH_COMPLETION)/$(PROGRAM) $(ZSH_COMPLETION)/_$(PROGRAM) \
	    $(FISH_COMPLETION)/evenhand.fish \
	    $(PO:src/po/%.po=$(DATA)/locale/%/LC_MESSAGES/$(PROGRAM).mo)
	rm -rf $(DESTDIR)$(PREFIX)/share/$(PROGRAM) $(LIBEXEC)

deps:
	@sh $(TOOLS)/deps.sh

deps-dev:
	@sh $(TOOLS)/deps.sh dev

# A Debian package, linted, in $(B): wants debhelper and lintian.
deb:
	sh docs/packaging/build-deb.sh $(B)

# The source of the last commit, packed: the same bytes whoever packs it.
dist:
	@mkdir -p $(B)
	git archive -9 --prefix=$(PROGRAM)-$(VERSION)/ \
	    -o $(B)/$(PROGRAM)-$(VERSION).tar.gz HEAD

# What is packed builds, passes, installs and leaves nothing behind.
dist-check:
	sh $(TOOLS)/dist-check.sh

clean:
	rm -rf $(B) $(B)-asan $(B)-tsan $(B)-lint $(B)-cover $(B)-fuzz

help:
	@echo "make              build $(B)/$(PROGRAM)"
	@echo "make deps         install what is missing (apt, dnf, pacman, brew)"
	@echo "make run          build and start today's practice"
	@echo "make check        the everyday tests; NAME=part runs a part"
	@echo "make simulate     whole programmes of $(STUDENTS) invented students (STUDENTS, SEED)"
	@echo "make golden       the pages the tests compare with, written anew"
	@echo "make deps-dev     install what the targets below use"
	@echo "make lint         arrows, sizes, warnings, formatting, analysers, manuals"
	@echo "make check-all    check, true time, sanitizers, valgrind, 200 kills"
	@echo "make soak         a session of MINUTES=45 at true pace, and what it cost"
	@echo "make recorded     recorded notes of a sound font, bent and measured"
	@echo "make sounded      real sound on servers of our own, lost and found"
	@echo "make faults       no memory, processes, room on the disk, at every place"
	@echo "make fuzz T=60    random bytes as files, sounds, keys, journals, T seconds each"
	@echo "make bench        every figure beside its goal, in one table"
	@echo "make figures      the same into docs/figures.md, on an idle machine"
	@echo "make picture      draw the pictures in docs/ anew"
	@echo "make cover        lines that the everyday tests go through, per file and room"
	@echo "make template     every sentence, for another language, in $(B)"
	@echo "make dist         the source, packed"
	@echo "make dist-check   what is packed, built, tested, installed and removed"
	@echo "make deb          a Debian package, linted"
	@echo "make install      PREFIX=$(PREFIX), DESTDIR; make uninstall"

-include $(LIB_OBJ:.o=.d) $(TESTS:=.d) $(SIM_OBJ:.o=.d) $(BENCHES:=.d) \
	$(patsubst %.c,$(B)/%.d,$(wildcard src/main*.c tests/fuzz/*.c \
	    tests/whole/*.c tests/tools/*.c))
