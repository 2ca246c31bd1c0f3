/*
 * pitch.h - notes, cents and frequencies
 *
 * Notes are numbered in semitones as MIDI does: 69 is A4, 60 is C4 (middle C,
 * scientific pitch notation).  Equal temperament over a reference for A4,
 * usually 440 Hz (ISO 16):
 *
 *	f = reference x 2^((note - 69) / 12)        cents = 1200 log2(f2 / f1)
 *
 *	D3 = 50 = 146.83 Hz        500 Hz = B4 + 21.309 cents
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_MUSIC_PITCH_H
#define EVENHAND_MUSIC_PITCH_H

#include <stdbool.h>
#include <stddef.h>

enum { PITCH_NAME_MAX = 8 };

#define PITCH_ISO_16 440.0 /* Hz of A4 */

/* Frequency in Hz of a note (fractions of a semitone allowed). */
double pitch_hz(double note, double reference_hz);

/* The note of a frequency > 0, with its fraction of a semitone. */
double pitch_note(double hz, double reference_hz);

/* Cents from one frequency to another, both > 0. */
double pitch_cents(double from_hz, double to_hz);

/* The frequency so many cents above another one. */
double pitch_above(double hz, double cents);

/* Nearest note of a frequency and how many cents above it (-50..50). */
int pitch_nearest(double hz, double reference_hz, double *cents);

/*
 * Reads a note name: a letter A to G (or a to g), up to two sharps (#) or
 * flats (b) or their printed signs, an octave -1 to 9: "F#3", "Bb3".  False
 * when it is none or outside MIDI 0..127.
 */
bool pitch_parse(const char *name, int *note);

/*
 * Writes the name of a MIDI note 0..127 with sharps, or with flats, into a
 * buffer of PITCH_NAME_MAX bytes.
 */
void pitch_name(int note, bool flats, char *buffer);

#endif
