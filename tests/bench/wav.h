/*
 * wav.h - the head of a WAV file of one channel of 16 bits
 */
#ifndef BENCH_WAV_H
#define BENCH_WAV_H

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

enum { WAV_HEAD = 44 };

static inline void wav_number(unsigned char *at, uint32_t n)
{
	for (int i = 0; i < 4; i++)
		at[i] = (unsigned char)(n >> 8 * i);
}

/* So many samples of two bytes come behind it. */
static inline bool wav_head(FILE *f, uint32_t rate, uint32_t samples)
{
	static const unsigned char form[] = "RIFF    WAVEfmt \x10\0\0\0\1\0\1";
	unsigned char head[WAV_HEAD] = { 0 };

	memcpy(head, form, sizeof(form) - 1);
	wav_number(head + 4, WAV_HEAD - 8 + 2 * samples);
	wav_number(head + 24, rate);
	wav_number(head + 28, 2 * rate);
	head[32] = 2;
	head[34] = 16;
	memcpy(head + 36, "data", 4);
	wav_number(head + 40, 2 * samples);
	return fwrite(head, 1, WAV_HEAD, f) == WAV_HEAD;
}

#endif
