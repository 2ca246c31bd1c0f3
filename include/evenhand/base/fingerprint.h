/*
 * fingerprint.h - a short name for the bytes of a file
 *
 * FNV-1a, 64 bits (Fowler, Noll, Vo; check values in the FNV reference:
 * "" -> cbf29ce484222325, "foobar" -> 85944171f73967e8).  It tells editions of
 * a routine apart; it is no protection against somebody who wants a clash.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_BASE_FINGERPRINT_H
#define EVENHAND_BASE_FINGERPRINT_H

#include <stddef.h>
#include <stdint.h>

#define FINGERPRINT_START UINT64_C(0xcbf29ce484222325)

/* Goes on from an earlier fingerprint, or from FINGERPRINT_START. */
uint64_t fingerprint_add(uint64_t from, const void *bytes, size_t length);

#endif
