package tabor.audio;

/**
 * One stroke on one sound.
 *
 * @param seconds when, from the start
 * @param timbre the name of what is struck
 * @param velocity 1 to 127
 * @param heard false for a limb that is left to the student: it moves the hi-hat and is not heard
 * @param damp seconds after which a hand stops it; 0 for never
 */
record Strike(double seconds, String timbre, int velocity, boolean heard, double damp) {
  Strike later(double by) {
    return new Strike(seconds + by, timbre, velocity, heard, damp);
  }
}
