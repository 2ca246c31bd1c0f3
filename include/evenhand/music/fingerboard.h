/*
 * fingerboard.h - places and distances along a string
 *
 * A stopped note n semitones above the open string lies
 *
 *	d = S (1 - 2^(-n/12))
 *
 * from the nut of a string of length S (the rule of fret positions).  A slide
 * from a to c semitones covers S (2^(-a/12) - 2^(-c/12)): 154.2 mm for finger
 * 1 of a full-size cello from first to fourth position.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_MUSIC_FINGERBOARD_H
#define EVENHAND_MUSIC_FINGERBOARD_H

/* mm from the nut to a note, semitones >= 0 above the open string. */
double fingerboard_mm(double length_mm, double semitones);

/* mm between two notes of one string, never negative. */
double fingerboard_slide_mm(double length_mm, double from, double to);

/*
 * Metres a fingertip travels in one turn: pulses up and down in each bow.
 * 8 pulses, 2 bows, a cello's finger 1 first to fourth: 4.93 m.
 */
double fingerboard_turn_m(
    double length_mm, double from, double to, int pulses, int bows);

/*
 * Mean speed of the fingertip in metres a second when a bow of bow_ms holds
 * so many pulses.
 */
double fingerboard_speed(
    double length_mm, double from, double to, int pulses, int bow_ms);

#endif
