/*
 * fingerprint.c - FNV-1a over bytes
 */
#include "evenhand/base/fingerprint.h"

/* The prime of the 64-bit form: 2^40 + 2^8 + 0xb3. */
#define PRIME UINT64_C(0x100000001b3)

uint64_t fingerprint_add(uint64_t from, const void *bytes, size_t length)
{
	const unsigned char *b = bytes;

	for (size_t i = 0; i < length; i++)
		from = (from ^ b[i]) * PRIME;
	return from;
}
