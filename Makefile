# evenhand: build, test, install.  `make help` lists the targets.

NAME    := evenhand
VERSION := 0.1.0
PREFIX  ?= /usr/local
DESTDIR ?=
B       ?= build
CC      ?= cc

# A part of the house alone: make ROOMS="base music" B=build-music check
ROOMS   ?= base music routine score coach sound screen world command

PKG_CONFIG ?= pkg-config
LIBRARIES  := yaml-0.1 sqlite3 libutf8proc
WARN    := -Wall -Wextra -Wpedantic -Wshadow -Wconversion \
	-Wstrict-prototypes -Wmissing-prototypes -Wvla -Wformat=2 -Wundef \
	-Wcast-qual
HARDEN  ?= -fstack-protector-strong -D_FORTIFY_SOURCE=2
OPT     ?= -O2
CPPFLAGS += -Iinclude -D_POSIX_C_SOURCE=200809L -D_DEFAULT_SOURCE \
	-DEVENHAND_VERSION='"$(VERSION)"'
EXTRA   ?=
ALL_CFLAGS = -std=c17 $(WARN) $(OPT) -g $(HARDEN) -ffp-contract=off -pthread \
	$(shell $(PKG_CONFIG) --cflags $(LIBRARIES) 2>/dev/null) $(CFLAGS) $(EXTRA)
LDLIBS  = $(shell $(PKG_CONFIG) --libs $(LIBRARIES)) -lm -pthread

LIB_SRC := $(foreach r,$(ROOMS),$(wildcard src/$(r)/*.c))
LIB_OBJ := $(LIB_SRC:%.c=$(B)/%.o)
LIB     := $(B)/lib$(NAME).a
ROUTINES := $(sort $(wildcard routines/*.yaml))
ifneq ($(filter world,$(ROOMS)),)
LIB_OBJ += $(B)/builtin.o
endif

TEST_SRC := $(foreach r,$(ROOMS),$(wildcard tests/$(r)/test_*.c))
TESTS   := $(TEST_SRC:%.c=$(B)/%)

.DELETE_ON_ERROR:
.SECONDARY:
.PHONY: all run check check-all lint bench fuzz cover golden install \
	uninstall deps deps-dev dist-check help clean asan tsan valgrind whole \
	killed tests

all: $(B)/$(NAME)

$(B)/$(NAME): $(B)/src/main.o $(LIB)
	$(CC) $(ALL_CFLAGS) $(LDFLAGS) -o $@ $< $(LIB) $(LDLIBS)

$(LIB): $(LIB_OBJ)
	@rm -f $@
	$(AR) rcs $@ $(LIB_OBJ)

$(B)/%.o: %.c
	@mkdir -p $(@D)
	$(CC) $(CPPFLAGS) $(ALL_CFLAGS) -MMD -MP -c -o $@ $<

# The shipped routines, inside the program.
$(B)/builtin.c: $(ROUTINES) tests/tools/embed.sh
	@mkdir -p $(@D)
	sh tests/tools/embed.sh $(ROUTINES) > $@

$(B)/builtin.o: $(B)/builtin.c
	$(CC) $(CPPFLAGS) $(ALL_CFLAGS) -MMD -MP -c -o $@ $<

# Unit tests: one program a file, linked with the library.
$(B)/tests/%: $(B)/tests/%.o $(LIB)
	$(CC) $(ALL_CFLAGS) $(LDFLAGS) $(TEST_LDFLAGS) -o $@ $< $(LIB) \
	    $(shell $(PKG_CONFIG) --libs cmocka) $(LDLIBS)

tests: $(TESTS)

-include $(LIB_OBJ:.o=.d) $(TESTS:=.d) $(B)/src/main.d
