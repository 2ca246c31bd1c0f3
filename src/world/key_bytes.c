/*
 * key_bytes.c - one key out of a stream of bytes
 *
 * Escape sequences as ECMA-48 builds them: ESC [, parameters 0x30 to 0x3f,
 * intermediates 0x20 to 0x2f, one final byte 0x40 to 0x7e.  ESC O and a byte
 * is what keypads send.  ESC and any other key is that key with Alt, which
 * means nothing here and must not count as the key itself.
 */
#include "key_bytes.h"

#include <ctype.h>

#include "evenhand/world/keys.h"

enum { ESC = 0x1b, DEL = 0x7f };

static enum key key_of_final(char final)
{
	switch (final) {
	case 'B': /* down */
	case 'C': /* right */
	case 'M': /* Enter of a keypad, after ESC O */
		return KEY_FORWARD;
	case 'A': /* up */
	case 'D': /* left */
		return KEY_BACK;
	default:
		return KEY_OTHER;
	}
}

/* Keys of the kind ESC [ number ~. */
static enum key key_of_number(const char *bytes, size_t length)
{
	if (length < 4 || isdigit((unsigned char)bytes[3]))
		return KEY_OTHER;
	if (bytes[2] == '6')
		return KEY_FORWARD; /* Page Down */
	if (bytes[2] == '5')
		return KEY_BACK; /* Page Up */
	return KEY_OTHER;
}

/* ESC [ ...: as key_decode. */
static size_t decode_sequence(
    const char *bytes, size_t length, bool over, enum key *key)
{
	size_t i = 2;

	/* The Linux console sends ESC [ [ A for its first function keys. */
	if (length > 2 && bytes[2] == '[')
		return length > 3 ? 4 : over ? 3 : 0;
	while (i < length && i < KEY_BYTES_MAX && bytes[i] >= 0x20 &&
	    bytes[i] <= 0x3f)
		i++;
	if (i == length && i < KEY_BYTES_MAX)
		return over ? length : 0;
	if (i == KEY_BYTES_MAX)
		return i;
	/* A control byte here belongs to the next key. */
	if (bytes[i] < 0x40 || bytes[i] == DEL)
		return i;
	if (bytes[i] == '~')
		*key = key_of_number(bytes, i + 1);
	else if (bytes[i] != 'M')
		*key = key_of_final(bytes[i]);
	return i + 1;
}

static size_t decode_escape(
    const char *bytes, size_t length, bool over, enum key *key)
{
	if (length == 1) {
		*key = KEY_ESCAPE;
		return over ? 1 : 0;
	}
	if (bytes[1] == '[')
		return decode_sequence(bytes, length, over, key);
	if (bytes[1] == 'O') {
		if (length == 2)
			return over ? 2 : 0;
		*key = key_of_final(bytes[2]);
		return 3;
	}
	/* Escape pressed, and another escape sequence right behind it. */
	if (bytes[1] == ESC)
		*key = KEY_ESCAPE;
	return bytes[1] == ESC ? 1 : 2;
}

static enum key key_of_letter(char letter)
{
	switch (tolower((unsigned char)letter)) {
	case '\r':
	case '\n':
		return KEY_FORWARD;
	case '\b':
	case DEL:
		return KEY_BACK;
	case '\t':
		return KEY_LEAF;
	case '+':
	case '=': /* + without Shift on many keyboards */
		return KEY_LOUDER;
	case '-':
		return KEY_SOFTER;
	case ' ':
		return KEY_SILENCE;
	case 'c':
		return KEY_CLEAN;
	case 's':
		return KEY_SHAKY;
	case 'h':
		return KEY_HURT;
	case 'q':
		return KEY_LEAVE;
	case '?':
		return KEY_HELP;
	default:
		return KEY_OTHER;
	}
}

size_t key_decode(
    const char *bytes, size_t length, bool over, enum key *key, int *digit)
{
	size_t taken = 1;

	*key = KEY_OTHER;
	*digit = 0;
	if (length == 0)
		return 0;
	if (bytes[0] == ESC)
		return decode_escape(bytes, length, over, key);
	if (bytes[0] >= '0' && bytes[0] <= '9') {
		*key = KEY_DIGIT;
		*digit = bytes[0] - '0';
		return 1;
	}
	*key = key_of_letter(bytes[0]);
	/* The further bytes of one letter in UTF-8 are no keys of their own. */
	while (taken < length && ((unsigned char)bytes[taken] & 0xc0) == 0x80)
		taken++;
	return taken;
}

/* The byte that tells an escape sequence, 0 when none of those does. */
static int exact_sequence(const char *bytes, size_t taken)
{
	char final = bytes[taken - 1];

	if (bytes[1] == '[' && final == '~')
		return bytes[2] == '5' || bytes[2] == '6' ? bytes[2] : 0;
	return final >= 'A' && final <= 'D' ? final : 0;
}

int key_exact(const char *bytes, size_t taken)
{
	int final;

	if (taken == 1)
		return (unsigned char)bytes[0] < 0x80 ? bytes[0] : 0;
	if (taken < 3 || bytes[0] != ESC)
		return 0;
	if (bytes[1] == 'O' && bytes[2] == 'M')
		return '\r';
	if (bytes[1] != '[' && bytes[1] != 'O')
		return 0;
	final = exact_sequence(bytes, taken);
	return final ? KEYS_SEQUENCE + final : 0;
}
