/*
 * Rates of free practice: those that lessons usually ask for. Lessons come later than the first screen, so they are written here
 * once more, and held to the lessons' own by a test.
 */

/** Ascent rate that free practice is judged by, m/s: 9 m/min. @source US Navy Diving Manual rev. 7 §9-6.3, read */
export const UP_MPS = 9 / 60;
/** Ascent above which it is too late, where that is asked for, m/s: 18 m/min. Practice. */
export const TOO_FAST_MPS = 18 / 60;
/** Descent rate of free practice, m/s: 18 m/min. Practice. */
export const DOWN_MPS = 18 / 60;
