/*
 * rt.h - the mark of functions that the audio callback may run
 *
 * They take no memory, no lock, no file and no time of unknown length.  A
 * compiler that can check this does (Clang 20 and later); elsewhere the mark
 * is for readers and for the guard test.
 */
#ifndef EVENHAND_SOUND_RT_H
#define EVENHAND_SOUND_RT_H

#if defined(__clang__) && __clang_major__ >= 20
#define RT_SAFE __attribute__((nonblocking))
#else
#define RT_SAFE
#endif

#endif
